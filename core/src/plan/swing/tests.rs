//! The least over the swing against asking at every angle.

use super::{INTERVALS, Joint, Joints, LEVEL_M, Movers, ROUNDS, SwingJoints};
use crate::arm::Linkage;
use crate::job::{Arm, Elbow};
use crate::numerics::fixtures::Dice;
use crate::numerics::{golden_section, separation_m};
use core::cell::Cell;

/// A distance at a leaf angle.
type Value<'a> = &'a dyn Fn(&Joints) -> f64;

/// The same with every angle asked and every local least refined.
fn wanted(swing: &SwingJoints, value: &dyn Fn(&Joints) -> f64) -> f64 {
    let at = |index: usize| value(&swing.looked_at[index]);
    (0..=INTERVALS).fold(f64::MAX, |least, index| {
        let (before, behind) = (index.saturating_sub(1), (index + 1).min(INTERVALS));
        let least = least.min(at(index));
        if at(index) > at(before).min(at(behind)) || at(before).max(at(behind)) - at(index) <= LEVEL_M {
            return least;
        }
        let ends = [before, behind].map(|index| swing.angle(index));
        least.min(golden_section(ends[0], ends[1], ROUNDS, |leaf_rad| value(&swing.at(leaf_rad))).1)
    })
}

#[test]
fn the_least_is_that_of_all_angles() {
    let dice = &mut Dice(17);
    let mut compared = 0;
    let asked = &Cell::new(0);
    while compared < 120 {
        let (x, y) = (dice.between(-0.6, 0.1), dice.between(-0.7, 0.7));
        let (u, v) = (dice.between(0.4, 1.4), dice.between(-0.1, 0.1));
        let both = (u - x).hypot(v - y) / dice.between(0.6, 0.9999);
        let crank_m = both * dice.between(0.3, 0.7);
        let elbow = if dice.between(0.0, 1.0) < 0.5 { Elbow::Left } else { Elbow::Right };
        let arm =
            Arm { shaft_x_m: x, shaft_y_m: y, bracket_u_m: u, bracket_v_m: v, crank_m, link_m: both - crank_m, elbow };
        let linkage = Linkage::new(&arm, 1.6);
        if linkage.defect().is_some() {
            continue;
        }
        compared += 1;
        let (swing, shaft) = (SwingJoints::new(&linkage), linkage.shaft);
        let (left, low) = (dice.between(-1.0, 1.2), dice.between(-1.0, 1.2));
        let sides = [[left, left + dice.between(0.02, 0.5)], [low, low + dice.between(0.02, 0.5)]];
        let pair = |point: kurbo::Point| (point.x, point.y);
        let crank = |joints: &Joints| separation_m(&sides, pair(joints.elbow), pair(shaft));
        let link = |joints: &Joints| separation_m(&sides, pair(joints.elbow), pair(joints.bracket));
        // A stick as long as a metre that turns with the leaf.
        let stick = |joints: &Joints| separation_m(&sides, (0.0, 0.0), (joints.there.1, joints.there.0));
        let parts: [(Value, Movers); 3] = [
            (&crank, Movers { joints: &[Joint::Elbow], turning_m: 0.0 }),
            (&link, Movers { joints: &[Joint::Elbow, Joint::Bracket], turning_m: 0.0 }),
            (&stick, Movers { joints: &[], turning_m: 1.0 }),
        ];
        for (value, moves) in &parts {
            let counted = |joints: &Joints| {
                asked.set(asked.get() + 1);
                value(joints)
            };
            let (leaf_rad, least) = swing.least(moves, &counted);
            let wanted = wanted(&swing, *value);
            assert!((least - wanted).abs() < 1e-12, "{least} is not {wanted}: {arm:?}, {sides:?}");
            assert!((value(&swing.at(leaf_rad)) - least).abs() < 1e-9);
        }
    }
    // What it is for: most angles are not asked, what is refined included.
    assert!(asked.get() < 3 * compared * INTERVALS / 2, "{} asked", asked.get());
}
