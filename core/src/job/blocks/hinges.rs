//! What resists at the hinges.

use crate::elements::{Collar, FrictionRange, Pairing};
use crate::job::table::*;
use crate::units::Quantity::{Angle, Force, Length, Ratio, ShortLength};

choice! {
    /// What resists at the hinges: built up from pins and collar, or measured.
    #[derive(Copy)]
    pub enum Hinges by "kind" {
        /// Two plain pins and one thrust collar.
        Plain(PlainHinges) = "plain",
        /// Steady pulls both ways: the preferred way.
        Measured(MeasuredHinges) = "measured",
        /// Rolling bearings.
        Rolling(RollingHinges) = "rolling",
        /// Plain hinges that lift the leaf as it opens.
        Rising(RisingHinges) = "rising",
    }
}

/// Declares hinges that turn with friction: rows of their own, the coefficient's, further rows of their own. Rows are read in this order.
macro_rules! with_friction {
    (
        $(#[doc = $about:literal])*
        pub struct $block:ident { $($before:tt)* } and { $($after:tt)* }
    ) => {
        block! {
            $(#[doc = $about])*
            #[derive(Copy)]
            pub struct $block at "hinges." {
                /// Vertical distance between the hinges, m.
                spacing_m: f64 = number(Length, 0.1, 6.0, 1.3).varied(),
                $($before)*
                /// Coefficient of friction; unless `pairing` says what slides on what.
                friction_coefficient: Option<f64> = number(Ratio, 0.0, 1.0, 0.2).unless("pairing").varied(),
                /// What slides on what: a handbook range.
                pairing: Option<Pairing> = word(Pairing::WORDS),
                /// Lower end of the coefficient.
                friction_low: Option<f64> = number(Ratio, 0.0, 1.0, 0.1),
                /// Upper end of the coefficient.
                friction_high: Option<f64> = number(Ratio, 0.0, 1.0, 0.3),
                $($after)*
            }
        }

        impl $block {
            /// Coefficient with its uncertainty: what is said goes before the handbook.
            fn friction_range(&self) -> FrictionRange {
                let book = self.pairing.map(Pairing::friction);
                let likely = self.friction_coefficient.or(book.map(|range| range.likely)).unwrap_or(0.0);
                // A likely value beside the handbook's range widens it.
                let low = self.friction_low.or(book.map(|range| range.low)).map_or(likely, |low| low.min(likely));
                let high = self.friction_high.or(book.map(|range| range.high)).map_or(likely, |high| high.max(likely));
                FrictionRange { low, likely, high }
            }
        }
    };
}

with_friction! {
    /// Two plain hinge pins a spacing apart, and a collar that carries the weight.
    pub struct PlainHinges {
        /// Radius of the pins, m.
        pin_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.012).varied(),
        /// Outer radius of the thrust collar, m.
        thrust_outer_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.02).varied(),
        /// Inner radius of the thrust collar, m.
        thrust_inner_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.012).varied(),
    } and {
        /// How the collar carries; default uniform pressure, the careful case.
        collar: Option<Collar> = word(Collar::WORDS).listed(),
    }
}

with_friction! {
    /// Two rolling radial bearings a spacing apart, and a thrust bearing of the same radius.
    pub struct RollingHinges {
        /// Half the bore of the bearings, m.
        pin_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.012).varied(),
    } and {}
}

with_friction! {
    /// Plain hinges on a ramp: the leaf rises evenly as it opens, and wants to fall shut. The collar slides on the ramp, at its mean radius of
    /// friction; a ramp so steep that it binds at the upper end of the friction is refused.
    pub struct RisingHinges {
        /// Radius of the pins, m.
        pin_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.012).varied(),
        /// Outer radius of the thrust collar, m.
        thrust_outer_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.02).varied(),
        /// Inner radius of the thrust collar, m.
        thrust_inner_radius_m: f64 = number(ShortLength, 0.001, 0.2, 0.012).varied(),
    } and {
        /// How the collar carries; default uniform pressure, the careful case.
        collar: Option<Collar> = word(Collar::WORDS).listed(),
        /// Rise of the leaf from closed to open, m; negative where it falls open.
        rise_m: f64 = number(ShortLength, -0.5, 0.5, 0.04).varied(),
    }
}

block! {
    /// Steady pulls both ways at one leaf angle, square to the leaf, arm disconnected, calm air.
    #[derive(Copy)]
    pub struct MeasuredHinges at "hinges." {
        /// Pull that keeps the leaf opening, N.
        pull_open_n: f64 = number(Force, 0.0, 5000.0, 45.0).varied(),
        /// Pull that keeps the leaf closing, N.
        pull_close_n: f64 = number(Force, 0.0, 5000.0, 41.0).varied(),
        /// Hinge axis to where the pull acts, m.
        pull_radius_m: f64 = number(Length, 0.05, 15.0, 3.0).varied(),
        /// Leaf angle at which it was measured, degrees.
        pull_leaf_deg: f64 = number(Angle, 0.0, 180.0, 45.0),
    }
}

impl Hinges {
    /// Coefficient with its uncertainty, where one is used.
    #[must_use]
    pub fn friction_range(&self) -> Option<FrictionRange> {
        match self {
            Hinges::Plain(hinges) => Some(hinges.friction_range()),
            Hinges::Rolling(hinges) => Some(hinges.friction_range()),
            Hinges::Rising(hinges) => Some(hinges.friction_range()),
            Hinges::Measured(_) => None,
        }
    }

    /// Whether a range of the coefficient was said, and not only one value.
    pub(crate) fn has_friction_range(&self) -> bool {
        self.friction_range().is_some_and(|range| range.low < range.likely || range.likely < range.high)
    }

    /// A collar inside out.
    pub(in crate::job) fn relations(&self) -> Option<Fault> {
        let (outer, inner) = match self {
            Hinges::Plain(plain) => (plain.thrust_outer_radius_m, plain.thrust_inner_radius_m),
            Hinges::Rising(rising) => (rising.thrust_outer_radius_m, rising.thrust_inner_radius_m),
            Hinges::Measured(_) | Hinges::Rolling(_) => return None,
        };
        let row = const { PlainHinges::BLOCK.number("thrust_outer_radius_m") };
        let allowed = Number { least: Some(inner), ..row }.allowed();
        let fault = Fault::number("hinges.thrust_outer_radius_m", FaultCode::OuterBelowInner, outer, allowed);
        (outer < inner).then(|| fault.example(Example::Number(inner)))
    }
}
