//! How far the tape may move what an arm comes to at one leaf angle: what keeps a limit by more is not asked about the corners.

use super::kernel::ArmKernel;
use super::proof::Proof;
use crate::real::sqrt;
use core::f64::consts::PI;

/// Most that tape errors change at a leaf angle; a little more than they do.
#[derive(Clone, Copy, Debug)]
pub(super) struct Play {
    /// Way of the elbow, m.
    pub elbow_m: f64,
    /// Turn of the crank, rad.
    pub crank_rad: f64,
    /// Change of the lever of the link about the hinge, m.
    pub lever_m: f64,
}

impl Play {
    /// Of an arm at a leaf angle.
    ///
    /// With `μ` the angle at the elbow the angle at the shaft changes by at most `1/(a·sin μ)` with each of crank, link and way between the pins,
    /// that at the bracket by `1/(b·sin μ)`. `sin μ` is taken where the errors have left least of it; where they may straighten or fold the arm,
    /// its height there may be anything up to the most they make of it.
    pub fn of(proof: &Proof, kernel: &ArmKernel, cosine: f64, sine: f64) -> Play {
        let [shaft_m, bracket_m] = proof.pins_m();
        let (pins_m, lengths_m) = (shaft_m + bracket_m, proof.lengths_m());
        let all_m = pins_m + lengths_m;
        let (a, b) = (kernel.crank_m, kernel.link_m);
        let instant = kernel.at(cosine, sine);
        let reach = sqrt(instant.reach2).max(1e-9);
        let (spare, fold) = ((a + b - reach).max(0.0), (reach - (a - b).abs()).max(0.0));
        let turned = pins_m / reach;
        let (crank_rad, link_rad) = if fold <= all_m {
            (PI, PI)
        } else if spare <= all_m {
            // The half-height of a triangle on `d`, as large as the errors make it.
            let longest = spare + all_m;
            let height = sqrt(longest * (a + b + reach) * (fold + all_m) * (reach + (a - b).abs())) / (2.0 * reach);
            let angle = |side: f64| 1.6 * (height / side).min(1.0) + turned;
            (angle(a), angle(b))
        } else {
            let sine = instant.height / (2.0 * a * b) * sqrt((spare - all_m) / spare * (fold - all_m) / fold);
            (turned + all_m / (a * sine), turned + all_m / (b * sine))
        };
        let radius = sqrt(kernel.bracket_radius2());
        Play {
            elbow_m: shaft_m + proof.errors_m[4] + a * crank_rad.min(2.0),
            crank_rad,
            lever_m: bracket_m + radius * link_rad.min(2.0),
        }
    }
}
