//! A job with one of its numbers changed, for asking what an input does to the answer.

use super::types::{Arm, Hinges, Job};
use super::wind_types::WindFrom;

impl Job {
    /// Every number a person measures or estimates, with its path, for changing.
    ///
    /// Left out are what the person asks for (samples, required reserve), what no answer uses, and lists.
    fn inputs_mut(&mut self) -> alloc::vec::Vec<(&'static str, &mut f64)> {
        let leaf = &mut self.leaf;
        let mut inputs = alloc::vec![("leaf.length_m", &mut leaf.length_m)];
        let optional = [
            ("leaf.mass_kg", &mut leaf.mass_kg),
            ("leaf.wind_area_m2", &mut leaf.wind_area_m2),
            ("leaf.mass_centroid_m", &mut leaf.mass_centroid_m),
            ("leaf.wind_centroid_m", &mut leaf.wind_centroid_m),
            ("lean.angle_deg", &mut self.lean.angle_deg),
            ("lean.downhill_deg", &mut self.lean.downhill_deg),
            ("lean.plumb_offset_m", &mut self.lean.plumb_offset_m),
            ("wind.speed_m_s", &mut self.wind.speed_m_s),
            ("wind.force_coefficient", &mut self.wind.force_coefficient),
            ("wind.air_density_kg_m3", &mut self.wind.air_density_kg_m3),
            ("operator.arm_efficiency", &mut self.operator.arm_efficiency),
        ];
        inputs.extend(optional.into_iter().filter_map(|(path, value)| Some((path, value.as_mut()?))));
        match &mut self.hinges {
            Hinges::Plain(part) => {
                inputs.extend(part.friction_coefficient.as_mut().map(|value| ("hinges.friction_coefficient", value)));
                inputs.extend([
                    ("hinges.spacing_m", &mut part.spacing_m),
                    ("hinges.pin_radius_m", &mut part.pin_radius_m),
                    ("hinges.thrust_outer_radius_m", &mut part.thrust_outer_radius_m),
                    ("hinges.thrust_inner_radius_m", &mut part.thrust_inner_radius_m),
                ]);
            }
            Hinges::Rising(part) => {
                inputs.extend(part.friction_coefficient.as_mut().map(|value| ("hinges.friction_coefficient", value)));
                inputs.extend([
                    ("hinges.spacing_m", &mut part.spacing_m),
                    ("hinges.pin_radius_m", &mut part.pin_radius_m),
                    ("hinges.thrust_outer_radius_m", &mut part.thrust_outer_radius_m),
                    ("hinges.thrust_inner_radius_m", &mut part.thrust_inner_radius_m),
                    ("hinges.rise_m", &mut part.rise_m),
                ]);
            }
            Hinges::Rolling(part) => {
                inputs.extend(part.friction_coefficient.as_mut().map(|value| ("hinges.friction_coefficient", value)));
                inputs.extend([
                    ("hinges.spacing_m", &mut part.spacing_m),
                    ("hinges.pin_radius_m", &mut part.pin_radius_m),
                ]);
            }
            Hinges::Measured(part) => inputs.extend([
                ("hinges.pull_open_n", &mut part.pull_open_n),
                ("hinges.pull_close_n", &mut part.pull_close_n),
                ("hinges.pull_radius_m", &mut part.pull_radius_m),
            ]),
        }
        match &mut self.wind.from {
            Some(WindFrom::Beaufort(wind)) => inputs.extend([
                ("wind.from.gust_factor", &mut wind.gust_factor),
                ("wind.from.height_factor", &mut wind.height_factor),
            ]),
            Some(WindFrom::Asce7(wind)) => inputs
                .extend([("wind.from.speed_m_s", &mut wind.speed_m_s), ("wind.from.height_m", &mut wind.height_m)]),
            Some(WindFrom::En1991(wind)) => inputs
                .extend([("wind.from.basic_m_s", &mut wind.basic_m_s), ("wind.from.height_m", &mut wind.height_m)]),
            None => {}
        }
        inputs.push(("swing.open_deg", &mut self.swing.open_deg));
        inputs.push(("operator.rated_torque_n_m", &mut self.operator.rated_torque_n_m));
        if let Some(Arm { shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m, link_m, .. }) = &mut self.arm {
            inputs.extend([
                ("arm.shaft_x_m", shaft_x_m),
                ("arm.shaft_y_m", shaft_y_m),
                ("arm.bracket_u_m", bracket_u_m),
                ("arm.bracket_v_m", bracket_v_m),
                ("arm.crank_m", crank_m),
                ("arm.link_m", link_m),
            ]);
        }
        inputs
    }

    /// Paths and values of the inputs that can be varied.
    pub(crate) fn inputs(&self) -> alloc::vec::Vec<(&'static str, f64)> {
        self.clone().inputs_mut().into_iter().map(|(path, value)| (path, *value)).collect()
    }

    /// The same job with one input replaced.
    pub(crate) fn with_input(&self, path: &str, replaced: f64) -> Job {
        let mut job = self.clone();
        for (name, value) in job.inputs_mut() {
            if name == path {
                *value = replaced;
            }
        }
        job
    }
}
