//! Reading motion, breakaway, holding, contact and site.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::motion_types::{BreakawayFacts, Duty, HoldingFacts, MotionFacts, MotorFacts};
use super::reader::{Node, missing_object, wrong_type};
use super::rules::rule_of;
use super::safety_types::{Contact, Means, SensedArea, SensorFrame, Site};
use super::setout::KeepOut;
use super::types::Job;
use crate::Document;
use crate::drive::Direction;
use crate::safety::{MeansKind, ZoneKind};
use crate::units::Quantity;
use alloc::{format, string::String, vec::Vec};

/// More obstacles, means or zones than a site has; beyond it a hostile document is refused before anything pays for it.
const MOST_ITEMS: usize = 64;

pub(super) fn read_motion(node: Node) -> Option<MotionFacts> {
    let (ramp_up_s, ramp_down_s) = (node.number("ramp_up_s"), node.number("ramp_down_s"));
    let (slow_open_deg, slow_close_deg) = (node.number("slow_open_deg"), node.number("slow_close_deg"));
    let (slow_speed_deg_s, coast_drag_n_m) = (node.number("slow_speed_deg_s"), node.number("coast_drag_n_m"));
    let stop_stiffness_n_per_m = node.number("stop_stiffness_n_per_m");
    let has_motor = node.has("motor");
    let motor = node.object("motor", false).and_then(read_motor);
    let duty = node.object("duty", false).map(read_duty);
    node.close();
    (motor.is_some() == has_motor).then_some(MotionFacts {
        ramp_up_s,
        ramp_down_s,
        slow_open_deg,
        slow_close_deg,
        slow_speed_deg_s,
        coast_drag_n_m,
        stop_stiffness_n_per_m,
        motor,
        duty,
    })
}

fn read_motor(node: Node) -> Option<MotorFacts> {
    let (stall_torque_n_m, no_load_speed_deg_s) = (node.number("stall_torque_n_m"), node.number("no_load_speed_deg_s"));
    let (rated_v, supply_v) = (node.number("rated_v"), node.number("supply_v"));
    let (gear_ratio, gear_efficiency) = (node.number("gear_ratio"), node.number("gear_efficiency"));
    let run_up_s = node.number("run_up_s");
    node.close();
    Some(MotorFacts {
        stall_torque_n_m: stall_torque_n_m?,
        no_load_speed_deg_s: no_load_speed_deg_s?,
        rated_v: rated_v?,
        supply_v,
        gear_ratio,
        gear_efficiency,
        run_up_s,
    })
}

fn read_duty(node: Node) -> Duty {
    let duty = Duty {
        cycles_per_hour: node.number("cycles_per_hour"),
        cycles_per_day: node.number("cycles_per_day"),
        rated_cycles_per_hour: node.number("rated_cycles_per_hour"),
        rated_cycles_per_day: node.number("rated_cycles_per_day"),
    };
    node.close();
    duty
}

pub(super) fn read_breakaway(node: Node) -> Option<BreakawayFacts> {
    let facts = BreakawayFacts {
        slip_torque_n_m: node.number("slip_torque_n_m"),
        hold_factor: node.number("hold_factor"),
        release_factor: node.number("release_factor"),
        leaf_moment_n_m: node.number("leaf_moment_n_m"),
        link_force_n: node.number("link_force_n"),
        bracket_force_n: node.number("bracket_force_n"),
        gearbox_torque_n_m: node.number("gearbox_torque_n_m"),
        push_radius_m: node.number("push_radius_m"),
    };
    node.close();
    Some(facts)
}

pub(super) fn read_holding(node: Node) -> Option<HoldingFacts> {
    let facts = HoldingFacts {
        shaft_torque_n_m: node.number("shaft_torque_n_m"),
        link_force_n: node.number("link_force_n"),
        bracket_force_n: node.number("bracket_force_n"),
        play_deg: node.number("play_deg"),
    };
    node.close();
    Some(facts)
}

pub(super) fn read_contact(node: Node) -> Option<Contact> {
    let contact = Contact {
        stiffness_n_per_m: node.number("stiffness_n_per_m"),
        dynamic_limit_n: node.number("dynamic_limit_n"),
        static_limit_n: node.number("static_limit_n"),
        response_s: node.number("response_s"),
        edge_travel_m: node.number("edge_travel_m"),
        near_m: node.number("near_m"),
    };
    node.close();
    Some(contact)
}

pub(super) fn read_site(node: Node) -> Option<Site> {
    let (public, guarded) = (node.flag("public"), node.flag("guarded"));
    let homes = node.number("homes").map(|count| count as u32);
    let (pedestrian_way, signs_both_faces) = (node.flag("pedestrian_way"), node.flag("signs_both_faces"));
    let (latch_gap_m, leaf_half_thickness_m) = (node.number("latch_gap_m"), node.number("leaf_half_thickness_m"));
    let obstacles = items(&node, "obstacles", |path, value| {
        let item = node.item(path, "site.obstacles", value)?;
        let (x_m, y_m) = (item.range("x_m"), item.range("y_m"));
        item.close();
        Some(KeepOut { x_m: x_m?, y_m: y_m? })
    });
    let means = items(&node, "means", |path, value| node.item(path, "site.means", value).and_then(read_means));
    node.close();
    Some(Site {
        public,
        guarded,
        homes,
        pedestrian_way,
        signs_both_faces,
        latch_gap_m,
        leaf_half_thickness_m,
        obstacles: obstacles?,
        means: means?,
    })
}

fn read_means(node: Node) -> Option<Means> {
    let kind = node.word("kind", &MeansKind::NAMES, true).map(|index| MeansKind::ALL[index]);
    let direction = node.word("direction", &["open", "close"], false).map(|index| Direction::BOTH[index]);
    let monitored = node.flag("monitored");
    let reaches = items(&node, "reaches", |path, value| {
        let found = match value {
            Document::Text(text) => ZoneKind::NAMES.iter().position(|name| name == text),
            _ => None,
        };
        if found.is_none() {
            let code = if matches!(value, Document::Text(_)) { FaultCode::NotOneOf } else { FaultCode::WrongType };
            let fault = Fault::new(path, code).found(value).allowed(Allowed::OneOf { names: ZoneKind::NAMES.into() });
            node.fault(fault.example(Example::Text(ZoneKind::NAMES[0])));
        }
        found.map(|index| ZoneKind::ALL[index])
    });
    let has_area = node.has("area");
    let area = node.object("area", false).and_then(read_area);
    node.close();
    (area.is_some() == has_area).then_some(())?;
    Some(Means { kind: kind?, direction, monitored, reaches: reaches?, area })
}

fn read_area(node: Node) -> Option<SensedArea> {
    let on = node.word("on", &SensorFrame::NAMES, true).map(|index| SensorFrame::ALL[index]);
    let (from_x_m, from_y_m) = (node.number("from_x_m"), node.number("from_y_m"));
    let (to_x_m, to_y_m) = (node.number("to_x_m"), node.number("to_y_m"));
    let half_width_m = node.number("half_width_m");
    node.close();
    Some(SensedArea {
        on: on?,
        from_x_m: from_x_m?,
        from_y_m: from_y_m?,
        to_x_m: to_x_m?,
        to_y_m: to_y_m?,
        half_width_m,
    })
}

/// A list that need not be there, every item of it read before any is given up. `None` where it could not be read.
fn items<'a, T>(
    node: &Node<'a>,
    key: &'static str,
    read: impl Fn(String, &'a Document) -> Option<T>,
) -> Option<Option<Vec<T>>> {
    let path = node.path_of(key);
    match node.value(key) {
        Document::Null => Some(None),
        value @ Document::List(items) if items.len() > MOST_ITEMS => {
            let most = Some(MOST_ITEMS as f64);
            let allowed = Allowed::Range { least: Some(0.0), most, quantity: Quantity::Count };
            node.fault(Fault::new(path, FaultCode::OutOfRange).found(value).allowed(allowed));
            None
        }
        Document::List(items) => {
            let read: Vec<Option<T>> =
                items.iter().enumerate().map(|(index, item)| read(format!("{path}.{index}"), item)).collect();
            read.into_iter().collect::<Option<Vec<T>>>().map(Some)
        }
        other => {
            node.fault(wrong_type(&path, other, "array"));
            None
        }
    }
}

impl Job {
    /// Faults between these blocks and the rest of the job.
    pub(super) fn safety_relations(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        if self.motion.is_some() && self.operator.shaft_speed_deg_s.is_none() {
            faults.extend(missing("operator.shaft_speed_deg_s"));
        }
        if self.holding.is_some() && self.storm.is_none() {
            faults.push(missing_object("storm"));
        }
        for (index, obstacle) in self.site.iter().flat_map(|site| site.obstacles.iter().flatten()).enumerate() {
            for (key, [least, most]) in [("x_m", obstacle.x_m), ("y_m", obstacle.y_m)] {
                if least > most {
                    let allowed =
                        Allowed::Range { least: Some(least), most: Some(20.0), quantity: Quantity::ShortLength };
                    let fault = Fault::new(format!("site.obstacles.{index}.{key}.1"), FaultCode::LeastAboveMost);
                    faults.push(fault.found(&Document::Number(most)).allowed(allowed).example(Example::Number(least)));
                }
            }
        }
        faults
    }
}

/// The fault of a number that another block makes necessary.
fn missing(path: &'static str) -> Option<Fault> {
    let rule = rule_of(path)?;
    Some(Fault::new(path, FaultCode::Missing).allowed(rule.allowed()).example(Example::Number(rule.example)))
}
