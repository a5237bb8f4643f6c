//! What an error of the tape costs, and what became of an arm that was built otherwise than planned.
//!
//! Every figure follows from the seven numbers of the arm, so each is asked anew with one dimension moved: a step of a micrometre either way for
//! the derivative, the whole error either way for what it costs, and every corner of the box of errors for the worst. A figure is not
//! bound to be monotone between the corners, so the worst of them is the worst of what was asked: 64 corners, the planned arm, and one
//! dimension at a time.

use super::Model;
use crate::arm::Linkage;
use crate::drive::Grid;
use crate::fault::{Fault, Invalid};
use crate::job::{Arm, Tape, ToChecked};
use crate::order::insertion_sort;
use crate::real::{atan2, sin_cos};
use alloc::vec::Vec;
use kurbo::Vec2;
use serde::Serialize;

/// Step of the derivatives, m.
const STEP_M: f64 = 1e-6;

/// How many dimensions the arm has.
const DIMENSIONS: usize = 6;

/// What a tape error costs.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct TapeCost {
    /// Error of each dimension either way, m.
    pub error_m: f64,
    /// Error of the link alone where it is set last, m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub link_error_m: Option<f64>,
    /// The planned arm.
    pub planned: Fitted,
    /// Each dimension by itself, those whose error breaks the arm first, then by what it does to the reserve.
    pub dimensions: Vec<DimensionCost>,
    /// The dimension to measure twice: the first of those.
    pub measure_twice: &'static str,
    /// All errors at once, as they come together worst.
    pub worst: WorstCase,
}

/// An arm in the figures a person sets and checks.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Fitted {
    /// Rated torque over demand; `null` where nothing is demanded.
    pub reserve: Option<f64>,
    /// Direction of the crank with the leaf closed, degrees from the closed leaf, counter-clockwise.
    pub closed_deg: f64,
    /// The same with the leaf open; unwrapped from closed.
    pub open_deg: f64,
    /// Distance shaft to bracket when closed over crank + link.
    pub straightness: f64,
    /// Bend at the elbow when closed, degrees; 0 is straight.
    pub bend_deg: f64,
    /// Link from square to the open leaf, degrees, positive where the bracket end leans towards the latch.
    pub off_square_deg: f64,
}

/// What moving one dimension does.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct DimensionCost {
    /// Path of the dimension.
    pub path: &'static str,
    /// Change of each figure per metre, degrees a metre for angles; `null` where the arm stops working within a micrometre, as a straight
    /// one does.
    pub per_m: Option<Fitted>,
    /// With the dimension short by the error; `null` where that arm does not work.
    pub short: Option<Fitted>,
    /// With the dimension long by the error.
    pub long: Option<Fitted>,
}

/// The worst of all errors at once.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct WorstCase {
    /// Least reserve.
    pub reserve: Option<f64>,
    /// Directions of the crank closed, least and most, degrees.
    pub closed_deg: [f64; 2],
    /// Directions of the crank open, least and most, degrees.
    pub open_deg: [f64; 2],
    /// Straightness, least and most.
    pub straightness: [f64; 2],
    /// Bend when closed, least and most, degrees.
    pub bend_deg: [f64; 2],
    /// Link from square to the open leaf, least and most, degrees.
    pub off_square_deg: [f64; 2],
    /// How many of the 64 corners of the box of errors have an arm that does not work.
    pub broken: u32,
}

/// What was built, re-planned where it stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Rebuilt {
    /// The arm as built.
    pub arm: Arm,
    /// Its figures, the shaft where it is; `null` where it does not work.
    pub fitted: Option<Fitted>,
    /// Peak shaft torque, N·m.
    pub shaft_torque_n_m: Option<f64>,
    /// Shaft angle from closed to open, degrees, signed.
    pub shaft_travel_deg: Option<f64>,
    /// Link that gives the planned straightness back on this pad, bracket and crank, m; `null` where that is none.
    pub link_for_straightness_m: Option<f64>,
    /// Why it does not work.
    pub fault: Option<Fault>,
}

/// What a tape error costs a job; 5 mm where the job says nothing of it.
///
/// # Errors
/// [`Invalid`] with every fault of the values, or with the reason why the arm cannot work.
pub fn tape_cost(job: &impl ToChecked) -> Result<TapeCost, Invalid> {
    let model = Model::new(job)?;
    Ok(model.tape_cost(model.job().tape.unwrap_or_default()))
}

fn moved(arm: &Arm, by_m: &[f64; DIMENSIONS]) -> Arm {
    let own_m = arm.lengths_m();
    Arm::of_lengths_m(core::array::from_fn(|i| own_m[i] + by_m[i]), arm.elbow)
}

/// By how much each dimension is off at every corner, m.
fn corners(errors_m: &[f64; DIMENSIONS]) -> impl Iterator<Item = [f64; DIMENSIONS]> {
    (0..1_u32 << DIMENSIONS)
        .map(|corner| core::array::from_fn(|i| if corner >> i & 1 == 1 { errors_m[i] } else { -errors_m[i] }))
}

impl Fitted {
    fn each(&self, other: &Fitted, of: impl Fn(f64, f64) -> f64) -> Fitted {
        Fitted {
            reserve: self.reserve.zip(other.reserve).map(|(one, other)| of(one, other)),
            closed_deg: of(self.closed_deg, other.closed_deg),
            open_deg: of(self.open_deg, other.open_deg),
            straightness: of(self.straightness, other.straightness),
            bend_deg: of(self.bend_deg, other.bend_deg),
            off_square_deg: of(self.off_square_deg, other.off_square_deg),
        }
    }

    /// An arm whose crank is wrapped to within half a turn of the planned one's.
    fn beside(self, planned: &Fitted) -> Fitted {
        let turns = libm::round((self.closed_deg - planned.closed_deg) / 360.0) * 360.0;
        Fitted { closed_deg: self.closed_deg - turns, open_deg: self.open_deg - turns, ..self }
    }
}

/// An arm that works, in the place of a model's own.
struct Refit {
    arm: Arm,
    linkage: Linkage,
}

impl Model {
    /// Another arm under this job's swing and loads; `None` where it does not work.
    fn refitted(&self, arm: &Arm) -> Option<Refit> {
        // A length of nothing or less is no arm, and a linkage must not be asked about one.
        (arm.crank_m > 0.0 && arm.link_m > 0.0)
            .then(|| Linkage::new(arm, self.linkage().open_rad))
            .filter(|linkage| linkage.defect().is_none())
            .map(|linkage| Refit { arm: *arm, linkage })
    }

    /// The figures of an arm, and its peak shaft torque, N·m.
    fn fitted(&self, grid: &Grid, Refit { arm, linkage }: &Refit) -> (Fitted, f64) {
        let [closed, open] = [0.0, linkage.open_rad].map(|leaf_rad| linkage.pose(leaf_rad));
        let (crank, link) = (closed.elbow - linkage.shaft, closed.bracket - closed.elbow);
        let closed_deg = atan2(crank.y, crank.x).to_degrees();
        let (sine, cosine) = sin_cos(open.leaf_rad);
        let along = ((open.bracket - open.elbow) / arm.link_m).dot(Vec2::new(cosine, sine)).clamp(-1.0, 1.0);
        let demand_n_m = self.largest(&grid.swept(linkage), self.loads()).shaft_torque_n_m;
        let fitted = Fitted {
            reserve: Some(self.job().operator.rated_torque_n_m / demand_n_m).filter(|reserve| reserve.is_finite()),
            closed_deg,
            open_deg: closed_deg + open.crank_rad.to_degrees(),
            straightness: reach_m(arm) / (arm.crank_m + arm.link_m),
            bend_deg: atan2(crank.cross(link).abs(), crank.dot(link)).to_degrees(),
            off_square_deg: libm::asin(along).to_degrees(),
        };
        (fitted, demand_n_m)
    }

    /// The figures of this arm.
    fn planned(&self, grid: &Grid) -> Fitted {
        self.fitted(grid, &Refit { arm: *self.arm(), linkage: *self.linkage() }).0
    }

    /// What a tape error costs.
    #[must_use]
    pub fn tape_cost(&self, tape: Tape) -> TapeCost {
        self.tape_cost_on(&Grid::with_step(self.linkage().open_rad, self.loads()), tape)
    }

    /// The same on a grid that is there already: all the arms move one leaf under the same loads.
    pub(super) fn tape_cost_on(&self, grid: &Grid, tape: Tape) -> TapeCost {
        let (errors_m, arm) = (tape.errors_m(), self.arm());
        let planned = self.planned(grid);
        let at = |by_m: &[f64; DIMENSIONS]| {
            self.refitted(&moved(arm, by_m)).map(|refit| self.fitted(grid, &refit).0.beside(&planned))
        };
        let mut dimensions: Vec<DimensionCost> = (0..DIMENSIONS)
            .map(|index| {
                let alone = |by_m: f64| at(&core::array::from_fn(|i| if i == index { by_m } else { 0.0 }));
                let per_m = alone(STEP_M).zip(alone(-STEP_M));
                DimensionCost {
                    path: Arm::length_paths()[index],
                    per_m: per_m.map(|(long, short)| long.each(&short, |one, other| (one - other) / (2.0 * STEP_M))),
                    short: alone(-errors_m[index]),
                    long: alone(errors_m[index]),
                }
            })
            .collect();
        insertion_sort(&mut dimensions, |one, other| one.cost(&planned) > other.cost(&planned));
        let corners: Vec<Option<Fitted>> = corners(&errors_m).map(|by_m| at(&by_m)).collect();
        let broken = corners.iter().filter(|corner| corner.is_none()).count() as u32;
        let alone = dimensions.iter().flat_map(|dimension| [dimension.short, dimension.long]);
        let all: Vec<Fitted> = corners.iter().copied().chain(alone).flatten().chain([planned]).collect();
        let ends = |of: fn(&Fitted) -> f64| {
            all.iter().map(of).fold([f64::MAX, f64::MIN], |[least, most], value| [least.min(value), most.max(value)])
        };
        let reserves = all.iter().filter_map(|fitted| fitted.reserve);
        TapeCost {
            error_m: tape.error(),
            link_error_m: tape.sets_link_last().then_some(errors_m[5]),
            planned,
            measure_twice: dimensions[0].path,
            worst: WorstCase {
                reserve: reserves.reduce(f64::min),
                closed_deg: ends(|fitted| fitted.closed_deg),
                open_deg: ends(|fitted| fitted.open_deg),
                straightness: ends(|fitted| fitted.straightness),
                bend_deg: ends(|fitted| fitted.bend_deg),
                off_square_deg: ends(|fitted| fitted.off_square_deg),
                broken,
            },
            dimensions,
        }
    }

    /// Largest peak shaft torque at the corners of these errors that have an arm that works, N·m.
    pub(super) fn corner_torque_n_m(&self, errors_m: &[f64; DIMENSIONS]) -> f64 {
        let grid = Grid::with_step(self.linkage().open_rad, self.loads());
        let at = |by_m: &[f64; DIMENSIONS]| self.refitted(&moved(self.arm(), by_m));
        let torques = corners(errors_m).filter_map(|by_m| Some(self.fitted(&grid, &at(&by_m)?).1));
        torques.fold(0.0, f64::max)
    }

    /// What was built, where the job says so.
    pub(super) fn rebuilt(&self, grid: &Grid) -> Option<Rebuilt> {
        let arm = self.job().as_built?.arm(self.arm(), self.job().leaf.face());
        let planned = self.planned(grid);
        let refitted = self.refitted(&arm).map(|refit| self.fitted(grid, &refit));
        let fitted = refitted.map(|(fitted, _)| fitted.beside(&planned));
        let link_m = reach_m(&arm) / planned.straightness - arm.crank_m;
        let defect = Linkage::new(&arm, self.linkage().open_rad).defect();
        Some(Rebuilt {
            arm,
            fitted,
            shaft_torque_n_m: refitted.map(|(_, demand_n_m)| demand_n_m),
            shaft_travel_deg: fitted.map(|fitted| fitted.open_deg - fitted.closed_deg),
            link_for_straightness_m: Some(link_m).filter(|&link_m| link_m.is_finite() && link_m > 0.0),
            fault: defect.map(|defect| {
                let mut fault = defect.fault(&arm);
                fault.path = fault.path.replacen("arm.", "as_built.", 1);
                fault
            }),
        })
    }
}

impl DimensionCost {
    /// How many ends of the error break the arm, and how much of the reserve the error changes, as a fraction.
    fn cost(&self, planned: &Fitted) -> (usize, f64) {
        let ends = [self.short, self.long];
        let change = |fitted: Fitted| match (fitted.reserve, planned.reserve) {
            (Some(reserve), Some(planned)) => (1.0 - reserve / planned).abs(),
            // Where nothing is demanded, how far the limits move decides.
            _ => (fitted.closed_deg - planned.closed_deg).abs() + (fitted.open_deg - planned.open_deg).abs(),
        };
        let changes = ends.iter().flatten().copied().map(change);
        (ends.iter().filter(|end| end.is_none()).count(), changes.fold(0.0, f64::max))
    }
}

/// Shaft to bracket, leaf closed, m.
fn reach_m(arm: &Arm) -> f64 {
    crate::real::length(Vec2::new(arm.bracket_u_m - arm.shaft_x_m, arm.bracket_v_m - arm.shaft_y_m))
}
