//! A job with an operator of a list in it.

use super::ListedOperator;
use crate::job::{Job, Operator, OperatorBody};

/// Steps are compared in units of this, m: a sixteenth of an inch is a whole number of them.
const FINEST_M: f64 = 1e-7;
/// Widest step of a job, m.
const WIDEST_M: f64 = 0.5;

impl ListedOperator {
    /// Its ratings in the place of a job's own. What the list does not say of its arm, its outline and a leaf that drives its shaft stays as the
    /// job has it; the rest was of another operator.
    #[must_use]
    pub fn ratings(&self, own: &Operator) -> Operator {
        Operator {
            rated_torque_n_m: self.rated_torque_n_m,
            peak_torque_n_m: self.peak_torque_n_m,
            shaft_speed_deg_s: self.shaft_speed_deg_s,
            arm_efficiency: self.arm_efficiency.or(own.arm_efficiency),
            // What is typed of a leaf that drives the shaft holds for all of a list that says nothing of it.
            back_efficiency: own.back_efficiency,
            back_drives: self.back_drives.or(own.back_drives),
            body: self.outline().or(own.body),
        }
    }

    /// What stands about the shaft: body and base plate together; `None` where neither is known.
    #[must_use]
    pub fn outline(&self) -> Option<OperatorBody> {
        let Some(plate) = self.base.map(|base| base.sides_m()) else { return self.body };
        let Some(body) = self.body else {
            return Some(OperatorBody { along_m: plate[0], across_m: plate[1], height_m: None });
        };
        let both = |one: [f64; 2], other: [f64; 2]| [one[0].min(other[0]), one[1].max(other[1])];
        Some(OperatorBody { along_m: both(body.along_m, plate[0]), across_m: both(body.across_m, plate[1]), ..body })
    }

    /// A job with it: its ratings, its arm's lengths and travel in what a set-out may choose from, its duty in air up to `hottest_c`. Without a
    /// shaft speed nothing can be said of the motion, which is left out.
    #[must_use]
    pub fn fitted(&self, job: &Job, hottest_c: Option<f64>) -> Job {
        let mut job = job.clone();
        self.fit(&mut job, hottest_c);
        job
    }

    pub(crate) fn fit(&self, job: &mut Job, hottest_c: Option<f64>) {
        job.operator = self.ratings(&job.operator);
        let kit = self.kit.unwrap_or_default();
        if let Some(setout) = &mut job.setout {
            setout.crank_m = kit.crank_m.unwrap_or(setout.crank_m);
            setout.link_m = kit.link_m.unwrap_or(setout.link_m);
            if let Some(travel_deg) = self.shaft_travel_deg {
                setout.shaft_travel_deg = Some(setout.shaft_travel().min(travel_deg));
            }
            setout.step_m = common_step_m(setout.step_m, kit.step_m);
        }
        job.arm_half_width_m = kit.half_width_m.or(job.arm_half_width_m);
        match (&mut job.motion, self.shaft_speed_deg_s) {
            (Some(motion), Some(_)) => {
                if let Some(duty) = &mut motion.duty {
                    [duty.rated_cycles_per_hour, duty.rated_cycles_per_day] = self.rated_cycles(hottest_c);
                }
            }
            _ => job.motion = None,
        }
        if let Some(holding) = &mut job.holding {
            holding.shaft_torque_n_m = self.holding_torque_n_m;
        }
        if let Some(ground) = &mut job.ground {
            ground.joint_allowance_m = kit.joint_allowance_m.or(ground.joint_allowance_m);
        }
        if let Some(marks) = &mut job.marks {
            if let Some(base) = self.base {
                marks.anchor_along_m = Some(base.along_m);
                marks.anchor_across_m = Some(base.across_m);
                marks.anchor_offset_along_m = base.offset_along_m;
                marks.anchor_offset_across_m = base.offset_across_m;
            }
            marks.crank_ends_m = kit.crank_ends_m.or(marks.crank_ends_m);
            marks.link_ends_m = kit.link_ends_m.or(marks.link_ends_m);
        }
    }
}

/// The step both of a tape and of a kit: the least common multiple, m; where there is none within what a job may say, the kit's, since nothing
/// between its steps can be bought.
fn common_step_m(tape_m: Option<f64>, kit_m: Option<f64>) -> Option<f64> {
    let (Some(tape_m), Some(kit_m)) = (tape_m, kit_m) else { return kit_m.or(tape_m) };
    let steps = [tape_m, kit_m].map(|step_m| libm::round(step_m / FINEST_M) as u64);
    let [mut one, mut other] = steps;
    while other > 0 {
        (one, other) = (other, one % other);
    }
    let common_m = (steps[0] / one.max(1) * steps[1]) as f64 * FINEST_M;
    Some(if common_m > 0.0 && common_m <= WIDEST_M { common_m } else { kit_m })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_is_one_of_tape_and_kit_alike() {
        let near = |found: Option<f64>, wanted: f64| {
            assert!(found.is_some_and(|found| (found - wanted).abs() < 1e-12), "{found:?}, not {wanted}");
        };
        near(common_step_m(Some(0.005), Some(0.01)), 0.01);
        near(common_step_m(Some(0.004), Some(0.006)), 0.012);
        near(common_step_m(None, Some(0.02)), 0.02);
        near(common_step_m(Some(0.005), None), 0.005);
        // A sixteenth of an inch has no common multiple with a centimetre that anybody would mark.
        near(common_step_m(Some(0.001_587_5), Some(0.01)), 0.01);
        near(common_step_m(Some(0.001_587_5), Some(0.006_35)), 0.006_35);
        near(common_step_m(Some(0.0007), Some(0.4)), 0.4);
        assert_eq!(common_step_m(None, None), None);
    }
}
