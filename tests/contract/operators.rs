//! Lists of operators: what is refused and how, what is warned of and kept, and the demonstration list.

use pintle_core::fault::{Allowed, Example, Fault, FaultCode, LeftOut};
use pintle_core::operators::{self, ListEntry, ReadOperators};
use pintle_core::{Document, describe};
use serde_json::{Value, json};
use std::collections::BTreeSet;

fn demonstration() -> Value {
    serde_json::from_str(include_str!("../../www/data/operators.json")).expect("JSON")
}

fn read(list: &Value) -> ReadOperators {
    operators::read(&serde_json::from_value::<Document>(list.clone()).expect("a document"))
}

/// A list of these entries.
fn list(entries: &[Value]) -> Value {
    json!({ "title": "invented", "operators": entries })
}

/// An entry with one key said or said otherwise.
fn entry(key: &str, value: Value) -> Value {
    let mut entry = json!({ "id": "one", "name": "One", "rated_torque_n_m": 400 });
    entry[key] = value;
    entry
}

/// The only fault of the only entry.
fn fault(entry: Value) -> Fault {
    let read = read(&list(&[entry]));
    assert!(read.operators.is_empty(), "{read:?}");
    let [LeftOut { path, faults, .. }] = &read.left_out[..] else { panic!("{read:?}") };
    assert_eq!(path, "operators.0");
    let [fault] = &faults[..] else { panic!("{faults:?}") };
    fault.clone()
}

fn range(fault: &Fault) -> [Option<f64>; 2] {
    match fault.allowed {
        Some(Allowed::Range { least, most, .. }) => [least, most],
        _ => panic!("{fault}"),
    }
}

/// A long list is read a part at a time: whatever the parts, what is told is what is told of the whole, an id that stands in two parts too.
#[test]
fn parts_tell_what_the_whole_tells() {
    let entries: Vec<Value> = (0..40)
        .map(|index| match index % 8 {
            3 => json!({ "id": format!("demo-{}", index - 3), "name": "Twice", "rated_torque_n_m": 300 }),
            5 => json!({ "id": format!("demo-{index}"), "name": "Minus", "rated_torque_n_m": -300 }),
            6 => json!({ "id": format!("demo-{index}"), "name": "Key", "rated_torque_n_m": 300, "sped": 1 }),
            _ => json!({ "id": format!("demo-{index}"), "name": "Good", "rated_torque_n_m": 300 }),
        })
        .collect();
    let whole = read(&list(&entries));
    assert!(whole.operators.len() == 30 && whole.left_out.len() == 10 && whole.warnings.len() == 5, "{whole:?}");
    let documents: Vec<Document> = serde_json::from_value(json!(entries)).expect("documents");
    for size in [1, 2, 7, 39, 40] {
        let mut reader = operators::EntryReader::default();
        let parts: Vec<ReadOperators> = documents.chunks(size).map(|part| reader.read(part)).collect();
        let of = |count: fn(&ReadOperators) -> Vec<String>| parts.iter().flat_map(count).collect::<Vec<_>>();
        let shown = |read: &ReadOperators| -> Vec<String> {
            let told = read.left_out.iter().map(|out| format!("{out:?}"));
            told.chain(read.operators.iter().map(|entry| format!("{entry:?}"))).collect()
        };
        assert_eq!(of(|read| read.warnings.iter().map(|warning| format!("{warning:?}")).collect()).len(), 5);
        let mut found: Vec<String> = parts.iter().flat_map(shown).collect();
        let mut wanted = shown(&whole);
        found.sort();
        wanted.sort();
        assert_eq!(found, wanted, "parts of {size}");
    }
    // Beyond what a list may have, that alone is told.
    let mut reader = operators::EntryReader::default();
    let _ = reader.read(&vec![Document::Null; 20_000]);
    let beyond = reader.read(&[Document::Null]);
    assert_eq!(beyond.left_out.iter().map(|out| out.path.as_str()).collect::<Vec<_>>(), ["operators"]);
}

#[test]
fn ratings_that_cannot_be_are_refused_with_found_allowed_and_example() {
    for (rated, code, example) in [
        (json!(-300), FaultCode::OutOfRange, 400.0),
        (json!(0), FaultCode::OutOfRange, 400.0),
        (json!(1e12), FaultCode::OutOfRange, 400.0),
        (json!(0.4), FaultCode::MeantKilonewtonMetres, 400.0),
        (json!("much"), FaultCode::WrongType, 400.0),
    ] {
        let fault = fault(entry("rated_torque_n_m", rated.clone()));
        assert_eq!((fault.path.as_str(), fault.code), ("operators.0.rated_torque_n_m", code), "{rated}");
        assert_eq!(fault.example, Some(Example::Number(example)), "{rated}");
        let found =
            if rated.is_string() { rated.to_string() } else { format!("{}", rated.as_f64().expect("a number")) };
        assert_eq!(fault.found.as_deref(), Some(found.as_str()));
        if rated.is_number() {
            assert_eq!(range(&fault), [Some(1.0), Some(50_000.0)]);
        }
    }
    let peak = fault(entry("peak_torque_n_m", json!(399)));
    assert_eq!((peak.path.as_str(), peak.code), ("operators.0.peak_torque_n_m", FaultCode::PeakBelowRated));
    assert_eq!((range(&peak)[0], peak.found.as_deref()), (Some(400.0), Some("399")));
    assert_eq!(peak.example, Some(Example::Number(400.0)));
    assert!(read(&list(&[entry("peak_torque_n_m", json!(400))])).left_out.is_empty());
    let kit = fault(entry("kit", json!({ "crank_m": [400, 0.9] })));
    assert_eq!((kit.path.as_str(), kit.code), ("operators.0.kit.crank_m.0", FaultCode::MeantMillimetres));
    assert_eq!(kit.example, Some(Example::Number(0.4)));
    let crossed = fault(entry("temperature_c", json!([50, -20])));
    assert_eq!((crossed.path.as_str(), crossed.code), ("operators.0.temperature_c.1", FaultCode::LeastAboveMost));
    for blank in ["", "  "] {
        let name = fault(entry("name", json!(blank)));
        assert_eq!((name.path.as_str(), name.code), ("operators.0.name", FaultCode::Missing));
    }
}

/// Too little to move a gate and within the range: taken, and asked about.
#[test]
fn a_torque_that_may_be_kilonewton_metres_is_taken_and_warned_of() {
    let read = read(&list(&[entry("rated_torque_n_m", json!(1.2))]));
    assert_eq!((read.operators.len(), read.left_out.len()), (1, 0));
    let [warning] = &read.warnings[..] else { panic!("{read:?}") };
    assert_eq!((warning.code, warning.example), (FaultCode::MeantKilonewtonMetres, Some(Example::Number(1200.0))));
}

#[test]
fn every_fault_of_every_entry_is_found_at_once_and_the_others_stay() {
    let entries = [
        json!({ "id": "good", "name": "Good", "rated_torque_n_m": 250 }),
        json!({ "id": "bad", "name": 5, "rated_torque_n_m": -1, "kit": { "link_m": [0.5] }, "body": 3 }),
        json!("no entry"),
        json!({ "id": "good", "name": "Same", "rated_torque_n_m": 300 }),
        json!({ "id": "bad", "name": "Same as one that is left out", "rated_torque_n_m": 300 }),
        json!({ "id": "last", "name": "Last", "rated_torque_n_m": 300 }),
    ];
    let read = read(&list(&entries));
    assert_eq!(read.operators.iter().map(ListEntry::index).collect::<Vec<_>>(), [0, 5]);
    let told: Vec<(String, FaultCode)> =
        read.left_out.iter().flat_map(|out| &out.faults).map(|fault| (fault.path.clone(), fault.code)).collect();
    let wanted = [
        ("operators.1.name", FaultCode::WrongType),
        ("operators.1.rated_torque_n_m", FaultCode::OutOfRange),
        ("operators.1.kit.link_m", FaultCode::WrongType),
        ("operators.1.body", FaultCode::WrongType),
        ("operators.2", FaultCode::WrongType),
        ("operators.3.id", FaultCode::RepeatedId),
        ("operators.4.id", FaultCode::RepeatedId),
    ];
    assert_eq!(told, wanted.map(|(path, code)| (path.to_owned(), code)));
    let repeated = &read.left_out[2].faults[0];
    assert_eq!((repeated.found.as_deref(), repeated.values[0].value), (Some("\"good\""), 0.0));
    assert!(repeated.allowed.is_some() && repeated.example.is_some());
}

#[test]
fn unknown_keys_are_warned_of_with_the_nearest_known_one_and_kept() {
    let mut odd = entry("peek_torque_n_m", json!(600));
    odd["colour"] = json!("green");
    odd["kit"] = json!({ "crnak_m": [0.4, 0.9] });
    let mut list = list(&[odd.clone()]);
    list["operator"] = json!([]);
    let read = read(&list);
    assert!(read.left_out.is_empty());
    let warned: Vec<(&str, Option<Example>)> =
        read.warnings.iter().map(|warning| (warning.path.as_str(), warning.example)).collect();
    assert_eq!(
        warned,
        [
            ("operator", Some(Example::Text("operators"))),
            ("operators.0.kit.crnak_m", Some(Example::Text("crank_m"))),
            ("operators.0.colour", None),
            ("operators.0.peek_torque_n_m", Some(Example::Text("peak_torque_n_m"))),
        ]
    );
    assert!(read.warnings.iter().all(|warning| warning.code == FaultCode::UnknownField && warning.allowed.is_some()));
    let written = serde_json::to_value(read.operators[0].written()).expect("serialises");
    assert_eq!((&written["colour"], &written["kit"]), (&odd["colour"], &odd["kit"]));
}

#[test]
fn what_is_no_list_says_so() {
    for (value, path, code) in [
        (json!(5), "", FaultCode::WrongType),
        (json!({ "title": "without" }), "operators", FaultCode::Missing),
        (json!({ "operators": {} }), "operators", FaultCode::WrongType),
        (json!({ "operators": vec![0; 20_001] }), "operators", FaultCode::OutOfRange),
        (json!({ "title": 5, "operators": [] }), "title", FaultCode::WrongType),
    ] {
        let read = read(&value);
        assert!(read.operators.is_empty());
        let faults: Vec<&Fault> = read.left_out.iter().flat_map(|out| &out.faults).collect();
        assert_eq!((faults.len(), faults[0].path.as_str(), faults[0].code), (1, path, code), "{faults:?}");
    }
    assert!(read(&json!({ "operators": [] })).left_out.is_empty());
}

/// What the embedding page's lists have had since there were any.
#[test]
fn lists_of_before_stay_valid() {
    for text in [
        include_str!("../../www/data/shop-operators.json"),
        r#"{ "title": "t", "operators": [ { "id": "a", "name": "A", "rated_torque_n_m": 250, "peak_torque_n_m": 400,
            "shaft_speed_deg_s": 12, "arm_efficiency": 0.9, "body": { "along_m": [-0.1, 0.2], "across_m": [-0.1, 0.1] } } ] }"#,
    ] {
        let list: Value = serde_json::from_str(text).expect("JSON");
        let read = read(&list);
        assert_eq!(read.operators.len(), list["operators"].as_array().expect("a list").len());
        assert!(read.left_out.is_empty() && read.warnings.is_empty(), "{read:?}");
    }
}

#[test]
fn the_demonstration_list_says_that_it_is_invented_and_fills_every_field() {
    let list = demonstration();
    assert!(list["title"].as_str().is_some_and(|title| title.contains("invented")));
    let read = read(&list);
    assert!(read.left_out.is_empty() && read.warnings.is_empty(), "{:?} {:?}", read.left_out, read.warnings);
    let filled: Vec<BTreeSet<String>> =
        list["operators"].as_array().expect("a list").iter().map(|operator| paths(operator, "operators")).collect();
    for rule in operators::fields() {
        for (index, filled) in filled.iter().enumerate() {
            assert!(filled.contains(rule.path), "operator {index} says nothing of {}", rule.path);
        }
    }
    for entry in &read.operators {
        let operator = entry.operator();
        let names = operator.names.as_ref().expect("names");
        // The page says the torque behind the name.
        let letter = operator.id.strip_prefix("demo-").expect("an id of the demonstration").to_uppercase();
        for (name, word) in [(names.en.as_ref(), "Demo operator"), (names.es.as_ref(), "Automatismo de demostración")]
        {
            assert_eq!(name, Some(&format!("{word} {letter}")));
        }
        assert!(operator.back_drives.is_some());
    }
    // From a wicket of a metre to a yard's leaf of seven.
    let rated = read.operators.iter().map(|entry| entry.operator().rated_torque_n_m);
    assert!(rated.clone().fold(f64::MAX, f64::min) <= 120.0 && rated.fold(0.0, f64::max) >= 1500.0);
    let longest =
        read.operators.iter().filter_map(|entry| entry.operator().leaf_limit(1.0)).map(|(longest, _)| longest);
    assert!(longest.clone().fold(f64::MAX, f64::min) < 2.0 && longest.fold(0.0, f64::max) >= 7.0);
}

/// Paths of the numbers below a value, places in lists left out.
fn paths(value: &Value, path: &str) -> BTreeSet<String> {
    match value {
        Value::Object(entries) => {
            entries.iter().flat_map(|(key, value)| paths(value, &format!("{path}.{key}"))).collect()
        }
        Value::Array(items) => items.iter().flat_map(|item| paths(item, path)).collect(),
        _ => BTreeSet::from([path.to_owned()]),
    }
}

/// Whether the schema and the reader agree on an entry.
#[test]
fn the_schema_takes_and_refuses_what_the_reader_does() {
    let schema = jsonschema::validator_for(&describe::operators_schema()).expect("a schema");
    let both = |list: &Value| {
        let read = read(list);
        let told: Vec<String> = read.left_out.iter().map(ToString::to_string).collect();
        assert_eq!(schema.is_valid(list), told.is_empty(), "{list}: {told:?}");
        told.is_empty()
    };
    assert!(both(&demonstration()));
    let mut refused = 0;
    let full = demonstration()["operators"][1].clone();
    for rule in operators::fields() {
        let pointer: String = rule.path.split('.').skip(1).map(|key| format!("/{key}")).collect();
        let at = if full.pointer(&pointer).is_some() {
            pointer
        } else {
            pointer.replacen("s/", "s/0/", 1).replacen("duty/", "duty/0/", 1)
        };
        for beyond in [rule.least.map(|least| least - 1.0), rule.most.map(|most| most + 1.0)].into_iter().flatten() {
            let mut entry = full.clone();
            let place = entry.pointer_mut(&at).unwrap_or_else(|| panic!("{at}"));
            *place = if place.is_array() { json!([beyond, beyond]) } else { json!(beyond) };
            assert!(!both(&list(&[entry])), "{at}");
            refused += 1;
        }
    }
    assert!(refused > 60, "{refused}");
    for (key, value) in [("names", json!({ "de": 5, "en": "x" })), ("colour", json!(1)), ("kit", Value::Null)] {
        assert!(both(&list(&[entry(key, value)])), "{key}");
    }
    for (key, value) in
        [("names", json!({ "en": " " })), ("id", json!("")), ("duty", json!({})), ("back_drives", json!(1))]
    {
        assert!(!both(&list(&[entry(key, value)])), "{key}");
    }
    assert!(!both(&json!({ "operators": null })) && !both(&json!({})) && !both(&json!([])));
}

/// The rows of weight by length and of duty, by hand from the table beside them.
#[test]
fn limits_are_read_from_their_rows() {
    let mut one = entry(
        "leaf_limits",
        json!([
        { "length_m": 3.5, "mass_kg": 280 }, { "length_m": 2, "mass_kg": 450 }, { "length_m": 3, "mass_kg": 350 }]),
    );
    one["duty"] = json!([{ "up_to_c": 40, "cycles_per_hour": 20 }, { "up_to_c": 25, "cycles_per_hour": 30, "cycles_per_day": 200 }]);
    one["temperature_c"] = json!([-20, 50]);
    let read = read(&list(&[one, entry("id", json!("two"))]));
    let [one, two] = [read.operators[0].operator(), read.operators[1].operator()];
    for (length, mass) in [(1.0, Some(450.0)), (2.0, Some(450.0)), (2.01, Some(350.0)), (3.2, Some(280.0)), (3.6, None)]
    {
        assert_eq!(one.leaf_limit(length), Some((3.5, mass)), "{length}");
    }
    assert_eq!(two.leaf_limit(9.0), None);
    assert_eq!(one.rated_cycles(Some(20.0)), [Some(30.0), Some(200.0)]);
    assert_eq!(one.rated_cycles(Some(25.5)), [Some(20.0), None]);
    assert_eq!(one.rated_cycles(None), [Some(20.0), Some(200.0)]);
    assert_eq!((one.made_for_c(), two.made_for_c()), ([Some(-20.0), Some(40.0)], [None, None]));
}
