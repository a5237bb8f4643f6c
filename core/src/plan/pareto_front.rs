//! The trade-off between the shaft torque and another aim: set-outs none of which is beaten in both.

use super::setout::{Candidate, set_out};
use crate::fault::{Invalid, missing_object};
use crate::job::{Aim, Job, SetOut};
use alloc::vec::Vec;

/// The front between least shaft torque and another aim, from the least torque to the least of the other, at most `points` set-outs (2 or more).
///
/// Each point is the search for the other aim under a limit on the torque, each limit the same factor above the one before; so it
/// costs a search a point. Empty where nothing keeps the job's limits. The block's own aim is not looked at.
///
/// # Errors
/// [`Invalid`] with every fault of the values, or naming what is missing: the block, or the place for [`Aim::NearestPlace`].
pub fn pareto_front(job: &Job, other: Aim, points: usize) -> Result<Vec<Candidate>, Invalid> {
    let missing = || Invalid { errors: alloc::vec![missing_object("setout")] };
    let setout = job.setout.as_ref().ok_or_else(missing)?;
    let search = |aim: Aim, most_shaft_torque_n_m: Option<f64>| {
        let setout = SetOut { aim: Some(aim), most_shaft_torque_n_m, ..setout.clone() };
        set_out(&Job { setout: Some(setout), ..job.clone() }).map(|answer| answer.best)
    };
    let given = setout.most_shaft_torque_n_m;
    let (Some(least), Some(last)) = (search(Aim::LeastShaftTorque, given)?, search(other, given)?) else {
        return Ok(Vec::new());
    };
    let mut front = alloc::vec![least];
    // A leaf that asks for nothing has no torque to give away.
    let (from, to) = (least.shaft_torque_n_m.max(f64::MIN_POSITIVE), last.shaft_torque_n_m);
    let last_index = points.max(2) - 1;
    for index in 1..last_index {
        let cap = from * libm::pow(to / from, index as f64 / last_index as f64);
        front.extend(search(other, Some(cap))?);
    }
    front.push(last);
    // Where a limit does not bind, its point repeats its neighbour's.
    front.dedup_by(|next, before| {
        (next.shaft_torque_n_m - before.shaft_torque_n_m).abs() <= 1e-6 * before.shaft_torque_n_m
    });
    Ok(front)
}
