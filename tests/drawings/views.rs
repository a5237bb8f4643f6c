//! Ways to look at a drawing: sizes, units, colours and English words.

use pintle_core::Document;
use pintle_web::drawing::View;
use serde_json::{Value, json};

/// A view as the page hands it over.
pub fn view(width: f64, height: f64, leaf_deg: f64, system: &str) -> View {
    let mut view: Value = serde_json::from_str(include_str!("../../web/tests/common/view.json")).expect("JSON");
    view["width"] = json!(width);
    view["height"] = json!(height);
    view["leaf_deg"] = json!(leaf_deg);
    view["system"] = json!(system);
    let document: Document = serde_json::from_value(view).expect("JSON is a document");
    View::read(&document).expect("a view")
}
