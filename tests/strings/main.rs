//! The page's words: every language says everything the core may ask or report, and the page asks for nothing that has no words.
//!
//! What there is to say comes from the published schemas and the table of fields, not from lists kept by hand.

mod modules;
mod rules;
mod sentences;
mod table;
mod words;

use std::collections::BTreeSet;

use pintle_core::{describe, job::fields};
use serde_json::Value;
use table::{LANGUAGES, Table, placeholders};

/// Values every fault's sentence is given.
const OF_FAULTS: [&str; 5] = ["field", "found", "allowed", "example", "code"];
/// Values that the faults of the arm carry besides.
const OF_THE_ARM: [&str; 2] = ["leaf_angle", "gap"];
/// Values that the fault of a ramp carries besides.
const OF_THE_RAMP: [&str; 1] = ["friction"];

/// Codes of an enumeration in a schema with their descriptions.
fn codes(schema: &Value, pointer: &str) -> Vec<(String, String)> {
    let variants = schema.pointer(pointer).and_then(|at| at["oneOf"].as_array()).expect("an enumeration");
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    variants.iter().map(|variant| (text(&variant["const"]), text(&variant["description"]))).collect()
}

/// Names of values in a code's description: what stands between backticks.
fn named_in(description: &str) -> BTreeSet<String> {
    description.split('`').skip(1).step_by(2).map(str::to_owned).collect()
}

#[test]
fn all_languages_have_the_same_keys_and_placeholders() {
    let [first, others @ ..] = LANGUAGES else { panic!("no language") };
    let wanted = Table::read(first);
    for language in others {
        let table = Table::read(language);
        let keys = |table: &Table| table.keys().map(str::to_owned).collect::<BTreeSet<_>>();
        let (wanted_keys, keys) = (keys(&wanted), keys(&table));
        let missing: Vec<_> = wanted_keys.difference(&keys).collect();
        let surplus: Vec<_> = keys.difference(&wanted_keys).collect();
        assert!(missing.is_empty() && surplus.is_empty(), "{language}: without {missing:?}, beyond {surplus:?}");
        for key in &keys {
            let of = |table: &Table| placeholders(table.at(key).expect("a sentence"));
            assert_eq!(of(&table), of(&wanted), "{language}: {key}");
        }
    }
}

#[test]
fn nothing_is_left_empty() {
    for language in LANGUAGES {
        let table = Table::read(language);
        for key in table.keys() {
            assert!(!table.at(key).expect("a sentence").trim().is_empty(), "{language}: {key}");
        }
    }
}

#[test]
fn every_finding_has_a_sentence_of_its_own_values() {
    let schema = describe::plan_schema();
    for language in LANGUAGES {
        let table = Table::read(language);
        let mut named = BTreeSet::new();
        for (code, description) in codes(&schema, "/properties/findings/items/properties/code") {
            // "The same when closing" has the values of the code before it.
            if !description.starts_with("The same") {
                named = named_in(&description);
            }
            // What was found, and the one thing to do about it.
            for of in ["findings", "actions"] {
                let sentence = table.at(&format!("{of}.{code}"));
                let sentence = sentence.unwrap_or_else(|| panic!("{language}: {of} has no sentence for {code}"));
                let strange: Vec<_> = placeholders(sentence).difference(&named).cloned().collect();
                assert!(strange.is_empty(), "{language}: {of}: {code} has no {strange:?}");
            }
        }
        for (severity, _) in codes(&schema, "/properties/findings/items/properties/severity") {
            assert!(table.at(&format!("severity.{severity}")).is_some(), "{language}: {severity}");
        }
        for (verdict, _) in codes(&schema, "/properties/rating/properties/verdict") {
            assert!(table.at(&format!("verdict.{verdict}.sentence")).is_some(), "{language}: {verdict}");
        }
        for (subject, _) in codes(&schema, "/properties/overall/properties/about") {
            assert!(table.at(&format!("verdict.about.{subject}")).is_some(), "{language}: {subject}");
        }
        for (state, _) in codes(&schema, "/properties/overall/properties/state") {
            assert!(table.at(&format!("verdict.whole.{state}")).is_some(), "{language}: {state}");
            assert!(table.at(&format!("judged.states.{state}")).is_some(), "{language}: {state}");
        }
        for (state, _) in codes(&schema, "/properties/wind_limit/properties/state") {
            assert!(table.at(&format!("wind_limit.{state}")).is_some(), "{language}: {state}");
        }
    }
}

#[test]
fn every_fault_has_a_sentence_of_its_own_values() {
    let known: BTreeSet<String> =
        OF_FAULTS.iter().chain(&OF_THE_ARM).chain(&OF_THE_RAMP).map(|name| (*name).to_owned()).collect();
    for language in LANGUAGES {
        let table = Table::read(language);
        for (code, _) in codes(&describe::faults_schema(), "/properties/errors/items/properties/code") {
            let sentence = table.at(&format!("faults.{code}"));
            let sentence = sentence.unwrap_or_else(|| panic!("{language}: no sentence for {code}"));
            let strange: Vec<_> = placeholders(sentence).difference(&known).cloned().collect();
            assert!(strange.is_empty(), "{language}: {code} has no {strange:?}");
        }
    }
}

/// Why an operator will not do, and what would make it do.
#[test]
fn every_refusal_and_suggestion_of_a_ranking_has_a_sentence_of_its_own_values() {
    let schema = describe::ranking_schema();
    let of_operator = "/properties/operators/items/properties/refusal/properties/code";
    let of_suggestion = "/properties/next_smaller/properties/suggestions/items/properties/kind";
    for language in LANGUAGES {
        let table = Table::read(language);
        for (of, pointer) in [("refusals", of_operator), ("suggestions", of_suggestion)] {
            let codes = codes(&schema, pointer);
            assert!(codes.len() > 6, "{codes:?}");
            for (code, description) in codes {
                let sentence = table.at(&format!("ranking.{of}.{code}"));
                let sentence = sentence.unwrap_or_else(|| panic!("{language}: {of} has no sentence for {code}"));
                // The limit in the way is named by the page, from the words of the set-out.
                let named: BTreeSet<String> = named_in(&description).into_iter().chain(["limit_name".into()]).collect();
                let strange: Vec<_> = placeholders(sentence).difference(&named).cloned().collect();
                assert!(strange.is_empty(), "{language}: {of}: {code} has no {strange:?}");
            }
        }
    }
}

#[test]
fn every_field_has_a_name() {
    for language in LANGUAGES {
        let table = Table::read(language);
        let nameless: Vec<_> = fields()
            .iter()
            .map(|rule| rule.path)
            .filter(|path| {
                modules::asks_for(path) && table.at(&format!("fields.{}.label", path.replace('.', "_"))).is_none()
            })
            .collect();
        assert!(nameless.is_empty(), "{language}: {nameless:?}");
    }
}

#[test]
fn every_word_of_the_job_has_a_name() {
    let words = words::of_the_job();
    // Enough to know that the schema was walked to its ends.
    assert!(words.iter().any(|(key, word)| key == "wind_from_terrain" && word == "IV"), "{words:?}");
    for language in LANGUAGES {
        let table = Table::read(language);
        let nameless: Vec<_> =
            words.iter().filter(|(key, word)| table.at(&format!("choices.{key}.{word}")).is_none()).collect();
        assert!(nameless.is_empty(), "{language}: {nameless:?}");
    }
}

/// Every word of the job can be chosen on the page, too.
#[test]
fn every_word_of_the_job_is_an_option() {
    let asked: String = modules::ASKING.iter().map(|name| modules::text(name)).collect();
    let missing: Vec<_> =
        words::of_the_job().into_iter().filter(|(_, word)| !asked.contains(&format!("\"{word}\""))).collect();
    assert!(missing.is_empty(), "{missing:?}");
}
