//! What one step of a method gives.

/// One step tried: the result, the estimate of its error, the slope at the result.
pub struct StepTrial<const N: usize> {
    pub next: [f64; N],
    pub error: [f64; N],
    pub slope: [f64; N],
}
