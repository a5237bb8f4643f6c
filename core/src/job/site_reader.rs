//! Reading what the place adds.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::reader::{Node, wrong_type};
use super::rules::FIELDS;
use super::site_types::{Drag, Ground, Ice};
use crate::Document;
use crate::units::Quantity;
use alloc::{collections::BTreeMap, format, string::String};

pub(super) fn read_drag(node: Node) -> Option<Drag> {
    let (seal_n_m, latch_n_m, latch_deg) =
        (node.number("seal_n_m"), node.number("latch_n_m"), node.number("latch_deg"));
    let (wheel_load_n, wheel_radius_m) = (node.number("wheel_load_n"), node.number("wheel_radius_m"));
    let wheel_coefficient = node.number("wheel_coefficient");
    node.close();
    Some(Drag { seal_n_m, latch_n_m, latch_deg, wheel_load_n, wheel_radius_m, wheel_coefficient })
}

pub(super) fn read_ice(node: Node) -> Option<Ice> {
    let (thickness_m, density_kg_m3) = (node.number("thickness_m"), node.number("density_kg_m3"));
    let area_factor = node.number("area_factor");
    node.close();
    Some(Ice { thickness_m: thickness_m?, density_kg_m3, area_factor })
}

pub(super) fn read_ground(node: Node) -> Option<Ground> {
    let (slope_deg, uphill_deg, gap_m) = (node.number("slope_deg"), node.number("uphill_deg"), node.number("gap_m"));
    let (bottom_rise_m, joint_allowance_m) = (node.number("bottom_rise_m"), node.number("joint_allowance_m"));
    node.close();
    Some(Ground { slope_deg, uphill_deg, gap_m: gap_m?, bottom_rise_m, joint_allowance_m })
}

/// Uncertainties by path of the field, as fractions of its value.
pub(super) fn read_uncertainty(root: &Node) -> Option<BTreeMap<String, f64>> {
    let entries = match root.value("uncertainty") {
        Document::Null => return None,
        Document::Object(entries) => entries,
        other => {
            root.fault(wrong_type("uncertainty", other, "object"));
            return None;
        }
    };
    let mut read = BTreeMap::new();
    for (key, value) in entries {
        let path = format!("uncertainty.{key}");
        let known = FIELDS.iter().any(|rule| rule.path == key);
        match value {
            _ if !known => {
                let names = FIELDS.iter().map(|rule| rule.path).collect();
                root.fault(Fault::new(path, FaultCode::UnknownField).found(value).allowed(Allowed::OneOf { names }));
            }
            Document::Number(fraction) if (0.0..=1.0).contains(fraction) => {
                if read.insert(key.clone(), *fraction).is_some() {
                    root.fault(Fault::new(path, FaultCode::RepeatedField));
                }
            }
            Document::Number(_) => {
                let allowed = Allowed::Range { least: Some(0.0), most: Some(1.0), quantity: Quantity::Percent };
                let fault = Fault::new(path, FaultCode::OutOfRange).found(value).allowed(allowed);
                root.fault(fault.example(Example::Number(0.1)));
            }
            other => root.fault(wrong_type(&path, other, "number").example(Example::Number(0.1))),
        }
    }
    Some(read)
}
