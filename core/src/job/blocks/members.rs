//! The leaf's members, as a person lists them.

use crate::elements::{CornerRule, hollow_largest_wall_m};
use crate::job::table::*;
use crate::units::Quantity::{self, Count, Density, Length, ShortLength};
use alloc::{format, string::String, vec::Vec};

choice! {
    /// One line of the list: a section, and where how many pieces of it sit.
    #[derive(Copy)]
    pub enum Member by "section" {
        /// Square or rectangular tube.
        Tube(Tube) = "tube",
        /// Round tube.
        RoundTube(RoundTube) = "round_tube",
        /// Solid flat or square bar, single board.
        Bar(Bar) = "bar",
        /// Solid round bar.
        RoundBar(RoundBar) = "round_bar",
        /// Sheet.
        Sheet(Sheet) = "sheet",
        /// Boards with gaps.
        Boards(Boards) = "boards",
        /// Square mesh of round wire.
        Mesh(Mesh) = "mesh",
    }
}

block! {
    /// Where the pieces of one line sit on the leaf.
    #[derive(Copy)]
    pub struct MemberPlace at "leaf.members.place." {
        /// Hinge axis to the near end, or to the centre-line of the first upright, m.
        from_m: f64 = number(Length, -1.0, 15.0, 0.0),
        /// Hinge axis to the far end, or to the centre-line of the last upright, m.
        to_m: f64 = number(Length, -1.0, 15.0, 3.2),
        /// Height, m. Given: uprights, spread evenly, or a panel. Absent: rails from end to end.
        height_m: Option<f64> = number(Length, 0.01, 6.0, 1.6),
        /// How much higher a sloping rail ends than it starts, m; default 0.
        rise_m: Option<f64> = assumed(Length, -6.0, 6.0, 0.0),
        /// Pieces; default 1.
        count: Option<u32> = assumed(Count, 1.0, 500.0, 1.0),
    }
}

block! {
    /// Square or rectangular tube.
    #[derive(Copy)]
    pub struct Tube at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where the pieces sit.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Side the wind sees, m.
        face_m: f64 = number(ShortLength, 0.001, 2.0, 0.05),
        /// Other side, m; default the same.
        depth_m: Option<f64> = number(ShortLength, 0.001, 2.0, 0.05),
        /// Wall, m.
        wall_m: f64 = number(ShortLength, 0.0001, 0.05, 0.003),
        /// Corner rule; default EN 10219.
        corners: Option<CornerRule> = word(CornerRule::WORDS).listed(),
    }
}

block! {
    /// Round tube.
    #[derive(Copy)]
    pub struct RoundTube at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where the pieces sit.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Outer diameter, m.
        face_m: f64 = number(ShortLength, 0.001, 2.0, 0.05),
        /// Wall, m.
        wall_m: f64 = number(ShortLength, 0.0001, 0.05, 0.003),
    }
}

block! {
    /// Solid flat or square bar, single board.
    #[derive(Copy)]
    pub struct Bar at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where the pieces sit.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Side the wind sees, m.
        face_m: f64 = number(ShortLength, 0.001, 2.0, 0.05),
        /// Other side, m; default the same.
        depth_m: Option<f64> = number(ShortLength, 0.001, 2.0, 0.05),
    }
}

block! {
    /// Solid round bar.
    #[derive(Copy)]
    pub struct RoundBar at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where the pieces sit.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Diameter, m.
        face_m: f64 = number(ShortLength, 0.001, 2.0, 0.05),
    }
}

block! {
    /// Sheet over a part of the leaf.
    #[derive(Copy)]
    pub struct Sheet at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where it sits; needs a height.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Thickness, m.
        thickness_m: f64 = number(ShortLength, 0.0001, 0.2, 0.002),
    }
}

block! {
    /// Boards with gaps over a part of the leaf.
    #[derive(Copy)]
    pub struct Boards at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel): say it for timber.
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where they sit; needs a height.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Thickness, m.
        thickness_m: f64 = number(ShortLength, 0.0001, 0.2, 0.002),
        /// Width of a board, m.
        face_m: f64 = number(ShortLength, 0.001, 2.0, 0.05),
        /// Gap between boards, m; default 0.
        gap_m: Option<f64> = assumed(ShortLength, 0.0, 1.0, 0.0),
    }
}

block! {
    /// Square mesh of round wire over a part of the leaf.
    #[derive(Copy)]
    pub struct Mesh at "leaf.members." {
        /// Density, kg/m³; default 7850 (steel).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 20_000.0, 7850.0),
        /// Where it sits; needs a height.
        place: MemberPlace = block(MemberPlace::BLOCK),
        /// Diameter of the wire, m.
        wire_m: f64 = number(ShortLength, 0.0005, 0.05, 0.005),
        /// Distance of the wires, centre to centre, m.
        pitch_m: f64 = number(ShortLength, 0.002, 1.0, 0.05),
    }
}

fn beyond(path: String, code: FaultCode, found: f64, most: f64, quantity: Quantity) -> Fault {
    let allowed = Allowed::Range { least: None, most: Some(most), quantity };
    Fault::number(path, code, found, allowed).example(Example::Number(most))
}

impl Member {
    /// Where its pieces sit.
    #[must_use]
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

    /// Faults of a member that is within its ranges: sections that cannot exist, pieces beyond the leaf.
    pub(in crate::job) fn relations(&self, path: core::fmt::Arguments, leaf_length_m: f64) -> Vec<Fault> {
        let mut faults = Vec::new();
        let wall = |wall_m: f64, most: f64| {
            (wall_m > most * (1.0 + 1e-9))
                .then(|| beyond(format!("{path}.wall_m"), FaultCode::WallTooThick, wall_m, most, ShortLength))
        };
        match self {
            Member::Tube(tube) => {
                let rule = tube.corners.unwrap_or(CornerRule::En10219);
                faults.extend(wall(tube.wall_m, hollow_largest_wall_m(tube.face_m, tube.depth(), rule)));
            }
            Member::RoundTube(tube) => faults.extend(wall(tube.wall_m, tube.face_m / 2.0)),
            Member::Mesh(Mesh { wire_m, pitch_m, .. }) if wire_m > pitch_m => {
                faults.push(beyond(format!("{path}.wire_m"), FaultCode::OutOfRange, *wire_m, *pitch_m, ShortLength));
            }
            _ => {}
        }
        let place = self.place();
        if matches!(self, Member::Sheet(_) | Member::Boards(_) | Member::Mesh(_)) && place.height_m.is_none() {
            let row = const { MemberPlace::BLOCK.number("height_m") };
            faults.push(row.missing(format!("{path}.place.height_m")));
        }
        for (key, value) in [("from_m", place.from_m), ("to_m", place.to_m)] {
            if value > leaf_length_m {
                let path = format!("{path}.place.{key}");
                faults.push(beyond(path, FaultCode::OutsideLeaf, value, leaf_length_m, Length));
            }
        }
        faults
    }
}
