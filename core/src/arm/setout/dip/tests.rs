//! How near a part comes between two angles, against golden section and dense sampling.

use super::super::fixtures::{self, Dice, OPEN};
use super::{PartAt, dip};
use crate::arm::setout::kernel::ArmKernel;
use crate::numerics::{golden_section, separation_m};

/// Arms, parts, rectangles and pairs of angles, many times over.
fn cases(seed: u64, mut then: impl FnMut([f64; 2], &dyn Fn(f64) -> PartAt)) {
    let dice = &mut Dice(seed);
    for arm in fixtures::arms(&mut Dice(seed), 60) {
        let kernel = ArmKernel::new(&arm);
        for link in [false, true, false, true] {
            let (x, y) = (dice.between(-0.8, 1.2), dice.between(-0.6, 1.2));
            let sides = [[x, x + dice.between(0.02, 0.4)], [y, y + dice.between(0.02, 0.4)]];
            let low = dice.between(0.0, 0.95 * OPEN);
            let at = |leaf_rad: f64| {
                let [bracket, elbow] = kernel.joints(libm::cos(leaf_rad), libm::sin(leaf_rad));
                let other = if link { bracket } else { kernel.shaft() };
                PartAt { leaf_rad, gap_m: separation_m(&sides, elbow, other), elbow, other }
            };
            then([low, low + dice.between(0.01, 0.05) * OPEN], &at);
        }
    }
}

#[test]
fn without_a_bar_it_is_golden_section() {
    cases(71, |[low, high], at| {
        for rounds in [0, 12, 44] {
            let wanted = golden_section(low, high, rounds, |leaf_rad| at(leaf_rad).gap_m);
            assert_eq!(dip([at(low), at(high)], rounds, None, at), Some(wanted));
        }
    });
}

#[test]
fn it_ends_early_only_where_nothing_is_found_below_the_bar() {
    let (mut ended, mut went_on) = (0, 0);
    cases(72, |[low, high], at| {
        let found = golden_section(low, high, 44, |leaf_rad| at(leaf_rad).gap_m);
        for beside in [-0.1, -0.01, -1e-3, -1e-5, 1e-5, 1e-3, 0.01] {
            let bar = found.1 + beside;
            match dip([at(low), at(high)], 44, Some(bar), at) {
                None => {
                    assert!(found.1 >= bar, "{found:?} is below {bar}");
                    ended += 1;
                }
                Some(told) => {
                    assert_eq!(told, found);
                    went_on += 1;
                }
            }
        }
    });
    assert!(ended > 300 && went_on > 300, "{ended} ended early, {went_on} did not");
}

#[test]
fn nothing_between_two_places_is_below_their_floor() {
    let mut tight = 0;
    cases(73, |[low, high], at| {
        let floor = at(low).floor_m(&at(high));
        let gap = |index: usize| at(low + (high - low) * index as f64 / 200.0).gap_m;
        let least = (0..=200).map(gap).fold(f64::MAX, f64::min);
        assert!(least >= floor, "{least} is below {floor}");
        tight += usize::from(least - floor < 0.1 * arm_way(at, [low, high]));
    });
    assert!(tight > 20, "{tight} floors are near what they bound");
}

/// Way of the elbow between two angles, m, in steps.
fn arm_way(at: &dyn Fn(f64) -> PartAt, [low, high]: [f64; 2]) -> f64 {
    let place = |index: usize| at(low + (high - low) * index as f64 / 100.0).elbow;
    (0..100).map(|index| (place(index).0 - place(index + 1).0).hypot(place(index).1 - place(index + 1).1)).sum()
}
