//! The products of the inner loop against the triangle's angles and the levers of the link's force.

use super::super::fixtures::{self, Dice, OPEN, close, pose, travel, with_problem};
use super::{ArmKernel, STRAIGHT_M2, SearchStation};
use crate::job::{Arm, Elbow};

#[test]
fn kernel_values_match_the_arm_s_triangle() {
    let mut dice = Dice(21);
    let mut long = 0;
    for arm in fixtures::arms(&mut dice, 60) {
        let kernel = ArmKernel::new(&arm);
        assert_eq!(kernel.arm(), arm);
        assert_eq!(kernel.shaft(), (arm.shaft_x_m, arm.shaft_y_m));
        for leaf_rad in [0.0, 0.4, 0.9, OPEN] {
            let (sine, cosine) = leaf_rad.sin_cos();
            let wanted = pose(&arm, leaf_rad);
            let instant = kernel.at(cosine, sine);
            close(kernel.reach2(cosine, sine), wanted.reach * wanted.reach, 1e-12);
            close(instant.reach2, wanted.reach * wanted.reach, 1e-12);
            close(kernel.lever_m(&instant), wanted.lever, 1e-9);
            close(instant.inverse_ratio(), wanted.inverse_ratio, 1e-7 * wanted.inverse_ratio.max(1.0));
            let [bracket, elbow] = kernel.joints(cosine, sine);
            for (one, other) in [(bracket, wanted.bracket), (elbow, wanted.elbow)] {
                close(one.0, other.0, 1e-9);
                close(one.1, other.1, 1e-9);
            }
            let (x, y) = wanted.bracket;
            close(kernel.cross(cosine, sine), arm.shaft_x_m * y - arm.shaft_y_m * x, 1e-12);
            close(kernel.link_along_leaf(cosine, sine), wanted.link.0 * cosine + wanted.link.1 * sine, 1e-9);
        }
        let straightness = pose(&arm, 0.0).reach / (arm.crank_m + arm.link_m);
        let variables = [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, straightness];
        (0..5).for_each(|index| close(kernel.variable(index), variables[index], 1e-12));
        let sense = pose(&arm, 0.5 * OPEN).lever.signum();
        let turned =
            with_problem(&fixtures::setout(), |problem| kernel.travel_rad(sense, problem.closed(), problem.open()));
        close(turned, travel(&arm), 1e-8);
        long += i32::from(turned > core::f64::consts::PI);
    }
    assert!(long > 0, "no shaft turned more than half a turn");
}

/// A shaft that does not turn has turned nothing, not a full turn.
#[test]
fn swing_of_nothing_gives_no_travel() {
    let arm = fixtures::arms(&mut Dice(22), 1)[0];
    let station = SearchStation { leaf_rad: 0.0, cosine: 1.0, sine: 0.0, effort_n_m: 0.0, storm_n_m: 0.0 };
    for sense in [1.0, -1.0] {
        assert_eq!(ArmKernel::new(&arm).travel_rad(sense, &station, &station), 0.0);
    }
}

/// Lengths that miss straight by rounding alone are straight: no height, no torque; by more than that the height is its root.
#[test]
fn lengths_straight_to_rounding_have_no_height() {
    let arm = |spare2: f64| Arm {
        shaft_x_m: -0.3,
        shaft_y_m: 0.4,
        bracket_u_m: 0.9,
        bracket_v_m: -0.1,
        crank_m: 0.8,
        // Reach 1.3 m (5-12-13).
        link_m: (1.69 + spare2).sqrt() - 0.8,
        elbow: Elbow::Left,
    };
    let height = |spare2: f64| ArmKernel::new(&arm(spare2)).at(1.0, 0.0).height;
    assert_eq!(height(0.5 * STRAIGHT_M2), 0.0);
    // H = √(((a+b)² − D)·(D − (a−b)²)) with a − b = 0.3.
    close(height(4.0 * STRAIGHT_M2), (4.0 * STRAIGHT_M2 * 1.6).sqrt(), 1e-9);
}
