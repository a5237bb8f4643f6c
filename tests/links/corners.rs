//! Corners of the format, byte by byte: one way of writing each value, and what is said of a text that is none.

use super::{document, through};
use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use pintle_core::{Document, fault::FaultCode, packed};
use serde_json::json;

/// Content of a link with its version and check put round it by other people's code.
fn framed(content: &[u8]) -> String {
    let content = [&[1], content].concat();
    let sum = crc::Crc::<u16>::new(&crc::CRC_16_IBM_3740).checksum(&content);
    BASE64_URL_SAFE_NO_PAD.encode([&content[..], &sum.to_be_bytes()].concat())
}

/// The tag of a number says unit, sign and decimals: 16 + (2·unit + sign)·8 + decimals. Behind it stand the digits, seven bits a byte.
#[test]
fn numbers_are_written_in_one_way() {
    let feet_and_inches = 16 + 10 * 8;
    let written: [(f64, &[u8]); 10] = [
        (0.0, &[16, 0]),
        (1.0, &[16, 1]),
        (-2.0, &[16 + 8, 2]),
        (0.5, &[16 + 1, 5]),
        (127.0, &[16, 0x7F]),
        (128.0, &[16, 0x80, 0x01]),
        (16_383.0, &[16, 0xFF, 0x7F]),
        (16_384.0, &[16, 0x80, 0x80, 0x01]),
        // 1.27 inches: a hundred and twenty-seven hundredths in one byte, where metres need 32258.
        (1.27 * 0.0254, &[16 + 6 * 8 + 2, 127]),
        // 40 lb: 0.453 592 37 kg a pound.
        (40.0 * 0.453_592_37, &[16 + 12 * 8, 40]),
    ];
    for (number, bytes) in written {
        assert_eq!(packed::pack(&Document::Number(number)), framed(bytes), "{number}");
        assert_eq!(packed::unpack(&framed(bytes)), Ok(Document::Number(number)), "{number}");
    }
    // Six feet and three and a half inches are whole feet and then inches, each rounded by itself; 755 tenths of an inch take two bytes.
    let read = packed::unpack(&framed(&[feet_and_inches + 1, 0xF3, 0x05]));
    assert_eq!(read, Ok(Document::Number(6.0 * 0.3048 + 3.5 * 0.0254)));
    let below_a_foot = packed::unpack(&framed(&[feet_and_inches, 11]));
    assert_eq!(below_a_foot, Ok(Document::Number(11.0 * 0.0254)));
}

#[test]
fn every_plain_value_comes_back() {
    for value in
        [json!(null), json!(true), json!(false), json!("words of its own"), json!([]), json!({}), json!([null, 1])]
    {
        let document = document(&value);
        assert_eq!(through(&document), document);
    }
    assert_eq!(packed::unpack(&framed(&[0])), Ok(Document::Null));
    // Tags between the plain values and the numbers mean nothing.
    for tag in 8..16 {
        let errors = packed::unpack(&framed(&[tag, 1])).expect_err("no such tag").errors;
        assert_eq!(errors[0].code, FaultCode::DamagedLink, "{tag}");
    }
}

/// Six bits too many, though all are zero, are no byte: whatever the length, one character more is not the same link.
#[test]
fn a_character_more_is_noticed_at_every_length() {
    for length in 1..9 {
        let text = packed::pack(&Document::Text("x".repeat(length)));
        let errors = packed::unpack(&format!("{text}A")).expect_err("too long").errors;
        assert_eq!(errors[0].code, FaultCode::DamagedLink, "{length}");
    }
}

/// Twenty-four characters are enough to know a text again.
#[test]
fn a_bad_link_is_shown_by_its_beginning() {
    let found = |text: &str| packed::unpack(text).expect_err("no link").errors[0].found.clone().expect("it is shown");
    assert_eq!(found("no link"), "no link");
    assert_eq!(found(""), "");
    assert_eq!(found("abcdefghijklmnopqrstuvwx"), "abcdefghijklmnopqrstuvwx");
    assert_eq!(found("abcdefghijklmnopqrstuvwxy"), "abcdefghijklmnopqrstuvwx…");
    assert_eq!(found("äöü"), "äöü");
    // As long as an address bar takes it is looked at; longer ones are not.
    let longest = packed::LONGEST_PACKED;
    let text = |characters: usize| packed::pack(&Document::Text("x".repeat(characters)));
    let fits =
        (0..4).map(|less| text(longest * 3 / 4 - 7 - less)).find(|text| text.len() == longest).expect("one is as long");
    assert!(packed::unpack(&fits).is_ok());
    let beyond =
        (0..5).map(|more| text(longest * 3 / 4 - 7 + more)).find(|text| text.len() > longest).expect("one is longer");
    assert_eq!(packed::unpack(&beyond).expect_err("too long").errors[0].code, FaultCode::DamagedLink);
}
