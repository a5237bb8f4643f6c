//! Every number of a job with its path: what validation and the list of assumptions walk over.

use super::fault::{Allowed, Example, Fault, FaultCode, Invalid};
use super::fit_types::Room;
use super::member_types::{Member, Tube};
use super::reader::missing_object;
use super::rules::rule_of;
use super::site_types::{Drag, Ground, Ice};
use super::types::{Arm, Hinges, Job, Lean, PlainHinges, RisingHinges};
use super::wind_types::{Wind, WindShape};
use crate::{Document, units::Quantity};
use alloc::{format, string::String, vec::Vec};

impl Job {
    /// The arm, where the job is to be planned and not only set out.
    ///
    /// # Errors
    /// [`Invalid`] naming the missing object.
    pub(crate) fn needed_arm(&self) -> Result<&Arm, Invalid> {
        self.arm.as_ref().ok_or_else(|| Invalid { errors: alloc::vec![missing_object("arm")] })
    }

    /// All numbers with their paths; `None` where the person said nothing.
    pub(crate) fn numbers(&self) -> Vec<(&'static str, Option<f64>)> {
        let (leaf, operator) = (&self.leaf, &self.operator);
        let mut numbers = alloc::vec![
            ("leaf.mass_kg", leaf.mass_kg),
            ("leaf.length_m", Some(leaf.length_m)),
            ("leaf.height_m", leaf.height_m),
            ("leaf.wind_area_m2", leaf.wind_area_m2),
            ("leaf.mass_centroid_m", leaf.mass_centroid_m),
            ("leaf.wind_centroid_m", leaf.wind_centroid_m),
            ("leaf.inertia_kg_m2", leaf.inertia_kg_m2),
        ];
        match &self.hinges {
            Hinges::Plain(plain) => numbers.extend([
                ("hinges.spacing_m", Some(plain.spacing_m)),
                ("hinges.pin_radius_m", Some(plain.pin_radius_m)),
                ("hinges.thrust_outer_radius_m", Some(plain.thrust_outer_radius_m)),
                ("hinges.thrust_inner_radius_m", Some(plain.thrust_inner_radius_m)),
                ("hinges.friction_coefficient", plain.friction_coefficient),
                ("hinges.friction_low", plain.friction_low),
                ("hinges.friction_high", plain.friction_high),
            ]),
            Hinges::Measured(measured) => numbers.extend([
                ("hinges.pull_open_n", Some(measured.pull_open_n)),
                ("hinges.pull_close_n", Some(measured.pull_close_n)),
                ("hinges.pull_radius_m", Some(measured.pull_radius_m)),
                ("hinges.pull_leaf_deg", Some(measured.pull_leaf_deg)),
            ]),
            Hinges::Rolling(rolling) => numbers.extend([
                ("hinges.spacing_m", Some(rolling.spacing_m)),
                ("hinges.pin_radius_m", Some(rolling.pin_radius_m)),
                ("hinges.friction_coefficient", rolling.friction_coefficient),
                ("hinges.friction_low", rolling.friction_low),
                ("hinges.friction_high", rolling.friction_high),
            ]),
            Hinges::Rising(rising) => numbers.extend([
                ("hinges.spacing_m", Some(rising.spacing_m)),
                ("hinges.pin_radius_m", Some(rising.pin_radius_m)),
                ("hinges.thrust_outer_radius_m", Some(rising.thrust_outer_radius_m)),
                ("hinges.thrust_inner_radius_m", Some(rising.thrust_inner_radius_m)),
                ("hinges.friction_coefficient", rising.friction_coefficient),
                ("hinges.friction_low", rising.friction_low),
                ("hinges.friction_high", rising.friction_high),
                ("hinges.rise_m", Some(rising.rise_m)),
            ]),
        }
        numbers.extend([
            ("lean.angle_deg", self.lean.angle_deg),
            ("lean.downhill_deg", self.lean.downhill_deg),
            ("lean.plumb_offset_m", self.lean.plumb_offset_m),
            ("lean.plumb_height_m", self.lean.plumb_height_m),
        ]);
        numbers.extend(self.wind.numbers());
        numbers.extend(self.drag.iter().flat_map(Drag::numbers));
        numbers.extend(self.ice.iter().flat_map(Ice::numbers));
        numbers.extend(self.ground.iter().flat_map(Ground::numbers));
        numbers.extend(self.motion.iter().flat_map(|motion| motion.numbers()));
        numbers.extend(self.breakaway.iter().flat_map(|breakaway| breakaway.numbers()));
        numbers.extend(self.holding.iter().flat_map(|holding| holding.numbers()));
        numbers.extend(self.contact.iter().flat_map(|contact| contact.numbers()));
        numbers.extend(self.site.iter().flat_map(|site| site.numbers()));
        numbers.extend(self.settings.iter().map(|settings| ("settings.close_timer_s", settings.close_timer_s)));
        numbers.extend(self.record.iter().flat_map(|record| record.numbers()));
        numbers.extend([
            ("swing.open_deg", Some(self.swing.open_deg)),
            ("operator.rated_torque_n_m", Some(operator.rated_torque_n_m)),
            ("operator.peak_torque_n_m", operator.peak_torque_n_m),
            ("operator.shaft_speed_deg_s", operator.shaft_speed_deg_s),
            ("operator.arm_efficiency", operator.arm_efficiency),
            ("required_reserve", self.required_reserve),
            ("samples", self.samples.map(f64::from)),
        ]);
        if let Some(arm) = &self.arm {
            numbers.extend([
                ("arm.shaft_x_m", Some(arm.shaft_x_m)),
                ("arm.shaft_y_m", Some(arm.shaft_y_m)),
                ("arm.bracket_u_m", Some(arm.bracket_u_m)),
                ("arm.bracket_v_m", Some(arm.bracket_v_m)),
                ("arm.crank_m", Some(arm.crank_m)),
                ("arm.link_m", Some(arm.link_m)),
            ]);
        }
        numbers.extend(self.setout.iter().flat_map(|setout| setout.numbers()));
        match &self.room {
            Some(room) => numbers.extend(room.numbers()),
            // What stands around is held against a leaf and an arm whose sizes nobody said.
            None if !self.obstacles().is_empty() => numbers.extend(Room::default().numbers()),
            None => {}
        }
        numbers.extend(self.marks.iter().flat_map(|marks| marks.numbers()));
        numbers.extend(self.tape.iter().map(|tape| ("tape.error_m", tape.error_m)));
        numbers.extend(self.as_built.iter().flat_map(|built| built.numbers()));
        numbers
    }

    /// Paths whose value was not said and is assumed instead. Peak torque, shaft speed and height are not assumed: unknown stays unknown.
    pub(crate) fn assumed(&self) -> Vec<&'static str> {
        const DERIVED: [&str; 4] =
            ["leaf.mass_centroid_m", "leaf.wind_centroid_m", "leaf.inertia_kg_m2", "setout.straightness"];
        // Each has a default that follows from another field, and stands for what was not said all the same.
        const FOLLOWING: [&str; 3] = ["motion.slow_speed_deg_s", "motion.motor.supply_v", "breakaway.push_radius_m"];
        let fixed = |path: &str| rule_of(path).is_some_and(|rule| rule.default.is_some());
        let assumed = |path: &str| match path {
            // Members and a plumb line are an answer, not an assumption.
            "lean.angle_deg" => self.lean.plumb_offset_m.is_none(),
            "ice.area_factor" => self.leaf.members.is_none(),
            path if DERIVED.contains(&path) => self.leaf.members.is_none(),
            path => fixed(path) || FOLLOWING.contains(&path),
        };
        let numbers = self.numbers().into_iter().filter(|(path, value)| value.is_none() && assumed(path));
        let hand = self.hand.is_none().then_some("hand");
        let mut paths: Vec<&'static str> = hand.into_iter().chain(numbers.map(|(path, _)| path)).collect();
        paths.extend(self.assumed_words());
        for (_, rule, value) in self.listed_numbers() {
            let path = if rule.starts_with("wind.") { storm_path(rule) } else { Some(rule) };
            paths.extend(path.filter(|path| value.is_none() && fixed(rule) && !paths.contains(path)));
        }
        paths
    }

    /// Paths of words and yes-or-no answers of the optional blocks that are assumed.
    fn assumed_words(&self) -> impl Iterator<Item = &'static str> {
        let bare = |member: &Member| matches!(member, Member::Tube(Tube { corners: None, .. }));
        let corners = self.leaf.members.iter().flatten().any(bare).then_some("leaf.members.corners");
        let of = |wind: &Wind, eccentric, returns| match wind.shape {
            Some(WindShape::Asce7Wall(wall)) if wall.eccentric.is_none() => Some(eccentric),
            Some(WindShape::En1991Wall(wall)) if wall.returns.is_none() => Some(returns),
            _ => None,
        };
        let wind = of(&self.wind, "wind.shape.eccentric", "wind.shape.returns");
        let storm = self.storm.as_ref().and_then(|storm| of(storm, "storm.shape.eccentric", "storm.shape.returns"));
        let collar = match self.hinges {
            Hinges::Plain(PlainHinges { collar: None, .. }) | Hinges::Rising(RisingHinges { collar: None, .. }) => {
                Some("hinges.collar")
            }
            _ => None,
        };
        [collar, corners, wind, storm].into_iter().flatten()
    }

    /// Numbers whose path is not their rule's: the storm's and the members'. Path, path of the rule, value.
    fn listed_numbers(&self) -> Vec<(String, &'static str, Option<f64>)> {
        let storm = self.storm.iter().flat_map(Wind::numbers).map(|(rule, value)| {
            let path = rule.strip_prefix("wind.").map_or_else(|| rule.into(), |rest| format!("storm.{rest}"));
            (path, rule, value)
        });
        let members = self.leaf.members.iter().flatten().enumerate().flat_map(|(index, member)| {
            member.numbers().into_iter().map(move |(rule, value)| {
                let rest = rule.strip_prefix("leaf.members.").unwrap_or(rule);
                (format!("leaf.members.{index}.{rest}"), rule, value)
            })
        });
        storm.chain(members).collect()
    }

    /// Checks the schema, every range and every relation between fields.
    ///
    /// # Errors
    /// All faults at once. A job that passes holds finite numbers only.
    pub fn check(&self) -> Result<(), Invalid> {
        let mut errors: Vec<Fault> = super::reader::schema_fault(f64::from(self.schema)).into_iter().collect();
        for (path, value) in self.numbers() {
            errors.extend(value.and_then(|value| rule_of(path)?.check(value)));
        }
        for (path, rule, value) in self.listed_numbers() {
            let fault = value.and_then(|value| rule_of(rule)?.check(value));
            errors.extend(fault.map(|fault| Fault { path, ..fault }));
        }
        errors.extend(self.uncertainty_faults());
        // Relations mean something between numbers that are within their own ranges.
        if errors.is_empty() {
            errors.extend(self.relations());
        }
        if errors.is_empty() { Ok(()) } else { Err(Invalid { errors }) }
    }

    /// Faults between fields that are each within their own range.
    pub(super) fn relations(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        let length = self.leaf.length_m;
        for (path, centre) in
            [("leaf.mass_centroid_m", self.leaf.mass_centroid_m), ("leaf.wind_centroid_m", self.leaf.wind_centroid_m)]
        {
            if let Some(value) = centre.filter(|&value| value > length) {
                let allowed = Allowed::Range { least: Some(-1.0), most: Some(length), quantity: Quantity::Length };
                faults.push(
                    Fault::new(path, FaultCode::OutsideLeaf)
                        .found(&Document::Number(value))
                        .allowed(allowed)
                        .example(Example::Number(length / 2.0)),
                );
            }
        }
        let collar = match &self.hinges {
            Hinges::Plain(plain) => Some((plain.thrust_outer_radius_m, plain.thrust_inner_radius_m)),
            Hinges::Rising(rising) => Some((rising.thrust_outer_radius_m, rising.thrust_inner_radius_m)),
            Hinges::Measured(_) | Hinges::Rolling(_) => None,
        };
        if let Some((outer, inner)) = collar
            && outer < inner
        {
            let allowed = Allowed::Range { least: Some(inner), most: Some(0.2), quantity: Quantity::ShortLength };
            faults.push(
                Fault::new("hinges.thrust_outer_radius_m", FaultCode::OuterBelowInner)
                    .found(&Document::Number(outer))
                    .allowed(allowed)
                    .example(Example::Number(inner)),
            );
        }
        faults.extend(self.ramp_fault());
        faults.extend(self.leaf.member_faults());
        faults.extend(self.wind.relations("wind", &self.leaf));
        faults.extend(self.storm.iter().flat_map(|storm| storm.relations("storm", &self.leaf)));
        faults.extend(self.lean.relations());
        faults.extend(self.safety_relations());
        let inputs: Vec<&'static str> = self.inputs().into_iter().map(|(path, _)| path).collect();
        let stated = self.uncertainty.iter().flatten();
        faults.extend(stated.filter(|(path, _)| !inputs.contains(&path.as_str())).map(|(path, &fraction)| {
            // A field of the table, but nothing was said there that could be uncertain.
            Fault::new(format!("uncertainty.{path}"), FaultCode::NotOneOf)
                .found(&Document::Number(fraction))
                .allowed(Allowed::OneOf { names: inputs.clone() })
        }));
        faults.extend(self.setout.iter().flat_map(|setout| setout.relations()));
        faults.extend(self.room.iter().flat_map(|room| room.relations()));
        faults.extend(self.marks.iter().flat_map(|marks| marks.relations()));
        faults
    }

    /// Faults of the stated uncertainties of a job that was not read from a document.
    fn uncertainty_faults(&self) -> Vec<Fault> {
        let allowed = || Allowed::Range { least: Some(0.0), most: Some(1.0), quantity: Quantity::Percent };
        let stated = self.uncertainty.iter().flatten();
        stated
            .filter(|(_, fraction)| !(0.0..=1.0).contains(*fraction))
            .map(|(path, &fraction)| {
                Fault::new(format!("uncertainty.{path}"), FaultCode::OutOfRange)
                    .found(&Document::Number(fraction))
                    .allowed(allowed())
                    .example(Example::Number(0.1))
            })
            .collect()
    }
}

impl Lean {
    /// A plumb line is an offset over a height, and instead of an angle.
    fn relations(&self) -> Option<Fault> {
        match (self.angle_deg, self.plumb_offset_m, self.plumb_height_m) {
            (Some(angle), Some(_), _) => {
                Some(Fault::new("lean.angle_deg", FaultCode::SaidTwice).found(&Document::Number(angle)))
            }
            (_, Some(_), None) => Some(half("lean.plumb_height_m")),
            (_, None, Some(_)) => Some(half("lean.plumb_offset_m")),
            _ => None,
        }
    }
}

/// The fault of a value that is missing beside its partner.
pub(super) fn half(path: &'static str) -> Fault {
    let fault = Fault::new(path, FaultCode::HalfOfPair);
    match rule_of(path) {
        Some(rule) => fault.allowed(rule.allowed()).example(Example::Number(rule.example)),
        None => fault,
    }
}

/// The storm's path of a wind rule that has a default.
fn storm_path(rule: &str) -> Option<&'static str> {
    Some(match rule {
        "wind.air_density_kg_m3" => "storm.air_density_kg_m3",
        "wind.from.topographic" => "storm.from.topographic",
        "wind.from.directionality" => "storm.from.directionality",
        "wind.from.importance" => "storm.from.importance",
        "wind.from.gust_effect" => "storm.from.gust_effect",
        "wind.from.orography" => "storm.from.orography",
        "wind.from.yearly_probability" => "storm.from.yearly_probability",
        "wind.shape.clearance" => "storm.shape.clearance",
        "wind.shape.shelter_factor" => "storm.shape.shelter_factor",
        _ => return None,
    })
}
