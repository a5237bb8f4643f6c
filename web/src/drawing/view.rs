//! What the page says about a drawing: its size, what to show, colours and words.

use kurbo::Size;
use pintle_core::units::System;
use pintle_core::{Document, fault::Invalid};
use plotters::style::RGBColor;
use serde::Serialize;

use super::colour::Colour;
use super::pen::Ink;
use super::reader::Reader;
use super::surface::{Measure, Surface};

/// How a drawing is to be made.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct View {
    /// Width, CSS px; 160 to 8,000.
    pub(super) width: f64,
    /// Height, CSS px; 160 to 8,000.
    pub(super) height: f64,
    /// Device px per CSS px; 0.25 to 8.
    #[cfg_attr(not(target_arch = "wasm32"), expect(dead_code, reason = "only a canvas has dots"))]
    pub(super) pixel_ratio: f64,
    /// The cursor: the leaf angle looked at, degrees, held inside the swing.
    pub(super) leaf_deg: f64,
    /// Whether the plan view shows the zones that can catch a person, and what stands around.
    pub(super) zones: bool,
    /// Whether the plan view is what is marked out: the closed arm alone, every mark with its number.
    pub(super) marks: bool,
    /// What the plan view shows: all of the gate, or the arm as large as it will go, a long leaf cut short.
    #[cfg_attr(feature = "describe", ts(type = "\"gate\" | \"arm\""))]
    pub(super) part: usize,
    /// Whether the curve shows what the drive holds back with the wind behind, and what holds the leaf at a stand.
    pub(super) overrun: bool,
    /// The run that is followed through time, by its place in the core's list.
    #[cfg_attr(feature = "describe", ts(type = "\"opening\" | \"closing\" | \"motor_opening\" | \"motor_closing\""))]
    pub(super) run: usize,
    /// Units of the numbers.
    pub(super) system: System,
    /// Colours.
    pub(super) palette: Palette,
    /// Words.
    pub(super) labels: Labels,
}

/// What the plan view can show.
const PARTS: [&str; 2] = ["gate", "arm"];

/// Runs in the order the core gives them.
pub const RUNS: [&str; 4] = ["opening", "closing", "motor_opening", "motor_closing"];

impl View {
    /// Reads a view; a drawing of nothing or of a wall of dots is a mistake of the caller.
    ///
    /// # Errors
    /// Every field that is missing, ill-typed, unknown or outside its limits, with its path below `view`. Words may have more
    /// entries than are drawn.
    pub fn read(document: &Document) -> Result<View, Invalid> {
        let reader = Reader::new(document);
        let sides = (160.0, 8000.0);
        let view = View {
            width: reader.number("width", sides),
            height: reader.number("height", sides),
            pixel_ratio: reader.number("pixel_ratio", (0.25, 8.0)),
            leaf_deg: reader.number("leaf_deg", (f64::MIN, f64::MAX)),
            zones: reader.flag("zones"),
            marks: reader.flag("marks"),
            part: reader.word("part", &PARTS),
            overrun: reader.flag("overrun"),
            run: reader.word("run", &RUNS),
            system: match reader.word("system", &["metric", "us"]) {
                1 => System::Us,
                _ => System::Metric,
            },
            palette: Palette::read(&reader.object("palette")),
            labels: Labels::read(&reader.object("labels")),
        };
        reader.finish()?;
        Ok(view)
    }

    /// Whether the arm is looked at, not all of the gate.
    pub(super) fn near(&self) -> bool {
        PARTS[self.part] == "arm"
    }

    /// An empty surface for it.
    pub(super) fn surface<'a>(&self, measure: Measure<'a>) -> Surface<'a> {
        let mut surface = Surface::new(Size::new(self.width, self.height), self.text_size(), measure);
        surface.decimal.clone_from(&self.labels.decimal);
        surface
    }

    /// Font size, px: one size on the whole drawing, as lettering on a surface has; larger where there is room.
    pub(super) fn text_size(&self) -> f64 {
        (self.width / 60.0).clamp(12.0, 15.0)
    }
}

/// A struct of fields of one kind, read by their names.
macro_rules! table {
    ($(#[$meta:meta])* $name:ident of $kind:ty, $read:ident { $($(#[$doc:meta])* $field:ident),* $(,)? }) => {
        $(#[$meta])*
        #[derive(Clone, Debug)]
        #[cfg_attr(feature = "describe", derive(ts_rs::TS))]
        pub struct $name {
            $($(#[$doc])* pub(super) $field: $kind,)*
        }

        impl $name {
            fn read(reader: &Reader<'_>) -> $name {
                $name { $($field: reader.$read(stringify!($field)),)* }
            }
        }
    };
}

table! {
    /// Colours of a drawing, `"#rrggbb"`.
    Palette of Colour, colour {
        /// The ground.
        paper,
        /// Outlines, dimensions, text.
        ink,
        /// Grid lines and what stands behind.
        faint,
        /// Demand while opening.
        opening,
        /// Demand while closing.
        closing,
        /// What the operator can give.
        limit,
        /// The position looked at.
        cursor,
        /// The leaf.
        leaf,
        /// What is held back, and a hatching.
        third,
        /// What holds at a stand, and a hatching.
        fourth,
    }
}

table! {
    /// Words on the drawings; the page's string tables hold them in each language under `drawing`.
    Labels of String, text {
        /// Axis title, without unit.
        leaf_angle,
        /// Axis title, without unit.
        shaft_torque,
        /// On the curve of the demand while opening.
        opening,
        /// On the curve of the demand while closing.
        closing,
        /// Before the rated torque, on its line.
        rated,
        /// Axis title of the part of the rated torque that is asked for, with its unit.
        used,
        /// Before the peak torque, on its line.
        peak,
        /// At the closed leaf.
        closed,
        /// At the open leaf.
        open,
        /// At the hinge.
        hinge,
        /// On the line along the closed leaf through the hinge axis.
        axis_line,
        /// On the line square to it.
        hinge_line,
        /// On the line of the leaf's face.
        face_line,
        /// At the operator's shaft.
        shaft,
        /// At the end of the axis line that points to the latch.
        to_latch,
        /// Before the crank's length.
        crank,
        /// Before the link's length.
        link,
        /// The language's decimal mark.
        decimal,
        /// Axis title, without unit.
        time,
        /// Axis title, without unit.
        edge_speed,
        /// On the line of the motor opening.
        motor_opening,
        /// On the line of the motor closing.
        motor_closing,
        /// Where a motor comes to a stand.
        stalls,
        /// Where a motor comes to a stand and is pushed back.
        driven_back,
        /// Where a motor hardly moves the leaf any more.
        creeps,
        /// On the line of what is held back while opening.
        overrun_opening,
        /// On the line of what is held back while closing.
        overrun_closing,
        /// On the line of what holds the leaf at a stand.
        holding,
    }
}

impl Palette {
    /// The colour of an ink.
    pub(super) fn colour(&self, ink: Ink) -> RGBColor {
        match ink {
            Ink::Paper => self.paper.0,
            Ink::Plain => self.ink.0,
            Ink::Faint => self.faint.0,
            Ink::Opening => self.opening.0,
            Ink::Closing => self.closing.0,
            Ink::Limit => self.limit.0,
            Ink::Cursor => self.cursor.0,
            Ink::Leaf => self.leaf.0,
            Ink::Third => self.third.0,
            Ink::Fourth => self.fourth.0,
            Ink::Tint(share) => mix(self.paper.0, self.cursor.0, share),
        }
    }
}

/// A colour with some of another in it, of 255.
fn mix(ground: RGBColor, ink: RGBColor, share: u8) -> RGBColor {
    let part = |from: u8, to: u8| {
        let share = i32::from(share);
        ((i32::from(from) * (255 - share) + i32::from(to) * share) / 255) as u8
    };
    RGBColor(part(ground.0, ink.0), part(ground.1, ink.1), part(ground.2, ink.2))
}

/// Where the plot lies inside the canvas, CSS px: the page places its own handles by it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct PlotArea {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}
