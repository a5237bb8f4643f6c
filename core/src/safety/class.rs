//! Class of use, from three questions about the site.

use serde::Serialize;

/// Class of a powered vehicular gate by who comes near it. Source: ASTM F2200-20, abstract (the same in UL 325).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum UseClass {
    /// A home of one to four families.
    I,
    /// A commercial place or one open to the general public; five families and more.
    II,
    /// An industrial place that does not serve the public.
    III,
    /// A guarded industrial place, or another of restricted access that does not serve the public, whose security staff prevent access.
    IV,
}

/// The class the answers lead to, `None` while an answer that decides it is missing.
///
/// Wherever the public comes, or five families and more live, it is II, however it is guarded. A home of one to four families is I, guarded or
/// not: IV is "a guarded industrial location […] or other restricted access locations". Only where no home is served do guards decide.
/// Source: ASTM F2200-20, abstract.
#[must_use]
pub fn use_class(public: Option<bool>, guarded: Option<bool>, homes: Option<u32>) -> Option<UseClass> {
    if homes.is_some_and(|homes| homes >= 5) || public? {
        return Some(UseClass::II);
    }
    if homes? > 0 {
        return Some(UseClass::I);
    }
    Some(if guarded? { UseClass::IV } else { UseClass::III })
}
