//! The Beaufort scale, which the crate holds as a table.

use super::check::{Check, Provenance::*, check};
use pintle_core::leaf::{beaufort_number, beaufort_range_m_s};
use pintle_core::units::{Quantity, System, read};

const BEAUFORT: (&str, &str) = ("WMO Beaufort scale, delta-s.org/weer/beaufort.html and meteothes.gr", "m/s");
const MPH: (&str, &str) = ("Beaufort scale at oocities (tonleo)", "mph; 31 mph left out, see the errata");

macro_rules! numbers {
    ($($number:literal: $least:literal, $most:literal;)*) => {
        [$([
            check(concat!("Beaufort ", $number, " from"), concat!("least mean of number ", $number, ", m/s"), BEAUFORT, Seen, $least,
                || beaufort_range_m_s($number).0).repeated(),
            check(concat!("Beaufort ", $number, " to"), concat!("greatest mean of number ", $number, ", m/s"), BEAUFORT, Seen, $most,
                || beaufort_range_m_s($number).1.unwrap_or(f64::MAX)).repeated(),
            check(concat!("Beaufort of ", $most), concat!("number of ", $most, " m/s"), BEAUFORT, Seen, stringify!($number),
                || f64::from(beaufort_number($most.parse().unwrap_or(-1.0)))).repeated(),
        ]),*]
    };
}

const SCALE: [[Check; 3]; 11] = numbers! {
    1: "0.3", "1.5";
    2: "1.6", "3.3";
    3: "3.4", "5.4";
    4: "5.5", "7.9";
    5: "8.0", "10.7";
    6: "10.8", "13.8";
    7: "13.9", "17.1";
    8: "17.2", "20.7";
    9: "20.8", "24.4";
    10: "24.5", "28.4";
    11: "28.5", "32.6";
};

const HURRICANE: &[Check] =
    &[check("Beaufort 12 from", "least mean of number 12, m/s", BEAUFORT, Seen, "32.7", || beaufort_range_m_s(12).0)
        .repeated()];

/// Whole miles an hour at the ends of a number.
macro_rules! miles {
    ($($number:literal: $($mph:literal)*;)*) => {
        &[$($(
            check(concat!("Beaufort of ", $mph), concat!("number of ", $mph), MPH, Seen, stringify!($number),
                || f64::from(beaufort_number(read($mph, Quantity::Speed, System::Us).unwrap_or(-1.0)))).repeated()
        ),*),*]
    };
}

const MILES: &[Check] = miles! {
    5: "19 mph" "24 mph";
    6: "25 mph";
    7: "32 mph" "38 mph";
    8: "39 mph" "46 mph";
    9: "47 mph" "54 mph";
    10: "55 mph" "63 mph";
    11: "64 mph" "72 mph";
};

pub const CHECKS: &[&[Check]] = &[SCALE.as_flattened(), HURRICANE, MILES];
