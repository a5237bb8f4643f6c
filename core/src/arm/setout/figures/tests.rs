//! What an arm comes to, against dense sampling of the fixtures' mechanics.

use super::super::fixtures::{self, Dice, OPEN, close, least, pose, rectangle, storm, with_problem};
use super::super::limit::Limit;
use crate::arm::setout::kernel::ArmKernel;
use crate::job::SetOut;
use crate::numerics::separation_m;

#[test]
fn figures_match_the_sampled_swing() {
    let keep_out = alloc::vec![rectangle([-0.2, 0.1], [-0.2, 0.1]), rectangle([0.9, 1.1], [0.9, 1.1])];
    let setout = fixtures::among(fixtures::setout(), keep_out.clone(), 0.0);
    with_problem(&setout, |problem| {
        problem.exact = true;
        for arm in fixtures::arms(&mut Dice(71), 25) {
            let figures = problem.figures(&arm);
            let force = -least(0.0, OPEN, |leaf_rad| -storm(leaf_rad) / pose(&arm, leaf_rad).lever.abs());
            close(figures.link_force_n, force, 1e-7 * force);
            close(figures.straightness, pose(&arm, 0.0).reach / (arm.crank_m + arm.link_m), 1e-12);
            let link = pose(&arm, OPEN).link;
            close(figures.off_square_rad, (link.0 * OPEN.cos() + link.1 * OPEN.sin()).asin(), 1e-7);
            let gap = |leaf_rad: f64| {
                let pose = pose(&arm, leaf_rad);
                let ends = [(arm.shaft_x_m, arm.shaft_y_m), pose.bracket];
                let gaps =
                    keep_out.iter().flat_map(|room| ends.map(|end| separation_m(&room.sides(), pose.elbow, end)));
                gaps.fold(f64::MAX, f64::min)
            };
            close(figures.gap_m.expect("there are rectangles"), least(0.0, OPEN, gap), 1e-6);
        }
    });
    with_problem(&fixtures::setout(), |problem| {
        assert_eq!(problem.figures(&fixtures::arms(&mut Dice(72), 1)[0]).gap_m, None);
    });
}

/// Exactly the limits with an excess of their own are told, the largest first, and the problem is as it was.
#[test]
fn every_limit_exceeded_is_told() {
    let mut several = 0;
    for arm in fixtures::arms(&mut Dice(73), 25) {
        let setout = SetOut {
            square_deg: Some(12.0),
            least_lever_m: Some(0.3),
            shaft_travel_deg: Some(110.0),
            bracket_v_m: arm.bracket_v_m,
            ..fixtures::setout()
        };
        with_problem(&setout, |problem| {
            let (kernel, sense) = (ArmKernel::new(&arm), pose(&arm, 0.5 * OPEN).lever.signum());
            let told = problem.exceeded(&kernel, sense);
            assert_eq!(problem.given_up, None);
            assert!(told.windows(2).all(|pair| pair[0].1 >= pair[1].1));
            let outside = |value: f64, [low, high]: [f64; 2]| (low - value).max(value - high);
            let lever = least(0.1 * OPEN, OPEN, |leaf_rad| sense * pose(&arm, leaf_rad).lever);
            let link = pose(&arm, OPEN).link;
            let off = (link.0 * OPEN.cos() + link.1 * OPEN.sin()).abs();
            let wanted = [
                (Limit::ShaftXM, outside(arm.shaft_x_m, setout.shaft_x_m)),
                (Limit::ShaftYM, outside(arm.shaft_y_m, setout.shaft_y_m)),
                (Limit::BracketUM, outside(arm.bracket_u_m, setout.bracket_u_m)),
                (Limit::CrankM, outside(arm.crank_m, setout.crank_m)),
                (Limit::LinkM, outside(arm.link_m, setout.link_m)),
                (Limit::LeastLeverM, 0.3 - lever),
                (Limit::SquareDeg, off - 12_f64.to_radians().sin()),
                (Limit::ShaftTravelDeg, fixtures::travel(&arm) - 110_f64.to_radians()),
            ];
            for (limit, by) in wanted {
                match told.iter().find(|(told, _)| *told == limit) {
                    Some((_, told)) => close(*told, by, 1e-4),
                    None => assert!(by < 1e-4, "{limit:?} by {by} is not told"),
                }
            }
            assert!(told.iter().all(|(limit, by)| *by > 0.0 && wanted.iter().any(|(wanted, _)| wanted == limit)));
            several += usize::from(told.len() > 2);
        });
    }
    assert!(several > 5);
}
