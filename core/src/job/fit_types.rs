//! What fitting adds: the room around leaf and arm, what is marked out, how far a tape errs, and what was built.

use super::rules::default_of;
use super::setout::KeepOut;
use super::types::Arm;
use alloc::vec::Vec;
use serde::Serialize;

/// The leaf as a body in plan, and what stands around it. Where nothing is said the leaf is the line through the hinge axis.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Room {
    /// Leaf's face on its opening side from the line through the hinge axis, m; marks on the ground are from the closed leaf's; default 0.
    pub front_m: Option<f64>,
    /// Leaf's other face from that line, m, positive away from the opening side; default 0.
    pub back_m: Option<f64>,
    /// How far the leaf reaches past the hinge axis, away from its latch edge, m; default 0.
    pub heel_m: Option<f64>,
    /// Half the width of crank and link in plan, m; default 0.
    pub arm_half_width_m: Option<f64>,
    /// What the leaf is hung on, beside which a gap closes.
    pub hinge_post: Option<KeepOut>,
    /// What stands in the way of leaf and arm: walls, kerbs, pillars. One list with `site.obstacles`: every check looks at both.
    pub obstacles: Option<Vec<KeepOut>>,
}

/// What is bought and what is level on site, for marking out. Lengths of tubes: crank and link are two tubes each, one in the other.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Marks {
    /// Spacing of the anchor holes along the crank of the closed arm, m.
    pub anchor_along_m: Option<f64>,
    /// Spacing of the anchor holes across it, m.
    pub anchor_across_m: Option<f64>,
    /// Middle of the holes from the shaft, along the crank of the closed arm towards the elbow, m; default 0.
    pub anchor_offset_along_m: Option<f64>,
    /// Middle of the holes from the shaft, a quarter turn counter-clockwise from that, m; default 0.
    pub anchor_offset_across_m: Option<f64>,
    /// How far the base is turned from the crank of the closed arm, degrees counter-clockwise; default 0.
    pub anchor_turn_deg: Option<f64>,
    /// Level of the pad's top over a datum, m.
    pub pad_level_m: Option<f64>,
    /// Level of the leaf's cross member at the bracket over the same datum, m.
    pub crossbar_level_m: Option<f64>,
    /// The arm's plane over the operator's base, m; default 0.
    pub arm_height_m: Option<f64>,
    /// How far the two tubes of a part are in one another, m; default 0.
    pub overlap_m: Option<f64>,
    /// What joints at both ends of the crank take off its tubes, together, m; default 0.
    pub crank_ends_m: Option<f64>,
    /// What joints at both ends of the link take off its tubes, together, m; default 0.
    pub link_ends_m: Option<f64>,
}

/// How far what is set differs from what was planned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Tape {
    /// Error of each dimension of the arm, either way, m; default 0.005 (common practice, no source).
    pub error_m: Option<f64>,
}

/// The arm as it was built; what is not said is as planned. The side of the elbow is not a matter of measuring.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct AsBuilt {
    /// Line that what is square to the leaf was measured from: `shaft_y_m` and `bracket_v_m`; default the hinge axis, as for the arm.
    pub from: Option<BuiltFrom>,
    /// Shaft along the closed leaf from the hinge axis, m.
    pub shaft_x_m: Option<f64>,
    /// Shaft square to the closed leaf, towards the side it opens to, m from the line of `from`.
    pub shaft_y_m: Option<f64>,
    /// Bracket pin along the leaf from the hinge axis, m.
    pub bracket_u_m: Option<f64>,
    /// Bracket pin square to the leaf, towards its opening side, m from the line of `from`.
    pub bracket_v_m: Option<f64>,
    /// Crank, shaft to elbow, m.
    pub crank_m: Option<f64>,
    /// Link, elbow to bracket pin, m.
    pub link_m: Option<f64>,
}

/// The line along the leaf that a built dimension was measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum BuiltFrom {
    /// The line through the hinge axis, as the job's arm.
    HingeAxis,
    /// The leaf's face on its opening side, as the marks of the mark-out.
    LeafFace,
}

impl BuiltFrom {
    pub(crate) const NAMES: [&str; 2] = ["hinge_axis", "leaf_face"];
    pub(crate) const ALL: [BuiltFrom; 2] = [BuiltFrom::HingeAxis, BuiltFrom::LeafFace];
}

impl Room {
    /// Opening-side face, m.
    pub fn front(&self) -> f64 {
        self.front_m.unwrap_or(default_of("room.front_m"))
    }
    /// The other face, m.
    pub fn back(&self) -> f64 {
        self.back_m.unwrap_or(default_of("room.back_m"))
    }
    /// Reach past the hinge axis, m.
    pub fn heel(&self) -> f64 {
        self.heel_m.unwrap_or(default_of("room.heel_m"))
    }
    /// Half the width of crank and link, m.
    pub fn half_width(&self) -> f64 {
        self.arm_half_width_m.unwrap_or(default_of("room.arm_half_width_m"))
    }
    /// Rectangles with the path of their rules and their own.
    pub(super) fn rectangles(&self) -> Vec<(&'static str, alloc::string::String, KeepOut)> {
        let post = self.hinge_post.map(|post| ("room.hinge_post", "room.hinge_post".into(), post));
        let obstacles = self.obstacles.iter().flatten().enumerate();
        let obstacles = obstacles
            .map(|(index, &rectangle)| ("room.obstacles", alloc::format!("room.obstacles.{index}"), rectangle));
        post.into_iter().chain(obstacles).collect()
    }
    pub(super) fn numbers(&self) -> Vec<(&'static str, Option<f64>)> {
        let mut numbers = alloc::vec![
            ("room.front_m", self.front_m),
            ("room.back_m", self.back_m),
            ("room.heel_m", self.heel_m),
            ("room.arm_half_width_m", self.arm_half_width_m),
        ];
        for (rules, _, KeepOut { x_m, y_m }) in self.rectangles() {
            let (x, y) = match rules {
                "room.hinge_post" => ("room.hinge_post.x_m", "room.hinge_post.y_m"),
                _ => ("room.obstacles.x_m", "room.obstacles.y_m"),
            };
            numbers.extend(x_m.map(|value| (x, Some(value))));
            numbers.extend(y_m.map(|value| (y, Some(value))));
        }
        numbers
    }
}

impl Marks {
    /// Offset of the holes' middle from the shaft along and across, m.
    pub fn anchor_offset(&self) -> (f64, f64) {
        let along = self.anchor_offset_along_m.unwrap_or(default_of("marks.anchor_offset_along_m"));
        (along, self.anchor_offset_across_m.unwrap_or(default_of("marks.anchor_offset_across_m")))
    }
    /// Turn of the base, rad.
    pub fn anchor_turn_rad(&self) -> f64 {
        self.anchor_turn_deg.unwrap_or(default_of("marks.anchor_turn_deg")).to_radians()
    }
    /// The arm's plane over the operator's base, m.
    pub fn arm_height(&self) -> f64 {
        self.arm_height_m.unwrap_or(default_of("marks.arm_height_m"))
    }
    /// Overlap of the tubes, m.
    pub fn overlap(&self) -> f64 {
        self.overlap_m.unwrap_or(default_of("marks.overlap_m"))
    }
    /// What the joints take off crank and link, m.
    pub fn ends(&self) -> (f64, f64) {
        let crank = self.crank_ends_m.unwrap_or(default_of("marks.crank_ends_m"));
        (crank, self.link_ends_m.unwrap_or(default_of("marks.link_ends_m")))
    }
    pub(crate) fn numbers(&self) -> [(&'static str, Option<f64>); 11] {
        [
            ("marks.anchor_along_m", self.anchor_along_m),
            ("marks.anchor_across_m", self.anchor_across_m),
            ("marks.anchor_offset_along_m", self.anchor_offset_along_m),
            ("marks.anchor_offset_across_m", self.anchor_offset_across_m),
            ("marks.anchor_turn_deg", self.anchor_turn_deg),
            ("marks.pad_level_m", self.pad_level_m),
            ("marks.crossbar_level_m", self.crossbar_level_m),
            ("marks.arm_height_m", self.arm_height_m),
            ("marks.overlap_m", self.overlap_m),
            ("marks.crank_ends_m", self.crank_ends_m),
            ("marks.link_ends_m", self.link_ends_m),
        ]
    }
}

impl Tape {
    /// Error of each dimension, m.
    pub fn error(&self) -> f64 {
        self.error_m.unwrap_or(default_of("tape.error_m"))
    }
}

impl AsBuilt {
    /// The line that was measured from, from the hinge axis, m, where the leaf's face is at `face_m`.
    pub fn line_m(&self, face_m: f64) -> f64 {
        match self.from {
            Some(BuiltFrom::LeafFace) => face_m,
            Some(BuiltFrom::HingeAxis) | None => 0.0,
        }
    }
    /// The planned arm with what was measured instead, from the hinge axis; the leaf's face is at `face_m`.
    pub fn arm(&self, planned: &Arm, face_m: f64) -> Arm {
        let square = |measured: Option<f64>| measured.map(|measured_m| measured_m + self.line_m(face_m));
        Arm {
            shaft_x_m: self.shaft_x_m.unwrap_or(planned.shaft_x_m),
            shaft_y_m: square(self.shaft_y_m).unwrap_or(planned.shaft_y_m),
            bracket_u_m: self.bracket_u_m.unwrap_or(planned.bracket_u_m),
            bracket_v_m: square(self.bracket_v_m).unwrap_or(planned.bracket_v_m),
            crank_m: self.crank_m.unwrap_or(planned.crank_m),
            link_m: self.link_m.unwrap_or(planned.link_m),
            elbow: planned.elbow,
        }
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 6] {
        [
            ("as_built.shaft_x_m", self.shaft_x_m),
            ("as_built.shaft_y_m", self.shaft_y_m),
            ("as_built.bracket_u_m", self.bracket_u_m),
            ("as_built.bracket_v_m", self.bracket_v_m),
            ("as_built.crank_m", self.crank_m),
            ("as_built.link_m", self.link_m),
        ]
    }
}
