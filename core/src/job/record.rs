//! What was measured, tried and signed at the gate, beside what was to be set there.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::reader::Node;
use super::types::Job;
use alloc::string::String;
use serde::Serialize;

/// What is set at the first power-up and nothing else in the job says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Settings {
    /// Pause before the gate closes by itself, s, 0 where it does not; unknown unless given.
    pub close_timer_s: Option<f64>,
}

/// The commissioning record. What is absent was not measured, not tried or not signed. Other entries are carried and not looked at.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Record {
    /// Shaft angle between the two limits as they were set, degrees.
    pub shaft_travel_deg: Option<f64>,
    /// Leaf angle at the open limit, degrees from closed.
    pub open_leaf_deg: Option<f64>,
    /// From start to stop when opening, s.
    pub opening_s: Option<f64>,
    /// From start to stop when closing, s.
    pub closing_s: Option<f64>,
    /// Pause before it closed by itself, s.
    pub close_timer_s: Option<f64>,
    /// Steady pull that keeps the leaf opening, arm disconnected, calm air, N.
    pub pull_open_n: Option<f64>,
    /// The same closing.
    pub pull_close_n: Option<f64>,
    /// Hinge axis to where it was pulled, m; default the leaf's length.
    pub pull_radius_m: Option<f64>,
    /// Leaf angle at which it was pulled, degrees; default half open.
    pub pull_leaf_deg: Option<f64>,
    /// Push at which the drive slipped, half open, opening, N.
    pub slip_open_n: Option<f64>,
    /// The same closing.
    pub slip_close_n: Option<f64>,
    /// Dynamic force on the closing edge by a calibrated instrument, N.
    pub dynamic_force_n: Option<f64>,
    /// Static force there, N.
    pub static_force_n: Option<f64>,
    /// Voltage at the motor while it runs, V.
    pub motor_v: Option<f64>,
    /// Resistance of the earth rod, Ω.
    pub rod_ohm: Option<f64>,
    /// Whether the isolator was tried and cuts every pole.
    pub isolation_tried: Option<bool>,
    /// Whether it was locked off and tried.
    pub lock_off_tried: Option<bool>,
    /// Whether every means of protection was tried, opening and closing.
    pub devices_tested: Option<bool>,
    /// Whether the manual release was tried.
    pub release_tried: Option<bool>,
    /// Whether the signs are fixed on both faces.
    pub signs_fixed: Option<bool>,
    /// Whether the owner was shown how to use, release and stop the gate.
    pub owner_instructed: Option<bool>,
    /// Number of the sheet.
    pub number: Option<String>,
    /// Its revision.
    pub revision: Option<String>,
    /// Its date, `YYYY-MM-DD`.
    pub date: Option<String>,
    /// Name of the installer who signs.
    pub installer: Option<String>,
    /// When the installer signed, `YYYY-MM-DD`.
    pub installer_date: Option<String>,
    /// Name of the owner who signs.
    pub owner: Option<String>,
    /// When the owner signed, `YYYY-MM-DD`.
    pub owner_date: Option<String>,
}

pub(super) fn read_settings(node: Node) -> Option<Settings> {
    let settings = Settings { close_timer_s: node.number("close_timer_s") };
    node.close();
    Some(settings)
}

/// The node is not closed: other versions and other hands may have put more into the record, and it is carried.
pub(super) fn read_record(node: Node) -> Option<Record> {
    let date = |key| {
        let text = node.text(key)?;
        if !is_date(&text) {
            let fault = Fault::new(node.path_of(key), FaultCode::WrongType).found(&crate::Document::Text(text));
            node.fault(fault.allowed(Allowed::Type { name: "date" }).example(Example::Text("2026-03-31")));
            return None;
        }
        Some(text)
    };
    Some(Record {
        shaft_travel_deg: node.number("shaft_travel_deg"),
        open_leaf_deg: node.number("open_leaf_deg"),
        opening_s: node.number("opening_s"),
        closing_s: node.number("closing_s"),
        close_timer_s: node.number("close_timer_s"),
        pull_open_n: node.number("pull_open_n"),
        pull_close_n: node.number("pull_close_n"),
        pull_radius_m: node.number("pull_radius_m"),
        pull_leaf_deg: node.number("pull_leaf_deg"),
        slip_open_n: node.number("slip_open_n"),
        slip_close_n: node.number("slip_close_n"),
        dynamic_force_n: node.number("dynamic_force_n"),
        static_force_n: node.number("static_force_n"),
        motor_v: node.number("motor_v"),
        rod_ohm: node.number("rod_ohm"),
        isolation_tried: node.flag("isolation_tried"),
        lock_off_tried: node.flag("lock_off_tried"),
        devices_tested: node.flag("devices_tested"),
        release_tried: node.flag("release_tried"),
        signs_fixed: node.flag("signs_fixed"),
        owner_instructed: node.flag("owner_instructed"),
        number: node.text("number"),
        revision: node.text("revision"),
        date: date("date"),
        installer: node.text("installer"),
        installer_date: date("installer_date"),
        owner: node.text("owner"),
        owner_date: date("owner_date"),
    })
}

/// Whether a text is a day of the calendar as ISO 8601 writes it.
fn is_date(text: &str) -> bool {
    let bytes = text.as_bytes();
    let digits = |from: usize, to: usize| {
        bytes[from..to]
            .iter()
            .try_fold(0, |number, byte| byte.is_ascii_digit().then(|| 10 * number + u32::from(byte - b'0')))
    };
    if bytes.len() != 10 || bytes[4] != b'-' || bytes[7] != b'-' {
        return false;
    }
    match (digits(0, 4), digits(5, 7), digits(8, 10)) {
        (Some(year), Some(month @ 1..=12), Some(day @ 1..)) => {
            let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
            let days = match month {
                2 if leap => 29,
                2 => 28,
                4 | 6 | 9 | 11 => 30,
                _ => 31,
            };
            day <= days
        }
        _ => false,
    }
}

impl Job {
    /// Whether anything of the record is known here. A record of other hands' entries alone is only carried.
    pub(crate) fn has_record(&self) -> bool {
        self.record.as_ref().is_some_and(|record| *record != Record::default())
    }
}

impl Record {
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 15] {
        [
            ("record.shaft_travel_deg", self.shaft_travel_deg),
            ("record.open_leaf_deg", self.open_leaf_deg),
            ("record.opening_s", self.opening_s),
            ("record.closing_s", self.closing_s),
            ("record.close_timer_s", self.close_timer_s),
            ("record.pull_open_n", self.pull_open_n),
            ("record.pull_close_n", self.pull_close_n),
            ("record.pull_radius_m", self.pull_radius_m),
            ("record.pull_leaf_deg", self.pull_leaf_deg),
            ("record.slip_open_n", self.slip_open_n),
            ("record.slip_close_n", self.slip_close_n),
            ("record.dynamic_force_n", self.dynamic_force_n),
            ("record.static_force_n", self.static_force_n),
            ("record.motor_v", self.motor_v),
            ("record.rod_ohm", self.rod_ohm),
        ]
    }
}
