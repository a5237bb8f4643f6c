//! Zones of what stands around, asked only where they can matter, against asking at every angle.

use super::super::stance::Stance;
use super::{NearestGap, beside_leaf, worst};
use crate::arm::Linkage;
use crate::job::{Arm, Elbow};
use crate::numerics::fixtures::Dice;
use crate::numerics::furthest_corner;
use crate::terms::ZoneKind;

#[test]
fn a_zone_is_that_of_every_angle() {
    let arm = Arm {
        shaft_x_m: -0.25,
        shaft_y_m: 0.45,
        bracket_u_m: 1.2,
        bracket_v_m: 0.06,
        crank_m: 0.8728,
        link_m: 0.6363,
        elbow: Elbow::Left,
    };
    let dice = &mut Dice(31);
    let (mut near, mut far) = (0, 0);
    for _ in 0..400 {
        let length_m = dice.between(1.0, 5.0);
        let leaf = [[dice.between(-0.3, 0.0), length_m], [dice.between(-0.2, 0.0), dice.between(0.0, 0.2)]];
        let reach_m = furthest_corner(&leaf);
        let stances = Stance::over_swing(&Linkage::new(&arm, dice.between(1.0, 1.7)), length_m);
        let (x, y) = (dice.between(-4.0, 6.0), dice.between(-4.0, 6.0));
        let rectangle = [[x, x + dice.between(0.01, 1.5)], [y, y + dice.between(0.01, 1.5)]];
        let gap = |stance: &Stance| NearestGap {
            gap_m: stance.leaf(&leaf).separation_m(&rectangle).max(0.0),
            place: stance.nearest_to_rectangle(&rectangle),
        };
        for kind in [ZoneKind::BehindLeaf, ZoneKind::LeadingEdgeOpening] {
            let wanted = worst(&stances, stances.iter().map(gap).collect(), |_, _| kind);
            assert_eq!(beside_leaf(&stances, reach_m, |_, _| kind, gap), wanted, "{rectangle:?}");
            *if wanted.present { &mut near } else { &mut far } += 1;
        }
    }
    assert!(near > 50 && far > 50, "{near} near, {far} far");
}
