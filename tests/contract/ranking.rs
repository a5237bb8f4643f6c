//! Which operator of a list will do: every answer of a ranking held to planning each operator whole, by hand, through `plan` and `set_out`.

use super::{job, with};
use pintle_core::arm::Limit;
use pintle_core::fault::NamedValue;
use pintle_core::operators::{self, ListEntry};
use pintle_core::plan::*;
use pintle_core::units::Quantity;
use pintle_core::{Document, job::Job};
use serde_json::{Value, json};

fn document(value: &Value) -> Document {
    serde_json::from_value(value.clone()).expect("a document")
}

fn read_job(job: &Value) -> Job {
    Job::read(&document(job)).unwrap_or_else(|invalid| panic!("{invalid}"))
}

/// Entries of a list of these operators.
fn entries(list: &[Value]) -> Vec<ListEntry> {
    let read = operators::read(&document(&json!({ "operators": list })));
    assert!(read.left_out.is_empty(), "{:?}", read.left_out);
    read.operators
}

fn demonstration() -> Vec<Value> {
    let list: Value = serde_json::from_str(include_str!("../../www/data/operators.json")).expect("JSON");
    list["operators"].as_array().expect("a list").clone()
}

/// The demonstration job on a site with room, a post and a wall, and cycles.
fn site() -> Value {
    let mut job = job();
    job["setout"] = json!({ "shaft_x_m": [-0.6, -0.1], "shaft_y_m": [0.25, 0.7], "bracket_u_m": [0.7, 1.6], "bracket_v_m": 0.06,
        "crank_m": [0.35, 1.0], "link_m": [0.35, 1.0], "straightness": [0.95, 1.0], "least_lever_m": 0.2, "shaft_travel_deg": 175 });
    job["obstacles"] = json!([{ "kind": "post", "hinge_post": true, "x_m": [-0.2, -0.02], "y_m": [-0.15, 0.1] }]);
    job["motion"] = json!({ "slow_close_deg": 15, "duty": { "cycles_per_hour": 12, "cycles_per_day": 60 } });
    job["samples"] = json!(11);
    job
}

/// A job with an operator in it, put together by hand from what list and job say.
fn whole(job: &Value, operator: &Value, arm: Option<&Value>) -> Value {
    let mut job = job.clone();
    let own = job["operator"].clone();
    job["operator"] = json!({});
    for key in ["rated_torque_n_m", "peak_torque_n_m", "shaft_speed_deg_s", "arm_efficiency", "body"] {
        job["operator"][key] = operator.get(key).cloned().unwrap_or(Value::Null);
    }
    for key in ["arm_efficiency", "body"] {
        if job["operator"][key].is_null() {
            job["operator"][key] = own.get(key).cloned().unwrap_or(Value::Null);
        }
    }
    for key in ["back_efficiency", "back_drives"] {
        let said = operator.get(key).or(own.get(key));
        job["operator"][key] = said.cloned().unwrap_or(Value::Null);
    }
    // In these lists the plate lies within the body.
    if job["setout"].is_object() {
        for key in ["crank_m", "link_m"] {
            if let Some(range) = operator["kit"].get(key) {
                job["setout"][key] = range.clone();
            }
        }
        if let (Some(own), Some(site)) =
            (operator["shaft_travel_deg"].as_f64(), job["setout"]["shaft_travel_deg"].as_f64())
        {
            job["setout"]["shaft_travel_deg"] = json!(own.min(site));
        }
        job["setout"]["step_m"] = operator["kit"].get("step_m").cloned().unwrap_or(Value::Null);
    }
    if let Some(half) = operator["kit"].get("half_width_m") {
        job["arm_half_width_m"] = half.clone();
    }
    if operator["shaft_speed_deg_s"].is_null() {
        job["motion"] = Value::Null;
    }
    if let Some(arm) = arm {
        job["arm"] = arm.clone();
    }
    job
}

fn planned(job: &Value) -> Option<Plan> {
    plan(&read_job(job)).ok()
}

/// Findings that keep an operator from doing.
const STOPS: [FindingCode; 6] = [
    FindingCode::DemandOverRated,
    FindingCode::MotionOverPeak,
    FindingCode::ArmHits,
    FindingCode::ArmHitsLeaf,
    FindingCode::OperatorHits,
    FindingCode::OperatorHitsLeaf,
];

/// Everything a standing says is what the plan of the whole job says, to the bit.
fn is_the_plan(standing: &OperatorStanding, plan: &Plan) {
    assert_eq!(standing.rating, plan.rating);
    assert_eq!(standing.wind_limit, plan.wind_limit);
    assert_eq!((standing.shaft_torque_n_m, standing.leaf_deg), (plan.peak.shaft_torque_n_m, plan.peak.leaf_deg));
    assert_eq!(standing.shaft_travel_deg, plan.shaft_travel_deg);
    if let Some(motion) = &plan.motion {
        assert_eq!(
            (standing.opening_s, standing.closing_s),
            (Some(motion.opening.time_s), Some(motion.closing.time_s))
        );
    }
    let clearance = plan.clearances.iter().flat_map(|clearances| &clearances.gaps);
    let of_operator = clearance.filter(|gap| gap.part == MovingPart::Operator).map(|gap| gap.least_m);
    assert_eq!(standing.clearance_m, of_operator.reduce(f64::min));
    let stopped = plan.findings.iter().any(|finding| STOPS.contains(&finding.code));
    let short = plan.findings.iter().any(|finding| finding.code == FindingCode::ReserveBelowRequired);
    let fits =
        |code| !matches!(code, RefusalCode::CrankOutsideKit | RefusalCode::LinkOutsideKit | RefusalCode::TravelTooLong);
    match &standing.refusal {
        None => assert!(!stopped && !short, "{:?}", plan.findings),
        Some(refusal) if fits(refusal.code) => assert!(stopped || short, "{refusal:?}: {:?}", plan.findings),
        // The plan knows nothing of kits.
        Some(_) => {}
    }
}

fn of(values: &[NamedValue], name: &str) -> f64 {
    values.iter().find(|value| value.name == name).unwrap_or_else(|| panic!("no {name} in {values:?}")).value
}

fn checked_against_whole_plans(job: &Value, list: &[Value]) -> OperatorRanking {
    let ranking = rank(&read_job(job), &entries(list), RankAsked::default()).expect("valid");
    assert_eq!(ranking.operators.len(), list.len());
    for one in &ranking.operators {
        let operator = &list[one.index];
        assert_eq!(operator["id"], json!(one.id));
        let placed = whole(job, operator, None);
        match (&one.as_placed, planned(&placed)) {
            (Some(standing), Some(plan)) => is_the_plan(standing, &plan),
            (None, None) => {}
            (standing, plan) => panic!("{}: {standing:?} beside {:?}", one.id, plan.map(|plan| plan.rating)),
        }
        if job["setout"].is_null() {
            assert_eq!((one.place, &one.best), (PlaceSought::NotAsked, &None));
        } else {
            let answer = set_out(&read_job(&placed)).expect("valid");
            match (&one.best, &answer.best) {
                (Some(standing), Some(best)) => {
                    assert_eq!(standing.arm, best.arm, "{}", one.id);
                    assert_eq!(standing.shaft_torque_n_m, best.shaft_torque_n_m, "{}", one.id);
                    let arm = serde_json::to_value(best.arm).expect("serialises");
                    is_the_plan(standing, &planned(&whole(job, operator, Some(&arm))).expect("it works"));
                }
                (None, None) => {
                    assert_eq!(one.place, PlaceSought::NotFound);
                    let nearest = answer.nearest.expect("what is in the way");
                    if let Some(refusal) = one.refusal.as_ref().filter(|refusal| refusal.code == RefusalCode::NoPlace) {
                        assert_eq!((refusal.limit, of(&refusal.values, "amount")), (Some(nearest.limit), nearest.by));
                    }
                }
                (standing, best) => panic!("{}: {standing:?} beside {best:?}", one.id),
            }
        }
        let stands = [&one.as_placed, &one.best].into_iter().flatten();
        let anywhere = stands.clone().any(|standing| standing.refusal.is_none());
        assert_eq!(one.does, one.refusal.is_none());
        assert!(!one.does || anywhere, "{one:?}");
        // The largest of the places where it does, where it does anywhere.
        let counted = stands.filter(|standing| standing.refusal.is_none() || !anywhere);
        assert_eq!(one.reserve, counted.filter_map(|standing| standing.rating.reserve).reduce(f64::max));
    }
    let doing: Vec<bool> = ranking.operators.iter().map(|one| one.does).collect();
    assert!(doing.windows(2).all(|pair| pair[0] >= pair[1]), "{doing:?}");
    for pair in ranking.operators.windows(2).filter(|pair| pair[0].does == pair[1].does) {
        assert!(pair[0].reserve.is_none() || pair[0].reserve >= pair[1].reserve, "{pair:?}");
    }
    ranking
}

#[test]
fn the_demonstration_list_is_ranked_as_whole_plans_say() {
    let ranking = checked_against_whole_plans(&site(), &demonstration());
    assert!(ranking.operators.iter().any(|one| one.does) && ranking.operators.iter().any(|one| !one.does));
    // The gate's leaf of 3.2 m is too long for the wicket's, whose longest is 1.8 m.
    let wicket = ranking.operators.iter().find(|one| one.id == "demo-w").expect("listed");
    let refusal = wicket.refusal.as_ref().expect("refused");
    assert_eq!(refusal.code, RefusalCode::LeafTooLong);
    assert_eq!([of(&refusal.values, "length"), of(&refusal.values, "limit")], [3.2, 1.8]);
}

#[test]
fn bare_lists_and_bare_jobs_are_ranked_as_whole_plans_say() {
    let bare = |id: &str, rated: f64| json!({ "id": id, "name": id, "rated_torque_n_m": rated });
    let mut quick = bare("quick", 500.0);
    (quick["shaft_speed_deg_s"], quick["peak_torque_n_m"]) = (json!(60), json!(520));
    let mut lossy = bare("lossy", 500.0);
    (lossy["arm_efficiency"], lossy["shaft_speed_deg_s"]) = (json!(0.6), json!(7));
    let list = [bare("small", 200.0), bare("large", 2000.0), quick, lossy];
    // No place asked for, no motion.
    checked_against_whole_plans(&job(), &list);
    let mut moving = job();
    moving["motion"] = json!({ "ramp_up_s": 0.2, "ramp_down_s": 0.2 });
    let ranking = checked_against_whole_plans(&moving, &list);
    let quick = ranking.operators.iter().find(|one| one.id == "quick").expect("listed");
    assert_eq!(quick.refusal.as_ref().map(|refusal| refusal.code), Some(RefusalCode::MotionOverPeakTorque));
    // Nowhere to stand: the bracket cannot be reached.
    let mut nowhere = site();
    nowhere["setout"]["bracket_u_m"] = json!([4.0, 4.2]);
    nowhere.as_object_mut().expect("an object").remove("arm");
    let ranking = checked_against_whole_plans(&nowhere, &list);
    for one in &ranking.operators {
        assert_eq!(one.refusal.as_ref().map(|refusal| refusal.code), Some(RefusalCode::NoPlace), "{one:?}");
    }
    assert_eq!(ranking.next_smaller.map(|next| list[next.index]["id"].clone()), Some(json!("large")));
}

/// The site, on which every error of a tape has to leave an arm that works.
fn proven_site(error_m: f64) -> Value {
    let mut job = site();
    job["setout"]["tape_proof"] = json!(true);
    job["tape"] = json!({ "error_m": error_m });
    job
}

/// What lets less back than it lets through, and what has to bear the tape, are other places: no operator is told that of another.
#[test]
fn the_way_back_and_the_tape_are_ranked_as_whole_plans_say() {
    let bare = |id: &str| json!({ "id": id, "name": id, "rated_torque_n_m": 900, "shaft_speed_deg_s": 8 });
    let (mut alike, mut stout, mut worm) = (bare("alike"), bare("stout"), bare("worm"));
    alike["arm_efficiency"] = json!(0.9);
    stout["body"] = json!({ "along_m": [-0.2, 0.3], "across_m": [-0.2, 0.2] });
    worm["back_drives"] = json!(false);
    let list = [bare("own"), alike, stout, worm];
    for mut job in [site(), proven_site(0.005)] {
        (job["operator"]["arm_efficiency"], job["operator"]["back_efficiency"]) = (json!(0.9), json!(0.3));
        // A leaf that leans drives the shaft on its way down.
        job["lean"] = json!({ "angle_deg": 2, "downhill_deg": 0 });
        let ranking = checked_against_whole_plans(&job, &list);
        let torque = |id: &str| {
            let one = ranking.operators.iter().find(|one| one.id == id).expect("listed");
            one.best.as_ref().unwrap_or_else(|| panic!("{one:?}")).shaft_torque_n_m
        };
        assert!(torque("own") <= torque("stout"), "a body takes room");
        assert_eq!(torque("own"), torque("worm"));
    }
    // Only the tape is in the way: by so many degrees.
    let mut job = proven_site(0.01);
    job.as_object_mut().expect("an object").remove("arm");
    job["setout"]["aim"] = json!("least_shaft_travel");
    job["setout"]["straightness"] = json!([0.85, 0.93]);
    for key in ["tape_proof", "least_lever_m"] {
        job["setout"].as_object_mut().expect("an object").remove(key);
    }
    let least_deg = set_out(&read_job(&job)).expect("valid").best.expect("a place").shaft_travel_deg;
    (job["setout"]["tape_proof"], job["setout"]["shaft_travel_deg"]) = (json!(true), json!(least_deg + 0.1));
    let ranking = checked_against_whole_plans(&job, &list[..1]);
    let refusal = ranking.operators[0].refusal.as_ref().expect("refused");
    assert_eq!((refusal.code, refusal.limit), (RefusalCode::NoPlace, Some(Limit::TapeShaftTravelDeg)));
    assert_eq!(refusal.values[0].quantity, Quantity::Angle);
}

/// A search in which the tape has to be borne, divided in any way, comes to the answer of one go, to the bit.
#[test]
fn a_search_with_a_proof_stops_and_goes_on() {
    let mut stepped = proven_site(0.005);
    stepped["setout"]["step_m"] = json!(0.02);
    // No lever is left where the tape errs by so much.
    let mut hopeless = proven_site(0.1);
    hopeless["setout"]["least_lever_m"] = json!(0.3);
    for (job, found) in [(proven_site(0.005), true), (stepped, true), (hopeless, false)] {
        let at_once = set_out(&read_job(&job)).expect("valid");
        assert!(at_once.without_proof.flatten().is_some());
        assert_eq!(at_once.best.is_some_and(|best| best.at_corners.is_some()), found);
        for work in [3, 40] {
            let mut search = SetOutSearch::new(&read_job(&job)).expect("valid");
            let mut steps = 1;
            while search.step(work) {
                steps += 1;
            }
            assert_eq!(search.answer(), Some(&at_once), "{work}");
            assert!(steps > 1, "{} units in one step of {work}", search.units());
        }
    }
}

/// What was said of the arm that is built holds whatever a list says of its own, and is what the plan of the job itself has.
#[test]
fn what_was_said_of_the_arm_holds_for_every_operator() {
    let listed = json!({ "id": "one", "name": "One", "rated_torque_n_m": 500, "arm_efficiency": 0.95 });
    let mut job = job();
    job["operator"] = json!({ "rated_torque_n_m": 500, "arm_efficiency": 0.8 });
    let planned = plan(&read_job(&job)).expect("valid").rating.reserve;
    let reserve = |own_efficiency: bool| {
        let asked = RankAsked { own_efficiency, ..RankAsked::default() };
        let ranking = rank(&read_job(&job), &entries(std::slice::from_ref(&listed)), asked).expect("valid");
        ranking.operators[0].as_placed.as_ref().expect("it works").rating.reserve
    };
    assert_eq!(reserve(true), planned);
    assert!(reserve(false) > planned, "its own arm loses less");
}

/// Each of what a maker limits, with its number.
#[test]
fn what_the_maker_limits_is_told_with_its_number() {
    let strong = json!({ "id": "one", "name": "One", "rated_torque_n_m": 5000, "shaft_speed_deg_s": 9 });
    let mut job = job();
    job["motion"] = json!({ "duty": { "cycles_per_hour": 12, "cycles_per_day": 60 } });
    let refused = |key: &str, value: Value, air_c: Option<[f64; 2]>| {
        let mut operator = strong.clone();
        operator[key] = value;
        let asked = RankAsked { air_c, ..RankAsked::default() };
        let ranking = rank(&read_job(&job), &entries(&[operator]), asked).expect("valid");
        ranking.operators[0].refusal.clone().map(|refusal| {
            let numbers: Vec<f64> = refusal.values.iter().map(|value| value.value).collect();
            (refusal.code, numbers)
        })
    };
    let rows = json!([{ "length_m": 2, "mass_kg": 500 }, { "length_m": 4, "mass_kg": 150 }]);
    assert_eq!(refused("leaf_limits", rows, None), Some((RefusalCode::LeafTooHeavy, vec![160.0, 150.0, 3.2])));
    let rows = json!([{ "length_m": 3, "mass_kg": 500 }]);
    assert_eq!(refused("leaf_limits", rows, None), Some((RefusalCode::LeafTooLong, vec![3.2, 3.0])));
    let duty = json!([{ "up_to_c": 25, "cycles_per_hour": 20 }, { "up_to_c": 45, "cycles_per_hour": 10, "cycles_per_day": 50 }]);
    let hot = Some([-5.0, 30.0]);
    assert_eq!(refused("duty", duty.clone(), hot), Some((RefusalCode::CyclesPerHour, vec![12.0, 10.0])));
    assert_eq!(refused("duty", duty.clone(), Some([-5.0, 20.0])), None);
    assert_eq!(refused("duty", duty.clone(), None), Some((RefusalCode::CyclesPerHour, vec![12.0, 10.0])));
    assert_eq!(refused("duty", duty, Some([0.0, 50.0])), Some((RefusalCode::TooHot, vec![50.0, 45.0])));
    let daily = json!([{ "cycles_per_day": 50 }]);
    assert_eq!(refused("duty", daily, None), Some((RefusalCode::CyclesPerDay, vec![60.0, 50.0])));
    let cold = refused("temperature_c", json!([-10, 50]), Some([-15.0, 20.0]));
    assert_eq!(cold, Some((RefusalCode::TooCold, vec![-15.0, -10.0])));
    assert_eq!(refused("temperature_c", json!([-10, 50]), None), None);
    let kit = refused("kit", json!({ "crank_m": [0.4, 0.8] }), None);
    assert_eq!(kit, Some((RefusalCode::CrankOutsideKit, vec![0.8728, 0.4, 0.8])));
    assert_eq!(refused("shaft_travel_deg", json!(120), None).map(|told| told.0), Some(RefusalCode::TravelTooLong));
}

/// Every change that is told, made to the job, makes the operator do in a whole plan; and a little less of it does not.
#[test]
fn suggestions_applied_make_the_operator_do() {
    let small = |key: &str, value: Value| {
        let mut operator = json!({ "id": "small", "name": "Small", "rated_torque_n_m": 300, "shaft_speed_deg_s": 9 });
        operator[key] = value;
        operator
    };
    let mut sail = with("/leaf/wind_area_m2", json!(5.0));
    sail["operator"]["arm_efficiency"] = json!(1);
    let mut moving = job();
    moving["motion"] =
        json!({ "ramp_up_s": 0.2, "ramp_down_s": 0.2, "duty": { "cycles_per_hour": 12, "cycles_per_day": 60 } });
    let mut quick = small("shaft_speed_deg_s", json!(60));
    (quick["rated_torque_n_m"], quick["peak_torque_n_m"]) = (json!(500), json!(520));
    let strong = |key: &str, value: Value| {
        let mut operator = small(key, value);
        operator["rated_torque_n_m"] = json!(900);
        operator
    };
    let duty = |key: &str, cycles: f64| json!([{ key: cycles }]);
    use SuggestionKind::*;
    for (job, operator, kinds) in [
        (job(), small("id", json!("small")), vec![LessWindArea]),
        (sail, small("rated_torque_n_m", json!(1000)), vec![LessWindArea, CutIntoBoards]),
        (moving.clone(), quick, vec![SlowerRamps]),
        (moving.clone(), strong("duty", duty("cycles_per_hour", 8.0)), vec![FewerCyclesPerHour]),
        (moving, strong("duty", duty("cycles_per_day", 40.0)), vec![FewerCyclesPerDay]),
        (job(), strong("leaf_limits", json!([{ "length_m": 4, "mass_kg": 150 }])), vec![LighterLeaf]),
    ] {
        let ranking =
            rank(&read_job(&job), &entries(std::slice::from_ref(&operator)), RankAsked::default()).expect("valid");
        let next = ranking.next_smaller.expect("it does not do");
        let told: Vec<SuggestionKind> = next.suggestions.iter().map(|suggestion| suggestion.kind).collect();
        assert_eq!(told, kinds, "{:?}", ranking.operators);
        for suggestion in &next.suggestions {
            let changed = serde_json::to_value(suggestion.applied(&read_job(&job))).expect("serialises");
            let plan = planned(&whole(&changed, &operator, None)).expect("a plan");
            let refusing: Vec<_> = plan
                .findings
                .iter()
                .map(|finding| finding.code)
                .filter(|code| STOPS.contains(code) || *code == FindingCode::ReserveBelowRequired)
                .collect();
            assert!(refusing.is_empty(), "{:?}: {refusing:?}", suggestion.kind);
            assert_eq!(plan.rating.reserve, suggestion.reserve, "{:?}", suggestion.kind);
            let again = rank(&read_job(&changed), &entries(std::slice::from_ref(&operator)), RankAsked::default());
            assert!(again.expect("valid").operators[0].does, "{:?}", suggestion.kind);
            if suggestion.kind == LessWindArea {
                let mut more = changed.clone();
                more["leaf"]["wind_area_m2"] = json!(of(&suggestion.values, "area") + 0.011);
                let plan = planned(&whole(&more, &operator, None)).expect("a plan");
                assert!(plan.rating.reserve.is_some_and(|reserve| reserve < 1.5), "{:?}", plan.rating);
            }
        }
    }
}

/// An operator that does only at its best place is told to move there.
#[test]
fn another_place_is_told_with_its_arm() {
    let job = site();
    let list = demonstration();
    let mut ranking = Ranking::new(&read_job(&job), &entries(&list), RankAsked::default()).expect("valid");
    while ranking.step(1) {}
    let moved: Vec<RankedOperator> = ranking
        .answer()
        .operators
        .into_iter()
        .filter(|one| one.does && one.as_placed.as_ref().is_some_and(|standing| standing.refusal.is_some()))
        .collect();
    assert!(!moved.is_empty());
    for one in moved {
        let [suggestion] = &ranking.suggestions(&one.id)[..] else { panic!("{one:?}") };
        assert_eq!((suggestion.kind, suggestion.reserve), (SuggestionKind::AnotherPlace, one.reserve));
        let changed = serde_json::to_value(suggestion.applied(&read_job(&job))).expect("serialises");
        let plan = planned(&whole(&changed, &list[one.index], None)).expect("a plan");
        assert!(plan.rating.reserve.is_some_and(|reserve| reserve >= 1.5), "{:?}", plan.rating);
    }
}

/// A ranking divided in any way gives the answer of one go, and one asked again computes nothing that did not change.
#[test]
fn a_ranking_stops_goes_on_and_is_asked_again() {
    let (job, list) = (site(), entries(&demonstration()));
    let at_once = rank(&read_job(&job), &list, RankAsked::default()).expect("valid");
    for work in [1, 7, 1000] {
        let mut ranking = Ranking::new(&read_job(&job), &list, RankAsked::default()).expect("valid");
        let mut steps = 0;
        while ranking.step(work) {
            steps += 1;
            assert!(ranking.answer().next_smaller.is_none());
        }
        assert!(work > 7 || steps >= list.len() / work, "{steps} steps of {work}");
        assert_eq!(ranking.answer(), at_once, "{work}");
        assert_eq!(ranking.progress().done, list.len());
        // What a place does not depend on: a title, a reserve, cycles, ramps, the order of the list.
        let searches = ranking.progress().searches;
        let mut other = job.clone();
        (other["title"], other["required_reserve"]) = (json!("another"), json!(1.2));
        other["motion"]["ramp_up_s"] = json!(2);
        let turned: Vec<ListEntry> = list.iter().rev().cloned().collect();
        ranking.renew(&read_job(&other), &turned, RankAsked::default()).expect("valid");
        while ranking.step(work) {}
        assert_eq!(ranking.progress().searches, searches);
        assert_eq!(ranking.answer(), rank(&read_job(&other), &list, RankAsked::default()).expect("valid"));
        // What it does depend on.
        let mut heavier = job.clone();
        heavier["leaf"]["wind_area_m2"] = json!(2.0);
        ranking.renew(&read_job(&heavier), &list, RankAsked::default()).expect("valid");
        while ranking.step(work) {}
        assert!(ranking.progress().searches > searches);
        assert_eq!(ranking.answer(), rank(&read_job(&heavier), &list, RankAsked::default()).expect("valid"));
    }
}
