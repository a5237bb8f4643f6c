//! What a search answers beside its best: other optima, what is in the way, the job's own arm weighed, the front's points.

use crate::{ROUNDING, block, check, read, site};
use pintle_core::{
    arm::{Limit, rule_of_thumb},
    job::{Aim, Arm, Elbow, Job, SetOut},
    plan::{evaluate, pareto_front, plan, set_out},
};

fn with(job: &Job, change: impl FnOnce(&mut SetOut)) -> Job {
    let mut setout = block(job).clone();
    change(&mut setout);
    pintle_tests::changed!(job.clone(), setout: Some(setout))
}

/// Lengths free alone: quick, and with one optimum or two.
fn narrow() -> Job {
    with(&site("yard.json"), |setout| {
        setout.shaft_x_m = [-0.3, -0.3];
        setout.shaft_y_m = [0.5, 0.5];
        setout.bracket_u_m = [0.9, 1.1];
    })
}

fn apart(one: &Arm, other: &Arm) -> bool {
    let numbers = |arm: &Arm| [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, arm.link_m];
    one.elbow != other.elbow || numbers(one).iter().zip(numbers(other)).any(|(one, other)| (one - other).abs() >= 0.01)
}

#[test]
fn others_are_other_arms_and_no_better() {
    let mut others = 0;
    for name in ["yard.json", "wide_choice.json", "posts_and_kerb.json"] {
        let job = site(name);
        let answer = set_out(&job).expect("a valid job");
        let best = answer.best.expect("each has one");
        assert!(answer.nearest.is_none());
        for (index, other) in answer.others.iter().enumerate() {
            others += 1;
            assert!(apart(&best.arm, &other.arm), "{name}: the best again");
            let last = if index == 0 { best } else { answer.others[index - 1] };
            assert!(apart(&last.arm, &other.arm) && other.shaft_torque_n_m >= last.shaft_torque_n_m * (1.0 - 1e-6));
            assert!(check::exceeded(&job, block(&job), &other.arm, ROUNDING).is_empty());
        }
    }
    assert!(others > 0);
}

/// The figures of a stand are those of its plan and of its triangle.
#[test]
fn arm_evaluated_has_the_figures_of_its_plan() {
    let mut job = pintle_tests::changed!(narrow(), arm_half_width_m: Some(0.02));
    assert_eq!(evaluate(&job).expect("a valid job"), None);
    let arm = set_out(&job).expect("a valid job").best.expect("one").arm;
    job.arm = Some(arm);
    let stand = evaluate(&job).expect("a valid job").expect("it works");
    let planned = plan(&job).expect("it works");
    assert_eq!(stand.arm, arm);
    assert_eq!(stand.shaft_torque_n_m, planned.peak.shaft_torque_n_m);
    assert_eq!(stand.reserve, Some(400.0 / stand.shaft_torque_n_m));
    assert!((stand.shaft_travel_deg - planned.shaft_travel_deg.abs()).abs() < 1e-9);
    let closed = (arm.bracket_u_m - arm.shaft_x_m).hypot(arm.bracket_v_m - arm.shaft_y_m);
    assert!((stand.straightness - closed / (arm.crank_m + arm.link_m)).abs() < 1e-12);
    // Both limits of the block in turn: what the stand says is what the check finds at the edge.
    let edge =
        |change: &dyn Fn(&mut SetOut)| check::exceeded(&job, block(&with(&job, change)), &arm, ROUNDING).is_empty();
    let (lever, off, gap) = (stand.least_lever_m, stand.off_square_deg.abs(), stand.clearance_m.expect("a post"));
    assert!(
        edge(&|setout| setout.least_lever_m = Some(lever - 1e-6))
            && !edge(&|setout| setout.least_lever_m = Some(lever + 1e-5))
    );
    assert!(
        edge(&|setout| setout.square_deg = Some(off + 1e-6)) && !edge(&|setout| setout.square_deg = Some(off - 1e-5))
    );
    // The arm's edge: its centre-line less half its width.
    let wide = |by: f64| {
        let wider = pintle_tests::changed!(job.clone(), arm_half_width_m: Some(0.02 + gap + by));
        check::exceeded(&wider, block(&wider), &arm, ROUNDING).is_empty()
    };
    assert!(wide(-1e-5) && !wide(1e-4), "{gap}");
    let travel = stand.shaft_travel_deg;
    assert!(
        edge(&|setout| setout.shaft_travel_deg = Some(travel + 1e-6))
            && !edge(&|setout| setout.shaft_travel_deg = Some(travel - 1e-5))
    );
    // An arm that does not close is not weighed; without a block there is nothing to evaluate by.
    let broken = pintle_tests::changed!(job.clone(), arm: Some(pintle_tests::changed!(arm, crank_m: 0.05)));
    assert_eq!(evaluate(&broken).expect("a valid job"), None);
    let paths =
        |errors: pintle_core::fault::Invalid| errors.errors.into_iter().map(|fault| fault.path).collect::<Vec<_>>();
    job.setout = None;
    assert_eq!(paths(evaluate(&job).expect_err("no block")), ["setout"]);
    assert_eq!(paths(set_out(&job).expect_err("no block")), ["setout"]);
    assert_eq!(paths(pareto_front(&job, Aim::LeastLinkForce, 3).expect_err("no block")), ["setout"]);
}

/// Without friction the link holds the gust alone, and that grows with the square of its speed; a storm that is not said is the working gust.
#[test]
fn the_link_s_force_is_the_storm_s() {
    let mut value = serde_json::to_value(narrow()).expect("JSON");
    value["hinges"]["friction_coefficient"] = serde_json::json!(0);
    let mut job = read(&value);
    job.arm = Some(set_out(&job).expect("a valid job").best.expect("one").arm);
    let force = |speed: Option<f64>| {
        let job = with(&job, |setout| setout.storm_speed_m_s = speed);
        evaluate(&job).expect("a valid job").expect("it works").link_force_n
    };
    let working = force(Some(12.0));
    assert!(working > 0.0 && (force(None) / working - 1.0).abs() < 1e-12);
    assert!((force(Some(24.0)) / working - 4.0).abs() < 1e-9);
    assert!((force(Some(30.0)) / working - 6.25).abs() < 1e-9);
}

/// Where arms exist but none on the step, the step is in the way.
#[test]
fn a_step_in_the_way_is_named() {
    let job = with(&narrow(), |setout| {
        setout.crank_m = [0.51, 0.59];
        setout.link_m = [0.51, 0.9];
    });
    assert!(set_out(&job).expect("a valid job").best.is_some());
    let job = with(&job, |setout| setout.step_m = Some(0.1));
    let answer = set_out(&job).expect("a valid job");
    assert!(answer.best.is_none() && answer.others.is_empty() && answer.rule_of_thumb.is_none());
    let nearest = answer.nearest.expect("something is");
    assert_eq!((nearest.limit, nearest.by), (Limit::StepM, 0.1));
    assert_eq!(nearest.exceeded.len(), 1);
    assert!(nearest.changes.is_empty());
}

/// What is in the way of an arm fixed all over: each limit it exceeds, by what the triangle says, the worst first; changes by size.
#[test]
fn everything_in_the_way_is_told_by_how_much() {
    let arm = set_out(&narrow()).expect("a valid job").best.expect("one").arm;
    let closed = (arm.bracket_u_m - arm.shaft_x_m).hypot(arm.bracket_v_m - arm.shaft_y_m);
    let fixed = with(&narrow(), |setout| {
        setout.bracket_u_m = [arm.bracket_u_m; 2];
        setout.crank_m = [arm.crank_m; 2];
        setout.straightness = Some([closed / (arm.crank_m + arm.link_m); 2]);
        setout.elbow = Some(if arm.elbow == Elbow::Left {
            pintle_core::job::ElbowChoice::Left
        } else {
            pintle_core::job::ElbowChoice::Right
        });
    });
    let found = set_out(&fixed).expect("a valid job").best.expect("itself");
    assert!(!apart(&found.arm, &arm));
    let job = with(&fixed, |setout| {
        setout.shaft_travel_deg = Some(found.shaft_travel_deg - 3.0);
        setout.least_lever_m = Some(found.least_lever_m + 0.04);
    });
    let nearest = set_out(&job).expect("a valid job").nearest.expect("two limits are exceeded");
    assert!(!apart(&nearest.arm, &arm));
    let by = |limit: Limit| nearest.exceeded.iter().find(|change| change.limit == limit).map(|change| change.by);
    assert!((by(Limit::ShaftTravelDeg).expect("told") - 3.0).abs() < 1e-3);
    assert!((by(Limit::LeastLeverM).expect("told") - 0.04).abs() < 1e-5);
    // 3° are 0.052 rad, more than 0.04 m in the search's own units.
    assert_eq!((nearest.limit, nearest.by), (nearest.exceeded[0].limit, nearest.exceeded[0].by));
    assert_eq!(nearest.limit, Limit::ShaftTravelDeg);
    assert_eq!(nearest.exceeded.len(), 2);
    // Either alone would not do.
    for change in &nearest.changes {
        assert!(change.limit != Limit::ShaftTravelDeg && change.limit != Limit::LeastLeverM && change.by > 0.0);
    }
}

/// Changes that would do alone, the least first: metres and radians alike, the link's angle by its sine, torque by the leaf's own.
#[test]
fn the_least_change_is_told_first() {
    let job = with(&site("yard.json"), |setout| {
        setout.shaft_travel_deg = Some(60.0);
    });
    let nearest = set_out(&job).expect("a valid job").nearest.expect("no arm turns its shaft so little");
    let sizes: Vec<f64> = nearest
        .changes
        .iter()
        .map(|change| match change.limit {
            Limit::ShaftTravelDeg => change.by.to_radians(),
            // From the site's own 12°.
            Limit::SquareDeg => (change.by + 12.0).to_radians().sin() - 12_f64.to_radians().sin(),
            _ => change.by,
        })
        .collect();
    assert!(sizes.len() >= 2 && sizes.windows(2).all(|pair| pair[0] <= pair[1] + 1e-9), "{:?}", nearest.changes);
    assert!(sizes.iter().all(|size| *size > 0.0));
}

/// Beside the best stand the lengths by the rule of thumb for its own shaft and bracket.
#[test]
fn the_rule_of_thumb_stands_beside_the_best() {
    for job in [narrow(), with(&narrow(), |setout| setout.step_m = Some(0.01))] {
        let answer = set_out(&job).expect("a valid job");
        let arm = answer.best.expect("one").arm;
        let (shaft, bracket) = ((arm.shaft_x_m, arm.shaft_y_m), (arm.bracket_u_m, arm.bracket_v_m));
        assert_eq!(answer.rule_of_thumb, Some(rule_of_thumb(shaft, bracket, job.open_rad(), 0.0)));
    }
}

/// Each limit on the torque is the same factor above the one before; where nothing is gained a point is not told twice.
#[test]
fn the_front_s_points_stand_by_one_factor() {
    let job = narrow();
    let points = pareto_front(&job, Aim::LeastShaftTravel, 4).expect("a valid job");
    assert_eq!(points.len(), 4);
    let torque = |index: usize| points[index].shaft_torque_n_m;
    let factor = (torque(3) / torque(0)).powf(1.0 / 3.0);
    for index in 1..3 {
        assert!((torque(index) / (torque(0) * factor.powi(index as i32)) - 1.0).abs() < 1e-5, "{}", torque(index));
    }
    assert_eq!(pareto_front(&job, Aim::LeastShaftTravel, 0).expect("a valid job").len(), 2);
    assert_eq!(pareto_front(&job, Aim::LeastShaftTorque, 4).expect("a valid job").len(), 1);
    let none = with(&job, |setout| setout.shaft_travel_deg = Some(20.0));
    assert!(pareto_front(&none, Aim::LeastShaftTravel, 3).expect("a valid job").is_empty());
}
