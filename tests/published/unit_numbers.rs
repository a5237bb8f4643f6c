//! Numbers as they are typed, against what the characters say.

use pintle_core::units::{Quantity, ReadErrorCode, System, read};

#[track_caller]
fn reads(text: &str, expected: f64) {
    let found = read(text, Quantity::Ratio, System::Metric).unwrap_or_else(|error| panic!("{text}: {error:?}"));
    assert!((found - expected).abs() <= 1e-15 * expected.abs(), "{text}: {found}, not {expected}");
}

/// Names in the Unicode character database: U+00BD VULGAR FRACTION ONE HALF and so on.
#[test]
fn a_fraction_of_one_character_is_what_its_name_says() {
    for (glyph, above, below) in [
        ('½', 1.0, 2.0),
        ('¼', 1.0, 4.0),
        ('¾', 3.0, 4.0),
        ('⅛', 1.0, 8.0),
        ('⅜', 3.0, 8.0),
        ('⅝', 5.0, 8.0),
        ('⅞', 7.0, 8.0),
        ('⅓', 1.0, 3.0),
        ('⅔', 2.0, 3.0),
    ] {
        reads(&format!("{glyph}"), above / below);
        for text in [format!("5{glyph}"), format!("5 {glyph}"), format!("5-{glyph}")] {
            reads(&text, 5.0 + above / below);
        }
        // The same in plain figures, with either bar.
        reads(&format!("5 {above}/{below}"), 5.0 + above / below);
        reads(&format!("5-{above}⁄{below}"), 5.0 + above / below);
        let inches = read(&format!("2' 5{glyph}\""), Quantity::ShortLength, System::Us).expect("a length");
        assert!((inches - 0.0254 * (29.0 + above / below)).abs() < 1e-15, "{glyph}");
    }
}

/// Fifteen digits are kept; those behind them still count for the size of the number.
#[test]
fn separators_and_long_numbers_keep_their_size() {
    for (text, expected) in [
        ("1 234,5", 1234.5),
        ("1\u{202f}234\u{2009}567.25", 1_234_567.25),
        ("1.234.567", 1_234_567.0),
        ("1.234.567,5", 1_234_567.5),
        ("12,345,678.5", 12_345_678.5),
        ("123,456.5", 123_456.5),
        ("1,5", 1.5),
        ("0,125", 0.125),
        ("1234,567", 1234.567),
        ("12,34", 12.34),
        ("1,2345", 1.2345),
        ("1.234", 1.234),
        ("0", 0.0),
        ("+4", 4.0),
        ("1234567890123456", 1.234_567_890_123_45e15),
        ("12345678901234567890", 1.234_567_890_123_45e19),
        ("0.00000000012345678901234567", 1.234_567_890_123_45e-10),
        ("123456789.0123456789", 123_456_789.012_345),
    ] {
        let found = read(text, Quantity::Ratio, System::Metric).unwrap_or_else(|error| panic!("{text}: {error:?}"));
        assert!((found - expected).abs() <= 1e-14 * expected, "{text}: {found}, not {expected}");
    }
    // The sixteenth digit is let go: fifteen and their power of ten are exact, so that one rounding is the right one.
    assert_eq!(read("1234567890123456", Quantity::Ratio, System::Metric), Ok(1_234_567_890_123_450.0));
    for text in ["1,234", "12,345", "999,000"] {
        let error = read(text, Quantity::Ratio, System::Metric).expect_err(text);
        assert_eq!(error.code, ReadErrorCode::Ambiguous, "{text}");
        let plain: f64 = text.replace(',', "").parse().expect("digits");
        assert_eq!(error.readings, Some([plain, plain / 1000.0]), "{text}");
    }
    for text in [
        "1.2.3",
        "1,23,456",
        "1234,567,890",
        "1,234.567,8",
        "1.234,567.8",
        "1,234.567.890",
        ",",
        ".",
        "5/",
        "/5",
        "1/0",
        "½½",
        "a½",
        "5 x/8",
        "1..2",
        "1,,2",
        ",123,456",
        "0,123,456",
        "12 3/4 5",
        "1/2/3",
        "٣",
    ] {
        let found = read(text, Quantity::Ratio, System::Metric);
        assert_eq!(found.map_err(|error| error.code), Err(ReadErrorCode::NotANumber), "{text}");
    }
    assert_eq!(read("  ", Quantity::Ratio, System::Us).unwrap_err().code, ReadErrorCode::Empty);
}

/// Two terms of a length are whole feet and then inches.
#[test]
fn feet_and_inches_are_added() {
    for (text, inches) in [
        ("6' 3\"", 75.0),
        ("6ft 3", 75.0),
        ("6 ft-3 in", 75.0),
        ("6'–3 1/2\"", 75.5),
        ("-2' 6\"", -30.0),
        ("0' 6\"", 6.0),
        ("75-\"", 75.0),
    ] {
        let found = read(text, Quantity::Length, System::Metric).unwrap_or_else(|error| panic!("{text}: {error:?}"));
        assert!((found - inches * 0.0254).abs() < 1e-14, "{text}: {found}");
    }
    for text in ["6m 3\"", "6' 3'", "6.5' 3\"", "6' 3 cm", "6\" 3\"", "6' 3\" 2\""] {
        assert!(read(text, Quantity::Length, System::Metric).is_err(), "{text}");
    }
}
