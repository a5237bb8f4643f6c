//! Pintle in the browser: the binding and the drawings.
//!
//! The binding decodes, calls the core and encodes; it holds no formula. The drawings are laid out once and painted on a canvas of
//! the page or, natively too, as SVG.

pub mod drawing;

#[cfg(target_arch = "wasm32")]
mod binding;
#[cfg(target_arch = "wasm32")]
pub use binding::*;
