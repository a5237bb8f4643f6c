//! The leaf's members, as a person lists them.

use crate::leaf::CornerRule;
use serde::Serialize;

/// One line of the list: a section, and where how many pieces of it sit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "section", rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Member {
    /// Square or rectangular tube.
    Tube(Tube),
    /// Round tube.
    RoundTube(RoundTube),
    /// Solid flat or square bar, single board.
    Bar(Bar),
    /// Solid round bar.
    RoundBar(RoundBar),
    /// Sheet.
    Sheet(Sheet),
    /// Boards with gaps.
    Boards(Boards),
    /// Square mesh of round wire.
    Mesh(Mesh),
}

/// Where the pieces of one line sit on the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MemberPlace {
    /// Hinge axis to the near end, or to the centre-line of the first upright, m.
    pub from_m: f64,
    /// Hinge axis to the far end, or to the centre-line of the last upright, m.
    pub to_m: f64,
    /// Height, m. Given: uprights, spread evenly, or a panel. Absent: rails from end to end.
    pub height_m: Option<f64>,
    /// How much higher a sloping rail ends than it starts, m; default 0.
    pub rise_m: Option<f64>,
    /// Pieces; default 1.
    pub count: Option<u32>,
}

/// Square or rectangular tube.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Tube {
    /// Side the wind sees, m.
    pub face_m: f64,
    /// Other side, m; default the same.
    pub depth_m: Option<f64>,
    /// Wall, m.
    pub wall_m: f64,
    /// Corner rule; default EN 10219.
    pub corners: Option<CornerRule>,
    /// Density, kg/m³; default 7850 (steel).
    pub density_kg_m3: Option<f64>,
    /// Where the pieces sit.
    pub place: MemberPlace,
}

/// Round tube.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct RoundTube {
    /// Outer diameter, m.
    pub face_m: f64,
    /// Wall, m.
    pub wall_m: f64,
    /// Density, kg/m³; default 7850 (steel).
    pub density_kg_m3: Option<f64>,
    /// Where the pieces sit.
    pub place: MemberPlace,
}

/// Solid flat or square bar, single board.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Bar {
    /// Side the wind sees, m.
    pub face_m: f64,
    /// Other side, m; default the same.
    pub depth_m: Option<f64>,
    /// Density, kg/m³; default 7850 (steel).
    pub density_kg_m3: Option<f64>,
    /// Where the pieces sit.
    pub place: MemberPlace,
}

/// Solid round bar.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct RoundBar {
    /// Diameter, m.
    pub face_m: f64,
    /// Density, kg/m³; default 7850 (steel).
    pub density_kg_m3: Option<f64>,
    /// Where the pieces sit.
    pub place: MemberPlace,
}

/// Sheet over a part of the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Sheet {
    /// Thickness, m.
    pub thickness_m: f64,
    /// Density, kg/m³; default 7850 (steel).
    pub density_kg_m3: Option<f64>,
    /// Where it sits; needs a height.
    pub place: MemberPlace,
}

/// Boards with gaps over a part of the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Boards {
    /// Thickness, m.
    pub thickness_m: f64,
    /// Width of a board, m.
    pub face_m: f64,
    /// Gap between boards, m; default 0.
    pub gap_m: Option<f64>,
    /// Density, kg/m³; default 7850 (steel): say it for timber.
    pub density_kg_m3: Option<f64>,
    /// Where they sit; needs a height.
    pub place: MemberPlace,
}

/// Square mesh of round wire over a part of the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Mesh {
    /// Diameter of the wire, m.
    pub wire_m: f64,
    /// Distance of the wires, centre to centre, m.
    pub pitch_m: f64,
    /// Density, kg/m³; default 7850 (steel).
    pub density_kg_m3: Option<f64>,
    /// Where it sits; needs a height.
    pub place: MemberPlace,
}

impl Member {
    pub(super) const NAMES: [&str; 7] = ["tube", "round_tube", "bar", "round_bar", "sheet", "boards", "mesh"];

    /// Where its pieces sit.
    pub fn place(&self) -> &MemberPlace {
        match self {
            Member::Tube(part) => &part.place,
            Member::RoundTube(part) => &part.place,
            Member::Bar(part) => &part.place,
            Member::RoundBar(part) => &part.place,
            Member::Sheet(part) => &part.place,
            Member::Boards(part) => &part.place,
            Member::Mesh(part) => &part.place,
        }
    }

    /// All numbers with the last part of their rules' paths.
    pub(super) fn numbers(&self) -> alloc::vec::Vec<(&'static str, Option<f64>)> {
        let place = self.place();
        let mut numbers = match *self {
            Member::Tube(part) => alloc::vec![
                ("leaf.members.face_m", Some(part.face_m)),
                ("leaf.members.depth_m", part.depth_m.or(Some(part.face_m))),
                ("leaf.members.wall_m", Some(part.wall_m)),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
            Member::RoundTube(part) => alloc::vec![
                ("leaf.members.face_m", Some(part.face_m)),
                ("leaf.members.wall_m", Some(part.wall_m)),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
            Member::Bar(part) => alloc::vec![
                ("leaf.members.face_m", Some(part.face_m)),
                ("leaf.members.depth_m", part.depth_m.or(Some(part.face_m))),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
            Member::RoundBar(part) => alloc::vec![
                ("leaf.members.face_m", Some(part.face_m)),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
            Member::Sheet(part) => alloc::vec![
                ("leaf.members.thickness_m", Some(part.thickness_m)),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
            Member::Boards(part) => alloc::vec![
                ("leaf.members.thickness_m", Some(part.thickness_m)),
                ("leaf.members.face_m", Some(part.face_m)),
                ("leaf.members.gap_m", part.gap_m),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
            Member::Mesh(part) => alloc::vec![
                ("leaf.members.wire_m", Some(part.wire_m)),
                ("leaf.members.pitch_m", Some(part.pitch_m)),
                ("leaf.members.density_kg_m3", part.density_kg_m3),
            ],
        };
        numbers.extend([
            ("leaf.members.place.from_m", Some(place.from_m)),
            ("leaf.members.place.to_m", Some(place.to_m)),
            ("leaf.members.place.height_m", place.height_m),
            ("leaf.members.place.rise_m", place.rise_m),
            ("leaf.members.place.count", place.count.map(f64::from)),
        ]);
        numbers
    }
}
