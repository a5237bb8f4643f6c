//! Leaf angle against shaft torque: what is asked of the operator, and what it can give.

mod draw;
mod frame;
mod labels;
mod limit_line;
mod pair;

pub use draw::draw;
pub use frame::Frame;
pub use pair::lay_pair;

use super::view::View;
use pintle_core::{
    plan::{Band, BandPoint, Model, Plan},
    terms::Direction,
};

/// Demand at one leaf angle; torques in N·m at the shaft, signed like the crank angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// While opening, wind against.
    pub opening: f64,
    /// While closing, wind against.
    pub closing: f64,
}

/// What the curve shows, in the document's units.
#[derive(Clone, Debug)]
pub struct Curve {
    /// The swing, degrees.
    pub open_deg: f64,
    /// Demand through the swing, close enough together to be a smooth line.
    pub rows: Vec<Demand>,
    /// Demand with low and with high hinge friction, where the job has a range.
    pub band: Option<[Vec<Demand>; 2]>,
    /// The deciding angle, degrees, and the torque there, N·m.
    pub deciding: (f64, f64),
    /// Rated torque, N·m.
    pub rated: f64,
    /// Peak torque, N·m, where known.
    pub peak: Option<f64>,
    /// Demand at the cursor.
    pub cursor: Demand,
    /// Held back opening, held back closing and holding at a stand, each leaf angle in degrees with the torque; where they are wanted.
    pub held: Option<[Vec<(f64, f64)>; 3]>,
}

/// Demand with one end of the friction's range at the plan's leaf angles, its opening and closing torque read from a row by `torques`.
fn at_one_end(band: &Band, torques: fn(&BandPoint) -> [f64; 2]) -> Vec<Demand> {
    let row = |point: &BandPoint| {
        let [opening, closing] = torques(point);
        Demand { leaf_deg: point.leaf_deg, opening, closing }
    };
    band.curve.iter().map(row).collect()
}

/// Points along the swing: about one in two px of a wide drawing, whatever `samples` the job asks for.
const POINTS: u32 = 480;

impl Curve {
    /// Reads the curve off a solved job; the cursor is held inside the swing.
    pub fn new(model: &Model, plan: &Plan, view: &View) -> Curve {
        let open_deg = model.job().swing.open_deg;
        let demand = |leaf_deg: f64| {
            let point = model.point(leaf_deg.to_radians());
            Demand { leaf_deg, opening: point.shaft_torque_open_n_m, closing: point.shaft_torque_close_n_m }
        };
        let decided = demand(plan.peak.leaf_deg);
        let torque = if plan.peak.direction == Direction::Open { decided.opening } else { decided.closing };
        let mut rows: Vec<_> =
            (0..=POINTS).map(|step| demand(open_deg * f64::from(step) / f64::from(POINTS))).collect();
        // The peak itself is one of the points, or a sharp one would be cut off.
        rows.insert(rows.partition_point(|row| row.leaf_deg < decided.leaf_deg), decided);
        Curve {
            open_deg,
            rows,
            band: plan.band.as_ref().map(|band| {
                [
                    at_one_end(band, |point| [point.shaft_torque_open_low_n_m, point.shaft_torque_close_low_n_m]),
                    at_one_end(band, |point| [point.shaft_torque_open_high_n_m, point.shaft_torque_close_high_n_m]),
                ]
            }),
            deciding: (plan.peak.leaf_deg, torque),
            rated: model.job().operator.rated_torque_n_m,
            peak: model.job().operator.peak_torque_n_m,
            cursor: demand(view.leaf_deg.clamp(0.0, open_deg)),
            held: view.overrun.then(|| held(model, open_deg)),
        }
    }
}

/// What is held back and what holds at a stand, through the swing.
fn held(model: &Model, open_deg: f64) -> [Vec<(f64, f64)>; 3] {
    let mut held = [Vec::new(), Vec::new(), Vec::new()];
    for step in 0..=POINTS / 4 {
        let leaf_deg = open_deg * f64::from(4 * step) / f64::from(POINTS);
        let point = model.point(leaf_deg.to_radians());
        for (rows, torque) in held.iter_mut().zip([point.overrun_open_n_m, point.overrun_close_n_m, point.holding_n_m])
        {
            rows.push((leaf_deg, torque));
        }
    }
    held
}
