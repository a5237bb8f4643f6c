//! A shaft's speed through time: ramps, a cruise, a slow zone before the end.

use crate::real::sqrt;
use alloc::vec::Vec;

/// Position, speed and acceleration at one time. Units are the caller's: radians or metres, and seconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Distance from the start.
    pub position: f64,
    /// Its first derivative.
    pub speed: f64,
    /// Its second derivative.
    pub acceleration: f64,
}

/// A stretch of constant acceleration.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub start_s: f64,
    pub duration_s: f64,
    from: Moment,
}

impl Stretch {
    /// `x + v·t + a·t²/2`, `t` from the stretch's own start.
    pub fn after(&self, time_s: f64) -> Moment {
        let Moment { position, speed, acceleration } = self.from;
        Moment {
            position: position + (speed + 0.5 * acceleration * time_s) * time_s,
            speed: speed + acceleration * time_s,
            acceleration,
        }
    }
}

/// From rest over a distance to rest.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    stretches: Vec<Stretch>,
    distance: f64,
}

impl Profile {
    /// A trapezoid `v/a` up, cruise, `v/b` down; a triangle with the peak `√(2·a·b·D/(a+b))` where the distance is too short for the
    /// cruise. `distance`, `speed` and both accelerations positive. Source: constant-acceleration kinematics, any mechanics text.
    #[must_use]
    pub fn trapezoid(distance: f64, speed: f64, up: f64, down: f64) -> Profile {
        Profile::with_slow_end(distance, speed, up, down, 0.0, 0.0)
    }

    /// The same, slowed to `slow_speed` before the last `slow_zone` of the distance; slow speed no more than the speed.
    ///
    /// The zone begins at its own speed: braking is done before it. A zone too short to brake from its speed within lowers that speed; a
    /// distance too short to ever exceed the slow speed is done at the slow speed.
    #[must_use]
    pub fn with_slow_end(distance: f64, speed: f64, up: f64, down: f64, slow_zone: f64, slow_speed: f64) -> Profile {
        let zone = slow_zone.clamp(0.0, distance);
        let slow = slow_speed.min(speed).min(sqrt(2.0 * down * zone));
        let main = distance - zone;
        // v²/2a + (v² − v_s²)/2b = main, solved for v.
        let highest = sqrt((2.0 * main + slow * slow / down) / (1.0 / up + 1.0 / down));
        if highest < slow {
            return Profile::trapezoid(distance, slow, up, down);
        }
        let peak = speed.min(highest);
        let spent = peak * peak / (2.0 * up) + (peak * peak - slow * slow) / (2.0 * down);
        let mut profile = Profile { stretches: Vec::new(), distance };
        profile.ramp(0.0, peak, up);
        profile.cruise(main - spent, peak);
        profile.ramp(peak, slow, down);
        if slow > 0.0 {
            profile.cruise(zone - slow * slow / (2.0 * down), slow);
            profile.ramp(slow, 0.0, down);
        }
        profile
    }

    fn push(&mut self, duration_s: f64, speed: f64, acceleration: f64) {
        if duration_s > 0.0 {
            let position = self.stretches.last().map_or(0.0, |last| last.after(last.duration_s).position);
            let from = Moment { position, speed, acceleration };
            self.stretches.push(Stretch { start_s: self.time_s(), duration_s, from });
        }
    }

    fn ramp(&mut self, from: f64, to: f64, rate: f64) {
        self.push((to - from).abs() / rate, from, if to < from { -rate } else { rate });
    }

    fn cruise(&mut self, distance: f64, speed: f64) {
        self.push(distance / speed, speed, 0.0);
    }

    pub(super) fn stretches(&self) -> &[Stretch] {
        &self.stretches
    }

    /// Time from start to rest, s.
    #[must_use]
    pub fn time_s(&self) -> f64 {
        self.stretches.last().map_or(0.0, |last| last.start_s + last.duration_s)
    }

    /// The motion after some distance from the start; at its beginning and end before and behind.
    #[must_use]
    pub fn where_at(&self, distance: f64) -> Moment {
        let last = self.stretches.len().max(1) - 1;
        let found = self
            .stretches
            .iter()
            .enumerate()
            .find(|(index, stretch)| *index == last || distance < stretch.after(stretch.duration_s).position);
        found.map_or(Moment { position: distance, speed: 0.0, acceleration: 0.0 }, |(_, stretch)| {
            let Moment { position, speed, acceleration } = stretch.from;
            // v² = v₀² + 2·a·x.
            Moment {
                position: distance,
                speed: sqrt(speed * speed + 2.0 * acceleration * (distance - position)),
                acceleration,
            }
        })
    }

    /// The greatest speed.
    #[must_use]
    pub fn peak_speed(&self) -> f64 {
        self.stretches.iter().fold(0.0, |peak: f64, stretch| peak.max(stretch.from.speed))
    }

    /// Speed at which the last ramp begins.
    #[must_use]
    pub fn arrival_speed(&self) -> f64 {
        self.stretches.last().map_or(0.0, |last| last.from.speed)
    }

    /// Where the motion is at a time; at rest before and after.
    #[must_use]
    pub fn at(&self, time_s: f64) -> Moment {
        let rest = |position| Moment { position, speed: 0.0, acceleration: 0.0 };
        if time_s < 0.0 {
            return rest(0.0);
        }
        let found = self.stretches.iter().find(|stretch| time_s < stretch.start_s + stretch.duration_s);
        found.map_or(rest(self.distance), |stretch| stretch.after(time_s - stretch.start_s))
    }
}

/// Time of a trapezoid over a distance with one acceleration both ways: `D/v + v/a` where `v² ≤ a·D`, else the triangle's `2·√(D/a)`.
///
/// Source: "Velocity time profiles", tech-champion.com. The closed form that [`Profile`] is held to.
#[must_use]
pub fn trapezoid_time_s(distance: f64, speed: f64, acceleration: f64) -> f64 {
    if speed * speed <= acceleration * distance {
        distance / speed + speed / acceleration
    } else {
        2.0 * sqrt(distance / acceleration)
    }
}
