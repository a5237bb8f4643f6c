//! Reading the hinges of every kind.

use super::reader::Node;
use super::types::{Hinges, MeasuredHinges, PlainHinges, RisingHinges, RollingHinges};
use crate::leaf::{Collar, Pairing};

/// The coefficient of friction as it may be said.
struct Friction {
    coefficient: Option<f64>,
    pairing: Option<Pairing>,
    low: Option<f64>,
    high: Option<f64>,
}

impl Friction {
    /// `None` where it is missing altogether, which has been reported.
    fn read(node: &Node) -> Option<Friction> {
        let friction = Friction {
            coefficient: node.number("friction_coefficient"),
            pairing: node.word("pairing", &Pairing::NAMES, false).map(|index| Pairing::ALL[index]),
            low: node.number("friction_low"),
            high: node.number("friction_high"),
        };
        (friction.coefficient.is_some() || friction.pairing.is_some()).then_some(friction)
    }
}

/// Pins and collar of plain and rising hinges.
fn read_plain(node: &Node) -> Option<PlainHinges> {
    let (spacing_m, pin_radius_m) = (node.number("spacing_m"), node.number("pin_radius_m"));
    let (outer, inner) = (node.number("thrust_outer_radius_m"), node.number("thrust_inner_radius_m"));
    let friction = Friction::read(node);
    let collar = node.word("collar", &Collar::NAMES, false).map(|index| Collar::ALL[index]);
    let friction = friction?;
    Some(PlainHinges {
        spacing_m: spacing_m?,
        pin_radius_m: pin_radius_m?,
        thrust_outer_radius_m: outer?,
        thrust_inner_radius_m: inner?,
        friction_coefficient: friction.coefficient,
        pairing: friction.pairing,
        friction_low: friction.low,
        friction_high: friction.high,
        collar,
    })
}

pub(super) fn read_hinges(node: Node) -> Option<Hinges> {
    // Without a kind it cannot be known which other fields belong here, so only the kind is reported.
    match node.word("kind", &["plain", "measured", "rolling", "rising"], true)? {
        0 => {
            let plain = read_plain(&node);
            node.close();
            Some(Hinges::Plain(plain?))
        }
        1 => {
            let (pull_open_n, pull_close_n) = (node.number("pull_open_n"), node.number("pull_close_n"));
            let (pull_radius_m, pull_leaf_deg) = (node.number("pull_radius_m"), node.number("pull_leaf_deg"));
            node.close();
            Some(Hinges::Measured(MeasuredHinges {
                pull_open_n: pull_open_n?,
                pull_close_n: pull_close_n?,
                pull_radius_m: pull_radius_m?,
                pull_leaf_deg: pull_leaf_deg?,
            }))
        }
        2 => {
            let (spacing_m, pin_radius_m) = (node.number("spacing_m"), node.number("pin_radius_m"));
            let friction = Friction::read(&node);
            node.close();
            let friction = friction?;
            Some(Hinges::Rolling(RollingHinges {
                spacing_m: spacing_m?,
                pin_radius_m: pin_radius_m?,
                friction_coefficient: friction.coefficient,
                pairing: friction.pairing,
                friction_low: friction.low,
                friction_high: friction.high,
            }))
        }
        _ => {
            let plain = read_plain(&node);
            let rise_m = node.number("rise_m");
            node.close();
            let plain = plain?;
            Some(Hinges::Rising(RisingHinges {
                spacing_m: plain.spacing_m,
                pin_radius_m: plain.pin_radius_m,
                thrust_outer_radius_m: plain.thrust_outer_radius_m,
                thrust_inner_radius_m: plain.thrust_inner_radius_m,
                friction_coefficient: plain.friction_coefficient,
                pairing: plain.pairing,
                friction_low: plain.friction_low,
                friction_high: plain.friction_high,
                collar: plain.collar,
                rise_m: rise_m?,
            }))
        }
    }
}
