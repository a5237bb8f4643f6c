//! What holds of every ranking of operators.

use crate::jobs::{document, job, valid};
use pintle_core::operators::{self, ListEntry};
use pintle_core::plan::{OperatorRanking, RankAsked, Ranking, SetOutSearch, rank, set_out};
use proptest::prelude::*;
use serde_json::{Value, json};

/// Rated torque, peak over it, speed, efficiency, and what else is said.
type Rated = (f64, Option<f64>, Option<f64>, f64, [bool; 3]);

/// Operators with ids of their own, of two kits, some fast, some with limits.
fn list() -> impl Strategy<Value = Vec<Value>> {
    let one = (
        50.0..3000.0f64,
        prop::option::of(1.0..2.0f64),
        prop::option::of(2.0..40.0f64),
        0.6..1.0f64,
        any::<[bool; 3]>(),
    );
    proptest::collection::vec(one, 1..6).prop_map(|list| {
        let operator = |(index, (rated, peak, speed, efficiency, says)): (usize, Rated)| {
            let mut operator = json!({ "id": format!("o{index}"), "name": "One", "rated_torque_n_m": rated, "arm_efficiency": efficiency });
            operator["peak_torque_n_m"] = json!(peak.map(|more| more * rated));
            operator["shaft_speed_deg_s"] = json!(speed);
            if says[0] {
                operator["kit"] = json!({ "crank_m": [0.2, 1.0], "link_m": [0.2, 1.2] });
            }
            if says[1] {
                operator["leaf_limits"] = json!([{ "length_m": 3, "mass_kg": 500 }, { "length_m": 6, "mass_kg": 200 }]);
            }
            if says[2] {
                operator["body"] = json!({ "along_m": [-0.1, 0.15], "across_m": [-0.1, 0.1] });
            }
            operator
        };
        list.into_iter().enumerate().map(operator).collect()
    })
}

fn entries(list: &[Value]) -> Vec<ListEntry> {
    let read = operators::read(&document(&json!({ "operators": list })));
    assert!(read.left_out.is_empty(), "{:?}", read.left_out);
    read.operators
}

fn ranked(job_: &Value, list: &[Value]) -> OperatorRanking {
    rank(&job(job_), &entries(list), RankAsked::default()).expect("valid")
}

/// Ids in order, with what is said of each, its place in the list apart.
fn told(ranking: &OperatorRanking) -> Vec<(String, bool, Option<f64>)> {
    ranking.operators.iter().map(|one| (one.id.clone(), one.does, one.reserve)).collect()
}

/// A job with ramps and cycles.
fn moving() -> impl Strategy<Value = Value> {
    (valid(), 0.1..3.0f64).prop_map(|(mut job, ramp)| {
        job["operator"]["shaft_speed_deg_s"] = json!(9);
        job["motion"] = json!({ "ramp_up_s": ramp, "ramp_down_s": ramp, "duty": { "cycles_per_hour": 10 } });
        job["samples"] = json!(5);
        job
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn a_stronger_twin_never_ranks_lower(job in moving(), list in list(), which in any::<prop::sample::Index>(), more in 1.0..3.0f64) {
        let mut list = list;
        let mut twin = list[which.index(list.len())].clone();
        let of = twin["id"].as_str().expect("an id").to_owned();
        twin["id"] = json!("twin");
        for key in ["rated_torque_n_m", "peak_torque_n_m"] {
            twin[key] = json!(twin[key].as_f64().map(|torque| torque * more));
        }
        list.push(twin);
        let ranking = ranked(&job, &list);
        let place = |id: &str| ranking.operators.iter().position(|one| one.id == id).expect("ranked");
        let (twin, weaker) = (&ranking.operators[place("twin")], &ranking.operators[place(&of)]);
        prop_assert!(twin.does >= weaker.does, "{twin:?} {weaker:?}");
        // An equal twin may stand on either side, by its id.
        prop_assert!(more == 1.0 || place("twin") < place(&of), "{twin:?} {weaker:?}");
    }

    #[test]
    fn rank_does_not_depend_on_the_order_of_the_list(job in moving(), list in list(), turn in 0..5usize) {
        let mut turned = list.clone();
        turned.reverse();
        let count = turned.len();
        turned.rotate_left(turn % count);
        let (one, other) = (ranked(&job, &list), ranked(&job, &turned));
        prop_assert_eq!(told(&one), told(&other));
        let next = |ranking: &OperatorRanking, list: &[Value]| ranking.next_smaller.as_ref().map(|next| list[next.index]["id"].clone());
        prop_assert_eq!(next(&one, &list), next(&other, &turned));
    }

    /// 400, 400.0 and 4e2 are one number, and so are the keys in any order.
    #[test]
    fn how_numbers_are_written_does_not_matter(job in moving(), list in list()) {
        let rounded: Vec<Value> = list.iter().map(|operator| {
            let mut operator = operator.clone();
            operator["rated_torque_n_m"] = json!(operator["rated_torque_n_m"].as_f64().expect("a number").round());
            operator["peak_torque_n_m"] = Value::Null;
            operator
        }).collect();
        let written = |form: fn(f64) -> String| {
            let text: Vec<String> = rounded.iter().map(|operator| {
                let rated = operator["rated_torque_n_m"].as_f64().expect("a number");
                let mut rest = operator.as_object().expect("an object").clone();
                rest.remove("rated_torque_n_m");
                rest.remove("peak_torque_n_m");
                let rest = serde_json::to_string(&rest).expect("JSON");
                format!("{{ \"rated_torque_n_m\": {}, {}", form(rated), &rest[1..])
            }).collect();
            let list = format!("{{ \"operators\": [{}] }}", text.join(","));
            let read = operators::read(&serde_json::from_str(&list).expect("JSON"));
            rank(&self::job(&job), &read.operators, RankAsked::default()).expect("valid")
        };
        let plain = ranked(&job, &rounded);
        for form in [|rated: f64| format!("{rated:.0}"), |rated| format!("{rated:.3}"), |rated| format!("{rated:e}")] {
            prop_assert_eq!(&written(form), &plain);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6))]

    /// A search divided in any way comes to the answer of one go, to the bit; and so does a ranking.
    #[test]
    fn a_divided_search_comes_to_the_same_answer(
        job in valid(), list in list(), work in 1..40usize, x in -0.6..-0.1f64, y in 0.2..0.6f64, step in any::<bool>(), post in any::<bool>(),
        short in any::<bool>(), proof in any::<bool>(),
    ) {
        let mut job = job;
        job["setout"] = json!({ "shaft_x_m": [x - 0.1, x + 0.1], "shaft_y_m": [y, y + 0.2], "bracket_u_m": [0.7, 1.6], "bracket_v_m": 0.06,
            "crank_m": [0.3, 1.0], "link_m": [0.3, 1.0], "straightness": [0.93, 1.0] });
        if step {
            job["setout"]["step_m"] = json!(0.02);
        }
        if post {
            job["obstacles"] = json!([{ "x_m": [-0.2, -0.02], "y_m": [-0.15, 0.1] }]);
        }
        if short {
            // None reaches so far: what is in the way is searched for, too.
            job["setout"]["bracket_u_m"] = json!([2.6, 2.8]);
        }
        if proof {
            job["setout"]["tape_proof"] = json!(true);
            job["tape"] = json!({ "error_m": 0.003 });
        }
        let at_once = set_out(&self::job(&job)).expect("valid");
        let mut search = SetOutSearch::new(&self::job(&job)).expect("valid");
        let mut steps = 1;
        while search.step(work) {
            prop_assert!(search.answer().is_none());
            steps += 1;
        }
        prop_assert_eq!(search.answer(), Some(&at_once));
        prop_assert!(steps > 1, "{} units in one step of {}", search.units(), work);
        let one_go = ranked(&job, &list);
        let mut ranking = Ranking::new(&self::job(&job), &entries(&list), RankAsked::default()).expect("valid");
        while ranking.step(work) {}
        prop_assert_eq!(ranking.answer(), one_go);
    }
}
