//! Shared parts of the tests.

pub mod documents;
#[cfg(feature = "browser")]
pub mod harness;

use pintle_core::job::{Arm, Elbow};
use std::path::Path;

/// A value with some of its fields said anew: `changed!(job.clone(), arm: Some(arm), samples: Some(3))`. Documents may grow, so that code
/// outside the core cannot write one out in full.
#[macro_export]
macro_rules! changed {
    ($base:expr, $($field:ident $(: $value:expr)?),+ $(,)?) => {{
        let mut changed = $base;
        $($crate::changed!(@ changed $field $($value)?);)+
        changed
    }};
    (@ $changed:ident $field:ident $value:expr) => {
        $changed.$field = $value
    };
    (@ $changed:ident $field:ident) => {
        $changed.$field = $field
    };
}

/// The gate's arm on which three multibody engines agreed (`published/gate_arm.rs` has what they say). Their branch `φ = direction of shaft→bracket
/// + interior angle at the shaft` is the elbow at the left.
#[must_use]
pub fn gate_arm() -> Arm {
    Arm::builder()
        .shaft_x_m(-0.25)
        .shaft_y_m(0.35)
        .bracket_u_m(0.9)
        .bracket_v_m(0.0)
        .crank_m(0.5)
        .link_m(0.75)
        .elbow(Elbow::Left)
        .build()
}

/// Holds a generated file to what it is generated from; `PINTLE_BLESS=1` writes it anew instead.
///
/// `path` is relative to this crate's folder.
///
/// # Panics
/// If the file differs and is not to be written.
pub fn kept_in_step(path: &str, text: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    if std::env::var_os("PINTLE_BLESS").is_some() {
        if let Some(folder) = path.parent() {
            std::fs::create_dir_all(folder).expect("the folder can be made");
        }
        std::fs::write(&path, text).expect("the generated file can be written");
        return;
    }
    let stands = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        stands == text,
        "{} is stale: run the tests once with PINTLE_BLESS=1 and read what changed",
        path.display()
    );
}

mod around;
pub use around::around;
