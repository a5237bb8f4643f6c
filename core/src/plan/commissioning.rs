//! What was measured beside what was planned, with the tolerance agreed for it.
//!
//! A range says more than a tolerance: a pull may differ either way, a force may only be less, a slip lies in its window. Where
//! nothing is planned there is nothing to compare with, and that is said instead of a guess.

use super::Model;
use super::answer::Plan;
use super::breakaway::Trial;
use super::motion::Motion;
use super::record::{Check, CheckVerdict, Commissioning, RecordStep};
use crate::job::{AsBuilt, Record};
use crate::safety::Source;
use crate::terms::Direction;
use crate::units::{Quantity, TAPE_STEP_M};
use alloc::vec::Vec;

/// Shaft limits and the open leaf, degrees either way.
const ANGLE_DEG: f64 = 2.0;
/// Times of travel, as a fraction either way.
const TIME_SHARE: f64 = 0.2;
/// Close timer, s either way.
const TIMER_S: f64 = 2.0;
/// Pulls, as a fraction either way.
const PULL_SHARE: f64 = 0.3;
/// A spring balance and a hand are no better than this, N either way.
const PULL_N: f64 = 10.0;
/// Voltage at the motor below and above the planned one, as fractions.
const VOLTAGE_SHARES: [f64; 2] = [0.05, 0.1];
/// A single rod above this wants a second electrode, Ω.
const ROD_OHM: f64 = 25.0;

/// What a number may be.
#[derive(Clone, Copy)]
struct Agreed {
    planned: Option<f64>,
    least: Option<f64>,
    most: Option<f64>,
    source: Source,
}

impl Agreed {
    /// So much less and so much more than planned. Common practice, no source.
    fn around(planned: Option<f64>, below: f64, above: f64) -> Agreed {
        let (least, most) = (planned.map(|value| value - below), planned.map(|value| value + above));
        Agreed { planned, least, most, source: Source::PRACTICE }
    }

    fn share(planned: Option<f64>, share: f64) -> Agreed {
        let by = planned.map_or(0.0, |value| share * value.abs());
        Agreed::around(planned, by, by)
    }

    fn at_most(planned: Option<f64>, most: f64, source: Source) -> Agreed {
        Agreed { planned, least: None, most: Some(most), source }
    }

    fn check(self, path: &'static str, quantity: Quantity, measured: Option<f64>) -> Check {
        let Agreed { planned, least, most, source } = self;
        let verdict = match measured {
            None => CheckVerdict::NotMeasured,
            Some(_) if least.is_none() && most.is_none() => CheckVerdict::NotPlanned,
            // A planned number that is typed back from the tape must not fail by a rounding of its last bit.
            Some(value) if below(least, value) && below(most.map(|most| -most), -value) => CheckVerdict::Pass,
            Some(_) => CheckVerdict::LookAgain,
        };
        Check { path, quantity, planned, least, most, measured, source, verdict }
    }
}

fn below(limit: Option<f64>, value: f64) -> bool {
    limit.is_none_or(|limit| limit <= value + 1e-9 * limit.abs().max(1.0))
}

impl Model {
    /// The job's record against its plan; where there is none, every row as not measured.
    #[must_use]
    pub fn commissioning(&self, plan: &Plan) -> Commissioning {
        let record = self.job().record.clone().unwrap_or_default();
        let mut checks = self.offsets();
        checks.extend(self.measured(&record, plan));
        let step = |path, done: Option<bool>| RecordStep {
            path,
            done,
            verdict: match done {
                None => CheckVerdict::NotMeasured,
                Some(true) => CheckVerdict::Pass,
                Some(false) => CheckVerdict::LookAgain,
            },
        };
        let steps = alloc::vec![
            step("record.isolation_tried", record.isolation_tried),
            step("record.lock_off_tried", record.lock_off_tried),
            step("record.devices_tested", record.devices_tested),
            step("record.release_tried", record.release_tried),
            step("record.signs_fixed", record.signs_fixed),
            step("record.owner_instructed", record.owner_instructed),
        ];
        Commissioning { checks, steps }
    }

    /// The arm as built against the arm as planned, within the error of the tape.
    fn offsets(&self) -> Vec<Check> {
        let (job, arm) = (self.job(), self.arm());
        let built = job.as_built.unwrap_or_default();
        // Nothing is told from a mark that is printed to a step of the tape by less than half of that step.
        let error_m = job.tape.unwrap_or_default().error().max(0.5 * TAPE_STEP_M);
        // What is planned is told from the line that was measured from: the mark of the mark-out, or the number of the job.
        let (planned_m, lines_m, built_m) = (arm.lengths_m(), built.lines_m(job.leaf.face()), built.lengths_m());
        let check = |(index, path): (usize, &'static str)| {
            let planned_m = lines_m[index].map_or(planned_m[index], |line_m| planned_m[index] - line_m);
            Agreed::around(Some(planned_m), error_m, error_m).check(path, Quantity::ShortLength, built_m[index])
        };
        AsBuilt::length_paths().into_iter().enumerate().map(check).collect()
    }

    fn measured(&self, record: &Record, plan: &Plan) -> [Check; 13] {
        let job = self.job();
        // Limits are set for the arm that stands there, not for the one on paper.
        let travel = plan.as_built.as_ref().and_then(|built| built.shaft_travel_deg);
        let travel = travel.map_or(plan.shaft_travel_deg, f64::abs);
        let angle = |planned| Agreed::around(Some(planned), ANGLE_DEG, ANGLE_DEG);
        let time = |of: fn(&Motion) -> f64| Agreed::share(plan.motion.as_ref().map(of), TIME_SHARE);
        let timer = job.settings.and_then(|settings| settings.close_timer_s);
        let pull = |planned: f64| {
            let by = PULL_N.max(PULL_SHARE * planned.abs());
            // A leaf that has to be pulled may come lightly, and must not go by itself.
            let below = if planned >= 0.0 { by.min(planned) } else { by };
            Agreed::around(Some(planned), below, by)
        };
        let [pull_open, pull_close] = self.pulls_n(record);
        let trial = plan.breakaway.as_ref().map(|breakaway| breakaway.trial);
        let slip = |planned: fn(&Trial) -> Option<f64>| Agreed {
            planned: trial.as_ref().and_then(planned),
            least: trial.map(|trial| trial.must_hold_n),
            most: trial.and_then(|trial| trial.must_slip_n),
            source: Source::PRACTICE,
        };
        let [dynamic_n, static_n] = job.force_limits_n();
        let force = |limit| Agreed::at_most(None, limit, Source::EN_12453);
        let supply = job.motion.as_ref().and_then(|motion| motion.motor.as_ref()).map(|motor| motor.supply());
        let [drop, rise] = VOLTAGE_SHARES.map(|share| supply.map_or(0.0, |volts| share * volts));
        let rod = Agreed::at_most(None, ROD_OHM, Source::NEC_ROD);
        use Quantity::{Angle, Force, Resistance, Time, Voltage};
        [
            angle(travel).check("record.shaft_travel_deg", Angle, record.shaft_travel_deg),
            angle(job.swing.open_deg).check("record.open_leaf_deg", Angle, record.open_leaf_deg),
            time(|motion| motion.opening.time_s).check("record.opening_s", Time, record.opening_s),
            time(|motion| motion.closing.time_s).check("record.closing_s", Time, record.closing_s),
            Agreed::around(timer, TIMER_S, TIMER_S).check("record.close_timer_s", Time, record.close_timer_s),
            pull(pull_open).check("record.pull_open_n", Force, record.pull_open_n),
            pull(pull_close).check("record.pull_close_n", Force, record.pull_close_n),
            slip(|trial| trial.set_open_n).check("record.slip_open_n", Force, record.slip_open_n),
            slip(|trial| trial.set_close_n).check("record.slip_close_n", Force, record.slip_close_n),
            force(dynamic_n).check("record.dynamic_force_n", Force, record.dynamic_force_n),
            force(static_n).check("record.static_force_n", Force, record.static_force_n),
            Agreed::around(supply, drop, rise).check("record.motor_v", Voltage, record.motor_v),
            rod.check("record.rod_ohm", Resistance, record.rod_ohm),
        ]
    }

    /// Steady pulls square to the leaf, arm disconnected, calm air, opening and closing, N: `(τ_f ∓ M_g)/r`. Negative where the leaf goes
    /// by itself.
    fn pulls_n(&self, record: &Record) -> [f64; 2] {
        let (job, loads) = (self.job(), self.loads());
        let leaf_rad = record.pull_leaf_deg.map_or(self.linkage().open_rad / 2.0, f64::to_radians);
        let radius_m = record.pull_radius_m.unwrap_or(job.leaf.length_m);
        let gravity = loads.gravity_n_m(leaf_rad);
        Direction::BOTH
            .map(|direction| (loads.friction_at_n_m(leaf_rad, direction) - direction.sign() * gravity) / radius_m)
    }
}
