//! What was set, measured, tried and signed at the gate.

use crate::job::table::*;
use crate::units::Quantity::{Angle, Force, Length, Resistance, Time, Voltage};
use alloc::string::String;

block! {
    /// What is set at the first power-up and nothing else in the job says.
    #[derive(Copy, Default)]
    pub struct Settings at "settings." {
        /// Pause before the gate closes by itself, s, 0 where it does not; unknown unless given.
        close_timer_s: Option<f64> = number(Time, 0.0, 3600.0, 30.0),
    }
}

block! {
    /// The commissioning record. What is absent was not measured, not tried or not signed. Other entries are carried and not looked at.
    #[derive(Default)]
    pub struct Record at "record.", open {
        /// Shaft angle between the two limits as they were set, degrees.
        shaft_travel_deg: Option<f64> = number(Angle, 1.0, 360.0, 130.0),
        /// Leaf angle at the open limit, degrees from closed.
        open_leaf_deg: Option<f64> = number(Angle, 1.0, 180.0, 90.0),
        /// From start to stop when opening, s.
        opening_s: Option<f64> = number(Time, 0.5, 600.0, 15.0),
        /// From start to stop when closing, s.
        closing_s: Option<f64> = number(Time, 0.5, 600.0, 15.0),
        /// Pause before it closed by itself, s.
        close_timer_s: Option<f64> = number(Time, 0.0, 3600.0, 30.0),
        /// Steady pull that keeps the leaf opening, arm disconnected, calm air, N.
        pull_open_n: Option<f64> = number(Force, -5000.0, 5000.0, 45.0),
        /// The same closing.
        pull_close_n: Option<f64> = number(Force, -5000.0, 5000.0, 41.0),
        /// Hinge axis to where it was pulled, m; default the leaf's length.
        pull_radius_m: Option<f64> = number(Length, 0.05, 15.0, 3.0),
        /// Leaf angle at which it was pulled, degrees; default half open.
        pull_leaf_deg: Option<f64> = number(Angle, 0.0, 180.0, 45.0),
        /// Push at which the drive slipped, half open, opening, N.
        slip_open_n: Option<f64> = number(Force, 0.0, 10_000.0, 220.0),
        /// The same closing.
        slip_close_n: Option<f64> = number(Force, 0.0, 10_000.0, 220.0),
        /// Dynamic force on the closing edge by a calibrated instrument, N.
        dynamic_force_n: Option<f64> = number(Force, 0.0, 10_000.0, 350.0),
        /// Static force there, N.
        static_force_n: Option<f64> = number(Force, 0.0, 10_000.0, 120.0),
        /// Voltage at the motor while it runs, V.
        motor_v: Option<f64> = number(Voltage, 1.0, 1000.0, 24.0),
        /// Resistance of the earth rod, Ω.
        rod_ohm: Option<f64> = number(Resistance, 0.0, 100_000.0, 18.0),
        /// Whether the isolator was tried and cuts every pole.
        isolation_tried: Option<bool> = flag(),
        /// Whether it was locked off and tried.
        lock_off_tried: Option<bool> = flag(),
        /// Whether every means of protection was tried, opening and closing.
        devices_tested: Option<bool> = flag(),
        /// Whether the manual release was tried.
        release_tried: Option<bool> = flag(),
        /// Whether the signs are fixed on both faces.
        signs_fixed: Option<bool> = flag(),
        /// Whether the owner was shown how to use, release and stop the gate.
        owner_instructed: Option<bool> = flag(),
        /// Number of the sheet.
        number: Option<String> = text(),
        /// Its revision.
        revision: Option<String> = text(),
        /// Its date, `YYYY-MM-DD`.
        date: Option<String> = date(),
        /// Name of the installer who signs.
        installer: Option<String> = text(),
        /// When the installer signed, `YYYY-MM-DD`.
        installer_date: Option<String> = date(),
        /// Name of the owner who signs.
        owner: Option<String> = text(),
        /// When the owner signed, `YYYY-MM-DD`.
        owner_date: Option<String> = date(),
    }
}
