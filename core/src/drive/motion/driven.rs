//! The leaf through time where a motor drives it against friction, wind and lean: does it arrive, and when.

use super::control::Control;
use super::{Motor, Moving, Profile, Track};
use crate::arm::PathPoint;
use crate::leaf::LeafStation;
use crate::numerics::{Integrator, StepTrial};
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// Error of one step over the scale of the quantity. The energies are integrated beside the motion, so their sum tells how well it was kept.
const TOLERANCE: f64 = 1e-8;

/// A shaft slower than this part of the motor's no-load speed counts as standing. The last of the way to a stand is an exponential that no
/// clock sees the end of.
const STANDING: f64 = 1e-3;

/// After this long it does stand, s.
const STANDS_AFTER_S: f64 = 10.0;

/// Longest time looked at, s. A leaf that takes longer creeps rather than opens.
const LONGEST_S: f64 = 1800.0;

/// Longest step, part of the way: so short that none leaps over a braking before a slow zone, which the estimate of its error would not see. What is
/// asked of the motor changes by where the shaft is, so a shaft that is slow may take its time.
const LONGEST_PART: f64 = 1.0 / 100.0;

/// Longest step in time, s.
const LONGEST_STEP_S: f64 = LONGEST_S / 200.0;

/// Most steps: an end to what a hostile document can ask for.
const MOST_STEPS: usize = 100_000;

/// How a driven run ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum DrivenState {
    /// The leaf reaches its limit.
    Arrives,
    /// It comes to a stand on the way, the motor pushing.
    Stalls,
    /// It comes to a stand, and wind or lean then push it back against the motor at standstill.
    DrivenBack,
    /// Still creeping after half an hour.
    Creeps,
}

/// The leaf at one time of a driven run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct DrivenPoint {
    /// Time from the start, s.
    pub time_s: f64,
    /// Shaft angle from closed, degrees, signed.
    pub shaft_deg: f64,
    /// Leaf angle from closed, degrees.
    pub leaf_deg: f64,
    /// Shaft speed, degrees a second, signed like the shaft angle.
    pub shaft_speed_deg_s: f64,
    /// Speed of the latch edge, m/s, magnitude.
    pub edge_speed_m_s: f64,
    /// Torque of motor and gear at the operator's shaft, N·m, signed like the shaft angle.
    pub shaft_torque_n_m: f64,
}

/// Where the motor's work went, J.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct EnergyBalance {
    /// Work of motor and gear at the operator's shaft; negative where they brake.
    pub motor_j: f64,
    /// Work of the wind on the leaf; negative against it.
    pub wind_j: f64,
    /// Work of the weight on the leaf.
    pub gravity_j: f64,
    /// Taken by hinges and drag.
    pub friction_j: f64,
    /// Taken by the arm.
    pub arm_loss_j: f64,
    /// Kinetic energy of leaf, motor and gear at the end.
    pub kinetic_j: f64,
    /// What is left unexplained, over the largest of the above.
    pub error: f64,
}

/// One way, the motor asked for the speed of ramps and slow zones, and giving what its line allows.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct DrivenRun {
    /// How it ends.
    pub state: DrivenState,
    /// When, s; a leaf stands from when its shaft is slower than a thousandth of the no-load speed, and stays so for ten seconds.
    pub time_s: f64,
    /// Leaf angle then, degrees.
    pub leaf_deg: f64,
    /// Greatest speed of the latch edge, m/s, of the steps taken.
    pub edge_speed_m_s: f64,
    /// Speed of the latch edge at the end, m/s.
    pub arrival_edge_speed_m_s: f64,
    /// Where the energy went.
    pub energy: EnergyBalance,
    /// Rows at evenly spaced times, between the steps by a cubic.
    pub curve: Vec<DrivenPoint>,
}

/// Progress, its speed, and the energies: motor, wind, gravity, friction, arm.
type State = [f64; 7];

struct DrivenSystem<'a> {
    moving: &'a Moving<'a>,
    motor: &'a Motor,
    control: &'a Control<'a>,
    direction: Direction,
    wind: WindCase,
}

impl DrivenSystem<'_> {
    /// Where the leaf is after some progress of the shaft, and what the drive must supply there, N·m.
    fn place(&self, progress: f64) -> ShaftPlace {
        let station = self.moving.path.at(progress);
        let leaf = self.moving.loads.station(station.leaf_rad);
        let demand_n_m = self.moving.loads.demand_of_n_m(&leaf, self.direction, self.wind);
        ShaftPlace { station, leaf, demand_n_m }
    }

    /// Acceleration of the shaft's progress, rad/s², and what the arm takes, N·m at the shaft.
    ///
    /// `I·θ̈ = τ − D` with the demand `D = s·τ_f − M_w − M_g`, `J·q̈ = T − e·θ'·τ`, where `e = 1/η` while the shaft drives the leaf and `η_b` while
    /// the leaf drives the shaft (0 where nothing passes back: the motor then neither feels the leaf nor is helped by it); with `θ̈ = θ'·q̈ + θ''·q̇²` and `A = D + I·θ''·q̇²`:
    /// `q̈ = (T − e·θ'·A)/(J + e·I·θ'²)`, and `τ` has the sign of `A·J + I·θ'·T` whichever `e` is.
    fn force(&self, place: &ShaftPlace, speed: f64, torque_n_m: f64) -> Force {
        let station = &place.station;
        let (gain, inertia, shaft) = (station.gain, self.moving.loads.inertia_kg_m2, self.motor.inertia_kg_m2);
        let steady = place.demand_n_m + inertia * station.gain_rate * speed * speed;
        let driving = (steady * shaft + inertia * gain * torque_n_m) * self.direction.sign() >= 0.0;
        let share = self.moving.efficiency.share(driving);
        let acceleration = (torque_n_m - share * gain * steady) / (shaft + share * inertia * gain * gain);
        let leaf_n_m = steady + inertia * gain * acceleration;
        Force { acceleration, loss_n_m: (share - 1.0) * gain * leaf_n_m }
    }

    /// Torque of motor and gear in the sense of progress, N·m: what gives the acceleration that is asked for, within the motor's line.
    ///
    /// With `q̈` asked for, `τ = A + I·θ'·q̈` and `T = J·q̈ + e·θ'·τ`, `e` by the sign of `τ`.
    fn torque_n_m(&self, place: &ShaftPlace, progress: f64, speed: f64) -> f64 {
        let (sign, station) = (self.direction.sign(), &place.station);
        let way = if sign > 0.0 { progress } else { self.moving.path.travel_rad() - progress };
        let wanted = sign * self.control.acceleration(way, sign * speed);
        let inertia = self.moving.loads.inertia_kg_m2;
        let leaf_n_m = place.demand_n_m + inertia * (station.gain * wanted + station.gain_rate * speed * speed);
        let share = self.moving.efficiency.share(leaf_n_m * sign >= 0.0);
        let torque = self.motor.inertia_kg_m2 * wanted + share * station.gain * leaf_n_m;
        sign * self.motor.within_line_n_m(sign * torque, sign * speed)
    }

    fn rate(&self, state: &State) -> State {
        let [progress, speed, ..] = *state;
        let place = self.place(progress);
        let torque = self.torque_n_m(&place, progress, speed);
        let force = self.force(&place, speed, torque);
        let (loads, leaf_speed) = (self.moving.loads, place.station.gain * speed);
        [
            speed,
            force.acceleration,
            torque * speed,
            loads.wind_of_n_m(&place.leaf, self.direction, self.wind) * leaf_speed,
            place.leaf.gravity_n_m * leaf_speed,
            self.direction.sign() * loads.friction_at_n_m(place.leaf.leaf_rad, self.direction) * leaf_speed,
            force.loss_n_m * speed,
        ]
    }

    /// Whether a leaf at a stand is pushed back: friction and losses then help the motor, the wind stays as it is.
    fn pushed_back(&self, progress: f64) -> bool {
        let (direction, wind) = match (self.direction, self.wind) {
            (Direction::Open, WindCase::Against) => (Direction::Close, WindCase::Following),
            (Direction::Open, WindCase::Following) => (Direction::Close, WindCase::Against),
            (Direction::Close, WindCase::Against) => (Direction::Open, WindCase::Following),
            (Direction::Close, WindCase::Following) => (Direction::Open, WindCase::Against),
            (Direction::Open, WindCase::Bearing) => (Direction::Close, WindCase::Bearing),
            (Direction::Close, WindCase::Bearing) => (Direction::Open, WindCase::Bearing),
        };
        let back = DrivenSystem { direction, wind, ..*self };
        let force = back.force(&back.place(progress), 0.0, self.direction.sign() * self.motor.stall_torque_n_m);
        force.acceleration * self.direction.sign() < 0.0
    }

    fn point(&self, time_s: f64, progress: f64, speed: f64) -> DrivenPoint {
        let (path, place) = (&self.moving.path, self.place(progress));
        DrivenPoint {
            time_s,
            shaft_deg: (path.sign() * progress).to_degrees(),
            leaf_deg: place.station.leaf_rad.to_degrees(),
            shaft_speed_deg_s: (path.sign() * speed).to_degrees(),
            edge_speed_m_s: self.edge_speed_m_s(&place.station, speed),
            shaft_torque_n_m: path.sign() * self.torque_n_m(&place, progress, speed),
        }
    }

    fn edge_speed_m_s(&self, station: &PathPoint, speed: f64) -> f64 {
        (station.gain * speed).abs() * self.moving.length_m
    }

    fn balance(&self, state: &State) -> EnergyBalance {
        let [progress, speed, motor_j, wind_j, gravity_j, friction_j, arm_loss_j] = *state;
        let gain = self.moving.path.at(progress).gain;
        let inertia = self.motor.inertia_kg_m2 + self.moving.loads.inertia_kg_m2 * gain * gain;
        let kinetic_j = 0.5 * inertia * speed * speed;
        let parts = [motor_j, wind_j, gravity_j, friction_j, arm_loss_j, kinetic_j];
        let largest = parts.into_iter().fold(f64::MIN_POSITIVE, |largest, part| largest.max(part.abs()));
        let error = (motor_j + wind_j + gravity_j - friction_j - arm_loss_j - kinetic_j).abs() / largest;
        EnergyBalance { motor_j, wind_j, gravity_j, friction_j, arm_loss_j, kinetic_j, error }
    }
}

/// Arm and leaf at one shaft angle.
struct ShaftPlace {
    station: PathPoint,
    leaf: LeafStation,
    /// Moment the drive must supply to move the leaf steadily, N·m, positive opening.
    demand_n_m: f64,
}

#[derive(Clone, Copy)]
struct Force {
    acceleration: f64,
    loss_n_m: f64,
}

/// A time with progress, speed and acceleration then.
#[derive(Clone, Copy)]
struct Passed {
    time_s: f64,
    progress: f64,
    speed: f64,
    acceleration: f64,
}

impl Passed {
    fn of(walk: &Integrator<7>) -> Passed {
        let ([progress, speed, ..], acceleration) = (walk.state, walk.slope[1]);
        Passed { time_s: walk.time_s, progress, speed, acceleration }
    }
}

/// Drives the leaf one way from rest at one limit to the other, as the profile's speeds ask and the motor's line allows: the run, and its track.
///
/// Dormand–Prince 5(4) with step control, and the Rosenbrock method RODAS 4(3) once stability holds its steps short (see
/// [`stiff`](super::stiff)); arrival and standstill are found to a picosecond on the step that passes them.
pub(crate) fn drive(
    moving: &Moving,
    motor: &Motor,
    profile: &Profile,
    direction: Direction,
    wind: WindCase,
    samples: u32,
) -> (DrivenRun, Track) {
    let control = &Control::new(profile, motor);
    let driven = DrivenSystem { moving, motor, control, direction, wind };
    let (sign, travel) = (direction.sign(), moving.path.travel_rad());
    let rate = |state: &State| driven.rate(state);
    let mut start: State = [0.0; 7];
    start[0] = if sign > 0.0 { 0.0 } else { travel };
    let energy = motor.stall_torque_n_m * travel;
    let run_up_s = motor.inertia_kg_m2 * motor.no_load_rad_s / motor.stall_torque_n_m;
    let mut walk = Integrator {
        step_s: 1e-3 * run_up_s,
        longest_s: LONGEST_STEP_S,
        longest_way: LONGEST_PART * travel,
        tolerance: TOLERANCE,
        ..Integrator::new(rate, start, [travel, motor.no_load_rad_s, energy, energy, energy, energy, energy])
    };
    let mut track = alloc::vec![Passed::of(&walk)];
    let mut fastest: f64 = 0.0;
    // Since when the shaft has been slower than what counts as standing.
    let mut standing_s = Some(0.0);
    let above = |state: &State| sign * state[1] - STANDING * motor.no_load_rad_s;
    let remaining = |state: &State| if sign > 0.0 { travel - state[0] } else { state[0] };
    let forward = |state: &State| sign * state[1];
    let stand = |progress| if driven.pushed_back(progress) { DrivenState::DrivenBack } else { DrivenState::Stalls };
    let state = loop {
        if track.len() == 1 && sign * walk.slope[1] <= 0.0 {
            break stand(walk.state[0]);
        }
        if standing_s.is_some_and(|since| walk.time_s - since > STANDS_AFTER_S) {
            break stand(walk.state[0]);
        }
        if track.len() > MOST_STEPS || walk.time_s > LONGEST_S {
            break DrivenState::Creeps;
        }
        let mut before = walk.clone();
        let h = walk.advance(rate);
        // The step as it was taken, to be taken again in part.
        before.stiff = walk.stiff;
        standing_s = match (above(&walk.state) > 0.0, above(&before.state) > 0.0) {
            (true, _) => None,
            (false, true) => Some(before.time_s + before.crossing_s(rate, h, above)),
            (false, false) => standing_s,
        };
        let arrived = remaining(&walk.state) <= 0.0;
        let stopped = forward(&walk.state) <= 0.0;
        if arrived || stopped {
            // The first step starts at rest and is never one that stops.
            let to_limit = if arrived { before.crossing_s(rate, h, remaining) } else { h };
            let to_stand = if stopped { before.crossing_s(rate, h, forward) } else { h };
            let length = to_limit.min(to_stand);
            walk = Integrator { time_s: before.time_s + length, ..walk };
            StepTrial { next: walk.state, slope: walk.slope, .. } = before.trial(rate, length);
            track.push(Passed::of(&walk));
            break if arrived && to_limit <= to_stand { DrivenState::Arrives } else { stand(walk.state[0]) };
        }
        track.push(Passed::of(&walk));
        fastest = fastest.max(driven.edge_speed_m_s(&moving.path.at(walk.state[0]), walk.state[1]));
    };
    let end = driven.point(walk.time_s, walk.state[0], walk.state[1]);
    let stands = matches!(state, DrivenState::Stalls | DrivenState::DrivenBack);
    let time_s = standing_s.filter(|_| stands).unwrap_or(walk.time_s);
    let run = DrivenRun {
        state,
        time_s,
        leaf_deg: end.leaf_deg,
        edge_speed_m_s: fastest.max(end.edge_speed_m_s),
        arrival_edge_speed_m_s: end.edge_speed_m_s,
        energy: driven.balance(&walk.state),
        curve: rows(&driven, &track, time_s, samples),
    };
    let steps = track.iter().map(|passed| [passed.time_s, passed.progress, passed.speed]).collect();
    (run, Track { steps })
}

/// Rows at evenly spaced times: progress and speed by the cubic that keeps both and their derivatives at the ends of a step.
fn rows(driven: &DrivenSystem, track: &[Passed], end_s: f64, samples: u32) -> Vec<DrivenPoint> {
    let last = samples.max(2) - 1;
    let cubic = |u: f64, h: f64, (a, b): (f64, f64), (da, db): (f64, f64)| {
        let v = 1.0 - u;
        a * v * v * (1.0 + 2.0 * u) + b * u * u * (1.0 + 2.0 * v) + h * u * v * (da * v - db * u)
    };
    let row = |index: u32| {
        let at = if index == last { end_s } else { end_s * f64::from(index) / f64::from(last) };
        let behind = track.partition_point(|passed| passed.time_s < at).clamp(1, track.len().max(2) - 1);
        if track.len() < 2 {
            return driven.point(at, track[0].progress, track[0].speed);
        }
        let (from, to) = (track[behind - 1], track[behind]);
        let h = to.time_s - from.time_s;
        let u = if h > 0.0 { (at - from.time_s) / h } else { 1.0 };
        let progress = cubic(u, h, (from.progress, to.progress), (from.speed, to.speed));
        let speed = cubic(u, h, (from.speed, to.speed), (from.acceleration, to.acceleration));
        driven.point(at, progress, speed)
    };
    (0..=last).map(row).collect()
}

#[cfg(test)]
mod tests;
