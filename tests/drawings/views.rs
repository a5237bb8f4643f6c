//! Ways to look at a drawing: sizes, units, colours and English words.

use pintle_core::Document;
use pintle_web::drawing::View;
use serde_json::{Value, json};

/// A view as the page hands it over.
pub fn view(width: f64, height: f64, leaf_deg: f64, system: &str) -> View {
    changed(width, height, leaf_deg, system, &[])
}

/// The same with fields replaced.
pub fn changed(width: f64, height: f64, leaf_deg: f64, system: &str, changes: &[(&str, Value)]) -> View {
    let mut view: Value = serde_json::from_str(include_str!("../../web/tests/common/view.json")).expect("JSON");
    view["width"] = json!(width);
    view["height"] = json!(height);
    view["leaf_deg"] = json!(leaf_deg);
    view["system"] = json!(system);
    for (field, value) in changes {
        view[field] = value.clone();
    }
    let document: Document = serde_json::from_value(view).expect("JSON is a document");
    View::read(&document).expect("a view")
}
