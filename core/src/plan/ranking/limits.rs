//! What an operator's maker limits wherever it stands.

use super::answer::RankAsked;
use super::refusal::{OperatorRefusal, RefusalCode, named};
use crate::job::Job;
use crate::leaf::Body;
use crate::operators::ListedOperator;
use crate::units::Quantity;

/// Whether the leaf, the air and the cycles are within them; the leaf with its ice.
pub(super) fn limits(job: &Job, operator: &ListedOperator, asked: RankAsked) -> Option<OperatorRefusal> {
    let refused = |code, values: &[_]| Some(OperatorRefusal::new(code, values));
    let length = |name, metres| named(name, metres, Quantity::Length);
    let mass = |name, kilograms| named(name, kilograms, Quantity::Mass);
    let length_m = job.leaf.length_m;
    let mass_kg = Body::of(job).mass_kg;
    match operator.leaf_limit(length_m) {
        Some((longest_m, None)) => {
            return refused(RefusalCode::LeafTooLong, &[length("length", length_m), length("limit", longest_m)]);
        }
        Some((_, Some(most_kg))) if mass_kg > most_kg => {
            let values = [mass("mass", mass_kg), mass("limit", most_kg), length("length", length_m)];
            return refused(RefusalCode::LeafTooHeavy, &values);
        }
        _ => {}
    }
    let air = |name, degrees| named(name, degrees, Quantity::Temperature);
    if let Some([coldest_c, hottest_c]) = asked.air_c {
        let [least, most] = operator.made_for_c();
        if let Some(least) = least.filter(|&least| coldest_c < least) {
            return refused(RefusalCode::TooCold, &[air("temperature", coldest_c), air("limit", least)]);
        }
        if let Some(most) = most.filter(|&most| hottest_c > most) {
            return refused(RefusalCode::TooHot, &[air("temperature", hottest_c), air("limit", most)]);
        }
    }
    let duty = job.motion.as_ref().and_then(|motion| motion.duty)?;
    let rated = operator.rated_cycles(asked.air_c.map(|[_, hottest_c]| hottest_c));
    let cycles = |name, cycles| named(name, cycles, Quantity::Count);
    let asked = [
        (RefusalCode::CyclesPerHour, duty.cycles_per_hour, rated[0]),
        (RefusalCode::CyclesPerDay, duty.cycles_per_day, rated[1]),
    ];
    for (code, asked, rated) in asked {
        if let Some((asked, rated)) = asked.zip(rated).filter(|(asked, rated)| asked > rated) {
            return refused(code, &[cycles("cycles", asked), cycles("limit", rated)]);
        }
    }
    None
}
