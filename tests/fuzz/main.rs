//! Fuzz targets: reading a job and planning it, from raw bytes, from damaged jobs and from damaged links.
//!
//! The test command runs them bounded, by random inputs and the kept corpus in `__fuzz__`. Long runs, guided by coverage, by hand:
//! `cargo install cargo-bolero`, then `cargo bolero test -p pintle-tests --test fuzz damaged_jobs_never_panic` with a nightly toolchain.

use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use bolero::{TypeGenerator, check};
use pintle_core::operators::{self, ListEntry};
use pintle_core::plan::{RankAsked, plan, rank};
use pintle_core::units::{self, Quantity, System};
use pintle_core::{Document, job::Job, packed};
use serde_json::{Value, json};

/// Reads and plans; whatever comes of it must be finite and writable.
fn digest(document: &Document) {
    if let Ok(job) = Job::read(document) {
        match plan(&job) {
            Ok(plan) => finite(&serde_json::to_value(plan).expect("a plan can be written")),
            Err(invalid) => finite(&serde_json::to_value(invalid).expect("faults can be written")),
        }
    }
}

/// `serde_json` writes what is not finite as `null`, so a plan's own numbers are looked at where none may be absent.
fn finite(value: &Value) {
    for place in
        ["/peak/shaft_torque_n_m", "/peak/leaf_deg", "/rating/utilisation", "/shaft_travel_deg", "/least_lever_m"]
    {
        assert!(
            value.get("peak").is_none() || value.pointer(place).is_some_and(Value::is_number),
            "{place} in {value}"
        );
    }
}

#[test]
fn bytes_never_panic() {
    check!().with_iterations(20_000).for_each(|bytes: &[u8]| {
        if let Ok(document) = serde_json::from_slice::<Document>(bytes) {
            digest(&document);
        }
    });
}

/// A link with any content behind a check that holds, so that chance reaches the reader behind it: no panic, no more memory than the
/// text has, and what is read packs to something that reads the same.
#[test]
fn links_never_panic() {
    let crc = crc::Crc::<u16>::new(&crc::CRC_16_IBM_3740);
    check!().with_iterations(40_000).for_each(|bytes: &[u8]| {
        if let Ok(text) = std::str::from_utf8(bytes) {
            let _ = packed::unpack(text);
        }
        let content = [&[1], bytes].concat();
        let text = BASE64_URL_SAFE_NO_PAD.encode([&content[..], &crc.checksum(&content).to_be_bytes()].concat());
        if let Ok(document) = packed::unpack(&text) {
            digest(&document);
            let again = packed::pack(&document);
            assert_eq!(packed::pack(&packed::unpack(&again).expect("what was packed")), again);
        }
    });
}

/// Links of real jobs with bytes changed behind a check that is made good again.
#[test]
fn damaged_links_never_panic() {
    let crc = crc::Crc::<u16>::new(&crc::CRC_16_IBM_3740);
    let job = serde_json::from_str(include_str!("../fixtures/links/every-block.json")).expect("JSON");
    let bytes = BASE64_URL_SAFE_NO_PAD.decode(packed::pack(&job)).expect("base64url");
    let content = &bytes[..bytes.len() - 2];
    check!().with_iterations(2_000).with_type::<Vec<(u16, u8)>>().for_each(|changes| {
        let mut content = content.to_vec();
        for &(place, byte) in changes {
            let place = 1 + usize::from(place) % (content.len() - 1);
            content[place] = byte;
        }
        let text = BASE64_URL_SAFE_NO_PAD.encode([&content[..], &crc.checksum(&content).to_be_bytes()].concat());
        if let Ok(document) = packed::unpack(&text) {
            digest(&document);
            let _ = Job::open(&document);
        }
    });
}

/// Whatever is typed is read to a finite value or refused; what is shown for an input reads back as it was.
#[test]
fn typed_text_never_panics() {
    const QUANTITIES: [Quantity; 7] = [
        Quantity::ShortLength,
        Quantity::Length,
        Quantity::Mass,
        Quantity::Torque,
        Quantity::Speed,
        Quantity::Percent,
        Quantity::Temperature,
    ];
    // Mostly what people type: pure chance would hardly ever write a number.
    const PIECES: [&str; 24] = [
        "1", "2", "75", "0", "9", " ", "1/2", "½", ".", ",", "-", "'", "\"", "′", "″", "ft", "in", "mm", " kg", "lb",
        "N·m", "%", "\u{a0}", "/",
    ];
    check!().with_iterations(20_000).with_type::<(Vec<u8>, u8, bool, f64)>().for_each(
        |(pieces, quantity, us, value)| {
            let text: String = pieces.iter().take(12).map(|&piece| PIECES[usize::from(piece) % PIECES.len()]).collect();
            let quantity = QUANTITIES[usize::from(*quantity) % QUANTITIES.len()];
            let system = if *us { System::Us } else { System::Metric };
            match units::read(&text, quantity, system) {
                Ok(read) => assert!(read.is_finite(), "{text}"),
                // Asked about: both answers are numbers, and not the same.
                Err(error) => {
                    let asked = error.code == units::ReadErrorCode::Ambiguous;
                    let fit = error.readings.is_some_and(|[a, b]| a.is_finite() && b.is_finite() && a != b);
                    assert_eq!(asked, fit, "{text}");
                }
            }
            let value = value % 1e4;
            if value.is_finite() {
                let shown = units::plain_number(value, quantity, system);
                let read = units::read(&shown, quantity, system)
                    .unwrap_or_else(|error| panic!("{value} as {shown}: {error:?}"));
                // Six digits of the number shown, which for a temperature counts from another zero.
                let unit = quantity.unit(system);
                let step = unit.factor * 1e-5 * unit.of_document(value).abs().max(1.0);
                assert!((read - value).abs() <= step, "{value} as {shown} read as {read}");
                // By the marks of a tape: half a sixteenth of an inch, or a fiftieth of what is less than an inch.
                let entered = units::entered(value, quantity, system);
                let read = units::read(&entered, quantity, system)
                    .unwrap_or_else(|error| panic!("{value} as {entered}: {error:?}"));
                let half = if matches!(quantity, Quantity::Length | Quantity::ShortLength) { 0.000_8 } else { 0.0 };
                assert!((read - value).abs() <= step + half, "{value} as {entered} read as {read}");
            }
        },
    );
}

/// One damage done to a job: which value, and what is put there.
#[derive(Debug, TypeGenerator)]
struct Damage {
    place: u8,
    value: Put,
}

/// What is put in place of a value.
#[derive(Debug, TypeGenerator)]
enum Put {
    Null,
    Yes(bool),
    Scaled(i16),
    Whole(i32),
    Any(f64),
    Word(u8),
    Nest(u8),
}

/// All values of a document, as JSON pointers.
fn pointers(value: &Value, at: String, found: &mut Vec<String>) {
    if let Value::Object(entries) = value {
        entries.iter().for_each(|(key, inner)| pointers(inner, format!("{at}/{key}"), found));
    }
    if !at.is_empty() {
        found.push(at);
    }
}

fn put(old: &Value, put: &Put) -> Value {
    match put {
        Put::Null => Value::Null,
        Put::Yes(yes) => json!(yes),
        // A little more or less, of either sign: most of these stay valid and reach the mechanics.
        Put::Scaled(by) => json!(old.as_f64().unwrap_or(1.0) * f64::from(*by) / 8192.0),
        Put::Whole(whole) => json!(whole),
        Put::Any(any) => json!(any),
        Put::Word(word) => json!(["left", "right", "plain", "measured", "", "either"][usize::from(*word) % 6]),
        Put::Nest(depth) => (0..*depth % 40).fold(json!({}), |inner, _| json!([inner])),
    }
}

#[test]
fn damaged_jobs_never_panic() {
    let job: Value = serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    let mut places = Vec::new();
    pointers(&job, String::new(), &mut places);
    check!().with_iterations(4_000).with_type::<Vec<Damage>>().for_each(|damages| {
        let mut job = job.clone();
        for damage in damages {
            if let Some(value) = job.pointer_mut(&places[usize::from(damage.place) % places.len()]) {
                *value = put(value, &damage.value);
            }
        }
        if let Ok(document) = serde_json::from_value::<Document>(job) {
            digest(&document);
        }
    });
}

/// Whatever a host gives as a list: nothing panics, every entry is taken or told, what is taken keeps the rules, and is ranked to numbers.
fn list_digest(document: &Document, job: &Job) {
    let read = operators::read(document);
    let count = match document {
        Document::Object(entries) => match entries.iter().find(|(key, _)| key == "operators") {
            Some((_, Document::List(items))) => items.len(),
            _ => 0,
        },
        _ => 0,
    };
    let told = read.left_out.iter().filter(|out| out.path.starts_with("operators.")).count();
    let whole = read.left_out.iter().any(|out| out.path == "operators" || out.path.is_empty());
    assert!(whole || read.operators.len() + told == count, "{} and {told} of {count}", read.operators.len());
    let entries: Vec<ListEntry> = read.operators.into_iter().take(3).collect();
    let ranking = rank(job, &entries, RankAsked::default()).expect("the job is valid");
    for one in &ranking.operators {
        let standing = one.as_placed.as_ref().expect("the job has an arm");
        assert!(standing.shaft_torque_n_m.is_finite() && standing.rating.utilisation.is_finite(), "{one:?}");
        assert_eq!(one.does, one.refusal.is_none());
    }
}

/// Lists of real operators with places overwritten, and raw bytes.
#[test]
fn damaged_lists_of_operators_never_panic() {
    const ODD: [&str; 16] = [
        "null",
        "true",
        "-300",
        "0",
        "0.4",
        "1e12",
        "1e-320",
        "\"\"",
        "\"demo-a\"",
        "[]",
        "{}",
        "[1, 2]",
        "[2, 1]",
        "[[]]",
        "{ \"a\": 1, \"a\": 2 }",
        "400",
    ];
    let job: Document = serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    let job = Job::read(&job).expect("valid");
    let list: Document = serde_json::from_str(include_str!("../../www/data/operators.json")).expect("JSON");
    check!().with_iterations(1_500).with_type::<(Vec<(u16, u8)>, Vec<u8>)>().for_each(|(wounds, bytes)| {
        let mut list = list.clone();
        for &(place, odd) in wounds.iter().take(8) {
            let odd = serde_json::from_str(ODD[usize::from(odd) % ODD.len()]).expect("JSON");
            wound(&mut list, usize::from(place), odd);
        }
        list_digest(&list, &job);
        if let Ok(document) = serde_json::from_slice::<Document>(bytes) {
            list_digest(&document, &job);
        }
    });
}

/// Overwrites a value somewhere below, chosen by a number.
fn wound(document: &mut Document, place: usize, odd: Document) {
    let inner: Vec<&mut Document> = match document {
        Document::Object(entries) => entries.iter_mut().map(|(_, value)| value).collect(),
        Document::List(items) => items.iter_mut().collect(),
        _ => Vec::new(),
    };
    let count = inner.len();
    if count == 0 || place % (count + 1) == count {
        *document = odd;
    } else if let Some(value) = inner.into_iter().nth(place % (count + 1)) {
        wound(value, place / (count + 1), odd);
    }
}
