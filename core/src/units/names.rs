//! How people spell units.

use super::quantity::{
    CELSIUS, FAHRENHEIT, FOOT_M, INCH_M, MILE_PER_HOUR_M_S, POUND_FORCE_N, POUND_KG, Quantity, Unit,
};
use crate::STANDARD_GRAVITY_M_S2;

/// Longest spelling that is looked at, once stripped.
const LONGEST: usize = 16;

/// A named unit, `None` where the name is no unit of this quantity.
pub(super) fn unit_named(name: &str, quantity: Quantity) -> Option<Unit> {
    if quantity != Quantity::Temperature {
        return factor_of(name, quantity).map(|factor| Unit::new("", factor));
    }
    Some(match strip(name, &mut [0; LONGEST])? {
        "°c" | "c" | "celsius" => CELSIUS,
        "°f" | "f" | "fahrenheit" => FAHRENHEIT,
        "k" | "kelvin" => Unit { zero: 273.15, ..CELSIUS },
        _ => return None,
    })
}

/// One of a named unit in the document's unit, `None` where the name is no unit of this quantity.
///
/// Case, spaces, dots and hyphens do not matter: `N·m`, `Nm` and `n m` are one name, and so are `ft-lb` and `ft lb`. A name that
/// could be two units of the same quantity is not in the table.
pub(super) fn factor_of(name: &str, quantity: Quantity) -> Option<f64> {
    let mut buffer = [0u8; LONGEST];
    let name = strip(name, &mut buffer)?;
    Some(match quantity {
        Quantity::Length | Quantity::ShortLength => match name {
            "m" | "metre" | "metres" | "meter" | "meters" => 1.0,
            "cm" => 0.01,
            "mm" => 0.001,
            "'" | "ft" | "foot" | "feet" => FOOT_M,
            "\"" | "''" | "in" | "inch" | "inches" => INCH_M,
            "yd" | "yard" | "yards" => 3.0 * FOOT_M,
            _ => return None,
        },
        Quantity::Mass => match name {
            "kg" => 1.0,
            "g" => 0.001,
            "t" => 1000.0,
            "lb" | "lbs" | "pound" | "pounds" => POUND_KG,
            _ => return None,
        },
        Quantity::Area => match name {
            "m2" | "sqm" => 1.0,
            "cm2" => 1e-4,
            "ft2" | "sqft" => FOOT_M * FOOT_M,
            "in2" | "sqin" => INCH_M * INCH_M,
            _ => return None,
        },
        Quantity::Force => match name {
            "n" => 1.0,
            "kn" => 1000.0,
            "kgf" | "kp" => STANDARD_GRAVITY_M_S2,
            // A spring balance reads pounds and means the force.
            "lbf" | "lb" | "lbs" => POUND_FORCE_N,
            _ => return None,
        },
        Quantity::Torque => match name {
            "nm" => 1.0,
            "knm" => 1000.0,
            "kgfm" | "kgm" => STANDARD_GRAVITY_M_S2,
            "lbfft" | "lbft" | "ftlbf" | "ftlb" | "ftlbs" => POUND_FORCE_N * FOOT_M,
            "lbfin" | "lbin" | "inlbf" | "inlb" | "inlbs" => POUND_FORCE_N * INCH_M,
            _ => return None,
        },
        Quantity::Speed => match name {
            "m/s" => 1.0,
            "mm/s" => 0.001,
            "km/h" | "kmh" | "kph" => 1.0 / 3.6,
            "mph" | "mi/h" => MILE_PER_HOUR_M_S,
            "ft/s" | "fps" => FOOT_M,
            "kn" | "kt" | "kts" | "knots" => 1852.0 / 3600.0,
            _ => return None,
        },
        Quantity::Angle => match name {
            "°" | "deg" | "degree" | "degrees" => 1.0,
            _ => return None,
        },
        Quantity::AngularSpeed => match name {
            "°/s" | "deg/s" => 1.0,
            "rpm" | "r/min" => 6.0,
            _ => return None,
        },
        Quantity::Density => match name {
            "kg/m3" => 1.0,
            "g/cm3" => 1000.0,
            "lb/ft3" | "pcf" => POUND_KG / (FOOT_M * FOOT_M * FOOT_M),
            _ => return None,
        },
        Quantity::Inertia => match name {
            "kgm2" => 1.0,
            "lbft2" => POUND_KG * FOOT_M * FOOT_M,
            _ => return None,
        },
        Quantity::Pressure => match name {
            "pa" | "n/m2" => 1.0,
            "kpa" | "kn/m2" => 1000.0,
            "bar" => 1e5,
            "psi" | "lbf/in2" => POUND_FORCE_N / (INCH_M * INCH_M),
            "psf" | "lbf/ft2" => POUND_FORCE_N / (FOOT_M * FOOT_M),
            _ => return None,
        },
        Quantity::Time => match name {
            "s" | "sec" => 1.0,
            "min" => 60.0,
            _ => return None,
        },
        Quantity::Voltage => match name {
            "v" => 1.0,
            _ => return None,
        },
        Quantity::Resistance => match name {
            "\u{3a9}" | "\u{2126}" | "ohm" | "ohms" => 1.0,
            _ => return None,
        },
        Quantity::Current => match name {
            "a" | "amp" | "amps" | "ampere" | "amperes" => 1.0,
            "ma" => 0.001,
            _ => return None,
        },
        Quantity::Charge => match name {
            "ah" => 1.0,
            _ => return None,
        },
        Quantity::Energy => match name {
            "j" => 1.0,
            "ftlb" | "ftlbf" => POUND_FORCE_N * FOOT_M,
            _ => return None,
        },
        Quantity::Power => match name {
            "w" => 1.0,
            "kw" => 1000.0,
            _ => return None,
        },
        Quantity::Stiffness => match name {
            "n/m" => 1.0,
            "n/mm" => 1000.0,
            "lbf/in" | "lb/in" => POUND_FORCE_N / INCH_M,
            _ => return None,
        },
        Quantity::AngularAcceleration => match name {
            "°/s2" | "deg/s2" => 1.0,
            _ => return None,
        },
        Quantity::Percent => match name {
            "%" => 0.01,
            _ => return None,
        },
        Quantity::Ratio | Quantity::Count | Quantity::Temperature => return None,
    })
}

/// The name in small letters, without what only separates, with plain digits and primes.
fn strip<'a>(name: &str, buffer: &'a mut [u8; LONGEST]) -> Option<&'a str> {
    let mut length = 0;
    for character in name.chars() {
        let plain = match character {
            ' ' | '\u{a0}' | '\u{202f}' | '·' | '⋅' | '*' | '-' | '.' => continue,
            '²' => '2',
            '³' => '3',
            '′' | '’' => '\'',
            '″' | '”' => '"',
            other => other.to_ascii_lowercase(),
        };
        let end = length + plain.len_utf8();
        plain.encode_utf8(buffer.get_mut(length..end)?);
        length = end;
    }
    core::str::from_utf8(&buffer[..length]).ok()
}
