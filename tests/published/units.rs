//! The factors of the units held to an independent calculator of exact fractions.
//!
//! Oracle: `rink-core`, whose definitions are those of GNU Units (international yard and pound, standard gravity) and whose numbers
//! are fractions of whole numbers, so that it rounds nothing. Ours may be off by the rounding of a few products: two parts in 2⁵².

use pintle_core::units::{Quantity, System, read, symbol};
use rink_core::output::QueryReply;

const TOLERANCE: f64 = 2.0 * f64::EPSILON;

/// A value in the base units of the SI, to the nearest `f64`.
fn oracle(context: &mut rink_core::Context, value: &str) -> f64 {
    match rink_core::eval(context, value) {
        Ok(QueryReply::Number(parts)) => parts.raw_value.expect("a number").value.to_f64(),
        other => panic!("{value}: {other:?}"),
    }
}

/// Quantities with their units of either system as the oracle spells them.
const UNITS: [(Quantity, [&str; 2]); 11] = [
    (Quantity::Mass, ["kg", "lb"]),
    (Quantity::Length, ["m", "ft"]),
    (Quantity::ShortLength, ["mm", "inch"]),
    (Quantity::Area, ["m^2", "ft^2"]),
    (Quantity::Force, ["N", "lbf"]),
    (Quantity::Torque, ["N m", "lbf ft"]),
    (Quantity::Speed, ["m/s", "mile/hour"]),
    (Quantity::Density, ["kg/m^3", "lb/ft^3"]),
    (Quantity::Inertia, ["kg m^2", "lb ft^2"]),
    (Quantity::Pressure, ["Pa", "lbf/ft^2"]),
    (Quantity::Stiffness, ["N/mm", "lbf/inch"]),
];

/// Spellings people type, as the oracle spells them.
const NAMES: [(Quantity, &str, &str); 23] = [
    (Quantity::Length, "yd", "yard"),
    (Quantity::Length, "cm", "cm"),
    (Quantity::Mass, "g", "gram"),
    (Quantity::Mass, "t", "tonne"),
    (Quantity::Area, "sq in", "inch^2"),
    (Quantity::Area, "cm²", "cm^2"),
    (Quantity::Force, "kN", "kN"),
    (Quantity::Force, "kgf", "kg gravity"),
    (Quantity::Force, "lb", "lbf"),
    (Quantity::Torque, "in-lb", "lbf inch"),
    (Quantity::Torque, "ft lbf", "lbf ft"),
    (Quantity::Torque, "kgf m", "kg gravity m"),
    (Quantity::Speed, "km/h", "km/hour"),
    (Quantity::Speed, "ft/s", "ft/s"),
    (Quantity::Speed, "knots", "knot"),
    (Quantity::Density, "g/cm³", "gram/cm^3"),
    (Quantity::Pressure, "kPa", "kPa"),
    (Quantity::Pressure, "psi", "psi"),
    (Quantity::Pressure, "bar", "bar"),
    (Quantity::Energy, "ft·lbf", "lbf ft"),
    (Quantity::Energy, "J", "J"),
    (Quantity::Power, "kW", "kW"),
    (Quantity::Stiffness, "lbf/in", "lbf/inch"),
];

#[test]
fn factors_are_those_of_an_exact_calculator() {
    let mut context = rink_core::simple_context().expect("the oracle has its definitions with it");
    let mut held = |quantity, found: f64, unit: &str, name: &str| {
        let expected = oracle(&mut context, &format!("1 {unit}"));
        assert!((found / expected - 1.0).abs() <= TOLERANCE, "{quantity:?} in {name}: {found}, not {expected}");
    };
    for (quantity, units) in UNITS {
        for (system, unit) in [System::Metric, System::Us].into_iter().zip(units) {
            held(quantity, quantity.unit(system).factor, unit, symbol(quantity, system));
        }
    }
    for (quantity, typed, unit) in NAMES {
        let found = read(&format!("1 {typed}"), quantity, System::Metric).unwrap_or_else(|_| panic!("{typed}"));
        held(quantity, found, unit, typed);
    }
}

/// Temperatures have another zero: the oracle converts whole degrees.
#[test]
fn temperatures_are_those_of_an_exact_calculator() {
    let mut context = rink_core::simple_context().expect("the oracle has its definitions with it");
    for fahrenheit in [-459, -40, -4, 0, 32, 59, 100, 212, 451] {
        let kelvin = oracle(&mut context, &format!("({fahrenheit}) °F"));
        let found = read(&format!("{fahrenheit} °F"), Quantity::Temperature, System::Metric).expect("a temperature");
        assert!((found + 273.15 - kelvin).abs() < 1e-12 * 460.0, "{fahrenheit} °F: {found} °C, {kelvin} K");
    }
}
