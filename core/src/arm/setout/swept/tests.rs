//! The least gap over the swing against dense sampling, whatever bar it is asked with.

use super::super::fixtures::{self, Dice, OPEN, close, least, pose, rectangle, with_problem};
use super::{CRANK, LINK, SweptParts};
use crate::arm::setout::kernel::ArmKernel;
use crate::job::{Arm, SetOutSite};
use crate::numerics::separation_m;
use alloc::vec::Vec;

fn gap(setout: &SetOutSite, arm: &Arm, part: usize, leaf_rad: f64) -> f64 {
    let pose = pose(arm, leaf_rad);
    let end = if part == CRANK { (arm.shaft_x_m, arm.shaft_y_m) } else { pose.bracket };
    separation_m(&setout.keep_out[0].sides(), pose.elbow, end)
}

/// A problem with one rectangle, an arm and a part, many times over.
fn cases(seed: u64, then: impl Fn(&mut super::Problem, &SetOutSite, &Arm, usize)) {
    let mut dice = Dice(seed);
    for arm in fixtures::arms(&mut Dice(seed), 25) {
        let (x, y) = (dice.between(-0.8, 1.2), dice.between(-0.6, 1.2));
        let room = rectangle([x, x + dice.between(0.02, 0.4)], [y, y + dice.between(0.02, 0.4)]);
        let setout = fixtures::among(fixtures::setout(), alloc::vec![room], 0.0);
        with_problem(&setout, |problem| [CRANK, LINK].iter().for_each(|&part| then(problem, &setout, &arm, part)));
    }
}

#[test]
fn least_gap_is_the_least_over_the_swing() {
    cases(61, |problem, setout, arm, part| {
        let wanted = least(0.0, OPEN, |leaf_rad| gap(setout, arm, part, leaf_rad));
        let kernel = ArmKernel::new(arm);
        for exact in [true, false] {
            problem.exact = exact;
            let swept = SweptParts::new(problem, &kernel);
            let within = if exact { 1e-8 } else { 1e-4 };
            close(swept.least_gap(0, part, [f64::MAX; 2], |_| ()), wanted, within);
            for bar in [0.02, 0.2] {
                let told = swept.least_gap(0, part, [bar; 2], |_| ());
                if wanted < bar - within {
                    close(told, wanted, within);
                } else if wanted > bar + within {
                    assert!(told >= bar, "{told} where {wanted} is not below {bar}");
                }
            }
            // Not sharp: what the stations see, which is never less than there is.
            let told = swept.least_gap(0, part, [-1.0, 0.2], |_| ());
            if wanted < 0.2 {
                let seen = problem.stations.iter().map(|station| gap(setout, arm, part, station.leaf_rad));
                let seen = seen.fold(f64::MAX, f64::min);
                if seen < 0.2 { close(told, seen, 1e-9) } else { assert!(told >= 0.2) }
            }
        }
    });
}

#[test]
fn every_place_that_is_locally_least_is_told() {
    cases(62, |problem, setout, arm, part| {
        let at = |leaf_rad: f64| gap(setout, arm, part, leaf_rad);
        let kernel = ArmKernel::new(arm);
        let told = |problem: &super::Problem, sharp: f64, bar: f64| {
            let mut told: Vec<f64> = Vec::new();
            SweptParts::new(problem, &kernel).least_gap(0, part, [sharp, bar], |station| told.push(station.leaf_rad));
            told
        };
        problem.exact = true;
        let (sharp, coarse) = (told(problem, 0.3, 0.3), told(problem, -1.0, 0.3));
        let step = OPEN / 40.0;
        let gaps: Vec<f64> = (0..=40).map(|index| at(step * f64::from(index))).collect();
        for index in 0..=40_usize {
            // Level stretches, where the elbow stands still, have no place of their own.
            let deeper = |other: usize| other == index || gaps[index] < gaps[other] - 1e-9;
            if deeper(index.saturating_sub(1)) && deeper((index + 1).min(40)) && gaps[index] < 0.299 {
                let here = step * index as f64;
                assert!(coarse.iter().any(|place| (place - here).abs() < 1e-9), "{here} in {coarse:?}");
                let (low, high) = ((here - step).max(0.0), (here + step).min(OPEN));
                let lowest = least(low, high, at);
                let seen = sharp.iter().filter(|place| (low..=high).contains(place)).map(|place| at(*place));
                close(seen.fold(f64::MAX, f64::min), lowest, 1e-8);
            }
        }
        // Good enough to look around, only the lowest is.
        problem.exact = false;
        let lowest = least(0.0, OPEN, at);
        let seen = told(problem, 0.3, 0.3);
        if lowest < 0.29 {
            assert!(!seen.is_empty() && seen.len() <= coarse.len());
            seen.iter().for_each(|place| close(at(*place), lowest, 2e-3));
        }
        assert!(lowest < 0.35 || seen.is_empty());
    });
}

#[test]
fn a_gap_said_to_stay_at_the_shaft_does() {
    let (mut stays, mut does_not) = (0, 0);
    let mut dice = Dice(63);
    for arm in fixtures::arms(&mut Dice(63), 60) {
        let (x, y) = (dice.between(-1.2, 0.4), dice.between(-1.0, 1.0));
        let room = rectangle([x, x + dice.between(0.02, 0.4)], [y, y + dice.between(0.02, 0.4)]);
        let setout = fixtures::among(fixtures::setout(), alloc::vec![room], 0.0);
        with_problem(&setout, |problem| {
            let kernel = ArmKernel::new(&arm);
            let swept = SweptParts::new(problem, &kernel);
            for index in 0..=40_usize {
                let here = gap(&setout, &arm, CRANK, problem.stations[index].leaf_rad);
                if !swept.stays_at_the_shaft(&room.sides(), index, swept.part_at(CRANK, &room.sides(), index).gap_m) {
                    does_not += 1;
                    continue;
                }
                stays += 1;
                let step = OPEN / 40.0;
                let ends = [index.saturating_sub(1), (index + 1).min(40)].map(|index| step * index as f64);
                let lowest = least(ends[0], ends[1], |leaf_rad| gap(&setout, &arm, CRANK, leaf_rad));
                close(lowest, here, 1e-12);
            }
        });
    }
    assert!(stays > 100 && does_not > 100, "{stays} stay, {does_not} do not");
}
