//! Over the fields of a job that stands: as a document, what it assumes, what of it can be varied.

use super::{Block, Choice, Fields, Held, Kind};
use crate::Document;
use alloc::{string::String, vec::Vec};

/// The document that says what the fields of a block hold.
pub fn document(fields: &dyn Fields, block: &'static Block) -> Document {
    Document::Object(entries(fields, block))
}

fn entries(fields: &dyn Fields, block: &'static Block) -> Vec<(String, Document)> {
    let held = block.fields.iter().zip(fields.held());
    held.filter(|(_, held)| !matches!(held, Held::Nothing))
        .map(|(field, held)| (field.name.into(), value(held, &field.spec.kind)))
        .collect()
}

fn value(held: Held, kind: &Kind) -> Document {
    match (held, kind) {
        (Held::Number(number), _) => Document::Number(number),
        (Held::Range(ends), _) => Document::List(ends.map(Document::Number).into()),
        (Held::Plain(document), _) => document,
        (Held::Block(fields), Kind::Block(block)) => document(fields, block),
        (Held::Chosen(name, fields), Kind::Choice(choice)) => {
            let mut said = alloc::vec![(choice.tag.into(), Document::Text(name.into()))];
            said.extend(chosen(choice, name).into_iter().flat_map(|block| entries(fields, block)));
            Document::Object(said)
        }
        (Held::List(items), Kind::List(list)) => {
            Document::List(items.into_iter().map(|item| value(item, list.item)).collect())
        }
        (Held::Shares(shares), _) => {
            Document::Object(shares.iter().map(|(path, &share)| (path.clone(), Document::Number(share))).collect())
        }
        (Held::Nothing | Held::Block(_) | Held::Chosen(..) | Held::List(_), _) => Document::Null,
    }
}

fn chosen(choice: &'static Choice, name: &str) -> Option<&'static Block> {
    choice.kinds.iter().find(|kind| kind.name == name).map(|kind| kind.block)
}

/// The blocks below a field's value, each with what it holds.
fn parts<'a>(held: &Held<'a>, kind: &Kind, found: &mut Vec<(&'a dyn Fields, &'static Block)>) {
    match (held, kind) {
        (Held::Block(fields), Kind::Block(block)) => found.push((*fields, *block)),
        (Held::Chosen(name, fields), Kind::Choice(choice)) => {
            found.extend(chosen(choice, name).map(|block| (*fields, block)));
        }
        (Held::List(items), Kind::List(list)) => items.iter().for_each(|item| parts(item, list.item, found)),
        _ => {}
    }
}

/// Paths of the rows whose silence is an assumption, each once. `in_twin` where the block stands in its second place.
pub fn assumed(fields: &dyn Fields, block: &'static Block, in_twin: bool, paths: &mut Vec<&'static str>) {
    let all = fields.held();
    let said = |key: &str| {
        let mut rows = block.fields.iter().zip(&all);
        rows.any(|(field, held)| field.name == key && !matches!(held, Held::Nothing))
    };
    for (field, held) in block.fields.iter().zip(&all) {
        let path = if in_twin { field.twin.unwrap_or(field.path) } else { field.path };
        let silent = matches!(held, Held::Nothing) && field.spec.assumed && !field.spec.follows.is_some_and(said);
        if silent && !paths.contains(&path) {
            paths.push(path);
        }
        let mut inner = Vec::new();
        parts(held, &field.spec.kind, &mut inner);
        let in_twin = in_twin || field.spec.twin;
        inner.into_iter().for_each(|(fields, block)| assumed(fields, block, in_twin, paths));
    }
}

/// Paths and values of what was measured or estimated, lists and the second place of a block apart.
pub fn varied(fields: &dyn Fields, block: &'static Block, found: &mut Vec<(&'static str, f64)>) {
    for (field, held) in block.fields.iter().zip(fields.held()) {
        match held {
            Held::Number(number) if field.spec.varied => found.push((field.path, number)),
            Held::Block(_) | Held::Chosen(..) if !field.spec.twin => {
                let mut inner = Vec::new();
                parts(&held, &field.spec.kind, &mut inner);
                inner.into_iter().for_each(|(fields, block)| varied(fields, block, found));
            }
            _ => {}
        }
    }
}
