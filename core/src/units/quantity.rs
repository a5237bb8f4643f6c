//! What kinds of quantity there are, and the units people read and type them in.

use serde::{Deserialize, Serialize};

pub(super) const FOOT_M: f64 = 0.3048;
pub(super) const INCH_M: f64 = 0.0254;
pub(super) const POUND_KG: f64 = 0.453_592_37;
pub(super) const POUND_FORCE_N: f64 = POUND_KG * crate::STANDARD_GRAVITY_M_S2;
pub(super) const MILE_PER_HOUR_M_S: f64 = 5280.0 * FOOT_M / 3600.0;

/// What kind of quantity a number is; decides its units and how many digits are worth showing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Quantity {
    /// kg; lb.
    Mass,
    /// m; ft. Leaves, heights, distances walked.
    Length,
    /// m in documents; mm, in. What a tape sets.
    ShortLength,
    /// m²; ft².
    Area,
    /// N; lbf.
    Force,
    /// N·m; lbf·ft.
    Torque,
    /// m/s; mph.
    Speed,
    /// Degrees.
    Angle,
    /// Degrees a second.
    AngularSpeed,
    /// kg/m³; lb/ft³.
    Density,
    /// kg·m²; lb·ft².
    Inertia,
    /// Pa; lbf/ft².
    Pressure,
    /// A plain number.
    Ratio,
    /// A fraction, shown in per cent.
    Percent,
    /// A whole number.
    Count,
    /// Seconds.
    Time,
    /// V.
    Voltage,
    /// Ω.
    Resistance,
    /// J; ft·lbf.
    Energy,
    /// W.
    Power,
    /// N/m in documents; N/mm, lbf/in.
    Stiffness,
    /// Degrees a second, each second.
    AngularAcceleration,
    /// °C; °F.
    Temperature,
    /// A.
    Current,
    /// A·h. What a battery holds.
    Charge,
}

/// The system of units a person reads and types in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum System {
    /// SI with the trade's millimetres.
    Metric,
    /// US customary.
    Us,
}

/// A unit: its symbol, and how much of the document's unit one of it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// The symbol written behind a number, without the space; empty for plain numbers.
    pub symbol: &'static str,
    /// Value in the document's unit = (value in this unit − `zero`) × `factor`.
    pub factor: f64,
    /// What this unit's scale shows at the zero of the document's; 0 but for temperatures.
    pub zero: f64,
}

pub(super) const CELSIUS: Unit = Unit::new("°C", 1.0);
/// 32 °F is 0 °C, 212 °F is 100 °C (NIST SP 811, Appendix B.8).
pub(super) const FAHRENHEIT: Unit = Unit { symbol: "°F", factor: 5.0 / 9.0, zero: 32.0 };

impl Unit {
    pub(super) const fn new(symbol: &'static str, factor: f64) -> Unit {
        Unit { symbol, factor, zero: 0.0 }
    }

    /// A value in this unit, in the document's.
    #[must_use]
    pub fn to_document(self, value: f64) -> f64 {
        (value - self.zero) * self.factor
    }

    /// A value in the document's unit, in this one.
    #[must_use]
    pub fn of_document(self, value: f64) -> f64 {
        value / self.factor + self.zero
    }
}

impl Quantity {
    /// The unit this quantity is read and typed in.
    #[must_use]
    pub const fn unit(self, system: System) -> Unit {
        use System::{Metric, Us};
        match (self, system) {
            (Quantity::Mass, Metric) => Unit::new("kg", 1.0),
            (Quantity::Mass, Us) => Unit::new("lb", POUND_KG),
            (Quantity::Length, Metric) => Unit::new("m", 1.0),
            (Quantity::Length, Us) => Unit::new("ft", FOOT_M),
            (Quantity::ShortLength, Metric) => Unit::new("mm", 0.001),
            (Quantity::ShortLength, Us) => Unit::new("in", INCH_M),
            (Quantity::Area, Metric) => Unit::new("m²", 1.0),
            (Quantity::Area, Us) => Unit::new("ft²", FOOT_M * FOOT_M),
            (Quantity::Force, Metric) => Unit::new("N", 1.0),
            (Quantity::Force, Us) => Unit::new("lbf", POUND_FORCE_N),
            (Quantity::Torque, Metric) => Unit::new("N·m", 1.0),
            (Quantity::Torque, Us) => Unit::new("lbf·ft", POUND_FORCE_N * FOOT_M),
            (Quantity::Speed, Metric) => Unit::new("m/s", 1.0),
            (Quantity::Speed, Us) => Unit::new("mph", MILE_PER_HOUR_M_S),
            (Quantity::Angle, _) => Unit::new("°", 1.0),
            (Quantity::AngularSpeed, _) => Unit::new("°/s", 1.0),
            (Quantity::Density, Metric) => Unit::new("kg/m³", 1.0),
            (Quantity::Density, Us) => Unit::new("lb/ft³", POUND_KG / (FOOT_M * FOOT_M * FOOT_M)),
            (Quantity::Inertia, Metric) => Unit::new("kg·m²", 1.0),
            (Quantity::Inertia, Us) => Unit::new("lb·ft²", POUND_KG * FOOT_M * FOOT_M),
            (Quantity::Pressure, Metric) => Unit::new("Pa", 1.0),
            (Quantity::Pressure, Us) => Unit::new("psf", POUND_FORCE_N / (FOOT_M * FOOT_M)),
            (Quantity::Ratio | Quantity::Count, _) => Unit::new("", 1.0),
            (Quantity::Percent, _) => Unit::new("%", 0.01),
            (Quantity::Time, _) => Unit::new("s", 1.0),
            (Quantity::Resistance, _) => Unit::new("Ω", 1.0),
            (Quantity::Voltage, _) => Unit::new("V", 1.0),
            (Quantity::Energy, Metric) => Unit::new("J", 1.0),
            (Quantity::Energy, Us) => Unit::new("ft·lbf", POUND_FORCE_N * FOOT_M),
            (Quantity::Power, _) => Unit::new("W", 1.0),
            (Quantity::Stiffness, Metric) => Unit::new("N/mm", 1000.0),
            (Quantity::Stiffness, Us) => Unit::new("lbf/in", POUND_FORCE_N / INCH_M),
            (Quantity::AngularAcceleration, _) => Unit::new("°/s²", 1.0),
            (Quantity::Current, _) => Unit::new("A", 1.0),
            (Quantity::Charge, _) => Unit::new("A·h", 1.0),
            (Quantity::Temperature, Metric) => CELSIUS,
            (Quantity::Temperature, Us) => FAHRENHEIT,
        }
    }
}
