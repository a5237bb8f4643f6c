//! Names of types: one meaning each.

use super::source::Crate;
use std::collections::BTreeMap;

/// Types whose name stands in more than one file, with those files.
pub fn twice(house: &Crate) -> Vec<String> {
    let mut places: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (file, name) in house.types() {
        places.entry(name).or_default().push(file);
    }
    places.retain(|_, files| files.len() > 1);
    places.into_iter().map(|(name, files)| format!("{name}: {}", files.join(", "))).collect()
}
