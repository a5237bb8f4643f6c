//! Speed profiles worked by hand from `v = a·t`, `v² = 2·a·x`; units are whatever one likes.

use crate::bench::near;
use pintle_core::drive::{Profile, trapezoid_time_s};

const CLOSE: f64 = 1e-12;

fn at(profile: &Profile, time: f64, position: f64, speed: f64, acceleration: f64) {
    let moment = profile.at(time);
    near(moment.position, position, CLOSE);
    near(moment.speed, speed, CLOSE);
    assert_eq!(moment.acceleration, acceleration, "after {time} s");
}

fn where_at(profile: &Profile, position: f64, speed: f64, acceleration: f64) {
    let moment = profile.where_at(position);
    assert_eq!((moment.position, moment.acceleration), (position, acceleration), "after {position}");
    near(moment.speed, speed, CLOSE);
}

/// 100 long at 10, up 2, down 5, the last 20 at 4. Up: 5 s, 25. Cruise: 80 − 25 − 8.4 = 46.6, 4.66 s. Down to 4: 1.2 s, 8.4. Slow: 20 − 1.6,
/// 4.6 s. Down: 0.8 s, 1.6.
#[test]
fn a_slow_zone_is_reached_at_its_own_speed() {
    let profile = Profile::with_slow_end(100.0, 10.0, 2.0, 5.0, 20.0, 4.0);
    near(profile.time_s(), 16.26, CLOSE);
    assert_eq!(profile.peak_speed(), 10.0);
    assert_eq!(profile.arrival_speed(), 4.0);
    at(&profile, -1.0, 0.0, 0.0, 0.0);
    at(&profile, 0.0, 0.0, 0.0, 2.0);
    at(&profile, 3.0, 9.0, 6.0, 2.0);
    // A stretch owns its beginning, not its end.
    at(&profile, 5.0, 25.0, 10.0, 0.0);
    at(&profile, 7.0, 45.0, 10.0, 0.0);
    at(&profile, 10.16, 71.6 + 5.0 - 0.625, 7.5, -5.0);
    at(&profile, 12.86, 88.0, 4.0, 0.0);
    at(&profile, 15.86, 98.4 + 1.6 - 0.4, 2.0, -5.0);
    at(&profile, 17.0, 100.0, 0.0, 0.0);
    where_at(&profile, 0.0, 0.0, 2.0);
    where_at(&profile, 16.0, 8.0, 2.0);
    where_at(&profile, 25.0, 10.0, 0.0);
    where_at(&profile, 60.0, 10.0, 0.0);
    where_at(&profile, 75.8, 58f64.sqrt(), -5.0);
    where_at(&profile, 90.0, 4.0, 0.0);
    where_at(&profile, 99.0, 10f64.sqrt(), -5.0);
    // Behind its end it stands, braking.
    where_at(&profile, 101.0, 0.0, -5.0);
}

/// 20 before a zone of 10 at 2: v²/4 + (v² − 4)/8 = 20. Then 10 − ½ at 2, and ½ s.
#[test]
fn a_distance_too_short_for_the_cruise_lowers_the_speed() {
    let profile = Profile::with_slow_end(30.0, 100.0, 2.0, 4.0, 10.0, 2.0);
    let peak = (20.5 * 8.0 / 3.0f64).sqrt();
    near(profile.peak_speed(), peak, CLOSE);
    near(profile.time_s(), peak / 2.0 + (peak - 2.0) / 4.0 + 9.5 / 2.0 + 0.5, CLOSE);
    where_at(&profile, peak * peak / 4.0 - 1.0, (peak * peak - 4.0).sqrt(), 2.0);
    where_at(&profile, 20.0 - 1.0, 12f64.sqrt(), -4.0);
}

/// A zone of ⅛ brakes from √(2·4·⅛) = 1 at most. Up: 5 s, 25. Cruise: 100 − 25 − 12.375. Down to 1: 2.25 s. Down: ¼ s.
#[test]
fn a_zone_too_short_for_its_speed_lowers_that() {
    let profile = Profile::with_slow_end(100.125, 10.0, 2.0, 4.0, 0.125, 8.0);
    near(profile.time_s(), 13.7625, CLOSE);
    near(profile.arrival_speed(), 1.0, CLOSE);
    at(&profile, 13.6375, 100.125 - 0.03125, 0.5, -4.0);
}

/// A zone slower than asked for is no zone where its speed is the speed; one as long as the way is all of it; one of a way too short to ever be
/// faster is done as a triangle under the slow speed.
#[test]
fn a_slow_end_that_is_all_there_is() {
    let fast = Profile::with_slow_end(100.0, 3.0, 2.0, 4.0, 20.0, 8.0);
    near(fast.time_s(), 100.0 / 3.0 + 0.75 + 0.375, CLOSE);
    let all = Profile::with_slow_end(10.0, 5.0, 1.0, 2.0, 50.0, 1.0);
    near(all.time_s(), 10.0 + 0.5 + 0.25, CLOSE);
    assert_eq!((all.peak_speed(), all.arrival_speed()), (1.0, 1.0));
    // v²·(1/4 + 1/200) = 3.
    let short = Profile::with_slow_end(3.0, 50.0, 2.0, 100.0, 2.9, 5.0);
    let peak = (3.0 / 0.255f64).sqrt();
    near(short.peak_speed(), peak, CLOSE);
    near(short.time_s(), peak / 2.0 + peak / 100.0, CLOSE);
}

/// Without a zone the last ramp is the only one: 100 long at 10, up 2, down 5 is 5 + (100 − 25 − 10)/10 + 2 s.
#[test]
fn without_a_slow_zone_the_full_speed_arrives() {
    let profile = Profile::trapezoid(100.0, 10.0, 2.0, 5.0);
    near(profile.time_s(), 13.5, CLOSE);
    assert_eq!(profile.arrival_speed(), 10.0);
    at(&profile, 12.5, 97.5, 5.0, -5.0);
    // Slow without a zone, and a zone at no speed, are the same as neither.
    assert_eq!(Profile::with_slow_end(100.0, 10.0, 2.0, 5.0, 0.0, 4.0), profile);
}

/// `D/v + v/a`, or `2·√(D/a)` where the speed is never reached.
#[test]
fn the_closed_form_of_a_trapezoid() {
    for (distance, speed, acceleration, time) in [
        (10.0, 3.0, 1.0, 10.0 / 3.0 + 3.0),
        (10.0, 3.5, 1.0, 2.0 * 10f64.sqrt()),
        (10.0, 4.0, 2.0, 4.5),
        (10.0, 5.0, 2.0, 2.0 * 5f64.sqrt()),
        (0.5, 0.8, 2.0, 0.625 + 0.4),
    ] {
        near(trapezoid_time_s(distance, speed, acceleration), time, CLOSE);
    }
}
