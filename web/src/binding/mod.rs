//! What the page calls: decode, call, encode. No formula, no sentence.
//!
//! Types of the page come from the Rust types (`www/app/contract.d.ts`); signatures here name them, so that the declaration written
//! beside the wasm is as exact.

mod calculation;
mod codec;
mod functions;
mod links;
mod setout;

pub use calculation::Calculation;
pub use functions::{feet_inches, fields, mark, plain_number, read, show, show_limit, unit, version};
pub use links::{open_job, pack, qr, schema, unpack};
pub use setout::{PadView, Pads, clearances, evaluate, limit_names, pareto_front, set_out};

use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  Clearances, Commissioning, CurvePoint, FieldRule, Invalid, Job, LeftOut, MarkApart, MarkOut, Operator, Pad, Plan, PlotArea, QrPath, Quantity, Rating, ReadError, RunPoint, Sensitivity, SetOutAnswer, Stand, System, TapeCost, View,
} from "./app/contract.d.ts";
"#;
