//! The lattice: its closed forms against sampled angles and the fixtures, the walk against every arm there is.

use super::super::fixtures::{self, Dice, OPEN, close, effort, pose, with_problem};
use super::{Asked, FIRST_ASKED, Lattice, LatticeWalk, Problem, link_range_at};
use crate::arm::setout::kernel::ArmKernel;
use crate::job::{Aim, Arm, Elbow, ElbowChoice, SetOut, SetOutSite};
use alloc::vec::Vec;

#[test]
fn links_at_the_allowed_angles_lie_between_its_ends() {
    let mut dice = Dice(81);
    let mut none = 0;
    for _ in 0..300 {
        let (along, across) = (dice.between(-0.8, 0.8), dice.between(-0.8, 0.8));
        let both = dice.between(0.3, 2.0);
        let square = dice.between(0.0, 1.5);
        let reach = along.hypot(across);
        let Some((shortest, longest)) = link_range_at(both, along, across, (square.sin(), square.cos())) else {
            none += 1;
            assert!(both < reach);
            continue;
        };
        assert!(both > reach - 1e-6);
        if both < reach + 0.01 {
            continue;
        }
        // |D − b·w| = L − b, with w off square by an angle: b = (L² − D²)/(2(L − D·w)).
        let link = |off: f64| {
            let projected = along * off.sin() + across * off.cos();
            (both * both - reach * reach) / (2.0 * (both - projected))
        };
        close(shortest, fixtures::least(-square, square, link), 1e-9);
        close(longest, -fixtures::least(-square, square, |off| -link(off)), 1e-9);
    }
    assert!(none > 20);
    // A straight arm reaches as far as it is long; rounding does not take it away.
    assert!(link_range_at(0.5, 0.3, 0.4, (0.0, 1.0)).is_some());
    assert!(link_range_at(0.5 - 1e-10, 0.3, 0.4, (0.0, 1.0)).is_some());
    assert!(link_range_at(0.5 - 1e-8, 0.3, 0.4, (0.0, 1.0)).is_none());
}

#[test]
fn an_arm_asks_its_torque_at_a_station() {
    let setout = SetOut { square_deg: Some(15.0), ..fixtures::setout() };
    with_problem(&setout, |problem| {
        for arm in fixtures::arms(&mut Dice(82), 30) {
            let block = SetOut { bracket_v_m: arm.bracket_v_m, ..setout.clone() };
            let block = block.into();
            let rough = Problem { setout: &block, ..problem.clone() };
            let lattice = Lattice { step_m: 0.05, ranges: [[0, 1]; 5], square: (0.0, 1.0) };
            let walk = LatticeWalk { exact: rough.clone(), rough, lattice, best: None, work: 0 };
            let asked: [Asked; FIRST_ASKED.len() + 1] = walk.asked(arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m);
            for (place, asked) in asked.iter().enumerate() {
                // Without a best so far the first is the first of the list once more.
                let index = FIRST_ASKED[place.saturating_sub(1)];
                let leaf_rad = OPEN * index as f64 / 40.0;
                let torque = effort(leaf_rad) * pose(&arm, leaf_rad).inverse_ratio;
                assert!(asked.asks(&arm, 0.9999 * torque) && !asked.asks(&arm, 1.0001 * torque));
            }
        }
    });
}

/// A straight arm to rounding asks nothing where it is straight.
#[test]
fn straight_arm_asks_no_torque() {
    let asked = Asked { cross: 0.5, reach2: 1.0, off: 0.7, effort_n_m: 100.0 };
    let arm = |both: f64| Arm {
        shaft_x_m: 0.0,
        shaft_y_m: 0.0,
        bracket_u_m: 0.0,
        bracket_v_m: 0.0,
        crank_m: both - 0.4,
        link_m: 0.4,
        elbow: Elbow::Left,
    };
    assert!(!asked.asks(&arm(1.0 + 2e-13), 1e-9));
    assert!(asked.asks(&arm(1.0 + 2e-12), 1e-9));
}

fn multiples([least, most]: [f64; 2], step: f64) -> impl Iterator<Item = f64> {
    let first = (least / step - 1e-7).ceil() as i64;
    (first..=(most / step + 1e-7).floor() as i64).map(move |index| index as f64 * step)
}

/// Every arm on the lattice that keeps the limits, evaluated by the problem itself: its evaluation is held elsewhere.
fn whole(setout: &(impl Clone + Into<SetOutSite>), step: f64, open_rad: f64) -> Option<f64> {
    fixtures::with_swing(setout, open_rad, |problem| {
        (problem.margin, problem.exact) = (super::Margin::NONE, true);
        let [loose, straight] = problem.setout.straightness();
        let site = problem.setout;
        let mut best: Option<f64> = None;
        for shaft_x_m in multiples(site.shaft_x_m, step) {
            for shaft_y_m in multiples(site.shaft_y_m, step) {
                for bracket_u_m in multiples(site.bracket_u_m, step) {
                    let closed = (bracket_u_m - shaft_x_m).hypot(site.bracket_v_m - shaft_y_m);
                    for crank_m in multiples(site.crank_m, step) {
                        for link_m in multiples(site.link_m, step) {
                            let straightness = closed / (crank_m + link_m);
                            if straightness < loose - 1e-10 || straightness > straight + 1e-10 {
                                continue;
                            }
                            for &elbow in site.elbows() {
                                let bracket_v_m = site.bracket_v_m;
                                let arm =
                                    Arm { shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m, link_m, elbow };
                                let sense = pose(&arm, 0.5 * open_rad).lever.signum();
                                let (objective, excess) = problem.evaluate(&ArmKernel::new(&arm), sense);
                                if excess <= 1e-9 && best.is_none_or(|best| objective < best) {
                                    best = Some(objective);
                                }
                            }
                        }
                    }
                }
            }
        }
        best
    })
}

fn walked(setout: &(impl Clone + Into<SetOutSite>), step: f64, open_rad: f64) -> Option<(Arm, f64)> {
    fixtures::with_swing(setout, open_rad, |problem| {
        problem.best_on_lattice(step, &[]).map(|best| (best.arm, best.objective))
    })
}

/// Narrow sites with each limit and aim in turn, ends of ranges on and off the lattice.
#[test]
fn walk_finds_the_best_arm_of_the_whole_lattice() {
    let narrow = SetOut {
        shaft_x_m: [-0.45, -0.25],
        shaft_y_m: [0.35, 0.5],
        bracket_u_m: [0.8, 1.07],
        crank_m: [0.4, 0.8],
        link_m: [0.4, 0.8],
        straightness: Some([0.9, 1.0]),
        ..fixtures::setout()
    };
    let place = Some(crate::job::Place { x_m: -0.31, y_m: 0.42 });
    let sites = [
        narrow.clone(),
        SetOut { straightness: Some([0.93, 0.98]), ..narrow.clone() },
        SetOut { square_deg: Some(8.0), ..narrow.clone() },
        SetOut { square_deg: Some(8.0), elbow: Some(ElbowChoice::Left), ..narrow.clone() },
        SetOut { elbow: Some(ElbowChoice::Right), ..narrow.clone() },
        SetOut { least_lever_m: Some(0.3), ..narrow.clone() },
        SetOut { shaft_travel_deg: Some(100.0), ..narrow.clone() },
        SetOut { link_m: [0.45, 0.5], crank_m: [0.6, 0.7], ..narrow.clone() },
        SetOut { aim: Some(Aim::LeastShaftTravel), ..narrow.clone() },
        SetOut { aim: Some(Aim::LeastLinkForce), ..narrow.clone() },
        SetOut { aim: Some(Aim::NearestPlace), place, square_deg: Some(10.0), ..narrow.clone() },
        SetOut { most_shaft_torque_n_m: Some(110.0), aim: Some(Aim::LeastShaftTravel), ..narrow.clone() },
    ];
    let post = alloc::vec![fixtures::rectangle([-0.3, 0.1], [-0.2, 0.41])];
    let among = fixtures::among(narrow.clone(), post, 0.01);
    let sites = sites.into_iter().map(SetOutSite::from).chain([among]);
    let mut found = Vec::new();
    for (index, setout) in sites.enumerate() {
        let setout = &setout;
        let wanted = whole(setout, 0.05, OPEN);
        let told = walked(setout, 0.05, OPEN);
        assert_eq!(told.is_some(), wanted.is_some(), "problem {index}");
        if let (Some((arm, objective)), Some(wanted)) = (told, wanted) {
            close(objective, wanted, 1e-9);
            for value in [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, arm.link_m] {
                close(value / 0.05, (value / 0.05).round(), 1e-9);
            }
            found.push(index);
        }
    }
    assert!(found.len() >= 9, "{found:?}");
}

/// Ranges, angles and swings drawn at random: whatever of them decides, nothing is missed.
#[test]
fn no_drawn_lattice_is_walked_short() {
    let mut dice = Dice(83);
    let mut found = 0;
    for round in 0..160 {
        let mut range = |low: f64, high: f64, wide: f64| {
            let least = dice.between(low, high);
            [least, least + dice.between(0.0, wide)]
        };
        let setout = SetOut {
            shaft_x_m: range(-0.5, -0.2, 0.15),
            shaft_y_m: range(0.3, 0.5, 0.15),
            bracket_u_m: range(0.7, 1.0, 0.2),
            crank_m: range(0.35, 0.6, 0.3),
            link_m: range(0.3, 0.6, 0.3),
            straightness: Some([[0.85, 1.0], [0.9, 0.96], [0.0, 1.0]][round % 3]),
            square_deg: [None, Some(35.0), Some(20.0), Some(10.0)][round % 4],
            ..fixtures::setout()
        };
        let open_rad = [1.2, 0.9, 1.6][round / 12 % 3];
        let (wanted, told) = (whole(&setout, 0.05, open_rad), walked(&setout, 0.05, open_rad));
        assert_eq!(told.is_some(), wanted.is_some(), "round {round}");
        if let (Some((_, objective)), Some(wanted)) = (told, wanted) {
            close(objective, wanted, 1e-9);
            found += 1;
        }
    }
    assert!(found > 20, "{found}");
}

#[test]
fn range_without_a_multiple_gives_no_set_out() {
    let setout = SetOut { crank_m: [0.51, 0.54], ..fixtures::setout() };
    assert!(walked(&setout, 0.05, OPEN).is_none());
}

/// A lattice too large to be walked at once: shafts and brackets by half centimetres.
fn fine() -> SetOut {
    SetOut {
        shaft_x_m: [-0.45, -0.25],
        shaft_y_m: [0.35, 0.5],
        bracket_u_m: [0.8, 1.05],
        straightness: Some([0.95, 0.97]),
        square_deg: Some(4.0),
        link_m: [0.4, 0.6],
        ..fixtures::setout()
    }
}

/// A walk that has not begun.
fn walk<'a>(problem: &Problem<'a>, step_m: f64) -> LatticeWalk<'a> {
    let setout = problem.setout;
    let range =
        |[least, most]: [f64; 2]| [(least / step_m - 1e-6).ceil() as i64, (most / step_m + 1e-6).floor() as i64];
    let ranges = [setout.shaft_x_m, setout.shaft_y_m, setout.bracket_u_m, setout.crank_m, setout.link_m].map(range);
    let square = problem.limits.square_rad;
    let rough = Problem { margin: super::Margin::NONE, exact: false, ..problem.clone() };
    let exact = Problem { exact: true, ..rough.clone() };
    LatticeWalk {
        rough,
        exact,
        lattice: Lattice { step_m, ranges, square: (square.sin(), square.cos()) },
        best: None,
        work: 0,
    }
}

/// Walked in boxes around the optima it ends at the best of the whole; without optima the whole is walked.
#[test]
fn a_large_lattice_is_walked_to_its_best() {
    let setout = fine();
    with_problem(&setout, |problem| {
        let step = 0.005;
        let mut whole = walk(problem, step);
        let part = core::array::from_fn(|i| whole.lattice.ranges[i]);
        whole.walk_box(&part);
        let wanted = whole.best.expect("the lattice has an arm").objective;
        let optima = problem.optima();
        for optima in [&optima[..], &optima[..1], &[]] {
            let told = problem.best_on_lattice(step, optima).expect("the lattice has an arm");
            close(told.objective, wanted, 1e-9);
            let arm = told.arm;
            for (value, index) in [(arm.shaft_x_m, 0), (arm.shaft_y_m, 1), (arm.bracket_u_m, 2)] {
                close(value / step, told.triple[index] as f64, 1e-9);
            }
        }
    });
}

/// From a start that is far from the best, the boxes move until nothing better is near.
#[test]
fn boxes_follow_what_they_find() {
    let setout = fine();
    with_problem(&setout, |problem| {
        let step = 0.005;
        let mut far = problem.optima()[0];
        (far.point[0], far.point[1], far.point[2]) = (-0.44, 0.36, 0.81);
        let told = problem.best_on_lattice(step, &[far]).expect("an arm is near");
        let mut around = walk(problem, step);
        let ranges = around.lattice.ranges;
        around.walk_box(&core::array::from_fn(|i| {
            [(told.triple[i] - 6).max(ranges[i][0]), (told.triple[i] + 6).min(ranges[i][1])]
        }));
        close(around.best.expect("at least itself").objective, told.objective, 1e-12);
    });
}

/// Work is bounded: what an arm costs is counted, and a walk that has done enough does no more.
#[test]
fn a_walk_ends_with_its_work() {
    let setout = fine();
    with_problem(&setout, |problem| {
        let mut spent = walk(problem, 0.005);
        spent.work = super::MOST_WORK;
        let part = core::array::from_fn(|i| spent.lattice.ranges[i]);
        spent.walk_box(&part);
        assert!(spent.best.is_none() && spent.work == super::MOST_WORK);
        // One for a shaft and bracket, one for an arm asked, sixty for an arm evaluated over the swing: here all three.
        let mut one = walk(problem, 0.005);
        let best = {
            let mut whole = walk(problem, 0.01);
            let part = core::array::from_fn(|i| whole.lattice.ranges[i]);
            whole.walk_box(&part);
            whole.best
        };
        let triple = best.expect("an arm").triple.map(|index| 2 * index);
        one.walk_lengths(triple);
        assert!(one.work > super::EVALUATION_WORK + 1, "{}", one.work);
        assert!(one.best.is_some());
    });
}

/// The walk over a lattice is spared where the search over the continuum comes nowhere near: every arm tried, there is none on it either. And it
/// is a matter of the excess alone: told that the continuum is missed by more than a margin, no lattice is walked.
#[test]
fn a_lattice_is_left_alone_only_where_it_has_no_arm() {
    let mut dice = Dice(84);
    let (mut hopeless, mut found) = (0, 0);
    for round in 0..24 {
        let mut range = |low: f64, high: f64, wide: f64| {
            let least = dice.between(low, high);
            [least, least + dice.between(0.05, wide)]
        };
        let setout = SetOut {
            shaft_x_m: range(-0.5, -0.2, 0.15),
            shaft_y_m: range(0.3, 0.5, 0.15),
            bracket_u_m: range(0.7, 1.0, 0.2),
            crank_m: range(0.35, 0.6, 0.3),
            link_m: range(0.3, 0.6, 0.3),
            straightness: Some([0.85, 1.0]),
            shaft_travel_deg: Some([40.0, 75.0, 95.0, 360.0][round % 4]),
            square_deg: [None, Some(5.0)][round / 4 % 2],
            ..fixtures::setout()
        };
        let wanted = whole(&setout, 0.05, OPEN);
        with_problem(&setout, |problem| {
            let mut optima = problem.optima();
            let told = problem.best_on_lattice(0.05, &optima);
            if optima[0].excess > super::HOPELESS {
                hopeless += 1;
                assert!(told.is_none() && wanted.is_none(), "round {round}");
            } else {
                assert_eq!(told.is_some(), wanted.is_some(), "round {round}");
                found += usize::from(told.is_some());
                optima[0].excess = 2.0 * super::HOPELESS;
                assert!(problem.best_on_lattice(0.05, &optima).is_none());
            }
        });
    }
    assert!(hopeless >= 6 && found >= 3, "{hopeless} hopeless, {found} found");
}
