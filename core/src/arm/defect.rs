//! Why an arm does not work, and at which leaf angle; exact over the continuous swing, not sampled.

use super::Linkage;
use super::linkage::ASSEMBLY_M;
use crate::Document;
use crate::fault::{Allowed, Example, Fault, FaultCode, NamedValue};
use crate::job::Arm;
use crate::real::atan2;
use crate::units::Quantity;
use alloc::vec::Vec;
use core::f64::consts::PI;
use core::fmt::{self, Display, Formatter};

/// What is wrong with an arm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DefectKind {
    /// Crank and link together do not reach; the gap is how much is short.
    TooShort,
    /// Crank and link differ too much to fold; the gap is how much the longer is too long.
    TooLong,
    /// Straight or folded strictly inside the swing.
    DeadPointInside,
    /// The link's line passes through the hinge.
    TurnsBack,
    /// Straight or folded with shaft, hinge and bracket in line.
    Undetermined,
}

/// A reason why an arm does not work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Defect {
    /// What is wrong.
    pub kind: DefectKind,
    /// Leaf angle where it is worst, rad.
    pub leaf_rad: f64,
    /// Missing or excess length there, m; 0 where no length is missing.
    pub gap_m: f64,
}

/// For a programmer's log; people get sentences from the string tables.
impl Display for Defect {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        let what = match self.kind {
            DefectKind::TooShort => "crank and link do not reach",
            DefectKind::TooLong => "crank and link do not fold so far",
            DefectKind::DeadPointInside => "straight or folded inside the swing",
            DefectKind::TurnsBack => "the link's line passes through the hinge",
            DefectKind::Undetermined => "straight or folded in line with the hinge",
        };
        write!(f, "{what}, leaf at {} rad", self.leaf_rad)?;
        if self.gap_m > 0.0 { write!(f, ", by {} m", self.gap_m) } else { Ok(()) }
    }
}

impl core::error::Error for Defect {}

impl Linkage {
    /// The first reason why the arm does not work in its swing, `None` if it does.
    ///
    /// Everything follows from closed forms in `γ`, so nothing between two samples can be missed:
    /// - `d² = r² + s² − 2rs·cos γ` is extreme at the ends and at `γ = 0, π`;
    /// - the link's line passes through the hinge where `E = (1 ∓ b/r)·P`, that is where
    ///   `cos γ = (q² + s² − a²)/(2qs)` with `q = r ∓ b`.
    #[must_use]
    pub fn defect(&self) -> Option<Defect> {
        self.assembly_defect().or_else(|| self.passage_defect())
    }

    fn reach_m(&self, leaf_rad: f64) -> f64 {
        let (r, s) = (self.bracket_radius_m, self.shaft_radius_m);
        let difference = r - s;
        // r² + s² − 2rs·cos γ = (r − s)² + 4rs·sin²(γ/2), without cancellation.
        let half = crate::real::sin(self.offset_rad(leaf_rad) / 2.0);
        crate::real::sqrt(difference * difference + 4.0 * r * s * half * half)
    }

    fn assembly_defect(&self) -> Option<Defect> {
        let (longest, shortest) = (self.crank_m + self.link_m, (self.crank_m - self.link_m).abs());
        let inside: Vec<f64> = self.leaf_angles_at_offset(0.0).chain(self.leaf_angles_at_offset(PI)).collect();
        let worst = [0.0, self.open_rad]
            .into_iter()
            .chain(inside.iter().copied())
            .map(|leaf_rad| {
                let d = self.reach_m(leaf_rad);
                if d - longest > shortest - d {
                    Defect { kind: DefectKind::TooShort, leaf_rad, gap_m: d - longest }
                } else {
                    Defect { kind: DefectKind::TooLong, leaf_rad, gap_m: shortest - d }
                }
            })
            .max_by(|one, other| one.gap_m.total_cmp(&other.gap_m))?;
        if worst.gap_m > ASSEMBLY_M {
            return Some(worst);
        }
        // An extreme reach that only just assembles: the arm is straight or folded there, in line with the hinge.
        inside
            .into_iter()
            .find(|&leaf_rad| {
                let d = self.reach_m(leaf_rad);
                longest - d <= ASSEMBLY_M || d - shortest <= ASSEMBLY_M
            })
            .map(|leaf_rad| Defect { kind: DefectKind::DeadPointInside, leaf_rad, gap_m: 0.0 })
    }

    /// Leaf angles strictly inside the swing where the link's line could pass through the hinge, on either branch.
    fn passages(&self) -> impl Iterator<Item = f64> {
        let (r, s, a) = (self.bracket_radius_m, self.shaft_radius_m, self.crank_m);
        [r - self.link_m, r + self.link_m].into_iter().flat_map(move |q| {
            let cosine = (q * q + s * s - a * a) / (2.0 * q * s);
            // Noise of a tangent passage may carry the cosine past one; a passage that is not one is sorted out by the lever.
            let offset = (cosine.abs() <= 1.0 + 1e-12).then(|| {
                let cosine = cosine.clamp(-1.0, 1.0);
                atan2(crate::real::sqrt(1.0 - cosine * cosine), cosine)
            });
            offset
                .into_iter()
                .flat_map(|offset| [offset, -offset])
                .flat_map(|offset| self.leaf_angles_at_offset(offset))
        })
    }

    fn passage_defect(&self) -> Option<Defect> {
        let at = |leaf_rad: f64| {
            let pose = self.leverage(leaf_rad);
            (pose.lever_m() <= ASSEMBLY_M).then(|| {
                let kind = if pose.ratio.is_none() { DefectKind::Undetermined } else { DefectKind::TurnsBack };
                Defect { kind, leaf_rad, gap_m: 0.0 }
            })
        };
        let mut stations: Vec<f64> = alloc::vec![0.0, self.open_rad];
        for leaf_rad in self.passages() {
            let place = stations.iter().position(|&station| station > leaf_rad).unwrap_or(stations.len());
            stations.insert(place, leaf_rad);
        }
        if let Some(defect) = stations.iter().find_map(|&leaf_rad| at(leaf_rad)) {
            return Some(defect);
        }
        // Where the lever is steep its zero may lie further than the tolerance from the computed angle: its sign tells.
        let opening = |leaf_rad: f64| self.leverage(leaf_rad).signed_lever_m > 0.0;
        stations.windows(2).find_map(|pair| {
            let changes = opening(pair[0]) != opening(0.5 * (pair[0] + pair[1]))
                || opening(0.5 * (pair[0] + pair[1])) != opening(pair[1]);
            changes.then(|| Defect {
                kind: DefectKind::TurnsBack,
                leaf_rad: if pair[0] > 0.0 { pair[0] } else { pair[1] },
                gap_m: 0.0,
            })
        })
    }
}

impl Defect {
    /// The fault a person is told: at the length to change, with the range that would do where only a length is in the way.
    pub(crate) fn fault(&self, arm: &Arm) -> Fault {
        let crank = ("arm.crank_m", arm.crank_m);
        let link = ("arm.link_m", arm.link_m);
        let longer = if arm.crank_m > arm.link_m { crank } else { link };
        let ((path, length_m), code) = match self.kind {
            DefectKind::TooShort => (link, FaultCode::ArmTooShort),
            DefectKind::TooLong => (longer, FaultCode::ArmTooLong),
            DefectKind::DeadPointInside => (link, FaultCode::DeadPointInside),
            DefectKind::TurnsBack => (crank, FaultCode::TurnsBack),
            DefectKind::Undetermined => (("arm.shaft_y_m", arm.shaft_y_m), FaultCode::Undetermined),
        };
        let (least, most) = match self.kind {
            DefectKind::TooShort => (Some(length_m + self.gap_m), None),
            DefectKind::TooLong => (None, Some(length_m - self.gap_m)),
            _ => (None, None),
        };
        let mut fault = Fault::new(path, code).found(&Document::Number(length_m));
        if let Some(length_m) = least.or(most) {
            fault = fault
                .allowed(Allowed::Range { least, most, quantity: Quantity::ShortLength })
                .example(Example::Number(length_m));
        }
        let mut values = alloc::vec![NamedValue::leaf_angle(self.leaf_rad)];
        if self.gap_m > 0.0 {
            values.push(NamedValue { name: "gap", value: self.gap_m, quantity: Quantity::ShortLength });
        }
        fault.values(values)
    }
}
