//! The controller of a motor: it asks for the speed of ramps and slow zones, and the motor gives what its line allows.

use super::{Motor, Profile};

/// A commanded speed never falls below this part of the motor's no-load speed: a leaf that crept up to its limit on a square root would
/// come to a stand just before it.
const LEAST_COMMAND: f64 = 4e-3;

/// Time in which a difference from the commanded speed is made up for, s. An assumption about controllers; no source.
const MADE_UP_IN_S: f64 = 0.1;

/// A controller that follows the speed of a profile by where the shaft is, not by when: a leaf that is held up does not have to catch up.
pub(super) struct Control<'a> {
    profile: &'a Profile,
    least: f64,
}

impl<'a> Control<'a> {
    pub fn new(profile: &'a Profile, motor: &Motor) -> Control<'a> {
        Control { profile, least: LEAST_COMMAND * motor.no_load_rad_s }
    }

    /// Acceleration it asks for after some way from the start at some speed forward, rad/s²: that of the profile there, and what makes up for
    /// the difference. Where the profile brakes, a shaft that is slower comes by its speeds the more slowly, and so brakes less, and not at all
    /// once it is down at the least: it never comes to a stand for being late, nor creeps up to the limit on an exponential without an end.
    pub fn acceleration(&self, way_rad: f64, speed_rad_s: f64) -> f64 {
        let wanted = self.profile.where_at(way_rad);
        if wanted.speed <= self.least {
            return (self.least - speed_rad_s) / MADE_UP_IN_S;
        }
        let above = |speed: f64| (speed - self.least).max(0.0);
        let share = if wanted.acceleration < 0.0 { above(speed_rad_s) / above(wanted.speed) } else { 1.0 };
        wanted.acceleration * share + (wanted.speed - speed_rad_s) / MADE_UP_IN_S
    }
}
