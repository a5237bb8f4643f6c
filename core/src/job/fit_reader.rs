//! Reading what fitting adds.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::fit_types::{AsBuilt, BuiltFrom, Marks, Room, Tape};
use super::reader::Node;
use super::setout::KeepOut;
use super::setout_reader::{crossed, read_rectangles};
use crate::{Document, units::Quantity};
use alloc::{format, vec::Vec};

pub(super) fn read_room(node: Node) -> Option<Room> {
    let (front_m, back_m, heel_m) = (node.number("front_m"), node.number("back_m"), node.number("heel_m"));
    let arm_half_width_m = node.number("arm_half_width_m");
    let post_there = node.has("hinge_post");
    let hinge_post = node.object("hinge_post", false).and_then(read_rectangle);
    let said = node.has("obstacles");
    let obstacles = read_rectangles(&node, "obstacles").map(|rectangles| said.then_some(rectangles));
    node.close();
    let post_read = !post_there || hinge_post.is_some();
    post_read.then_some(Room { front_m, back_m, heel_m, arm_half_width_m, hinge_post, obstacles: obstacles? })
}

fn read_rectangle(node: Node) -> Option<KeepOut> {
    let (x_m, y_m) = (node.range("x_m"), node.range("y_m"));
    node.close();
    Some(KeepOut { x_m: x_m?, y_m: y_m? })
}

pub(super) fn read_marks(node: Node) -> Option<Marks> {
    let marks = Marks {
        anchor_along_m: node.number("anchor_along_m"),
        anchor_across_m: node.number("anchor_across_m"),
        anchor_offset_along_m: node.number("anchor_offset_along_m"),
        anchor_offset_across_m: node.number("anchor_offset_across_m"),
        anchor_turn_deg: node.number("anchor_turn_deg"),
        pad_level_m: node.number("pad_level_m"),
        crossbar_level_m: node.number("crossbar_level_m"),
        arm_height_m: node.number("arm_height_m"),
        overlap_m: node.number("overlap_m"),
        crank_ends_m: node.number("crank_ends_m"),
        link_ends_m: node.number("link_ends_m"),
    };
    node.close();
    Some(marks)
}

pub(super) fn read_tape(node: Node) -> Option<Tape> {
    let tape = Tape { error_m: node.number("error_m") };
    node.close();
    Some(tape)
}

pub(super) fn read_as_built(node: Node) -> Option<AsBuilt> {
    let from = node.word("from", &BuiltFrom::NAMES, false).map(|index| BuiltFrom::ALL[index]);
    let built = AsBuilt {
        from,
        shaft_x_m: node.number("shaft_x_m"),
        shaft_y_m: node.number("shaft_y_m"),
        bracket_u_m: node.number("bracket_u_m"),
        bracket_v_m: node.number("bracket_v_m"),
        crank_m: node.number("crank_m"),
        link_m: node.number("link_m"),
    };
    node.close();
    Some(built)
}

impl Room {
    /// Rectangles whose ends are the wrong way round.
    pub(super) fn relations(&self) -> Vec<Fault> {
        let ends = |(rules, path, KeepOut { x_m, y_m }): (&str, _, KeepOut)| {
            [("x_m", x_m), ("y_m", y_m)]
                .map(|(key, range)| crossed(&format!("{path}.{key}"), &format!("{rules}.{key}"), range))
        };
        // A leaf has a front before its back.
        let inside_out = (self.front() < -self.back()).then(|| {
            let allowed =
                Allowed::Range { least: Some(-self.back()), most: Some(0.5), quantity: Quantity::ShortLength };
            let fault = Fault::new("room.front_m", FaultCode::LeastAboveMost).found(&Document::Number(self.front()));
            fault.allowed(allowed).example(Example::Number(-self.back()))
        });
        inside_out.into_iter().chain(self.rectangles().into_iter().flat_map(ends).flatten()).collect()
    }
}

impl Marks {
    /// A rectangle of holes has two spacings, a riser two levels.
    pub(super) fn relations(&self) -> Vec<Fault> {
        let pairs = [
            ("marks.anchor_along_m", self.anchor_along_m, "marks.anchor_across_m", self.anchor_across_m),
            ("marks.pad_level_m", self.pad_level_m, "marks.crossbar_level_m", self.crossbar_level_m),
        ];
        let half = |(one, at_one, other, at_other): (&'static str, Option<f64>, &'static str, Option<f64>)| match (
            at_one, at_other,
        ) {
            (Some(_), None) => Some(super::numbers::half(other)),
            (None, Some(_)) => Some(super::numbers::half(one)),
            _ => None,
        };
        pairs.into_iter().filter_map(half).collect()
    }
}
