//! One operator of a list: who it is, what it gives, what it is bought with, what its maker limits.

use super::{ArmKit, BasePattern, Battery, DutyRating, LeafLimit, Supply};
use crate::job::OperatorBody;
use crate::job::table::*;
use crate::units::Quantity::{Angle, AngularSpeed, Ratio, Temperature, Torque};
use alloc::{string::String, vec::Vec};

/// Rows of a table of limits or of duty.
const MOST_ROWS: u32 = 50;

block! {
    /// An operator as its maker states it. What is not said is not known, and limits nothing.
    pub struct ListedOperator at "operators." {
        /// What the list calls it, once in the list.
        id: String = name(),
        /// What people call it, where no name of their language is given.
        name: String = name(),
        /// What it is called by language.
        names: Option<OperatorNames> = block(OperatorNames::BLOCK),
        /// Torque its output shaft gives continuously, N·m.
        rated_torque_n_m: f64 = number(Torque, 1.0, 50_000.0, 400.0),
        /// Torque it gives for moments, N·m; not below the rated one.
        peak_torque_n_m: Option<f64> = number(Torque, 1.0, 50_000.0, 650.0),
        /// Speed of the shaft, degrees a second.
        shaft_speed_deg_s: Option<f64> = number(AngularSpeed, 0.1, 360.0, 9.0),
        /// Most the shaft turns from closed to open, degrees.
        shaft_travel_deg: Option<f64> = number(Angle, 1.0, 360.0, 130.0),
        /// Part of the shaft's work that its arm brings to the leaf; default 1.
        arm_efficiency: Option<f64> = number(Ratio, 0.3, 1.0, 0.95),
        /// Whether the leaf turns the shaft while the drive is off.
        back_drives: Option<bool> = flag(),
        /// Torque at which the drive at a stand begins to give way, N·m.
        holding_torque_n_m: Option<f64> = number(Torque, 0.0, 50_000.0, 300.0),
        /// The arm it is bought with.
        kit: Option<ArmKit> = block(ArmKit::BLOCK),
        /// Its outline about the shaft.
        body: Option<OperatorBody> = block(OperatorBody::BLOCK),
        /// The plate it stands on.
        base: Option<BasePattern> = block(BasePattern::BLOCK),
        /// Most weight by length of leaf.
        leaf_limits: Option<Vec<LeafLimit>> = list(&Kind::Block(LeafLimit::BLOCK), MOST_ROWS),
        /// Cycles it is rated for, by temperature.
        duty: Option<Vec<DutyRating>> = list(&Kind::Block(DutyRating::BLOCK), MOST_ROWS),
        /// Coldest and hottest air it is made for, °C.
        temperature_c: Option<[f64; 2]> = range(Temperature, -80.0, 100.0, 50.0),
        /// What it is fed with, and what it takes.
        supply: Option<Supply> = block(Supply::BLOCK),
        /// What keeps it going without supply.
        battery: Option<Battery> = block(Battery::BLOCK),
        /// Slip torque its breakaway can be set to, least and most, N·m at the shaft.
        slip_torque_n_m: Option<[f64; 2]> = range(Torque, 1.0, 50_000.0, 450.0),
    }
}

block! {
    /// Names by language; those of other languages are carried.
    pub struct OperatorNames at "operators.names.", open {
        /// English.
        en: Option<String> = name(),
        /// Spanish.
        es: Option<String> = name(),
    }
}

impl ListedOperator {
    /// Faults between numbers that are each within their own range; `at` is the operator's path.
    pub(super) fn relations(&self, at: &str) -> Vec<Fault> {
        let mut faults = Vec::new();
        if let Some(peak) = self.peak_torque_n_m.filter(|&peak| peak < self.rated_torque_n_m) {
            let row = const { ListedOperator::BLOCK.number("peak_torque_n_m") };
            let allowed = Number { least: Some(self.rated_torque_n_m), ..row }.allowed();
            let path = alloc::format!("{at}.peak_torque_n_m");
            let fault = Fault::number(path, FaultCode::PeakBelowRated, peak, allowed);
            faults.push(fault.example(Example::Number(self.rated_torque_n_m)));
        }
        let kit = self.kit.unwrap_or_default();
        let body = self.body.map_or([None; 2], |body| [Some(body.along_m), Some(body.across_m)]);
        let ranges = [
            ("kit.crank_m", const { ArmKit::BLOCK.number("crank_m") }, kit.crank_m),
            ("kit.link_m", const { ArmKit::BLOCK.number("link_m") }, kit.link_m),
            ("body.along_m", const { OperatorBody::BLOCK.number("along_m") }, body[0]),
            ("body.across_m", const { OperatorBody::BLOCK.number("across_m") }, body[1]),
            ("temperature_c", const { ListedOperator::BLOCK.number("temperature_c") }, self.temperature_c),
            ("slip_torque_n_m", const { ListedOperator::BLOCK.number("slip_torque_n_m") }, self.slip_torque_n_m),
        ];
        let crossed = ranges
            .into_iter()
            .filter_map(|(key, row, ends)| ends.and_then(|ends| row.crossed(&alloc::format!("{at}.{key}"), ends)));
        faults.extend(crossed);
        faults
    }
}
