//! Pintle in the browser: the binding and the drawings.
//!
//! The binding decodes, calls the core and encodes; it holds no formula. The drawings are laid out once and painted on a canvas of
//! the page or, natively too, as SVG.

pub mod drawing;

#[cfg(target_arch = "wasm32")]
mod binding;
#[cfg(target_arch = "wasm32")]
pub use binding::{
    Calculation, PadView, Pads, Ranker, Seeking, clearances, evaluate, feet_inches, fields, limit_names, mark,
    open_job, operator_fields, pack, pareto_front, plain_number, qr, read, read_operators, schema, set_out, show,
    show_limit, unit, unpack, version,
};
