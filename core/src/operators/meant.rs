//! Numbers in another unit than the list's.

use crate::fault::{Allowed, Example, Fault, FaultCode};
use crate::units::Quantity;

/// A rated torque below this is taken and asked about, N·m: no gate is moved by so little, and kN·m may be meant. Common practice, no source.
pub const DOUBTFUL_N_M: f64 = 10.0;

const KILO: f64 = 1000.0;

/// A fault of range where a thousand times as much, or a thousandth, would be within: kN·m for N·m, mm for m.
pub fn told_by_unit(fault: Fault) -> Fault {
    let within = |value: f64, [least, most]: [Option<f64>; 2]| {
        least.is_none_or(|least| value >= least) && most.is_none_or(|most| value <= most)
    };
    let found = fault.found.as_deref().and_then(|found| found.parse::<f64>().ok());
    let (Some(found), FaultCode::OutOfRange) = (found, fault.code) else { return fault };
    let Some(Allowed::Range { least, most, quantity }) = fault.allowed else { return fault };
    let (code, meant) = match quantity {
        Quantity::Torque if found > 0.0 => (FaultCode::MeantKilonewtonMetres, found * KILO),
        Quantity::ShortLength => (FaultCode::MeantMillimetres, found / KILO),
        _ => return fault,
    };
    // Nothing that is closer to zero than the range was typed in millimetres.
    let right_way =
        (code == FaultCode::MeantKilonewtonMetres) == least.is_some_and(|least| found < least && found > 0.0);
    if right_way && within(meant, [least, most]) {
        Fault { code, ..fault.example(Example::Number(meant)) }
    } else {
        fault
    }
}

/// What is asked about a rated torque that can be and is hardly meant.
pub fn doubtful(path: alloc::string::String, rated_n_m: f64, allowed: Allowed) -> Option<Fault> {
    (rated_n_m < DOUBTFUL_N_M).then(|| {
        Fault::number(path, FaultCode::MeantKilonewtonMetres, rated_n_m, allowed)
            .example(Example::Number(rated_n_m * KILO))
    })
}
