//! What of its work a transmission lets through, either way.

/// Parts of the work that pass, by who drives whom.
///
/// Losses help whoever is driven: a moment `T` behind a transmission asks for `T/forward` before it where it is driven, and for `T·back` where it
/// drives. A worm or a screw of lead angle λ and angle of friction φ has `forward = tan λ/tan(λ + φ)` and `back = tan(λ − φ)/tan λ`; where λ ≤ φ,
/// `tan λ ≤ μ`, nothing passes back, whatever drives it. Source: virtual work; screws in any text of machine design.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Efficiency {
    /// While the shaft drives the leaf, more than 0, at most 1.
    pub forward: f64,
    /// While the leaf drives the shaft, 0 (nothing passes) to 1.
    pub back: f64,
}

impl Efficiency {
    /// The same one where nothing passes back: what is behind can hold nothing of it, nor drive it.
    #[must_use]
    pub(crate) fn not_back(self) -> Efficiency {
        Efficiency { back: 0.0, ..self }
    }

    /// What of a moment behind it is felt before it: more than that while it is driven, less while it drives.
    #[must_use]
    pub(crate) fn share(self, driving: bool) -> f64 {
        if driving { 1.0 / self.forward } else { self.back }
    }
}
