//! Crank and link, as planned and as built.

use crate::job::table::*;
use crate::terms::words::words;
use crate::units::Quantity::ShortLength;

block! {
    /// Crank and link in plan, and where they are fixed.
    #[derive(Copy)]
    pub struct Arm at "arm." {
        /// Shaft along the closed leaf from the hinge line, m.
        shaft_x_m: f64 = number(ShortLength, -10.0, 10.0, -0.25).varied(),
        /// Shaft square to the closed leaf from the axis line, towards the side the leaf opens to, m.
        shaft_y_m: f64 = number(ShortLength, -10.0, 10.0, 0.45).varied(),
        /// Bracket pin along the leaf from the hinge line of the closed leaf, m.
        bracket_u_m: f64 = number(ShortLength, -10.0, 10.0, 1.2).varied(),
        /// Bracket pin square to the leaf from the axis line of the closed leaf, on its opening side, m.
        bracket_v_m: f64 = number(ShortLength, -10.0, 10.0, 0.06).varied(),
        /// Crank, shaft to elbow, m.
        crank_m: f64 = number(ShortLength, 0.02, 10.0, 0.8728).varied(),
        /// Link, elbow to bracket pin, m.
        link_m: f64 = number(ShortLength, 0.02, 10.0, 0.6363).varied(),
        /// Side of the line shaft→bracket the elbow is on.
        elbow: Elbow = word(Elbow::WORDS),
    }
}

words! {
    /// Side of the line from shaft to bracket, looking along it.
    pub enum Elbow {
        /// Counter-clockwise of the line.
        Left = "left",
        /// Clockwise of the line.
        Right = "right",
    }
}

block! {
    /// The arm as it was built; what is not said is as planned. The side of the elbow is not a matter of measuring.
    #[derive(Copy, Default)]
    pub struct AsBuilt at "as_built." {
        /// Line that what is square to the leaf was measured from: `shaft_y_m` and `bracket_v_m`; default the axis line, as for the arm.
        from: Option<BuiltFrom> = word(BuiltFrom::WORDS),
        /// Shaft along the closed leaf from the hinge axis, m.
        shaft_x_m: Option<f64> = number(ShortLength, -10.0, 10.0, -0.25),
        /// Shaft square to the closed leaf, towards the side it opens to, m from the line of `from`.
        shaft_y_m: Option<f64> = number(ShortLength, -10.0, 10.0, 0.45),
        /// Bracket pin along the leaf from the hinge axis, m.
        bracket_u_m: Option<f64> = number(ShortLength, -10.0, 10.0, 1.2),
        /// Bracket pin square to the leaf, towards its opening side, m from the line of `from`.
        bracket_v_m: Option<f64> = number(ShortLength, -10.0, 10.0, 0.06),
        /// Crank, shaft to elbow, m.
        crank_m: Option<f64> = number(ShortLength, 0.02, 10.0, 0.8728),
        /// Link, elbow to bracket pin, m.
        link_m: Option<f64> = number(ShortLength, 0.02, 10.0, 0.6363),
    }
}

words! {
    /// The line along the leaf that a built dimension was measured from.
    pub enum BuiltFrom {
        /// The axis line, as everything else.
        HingeAxis = "hinge_axis",
        /// The leaf's face on its opening side.
        LeafFace = "leaf_face",
    }
}

impl Elbow {
    /// +1 for `left` (along `ẑ × ê`), −1 for `right`.
    #[must_use]
    pub const fn side(self) -> f64 {
        match self {
            Elbow::Left => 1.0,
            Elbow::Right => -1.0,
        }
    }
}

impl Arm {
    /// Its lengths, m: shaft along and square to the closed leaf, bracket along and square to the leaf, crank, link.
    #[must_use]
    pub fn lengths_m(&self) -> [f64; 6] {
        [self.shaft_x_m, self.shaft_y_m, self.bracket_u_m, self.bracket_v_m, self.crank_m, self.link_m]
    }

    /// The arm of such lengths.
    #[must_use]
    pub fn of_lengths_m(lengths_m: [f64; 6], elbow: Elbow) -> Arm {
        let [shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m, link_m] = lengths_m;
        Arm { shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m, link_m, elbow }
    }

    /// Paths of the lengths, in their order.
    pub(crate) fn length_paths() -> [&'static str; 6] {
        core::array::from_fn(|i| Arm::BLOCK.fields[i].path)
    }
}

impl AsBuilt {
    /// What was measured of the lengths of [`Arm::lengths_m`], m, each from the line it was measured from.
    pub(crate) fn lengths_m(&self) -> [Option<f64>; 6] {
        [self.shaft_x_m, self.shaft_y_m, self.bracket_u_m, self.bracket_v_m, self.crank_m, self.link_m]
    }

    /// Paths of the lengths, in their order; the line stands before them.
    pub(crate) fn length_paths() -> [&'static str; 6] {
        core::array::from_fn(|i| AsBuilt::BLOCK.fields[i + 1].path)
    }

    /// The line that each length square to the leaf was measured from, from the hinge axis, m; the leaf's face is at `face_m`.
    pub(crate) fn lines_m(&self, face_m: f64) -> [Option<f64>; 6] {
        let line_m = Some(self.line_m(face_m));
        [None, line_m, None, line_m, None, None]
    }

    /// The line that was measured from, from the hinge axis, m, where the leaf's face is at `face_m`.
    #[must_use]
    pub fn line_m(&self, face_m: f64) -> f64 {
        match self.from {
            Some(BuiltFrom::LeafFace) => face_m,
            Some(BuiltFrom::HingeAxis) | None => 0.0,
        }
    }

    /// The planned arm with what was measured instead, from the hinge axis; the leaf's face is at `face_m`.
    #[must_use]
    pub fn arm(&self, planned: &Arm, face_m: f64) -> Arm {
        let (planned_m, lines_m) = (planned.lengths_m(), self.lines_m(face_m));
        let built_m = self.lengths_m();
        let from_axis = |i: usize, measured_m: f64| lines_m[i].map_or(measured_m, |line_m| measured_m + line_m);
        let length_m = |i: usize| built_m[i].map_or(planned_m[i], |measured_m| from_axis(i, measured_m));
        Arm::of_lengths_m(core::array::from_fn(length_m), planned.elbow)
    }
}
