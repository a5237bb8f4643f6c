//! Factors of compound units as NIST prints them to seven digits; the crate multiplies them up from foot, pound and gravity.

use super::check::{Check, Provenance::*, check};
use pintle_core::units::{Quantity, System, read};

const NIST: (&str, &str) = (
    "NIST SP 811 (2008), as quoted in the unit tests of public libraries (index ids 53638761659, 68382704463, 53425471913)",
    "Appendix B.8",
);

fn one(of: &str, quantity: Quantity) -> f64 {
    read(of, quantity, System::Metric).unwrap_or(f64::NAN)
}

pub const CHECKS: &[Check] = &[
    check("SP 811 lbf·ft", "1 lbf·ft: N·m", NIST, Seen, "1.355818", || one("1 lbf·ft", Quantity::Torque)),
    check("SP 811 lbf·in", "1 lbf·in: N·m", NIST, Seen, "0.1129848", || one("1 lbf·in", Quantity::Torque)),
    check("SP 811 psi", "1 psi: Pa", NIST, Seen, "6894.757", || one("1 psi", Quantity::Pressure)),
    check("SP 811 psf", "1 lbf/ft²: Pa", NIST, Seen, "47.88026", || one("1 psf", Quantity::Pressure)),
    check("SP 811 lb/ft³", "1 lb/ft³: kg/m³", NIST, Seen, "16.01846", || one("1 lb/ft³", Quantity::Density)),
    check("SP 811 lbf", "1 lbf: N", NIST, Seen, "4.4482216152605", || one("1 lbf", Quantity::Force))
        .exact("Pound times standard gravity: the product has thirteen digits."),
];
