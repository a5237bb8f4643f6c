//! Numbers as they are shown: digits by the size of the number and the kind of quantity, limits rounded inwards, feet and inches of a tape.

use pintle_core::units::{Quantity, Rounding, System, entered, feet_inches, plain_number, read, show, show_limit};

/// Six significant digits, never more than five places.
#[test]
fn an_input_has_six_digits() {
    for (value, expected) in [
        (1_234_567.0, "1234567"),
        (-123_456.7, "−123457"),
        (99_999.4, "99999.4"),
        (12_345.67, "12345.7"),
        (1_234.567, "1234.57"),
        (123.456_7, "123.457"),
        (12.345_67, "12.3457"),
        (1.234_567, "1.23457"),
        (0.012_345_6, "0.01235"),
        (10_000.0, "10000"),
        // Just below a power of ten there is one place more.
        (99_999.96, "100000"),
        (9_999.96, "9999.96"),
        (999.996, "999.996"),
        (99.999_6, "99.9996"),
        (9.999_96, "9.99996"),
        (0.0, "0"),
        (-0.000_001, "0"),
    ] {
        assert_eq!(plain_number(value, Quantity::Ratio, System::Metric), expected, "{value}");
    }
    assert_eq!(plain_number(f64::NAN, Quantity::Ratio, System::Us), "");
    assert_eq!(plain_number(f64::INFINITY, Quantity::Mass, System::Us), "");
}

/// Three significant digits, whole units above, no more places than the quantity is ever known to.
#[test]
fn a_shown_value_has_the_places_of_its_quantity() {
    use Quantity::*;
    let values = [123.456_78, 12.345_678, 1.234_567_8, 0.123_456_78, 0.012_345_678];
    let rows: [(&[Quantity], [&str; 5]); 6] = [
        (&[Count], ["123", "12", "1", "0", "0"]),
        (&[Mass, Force, Power, Voltage, Pressure, Resistance, Angle, Temperature], ["123", "12.3", "1.2", "0.1", "0"]),
        (&[Torque, AngularSpeed, AngularAcceleration, Time, Energy], ["123", "12.3", "1.23", "0.12", "0.01"]),
        (&[Length, Area, Inertia], ["123", "12.3", "1.23", "0.123", "0.012"]),
        (&[Density, Ratio], ["123", "12.3", "1.23", "0.123", "0.0123"]),
        // A speed below one is told to a thousandth.
        (&[Speed], ["123", "12.3", "1.2", "0.123", "0.012"]),
    ];
    for (quantities, shown) in rows {
        for &quantity in quantities {
            for (value, expected) in values.into_iter().zip(shown) {
                let symbol = pintle_core::units::symbol(quantity, System::Metric);
                let text = show(value, quantity, System::Metric);
                let number = text.strip_suffix(symbol).expect("the unit is behind").trim_end();
                assert_eq!(number, expected, "{quantity:?}");
            }
        }
    }
    // Each step of the scale, on it and just below.
    for (value, expected) in [
        (100.0, "100"),
        (99.94, "99.9"),
        (10.0, "10"),
        (9.994, "9.99"),
        (1.0, "1"),
        (0.999_4, "0.999"),
        (0.1, "0.1"),
        (0.099_94, "0.0999"),
    ] {
        assert_eq!(show(value, Ratio, System::Metric), expected, "{value}");
    }
    assert_eq!(show(0.999_6, Speed, System::Metric), "1\u{a0}m/s");
    assert_eq!(show(1.26, Speed, System::Metric), "1.3\u{a0}m/s");
    assert_eq!(show(12_345.0, ShortLength, System::Metric), "12345000\u{a0}mm");
    assert_eq!(show(0.001_234, ShortLength, System::Metric), "1.23\u{a0}mm");
    assert_eq!(show(f64::INFINITY, Mass, System::Metric), "–");
}

/// A shown limit lies inside the limit, and a value already on the grid stays there.
#[test]
fn a_limit_is_rounded_inwards() {
    for (value, down, up) in [
        (12.345, "12.3", "12.4"),
        (-12.345, "−12.4", "−12.3"),
        (12.3, "12.3", "12.3"),
        (0.123_45, "0.123", "0.124"),
        (1234.5, "1234", "1235"),
        (1.2, "1.2", "1.2"),
        (0.000_14, "0.0001", "0.0002"),
    ] {
        assert_eq!(show_limit(value, Quantity::Ratio, System::Metric, Rounding::Down), down, "{value}");
        assert_eq!(show_limit(value, Quantity::Ratio, System::Metric, Rounding::Up), up, "{value}");
    }
    // A limit that is whole in the shown unit is shown whole, whatever its conversion there and back leaves in the last bits.
    for pounds in 100..20_000 {
        let limit = f64::from(pounds) * 0.453_592_37;
        let shown = [Rounding::Down, Rounding::Up].map(|way| show_limit(limit, Quantity::Mass, System::Us, way));
        assert_eq!(shown, [format!("{pounds}\u{a0}lb"), format!("{pounds}\u{a0}lb")]);
    }
    assert_eq!(
        show_limit(12.35, Quantity::Ratio, System::Metric, Rounding::Nearest),
        show(12.35, Quantity::Ratio, System::Metric)
    );
}

/// Feet, inches and binary fractions, worked by hand.
#[test]
fn a_tape_shows_the_nearest_of_its_marks() {
    for (inches, denominator, expected) in [
        (34.375, 64, "2'-10 3/8\""),
        (34.4, 64, "2'-10 13/32\""),
        (34.4, 32, "2'-10 13/32\""),
        (34.4, 8, "2'-10 3/8\""),
        (34.4, 2, "2'-10 1/2\""),
        (34.4, 1, "2'-10\""),
        // No tape is divided so: sixteenths from an inch on, sixty-fourths below.
        (34.4, 10, "2'-10 3/8\""),
        (34.4, 128, "2'-10 3/8\""),
        (0.4, 128, "13/32\""),
        (1.0, 3, "1\""),
        (1.02, 3, "1\""),
        (0.98, 3, "63/64\""),
        (-0.5, 2, "−1/2\""),
        (-12.0, 16, "−1'-0\""),
        (24.0, 16, "2'-0\""),
        (25.0, 16, "2'-1\""),
        (12.5, 16, "1'-0 1/2\""),
        (36.75, 4, "3'-0 3/4\""),
        (5.0, 16, "5\""),
    ] {
        assert_eq!(feet_inches(inches * 0.0254, denominator), expected, "{inches} in of 1/{denominator}");
    }
    assert_eq!(feet_inches(f64::INFINITY, 16), "–");
}

/// A length nobody typed stands in its field, and wherever it is told, by the marks of a tape: 9.842 52 in is 157.48 sixteenths, 34.362 2 in
/// 549.8, 10.4987 ft ten feet and 95.7 sixteenths of an inch; below an inch by sixty-fourths, unless none is near (3 mm are 7.56 of them).
#[test]
fn a_us_length_has_no_decimals_where_a_tape_has_marks() {
    use Quantity::{Length, ShortLength};
    for (value_m, quantity, expected) in [
        (0.25, ShortLength, "9 13/16\""),
        (-0.25, ShortLength, "−9 13/16\""),
        (0.8728, ShortLength, "2'-10 3/8\""),
        (3.2, Length, "10'-6\""),
        (0.0254, ShortLength, "1\""),
        (0.02, ShortLength, "25/32\""),
        (0.0, ShortLength, "0\""),
        (0.0, Length, "0\""),
        // Half a sixty-fourth short of the inch.
        (0.0253, ShortLength, "1\""),
    ] {
        assert_eq!(entered(value_m, quantity, System::Us), expected, "{value_m}");
        assert_eq!(show(value_m, quantity, System::Us), expected, "{value_m}");
    }
    for (value_m, bare_in, shown) in [(0.003, "0.11811", "0.12\u{a0}in"), (0.0005, "0.01969", "0.02\u{a0}in")] {
        assert_eq!(entered(value_m, ShortLength, System::Us), bare_in);
        assert_eq!(show(value_m, ShortLength, System::Us), shown);
    }
    // Millimetres and everything else as ever.
    assert_eq!(entered(0.8728, ShortLength, System::Metric), "872.8");
    assert_eq!(entered(160.0, Quantity::Mass, System::Us), plain_number(160.0, Quantity::Mass, System::Us));
    assert_eq!(entered(f64::NAN, ShortLength, System::Us), "");
}

/// What stands in a field, typed again as it stands, is the same length to half a step of the tape, or to a fiftieth below an inch.
#[test]
fn a_field_reads_back_to_half_a_step() {
    for quantity in [Quantity::Length, Quantity::ShortLength] {
        for step in -40_000..40_000 {
            let value_m = f64::from(step) * 0.000_11;
            let text = entered(value_m, quantity, System::Us);
            let back_m = read(&text, quantity, System::Us).unwrap_or_else(|error| panic!("{text}: {error:?}"));
            let half_m = if value_m.abs() < 0.0254 { 0.02 * value_m.abs() } else { 0.0254 / 32.0 };
            assert!((back_m - value_m).abs() <= half_m + 1e-9, "{value_m} as {text}");
        }
    }
}

/// Limits on a tape: 300 mm are 11.811 in, that is 188.98 sixteenths; 10 m are 32 ft and 155.2; below a sixteenth in decimals.
#[test]
fn a_us_limit_lies_on_the_mark_inside() {
    for (value_m, down, up) in [
        (0.3, "11 3/4\"", "11 13/16\""),
        (-0.3, "−11 13/16\"", "−11 3/4\""),
        (10.0, "32'-9 11/16\"", "32'-9 3/4\""),
        (0.0254, "1\"", "1\""),
        (0.3048, "1'-0\"", "1'-0\""),
        (0.0, "0\"", "0\""),
        (0.02, "25/32\"", "51/64\""),
        (0.0005, "0.01\u{a0}in", "0.02\u{a0}in"),
    ] {
        let shown =
            [Rounding::Down, Rounding::Up].map(|way| show_limit(value_m, Quantity::ShortLength, System::Us, way));
        assert_eq!(shown, [down, up], "{value_m}");
    }
    for sixteenths in 16..4000 {
        let limit_m = f64::from(sixteenths) * 0.001_587_5;
        let shown =
            [Rounding::Down, Rounding::Up].map(|way| show_limit(limit_m, Quantity::ShortLength, System::Us, way));
        assert_eq!(shown, [feet_inches(limit_m, 16), feet_inches(limit_m, 16)]);
    }
}
