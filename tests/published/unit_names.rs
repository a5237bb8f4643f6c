//! Every spelling of a unit that is read, held to its definition.
//!
//! Exact by definition (NIST SP 811, 2008, Appendix B.8 and B.9): 1 ft = 0.3048 m, 1 in = 0.0254 m, 1 yd = 0.9144 m,
//! 1 mi = 1609.344 m, 1 nautical mile = 1852 m, 1 lb = 0.453 592 37 kg, 1 kgf = 9.806 65 N, 1 lbf = 4.448 221 615 260 5 N.
//! Products of them are written out with the digits the definitions give.

use pintle_core::units::{Quantity, ReadErrorCode, System, read, show, symbol};

const LBF: f64 = 4.448_221_615_260_5;
const LB: f64 = 0.453_592_37;

/// Quantity, one of the unit in the document's unit, its spellings. SP 811 B.8: 1 ft² = 0.092 903 04 m², 1 ft³ = 0.028 316 846 592 m³,
/// 1 in² = 6.4516 cm².
const SPELLINGS: &[(Quantity, f64, &[&str])] = &[
    (Quantity::Length, 1.0, &["m", "metre", "metres", "meter", "meters", "M"]),
    (Quantity::Length, 0.01, &["cm"]),
    (Quantity::ShortLength, 0.001, &["mm"]),
    (Quantity::Length, 0.3048, &["'", "ft", "foot", "feet", "′", "’", "ft."]),
    (Quantity::Length, 0.0254, &["\"", "''", "in", "inch", "inches", "″", "”"]),
    (Quantity::Length, 0.9144, &["yd", "yard", "yards"]),
    (Quantity::Mass, 1.0, &["kg"]),
    (Quantity::Mass, 0.001, &["g"]),
    (Quantity::Mass, 1000.0, &["t"]),
    (Quantity::Mass, LB, &["lb", "lbs", "pound", "pounds"]),
    (Quantity::Area, 1.0, &["m2", "m²", "sq m"]),
    (Quantity::Area, 1e-4, &["cm2", "cm²"]),
    (Quantity::Area, 0.092_903_04, &["ft2", "ft²", "sqft", "sq. ft."]),
    (Quantity::Area, 6.4516e-4, &["in2", "in²", "sq in"]),
    (Quantity::Force, 1.0, &["N", "n"]),
    (Quantity::Force, 1000.0, &["kN"]),
    (Quantity::Force, 9.806_65, &["kgf", "kp"]),
    (Quantity::Force, LBF, &["lbf", "lb", "lbs"]),
    (Quantity::Torque, 1.0, &["Nm", "N·m", "N⋅m", "N*m", "N-m", "N m"]),
    (Quantity::Torque, 1000.0, &["kNm", "kN·m"]),
    (Quantity::Torque, 9.806_65, &["kgf·m", "kg m"]),
    (Quantity::Torque, LBF * 0.3048, &["lbf·ft", "lb-ft", "ft·lbf", "ft-lb", "ft lbs"]),
    (Quantity::Torque, LBF * 0.0254, &["lbf·in", "lb-in", "in·lbf", "in-lb", "in lbs"]),
    (Quantity::Speed, 1.0, &["m/s"]),
    (Quantity::Speed, 0.001, &["mm/s"]),
    (Quantity::Speed, 1000.0 / 3600.0, &["km/h", "kmh", "kph"]),
    (Quantity::Speed, 0.447_04, &["mph", "mi/h"]),
    (Quantity::Speed, 0.3048, &["ft/s", "fps"]),
    (Quantity::Speed, 1852.0 / 3600.0, &["kn", "kt", "kts", "knots"]),
    (Quantity::Angle, 1.0, &["°", "deg", "degree", "degrees"]),
    (Quantity::AngularSpeed, 1.0, &["°/s", "deg/s"]),
    (Quantity::AngularSpeed, 6.0, &["rpm", "r/min"]),
    (Quantity::Density, 1.0, &["kg/m3", "kg/m³"]),
    (Quantity::Density, 1000.0, &["g/cm3", "g/cm³"]),
    (Quantity::Density, LB / 0.028_316_846_592, &["lb/ft3", "lb/ft³", "pcf"]),
    (Quantity::Inertia, 1.0, &["kg·m²", "kgm2"]),
    (Quantity::Inertia, LB * 0.092_903_04, &["lb·ft²", "lbft2"]),
    (Quantity::Pressure, 1.0, &["Pa", "N/m²"]),
    (Quantity::Pressure, 1000.0, &["kPa", "kN/m2"]),
    (Quantity::Pressure, 100_000.0, &["bar"]),
    (Quantity::Pressure, LBF / 6.4516e-4, &["psi", "lbf/in²"]),
    (Quantity::Pressure, LBF / 0.092_903_04, &["psf", "lbf/ft²"]),
    (Quantity::Time, 1.0, &["s", "sec"]),
    (Quantity::Time, 60.0, &["min"]),
    (Quantity::Voltage, 1.0, &["V"]),
    (Quantity::Resistance, 1.0, &["\u{3a9}", "\u{2126}", "ohm", "Ohms"]),
    (Quantity::Current, 1.0, &["A", "amp", "amps", "ampere", "amperes"]),
    (Quantity::Current, 0.001, &["mA"]),
    // 1 A·h = 3600 C (SP 811, B.8); documents hold A·h themselves.
    (Quantity::Charge, 1.0, &["A·h", "Ah"]),
    (Quantity::Energy, 1.0, &["J"]),
    (Quantity::Energy, LBF * 0.3048, &["ft·lbf", "ft-lb"]),
    (Quantity::Power, 1.0, &["W"]),
    (Quantity::Power, 1000.0, &["kW"]),
    (Quantity::Stiffness, 1.0, &["N/m"]),
    (Quantity::Stiffness, 1000.0, &["N/mm"]),
    (Quantity::Stiffness, LBF / 0.0254, &["lbf/in", "lb/in"]),
    (Quantity::AngularAcceleration, 1.0, &["°/s²", "deg/s2"]),
    (Quantity::Percent, 0.01, &["%"]),
];

#[track_caller]
fn reads(text: &str, quantity: Quantity, system: System, expected: f64) {
    let found = read(text, quantity, system).unwrap_or_else(|error| panic!("{text}: {error:?}"));
    assert!((found - expected).abs() <= 1e-14 * expected.abs(), "{text}: {found}, not {expected}");
}

#[test]
fn every_spelling_is_its_definition() {
    for (quantity, one, names) in SPELLINGS {
        for name in *names {
            // With a no-break space before it, without any, and whichever system is shown.
            reads(&format!("3\u{a0}{name}"), *quantity, System::Us, 3.0 * one);
            reads(&format!("0.7{name}"), *quantity, System::Metric, 0.7 * one);
        }
    }
}

/// Kelvin and Celsius differ by 273.15 (SI brochure 2.3.1), 9 °F are 5 °C and 32 °F is 0 °C (SP 811 B.8).
#[test]
fn temperatures_are_read_by_name() {
    for (text, celsius) in [
        ("20 °C", 20.0),
        ("20c", 20.0),
        ("20 Celsius", 20.0),
        ("50 °F", 10.0),
        ("50f", 10.0),
        ("50 Fahrenheit", 10.0),
        ("300 K", 26.85),
        ("300 kelvin", 26.85),
    ] {
        for system in [System::Metric, System::Us] {
            let found = read(text, Quantity::Temperature, system).unwrap_or_else(|error| panic!("{text}: {error:?}"));
            assert!((found - celsius).abs() < 1e-12, "{text}: {found}");
        }
    }
}

/// What a quantity's own unit is called, in either system, is read back and shown as itself.
#[test]
fn symbols_that_are_shown_are_read() {
    for (quantity, _, _) in SPELLINGS {
        for system in [System::Metric, System::Us] {
            let symbol = symbol(*quantity, system);
            let one = read(&format!("7 {symbol}"), *quantity, system).unwrap_or_else(|_| panic!("{symbol}"));
            assert_eq!(Ok(one), read("7", *quantity, system), "{symbol}");
            let space = if symbol == "°" { "" } else { "\u{a0}" };
            let shown = show(one, *quantity, system);
            match (quantity, system) {
                // By the marks of a tape, which have signs of their own.
                (Quantity::Length, System::Us) => assert_eq!(shown, "7'-0\""),
                (Quantity::ShortLength, System::Us) => assert_eq!(shown, "7\""),
                _ => assert_eq!(shown, format!("7{space}{symbol}")),
            }
            assert_eq!(read(&shown, *quantity, system), Ok(one), "{shown}");
        }
    }
}

/// A name is a unit of the quantities beside it and of no other.
#[test]
fn a_unit_of_another_quantity_is_refused() {
    use Quantity::*;
    let all = [
        Mass,
        Length,
        ShortLength,
        Area,
        Force,
        Torque,
        Speed,
        Angle,
        AngularSpeed,
        Density,
        Inertia,
        Pressure,
        Ratio,
        Percent,
        Count,
        Time,
        Voltage,
        Resistance,
        Energy,
        Power,
        Stiffness,
        AngularAcceleration,
        Temperature,
    ];
    let names: [(&str, &[Quantity]); 23] = [
        ("kg", &[Mass]),
        ("m", &[Length, ShortLength]),
        ("m2", &[Area]),
        ("N", &[Force]),
        ("kN", &[Force, Speed]),
        ("lb", &[Mass, Force]),
        ("Nm", &[Torque]),
        ("m/s", &[Speed]),
        ("°", &[Angle]),
        ("rpm", &[AngularSpeed]),
        ("kg/m3", &[Density]),
        ("kgm2", &[Inertia]),
        ("Pa", &[Pressure]),
        ("s", &[Time]),
        ("V", &[Voltage]),
        ("ohm", &[Resistance]),
        ("J", &[Energy]),
        ("W", &[Power]),
        ("N/m", &[Stiffness]),
        ("°/s2", &[AngularAcceleration]),
        ("%", &[Percent]),
        ("°C", &[Temperature]),
        ("seventeenletters!", &[]),
    ];
    for quantity in all {
        for (name, quantities) in names {
            let found = read(&format!("5 {name}"), quantity, System::Metric).map_err(|error| error.code);
            match quantities.contains(&quantity) {
                true => assert!(found.is_ok(), "5 {name} as {quantity:?}"),
                false => assert_eq!(found, Err(ReadErrorCode::NotANumber), "5 {name} as {quantity:?}"),
            }
        }
    }
}
