//! The set-out block: what is fixed and what is free where an operator is still to be stood.

use super::rules::default_of;
use super::types::Elbow;
use alloc::vec::Vec;
use serde::Serialize;

/// What a set-out may choose from, and what it has to keep. Ranges are `[least, most]`, bounds included; equal bounds fix a value.
/// A limit that is not said (`None`) is none, and is listed as assumed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct SetOut {
    /// Shaft along the closed leaf from the hinge axis, m.
    pub shaft_x_m: [f64; 2],
    /// Shaft square to the closed leaf from the hinge axis, not from the leaf's face, towards the side the leaf opens to, m.
    pub shaft_y_m: [f64; 2],
    /// Bracket pin along the leaf from the hinge axis, m.
    pub bracket_u_m: [f64; 2],
    /// Bracket pin square to the leaf from the hinge axis, not from the leaf's face, on its opening side, m; one value, as the bracket's depth is
    /// bought and not chosen.
    pub bracket_v_m: f64,
    /// Crank, m.
    pub crank_m: [f64; 2],
    /// Link, m.
    pub link_m: [f64; 2],
    /// Distance from shaft to bracket when closed over `crank + link`: 1 is a straight arm; default [0, 1].
    pub straightness: Option<[f64; 2]>,
    /// How far the angle between link and leaf may be from 90° when open, degrees; default 90, which is no limit.
    pub square_deg: Option<f64>,
    /// Least lever of the link about the hinge from a tenth of the swing on, m; default 0.
    pub least_lever_m: Option<f64>,
    /// Most the shaft may turn from closed to open, degrees; default 360.
    pub shaft_travel_deg: Option<f64>,
    /// Most shaft torque, N·m: a limit beside the aim; default none.
    pub most_shaft_torque_n_m: Option<f64>,
    /// Shaft offsets, bracket and lengths are whole multiples of it, m: what a tape can set; none unless given.
    pub step_m: Option<f64>,
    /// Side of the elbow; default either.
    pub elbow: Option<ElbowChoice>,
    /// Half the width of crank and link in plan, m; default 0.
    pub arm_half_width_m: Option<f64>,
    /// Rectangles that shaft, crank and link stay out of through the swing: post, wall, kerb, drive.
    pub keep_out: Vec<KeepOut>,
    /// What is to be as small as possible; default the shaft torque.
    pub aim: Option<Aim>,
    /// Gust against which the aim `least_link_force` holds the leaf, m/s; default the working gust.
    pub storm_speed_m_s: Option<f64>,
    /// Where the shaft would best stand, for the aim `nearest_place`.
    pub place: Option<Place>,
}

/// A rectangle in plan, sides along the closed leaf and across it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct KeepOut {
    /// Along the closed leaf from the hinge axis, m.
    pub x_m: [f64; 2],
    /// Square to the closed leaf from the hinge axis, towards the side it opens to, m.
    pub y_m: [f64; 2],
}

/// A place in plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Place {
    /// Along the closed leaf from the hinge axis, m.
    pub x_m: f64,
    /// Square to the closed leaf from the hinge axis, towards the side it opens to, m.
    pub y_m: f64,
}

/// Which sides of the line shaft→bracket the elbow may be on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum ElbowChoice {
    /// Counter-clockwise of the line only.
    Left,
    /// Clockwise of the line only.
    Right,
    /// Whichever serves the aim better.
    Either,
}

/// What a set-out is to make as small as possible.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Aim {
    /// The peak shaft torque of the plan; for one operator that is the greatest reserve.
    LeastShaftTorque,
    /// The largest force in the link over the swing against the storm gust.
    LeastLinkForce,
    /// The angle the shaft turns from closed to open.
    LeastShaftTravel,
    /// The distance of the shaft from the preferred place.
    NearestPlace,
}

impl Aim {
    pub(crate) const ALL: [Aim; 4] =
        [Aim::LeastShaftTorque, Aim::LeastLinkForce, Aim::LeastShaftTravel, Aim::NearestPlace];
    pub(crate) const NAMES: [&str; 4] =
        ["least_shaft_torque", "least_link_force", "least_shaft_travel", "nearest_place"];
}

impl ElbowChoice {
    pub(crate) const ALL: [ElbowChoice; 3] = [ElbowChoice::Left, ElbowChoice::Right, ElbowChoice::Either];
    pub(crate) const NAMES: [&str; 3] = ["left", "right", "either"];
}

impl SetOut {
    /// Range of the straightness.
    pub fn straightness(&self) -> [f64; 2] {
        self.straightness.unwrap_or([0.0, 1.0])
    }
    /// How far the link may be from square to the open leaf, degrees.
    pub fn square(&self) -> f64 {
        self.square_deg.unwrap_or_else(|| default_of("setout.square_deg"))
    }
    /// Least lever from a tenth of the swing on, m.
    pub fn least_lever(&self) -> f64 {
        self.least_lever_m.unwrap_or_else(|| default_of("setout.least_lever_m"))
    }
    /// Most the shaft may turn, degrees.
    pub fn shaft_travel(&self) -> f64 {
        self.shaft_travel_deg.unwrap_or_else(|| default_of("setout.shaft_travel_deg"))
    }
    /// Half the width of crank and link, m.
    pub fn half_width(&self) -> f64 {
        self.arm_half_width_m.unwrap_or_else(|| default_of("setout.arm_half_width_m"))
    }
    /// What is to be least.
    pub fn aim(&self) -> Aim {
        self.aim.unwrap_or(Aim::LeastShaftTorque)
    }
    /// The sides the elbow may be on.
    pub fn elbows(&self) -> &'static [Elbow] {
        match self.elbow.unwrap_or(ElbowChoice::Either) {
            ElbowChoice::Left => &[Elbow::Left],
            ElbowChoice::Right => &[Elbow::Right],
            ElbowChoice::Either => &[Elbow::Left, Elbow::Right],
        }
    }

    /// All numbers with the path of their rule and their place in a list; `None` where the person said nothing.
    pub(super) fn numbers(&self) -> Vec<(&'static str, Option<f64>)> {
        let range = |path, [least, most]: [f64; 2]| [(path, Some(least)), (path, Some(most))];
        let mut numbers: Vec<(&'static str, Option<f64>)> = [
            range("setout.shaft_x_m", self.shaft_x_m),
            range("setout.shaft_y_m", self.shaft_y_m),
            range("setout.bracket_u_m", self.bracket_u_m),
            range("setout.crank_m", self.crank_m),
            range("setout.link_m", self.link_m),
        ]
        .concat();
        match self.straightness {
            Some(straightness) => numbers.extend(range("setout.straightness", straightness)),
            None => numbers.push(("setout.straightness", None)),
        }
        numbers.extend([
            ("setout.bracket_v_m", Some(self.bracket_v_m)),
            ("setout.square_deg", self.square_deg),
            ("setout.least_lever_m", self.least_lever_m),
            ("setout.shaft_travel_deg", self.shaft_travel_deg),
            ("setout.most_shaft_torque_n_m", self.most_shaft_torque_n_m),
            ("setout.step_m", self.step_m),
            ("setout.arm_half_width_m", self.arm_half_width_m),
            ("setout.storm_speed_m_s", self.storm_speed_m_s),
        ]);
        for rectangle in &self.keep_out {
            numbers.extend(range("setout.keep_out.x_m", rectangle.x_m));
            numbers.extend(range("setout.keep_out.y_m", rectangle.y_m));
        }
        if let Some(place) = &self.place {
            numbers.extend([("setout.place.x_m", Some(place.x_m)), ("setout.place.y_m", Some(place.y_m))]);
        }
        numbers
    }
}
