//! What an arm is worth, limit by limit and aim by aim, against dense sampling of the fixtures' mechanics.

use super::super::fixtures::{
    self, Dice, OPEN, among, close, effort, least, pose, rectangle, storm, travel, with_problem,
};
use super::super::limit::Limit;
use super::super::problem::{Margin, Problem};
use crate::arm::setout::kernel::ArmKernel;
use crate::job::{Aim, Arm, Place, SetOut, SetOutSite};
use crate::numerics::separation_m;
use alloc::vec::Vec;

const HAIR: f64 = 1e-3;

fn limited() -> SetOutSite {
    let setout = SetOut {
        link_m: [0.45, 0.6],
        straightness: Some([0.9, 0.95]),
        square_deg: Some(12.0),
        least_lever_m: Some(0.3),
        shaft_travel_deg: Some(110.0),
        most_shaft_torque_n_m: Some(90.0),
        place: Some(Place { x_m: -0.4, y_m: 0.55 }),
        ..fixtures::setout()
    };
    among(setout, alloc::vec![rectangle([-0.2, 0.1], [-0.2, 0.2]), rectangle([0.4, 0.7], [0.7, 0.9])], 0.03)
}

fn largest(from: f64, value: impl Fn(f64) -> f64) -> f64 {
    -least(from, OPEN, |leaf_rad| -value(leaf_rad))
}

fn torque(problem: &Problem, arm: &Arm) -> f64 {
    largest(0.0, |leaf_rad| effort(leaf_rad) * pose(arm, leaf_rad).inverse_ratio) / problem.torque_scale_n_m
}

/// Every limit's excess by sampling, in the search's unit.
fn excesses(problem: &Problem, arm: &Arm) -> Vec<(Limit, f64)> {
    let setout = problem.setout;
    let sense = pose(arm, 0.5 * OPEN).lever.signum();
    let lever = |from: f64| largest(from, |leaf_rad| -sense * pose(arm, leaf_rad).lever);
    let (a, b) = (arm.crank_m, arm.link_m);
    let far = largest(0.0, |leaf_rad| pose(arm, leaf_rad).reach) - a - b;
    let near = (a - b).abs() + largest(0.0, |leaf_rad| -pose(arm, leaf_rad).reach);
    let open = pose(arm, OPEN);
    let off = (open.link.0 * OPEN.cos() + open.link.1 * OPEN.sin()).abs();
    let straightness = pose(arm, 0.0).reach / (a + b);
    let outside = |value: f64, [low, high]: [f64; 2]| (low - value).max(value - high);
    let mut overlap = f64::MIN;
    for room in &setout.keep_out {
        let parted = |leaf_rad: f64, link: bool| {
            let pose = pose(arm, leaf_rad);
            separation_m(&room.sides(), pose.elbow, if link { pose.bracket } else { (arm.shaft_x_m, arm.shaft_y_m) })
        };
        for link in [false, true] {
            overlap = overlap.max(0.03 + HAIR - least(0.0, OPEN, |leaf_rad| parted(leaf_rad, link)));
        }
    }
    alloc::vec![
        (Limit::LeastLeverM, 0.3 + HAIR + lever(0.1 * OPEN)),
        (Limit::Arm, (1e-6 + lever(0.0)).max(far).max(near)),
        (Limit::LinkM, outside(b, setout.link_m)),
        (Limit::SquareDeg, off - 12_f64.to_radians().sin() + HAIR),
        (Limit::ShaftTravelDeg, travel(arm) - 110_f64.to_radians() + HAIR),
        (Limit::MostShaftTorqueNM, torque(problem, arm) - 90.0 / problem.torque_scale_n_m * (1.0 - HAIR)),
        (Limit::KeepOut, overlap),
        (Limit::ShaftXM, outside(arm.shaft_x_m, setout.shaft_x_m)),
        (Limit::ShaftYM, outside(arm.shaft_y_m, setout.shaft_y_m)),
        (Limit::BracketUM, outside(arm.bracket_u_m, setout.bracket_u_m)),
        (Limit::CrankM, outside(a, setout.crank_m)),
        (Limit::Straightness, outside(straightness, [0.9, 0.95])),
    ]
}

/// Arms whose levers leave torque smooth.
fn mild(seed: u64, count: usize) -> Vec<Arm> {
    let mild = |arm: &Arm| least(0.0, OPEN, |leaf_rad| pose(arm, leaf_rad).lever.abs()) > 0.08;
    fixtures::arms(&mut Dice(seed), 4 * count).into_iter().filter(mild).take(count).collect()
}

#[test]
fn each_limit_given_up_is_its_own_excess() {
    let setout = limited();
    with_problem(&setout, |problem| {
        problem.margin = Margin { length_m: HAIR, plain: HAIR };
        let mut exceeded = Vec::new();
        for arm in mild(41, 60) {
            let kernel = ArmKernel::new(&arm);
            let sense = pose(&arm, 0.5 * OPEN).lever.signum();
            assert_eq!(problem.sense(&kernel), sense);
            let all = excesses(problem, &arm);
            for &(limit, by) in &all {
                // Rectangles are not looked at where another limit is far out.
                let own = |other: Limit| other.variable().is_none();
                let rest = all.iter().filter(|(other, _)| *other != limit && own(*other) && *other != Limit::KeepOut);
                let rest = rest.map(|(_, by)| *by).fold(-1.0, f64::max);
                problem.given_up = Some(limit);
                for (exact, within) in [(true, 2e-9), (false, 2e-4)] {
                    problem.exact = exact;
                    let (objective, excess) = problem.evaluate(&kernel, sense);
                    if limit != Limit::KeepOut || rest < 0.3 {
                        close(objective, by.max(0.0), within * by.abs().max(1.0));
                    }
                    let overlap = all[6].1;
                    if limit == Limit::KeepOut || rest > 0.3 {
                        close(excess, rest, within * rest.abs().max(1.0));
                    } else {
                        close(excess, rest.max(overlap), within * rest.abs().max(1.0));
                    }
                }
                if by > 0.0 && !exceeded.contains(&limit) {
                    exceeded.push(limit);
                }
            }
        }
        assert!(exceeded.len() >= 11, "{exceeded:?}");
    });
}

#[test]
fn each_aim_is_its_own_objective() {
    for &aim in <Aim as crate::terms::words::Worded>::VALUES {
        let mut setout = limited();
        setout.setout.aim = Some(aim);
        with_problem(&setout, |problem| {
            problem.margin = Margin { length_m: HAIR, plain: HAIR };
            for arm in mild(42, 20) {
                let (kernel, sense) = (ArmKernel::new(&arm), pose(&arm, 0.5 * OPEN).lever.signum());
                let wanted = match aim {
                    Aim::LeastShaftTorque => torque(problem, &arm),
                    Aim::LeastLinkForce => {
                        largest(0.0, |leaf_rad| storm(leaf_rad) / pose(&arm, leaf_rad).lever.abs())
                            / problem.force_scale_n
                    }
                    Aim::LeastShaftTravel => travel(&arm),
                    Aim::NearestPlace => (arm.shaft_x_m + 0.4).hypot(arm.shaft_y_m - 0.55),
                };
                let all = excesses(problem, &arm);
                let of = |limit: Limit| limit.variable().is_none() && limit != Limit::KeepOut;
                let rest = all.iter().filter(|(limit, _)| of(*limit)).copied();
                let mut worst = rest.fold((Limit::Arm, -1.0), |one, other| if other.1 > one.1 { other } else { one });
                if worst.1 < 0.3 && all[6].1 > worst.1 {
                    worst = all[6];
                }
                for (exact, within) in [(true, 2e-9), (false, 2e-4)] {
                    problem.exact = exact;
                    let (objective, excess) = problem.evaluate(&kernel, sense);
                    close(objective, wanted, within * wanted.max(1.0));
                    close(excess, worst.1, within * worst.1.abs().max(1.0));
                }
                let point = [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, 0.0];
                let z = (1.0 - pose(&arm, 0.0).reach / (arm.crank_m + arm.link_m)).sqrt();
                let point = [point[0], point[1], point[2], point[3], z];
                let found = problem.found(&point, arm.elbow, sense);
                assert_eq!((found.point, found.elbow, found.sense), (point, arm.elbow, sense));
            }
        });
    }
}

/// On an arm of the block's own bracket, a found point is that arm and its worst limit is named.
#[test]
fn the_limit_most_exceeded_is_named() {
    let mut setout = limited();
    let mut named = Vec::new();
    setout.setout.link_m = [0.3, 0.9];
    for arm in mild(43, 200) {
        setout.setout.bracket_v_m = arm.bracket_v_m;
        with_problem(&setout, |problem| {
            (problem.margin, problem.exact) = (Margin { length_m: HAIR, plain: HAIR }, true);
            let z = (1.0 - pose(&arm, 0.0).reach / (arm.crank_m + arm.link_m)).sqrt();
            let point = [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, z];
            let found = problem.found(&point, arm.elbow, pose(&arm, 0.5 * OPEN).lever.signum());
            let all = excesses(problem, &arm);
            let of = |limit: Limit| limit.variable().is_none();
            let rest = all.iter().filter(|(limit, _)| of(*limit)).copied();
            let worst = rest.fold((Limit::Arm, -1.0), |one, other| if other.1 > one.1 { other } else { one });
            if worst.1 < 0.3 {
                let (limit, by) = problem.most_exceeded(&found).expect("a limit");
                assert_eq!(limit, worst.0);
                close(by, worst.1, 1e-7);
                close(found.excess, worst.1, 1e-7);
                named.push(limit);
            }
        });
    }
    named.sort();
    named.dedup();
    assert!(named.len() > 2, "{named:?}");
}

/// Reach is extreme where the leaf is closed, open, or in line with the shaft.
#[test]
fn reach_is_extreme_at_its_turns() {
    let mut dice = Dice(44);
    with_problem(&fixtures::setout(), |problem| {
        let mut inside = 0;
        for _ in 0..300 {
            let (shaft_x_m, shaft_y_m) = (dice.between(-1.0, 1.0), dice.between(-1.0, 1.0));
            let (bracket_u_m, bracket_v_m) = (dice.between(-1.5, 1.5), dice.between(-0.3, 0.3));
            let elbow = crate::job::Elbow::Left;
            let arm = Arm { shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m: 0.7, link_m: 0.5, elbow };
            let kernel = ArmKernel::new(&arm);
            let turns = problem.turns(&kernel);
            assert_eq!(turns[0].expect("open").leaf_rad, OPEN);
            inside += usize::from(turns[1].is_some());
            let reaches: Vec<f64> = turns
                .iter()
                .flatten()
                .map(|station| pose(&arm, station.leaf_rad).reach)
                .chain([pose(&arm, 0.0).reach])
                .collect();
            let (low, high) =
                (least(0.0, OPEN, |rad| pose(&arm, rad).reach), largest(0.0, |rad| pose(&arm, rad).reach));
            close(reaches.iter().copied().fold(f64::MAX, f64::min), low, 1e-7);
            close(reaches.iter().copied().fold(0.0, f64::max), high, 1e-7);
            // Broken arms: too short to reach or too uneven to fold; the lever of what is left speaks too.
            let sense = problem.sense(&kernel);
            problem.given_up = Some(Limit::Arm);
            let (objective, _) = problem.evaluate(&kernel, sense);
            // Closed, an arm too short is no point of the search: straightness says it.
            let far = turns.iter().flatten().map(|station| pose(&arm, station.leaf_rad).reach).fold(0.0, f64::max);
            let broken = (far - 1.2).max(0.2 - low);
            let lever = largest(0.0, |rad| -sense * pose(&arm, rad).lever);
            if broken > lever + 0.02 {
                close(objective, broken.max(0.0), 1e-7);
            }
            for (crank_m, link_m) in [(0.7, 1.4), (1.4, 0.7)] {
                let uneven = Arm { crank_m, link_m, ..arm };
                let (objective, _) = problem.evaluate(&ArmKernel::new(&uneven), sense);
                let lever = largest(0.0, |rad| -sense * pose(&uneven, rad).lever);
                let broken = (far - 2.1).max(0.7 - low);
                if broken > lever + 0.02 {
                    close(objective, broken.max(0.0), 1e-7);
                }
            }
        }
        assert!(inside > 50);
    });
}
