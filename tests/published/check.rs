//! One published check: what a source prints, and what the crate computes for the same inputs.

/// How the expected value was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Provenance {
    /// Read in the named source.
    Seen,
    /// From memory: the source itself was not at hand.
    FromMemory,
    /// Worked out from the named relation outside this crate.
    Derived,
    /// What the trade does; no source.
    CommonPractice,
}

impl Provenance {
    pub const fn word(self) -> &'static str {
        match self {
            Provenance::Seen => "seen",
            Provenance::FromMemory => "from memory",
            Provenance::Derived => "derived",
            Provenance::CommonPractice => "common practice",
        }
    }
}

/// How far the computed value may lie from the printed one.
#[derive(Clone, Copy, Debug)]
pub enum Tolerance {
    /// Half a unit of the last printed digit: all that a printed number says.
    HalfLastDigit,
    /// Wider, in the printed number's unit, and why.
    Stated { value: f64, reason: &'static str },
}

/// One row of the table.
pub struct Check {
    /// Number in the list of reference values, then what tells rows of one number apart.
    pub id: &'static str,
    /// Inputs and result, with units.
    pub what: &'static str,
    /// Where it is printed.
    pub source: &'static str,
    /// Where in the source, or the relation used.
    pub clause: &'static str,
    pub provenance: Provenance,
    /// As printed: its digits set the tolerance.
    pub expected: &'static str,
    pub computed: fn() -> f64,
    pub tolerance: Tolerance,
}

/// A row that holds to half of the last printed digit.
pub const fn check(
    id: &'static str,
    what: &'static str,
    (source, clause): (&'static str, &'static str),
    provenance: Provenance,
    expected: &'static str,
    computed: fn() -> f64,
) -> Check {
    Check { id, what, source, clause, provenance, expected, computed, tolerance: Tolerance::HalfLastDigit }
}

impl Check {
    /// The same row with a wider tolerance.
    pub const fn within(mut self, value: f64, reason: &'static str) -> Check {
        self.tolerance = Tolerance::Stated { value, reason };
        self
    }

    /// The printed number.
    pub fn expected(&self) -> f64 {
        self.expected.parse().unwrap_or_else(|_| panic!("{}: {:?} is not a number", self.id, self.expected))
    }

    /// Digits behind the decimal point.
    pub fn decimals(&self) -> usize {
        self.expected.split_once('.').map_or(0, |(_, behind)| behind.len())
    }

    pub fn tolerance(&self) -> f64 {
        match self.tolerance {
            Tolerance::HalfLastDigit => 0.5 * 10f64.powi(-(self.decimals() as i32)),
            Tolerance::Stated { value, .. } => value,
        }
    }

    /// Deviation over tolerance: at most 1 where the check holds.
    pub fn share(&self) -> f64 {
        // A result that falls on the half digit is still a correct rounding; subtraction's own noise must not refuse it.
        let deviation = ((self.computed)() - self.expected()).abs();
        (deviation - 4.0 * f64::EPSILON * self.expected().abs()).max(0.0) / self.tolerance()
    }

    pub fn holds(&self) -> bool {
        self.share() <= 1.0
    }
}
