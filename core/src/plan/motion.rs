//! The leaf through time: runs, limits, stops, coasting, the way by hand, duty.

use super::Model;
use crate::arm::ShaftPath;
use crate::drive::{
    CoastState, DrivenRun, Motor, Moving, PrescribedRun, Profile, Released, TimedTorque, Track, coast, drive, prescribe,
};
use crate::job::{Duty, MotionFacts};
use crate::leaf::LeafLoads;
use crate::safety::{Source, spring_force_n};
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// Shaft speed in the slow zones over the operator's, where nothing is said. Common practice, no source.
const SLOW_SHARE: f64 = 1.0 / 3.0;

/// Force to move a gate by hand where people live, N. EN 12604, from memory, doubtful.
const HAND_LIMIT_N: f64 = 150.0;

/// Leaf angles at which the force by hand is looked at.
const INTERVALS: u32 = 360;

/// The leaf through time.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Motion {
    /// Opening against the wind.
    pub opening: PrescribedRun,
    /// Closing against the wind.
    pub closing: PrescribedRun,
    /// Largest shaft torque with the wind behind, both ways: holding back and braking together.
    pub held_back: TimedTorque,
    /// Largest shaft torque of both, start and inertia included, over the rated torque.
    pub utilisation: f64,
    /// The same over the peak torque; `null` where that is unknown.
    pub peak_utilisation: Option<f64>,
    /// Where the operator's limits are set.
    pub limits: ShaftLimits,
    /// Inertia of motor and gear at the operator's shaft that stops and coasting are reckoned with, kg·m²; `null` where the job describes no
    /// motor: they are then those of the leaf alone, and the gate's are more.
    pub drive_inertia_kg_m2: Option<f64>,
    /// What the stop behind the open limit takes.
    pub open_stop: EndStop,
    /// What the stop behind the closed limit takes.
    pub closed_stop: EndStop,
    /// How far the leaf runs on after the drive lets go half open, opening.
    pub coast_open: Coast,
    /// The same closing.
    pub coast_close: Coast,
    /// Moving the leaf by hand, arm disconnected.
    pub hand: HandForce,
    /// The motor's runs, where the job describes it.
    pub driven: Option<Driven>,
    /// Cycles against the rating, where the job says how many.
    pub duty: Option<DutyUse>,
}

/// Shaft angles to set, degrees from closed, signed like the shaft angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ShaftLimits {
    /// Closed limit.
    pub closed_deg: f64,
    /// Open limit.
    pub open_deg: f64,
    /// Start of the slow zone when opening; the open limit where there is none.
    pub slow_opening_from_deg: f64,
    /// Start of the slow zone when closing; the closed limit where there is none.
    pub slow_closing_from_deg: f64,
    /// Leaf angle there when opening, degrees.
    pub slow_opening_leaf_deg: f64,
    /// Leaf angle there when closing, degrees.
    pub slow_closing_leaf_deg: f64,
    /// Shaft speed in the slow zones, degrees a second.
    pub slow_speed_deg_s: f64,
}

/// A positive stop at a limit that the drive passes without its last ramp.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct EndStop {
    /// Edge speed at the limit from the speed before the last ramp, m/s.
    pub edge_speed_m_s: f64,
    /// Kinetic energy of leaf and drive then, J; of the leaf alone where `drive_inertia_kg_m2` is not known.
    pub energy_j: f64,
    /// Force of the stop that takes it, N, the motor's push apart; `null` without its stiffness.
    pub force_n: Option<f64>,
    /// Edge speed with the slow zone missed too, m/s.
    pub full_edge_speed_m_s: f64,
    /// Kinetic energy then, J.
    pub full_energy_j: f64,
    /// Force then, N.
    pub full_force_n: Option<f64>,
}

/// How far the leaf runs on from half open at full speed after the drive lets go, motor and gear turning with it where they are known.
///
/// A gear that does not back-drive stops it sooner; where the job says that it does not, nothing is reckoned.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Coast {
    /// Leaf speed at release, degrees a second.
    pub leaf_speed_deg_s: f64,
    /// Whether it stops by itself in calm air.
    pub calm: CoastState,
    /// Leaf angle it runs on, degrees, at most to the stop; `null` where nothing brakes it, or a gear that does not back-drive.
    pub calm_leaf_deg: Option<f64>,
    /// Whether it stops by itself with the wind behind it.
    pub following: CoastState,
    /// Leaf angle it runs on then, degrees.
    pub following_leaf_deg: Option<f64>,
}

/// Largest steady push at the latch edge that moves the leaf with the arm disconnected.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct HandForce {
    /// In calm air, N.
    pub calm_n: f64,
    /// Leaf angle there, degrees.
    pub leaf_deg: f64,
    /// Against the working wind, N.
    pub against_wind_n: f64,
    /// What it is compared with, N.
    pub limit_n: f64,
    /// Where that comes from.
    pub source: Source,
}

/// The motor's runs from limit to limit: asked for the speed of ramps and slow zones, it gives what its line allows.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Driven {
    /// The motor as it is at the operator's shaft and at the supply it has.
    pub motor: Motor,
    /// Opening against the wind.
    pub opening: DrivenRun,
    /// Closing against the wind.
    pub closing: DrivenRun,
    /// Opening with the wind behind.
    pub opening_following: DrivenRun,
    /// Closing with the wind behind.
    pub closing_following: DrivenRun,
}

/// Cycles against the operator's rating.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct DutyUse {
    /// Running time of one cycle, s: once open, once closed, in the prescribed motion.
    pub cycle_s: f64,
    /// Part of the busiest hour in which it runs.
    pub running: Option<f64>,
    /// Cycles an hour over the rated ones.
    pub hour_utilisation: Option<f64>,
    /// Cycles a day over the rated ones.
    pub day_utilisation: Option<f64>,
}

impl Model {
    /// What moves, under some loads.
    pub(super) fn moving<'a>(&'a self, loads: &'a LeafLoads) -> Moving<'a> {
        Moving {
            path: ShaftPath::new(self.linkage()),
            loads,
            efficiency: self.efficiency(),
            length_m: self.job().leaf.length_m,
        }
    }

    /// What a motor moves: a gear that does not back-drive keeps from it whatever the leaf would drive it with.
    pub(super) fn driven_moving(&self) -> Moving<'_> {
        let moving = self.moving(self.loads());
        let back_drives = self.job().operator.may_be_driven_back();
        Moving { efficiency: if back_drives { moving.efficiency } else { moving.efficiency.not_back() }, ..moving }
    }

    /// Both prescribed runs, opening first; `None` where the job says nothing of motion.
    pub(super) fn runs(&self, loads: &LeafLoads, wind: WindCase, samples: u32) -> Option<[PrescribedRun; 2]> {
        let (facts, speed) = (self.job().motion.as_ref()?, self.speed_rad_s()?);
        let moving = self.moving(loads);
        Some(
            Direction::BOTH.map(|direction| {
                prescribe(&moving, &profile(&moving, facts, speed, direction), direction, wind, samples)
            }),
        )
    }

    /// Largest shaft torque with the wind behind; `None` where the job says nothing of motion.
    pub(super) fn held_back(&self, loads: &LeafLoads) -> Option<TimedTorque> {
        let [opening, closing] = self.runs(loads, WindCase::Following, 2)?.map(|run| run.peak);
        Some(if closing.shaft_torque_n_m > opening.shaft_torque_n_m { closing } else { opening })
    }

    /// Inertia of motor and gear at the operator's shaft, kg·m²; `None` where the job describes no motor.
    pub(super) fn drive_inertia_kg_m2(&self) -> Option<f64> {
        Some(self.job().motion.as_ref()?.motor_at_shaft()?.inertia_kg_m2)
    }

    pub(super) fn speed_rad_s(&self) -> Option<f64> {
        self.job().operator.shaft_speed_deg_s.map(f64::to_radians)
    }

    /// With the tracks of the motor's runs, in the order of [`Driven`].
    pub(super) fn motion(&self) -> Option<(Motion, Vec<Track>)> {
        let (job, loads) = (self.job(), self.loads());
        let (facts, speed) = (job.motion.as_ref()?, self.speed_rad_s()?);
        let [opening, closing] = self.runs(loads, WindCase::Against, job.samples())?;
        let peak = opening.peak.shaft_torque_n_m.max(closing.peak.shaft_torque_n_m);
        let operator = &job.operator;
        let cycle_s = opening.time_s + closing.time_s;
        let driven = facts.motor_at_shaft().map(|motor| self.driven(facts, speed, &motor));
        let (driven, tracks) = driven.unzip();
        let motion = Motion {
            held_back: self.held_back(loads)?,
            utilisation: peak / operator.rated_torque_n_m,
            peak_utilisation: operator.peak_torque_n_m.map(|most| peak / most),
            limits: self.shaft_limits(facts, speed),
            drive_inertia_kg_m2: self.drive_inertia_kg_m2(),
            open_stop: self.end_stop(facts, speed, Direction::Open),
            closed_stop: self.end_stop(facts, speed, Direction::Close),
            coast_open: self.coast(facts, speed, Direction::Open),
            coast_close: self.coast(facts, speed, Direction::Close),
            hand: self.hand_force(),
            driven,
            duty: facts.duty.as_ref().map(|duty| DutyUse::new(duty, cycle_s)),
            opening,
            closing,
        };
        Some((motion, tracks.unwrap_or_default()))
    }

    fn shaft_limits(&self, facts: &MotionFacts, speed: f64) -> ShaftLimits {
        let path = ShaftPath::new(self.linkage());
        let travel = path.travel_rad();
        let opening = (travel - facts.slow_open().to_radians()).max(0.0);
        let closing = facts.slow_close().to_radians().min(travel);
        let shaft_deg = |progress: f64| (path.sign() * progress).to_degrees();
        ShaftLimits {
            closed_deg: 0.0,
            open_deg: shaft_deg(travel),
            slow_opening_from_deg: shaft_deg(opening),
            slow_closing_from_deg: shaft_deg(closing),
            slow_opening_leaf_deg: path.at(opening).leaf_rad.to_degrees(),
            slow_closing_leaf_deg: path.at(closing).leaf_rad.to_degrees(),
            slow_speed_deg_s: slow_rad_s(facts, speed).to_degrees(),
        }
    }

    /// The leaf's speed at the limit itself, where the shaft still has the speed before its last ramp (slow zone kept), or all of it.
    fn end_stop(&self, facts: &MotionFacts, speed: f64, direction: Direction) -> EndStop {
        let path = ShaftPath::new(self.linkage());
        let (at, zone) = match direction {
            Direction::Open => (path.travel_rad(), facts.slow_open()),
            Direction::Close => (0.0, facts.slow_close()),
        };
        let gain = path.at(at).gain;
        let arrival = if zone > 0.0 { slow_rad_s(facts, speed) } else { speed };
        let (inertia, length) = (self.loads().inertia_kg_m2, self.job().leaf.length_m);
        let drive = self.drive_inertia_kg_m2().unwrap_or(0.0);
        let energy = |shaft: f64| 0.5 * (inertia * gain * gain + drive) * shaft * shaft;
        let force = |shaft: f64| facts.stop_stiffness_n_per_m.map(|stiffness| spring_force_n(stiffness, energy(shaft)));
        EndStop {
            edge_speed_m_s: gain * arrival * length,
            energy_j: energy(arrival),
            force_n: force(arrival),
            full_edge_speed_m_s: gain * speed * length,
            full_energy_j: energy(speed),
            full_force_n: force(speed),
        }
    }

    /// Leaf and drive let go half open at full speed.
    fn coast(&self, facts: &MotionFacts, speed: f64, direction: Direction) -> Coast {
        let (sign, half) = (direction.sign(), self.linkage().open_rad / 2.0);
        let start = self.linkage().pose(half).crank_rad.abs();
        let turned = |loads: &LeafLoads| {
            let moving = self.moving(loads);
            let way = if sign > 0.0 { moving.path.travel_rad() - start } else { start };
            let released = Released {
                moving: &moving,
                inertia_kg_m2: self.drive_inertia_kg_m2().unwrap_or(0.0),
                drag_n_m: facts.coast_drag(),
                direction,
                wind: WindCase::Following,
            };
            let energy = released.energy_j(start, speed);
            let (state, way) = coast(energy, way, |way, energy| released.rate_n_m(start + sign * way, energy));
            let leaf = (moving.path.at(start + sign * way).leaf_rad - half).abs();
            (state, (state != CoastState::RunsOn).then_some(leaf.to_degrees()))
        };
        let [(calm, calm_leaf_deg), (following, following_leaf_deg)] = if self.job().operator.may_be_driven_back() {
            [turned(&self.loads().in_wind(0.0)), turned(self.loads())]
        } else {
            [(CoastState::GearHolds, None); 2]
        };
        let leaf_speed = ShaftPath::new(self.linkage()).at(start).gain * speed;
        Coast { leaf_speed_deg_s: leaf_speed.to_degrees(), calm, calm_leaf_deg, following, following_leaf_deg }
    }

    fn hand_force(&self) -> HandForce {
        let (loads, length) = (self.loads(), self.job().leaf.length_m);
        let mut hand = HandForce {
            calm_n: 0.0,
            leaf_deg: 0.0,
            against_wind_n: 0.0,
            limit_n: HAND_LIMIT_N,
            source: Source::EN_12604,
        };
        for index in 0..=INTERVALS {
            let leaf_rad = self.linkage().open_rad * f64::from(index) / f64::from(INTERVALS);
            for direction in Direction::BOTH {
                let calm = direction.sign() * loads.in_wind(0.0).demand_n_m(leaf_rad, direction, WindCase::Against);
                let windy = direction.sign() * loads.demand_n_m(leaf_rad, direction, WindCase::Against);
                if calm / length > hand.calm_n {
                    (hand.calm_n, hand.leaf_deg) = (calm / length, leaf_rad.to_degrees());
                }
                hand.against_wind_n = hand.against_wind_n.max(windy / length);
            }
        }
        hand
    }

    fn driven(&self, facts: &MotionFacts, speed: f64, motor: &Motor) -> (Driven, Vec<Track>) {
        let moving = self.driven_moving();
        let mut tracks = Vec::new();
        let mut run = |direction, wind| {
            let speeds = profile(&moving, facts, speed, direction);
            let (run, track) = drive(&moving, motor, &speeds, direction, wind, self.job().samples());
            tracks.push(track);
            run
        };
        let driven = Driven {
            motor: motor.clone(),
            opening: run(Direction::Open, WindCase::Against),
            closing: run(Direction::Close, WindCase::Against),
            opening_following: run(Direction::Open, WindCase::Following),
            closing_following: run(Direction::Close, WindCase::Following),
        };
        (driven, tracks)
    }
}

/// The shaft's speed through time, one way, at full speed `speed` rad/s.
pub(super) fn profile(moving: &Moving, facts: &MotionFacts, speed: f64, direction: Direction) -> Profile {
    let zone = match direction {
        Direction::Open => facts.slow_open(),
        Direction::Close => facts.slow_close(),
    };
    Profile::with_slow_end(
        moving.path.travel_rad(),
        speed,
        speed / facts.ramp_up(),
        speed / facts.ramp_down(),
        zone.to_radians(),
        slow_rad_s(facts, speed),
    )
}

/// Shaft speed in the slow zones, rad/s; never more than outside them.
fn slow_rad_s(facts: &MotionFacts, speed: f64) -> f64 {
    facts.slow_speed_deg_s.map_or(SLOW_SHARE * speed, |slow| slow.to_radians().min(speed))
}

impl DutyUse {
    pub(super) fn new(duty: &Duty, cycle_s: f64) -> DutyUse {
        let over = |asked: Option<f64>, rated: Option<f64>| asked.zip(rated).map(|(asked, rated)| asked / rated);
        DutyUse {
            cycle_s,
            running: duty.cycles_per_hour.map(|cycles| cycles * cycle_s / 3600.0),
            hour_utilisation: over(duty.cycles_per_hour, duty.rated_cycles_per_hour),
            day_utilisation: over(duty.cycles_per_day, duty.rated_cycles_per_day),
        }
    }
}
