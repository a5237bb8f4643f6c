//! What was printed once opens forever: the dictionary only grows, and released links and files stay readable.
//!
//! `fixtures/links/NAME.link` holds a link, `NAME.json` the job it was made of; `fixtures/schema-N` holds jobs of that schema as
//! they were saved. Files there are added with a release, never changed: schema and link format 1 settle with release 0.1.0.

use super::{document, same_to_the_bit};
use pintle_core::{
    Document, describe,
    job::{Job, SCHEMA},
    packed,
    plan::plan,
};
use pintle_tests::kept_in_step;
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

fn fixtures(folder: &str) -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures").join(folder);
    let entries = fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut files: Vec<_> = entries.map(|entry| entry.expect("an entry").path()).collect();
    files.sort();
    files
}

fn json(path: &Path) -> Value {
    let text = fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Writes the link of a job that has none yet; a link that is there is never written again.
fn add_links() {
    for file in fixtures("links").into_iter().filter(|path| path.extension().is_some_and(|is| is == "json")) {
        let link = file.with_extension("link");
        if !link.exists() {
            let text = packed::pack(&document(&json(&file)));
            fs::write(&link, format!("https://pintle.example/#job={text}\n")).expect("the link can be written");
        }
    }
}

#[test]
fn released_links_open() {
    if std::env::var_os("PINTLE_BLESS").is_some() {
        add_links();
    }
    let links: Vec<_> =
        fixtures("links").into_iter().filter(|path| path.extension().is_some_and(|is| is == "link")).collect();
    assert!(links.len() >= 3, "{links:?}");
    for link in links {
        let text = fs::read_to_string(&link).expect("a link");
        let (_, packed) = text.trim().split_once("#job=").expect("a fragment");
        let opened = packed::unpack(packed).unwrap_or_else(|invalid| panic!("{}: {invalid}", link.display()));
        let made_of = document(&json(&link.with_extension("json")));
        assert!(same_to_the_bit(&opened, &made_of), "{}", link.display());
        let job = Job::read(&opened).unwrap_or_else(|invalid| panic!("{}: {invalid}", link.display()));
        plan(&job).unwrap_or_else(|invalid| panic!("{}: {invalid}", link.display()));
    }
}

#[test]
fn jobs_of_every_schema_open() {
    for schema in 1..=SCHEMA {
        let files = fixtures(&format!("schema-{schema}"));
        assert!(!files.is_empty(), "no job of schema {schema} is kept");
        for file in files {
            let saved = json(&file);
            assert_eq!(saved["schema"], schema, "{}", file.display());
            let opened = Job::open(&document(&saved)).unwrap_or_else(|invalid| panic!("{}: {invalid}", file.display()));
            let schema_now = Document::Number(f64::from(SCHEMA));
            assert!(matches!(&opened, Document::Object(entries) if entries.contains(&("schema".into(), schema_now))));
            let job = Job::read(&opened).unwrap_or_else(|invalid| panic!("{}: {invalid}", file.display()));
            plan(&job).unwrap_or_else(|invalid| panic!("{}: {invalid}", file.display()));
        }
    }
}

/// Lines of the dictionary that released links use, and their check sum (CRC-64/XZ). With a release both are set to the whole list.
const RELEASED: (usize, u64) = (291, 0x9F57_1785_8F73_0F66);

#[test]
fn the_dictionary_only_grows() {
    let now: Vec<&str> = packed::NAMES.lines().collect();
    let (count, sum) = RELEASED;
    let released: String = now[..count].iter().map(|name| format!("{name}\n")).collect();
    let found = crc::Crc::<u64>::new(&crc::CRC_64_XZ).checksum(released.as_bytes());
    assert_eq!(found, sum, "the first {count} names have changed: links out there break");
    let mut sorted = now.clone();
    sorted.sort_unstable();
    sorted.dedup();
    assert_eq!(sorted.len(), now.len(), "a name stands twice");
}

/// Names and words of the job's schema, wherever they stand in it.
fn spoken(schema: &Value, found: &mut Vec<String>) {
    match schema {
        Value::Object(entries) => {
            if let Some(Value::Object(properties)) = entries.get("properties") {
                found.extend(properties.keys().cloned());
            }
            // What was measured at the gate does not travel in links, and uncertainties are few.
            let inner = entries
                .iter()
                .filter(|(name, _)| !["record", "propertyNames"].contains(&name.as_str()))
                .map(|(_, inner)| inner);
            let words = entries.get("enum").and_then(Value::as_array).into_iter().flatten().chain(entries.get("const"));
            found.extend(words.filter_map(Value::as_str).map(str::to_owned));
            inner.for_each(|inner| spoken(inner, found));
        }
        Value::Array(items) => items.iter().for_each(|inner| spoken(inner, found)),
        _ => {}
    }
}

/// A name that is not in the dictionary costs a link as many bytes as it has letters; `PINTLE_BLESS=1` appends it.
#[test]
fn the_dictionary_has_every_name_and_word_of_a_job() {
    let mut found = Vec::new();
    spoken(&describe::job_schema(), &mut found);
    assert!(found.iter().any(|name| name == "bracket_u_m") && found.iter().any(|word| word == "steel_bronze_greased"));
    // In the order of the words, which is the same on every machine; what is new goes to the end.
    found.sort();
    found.dedup();
    found.retain(|name| !packed::NAMES.lines().any(|known| known == name));
    let grown: String = packed::NAMES.lines().map(str::to_owned).chain(found).map(|name| name + "\n").collect();
    kept_in_step("../core/src/packed/names.txt", &grown);
}
