//! The descent: what it gathers and its slopes against their own definitions, where it ends against grids that close in.
// Lines and columns of a matrix are told by their numbers.
#![allow(clippy::needless_range_loop)]

use super::super::fixtures::{self, Dice, OPEN, close, pose, rectangle, with_problem};
use super::{
    Budget, DIMENSIONS, EXCESS_TOLERANCE, Found, Limit, Piece, Point, Problem, ROWS, SlpScratch, Term, VARIABLES,
};
use crate::job::{Aim, Elbow, ElbowChoice, Place, SetOut, SetOutSite};
use alloc::vec::Vec;

const TO_THE_END: Budget = Budget { steps: 60, trust: 0.1, least_gain: 1e-9, curved: true, hopeful: false };

fn found(objective: f64, excess: f64) -> Found {
    Found { point: [0.0; DIMENSIONS], elbow: Elbow::Left, sense: 1.0, objective, excess }
}

#[test]
fn kept_beats_not_kept_and_less_beats_more() {
    assert_eq!(found(2.0, 0.5).merit(10.0), 7.0);
    assert_eq!(found(2.0, -0.5).merit(10.0), 2.0);
    assert!(found(1.0, EXCESS_TOLERANCE).kept() && !found(1.0, 1.1 * EXCESS_TOLERANCE).kept());
    assert!(found(1.0, -1.0).beats(&found(2.0, -1.0)) && !found(2.0, -1.0).beats(&found(1.0, -1.0)));
    assert!(!found(1.0, -1.0).beats(&found(1.0, -1.0)) && !found(1.0, 0.1).beats(&found(2.0, 0.1)));
    assert!(found(9.0, 0.0).beats(&found(1.0, 0.1)) && !found(1.0, 0.1).beats(&found(9.0, 0.0)));
    assert!(found(9.0, 0.1).beats(&found(1.0, 0.2)) && !found(1.0, 0.2).beats(&found(9.0, 0.1)));
}

fn gathered(problem: &Problem, arm: &crate::job::Arm) -> Vec<(Term, f64)> {
    let mut scratch = SlpScratch::new();
    scratch.gather(problem, &super::ArmKernel::new(arm), pose(arm, 0.5 * OPEN).lever.signum());
    scratch.pieces[..scratch.count].iter().map(|piece| (piece.term, piece.station.leaf_rad)).collect()
}

/// Leaf angles of a term that stand in the table, by index.
fn tabled(all: &[(Term, f64)], term: Term) -> Vec<usize> {
    let index = |leaf_rad: f64| leaf_rad / (OPEN / 40.0);
    let mut tabled: Vec<usize> = all
        .iter()
        .filter(|(other, leaf_rad)| *other == term && (index(*leaf_rad) - index(*leaf_rad).round()).abs() < 1e-9)
        .map(|(_, leaf_rad)| index(*leaf_rad).round() as usize)
        .collect();
    tabled.dedup();
    tabled
}

#[test]
fn terms_that_may_decide_are_gathered() {
    let near = rectangle([-0.3, 0.0], [-0.4, -0.1]);
    let far = rectangle([8.0, 9.0], [8.0, 9.0]);
    let plain = SetOut { place: Some(Place { x_m: 0.0, y_m: 0.0 }), ..fixtures::setout() };
    let fours: Vec<usize> = (0..=10).map(|index| 4 * index).collect();
    for arm in fixtures::arms(&mut Dice(91), 10) {
        for &aim in <Aim as crate::terms::words::Worded>::VALUES {
            for most_shaft_torque_n_m in [None, Some(100.0)] {
                let setout = SetOut { aim: Some(aim), most_shaft_torque_n_m, ..plain.clone() };
                let setout = fixtures::among(setout, alloc::vec![near, far], 0.0);
                with_problem(&setout, |problem| {
                    let all = gathered(problem, &arm);
                    let of = |term: Term| {
                        all.iter().filter(|(other, _)| *other == term).map(|(_, rad)| *rad).collect::<Vec<_>>()
                    };
                    let when = |is: bool, angles: &[f64]| if is { angles.to_vec() } else { Vec::new() };
                    assert_eq!(of(Term::Travel), when(aim == Aim::LeastShaftTravel, &[OPEN]));
                    assert_eq!(of(Term::Place), when(aim == Aim::NearestPlace, &[OPEN]));
                    for term in
                        [Term::Square(1.0), Term::Square(-1.0), Term::LinkShort, Term::LinkLong, Term::TravelLimit]
                    {
                        assert_eq!(of(term), [OPEN], "{term:?}");
                    }
                    let kernel = super::ArmKernel::new(&arm);
                    let turns: Vec<f64> =
                        problem.turns(&kernel).iter().flatten().map(|station| station.leaf_rad).collect();
                    assert_eq!(of(Term::Far), turns);
                    for sign in [1.0, -1.0] {
                        assert_eq!(of(Term::Near(sign)), [&[0.0][..], &turns].concat());
                    }
                    for (term, is) in [
                        (Term::Torque, aim == Aim::LeastShaftTorque),
                        (Term::Force, aim == Aim::LeastLinkForce),
                        (Term::TorqueLimit, most_shaft_torque_n_m.is_some()),
                    ] {
                        assert_eq!(tabled(&all, term), if is { fours.clone() } else { Vec::new() }, "{term:?}");
                    }
                    assert_eq!(tabled(&all, Term::Lever), [4, 12, 24, 36, 40]);
                    assert_eq!(tabled(&all, Term::Sense), [0, 20, 40]);
                    assert!(of(Term::Clear(1, 0)).is_empty() && of(Term::Clear(1, 1)).is_empty());
                    for part in [0, 1] {
                        let gap =
                            fixtures::least(0.0, OPEN, |rad| problem.gap_m(&kernel, 0, part, &problem.station(rad)));
                        let some = tabled(&all, Term::Clear(0, part));
                        if gap < 0.29 {
                            assert!([0, 13, 26, 40].iter().all(|index| some.contains(index)), "{some:?} at {gap}");
                        } else if gap > 0.31 {
                            assert!(!some.contains(&13) || !some.contains(&26), "{some:?} at {gap}");
                        }
                    }
                });
            }
        }
        with_problem(&plain, |problem| {
            problem.given_up = Some(Limit::BracketUM);
            let all = gathered(problem, &arm);
            for sign in [1.0, -1.0] {
                assert_eq!(all.iter().filter(|(term, _)| *term == Term::Beyond(2, sign)).count(), 1);
            }
            assert!(all.iter().all(|(term, _)| *term != Term::Torque && *term != Term::Travel));
        });
    }
}

/// Each local maximum inside the swing has its own angle among what is gathered.
#[test]
fn local_maxima_are_gathered_at_their_angles() {
    let mut local_maxima = 0;
    with_problem(&fixtures::setout(), |problem| {
        for arm in fixtures::arms(&mut Dice(92), 40) {
            let all = gathered(problem, &arm);
            let (kernel, sense) = (super::ArmKernel::new(&arm), pose(&arm, 0.5 * OPEN).lever.signum());
            for (term, from) in [(Term::Torque, 0.0), (Term::Lever, 0.1 * OPEN)] {
                let value = |rad: f64| problem.value(&kernel, sense, &Piece::new(term, problem.station(rad)));
                let angles: Vec<f64> = (0..=800).map(|index| OPEN * f64::from(index) / 800.0).collect();
                for three in angles.windows(3).filter(|three| three[0] >= from + 0.05 && three[2] < OPEN - 0.05) {
                    if value(three[1]) > value(three[0]) && value(three[1]) > value(three[2]) {
                        local_maxima += 1;
                        let there = all.iter().any(|(other, rad)| *other == term && (rad - three[1]).abs() < 3e-3);
                        assert!(there, "{term:?} at {}", three[1]);
                    }
                }
            }
        }
    });
    assert!(local_maxima > 15, "{local_maxima}");
}

#[test]
fn slopes_are_difference_quotients() {
    let setout = SetOut { straightness: Some([0.6, 0.99]), link_m: [0.2, 1.5], ..fixtures::setout() };
    with_problem(&setout, |problem| {
        let [least, mut most] = problem.bounds();
        // The shaft's y has no width; the crank starts at its most, so that it can only be moved back.
        let mut point: Point = core::array::from_fn(|i| 0.5 * (least[i] + most[i]));
        (point[1], point[3], point[4]) = (0.5, 0.7, 0.2);
        let bounds = {
            let mut low = least;
            low[1] = 0.5;
            most[1] = 0.5;
            most[3] = 0.7;
            [low, most]
        };
        let mut scratch = SlpScratch::new();
        let (mut values, mut slopes) = ([0.0; ROWS], [[9.0; VARIABLES]; ROWS]);
        for elbow in [Elbow::Left, Elbow::Right] {
            let sense = problem.sense(&problem.kernel(&point, elbow));
            let here = problem.found(&point, elbow, sense);
            scratch.tangents(problem, &here, &mut values, &mut slopes, &bounds);
            for index in 0..scratch.count {
                let piece = scratch.pieces[index];
                let value = |point: &Point| problem.value(&problem.kernel(point, elbow), sense, &piece);
                assert_eq!(values[index], value(&point));
                assert_eq!(slopes[index][DIMENSIONS..], [0.0, 0.0]);
                for i in 0..DIMENSIONS {
                    let (mut below, mut above) = (point, point);
                    (below[i], above[i]) = (point[i] - 1e-5, point[i] + 1e-5);
                    let slope = if i == 1 { 0.0 } else { (value(&above) - value(&below)) / 2e-5 };
                    close(slopes[index][i], slope, 2e-3 * slope.abs().max(1.0));
                }
            }
        }
    });
}

/// The least objective of all points that keep the limits, over two variables: a grid that closes in on its best.
fn closing_in(problem: &Problem, bounds: &[Point; 2], free: [usize; 2], elbow: Elbow, sense: f64) -> f64 {
    const SIDE: usize = 20;
    let [mut low, mut high] = *bounds;
    let mut best = (f64::MAX, low);
    for _ in 0..14 {
        for i in 0..=SIDE {
            for j in 0..=SIDE {
                let mut point = low;
                for (variable, index) in free.into_iter().zip([i, j]) {
                    point[variable] += (high[variable] - low[variable]) * index as f64 / SIDE as f64;
                }
                let tried = problem.found(&point, elbow, sense);
                let worth = if tried.excess <= EXCESS_TOLERANCE { tried.objective } else { 1e3 + tried.excess };
                if worth < best.0 {
                    best = (worth, point);
                }
            }
        }
        for variable in free {
            let reach = 0.2 * (high[variable] - low[variable]);
            low[variable] = (best.1[variable] - reach).max(bounds[0][variable]);
            high[variable] = (best.1[variable] + reach).min(bounds[1][variable]);
        }
    }
    best.0
}

/// Sites of two free variables, each with another aim or limit that decides.
fn narrow() -> Vec<(SetOutSite, [usize; 2])> {
    let lengths = SetOut {
        shaft_x_m: [-0.35; 2],
        shaft_y_m: [0.5; 2],
        straightness: Some([0.95; 2]),
        link_m: [0.2, 1.2],
        ..fixtures::setout()
    };
    let places = SetOut {
        shaft_x_m: [-0.55, -0.1],
        shaft_y_m: [0.25, 0.7],
        bracket_u_m: [1.0; 2],
        crank_m: [0.6; 2],
        place: Some(Place { x_m: 0.0, y_m: 0.1 }),
        ..lengths.clone()
    };
    let post = alloc::vec![rectangle([-0.25, 0.15], [-0.2, 0.3])];
    let alone = [
        (lengths.clone(), [2, 3]),
        (SetOut { square_deg: Some(10.0), ..lengths.clone() }, [2, 3]),
        (SetOut { least_lever_m: Some(0.35), ..lengths.clone() }, [2, 3]),
        (SetOut { link_m: [0.5, 0.52], ..lengths.clone() }, [2, 3]),
        (SetOut { aim: Some(Aim::LeastShaftTravel), least_lever_m: Some(0.3), ..lengths.clone() }, [2, 3]),
        (SetOut { aim: Some(Aim::LeastShaftTravel), most_shaft_torque_n_m: Some(95.0), ..lengths.clone() }, [2, 3]),
        (SetOut { aim: Some(Aim::LeastLinkForce), shaft_travel_deg: Some(120.0), ..lengths.clone() }, [2, 3]),
        (SetOut { aim: Some(Aim::NearestPlace), least_lever_m: Some(0.25), ..places.clone() }, [0, 1]),
        (SetOut { straightness: Some([0.8, 1.0]), crank_m: [0.7; 2], square_deg: Some(5.0), ..lengths }, [2, 4]),
    ];
    let among = [
        fixtures::among(SetOut { aim: Some(Aim::NearestPlace), ..places.clone() }, post.clone(), 0.03),
        fixtures::among(places, post, 0.05),
    ];
    alone.into_iter().map(|(setout, free)| (setout.into(), free)).chain(among.map(|site| (site, [0, 1]))).collect()
}

#[test]
fn descent_ends_at_the_optimum_of_a_closing_grid() {
    for (index, (setout, free)) in narrow().into_iter().enumerate() {
        for (elbow, choice) in [(Elbow::Left, ElbowChoice::Left), (Elbow::Right, ElbowChoice::Right)] {
            let mut setout = setout.clone();
            setout.setout.elbow = Some(choice);
            with_problem(&setout, |problem| {
                problem.exact = true;
                let bounds = problem.bounds();
                let mut scratch = SlpScratch::new();
                let starts = problem.scan_in(&bounds, 120, 6);
                let starts = starts.into_iter().filter(|start| start.sense > 0.0);
                let mut best: Option<Found> = None;
                for start in starts {
                    let end = scratch.descend(problem, start, &bounds, TO_THE_END);
                    let end = scratch.restore(problem, end, &bounds);
                    if best.is_none_or(|best| end.beats(&best)) {
                        best = Some(end);
                    }
                }
                let wanted = closing_in(problem, &bounds, free, elbow, 1.0);
                if wanted < 1e3 {
                    let best = best.unwrap_or_else(|| panic!("problem {index}: no start"));
                    assert!(best.kept(), "problem {index}: {best:?} where {wanted} is kept");
                    assert!(
                        best.objective <= wanted + 2e-6 * wanted.max(1.0),
                        "problem {index}: {} {wanted}",
                        best.objective
                    );
                }
            });
        }
    }
}

/// A variable at its most is moved back for its slope: what is beyond is not asked, however far the quotient's step would reach.
#[test]
fn slopes_at_an_upper_bound_look_back() {
    let setout = SetOut { straightness: Some([0.9, 1.0]), ..fixtures::setout() };
    with_problem(&setout, |problem| {
        let bounds = problem.bounds();
        let mut scratch = SlpScratch::new();
        let (mut values, mut slopes) = ([0.0; ROWS], [[0.0; VARIABLES]; ROWS]);
        for at_most in [true, false] {
            let point: Point = core::array::from_fn(|i| if at_most { bounds[1][i] } else { bounds[0][i] });
            let sense = problem.sense(&problem.kernel(&point, Elbow::Left));
            scratch.tangents(problem, &problem.found(&point, Elbow::Left, sense), &mut values, &mut slopes, &bounds);
            for index in 0..scratch.count {
                let piece = scratch.pieces[index];
                let value = |point: &Point| problem.value(&problem.kernel(point, Elbow::Left), sense, &piece);
                for i in 0..DIMENSIONS {
                    let mut inside = point;
                    let step = if i == 4 { 1e-5 } else { 1e-7 } * if at_most { -1.0 } else { 1.0 };
                    inside[i] += step;
                    assert_eq!(
                        slopes[index][i],
                        (value(&inside) - value(&point)) / (inside[i] - point[i]).signum() / step.abs()
                    );
                }
            }
        }
    });
}
