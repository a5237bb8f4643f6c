//! A motor, its controller and the bench's leaf integrated by the classical Runge–Kutta method in small even steps: what their documents say,
//! written again.

use crate::bench::{EFFICIENCY, FRICTION, INERTIA, LENGTH, demand, gravity};
use pintle_core::arm::{PathPoint, ShaftPath};

/// A shaft that is asked for ramps and a slow end, driven by a motor.
pub struct Bench<'a> {
    pub path: ShaftPath<'a>,
    pub stall: f64,
    pub no_load: f64,
    pub shaft_inertia: f64,
    pub sign: f64,
    pub wind: f64,
    /// Time of the ramp down from 10°/s, s; up takes 2 s.
    pub down_s: f64,
}

/// Progress counted in the movement's own sense, its speed, then works: motor, wind, weight, friction, arm.
pub type State = [f64; 7];

impl Bench<'_> {
    /// Speed and acceleration the profile has after some way: the least of what each of its parts allows, by `v² = v₀² + 2·a·x`.
    pub fn asked(&self, way: f64) -> (f64, f64) {
        let [speed, slow] = [10f64, 4.0].map(f64::to_radians);
        let (up, down, travel) = (speed / 2.0, speed / self.down_s, self.path.travel_rad());
        let main = travel - 8f64.to_radians();
        let down_to = |end: f64, at: f64| (at * at + 2.0 * down * (end - way)).max(0.0).sqrt();
        let last = down_to(travel, 0.0);
        let parts = [
            ((2.0 * up * way).max(0.0).sqrt(), up),
            (speed, 0.0),
            (if way < main { down_to(main, slow) } else { slow }, if way < main { -down } else { 0.0 }),
            (last, -down),
        ];
        parts.into_iter().fold((f64::MAX, 0.0), |least, part| if part.0 < least.0 { part } else { least })
    }

    pub fn station(&self, way: f64) -> PathPoint {
        self.path.at(if self.sign > 0.0 { way } else { self.path.travel_rad() - way })
    }

    /// Torque in the sense of the movement: within the line, what gives the acceleration that is asked for.
    pub fn torque(&self, way: f64, speed: f64) -> f64 {
        let at = self.station(way);
        let (wanted_speed, wanted) = self.asked(way);
        let least = 0.004 * self.no_load;
        let rate = if wanted_speed <= least {
            (least - speed) / 0.1
        } else {
            wanted * if wanted < 0.0 { speed / wanted_speed } else { 1.0 } + (wanted_speed - speed) / 0.1
        };
        // All in the sense of the movement; the curvature of the path changes sign with it.
        let leaf = self.sign * demand(at.leaf_rad, self.sign, self.wind)
            + INERTIA * (at.gain * rate + self.sign * at.gain_rate * speed * speed);
        let share = if leaf >= 0.0 { 1.0 / EFFICIENCY } else { EFFICIENCY };
        let torque = self.shaft_inertia * rate + share * at.gain * leaf;
        let most = self.stall * (1.0 - speed / self.no_load);
        torque.clamp(most - self.stall, most)
    }

    fn rate(&self, state: &State) -> State {
        let (way, speed) = (state[0], state[1]);
        let (at, torque) = (self.station(way), self.torque(way, speed));
        let steady =
            self.sign * demand(at.leaf_rad, self.sign, self.wind) + INERTIA * self.sign * at.gain_rate * speed * speed;
        // Either the shaft drives the leaf or the leaf the shaft: the one that agrees with itself.
        let with = |share: f64| {
            let rate = (torque - share * at.gain * steady) / (self.shaft_inertia + share * INERTIA * at.gain * at.gain);
            (rate, steady + INERTIA * at.gain * rate)
        };
        let (mut share, mut solved) = (1.0 / EFFICIENCY, with(1.0 / EFFICIENCY));
        if solved.1 < 0.0 {
            (share, solved) = (EFFICIENCY, with(EFFICIENCY));
        }
        let leaf_speed = at.gain * speed;
        [
            speed,
            solved.0,
            torque * speed,
            -self.wind * leaf_speed,
            self.sign * gravity(at.leaf_rad) * leaf_speed,
            FRICTION * leaf_speed,
            (share - 1.0) * solved.1 * leaf_speed,
        ]
    }

    fn step(&self, state: &State, h: f64) -> State {
        let moved = |by: &State, h: f64| -> State { std::array::from_fn(|index| state[index] + h * by[index]) };
        let a = self.rate(state);
        let b = self.rate(&moved(&a, h / 2.0));
        let c = self.rate(&moved(&b, h / 2.0));
        let d = self.rate(&moved(&c, h));
        std::array::from_fn(|index| state[index] + h / 6.0 * (a[index] + 2.0 * b[index] + 2.0 * c[index] + d[index]))
    }

    /// The state after a time in steps of a fifth of a millisecond, and the greatest speed of the edge on the way.
    pub fn after(&self, state: &State, time: f64) -> (State, f64) {
        let steps = (time / 2e-4).ceil().max(1.0);
        (0..steps as u32).fold((*state, 0.0), |(state, fastest), _| {
            let next = self.step(&state, time / steps);
            (next, fastest.max(edge(self, &next)))
        })
    }
}

pub fn edge(bench: &Bench, state: &State) -> f64 {
    bench.station(state[0]).gain * state[1] * LENGTH
}
