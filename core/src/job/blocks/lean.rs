//! Lean of the hinge axis, and how far the leaf opens.

use crate::job::table::*;
use crate::units::Quantity::{Angle, Length, ShortLength};

block! {
    /// Lean of the hinge axis out of plumb.
    #[derive(Copy, Default)]
    pub struct Lean at "lean." or default {
        /// Lean out of plumb, degrees; default 0, or what the plumb line says.
        angle_deg: Option<f64> = assumed(Angle, 0.0, 15.0, 0.0).follows("plumb_offset_m").varied() => angle_said,
        /// Plan direction of downhill in the frame of the closed leaf, degrees; default 0. At rest the leaf hangs there.
        downhill_deg: Option<f64> = assumed_direction().varied() => downhill,
        /// Offset of a plumb line from the hinge axis, m, over the height below; instead of an angle.
        plumb_offset_m: Option<f64> = number(ShortLength, 0.0, 1.0, 0.01).varied(),
        /// Height over which the offset was measured, m.
        plumb_height_m: Option<f64> = number(Length, 0.1, 6.0, 1.5),
    }
}

block! {
    /// How far the leaf opens.
    #[derive(Copy)]
    pub struct Swing at "swing." {
        /// Leaf angle fully open, degrees from closed.
        open_deg: f64 = number(Angle, 1.0, 180.0, 90.0).varied(),
    }
}

impl Lean {
    /// Lean out of plumb, degrees.
    ///
    /// From a plumb line `λ = atan(offset/height)`, where no angle is given.
    #[must_use]
    pub fn angle(&self) -> f64 {
        let plumb = self.plumb_offset_m.zip(self.plumb_height_m);
        let plumb_deg = plumb.map(|(offset, height)| crate::real::atan2(offset, height).to_degrees());
        Lean { angle_deg: self.angle_deg.or(plumb_deg), ..*self }.angle_said()
    }

    /// A plumb line is an offset over a height, and instead of an angle.
    pub(in crate::job) fn relations(&self) -> Option<Fault> {
        match (self.angle_deg, self.plumb_offset_m, self.plumb_height_m) {
            (Some(angle), Some(_), _) => Some(Fault::said_twice("lean.angle_deg", angle)),
            (_, Some(_), None) => Some(const { Lean::BLOCK.number("plumb_height_m") }.half("lean.plumb_height_m")),
            (_, None, Some(_)) => Some(const { Lean::BLOCK.number("plumb_offset_m") }.half("lean.plumb_offset_m")),
            _ => None,
        }
    }
}
