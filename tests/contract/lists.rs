//! Lists in a job: how long they may be, what their items have to be; dates; uncertainties.

use super::{answer, fault, faults, job, old, with};
use pintle_core::fault::{Allowed, FaultCode};
use serde_json::{Value, json};

#[track_caller]
pub fn refused(job: &Value, path: &str, code: FaultCode) {
    assert_eq!(faults(job), [(path.to_string(), code)]);
}

#[track_caller]
pub fn passes(job: &Value) {
    assert!(answer(job).is_ok(), "{:?}", answer(job));
}

fn setout(keep_out: Value) -> Value {
    old(
        "/setout",
        json!({ "shaft_x_m": [-0.55, -0.15], "shaft_y_m": [0.25, 0.7], "bracket_u_m": [0.7, 1.5], "bracket_v_m": 0.06,
        "crank_m": [0.35, 0.9], "link_m": [0.35, 0.9], "keep_out": keep_out }),
    )
}

/// A leaf has at most 200 lines of members, a site 200 obstacles, 64 means or zones, a document of schema 1 64 things in each of its lists: as many are read, one more is refused for the number.
#[test]
fn lists_have_an_end() {
    let rectangle = json!({ "x_m": [-3, -2], "y_m": [2, 3] });
    let many = |item: &Value, count: usize| Value::Array(vec![item.clone(); count]);
    let bar = json!({ "section": "round_bar", "face_m": 0.01, "place": { "from_m": 0.1, "to_m": 2.9 } });
    let means = json!({ "kind": "inherent" });
    type Make<'a> = &'a dyn Fn(Value) -> Value;
    let lists: [(&str, &Value, usize, Make); 7] = [
        ("leaf.members", &bar, 200, &|list| with("/leaf/members", list)),
        ("obstacles", &rectangle, 200, &|list| with("/obstacles", list)),
        ("site.obstacles", &rectangle, 64, &|list| old("/site", json!({ "obstacles": list }))),
        ("site.means", &means, 64, &|list| with("/site", json!({ "means": list }))),
        ("site.means.0.reaches", &json!("bottom"), 64, &|list| {
            with("/site", json!({ "means": [{ "kind": "contact", "reaches": list }] }))
        }),
        ("setout.keep_out", &rectangle, 64, &setout),
        ("room.obstacles", &rectangle, 64, &|list| old("/room", json!({ "obstacles": list }))),
    ];
    for (path, item, most, make) in lists {
        let document = serde_json::from_value(make(many(item, most))).expect("a document");
        assert!(pintle_core::job::Job::read(&document).is_ok(), "{path}");
        for count in [most + 1, 2 * most] {
            let fault = fault(&make(many(item, count)));
            assert_eq!((fault.path.as_str(), fault.code), (path, FaultCode::OutOfRange));
            assert!(
                matches!(fault.allowed, Some(Allowed::Range { most: Some(allowed), .. }) if allowed == most as f64),
                "{fault:?}"
            );
        }
        let wrong = fault(&make(json!(3)));
        assert_eq!((wrong.path, wrong.code), (path.to_string(), FaultCode::WrongType));
    }
    refused(&with("/leaf/members", json!([])), "leaf.members", FaultCode::NoMembers);
}

/// ISO 8601 calendar dates; leap years by the Gregorian rule.
#[test]
fn days_of_the_calendar() {
    let dated = |key: &str, date: &str| with("/record", json!({ key: date }));
    let days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (month, days) in (1..).zip(days) {
        passes(&dated("date", &format!("2025-{month:02}-{days}")));
        passes(&dated("date", &format!("2025-{month:02}-01")));
        let beyond = format!("2025-{month:02}-{}", days + 1);
        refused(&dated("installer_date", &beyond), "record.installer_date", FaultCode::WrongType);
        refused(&dated("owner_date", &format!("2025-{month:02}-00")), "record.owner_date", FaultCode::WrongType);
    }
    for (year, leap) in [
        (2024, true),
        (2028, true),
        (2000, true),
        (2400, true),
        (1900, false),
        (2100, false),
        (2026, false),
        (2023, false),
        (2022, false),
    ] {
        let date = dated("date", &format!("{year}-02-29"));
        match leap {
            true => passes(&date),
            false => refused(&date, "record.date", FaultCode::WrongType),
        }
    }
    for date in [
        "2025-13-01",
        "2025-00-10",
        "2025/01-10",
        "2025-01/10",
        "2025-1-010",
        "02025-01-1",
        "2025-01-1a",
        "a025-01-10",
        "2025-01-100",
        "20250110",
    ] {
        refused(&dated("date", date), "record.date", FaultCode::WrongType);
    }
}

#[test]
fn uncertainties_are_shares_of_numbers_that_are_there() {
    let stated = |stated: Value| with("/uncertainty", stated);
    passes(&stated(json!({})));
    passes(&stated(json!({ "leaf.mass_kg": 0, "arm.link_m": 1 })));
    refused(&stated(json!({ "leaf.mass_kg": 1.01 })), "uncertainty.leaf.mass_kg", FaultCode::OutOfRange);
    refused(&stated(json!({ "leaf.mass_kg": -0.01 })), "uncertainty.leaf.mass_kg", FaultCode::OutOfRange);
    // It is the reader that refuses it, before anything is planned.
    let document = serde_json::from_value(stated(json!({ "leaf.mass_kg": 1.01 }))).expect("a document");
    assert!(pintle_core::job::Job::read(&document).is_err());
    refused(&stated(json!({ "leaf.mass_kg": "some" })), "uncertainty.leaf.mass_kg", FaultCode::WrongType);
    refused(&stated(json!({ "leaf.colour": 0.1 })), "uncertainty.leaf.colour", FaultCode::UnknownField);
    // A field of the table, of which this job says nothing that could be uncertain.
    refused(&stated(json!({ "hinges.pull_open_n": 0.1 })), "uncertainty.hinges.pull_open_n", FaultCode::NotOneOf);
    refused(&stated(json!([])), "uncertainty", FaultCode::WrongType);
}

#[test]
fn a_mistyped_zone_is_told_which_there_are() {
    let reaches = |zone: Value| with("/site", json!({ "means": [{ "kind": "contact", "reaches": [zone] }] }));
    refused(&reaches(json!("roof")), "site.means.0.reaches.0", FaultCode::NotOneOf);
    refused(&reaches(json!(7)), "site.means.0.reaches.0", FaultCode::WrongType);
    // An area that cannot be read is no means without one.
    let area = with(
        "/site",
        json!({ "means": [{ "kind": "contact", "area": { "on": "leaf", "from_x_m": 1, "from_y_m": 0, "to_x_m": 2 } }] }),
    );
    refused(&area, "site.means.0.area.to_y_m", FaultCode::Missing);
    let mut settings = job();
    settings["settings"] = json!({ "close_timer_s": 30 });
    settings["record"] = json!({ "close_timer_s": 31 });
    let record = answer(&settings).expect("valid").record.expect("recorded");
    let timer = record.checks.iter().find(|check| check.path == "record.close_timer_s").expect("a row");
    assert_eq!((timer.planned, timer.measured), (Some(30.0), Some(31.0)));
}
