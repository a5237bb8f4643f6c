//! Reading the list of members, and the sections that cannot exist.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::member_types::{Bar, Boards, Member, MemberPlace, Mesh, RoundBar, RoundTube, Sheet, Tube};
use super::reader::{Node, wrong_type};
use super::types::Leaf;
use crate::Document;
use crate::leaf::{CornerRule, MemberTotals, hollow_largest_wall_m};
use crate::units::Quantity;
use alloc::{format, string::String, vec::Vec};

/// More lines than a leaf has; beyond it a hostile document is refused.
const MOST_MEMBERS: usize = 200;

/// The members of a leaf: `Some(None)` where there is no list, `None` where the list cannot be read.
pub(super) fn read_members(leaf: &Node) -> Option<Option<Vec<Member>>> {
    let path = leaf.path_of("members");
    match leaf.value("members") {
        Document::Null => Some(None),
        Document::List(items) => {
            if items.len() > MOST_MEMBERS {
                let most = Allowed::Range { least: Some(1.0), most: Some(200.0), quantity: Quantity::Count };
                let fault = Fault::new(path, FaultCode::OutOfRange).allowed(most);
                leaf.fault(fault.found(&Document::Number(items.len() as f64)));
                return None;
            }
            let read = |(index, value)| {
                let path = format!("{path}.{index}");
                leaf.item(path, "leaf.members", value).and_then(read_member)
            };
            let members: Vec<Option<Member>> = items.iter().enumerate().map(read).collect();
            members.into_iter().collect::<Option<Vec<Member>>>().map(Some)
        }
        other => {
            leaf.fault(wrong_type(&path, other, "array"));
            None
        }
    }
}

fn read_member(node: Node) -> Option<Member> {
    let section = node.word("section", &Member::NAMES, true)?;
    let density_kg_m3 = node.number("density_kg_m3");
    let place = node.object("place", true).and_then(read_place);
    let member = match section {
        0 => {
            let (face_m, depth_m, wall_m) = (node.number("face_m"), node.number("depth_m"), node.number("wall_m"));
            let corners = node.word("corners", &CornerRule::NAMES, false).map(|index| CornerRule::ALL[index]);
            (|| {
                Some(Member::Tube(Tube {
                    face_m: face_m?,
                    depth_m,
                    wall_m: wall_m?,
                    corners,
                    density_kg_m3,
                    place: place?,
                }))
            })()
        }
        1 => {
            let (face_m, wall_m) = (node.number("face_m"), node.number("wall_m"));
            (|| Some(Member::RoundTube(RoundTube { face_m: face_m?, wall_m: wall_m?, density_kg_m3, place: place? })))()
        }
        2 => {
            let (face_m, depth_m) = (node.number("face_m"), node.number("depth_m"));
            (|| Some(Member::Bar(Bar { face_m: face_m?, depth_m, density_kg_m3, place: place? })))()
        }
        3 => {
            let face_m = node.number("face_m");
            (|| Some(Member::RoundBar(RoundBar { face_m: face_m?, density_kg_m3, place: place? })))()
        }
        4 => {
            let thickness_m = node.number("thickness_m");
            (|| Some(Member::Sheet(Sheet { thickness_m: thickness_m?, density_kg_m3, place: place? })))()
        }
        5 => {
            let (thickness_m, face_m, gap_m) =
                (node.number("thickness_m"), node.number("face_m"), node.number("gap_m"));
            (|| {
                let (thickness_m, face_m) = (thickness_m?, face_m?);
                Some(Member::Boards(Boards { thickness_m, face_m, gap_m, density_kg_m3, place: place? }))
            })()
        }
        _ => {
            let (wire_m, pitch_m) = (node.number("wire_m"), node.number("pitch_m"));
            (|| Some(Member::Mesh(Mesh { wire_m: wire_m?, pitch_m: pitch_m?, density_kg_m3, place: place? })))()
        }
    };
    node.close();
    member
}

fn read_place(node: Node) -> Option<MemberPlace> {
    let (from_m, to_m) = (node.number("from_m"), node.number("to_m"));
    let (height_m, rise_m) = (node.number("height_m"), node.number("rise_m"));
    let count = node.number("count").map(|count| count as u32);
    node.close();
    Some(MemberPlace { from_m: from_m?, to_m: to_m?, height_m, rise_m, count })
}

fn beyond(path: String, code: FaultCode, found: f64, most: f64, quantity: Quantity) -> Fault {
    let allowed = Allowed::Range { least: None, most: Some(most), quantity };
    Fault::new(path, code).found(&Document::Number(found)).allowed(allowed).example(Example::Number(most))
}

/// Faults of one member that is within its ranges.
fn faults_of(member: &Member, path: &str, leaf: &Leaf) -> Vec<Fault> {
    let mut faults = Vec::new();
    let wall = |wall_m: f64, most: f64| {
        (wall_m > most * (1.0 + 1e-9))
            .then(|| beyond(format!("{path}.wall_m"), FaultCode::WallTooThick, wall_m, most, Quantity::ShortLength))
    };
    match member {
        Member::Tube(tube) => {
            let rule = tube.corners.unwrap_or(CornerRule::En10219);
            faults.extend(wall(tube.wall_m, hollow_largest_wall_m(tube.face_m, tube.depth(), rule)));
        }
        Member::RoundTube(tube) => faults.extend(wall(tube.wall_m, tube.face_m / 2.0)),
        Member::Mesh(mesh) if mesh.wire_m > mesh.pitch_m => faults.push(beyond(
            format!("{path}.wire_m"),
            FaultCode::OutOfRange,
            mesh.wire_m,
            mesh.pitch_m,
            Quantity::ShortLength,
        )),
        _ => {}
    }
    let place = member.place();
    if matches!(member, Member::Sheet(_) | Member::Boards(_) | Member::Mesh(_)) && place.height_m.is_none() {
        let range = Allowed::Range { least: Some(0.01), most: Some(6.0), quantity: Quantity::Length };
        let fault = Fault::new(format!("{path}.place.height_m"), FaultCode::Missing).allowed(range);
        faults.push(fault.example(Example::Number(1.6)));
    }
    for (key, value) in [("from_m", place.from_m), ("to_m", place.to_m)] {
        if value > leaf.length_m {
            let path = format!("{path}.place.{key}");
            faults.push(beyond(path, FaultCode::OutsideLeaf, value, leaf.length_m, Quantity::Length));
        }
    }
    faults
}

impl Leaf {
    /// Faults of the list of members as a whole and one by one.
    pub(super) fn member_faults(&self) -> Vec<Fault> {
        let Some(members) = &self.members else { return Vec::new() };
        if members.is_empty() {
            let least = Allowed::Range { least: Some(1.0), most: Some(200.0), quantity: Quantity::Count };
            let fault = Fault::new("leaf.members", FaultCode::NoMembers).found(&Document::List(Vec::new()));
            return alloc::vec![fault.allowed(least)];
        }
        let mut faults: Vec<Fault> = members
            .iter()
            .enumerate()
            .flat_map(|(index, member)| faults_of(member, &format!("leaf.members.{index}"), self))
            .collect();
        if faults.is_empty() {
            let totals = MemberTotals::of(members);
            let mass = (totals.mass_kg, 1.0, 5000.0, Quantity::Mass);
            let area = (totals.wind_area_m2, 0.0, 60.0, Quantity::Area);
            for (total, least, most, quantity) in [mass, area] {
                if !(least..=most).contains(&total) {
                    let allowed = Allowed::Range { least: Some(least), most: Some(most), quantity };
                    let fault = Fault::new("leaf.members", FaultCode::OutOfRange).found(&Document::Number(total));
                    faults.push(fault.allowed(allowed));
                }
            }
        }
        faults
    }
}
