//! The frame of a link: text, version, check; and what is said of one that is damaged, newer or hostile.

use super::{document, same_to_the_bit, through};
use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use pintle_core::{Document, fault::FaultCode, job::Job, packed};
use serde_json::{Value, json};

fn starting_job() -> Value {
    serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON")
}

/// A link of any version and content whose check holds, by other people's code.
fn framed(content: &[u8]) -> String {
    let sum = crc::Crc::<u16>::new(&crc::CRC_16_IBM_3740).checksum(content);
    BASE64_URL_SAFE_NO_PAD.encode([content, &sum.to_be_bytes()].concat())
}

fn refused(text: &str) -> FaultCode {
    let invalid = packed::unpack(text).expect_err(text);
    assert_eq!(invalid.errors.len(), 1);
    assert_eq!(invalid.errors[0].path, "");
    invalid.errors[0].code
}

#[test]
fn the_frame_is_what_others_write() {
    let text = packed::pack(&document(&starting_job()));
    let bytes = BASE64_URL_SAFE_NO_PAD.decode(&text).expect("base64url");
    let (content, _) = bytes.split_last_chunk::<2>().expect("a check");
    assert_eq!(framed(content), text);
    assert_eq!(content[0], 1, "the version");
}

#[test]
fn a_character_that_changed_is_noticed() {
    let text = packed::pack(&document(&starting_job()));
    for place in 0..text.len() {
        for other in ["A", "_", "x", "!", " "] {
            let mut changed = text.clone();
            changed.replace_range(place..=place, other);
            if changed != text {
                assert_eq!(refused(&changed), FaultCode::DamagedLink, "{place} {other}");
            }
        }
        assert_eq!(refused(&text[..place]), FaultCode::DamagedLink, "cut at {place}");
    }
    assert_eq!(refused(&format!("{text}A")), FaultCode::DamagedLink);
}

#[test]
fn a_newer_link_is_told_from_a_damaged_one() {
    assert_eq!(refused(&framed(&[2, 99, 98, 97])), FaultCode::NewerLink);
    assert_eq!(refused(&framed(&[255])), FaultCode::NewerLink);
    for damaged in [&[][..], &[0, 0], &[1], &[1, 8], &[1, 0, 0]] {
        assert_eq!(refused(&framed(damaged)), FaultCode::DamagedLink, "{damaged:?}");
    }
    // A newer job in a frame of today: the job's own reader says so.
    let newer = through(&document(&json!({ "schema": 3, "leaves": [] })));
    assert_eq!(Job::read(&newer).expect_err("newer").errors[0].code, FaultCode::NewerSchema);
    assert_eq!(Job::open(&newer).expect_err("newer").errors[0].code, FaultCode::NewerSchema);
}

/// Lengths that promise more than there is, levels without end, texts that are no text, digits in a longer way than needed.
#[test]
fn a_hostile_link_is_refused() {
    let nested: Vec<u8> = [1].into_iter().chain([3, 1].repeat(10_000)).chain([0]).collect();
    let hostile: [&[u8]; 9] = [
        &[1, 3, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x7F],
        &[1, 3, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF],
        &[1, 4, 2, 0, 0],
        &[1, 5, 4, b'a'],
        &[1, 5, 2, 0xC3, 0x28],
        &[1, 6, 0xFF],
        &[1, 6, 0xFE, 0xFF],
        &[1, 16, 0x80, 0],
        &nested,
    ];
    for content in hostile {
        assert_eq!(refused(&framed(content)), FaultCode::DamagedLink);
    }
    assert_eq!(refused(&"A".repeat(packed::LONGEST_PACKED + 1)), FaultCode::DamagedLink);
}

#[test]
fn numbers_come_back_to_the_bit() {
    let numbers = [
        0.0,
        -0.0,
        1.0,
        -1.0,
        0.1,
        -0.3,
        1.0 / 3.0,
        0.0254,
        3.2004,
        1e-12,
        1e300,
        f64::MAX,
        f64::MIN_POSITIVE,
        5e-324,
        9_007_199_254_740_993.0,
        562_949_953_421_312.0,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::NAN,
        -f64::NAN,
        f64::from_bits(0x7FF0_0000_0000_0001),
        0.009_000_000_000_000_001,
        core::f64::consts::PI,
    ];
    for number in numbers {
        let number = Document::Number(number);
        assert!(same_to_the_bit(&through(&number), &number), "{number:?}");
    }
}

/// What has no number in the dictionary is spelt: names of years to come, texts in any script, repeated keys.
#[test]
fn what_is_not_in_the_dictionary_comes_back_too() {
    let list = Document::List(vec![Document::Text(String::new()), Document::Text("portón Ñandú ½ 門".into())]);
    let entries = ["of_years_to_come", "", "title", "title", "level", "en1991"];
    let object = Document::Object(entries.iter().map(|key| ((*key).to_owned(), list.clone())).collect());
    assert!(same_to_the_bit(&through(&object), &object));
}
