//! Every term against the mechanics of the fixtures; the margin is made a millimetre so that its sign shows.

use super::super::fixtures::{self, Dice, OPEN, among, close, effort, pose, rectangle, storm, travel, with_problem};
use super::super::problem::{Margin, Problem};
use super::{LEAST_SENSE_M, Limit, Piece, Term};
use crate::arm::setout::kernel::ArmKernel;
use crate::job::{Aim, Arm, Place, SetOut, SetOutSite};
use crate::numerics::separation_m;

const HAIR: f64 = 1e-3;

fn limited() -> SetOutSite {
    let setout = SetOut {
        link_m: [0.45, 0.7],
        straightness: Some([0.9, 0.99]),
        square_deg: Some(12.0),
        least_lever_m: Some(0.25),
        shaft_travel_deg: Some(130.0),
        most_shaft_torque_n_m: Some(90.0),
        place: Some(Place { x_m: -0.4, y_m: 0.55 }),
        ..fixtures::setout()
    };
    among(setout, alloc::vec![rectangle([-0.2, 0.1], [-0.2, 0.2]), rectangle([0.5, 0.9], [0.6, 0.8])], 0.03)
}

/// The largest of a load at the tabulated angles.
fn largest(of: fn(f64) -> f64) -> f64 {
    (0..=40).map(|index| of(OPEN * f64::from(index) / 40.0)).fold(0.0, f64::max)
}

fn on(setout: &SetOutSite, then: impl Fn(&Problem, &Arm, &dyn Fn(Term, f64) -> f64)) {
    with_problem(setout, |problem| {
        problem.margin = Margin { length_m: HAIR, plain: HAIR };
        for arm in fixtures::arms(&mut Dice(31), 12) {
            let (kernel, sense) = (ArmKernel::new(&arm), pose(&arm, 0.5 * OPEN).lever.signum());
            let value =
                |term: Term, leaf_rad: f64| problem.value(&kernel, sense, &Piece::new(term, problem.station(leaf_rad)));
            then(problem, &arm, &value);
        }
    });
}

#[test]
fn loads_and_levers_are_the_link_s() {
    let (torque_scale, force_scale) = (largest(effort), largest(storm));
    on(&limited(), |_, arm, value| {
        let sense = pose(arm, 0.5 * OPEN).lever.signum();
        for leaf_rad in [0.0, 0.3, 1.1, OPEN] {
            let pose = pose(arm, leaf_rad);
            let torque = effort(leaf_rad) * pose.inverse_ratio / torque_scale;
            close(value(Term::Torque, leaf_rad), torque, 1e-7 * torque.max(1.0));
            let most = 90.0 / torque_scale * (1.0 - HAIR);
            close(value(Term::TorqueLimit, leaf_rad), torque - most, 1e-7 * torque.max(1.0));
            let force = storm(leaf_rad) / (sense * pose.lever * force_scale);
            close(value(Term::Force, leaf_rad), force, 1e-7 * force);
            close(value(Term::Lever, leaf_rad), 0.25 + HAIR - sense * pose.lever, 1e-9);
            close(value(Term::Sense, leaf_rad), LEAST_SENSE_M - sense * pose.lever, 1e-9);
            let along = pose.link.0 * leaf_rad.cos() + pose.link.1 * leaf_rad.sin();
            let square = 12_f64.to_radians().sin() - HAIR;
            close(value(Term::Square(1.0), leaf_rad), along - square, 1e-9);
            close(value(Term::Square(-1.0), leaf_rad), -along - square, 1e-9);
        }
    });
}

#[test]
fn lengths_places_and_gaps_are_the_plan_s() {
    let setout = limited();
    on(&setout, |problem, arm, value| {
        close(value(Term::Travel, OPEN), travel(arm), 1e-8);
        close(value(Term::TravelLimit, OPEN), travel(arm) - 130_f64.to_radians() + HAIR, 1e-8);
        close(value(Term::Place, OPEN), (arm.shaft_x_m + 0.4).hypot(arm.shaft_y_m - 0.55), 1e-12);
        close(value(Term::LinkShort, OPEN), 0.45 - arm.link_m, 1e-12);
        close(value(Term::LinkLong, OPEN), arm.link_m - 0.7, 1e-12);
        let (a, b) = (arm.crank_m, arm.link_m);
        for leaf_rad in [0.0, 0.8, OPEN] {
            let pose = pose(arm, leaf_rad);
            close(value(Term::Far, leaf_rad), pose.reach - a - b, 1e-12);
            close(value(Term::Near(1.0), leaf_rad), a - b - pose.reach, 1e-12);
            close(value(Term::Near(-1.0), leaf_rad), b - a - pose.reach, 1e-12);
            for (index, room) in setout.keep_out.iter().enumerate() {
                for (part, end) in [(0, (arm.shaft_x_m, arm.shaft_y_m)), (1, pose.bracket)] {
                    let gap = separation_m(&room.sides(), pose.elbow, end);
                    close(problem.gap_m(&ArmKernel::new(arm), index, part, &problem.station(leaf_rad)), gap, 1e-9);
                    close(value(Term::Clear(index, part), leaf_rad), 0.03 + HAIR - gap, 1e-9);
                }
            }
        }
        let straightness = pose(arm, 0.0).reach / (a + b);
        let beyond = [
            (arm.shaft_x_m, setout.shaft_x_m),
            (arm.shaft_y_m, setout.shaft_y_m),
            (arm.bracket_u_m, setout.bracket_u_m),
            (a, setout.crank_m),
            (straightness, [0.9, 0.99]),
        ];
        for (variable, (is, [least, most])) in beyond.into_iter().enumerate() {
            close(value(Term::Beyond(variable, -1.0), OPEN), least - is, 1e-12);
            close(value(Term::Beyond(variable, 1.0), OPEN), is - most, 1e-12);
        }
    });
}

#[test]
fn a_lever_the_wrong_way_is_a_force_without_bound() {
    with_problem(&fixtures::setout(), |problem| {
        let arm = fixtures::arms(&mut Dice(32), 1)[0];
        let sense = pose(&arm, 0.5 * OPEN).lever.signum();
        let piece = Piece::new(Term::Force, problem.station(0.5));
        let force = problem.value(&ArmKernel::new(&arm), -sense, &piece);
        close(force, storm(0.5) / (1e-6 * largest(storm)), 1e-3);
        // Without a limit on the torque none is exceeded.
        let piece = Piece::new(Term::TorqueLimit, problem.station(0.5));
        assert!(problem.value(&ArmKernel::new(&arm), sense, &piece) < -1e300);
    });
}

/// An angle so small that a margin would leave nothing keeps three quarters of itself.
#[test]
fn small_square_limit_keeps_three_quarters_inside_its_margin() {
    let mut setout = limited();
    setout.setout.square_deg = Some(0.1);
    on(&setout, |_, arm, value| {
        let pose = pose(arm, OPEN);
        let along = pose.link.0 * OPEN.cos() + pose.link.1 * OPEN.sin();
        close(value(Term::Square(1.0), OPEN), along - 0.75 * 0.1_f64.to_radians().sin(), 1e-9);
    });
}

#[test]
fn terms_belong_to_their_limits() {
    let told = [
        (Term::Torque, None),
        (Term::Force, None),
        (Term::Travel, None),
        (Term::Place, None),
        (Term::TorqueLimit, Some(Limit::MostShaftTorqueNM)),
        (Term::TravelLimit, Some(Limit::ShaftTravelDeg)),
        (Term::Lever, Some(Limit::LeastLeverM)),
        (Term::Square(1.0), Some(Limit::SquareDeg)),
        (Term::LinkShort, Some(Limit::LinkM)),
        (Term::LinkLong, Some(Limit::LinkM)),
        (Term::Sense, Some(Limit::Arm)),
        (Term::Far, Some(Limit::Arm)),
        (Term::Near(-1.0), Some(Limit::Arm)),
        (Term::Clear(0, 1), Some(Limit::KeepOut)),
        (Term::Beyond(0, 1.0), Some(Limit::ShaftXM)),
        (Term::Beyond(1, 1.0), Some(Limit::ShaftYM)),
        (Term::Beyond(2, 1.0), Some(Limit::BracketUM)),
        (Term::Beyond(3, 1.0), Some(Limit::CrankM)),
        (Term::Beyond(4, 1.0), Some(Limit::Straightness)),
    ];
    with_problem(&limited(), |problem| {
        for (term, limit) in told {
            assert_eq!(term.limit(), limit, "{term:?}");
            problem.given_up = None;
            assert_eq!(problem.is_objective(term.limit()), limit.is_none(), "{term:?}");
            for given_up in Limit::ALL {
                problem.given_up = Some(given_up);
                assert_eq!(problem.is_objective(term.limit()), limit == Some(given_up), "{term:?}");
            }
        }
        assert_eq!(Limit::CrankM.variable(), Some(3));
        assert_eq!(Limit::Straightness.variable(), Some(4));
        assert_eq!(Limit::LinkM.variable(), None);
        problem.given_up = None;
        assert!(problem.wants(Aim::LeastShaftTorque) && !problem.wants(Aim::LeastLinkForce));
        problem.given_up = Some(Limit::LinkM);
        assert!(!problem.wants(Aim::LeastShaftTorque));
    });
}

#[test]
fn an_excess_is_told_in_the_document_s_unit() {
    with_problem(&limited(), |problem| {
        close(Limit::ShaftTravelDeg.in_document(0.1, problem), 18.0 / core::f64::consts::PI, 1e-12);
        close(Limit::MostShaftTorqueNM.in_document(0.25, problem), 0.25 * largest(effort), 1e-9);
        close(Limit::CrankM.in_document(0.25, problem), 0.25, 0.0);
        // From 12° to 30°, sin 30° = ½; to a right angle and no further.
        close(Limit::SquareDeg.in_document(0.5 - 12_f64.to_radians().sin(), problem), 18.0, 1e-9);
        close(Limit::SquareDeg.in_document(3.0, problem), 78.0, 1e-9);
        close(Limit::SquareDeg.in_document(-3.0, problem), -12.0, 1e-9);
    });
}
