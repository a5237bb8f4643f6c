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
}

/// What a check shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A result that was read in a source, for inputs the source states: the crate works it out from them.
    PrintedResult,
    /// A source's result, quoted from memory.
    RememberedResult,
    /// A number that was read in a source and that the crate holds: only the copying is checked.
    TableSeen,
    /// A number of a source that both this table and the crate have from memory: it shows that they say the same, no more.
    TableFromMemory,
    /// Worked out outside this crate: by hand, a closed form, another program.
    WorkedOut,
}

impl Kind {
    pub const ALL: [Kind; 5] =
        [Kind::PrintedResult, Kind::RememberedResult, Kind::TableSeen, Kind::TableFromMemory, Kind::WorkedOut];

    pub const fn word(self) -> &'static str {
        match self {
            Kind::PrintedResult => "printed result",
            Kind::RememberedResult => "remembered result",
            Kind::TableSeen => "repeated table, seen",
            Kind::TableFromMemory => "repeated table, from memory",
            Kind::WorkedOut => "worked out elsewhere",
        }
    }
}

/// How far the computed value may lie from the printed one.
#[derive(Clone, Copy, Debug)]
pub enum Tolerance {
    /// Half a unit of the last printed digit: all that a printed number says. A number that is held has to be the printed one.
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
    /// As printed, decimal comma or point: its digits set the tolerance.
    pub expected: &'static str,
    pub computed: fn() -> f64,
    pub tolerance: Tolerance,
    /// The crate holds the number instead of working it out.
    pub held: bool,
    /// Why a result that meets its digits to the last bit is worked out all the same.
    pub exact: Option<&'static str>,
}

/// A row that holds to half of the last printed digit. What is [`Seen`](Provenance::Seen) or remembered counts as a result the crate works
/// out, unless [`Check::repeated`] says that the crate merely holds it.
pub const fn check(
    id: &'static str,
    what: &'static str,
    (source, clause): (&'static str, &'static str),
    provenance: Provenance,
    expected: &'static str,
    computed: fn() -> f64,
) -> Check {
    let tolerance = Tolerance::HalfLastDigit;
    Check { id, what, source, clause, provenance, expected, computed, tolerance, held: false, exact: None }
}

impl Check {
    /// The same row with a wider tolerance.
    pub const fn within(mut self, value: f64, reason: &'static str) -> Check {
        self.tolerance = Tolerance::Stated { value, reason };
        self
    }

    /// A tabulated number that the crate holds and repeats.
    pub const fn repeated(mut self) -> Check {
        self.held = true;
        self
    }

    /// A result that is worked out and happens to meet its printed digits to the last bit, and how.
    pub const fn exact(mut self, reason: &'static str) -> Check {
        self.exact = Some(reason);
        self
    }

    pub const fn kind(&self) -> Kind {
        match (self.provenance, self.held) {
            (Provenance::Seen, false) => Kind::PrintedResult,
            (Provenance::FromMemory, false) => Kind::RememberedResult,
            (Provenance::Seen, true) => Kind::TableSeen,
            (Provenance::FromMemory, true) => Kind::TableFromMemory,
            (Provenance::Derived, _) => Kind::WorkedOut,
        }
    }

    /// The printed number.
    pub fn expected(&self) -> f64 {
        let point = self.expected.replace(',', ".");
        point.parse().unwrap_or_else(|_| panic!("{}: {:?} is not a number", self.id, self.expected))
    }

    /// Digits behind the decimal mark.
    pub fn decimals(&self) -> usize {
        self.expected.split_once(['.', ',']).map_or(0, |(_, behind)| behind.len())
    }

    pub fn tolerance(&self) -> f64 {
        match self.tolerance {
            // What is held is not rounded again.
            Tolerance::HalfLastDigit if self.held => 1e-9 * self.expected().abs().max(1e-3),
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

    /// Whether the computed value is the printed one but for rounding noise, as a number is that was copied from it.
    pub fn is_the_digits(&self, noise: f64) -> bool {
        ((self.computed)() - self.expected()).abs() <= noise * self.expected().abs()
    }
}
