//! Where a limit runs across the curve.

/// One line of a limit, on the side of a sign.
pub(super) struct LimitLine {
    /// Height on the surface.
    pub y: f64,
    /// The torque, N·m, without sign.
    pub torque: f64,
    /// Whether it is the rated torque; else the peak.
    pub rated: bool,
}
