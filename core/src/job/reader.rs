//! From a document to a job, finding every fault on the way: unknown, repeated, missing, ill-typed and out-of-range fields at once.

use super::SCHEMA;
use super::fault::{Allowed, Example, Fault, FaultCode, Invalid};
use super::fit_reader::{read_as_built, read_marks, read_room, read_tape};
use super::hinge_reader::read_hinges;
use super::member_reader::read_members;
use super::migrate::migrated;
use super::record::{read_record, read_settings};
use super::rules::{FieldRule, rule_of};
use super::safety_reader::{read_breakaway, read_contact, read_holding, read_motion, read_site};
use super::setout_reader::read_setout;
use super::site_reader::{read_drag, read_ground, read_ice, read_uncertainty};
use super::types::{Arm, Elbow, Hand, Job, Leaf, Lean, Operator, Swing};
use super::wind_reader::read_wind;
use crate::Document;
use alloc::{format, string::String, vec::Vec};
use core::cell::RefCell;

/// One object of the document while it is read. Keys that were asked for are the keys it may have; the rest are reported.
pub(super) struct Node<'a> {
    /// Where it stands in the document, with the index of a list's item.
    path: String,
    /// Where its fields stand in the table of rules: the same without the index.
    rules: String,
    entries: &'a [(String, Document)],
    asked: RefCell<Vec<&'static str>>,
    faults: &'a RefCell<Vec<Fault>>,
}

static ABSENT: Document = Document::Null;

impl<'a> Node<'a> {
    fn root(document: &'a Document, faults: &'a RefCell<Vec<Fault>>) -> Node<'a> {
        Node {
            path: String::new(),
            rules: String::new(),
            entries: Node::entries_of(document, "", faults),
            asked: RefCell::default(),
            faults,
        }
    }

    /// The entries of an object; anything else is a fault.
    fn entries_of(value: &'a Document, path: &str, faults: &RefCell<Vec<Fault>>) -> &'a [(String, Document)] {
        match value {
            Document::Object(entries) => entries,
            other => {
                faults.borrow_mut().push(wrong_type(path, other, "object"));
                &[]
            }
        }
    }

    pub(super) fn path_of(&self, key: &str) -> String {
        if self.path.is_empty() { key.into() } else { format!("{}.{key}", self.path) }
    }

    pub(super) fn rule_path_of(&self, key: &str) -> String {
        if self.rules.is_empty() { key.into() } else { format!("{}.{key}", self.rules) }
    }

    pub(super) fn fault(&self, fault: Fault) {
        self.faults.borrow_mut().push(fault);
    }

    /// The value of a key; `Null` where it is absent.
    pub(super) fn value(&self, key: &'static str) -> &'a Document {
        self.asked.borrow_mut().push(key);
        let mut found = self.entries.iter().filter(|(name, _)| name == key).map(|(_, value)| value);
        let first = found.next();
        if found.next().is_some() {
            self.fault(Fault::new(self.path_of(key), FaultCode::RepeatedField));
        }
        first.unwrap_or(&ABSENT)
    }

    /// A nested object. A required one that is absent is one fault, not one for each of its fields.
    pub(super) fn object(&self, key: &'static str, required: bool) -> Option<Node<'a>> {
        let value = self.value(key);
        if *value == Document::Null {
            if required {
                self.fault(missing_object(self.path_of(key)));
            }
            return None;
        }
        self.item(self.path_of(key), &self.rule_path_of(key), value)
    }

    /// An object that stands at a path, its fields under a path of the table of rules.
    pub(super) fn item(&self, path: String, rules: &str, value: &'a Document) -> Option<Node<'a>> {
        let entries = Node::entries_of(value, &path, self.faults);
        matches!(value, Document::Object(_)).then(|| Node {
            path,
            rules: rules.into(),
            entries,
            asked: RefCell::default(),
            faults: self.faults,
        })
    }

    /// An optional number within its range. A number out of range is reported, and still returned.
    pub(super) fn number(&self, key: &'static str) -> Option<f64> {
        let path = self.path_of(key);
        let rule = rule_of(&self.rule_path_of(key))?;
        match self.value(key) {
            Document::Null if !rule.required || rule.unless.is_some_and(|key| self.has(key)) => None,
            value => self.within(path, rule, value),
        }
    }

    /// The number a value at a path has to be. One out of its rule's range is reported, and still returned.
    pub(super) fn within(&self, path: String, rule: &FieldRule, value: &Document) -> Option<f64> {
        match value {
            Document::Number(value) => {
                if let Some(mut fault) = rule.check(*value) {
                    fault.path = path;
                    self.fault(fault);
                }
                Some(*value)
            }
            // Nothing where a number has to be is missing, no mistake of kind.
            Document::Null => {
                let fault = Fault::new(path, FaultCode::Missing).allowed(rule.allowed());
                self.fault(fault.example(Example::Number(rule.example)));
                None
            }
            other => {
                self.fault(wrong_type(&path, other, "number").example(Example::Number(rule.example)));
                None
            }
        }
    }

    /// Whether anything but `null` stands under a key, without asking for it.
    pub(super) fn has(&self, key: &str) -> bool {
        self.entries.iter().any(|(name, value)| name == key && *value != Document::Null)
    }

    /// The same object under the rules of another.
    pub(super) fn with_rules(mut self, rules: &str) -> Node<'a> {
        self.rules = rules.into();
        self
    }

    /// An optional yes or no.
    pub(super) fn flag(&self, key: &'static str) -> Option<bool> {
        match self.value(key) {
            Document::Null => None,
            Document::Bool(value) => Some(*value),
            other => {
                self.fault(wrong_type(&self.path_of(key), other, "boolean"));
                None
            }
        }
    }

    /// An optional text.
    pub(super) fn text(&self, key: &'static str) -> Option<String> {
        match self.value(key) {
            Document::Null => None,
            Document::Text(text) => Some(text.clone()),
            other => {
                self.fault(wrong_type(&self.path_of(key), other, "string"));
                None
            }
        }
    }

    /// The index of a word among `names`.
    pub(super) fn word(&self, key: &'static str, names: &[&'static str], required: bool) -> Option<usize> {
        let value = self.value(key);
        let code = match value {
            Document::Null if !required => return None,
            Document::Null => FaultCode::Missing,
            Document::Text(text) => match names.iter().position(|name| name == text) {
                Some(index) => return Some(index),
                None => FaultCode::NotOneOf,
            },
            _ => FaultCode::WrongType,
        };
        let fault = Fault::new(self.path_of(key), code).allowed(Allowed::OneOf { names: names.into() });
        let fault = if code == FaultCode::Missing { fault } else { fault.found(value) };
        self.fault(fault.example(Example::Text(names[0])));
        None
    }

    /// Reports what was never asked for.
    pub(super) fn close(self) {
        let asked = self.asked.take();
        for (index, (key, value)) in self.entries.iter().enumerate() {
            let first = self.entries[..index].iter().all(|(earlier, _)| earlier != key);
            if first && !asked.iter().any(|name| name == key) {
                let fault = Fault::new(self.path_of(key), FaultCode::UnknownField).found(value);
                self.faults.borrow_mut().push(fault.allowed(Allowed::OneOf { names: asked.clone() }));
            }
        }
    }
}

/// The fault of an object that has to be there.
pub(crate) fn missing_object(path: impl Into<String>) -> Fault {
    Fault::new(path, FaultCode::Missing).allowed(Allowed::Type { name: "object" })
}

pub(super) fn wrong_type(path: &str, found: &Document, name: &'static str) -> Fault {
    Fault::new(path, FaultCode::WrongType).found(found).allowed(Allowed::Type { name })
}

/// A fault if the document's schema is not one this version reads.
pub(super) fn schema_fault(schema: f64) -> Option<Fault> {
    let code = if schema > f64::from(SCHEMA) { FaultCode::NewerSchema } else { FaultCode::OutOfRange };
    let one = Some(f64::from(SCHEMA));
    (schema != f64::from(SCHEMA)).then(|| {
        Fault::new("schema", code)
            .found(&Document::Number(schema))
            .allowed(Allowed::Range { least: one, most: one, quantity: crate::units::Quantity::Count })
            .example(Example::Number(f64::from(SCHEMA)))
    })
}

impl Job {
    /// Makes a job of a document, or says everything that is wrong with it.
    ///
    /// `null` and absent are the same. `entry` (text as typed) is carried by files and ignored here; of `record` (measured values) what is
    /// not known is, too.
    ///
    /// # Errors
    /// Every fault of shape and range, and the relations between fields once all of them could be read. A document of a newer
    /// schema is refused with that one fault, since nothing else about it can be judged.
    pub fn read(document: &Document) -> Result<Job, Invalid> {
        let document = &*migrated(document);
        let faults = RefCell::default();
        let root = Node::root(document, &faults);
        match root.value("schema") {
            Document::Number(schema) => {
                if let Some(fault) = schema_fault(*schema) {
                    if fault.code == FaultCode::NewerSchema {
                        return Err(Invalid { errors: alloc::vec![fault] });
                    }
                    root.fault(fault);
                }
            }
            Document::Null => {
                root.fault(Fault::new("schema", FaultCode::Missing).example(Example::Number(f64::from(SCHEMA))))
            }
            other => root.fault(wrong_type("schema", other, "number").example(Example::Number(f64::from(SCHEMA)))),
        }
        let job = read_job(&root);
        root.value("entry");
        root.close();
        let mut errors = faults.into_inner();
        if let Some(job) = &job {
            errors.extend(job.relations());
        }
        match job {
            Some(job) if errors.is_empty() => Ok(job),
            _ => Err(Invalid { errors }),
        }
    }
}

/// Reads every part before it gives up on any, so that all faults are seen.
fn read_job(root: &Node) -> Option<Job> {
    let title = root.text("title");
    let hand = root.word("hand", &Hand::NAMES, false).map(|index| [Hand::Right, Hand::Left][index]);
    let leaf = root.object("leaf", true).and_then(read_leaf);
    let hinges = root.object("hinges", true).and_then(read_hinges);
    let lean = root.object("lean", false).map(read_lean);
    let wind = root.object("wind", true).and_then(read_wind);
    let swing = root.object("swing", true).and_then(read_swing);
    // Where the arm is still to be set out there need not be one yet; one that is there has to be right all the same.
    let setout = part(root, "setout", false, read_setout);
    let arm = part(root, "arm", matches!(setout, Part::Absent), read_arm);
    let operator = root.object("operator", true).and_then(read_operator);
    let required_reserve = root.number("required_reserve");
    let samples = root.number("samples").map(|count| count as u32);
    // The storm is a wind and keeps a wind's rules.
    let storm = part(root, "storm", false, |node| read_wind(node.with_rules("wind")));
    let drag = part(root, "drag", false, read_drag);
    let ice = part(root, "ice", false, read_ice);
    let ground = part(root, "ground", false, read_ground);
    let room = part(root, "room", false, read_room);
    let marks = part(root, "marks", false, read_marks);
    let tape = part(root, "tape", false, read_tape);
    let as_built = part(root, "as_built", false, read_as_built);
    let motion = part(root, "motion", false, read_motion);
    let breakaway = part(root, "breakaway", false, read_breakaway);
    let holding = part(root, "holding", false, read_holding);
    let contact = part(root, "contact", false, read_contact);
    let site = part(root, "site", false, read_site);
    let settings = part(root, "settings", false, read_settings);
    let record = part(root, "record", false, read_record);
    let uncertainty = read_uncertainty(root);
    Some(Job {
        schema: SCHEMA,
        title,
        hand,
        leaf: leaf?,
        hinges: hinges?,
        lean: lean.unwrap_or_default(),
        wind: wind?,
        swing: swing?,
        arm: arm.read()?,
        setout: setout.read()?,
        operator: operator?,
        required_reserve,
        samples,
        storm: storm.read()?,
        drag: drag.read()?,
        ice: ice.read()?,
        ground: ground.read()?,
        room: room.read()?,
        marks: marks.read()?,
        tape: tape.read()?,
        as_built: as_built.read()?,
        motion: motion.read()?,
        breakaway: breakaway.read()?,
        holding: holding.read()?,
        contact: contact.read()?,
        site: site.read()?,
        settings: settings.read()?,
        record: record.read()?,
        uncertainty,
    })
}

/// An object of the document that need not be there.
enum Part<T> {
    Absent,
    Faulty,
    Read(T),
}

impl<T> Part<T> {
    /// `None` where it was there and could not be read.
    fn read(self) -> Option<Option<T>> {
        match self {
            Part::Absent => Some(None),
            Part::Faulty => None,
            Part::Read(value) => Some(Some(value)),
        }
    }
}

fn part<T>(root: &Node, key: &'static str, required: bool, read: impl Fn(Node) -> Option<T>) -> Part<T> {
    let there = root.has(key);
    match root.object(key, required).and_then(read) {
        Some(value) => Part::Read(value),
        None if there || required => Part::Faulty,
        None => Part::Absent,
    }
}

fn read_leaf(node: Node) -> Option<Leaf> {
    let (mass_kg, length_m, height_m) = (node.number("mass_kg"), node.number("length_m"), node.number("height_m"));
    let wind_area_m2 = node.number("wind_area_m2");
    let (mass_centroid_m, wind_centroid_m) = (node.number("mass_centroid_m"), node.number("wind_centroid_m"));
    let inertia_kg_m2 = node.number("inertia_kg_m2");
    let members = read_members(&node);
    node.close();
    let members = members?;
    let complete = members.is_some() || (mass_kg.is_some() && wind_area_m2.is_some());
    complete.then_some(())?;
    Some(Leaf {
        mass_kg,
        length_m: length_m?,
        height_m,
        wind_area_m2,
        mass_centroid_m,
        wind_centroid_m,
        inertia_kg_m2,
        members,
    })
}

fn read_lean(node: Node) -> Lean {
    let lean = Lean {
        angle_deg: node.number("angle_deg"),
        downhill_deg: node.number("downhill_deg"),
        plumb_offset_m: node.number("plumb_offset_m"),
        plumb_height_m: node.number("plumb_height_m"),
    };
    node.close();
    lean
}

fn read_swing(node: Node) -> Option<Swing> {
    let open_deg = node.number("open_deg");
    node.close();
    Some(Swing { open_deg: open_deg? })
}

fn read_arm(node: Node) -> Option<Arm> {
    let (shaft_x_m, shaft_y_m) = (node.number("shaft_x_m"), node.number("shaft_y_m"));
    let (bracket_u_m, bracket_v_m) = (node.number("bracket_u_m"), node.number("bracket_v_m"));
    let (crank_m, link_m) = (node.number("crank_m"), node.number("link_m"));
    let elbow = node.word("elbow", &Elbow::NAMES, true).map(|index| [Elbow::Left, Elbow::Right][index]);
    node.close();
    Some(Arm {
        shaft_x_m: shaft_x_m?,
        shaft_y_m: shaft_y_m?,
        bracket_u_m: bracket_u_m?,
        bracket_v_m: bracket_v_m?,
        crank_m: crank_m?,
        link_m: link_m?,
        elbow: elbow?,
    })
}

fn read_operator(node: Node) -> Option<Operator> {
    let (rated, peak) = (node.number("rated_torque_n_m"), node.number("peak_torque_n_m"));
    let (shaft_speed_deg_s, arm_efficiency) = (node.number("shaft_speed_deg_s"), node.number("arm_efficiency"));
    node.close();
    Some(Operator { rated_torque_n_m: rated?, peak_torque_n_m: peak, shaft_speed_deg_s, arm_efficiency })
}
