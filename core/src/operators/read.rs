//! The reader of a list: every fault of every entry at once, and the entries that have none.

use super::ListedOperator;
use super::list::{ITEM, MOST_OPERATORS, OperatorList};
use super::meant::{doubtful, told_by_unit};
use super::nearest::nearest;
use crate::Document;
use crate::fault::{Allowed, Example, Fault, FaultCode, LeftOut, NamedValue};
use crate::job::OperatorBody;
use crate::job::table::{Reading, Value};
use crate::units::Quantity;
use alloc::{collections::BTreeMap, format, string::String, vec::Vec};
use serde::Serialize;

/// What was read of a list.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ReadOperators {
    /// What the list is called.
    pub title: Option<String>,
    /// Entries that can be used, in the list's order.
    pub operators: Vec<ListEntry>,
    /// Entries that cannot, each with all its faults; or the title, or the whole list, by its path.
    pub left_out: Vec<LeftOut>,
    /// What was taken and is hardly meant: keys that are not known (`example` is the known one most like it), torques that may be kN·m.
    pub warnings: Vec<Fault>,
}

/// An entry that can be used.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ListEntry {
    /// Its place in the list, from 0.
    index: usize,
    /// What is known of it.
    operator: ListedOperator,
    /// What stands about its shaft: body and base plate together; `null` where neither is known.
    outline: Option<OperatorBody>,
    /// The entry as the host wrote it, with what is not known here.
    #[cfg_attr(feature = "describe", schemars(with = "serde_json::Value"), ts(type = "{ [key: string]: unknown }"))]
    written: Document,
}

/// Only the reader makes an entry, so that whoever has one has an operator that keeps every rule.
impl ListEntry {
    /// Its place in the list, from 0.
    #[must_use]
    pub fn index(&self) -> usize {
        self.index
    }

    /// What is known of it.
    #[must_use]
    pub fn operator(&self) -> &ListedOperator {
        &self.operator
    }

    /// What stands about its shaft: body and base plate together; `None` where neither is known.
    #[must_use]
    pub fn outline(&self) -> Option<OperatorBody> {
        self.outline
    }

    /// The entry as the host wrote it, with what is not known here.
    #[must_use]
    pub fn written(&self) -> &Document {
        &self.written
    }
}

/// Reads a list. Never fails: a list of which nothing can be used has no operators, and says why.
///
/// Paths of faults are those of the list's document: `operators.3.rated_torque_n_m`.
#[must_use]
pub fn read(document: &Document) -> ReadOperators {
    let mut list = ReadOperators::default();
    // The list alone, each entry by itself below.
    let (entries, outer) = match document {
        Document::Object(entries) => {
            let shallow = |(key, value): &(String, Document)| match value {
                Document::List(items) if key == "operators" && items.len() <= MOST_OPERATORS as usize => {
                    (key.clone(), Document::List(Vec::new()))
                }
                Document::List(items) if key == "operators" => {
                    // Only their number is told.
                    (key.clone(), Document::List(alloc::vec![Document::Null; items.len()]))
                }
                _ => (key.clone(), value.clone()),
            };
            (document.entry("operators"), Document::Object(entries.iter().map(shallow).collect()))
        }
        other => (None, other.clone()),
    };
    let mut faults = list.told(Reading::of(&outer, OperatorList::BLOCK).faults);
    if matches!(entries, None | Some(Document::Null)) && matches!(document, Document::Object(_)) {
        let missing = Fault::new("operators", FaultCode::Missing);
        faults.push(missing.allowed(Allowed::Type { name: "array" }));
    }
    for fault in faults {
        list.left_out.push(LeftOut { path: fault.path.clone(), faults: alloc::vec![fault] });
    }
    list.title = match document.entry("title") {
        Some(Document::Text(title)) => Some(title.clone()),
        _ => None,
    };
    if let Some(Document::List(items)) = entries.filter(|_| list.left_out.iter().all(|out| out.path != "operators")) {
        EntryReader::default().entries(items, &mut list);
    }
    list
}

/// Reads the entries of a long list a part at a time, for whoever cannot wait for all of them: what it tells of all parts together is what [`read`]
/// tells of the whole.
#[derive(Debug, Default)]
pub struct EntryReader {
    /// Where each id stood first.
    ids: BTreeMap<String, usize>,
    /// Entries before.
    before: usize,
}

impl EntryReader {
    /// The next entries, without a title. Once there are more than a list may have, that is all that is told.
    pub fn read(&mut self, items: &[Document]) -> ReadOperators {
        let mut list = ReadOperators::default();
        let count = self.before + items.len();
        if count > MOST_OPERATORS as usize {
            self.before = count;
            let entries = alloc::vec![(String::from("operators"), Document::List(alloc::vec![Document::Null; count]))];
            return read(&Document::Object(entries));
        }
        self.entries(items, &mut list);
        list
    }

    fn entries(&mut self, items: &[Document], list: &mut ReadOperators) {
        for item in items {
            let index = self.before;
            self.before += 1;
            let path = format!("operators.{index}");
            let mut faults = list.told(Reading::at(&path, ITEM, item).faults);
            if let Some(Document::Text(id)) = item.entry("id") {
                match self.ids.get(id.as_str()) {
                    // Entries that are left out have a say: when they are mended, the id stands twice.
                    Some(&first) => faults.push(repeated(&path, id, first, index)),
                    None => {
                        self.ids.insert(id.clone(), index);
                    }
                }
            }
            let operator = if faults.is_empty() { ListedOperator::build(item) } else { None };
            faults.extend(operator.iter().flat_map(|operator| operator.relations(&path)));
            match operator {
                Some(operator) if faults.is_empty() => {
                    let row = const { ListedOperator::BLOCK.number("rated_torque_n_m") };
                    let at = format!("{path}.rated_torque_n_m");
                    list.warnings.extend(doubtful(at, operator.rated_torque_n_m, row.allowed()));
                    let outline = operator.outline();
                    list.operators.push(ListEntry { index, operator, outline, written: item.clone() });
                }
                _ => list.left_out.push(LeftOut { path, faults }),
            }
        }
    }
}

impl ReadOperators {
    /// Takes keys that are not known for warnings; what is left is in the way.
    fn told(&mut self, faults: Vec<Fault>) -> Vec<Fault> {
        let (unknown, faults): (Vec<Fault>, Vec<Fault>) =
            faults.into_iter().partition(|fault| fault.code == FaultCode::UnknownField);
        self.warnings.extend(unknown.into_iter().map(with_nearest));
        faults.into_iter().map(told_by_unit).collect()
    }
}

/// A key that is not known, with the known one most like it as what would be taken.
fn with_nearest(fault: Fault) -> Fault {
    let key = fault.path.rsplit('.').next().unwrap_or_default();
    let known = match &fault.allowed {
        Some(Allowed::OneOf { names }) => nearest(key, names),
        _ => None,
    };
    match known {
        Some(known) => fault.example(Example::Text(known)),
        None => fault,
    }
}

fn repeated(path: &str, id: &str, first: usize, index: usize) -> Fault {
    let at = |name, index: usize| NamedValue { name, value: index as f64, quantity: Quantity::Count };
    let fault = Fault::new(format!("{path}.id"), FaultCode::RepeatedId).found(&Document::Text(id.into()));
    let fault = fault.allowed(Allowed::Type { name: "string" }).example(Example::Text("gate-250-b"));
    fault.values([at("first", first), at("index", index)])
}
