//! Force coefficients of ASCE 7, which the crate holds as tables: that they are copied rightly, not that they are worked out.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    leaf::{asce7_open_coefficient, asce7_wall_coefficient},
    terms::BarShape,
};

const FIGURE: (&str, &str) = ("ASCE 7-16", "Fig 29.3-1, cases A and B");
const OPEN: (&str, &str) = (
    "City of Everett WA, lfportal.everettwa.gov/WebLink/0/doc/1852116/Page79.aspx",
    "ASCE 7 Fig 29.4-2 (7-05 Fig 6-22), by solidity",
);

macro_rules! walls {
    ($name:ident, $clearance:literal: $($aspect:literal $expected:literal;)*) => {
        const $name: &[Check] = &[$(
            check(concat!("Fig 29.3-1 ", $clearance, " ", $aspect), concat!("wall, s/h ", $clearance, ", B/s ", $aspect, ": Cf"), FIGURE, FromMemory,
                $expected, || asce7_wall_coefficient($aspect, $clearance)).repeated()
        ),*];
    };
}

walls! { WALL_10, 1.0:
    0.05 "1.80"; 0.1 "1.70"; 0.2 "1.65"; 0.5 "1.55"; 1.0 "1.45"; 2.0 "1.40"; 4.0 "1.35"; 5.0 "1.35"; 10.0 "1.30"; 20.0 "1.30"; 30.0 "1.30"; 45.0 "1.30";
}
walls! { WALL_09, 0.9:
    0.05 "1.85"; 0.1 "1.75"; 0.2 "1.70"; 0.5 "1.60"; 1.0 "1.55"; 2.0 "1.50"; 4.0 "1.45"; 5.0 "1.45"; 10.0 "1.40"; 20.0 "1.40"; 30.0 "1.40"; 45.0 "1.40";
}
walls! { WALL_07, 0.7:
    0.05 "1.90"; 0.1 "1.85"; 0.2 "1.75"; 0.5 "1.70"; 1.0 "1.65"; 2.0 "1.60"; 4.0 "1.60"; 5.0 "1.55"; 10.0 "1.55"; 20.0 "1.55"; 30.0 "1.55"; 45.0 "1.55";
}

/// 25 mm and 300 mm bars at 500 Pa: D√q below and above 2.5 (ft, psf).
macro_rules! signs {
    ($($solidity:literal: $flat:literal $slow:literal $fast:literal;)*) => {
        [$([
            check(concat!("4.17 flat ", $solidity), concat!("open lattice, solidity ", $solidity, ", flat-sided: Cf"), OPEN, Seen, $flat,
                || asce7_open_coefficient($solidity, BarShape::Flat, 0.05, 500.0)).repeated(),
            check(concat!("4.17 slow ", $solidity), "the same, round, D√q below 2.5: Cf", OPEN, Seen, $slow,
                || asce7_open_coefficient($solidity, BarShape::Round, 0.025, 500.0)).repeated(),
            check(concat!("4.17 fast ", $solidity), "the same, round, D√q above 2.5: Cf", OPEN, Seen, $fast,
                || asce7_open_coefficient($solidity, BarShape::Round, 0.3, 500.0)).repeated(),
        ]),*]
    };
}

const OPEN_SIGNS: [[Check; 3]; 3] = signs! {
    0.05: "2.0" "1.2" "0.8";
    0.2: "1.8" "1.3" "0.9";
    0.5: "1.6" "1.5" "1.1";
};

pub const CHECKS: &[&[Check]] = &[WALL_10, WALL_09, WALL_07, OPEN_SIGNS.as_flattened()];
