//! What the page calls: decode, call, encode. No formula, no sentence.
//!
//! Types of the page come from the Rust types (`www/app/contract.d.ts`); signatures here name them, so that the declaration written
//! beside the wasm is as exact. What the first verdict needs (`page`) and what the search's worker needs (`search`) travel as two modules.

mod codec;
mod setout;

#[cfg(feature = "page")]
mod calculation;
#[cfg(feature = "page")]
mod functions;
#[cfg(feature = "page")]
mod links;
#[cfg(feature = "page")]
mod operators;
#[cfg(feature = "page")]
mod pad_view;
#[cfg(feature = "search")]
mod ranking;
#[cfg(feature = "search")]
mod search;
#[cfg(feature = "page")]
mod view;

pub use setout::evaluate;
#[cfg(feature = "page")]
pub use {
    calculation::Calculation,
    functions::{feet_inches, fields, mark, plain_number, read, show, show_limit, unit, version},
    links::{open_job, pack, qr, schema, unpack},
    operators::{OperatorReader, operator_fields, read_operators},
    pad_view::{PadView, limit_names},
    setout::clearances,
};
#[cfg(feature = "search")]
pub use {
    ranking::Ranker,
    search::{Pads, Seeking, pareto_front},
};

use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  Clearances, Commissioning, CurvePoint, FieldRule, Invalid, Job, LeftOut, MarkApart, MarkOut, OperatorRanking, Pad, Plan, PlotArea, QrPath, Quantity, RankProgress, ReadError, ReadOperators, RunPoint, Sensitivity, SetOutAnswer, Stand, Suggestion, System, TapeCost, View,
} from "./app/contract.d.ts";
"#;
