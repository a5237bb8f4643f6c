//! Where a wind's relations and tables come from, by name and edition.

use crate::job::{Wind, WindFrom, WindShape};
use crate::safety::{Source, SourceProvenance};
use crate::terms::Asce7Edition;
use alloc::vec::Vec;

const fn from_memory(name: &'static str) -> Source {
    Source { name, provenance: SourceProvenance::FromMemory, superseded: false }
}

const fn seen(name: &'static str) -> Source {
    Source { name, provenance: SourceProvenance::Seen, superseded: false }
}

/// Recommended values: the national annex of the country replaces them and goes first.
const EN_1991: Source = from_memory("EN 1991-1-4:2005 + A1:2010, recommended values");
const BEAUFORT: Source = seen("WMO Beaufort scale");
const SLANT: Source = seen("Hoerner, Fluid-Dynamic Lift, ch. XXI eq. 2");
const ASCE_FIGURES: Source = from_memory("ASCE 7-16 Figs 29.3-1, 29.4-2");

/// Each once, in the order pressure, shape, bearing; none for what was typed.
pub(super) fn sources(wind: &Wind) -> Vec<Source> {
    let pressure = wind.from.as_ref().map(|from| match from {
        WindFrom::Beaufort(_) => BEAUFORT,
        WindFrom::En1991(_) => EN_1991,
        WindFrom::Asce7(wind) => from_memory(match wind.edition {
            Asce7Edition::E05 => "ASCE 7-05",
            Asce7Edition::E10 => "ASCE 7-10",
            Asce7Edition::E16 => "ASCE 7-16",
            Asce7Edition::E22 => "ASCE 7-22",
        }),
    });
    let shape = wind.shape.as_ref().map(|shape| match shape {
        WindShape::En1991Wall(_) | WindShape::En1991Lattice(_) => EN_1991,
        WindShape::Asce7Wall(_) | WindShape::Asce7Open(_) => ASCE_FIGURES,
    });
    let mut sources: Vec<Source> = pressure.into_iter().chain(shape.filter(|shape| Some(*shape) != pressure)).collect();
    sources.extend(wind.bearing_deg.map(|_| SLANT));
    sources
}
