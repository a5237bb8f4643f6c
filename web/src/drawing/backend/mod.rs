//! The two backends: what plotters' own ones lack for this page, and nothing else.
//!
//! Both draw on a grid finer than the px (plotters' coordinates are whole numbers) and know how wide a text will be.

#[cfg(target_arch = "wasm32")]
mod canvas;
mod svg;
mod widths;

#[cfg(target_arch = "wasm32")]
pub use canvas::FineCanvas;
pub use svg::{FineSvg, with_header};
pub use widths::width_em;
