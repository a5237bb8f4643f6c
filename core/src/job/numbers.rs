//! Every number of a job with its path: what validation and the list of assumptions walk over.

use super::fault::{Allowed, Example, Fault, FaultCode, Invalid};
use super::reader::missing_object;
use super::rules::rule_of;
use super::types::{Arm, Hinges, Job};
use crate::{Document, units::Quantity};
use alloc::vec::Vec;

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
            ("leaf.mass_kg", Some(leaf.mass_kg)),
            ("leaf.length_m", Some(leaf.length_m)),
            ("leaf.height_m", leaf.height_m),
            ("leaf.wind_area_m2", Some(leaf.wind_area_m2)),
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
                ("hinges.friction_coefficient", Some(plain.friction_coefficient)),
            ]),
            Hinges::Measured(measured) => numbers.extend([
                ("hinges.pull_open_n", Some(measured.pull_open_n)),
                ("hinges.pull_close_n", Some(measured.pull_close_n)),
                ("hinges.pull_radius_m", Some(measured.pull_radius_m)),
                ("hinges.pull_leaf_deg", Some(measured.pull_leaf_deg)),
            ]),
        }
        numbers.extend([
            ("lean.angle_deg", self.lean.angle_deg),
            ("lean.downhill_deg", self.lean.downhill_deg),
            ("wind.speed_m_s", Some(self.wind.speed_m_s)),
            ("wind.force_coefficient", Some(self.wind.force_coefficient)),
            ("wind.air_density_kg_m3", self.wind.air_density_kg_m3),
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
        numbers
    }

    /// Paths whose value was not said and is assumed instead. Peak torque, shaft speed and height are not assumed: unknown stays unknown.
    pub(crate) fn assumed(&self) -> Vec<&'static str> {
        const DERIVED: [&str; 4] =
            ["leaf.mass_centroid_m", "leaf.wind_centroid_m", "leaf.inertia_kg_m2", "setout.straightness"];
        let fixed = |path: &str| rule_of(path).is_some_and(|rule| rule.default.is_some());
        let numbers = self
            .numbers()
            .into_iter()
            .filter(|(path, value)| value.is_none() && (fixed(path) || DERIVED.contains(path)));
        let hand = self.hand.is_none().then_some("hand");
        hand.into_iter().chain(numbers.map(|(path, _)| path)).collect()
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
        errors.extend(self.relations());
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
        if let Hinges::Plain(plain) = &self.hinges {
            let (outer, inner) = (plain.thrust_outer_radius_m, plain.thrust_inner_radius_m);
            if outer < inner {
                let allowed = Allowed::Range { least: Some(inner), most: Some(0.2), quantity: Quantity::ShortLength };
                faults.push(
                    Fault::new("hinges.thrust_outer_radius_m", FaultCode::OuterBelowInner)
                        .found(&Document::Number(outer))
                        .allowed(allowed)
                        .example(Example::Number(inner)),
                );
            }
        }
        faults.extend(self.setout.iter().flat_map(|setout| setout.relations()));
        faults
    }
}
