//! From schema 1: three lists of what stands around become one, and leaf and arm are as wide as they are in one place.
//!
//! What schema 1 said of rectangles to keep out of stops pad and arm; what it said under `room` and `site` stops the leaf, too. Where it gave a width
//! twice the larger is kept, and the other noted under `migrated`, so that a person is told. A face that was not said stays on the axis line.

use super::{Entries, Moves};
use crate::Document;
use crate::fault::{Allowed, Example, Fault, FaultCode};
use crate::job::Job;
use crate::job::table::{Block, Field, Kind, Number, Spec, assumed, block, list, range};
use crate::units::{Quantity::ShortLength, System, entered};
use alloc::{format, string::String, vec::Vec};

/// A row of schema 1.
const fn row(name: &'static str, spec: Spec, required: bool) -> Field {
    Field {
        name,
        path: name,
        twin: None,
        spec,
        required,
        #[cfg(feature = "describe")]
        about: "",
    }
}

/// A block of schema 1.
const fn rows(fields: &'static [Field]) -> Block {
    Block {
        fields,
        carried: &[],
        open: false,
        #[cfg(feature = "describe")]
        about: "",
    }
}

/// Most items of a list.
const MOST: u32 = 64;
const SIDE: Spec = range(ShortLength, -20.0, 20.0, 0.1);
const FACE: Spec = assumed(ShortLength, -0.5, 0.5, 0.0);
const HALF_WIDTH: Spec = assumed(ShortLength, 0.0, 0.5, 0.0);
const HALF_THICKNESS: Spec = assumed(ShortLength, 0.0, 0.5, 0.03);
const RECTANGLE: &Block = &rows(&[row("x_m", SIDE, true), row("y_m", SIDE, true)]);
const RECTANGLES: Spec = list(&Kind::Block(RECTANGLE), MOST);
const ROOM: &Block = &rows(&[
    row("front_m", FACE, false),
    row("back_m", FACE, false),
    row("heel_m", assumed(ShortLength, 0.0, 1.0, 0.0), false),
    row("arm_half_width_m", HALF_WIDTH, false),
    row("hinge_post", block(RECTANGLE), false),
    row("obstacles", RECTANGLES, false),
]);

/// Fields that schema 1 did not have, by the block they are in.
const NEW: [(&str, &[&str]); 3] = [
    ("", &["obstacles", "arm_half_width_m", "migrated"]),
    ("leaf", &["face_m", "thickness_m", "heel_m"]),
    ("operator", &["body"]),
];

pub(super) fn step(entries: &mut Entries, moves: &mut Moves) {
    refuse_new(entries, moves);
    let mut room = moves.take(entries, "room", "room");
    moves.hold("room", &Kind::Block(ROOM), &room);
    let mut nothing = Vec::new();
    let looked_at = matches!(room, Document::Object(_));
    let room = if let Document::Object(room) = &mut room { room } else { &mut nothing };
    let mut of_room = |key: &str| moves.take(room, &format!("room.{key}"), key);
    let [front, back, heel, wide, post, around] =
        ["front_m", "back_m", "heel_m", "arm_half_width_m", "hinge_post", "obstacles"].map(&mut of_room);
    let of_setout = taken(entries, moves, "setout", ["arm_half_width_m", "keep_out"], [HALF_WIDTH, RECTANGLES]);
    let of_site = taken(entries, moves, "site", ["leaf_half_thickness_m", "obstacles"], [HALF_THICKNESS, RECTANGLES]);
    let [setout_wide, keep_out] = of_setout;
    let [half_thickness, site_around] = of_site;

    let mut notes = Vec::new();
    // Faults name a width by the place it is kept from.
    let one = Said { path: "room.arm_half_width_m", value: wide };
    let other = Said { path: "setout.arm_half_width_m", value: setout_wide };
    if let Some(kept) = larger(one, other, "arm_half_width_other_m", &mut notes) {
        moves.moved("arm_half_width_m", kept.path);
        entries.push(("arm_half_width_m".into(), kept.value));
    }
    let faces = thickness(&front, &back, moves);
    let half = number(&half_thickness).map_or(Document::Null, |half_m| Document::Number(2.0 * half_m));
    let half = Said { path: "site.leaf_half_thickness_m", value: half };
    let thick = larger(faces, half, "leaf_thickness_other_m", &mut notes);
    let mut kept_m = None;
    let mut leaf = |key: &str, value: Document, before: &str| {
        if value != Document::Null
            && let Some((_, Document::Object(leaf))) = entries.iter_mut().find(|(key, _)| key == "leaf")
        {
            leaf.push((key.into(), value));
            moves.moved(format!("leaf.{key}"), before);
        }
    };
    leaf("face_m", front.clone(), "room.front_m");
    leaf("heel_m", heel, "room.heel_m");
    if let Some(kept) = thick {
        kept_m = number(&kept.value);
        leaf("thickness_m", kept.value, kept.path);
    }
    if !notes.is_empty() {
        entries.push(("migrated".into(), Document::Object(notes)));
    }

    let mut obstacles = Obstacles { list: Vec::new(), moves };
    obstacles.add_all(&site_around, "site.obstacles", Standing::Around);
    obstacles.add_all(&around, "room.obstacles", Standing::Around);
    obstacles.add(&post, "room.hinge_post", Standing::HingePost);
    obstacles.add_all(&keep_out, "setout.keep_out", Standing::KeepOut);
    let list = obstacles.list;
    if looked_at || !list.is_empty() {
        entries.push(("obstacles".into(), Document::List(list.into_iter().map(Document::Object).collect())));
    }
    rename_typed(entries, moves, kept_m, number(&front).unwrap_or(0.0) == 0.0);
    rename_shares(entries, moves);
}

/// Tells what schema 1 did not know, and takes it away.
fn refuse_new(entries: &mut Entries, moves: &mut Moves) {
    for (block, keys) in NEW {
        let within = match block {
            "" => &mut *entries,
            block => match entries.iter_mut().find(|(name, _)| name == block) {
                Some((_, Document::Object(within))) => within,
                _ => continue,
            },
        };
        let known = || -> Vec<&'static str> {
            let fields = match block {
                "" => Job::BLOCK.fields,
                "leaf" => crate::job::Leaf::BLOCK.fields,
                _ => crate::job::Operator::BLOCK.fields,
            };
            fields.iter().map(|field| field.name).filter(|name| !keys.contains(name)).collect()
        };
        within.retain(|(name, value)| {
            let new = keys.contains(&name.as_str());
            if new {
                let path = if block.is_empty() { name.clone() } else { format!("{block}.{name}") };
                let fault = Fault::new(path, FaultCode::UnknownField).found(value);
                moves.faults.push(fault.allowed(Allowed::OneOf { names: known() }));
            }
            !new
        });
    }
}

/// Two fields of a block, taken out of it.
fn taken(entries: &mut Entries, moves: &mut Moves, block: &str, keys: [&str; 2], specs: [Spec; 2]) -> [Document; 2] {
    let Some((_, Document::Object(within))) = entries.iter_mut().find(|(name, _)| name == block) else {
        return [Document::Null, Document::Null];
    };
    let mut index = 0;
    keys.map(|key| {
        let path = format!("{block}.{key}");
        let value = moves.take(within, &path, key);
        moves.hold(&path, &specs[index].kind, &value);
        index += 1;
        value
    })
}

/// A value, and the path it had.
struct Said {
    path: &'static str,
    value: Document,
}

/// The larger of two that are said; the other is noted where it differs. What is no number is kept, for the reader to refuse.
fn larger(one: Said, other: Said, note: &str, notes: &mut Entries) -> Option<Said> {
    match (number(&one.value), number(&other.value)) {
        (Some(one_m), Some(other_m)) => {
            let (kept, least_m) = if one_m >= other_m { (one, other_m) } else { (other, one_m) };
            if (one_m - other_m).abs() > 1e-9 {
                notes.push((note.into(), Document::Number(least_m)));
            }
            Some(kept)
        }
        (None, _) if one.value != Document::Null => Some(one),
        (_, None) if other.value != Document::Null => Some(other),
        (Some(_), None) => Some(one),
        (None, Some(_)) => Some(other),
        (None, None) => None,
    }
}

/// How thick the leaf is between its two faces, where one of them is said.
fn thickness(front: &Document, back: &Document, moves: &mut Moves) -> Said {
    let path = if *back == Document::Null { "room.front_m" } else { "room.back_m" };
    let silent = [front, back].iter().all(|face| **face == Document::Null);
    let faces = [front, back].map(|face| if *face == Document::Null { Some(0.0) } else { number(face) });
    let (false, [Some(front_m), Some(back_m)]) = (silent, faces) else { return Said { path, value: Document::Null } };
    if front_m < -back_m {
        let bounds = Number { least: Some(-back_m), ..FACE_ROW };
        let fault = Fault::number("room.front_m", FaultCode::LeastAboveMost, front_m, bounds.allowed());
        moves.faults.push(fault.example(Example::Number(-back_m)));
        moves.told.push("leaf.thickness_m".into());
    }
    // To a nanometre, as somebody would have written the sum.
    Said { path, value: Document::Number(libm::round((front_m + back_m) * 1e9) / 1e9) }
}

const FACE_ROW: Number = ROOM.number("front_m");

fn number(value: &Document) -> Option<f64> {
    match value {
        Document::Number(number) => Some(*number),
        _ => None,
    }
}

/// What schema 1 meant by the place a rectangle stood in.
#[derive(Clone, Copy, PartialEq)]
enum Standing {
    Around,
    HingePost,
    KeepOut,
}

struct Obstacles<'a> {
    list: Vec<Entries>,
    moves: &'a mut Moves,
}

impl Obstacles<'_> {
    fn add_all(&mut self, rectangles: &Document, path: &str, standing: Standing) {
        let Document::List(rectangles) = rectangles else { return };
        for (index, rectangle) in rectangles.iter().enumerate() {
            self.add(rectangle, &format!("{path}.{index}"), standing);
        }
    }

    /// Adds a rectangle; one that stands there already is the same thing, and stops what either stops.
    fn add(&mut self, rectangle: &Document, path: &str, standing: Standing) {
        let Document::Object(sides) = rectangle else { return };
        self.crossed(rectangle, path);
        let side = |key: &str| rectangle.entry(key).cloned().unwrap_or(Document::Null);
        let [x_m, y_m] = ["x_m", "y_m"].map(side);
        let has =
            |item: &Entries, key: &str, value: &Document| item.iter().any(|(name, own)| name == key && own == value);
        let known = self.list.iter().position(|item| has(item, "x_m", &x_m) && has(item, "y_m", &y_m));
        let index = known.unwrap_or(self.list.len());
        self.moves.moved(format!("obstacles.{index}"), path);
        if known.is_none() {
            let mut item: Entries =
                sides.iter().filter(|(key, _)| matches!(key.as_str(), "x_m" | "y_m")).cloned().collect();
            if standing == Standing::KeepOut {
                let stopped = ["pad", "arm"].map(|what| Document::Text(what.into()));
                item.push(("stops".into(), Document::List(stopped.into())));
            }
            self.list.push(item);
        }
        if standing == Standing::HingePost {
            let said = [("kind", Document::Text("post".into())), ("hinge_post", Document::Bool(true))];
            self.list[index].extend(said.map(|(key, value)| (key.into(), value)));
        }
    }

    /// Ends that are the wrong way round, so that they are told although the reader may get no further.
    fn crossed(&mut self, rectangle: &Document, path: &str) {
        for key in ["x_m", "y_m"] {
            if let Some(Document::List(ends)) = rectangle.entry(key)
                && let [Document::Number(least), Document::Number(most)] = &ends[..]
            {
                let fault = const { RECTANGLE.number("x_m") }.crossed(&format!("{path}.{key}"), [*least, *most]);
                self.moves.faults.extend(fault);
            }
        }
    }
}

/// What was typed stands where its number stands now. The text of a thickness that was said in another way is written anew from the number.
fn rename_typed(entries: &mut Entries, moves: &Moves, kept_m: Option<f64>, face_on_axis: bool) {
    let Some((_, Document::Object(entry))) = entries.iter_mut().find(|(key, _)| key == "entry") else { return };
    // How many there were is told by the lists themselves.
    for (block, key) in [("site", "obstacles"), ("setout", "keepOuts")] {
        if let Some((_, Document::Object(within))) = entry.iter_mut().find(|(name, _)| name == block) {
            within.retain(|(name, _)| name != key);
        }
    }
    let of_setout = entry.iter_mut().find(|(key, _)| key == "setout").and_then(|(_, setout)| typed_of(setout));
    let from_setout: Entries = of_setout.map_or_else(Vec::new, |typed| {
        let (moved, stays): (Entries, Entries) =
            core::mem::take(typed).into_iter().partition(|(path, _)| moves.now(path).is_some());
        // What lost against a larger number is no longer what was said.
        *typed = stays.into_iter().filter(|(path, _)| !is_of_room(path)).collect();
        moved
    });
    if let Some((_, Document::Object(choices))) = entry.iter_mut().find(|(key, _)| key == "choices") {
        choices.retain(|(path, _)| !path.starts_with("room."));
    }
    if let Some((_, Document::List(given))) = entry.iter_mut().find(|(key, _)| key == "given") {
        for path in given {
            if let Document::Text(path) = path
                && let Some(now) = moves.now(path)
            {
                *path = now;
            }
        }
    }
    if !from_setout.is_empty() && entry.iter().all(|(key, _)| key != "typed") {
        entry.push(("typed".into(), Document::Object(Vec::new())));
    }
    let Some((_, Document::Object(typed))) = entry.iter_mut().find(|(key, _)| key == "typed") else { return };
    typed.extend(from_setout);
    let mut done: Vec<String> = Vec::new();
    typed.retain_mut(|(path, text)| {
        let Some(now) = moves.now(path) else {
            // What lost against a larger number, or has no place any more, is no longer what was said.
            return !is_of_room(path);
        };
        let same = now != "leaf.thickness_m" || (path == "room.back_m" && face_on_axis);
        let (first, written) = (!done.contains(&now), same || kept_m.is_some_and(|kept_m| write_anew(text, kept_m)));
        done.push(now.clone());
        *path = now;
        first && written
    });
}

/// Whether a path was of something that has moved.
fn is_of_room(path: &str) -> bool {
    let lists = ["room.", "site.obstacles.", "setout.keep_out."];
    lists.iter().any(|list| path.starts_with(list))
        || matches!(path, "site.leaf_half_thickness_m" | "setout.arm_half_width_m")
}

fn typed_of(block: &mut Document) -> Option<&mut Entries> {
    let Document::Object(block) = block else { return None };
    match block.iter_mut().find(|(key, _)| key == "typed") {
        Some((_, Document::Object(typed))) => Some(typed),
        _ => None,
    }
}

/// The text of a number in the units it was typed in; `false` where those are not known.
fn write_anew(typed: &mut Document, value_m: f64) -> bool {
    let system = match typed.entry("system") {
        Some(Document::Text(system)) if system == "us" => System::Us,
        Some(Document::Text(system)) if system == "metric" => System::Metric,
        _ => return false,
    };
    let Document::Object(fields) = typed else { return false };
    fields.retain(|(key, _)| key != "meant");
    for (key, value) in fields {
        if key == "text" {
            *value = Document::Text(entered(value_m, ShortLength, system));
        }
    }
    true
}

fn rename_shares(entries: &mut Entries, moves: &Moves) {
    let Some((_, Document::Object(shares))) = entries.iter_mut().find(|(key, _)| key == "uncertainty") else { return };
    for (path, _) in shares {
        if let Some(now) = moves.now(path) {
            *path = now;
        }
    }
}
