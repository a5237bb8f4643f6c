//! What is fixed and what is free where an operator is still to be stood.

use super::Elbow;
use crate::fault::missing_object;
use crate::job::table::*;
use crate::terms::words::words;
use crate::units::Quantity::{Angle, Ratio, ShortLength, Speed, Torque};
use alloc::vec::Vec;

block! {
    /// What a set-out may choose from, and what it has to keep. Ranges are `[least, most]`, bounds included; equal bounds fix a value.
    /// A limit that is not said (`None`) is none, and is listed as assumed.
    pub struct SetOut at "setout." {
        /// Shaft along the closed leaf from the hinge line, m.
        shaft_x_m: [f64; 2] = range(ShortLength, -10.0, 10.0, -0.25),
        /// Shaft square to the closed leaf from the axis line, towards the side the leaf opens to, m.
        shaft_y_m: [f64; 2] = range(ShortLength, -10.0, 10.0, 0.45),
        /// Bracket pin along the leaf from the hinge line of the closed leaf, m.
        bracket_u_m: [f64; 2] = range(ShortLength, -10.0, 10.0, 1.2),
        /// Bracket pin square to the leaf from the axis line of the closed leaf, on its opening side, m; one value, as the bracket's depth is bought
        /// and not chosen.
        bracket_v_m: f64 = number(ShortLength, -10.0, 10.0, 0.06),
        /// Crank, m.
        crank_m: [f64; 2] = range(ShortLength, 0.02, 10.0, 0.8728),
        /// Link, m.
        link_m: [f64; 2] = range(ShortLength, 0.02, 10.0, 0.6363),
        /// Distance from shaft to bracket when closed over `crank + link`: 1 is a straight arm; default [0, 1].
        straightness: Option<[f64; 2]> = range(Ratio, 0.0, 1.0, 0.98).listed(),
        /// How far the angle between link and leaf may be from 90° when open, degrees; default 90, which is no limit.
        square_deg: Option<f64> = assumed(Angle, 0.0, 90.0, 90.0) => square,
        /// Least lever of the link about the hinge from a tenth of the swing on, m; default 0.
        least_lever_m: Option<f64> = assumed(ShortLength, 0.0, 10.0, 0.0) => least_lever,
        /// Most the shaft may turn from closed to open, degrees; default 360.
        shaft_travel_deg: Option<f64> = assumed(Angle, 1.0, 360.0, 360.0) => shaft_travel,
        /// Most shaft torque, N·m: a limit beside the aim; default none.
        most_shaft_torque_n_m: Option<f64> = number(Torque, 0.0, 50_000.0, 400.0),
        /// Shaft offsets, bracket and lengths are whole multiples of it, m: what a tape can set; none unless given.
        step_m: Option<f64> = number(ShortLength, 0.0005, 0.5, 0.005),
        /// Whether every error of the tape within that of the block `tape` has to leave an arm that works and keeps `least_lever_m`,
        /// `shaft_travel_deg` and its clearance; no unless said. Ranges, straightness and angle to the open leaf are the planned arm's alone.
        tape_proof: Option<bool> = flag(),
        /// Gust against which the aim `least_link_force` holds the leaf, m/s; default the working gust.
        storm_speed_m_s: Option<f64> = number(Speed, 0.0, 100.0, 30.0),
        /// Side of the elbow; default either.
        elbow: Option<ElbowChoice> = word(ElbowChoice::WORDS),
        /// What is to be as small as possible; default the shaft torque.
        aim: Option<Aim> = word(Aim::WORDS),
        /// Where the shaft would best stand, for the aim `nearest_place`.
        place: Option<Place> = block(Place::BLOCK),
    }
}

block! {
    /// A place in plan.
    #[derive(Copy)]
    pub struct Place at "setout.place." {
        /// Along the closed leaf from the hinge axis, m.
        x_m: f64 = number(ShortLength, -10.0, 10.0, -0.3),
        /// Square to the closed leaf from the hinge axis, towards the side it opens to, m.
        y_m: f64 = number(ShortLength, -10.0, 10.0, 0.4),
    }
}

words! {
    /// Which sides of the line shaft→bracket the elbow may be on.
    pub enum ElbowChoice {
        /// Counter-clockwise of the line only.
        Left = "left",
        /// Clockwise of the line only.
        Right = "right",
        /// Whichever serves the aim better.
        Either = "either",
    }
}

words! {
    /// What a set-out is to make as small as possible.
    pub enum Aim {
        /// The peak shaft torque of the plan; for one operator that is the greatest reserve.
        LeastShaftTorque = "least_shaft_torque",
        /// The largest force in the link over the swing against the storm gust.
        LeastLinkForce = "least_link_force",
        /// The angle the shaft turns from closed to open.
        LeastShaftTravel = "least_shaft_travel",
        /// The distance of the shaft from the preferred place.
        NearestPlace = "nearest_place",
    }
}

impl SetOut {
    /// Range of the straightness.
    #[must_use]
    pub fn straightness(&self) -> [f64; 2] {
        self.straightness.unwrap_or([0.0, 1.0])
    }
    /// What is to be least.
    #[must_use]
    pub fn aim(&self) -> Aim {
        self.aim.unwrap_or(Aim::LeastShaftTorque)
    }
    /// The sides the elbow may be on.
    #[must_use]
    pub fn elbows(&self) -> &'static [Elbow] {
        match self.elbow.unwrap_or(ElbowChoice::Either) {
            ElbowChoice::Left => &[Elbow::Left],
            ElbowChoice::Right => &[Elbow::Right],
            ElbowChoice::Either => &[Elbow::Left, Elbow::Right],
        }
    }

    /// Faults between ends that are each within their own range.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let ranges = [
            ("setout.shaft_x_m", const { SetOut::BLOCK.number("shaft_x_m") }, self.shaft_x_m),
            ("setout.shaft_y_m", const { SetOut::BLOCK.number("shaft_y_m") }, self.shaft_y_m),
            ("setout.bracket_u_m", const { SetOut::BLOCK.number("bracket_u_m") }, self.bracket_u_m),
            ("setout.crank_m", const { SetOut::BLOCK.number("crank_m") }, self.crank_m),
            ("setout.link_m", const { SetOut::BLOCK.number("link_m") }, self.link_m),
            ("setout.straightness", const { SetOut::BLOCK.number("straightness") }, self.straightness()),
        ];
        let mut faults: Vec<Fault> =
            ranges.into_iter().filter_map(|(path, row, range)| row.crossed(path, range)).collect();
        if self.aim == Some(Aim::NearestPlace) && self.place.is_none() {
            faults.push(missing_object("setout.place"));
        }
        faults
    }
}
