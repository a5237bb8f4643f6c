//! A mark as it is printed, typed back as what was built, is no difference: the same line, the same side of it, the same step of the tape.

use super::{answer, with};
use pintle_core::units::{MarkSide, Quantity, System, mark_apart, read};
use pintle_core::{
    Document,
    job::Job,
    plan::{Check, CheckVerdict, Plan, mark_out},
};
use serde_json::{Map, Value, json};

/// The demonstration job with a face as far from the hinge axis.
fn faced(front_m: f64) -> Value {
    let mut job = with("/leaf/face_m", json!(front_m));
    job["tape"] = json!({ "error_m": 0.0001 });
    job["record"] = json!({ "open_leaf_deg": 90 });
    job
}

fn planned(job: &Value) -> Plan {
    answer(job).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn built(job: &Value) -> Vec<Check> {
    let checks = planned(job).record.expect("something was recorded").checks;
    checks.into_iter().filter(|check| check.path.starts_with("as_built.")).collect()
}

/// Everything that the mark-out prints of the arm, as somebody reads it off the sheet, number and side, and types it.
fn typed(job: &Value, system: System, from: &str) -> Map<String, Value> {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    let marks = mark_out(&Job::read(&document).expect("valid")).expect("it works");
    let printed = |value: f64| {
        let apart = mark_apart(value, system);
        let text = &apart.text;
        assert!(!text.contains(['−', '-']) || text.contains("'-"), "a tape has no minus: {text}");
        let typed = read(text, Quantity::ShortLength, system).unwrap_or_else(|error| panic!("{text}: {error:?}"));
        // The side is said apart, and is the sign.
        json!(if apart.side == MarkSide::Minus { -typed } else { typed })
    };
    let (shaft_y_m, bracket_v_m) = match from {
        "leaf_face" => (marks.shaft.from_face_m, marks.bracket_proud_m),
        _ => (marks.shaft.from_axis_line_m, marks.bracket_across_m),
    };
    [
        ("shaft_x_m", marks.shaft.from_hinge_line_m),
        ("shaft_y_m", shaft_y_m),
        ("bracket_u_m", marks.bracket_along_m),
        ("bracket_v_m", bracket_v_m),
        ("crank_m", marks.crank.pivots_m),
        ("link_m", marks.link.pivots_m),
    ]
    .into_iter()
    .map(|(name, value)| (name.to_owned(), printed(value)))
    .collect()
}

/// A face flush, proud of the hinge axis by one and by two inches, and behind it; the tape as good as may be said.
#[test]
fn the_sheets_own_marks_are_no_difference() {
    for front_m in [0.0, 0.0254, 0.05, -0.015] {
        let mut job = faced(front_m);
        let plan = planned(&job);
        for (system, from) in [System::Metric, System::Us]
            .into_iter()
            .flat_map(|system| ["leaf_face", "hinge_axis"].map(|from| (system, from)))
        {
            let mut marks = typed(&job, system, from);
            marks.insert("from".into(), json!(from));
            job["as_built"] = Value::Object(marks);
            for check in built(&job) {
                assert_eq!(check.verdict, CheckVerdict::Pass, "{front_m} m, {system:?}: {check:?}");
            }
            // The arm that stands there is the planned one, but for what a tape cannot show.
            let (there, arm) = (planned(&job).as_built.expect("said").arm, plan.as_built.as_ref());
            assert!(arm.is_none());
            assert!((there.shaft_y_m - 0.45).abs() < 0.0008 && (there.bracket_v_m - 0.06).abs() < 0.0008);
            job["as_built"] = Value::Null;
        }
    }
}

/// What is planned is told from the line that was measured from, so that the two can be compared.
#[test]
fn the_plan_is_told_from_the_line_that_was_measured_from() {
    let planned_at = |from: Value| {
        let mut job = faced(0.03);
        job["as_built"] = json!({ "from": from, "crank_m": 0.8728 });
        let checks = built(&job);
        let of = |path: &str| checks.iter().find(|check| check.path == path).expect("a row").planned.expect("planned");
        ["as_built.shaft_x_m", "as_built.shaft_y_m", "as_built.bracket_u_m", "as_built.bracket_v_m"].map(of)
    };
    let near = |told: [f64; 4], expected: [f64; 4]| {
        assert!(told.iter().zip(expected).all(|(one, other)| (one - other).abs() < 1e-12), "{told:?}");
    };
    near(planned_at(json!("leaf_face")), [-0.25, 0.42, 1.2, 0.03]);
    // As the job's own arm, and as every job did before there was a choice.
    for from in [json!("hinge_axis"), Value::Null] {
        near(planned_at(from), [-0.25, 0.45, 1.2, 0.06]);
    }
}

/// From the other line the same tape reads otherwise: a face one inch proud is told as an inch of error.
#[test]
fn a_mark_from_the_face_typed_as_from_the_axis_differs() {
    let mut job = faced(0.0254);
    let mut marks = typed(&job, System::Us, "leaf_face");
    marks.insert("from".into(), json!("hinge_axis"));
    job["as_built"] = Value::Object(marks);
    let off: Vec<&str> = built(&job)
        .into_iter()
        .filter(|check| check.verdict == CheckVerdict::LookAgain)
        .map(|check| check.path)
        .collect();
    assert_eq!(off, ["as_built.shaft_y_m", "as_built.bracket_v_m"]);
}
