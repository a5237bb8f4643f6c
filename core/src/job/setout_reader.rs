//! Reading the set-out block: ranges, rectangles and the relations between them.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::reader::{Node, wrong_type};
use super::rules::rule_of;
use super::setout::{Aim, ElbowChoice, KeepOut, Place, SetOut};
use crate::Document;
use alloc::{format, string::String, vec::Vec};

/// More rectangles than a site has; beyond it a hostile document is refused before the search pays for it.
const MOST_KEEP_OUTS: usize = 64;

pub(super) fn read_setout(node: Node) -> Option<SetOut> {
    let (shaft_x_m, shaft_y_m) = (node.range("shaft_x_m"), node.range("shaft_y_m"));
    let (bracket_u_m, bracket_v_m) = (node.range("bracket_u_m"), node.number("bracket_v_m"));
    let (crank_m, link_m) = (node.range("crank_m"), node.range("link_m"));
    let straightness = node.range("straightness");
    let (square_deg, least_lever_m) = (node.number("square_deg"), node.number("least_lever_m"));
    let shaft_travel_deg = node.number("shaft_travel_deg");
    let most_shaft_torque_n_m = node.number("most_shaft_torque_n_m");
    let (step_m, arm_half_width_m) = (node.number("step_m"), node.number("arm_half_width_m"));
    let storm_speed_m_s = node.number("storm_speed_m_s");
    let elbow = node.word("elbow", &ElbowChoice::NAMES, false).map(|index| ElbowChoice::ALL[index]);
    let aim = node.word("aim", &Aim::NAMES, false).map(|index| Aim::ALL[index]);
    let keep_out = read_rectangles(&node, "keep_out");
    let place = node.object("place", false).and_then(read_place);
    node.close();
    Some(SetOut {
        shaft_x_m: shaft_x_m?,
        shaft_y_m: shaft_y_m?,
        bracket_u_m: bracket_u_m?,
        bracket_v_m: bracket_v_m?,
        crank_m: crank_m?,
        link_m: link_m?,
        straightness,
        square_deg,
        least_lever_m,
        shaft_travel_deg,
        most_shaft_torque_n_m,
        step_m,
        elbow,
        arm_half_width_m,
        keep_out: keep_out?,
        aim,
        storm_speed_m_s,
        place,
    })
}

fn read_place(node: Node) -> Option<Place> {
    let (x_m, y_m) = (node.number("x_m"), node.number("y_m"));
    node.close();
    Some(Place { x_m: x_m?, y_m: y_m? })
}

/// A list of rectangles under a key; empty where nothing is said.
pub(super) fn read_rectangles(node: &Node, key: &'static str) -> Option<Vec<KeepOut>> {
    let path = node.path_of(key);
    let rules = node.rule_path_of(key);
    let value = node.value(key);
    match value {
        Document::Null => Some(Vec::new()),
        Document::List(items) if items.len() > MOST_KEEP_OUTS => {
            let allowed =
                Allowed::Range { least: Some(0.0), most: Some(64.0), quantity: crate::units::Quantity::Count };
            node.fault(Fault::new(path, FaultCode::OutOfRange).found(value).allowed(allowed));
            None
        }
        Document::List(items) => {
            // Every rectangle is read before any is given up, so that all faults are seen.
            let read: Vec<Option<KeepOut>> = items
                .iter()
                .enumerate()
                .map(|(index, item)| {
                    let node = node.item(format!("{path}.{index}"), &rules, item)?;
                    let (x_m, y_m) = (node.range("x_m"), node.range("y_m"));
                    node.close();
                    Some(KeepOut { x_m: x_m?, y_m: y_m? })
                })
                .collect();
            read.into_iter().collect()
        }
        other => {
            node.fault(wrong_type(&path, other, "array"));
            None
        }
    }
}

impl Node<'_> {
    /// A range `[least, most]`, each end within its rule; an end out of range is reported, and still returned.
    pub(super) fn range(&self, key: &'static str) -> Option<[f64; 2]> {
        let path = self.path_of(key);
        let rule = rule_of(&self.rule_path_of(key))?;
        let value = self.value(key);
        let items = match value {
            Document::Null if !rule.required => return None,
            Document::Null => {
                let fault = Fault::new(path, FaultCode::Missing).allowed(Allowed::Type { name: "array" });
                self.fault(fault.example(Example::Range([rule.example, rule.example])));
                return None;
            }
            Document::List(items) if items.len() == 2 => items,
            other => {
                self.fault(wrong_type(&path, other, "array"));
                return None;
            }
        };
        let end = |index: usize| self.within(format!("{path}.{index}"), rule, &items[index]);
        let (least, most) = (end(0), end(1));
        Some([least?, most?])
    }
}

/// The fault of a range whose ends are the wrong way round.
pub(super) fn crossed(path: &str, rule: &str, [least, most]: [f64; 2]) -> Option<Fault> {
    let rule = rule_of(rule).filter(|_| least > most)?;
    let allowed = Allowed::Range { least: Some(least), most: rule.most, quantity: rule.quantity };
    let fault = Fault::new(format!("{path}.1"), FaultCode::LeastAboveMost).found(&Document::Number(most));
    Some(fault.allowed(allowed).example(Example::Number(least)))
}

impl SetOut {
    /// Faults between ends that are each within their own range.
    pub(super) fn relations(&self) -> Vec<Fault> {
        let mut ranges: Vec<(String, &str, [f64; 2])> = [
            ("setout.shaft_x_m", self.shaft_x_m),
            ("setout.shaft_y_m", self.shaft_y_m),
            ("setout.bracket_u_m", self.bracket_u_m),
            ("setout.crank_m", self.crank_m),
            ("setout.link_m", self.link_m),
            ("setout.straightness", self.straightness()),
        ]
        .map(|(path, range)| (path.into(), path, range))
        .into();
        for (index, rectangle) in self.keep_out.iter().enumerate() {
            ranges.push((format!("setout.keep_out.{index}.x_m"), "setout.keep_out.x_m", rectangle.x_m));
            ranges.push((format!("setout.keep_out.{index}.y_m"), "setout.keep_out.y_m", rectangle.y_m));
        }
        let mut faults: Vec<Fault> =
            ranges.into_iter().filter_map(|(path, rule, range)| crossed(&path, rule, range)).collect();
        if self.aim == Some(Aim::NearestPlace) && self.place.is_none() {
            faults.push(super::reader::missing_object("setout.place"));
        }
        faults
    }
}
