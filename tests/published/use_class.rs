//! Class of use: ASTM F2200-20, abstract (seen at standards.iteh.ai), the classes' own words turned into cases.

use pintle_core::safety::{UseClass, use_class};

#[test]
fn the_classes_are_those_of_the_abstract() {
    for (public, guarded, homes, class) in [
        // I: a home of one to four families.
        (Some(false), Some(false), Some(1), Some(UseClass::I)),
        (Some(false), Some(false), Some(4), Some(UseClass::I)),
        // II: commercial or general public; five families and more.
        (Some(false), Some(false), Some(5), Some(UseClass::II)),
        (Some(true), Some(false), Some(0), Some(UseClass::II)),
        (Some(true), Some(true), None, Some(UseClass::II)),
        // III: industrial, not serving the public.
        (Some(false), Some(false), Some(0), Some(UseClass::III)),
        // IV: guarded, staff prevent access.
        (Some(false), Some(true), Some(0), Some(UseClass::IV)),
        // A guarded home stays a home: IV is "a guarded industrial location […] or other restricted access locations".
        (Some(false), Some(true), Some(1), Some(UseClass::I)),
        (Some(false), Some(true), Some(5), Some(UseClass::II)),
        (Some(false), None, Some(1), Some(UseClass::I)),
        // Nothing is assumed: an answer that decides is asked for.
        (None, Some(true), Some(1), None),
        (Some(false), None, Some(0), None),
        (Some(false), Some(true), None, None),
        (Some(false), Some(false), None, None),
    ] {
        assert_eq!(use_class(public, guarded, homes), class, "{public:?} {guarded:?} {homes:?}");
    }
}
