//! A job of which a part is begun and not finished: what can be read without that part, and what the part needs.

use super::Job;
use super::checked::CheckedJob;
use super::migrate::{Renewed, migrated};
use super::table::{Block, Choice, Kind};
use crate::Document;
use crate::fault::{Fault, Invalid, LeftOut};
use alloc::{format, string::String, vec::Vec};

impl CheckedJob {
    /// Makes a job of a document without the optional parts that cannot be read, or that need one that cannot.
    ///
    /// A part is the innermost block or list item below a block that a job may do without. What belongs to the leaf, its hinges, the arm or
    /// another block that a plan needs is never left out: the rest would be another gate.
    ///
    /// # Errors
    /// Every fault of the document as it is, where what cannot be read is no such part.
    pub fn read_partial(document: &Document) -> Result<(CheckedJob, Vec<LeftOut>), Invalid> {
        let migrated = migrated(document);
        let whole = &*migrated.document;
        let mut left_out = Vec::new();
        let mut first = None;
        // Each turn takes at least one part away.
        loop {
            let rest = without(whole, "", &left_out);
            let faults = match CheckedJob::read(&rest) {
                Ok(job) => return Ok((job, written(&migrated, left_out))),
                Err(invalid) => invalid.errors,
            };
            let parts: Option<Vec<String>> = faults
                .iter()
                .map(|fault| part_of(&rest, &fault.path).or_else(|| part_that_asks(&rest, fault)))
                .collect();
            let first = first.get_or_insert_with(|| Invalid { errors: faults.clone() });
            let Some(parts) = parts else { return Err(Invalid { errors: migrated.as_written(first.errors.clone()) }) };
            let before = left_out.clone();
            for (part, fault) in parts.iter().zip(faults) {
                let fault = Fault { path: as_written(&fault.path, &before), ..fault };
                leave_out(&mut left_out, as_written(part, &before), fault);
            }
        }
    }
}

/// What was left out, as an older document names it; what of one has no place any more is left out, too.
fn written(migrated: &Renewed, left_out: Vec<LeftOut>) -> Vec<LeftOut> {
    let mut all: Vec<LeftOut> = Vec::new();
    for part in left_out {
        let faults =
            part.faults.into_iter().map(|fault| Fault { path: migrated.path_as_written(&fault.path), ..fault });
        all.push(LeftOut { path: migrated.path_as_written(&part.path), faults: faults.collect() });
    }
    for fault in migrated.lost() {
        if all.iter().all(|part| !within(&fault.path, &part.path)) {
            let path = fault.path.split('.').next().unwrap_or_default().into();
            leave_out(&mut all, path, fault.clone());
        }
    }
    all
}

/// Notes a part; parts of it that were left out before go with it.
fn leave_out(left_out: &mut Vec<LeftOut>, path: String, fault: Fault) {
    if let Some(part) = left_out.iter_mut().find(|part| within(&path, &part.path)) {
        return part.faults.push(fault);
    }
    let mut faults = Vec::new();
    left_out.retain(|part| {
        let goes = within(&part.path, &path);
        if goes {
            faults.extend(part.faults.iter().cloned());
        }
        !goes
    });
    faults.push(fault);
    left_out.push(LeftOut { path, faults });
}

/// Whether a path is another or lies below it.
fn within(path: &str, other: &str) -> bool {
    path.strip_prefix(other).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

fn below(path: &str, key: &str) -> String {
    if path.is_empty() { key.into() } else { format!("{path}.{key}") }
}

fn is_left_out(path: &str, left_out: &[LeftOut]) -> bool {
    left_out.iter().any(|part| part.path == path)
}

/// The document without some of its parts.
fn without(document: &Document, path: &str, left_out: &[LeftOut]) -> Document {
    let kept = |key: &str, value: &Document| {
        let path = below(path, key);
        (!is_left_out(&path, left_out)).then(|| without(value, &path, left_out))
    };
    match document {
        Document::Object(entries) => {
            let kept = entries.iter().filter_map(|(key, value)| Some((key.clone(), kept(key, value)?)));
            Document::Object(kept.collect())
        }
        Document::List(items) => {
            let kept = items.iter().enumerate().filter_map(|(place, value)| kept(&format!("{place}"), value));
            Document::List(kept.collect())
        }
        plain => plain.clone(),
    }
}

/// A path of the document without some parts, as it stands in the whole one: places in lists count what was left out.
fn as_written(path: &str, left_out: &[LeftOut]) -> String {
    path.split('.').fold(String::new(), |so_far, key| match key.parse::<usize>() {
        Ok(place) => {
            let mut kept = (0usize..).map(|place| below(&so_far, &format!("{place}")));
            kept.by_ref().filter(|path| !is_left_out(path, left_out)).nth(place).unwrap_or_default()
        }
        Err(_) => below(&so_far, key),
    })
}

/// The row of a block that a job may do without, and that a plan may, too.
fn may_be_left_out(key: &str) -> bool {
    let mut rows = Job::BLOCK.fields.iter().filter(|field| field.name == key);
    rows.any(|field| !field.required && field.spec.kind.is_part() && field.name != "arm")
}

/// The innermost block or list item at a path that the job may do without and that stands in the document.
fn part_of(document: &Document, path: &str) -> Option<String> {
    // The operator is needed, its outline is not.
    if !may_be_left_out(path.split('.').next()?) && !within(path, "operator.body") {
        return None;
    }
    let (mut node, mut kind) = (document, Kind::Block(Job::BLOCK));
    let (mut so_far, mut part) = (String::new(), None);
    for key in path.split('.') {
        let Some((next, optional)) = step(node, &kind, key) else { break };
        let Some(value) = node.entry(key).filter(|value| **value != Document::Null) else { break };
        so_far = below(&so_far, key);
        if optional && next.is_part() {
            part = Some(so_far.clone());
        }
        (node, kind) = (value, next);
    }
    part
}

/// The kind of what stands below a key, and whether it can be done without.
fn step(node: &Document, kind: &Kind, key: &str) -> Option<(Kind, bool)> {
    let row = |block: &'static Block| {
        let field = block.fields.iter().find(|field| field.name == key)?;
        Some((field.spec.kind, !field.required))
    };
    match kind {
        Kind::Block(block) => row(block),
        Kind::Choice(choice) => row(chosen(node, choice)?),
        Kind::List(list) => Some((*list.item, true)),
        _ => None,
    }
}

fn chosen(node: &Document, choice: &Choice) -> Option<&'static Block> {
    let Document::Text(word) = node.entry(choice.tag)? else { return None };
    choice.kinds.iter().find(|kind| kind.name == word.as_str()).map(|kind| kind.block)
}

/// The part without which a fault is none: it asks for something that is not there, or contradicts it.
fn part_that_asks(document: &Document, fault: &Fault) -> Option<String> {
    let Document::Object(entries) = document else { return None };
    let stands = entries.iter().filter(|(key, value)| may_be_left_out(key) && *value != Document::Null);
    let heals = |key: &&String| {
        let without = without(document, "", &[LeftOut { path: (*key).clone(), faults: Vec::new() }]);
        let same = |other: &Fault| (&other.path, other.code) == (&fault.path, fault.code);
        CheckedJob::read(&without).map_or_else(|invalid| !invalid.errors.iter().any(same), |_| true)
    };
    stands.map(|(key, _)| key).find(heals).cloned()
}
