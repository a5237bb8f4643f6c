//! What the page calls: decode, call, encode. No formula, no sentence.
//!
//! Types of the page come from the Rust types (`www/app/contract.d.ts`); signatures here name them, so that the declaration written
//! beside the wasm is as exact.

mod calculation;
mod codec;
mod functions;
mod links;
mod operators;
mod setout;

pub use calculation::Calculation;
pub use functions::{feet_inches, fields, mark, plain_number, read, show, show_limit, unit, version};
pub use links::{open_job, pack, qr, schema, unpack};
pub use operators::{Ranker, Seeking, operator_fields, read_operators};
pub use setout::{PadView, Pads, clearances, evaluate, limit_names, pareto_front, set_out};

use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  Clearances, Commissioning, CurvePoint, FieldRule, Invalid, Job, LeftOut, MarkApart, MarkOut, Operator, OperatorRanking, Pad, Plan, PlotArea, QrPath, Quantity, RankProgress, Rating, ReadError, ReadOperators, RunPoint, Sensitivity, SetOutAnswer, Stand, Suggestion, System, TapeCost, View,
} from "./app/contract.d.ts";
"#;
