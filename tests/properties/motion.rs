//! Identities of motion through time: kinematics, energy, stalls, limits that longer ramps and slower shafts keep.

use crate::jobs::{job, planned, valid};
use crate::plan::finite;
use pintle_core::{
    arm::ShaftPath,
    drive::{CoastState, DrivenState, MotionPoint, PrescribedRun, Profile, coast},
    job::Job,
    plan::Model,
    terms::Direction,
};
use proptest::prelude::*;
use serde_json::{Value, json};

/// A job that moves: its shaft at `speed` degrees a second with one time for both ramps.
pub fn moving(value: &Value, speed: f64, ramp_s: f64) -> Value {
    let mut value = value.clone();
    value["operator"]["shaft_speed_deg_s"] = json!(speed);
    value["motion"] = json!({ "ramp_up_s": ramp_s, "ramp_down_s": ramp_s });
    value
}

/// A shaft on the hinge axis with bracket and elbow in a parallelogram: the leaf turns as fast as the shaft at every angle.
pub fn one_to_one() -> Value {
    let mut value = crate::plan::example();
    value["arm"] = json!({ "shaft_x_m": 0, "shaft_y_m": 0.4, "bracket_u_m": 0.9, "bracket_v_m": 0.0,
        "crank_m": 0.9, "link_m": 0.4, "elbow": "left" });
    value["swing"]["open_deg"] = json!(60);
    value
}

/// The demonstration arm, straight when closed: a dead point.
fn straight() -> Value {
    let mut value = crate::plan::example();
    let reach = 1.45f64.hypot(0.39);
    value["arm"]["crank_m"] = json!(0.58 * reach);
    value["arm"]["link_m"] = json!(reach - 0.58 * reach);
    value
}

fn with_motor(value: &Value, stall: f64, no_load: f64, volts: f64) -> Value {
    let mut value = moving(value, 9.0, 1.0);
    value["motion"]["motor"] =
        json!({ "stall_torque_n_m": stall, "no_load_speed_deg_s": no_load, "rated_v": 24, "supply_v": volts });
    value
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn the_path_by_the_shaft_is_the_path_by_the_leaf(value in valid(), share in 0.01..0.99f64) {
        let job = job(&value);
        let model = Model::new(&job).unwrap();
        let pose = model.linkage().pose(share * model.linkage().open_rad);
        let station = ShaftPath::new(model.linkage()).at(pose.crank_rad.abs());
        let (ratio, rate) = (pose.ratio.unwrap().abs(), pose.ratio_rate.unwrap() * pose.ratio.unwrap().signum());
        // Where the arm is within a few degrees of straight, the angle itself is known less well.
        let close = 1e-8 * (1.0 + ratio.powi(3));
        prop_assert!((station.leaf_rad - pose.leaf_rad).abs() <= close);
        prop_assert!((station.gain * ratio - 1.0).abs() <= close);
        // θ'' = −n'/n³.
        let expected = -rate / ratio.powi(3);
        prop_assert!((station.gain_rate - expected).abs() <= close * (1.0 + expected.abs()), "{station:?} {expected}");
    }

    #[test]
    fn speed_and_acceleration_are_derivatives(value in valid(), speed in 1.0..30.0f64, ramp in 0.2..4.0f64) {
        let mut value = moving(&value, speed, ramp);
        value["samples"] = json!(2001);
        let motion = planned(&value).motion.unwrap();
        for run in [&motion.opening, &motion.closing] {
            let fastest = run.curve.iter().fold(0.0, |most: f64, row| most.max(row.leaf_speed_deg_s.abs()));
            let hardest = run.leaf_acceleration_deg_s2;
            for rows in run.curve.windows(3) {
                let step = rows[2].time_s - rows[0].time_s;
                let slope = (rows[2].leaf_deg - rows[0].leaf_deg) / step;
                prop_assert!((slope - rows[1].leaf_speed_deg_s).abs() <= hardest * step + 1e-6 * fastest);
            }
            let (first, last) = (run.curve[0], run.curve[run.curve.len() - 1]);
            let open = value["swing"]["open_deg"].as_f64().unwrap();
            prop_assert!(((first.leaf_deg - last.leaf_deg).abs() - open).abs() < 1e-6);
            prop_assert_eq!((first.leaf_speed_deg_s, last.leaf_speed_deg_s), (0.0, 0.0));
        }
    }

    #[test]
    fn the_shaft_s_work_is_what_the_loads_take(value in valid(), speed in 2.0..20.0f64, ramp in 0.3..3.0f64) {
        let mut value = moving(&value, speed, ramp);
        value["operator"]["arm_efficiency"] = json!(1);
        value["samples"] = json!(2001);
        let job = job(&value);
        let (model, planned) = (Model::new(&job).unwrap(), planned(&value));
        let (loads, open) = (model.loads(), job.open_rad());
        // From rest to rest the kinetic energy drops out; gravity over the whole way by the midpoint rule.
        let strips = (0..2000).map(|index| loads.gravity_n_m(open * (f64::from(index) + 0.5) / 2000.0));
        let gravity = strips.sum::<f64>() * open / 2000.0;
        let against = (loads.friction_n_m(Direction::Open) + loads.wind_n_m) * open;
        for (run, sign) in [(&planned.motion.as_ref().unwrap().opening, 1.0), (&planned.motion.as_ref().unwrap().closing, -1.0)] {
            // The trapezoid rule over every row, or every other one: their difference tells how well it does.
            let sum_by = |stride: usize, power: &dyn Fn(&MotionPoint) -> f64| -> f64 {
                let rows: Vec<&MotionPoint> = run.curve.iter().step_by(stride).collect();
                let pairs = rows.windows(2);
                pairs.map(|rows| (power(rows[0]) + power(rows[1])) / 2.0 * (rows[1].time_s - rows[0].time_s)).sum()
            };
            let sum = |power: &dyn Fn(&MotionPoint) -> f64| sum_by(1, power);
            let inertial = |row: &MotionPoint| row.inertial_torque_n_m * row.shaft_speed_deg_s.to_radians();
            let steady_power = |row: &MotionPoint| row.shaft_power_w - inertial(row);
            let (steady, coarse) = (sum(&steady_power), sum_by(2, &steady_power));
            let (scale, expected) = (against + gravity.abs(), against - sign * gravity);
            prop_assert!((steady - expected).abs() <= 1e-4 * scale + (steady - coarse).abs() + 1e-9, "{steady} {expected}");
            // What inertia takes it gives back; the trapezoid rule steps over the ramps' corners, where its power jumps.
            let corner = run.time_s / 2000.0 * run.inertial.shaft_torque_n_m * speed.to_radians();
            prop_assert!(sum(&inertial).abs() <= 8.0 * corner + 1e-9, "{} {corner}", sum(&inertial));
        }
    }

    #[test]
    fn at_a_fixed_ratio_a_longer_ramp_never_raises_the_inertial_torque(
        mass in 20.0..800.0f64, speed in 1.0..40.0f64, short in 0.1..3.0f64, longer in 1.0..5.0f64,
    ) {
        let mut value = one_to_one();
        value["leaf"]["mass_kg"] = json!(mass);
        let inertial = |ramp: f64| planned(&moving(&value, speed, ramp)).motion.unwrap().opening.inertial.shaft_torque_n_m;
        let (before, after) = (inertial(short), inertial(short * longer));
        prop_assert!(after <= before * (1.0 + 1e-9), "{before} {after}");
        // I·θ̈ with θ̈ = ω/t, ratio 1.
        let expected = mass * 3.2 * 3.2 / 3.0 * speed.to_radians() / short;
        prop_assert!((before - expected).abs() <= 1e-6 * expected, "{before} {expected}");
    }

    #[test]
    fn a_slower_shaft_never_moves_the_edge_faster(
        value in valid(), speed in 2.0..40.0f64, slower in 0.1..1.0f64, up in 1.0..60.0f64, down in 1.0..60.0f64,
    ) {
        // The same path: every shaft angle is passed with no more speed, whatever the ramps' accelerations.
        let job = job(&value);
        let model = Model::new(&job).unwrap();
        let path = ShaftPath::new(model.linkage());
        let degrees = path.travel_rad().to_degrees();
        let (fast, slow) = (Profile::trapezoid(degrees, speed, up, down), Profile::trapezoid(degrees, speed * slower, up, down));
        prop_assert!(slow.peak_speed() <= fast.peak_speed() * (1.0 + 1e-12));
        prop_assert!(slow.time_s() >= fast.time_s() * (1.0 - 1e-12));
        let edge = |profile: &Profile| (0..=400).map(|index| profile.at(profile.time_s() * f64::from(index) / 400.0))
            .map(|at| at.speed * path.at(at.position.to_radians()).gain).fold(0.0, f64::max);
        let bound = (0..=400).map(|index| path.at(path.travel_rad() * f64::from(index) / 400.0).gain).fold(0.0, f64::max);
        prop_assert!(edge(&slow) <= slow.peak_speed() * bound * (1.0 + 1e-3));
        // With the ramps as times, as the job has them, the edge is slower too.
        let of = |speed: f64| planned(&moving(&value, speed, 1e-1)).motion.unwrap().opening.edge_speed_m_s;
        prop_assert!(of(speed * slower) <= of(speed) * (1.0 + 1e-4));
    }

    #[test]
    fn energy_is_accounted_for(value in valid(), stall in 100.0..3000.0f64, no_load in 3.0..40.0f64, volts in 12.0..28.0f64) {
        let planned = planned(&with_motor(&value, stall, no_load, volts));
        prop_assert!(finite(&planned));
        let driven = planned.motion.unwrap().driven.unwrap();
        for run in [&driven.opening, &driven.closing, &driven.opening_following, &driven.closing_following] {
            prop_assert!(run.energy.error < 1e-6, "{run:?}");
            prop_assert!(run.energy.friction_j >= 0.0 && run.energy.arm_loss_j >= -1e-9);
            prop_assert!(run.state != DrivenState::Arrives || run.curve.len() == 91);
        }
        // Against the wind its work is minus the moment over the way it went.
        let way = driven.opening.leaf_deg.to_radians();
        prop_assert!((driven.opening.energy.wind_j + planned.loads.wind_n_m * way).abs() <= 1e-6 * (1.0 + planned.loads.wind_n_m));
    }

    #[test]
    fn a_motor_with_torque_to_spare_everywhere_arrives(value in valid()) {
        let peak = planned(&value).peak.shaft_torque_n_m;
        prop_assume!(peak < 40_000.0);
        let state = |stall: f64| planned(&with_motor(&value, stall, 12.0, 24.0)).motion.unwrap().driven.unwrap();
        let strong = state(1.05 * peak + 5.0);
        prop_assert_eq!((strong.opening.state, strong.closing.state), (DrivenState::Arrives, DrivenState::Arrives));
        // The wind behind is never slower.
        prop_assert!(strong.opening_following.time_s <= strong.opening.time_s * (1.0 + 1e-9));
    }
}

#[test]
fn along_a_real_arm_a_longer_ramp_can_raise_the_inertial_torque() {
    // Straight when closed, the leaf hardly moves while a short ramp lasts; a longer one still accelerates where the leaf follows the shaft.
    let run = |ramp_up: f64| {
        let mut value = moving(&straight(), 9.0, 8.0);
        (value["motion"]["ramp_up_s"], value["samples"]) = (json!(ramp_up), json!(2001));
        planned(&value).motion.unwrap().opening
    };
    let (short, long) = (run(0.25), run(2.0));
    let at_start = |run: &PrescribedRun, ramp: f64| {
        let rows = run.curve.iter().filter(|row| row.time_s <= ramp);
        rows.fold(0.0, |most: f64, row| most.max(row.inertial_torque_n_m.abs()))
    };
    assert!(at_start(&long, 2.0) > 1.5 * at_start(&short, 0.25), "while the ramp lasts");
    assert!(long.inertial.shaft_torque_n_m > 1.5 * short.inertial.shaft_torque_n_m, "over the whole way");
    // The same from positions alone: I·θ''(t)·dθ/dq with the leaf's angle differenced in time along the arm's own path.
    let model = Model::new(&job(&straight())).unwrap();
    let path = ShaftPath::new(model.linkage());
    let leaf = |time: f64, ramp: f64| {
        let (rate, speed) = (9f64.to_radians() / ramp, 9f64.to_radians());
        let progress = if time < ramp { rate * time * time / 2.0 } else { speed * (time - ramp / 2.0) };
        (progress, path.at(progress).leaf_rad)
    };
    let differenced = |ramp: f64| {
        let step = 1e-3;
        let times = (2..2000).map(|index| f64::from(index) * ramp / 2001.0);
        times.fold(0.0, |most: f64, time| {
            let [before, now, after] = [time - step, time, time + step].map(|time| leaf(time, ramp));
            let acceleration = (after.1 - 2.0 * now.1 + before.1) / (step * step);
            let gain = (after.1 - before.1) / (after.0 - before.0);
            most.max((model.loads().inertia_kg_m2 * acceleration * gain).abs())
        })
    };
    assert!(differenced(2.0) > 1.5 * differenced(0.25), "{} {}", differenced(2.0), differenced(0.25));
}

#[test]
fn a_weak_supply_stalls_where_the_demand_says() {
    let calm = planned(&crate::plan::example());
    let peak = calm.peak.shaft_torque_n_m;
    let run = |volts: f64| planned(&with_motor(&crate::plan::example(), 2.0 * peak, 12.0, volts)).motion.unwrap();
    // 24 V: twice the peak. 11 V: 11/12 of it, which is not enough on the way.
    assert_eq!(run(24.0).driven.unwrap().opening.state, DrivenState::Arrives);
    let weak = run(11.0).driven.unwrap();
    assert_eq!(weak.opening.state, DrivenState::Stalls);
    let model_torque = |leaf_deg: f64| {
        let job = job(&crate::plan::example());
        Model::new(&job).unwrap().point(leaf_deg.to_radians()).shaft_torque_open_n_m.abs()
    };
    // It creeps up to where the demand is what the motor has at standstill.
    assert!((model_torque(weak.opening.leaf_deg) / peak - 11.0 / 12.0).abs() < 1e-2);
    assert!(weak.opening.leaf_deg < calm.peak.leaf_deg + 1.0);
    let slow = run(16.0).driven.unwrap().opening.time_s;
    assert!(slow > run(24.0).driven.unwrap().opening.time_s);
}

#[test]
fn a_motor_too_weak_to_start_stays_and_one_far_too_weak_is_pushed_back() {
    let mut value = crate::plan::example();
    value["operator"]["arm_efficiency"] = json!(0.6);
    let start = planned(&value).curve[0];
    // Just under the torque it needs to open: friction and losses hold it.
    let state = |stall: f64| planned(&with_motor(&value, stall, 12.0, 24.0)).motion.unwrap().driven.unwrap().opening;
    let stays = state(0.95 * start.shaft_torque_open_n_m.abs());
    assert_eq!((stays.state, stays.time_s), (DrivenState::Stalls, 0.0));
    // Under what holds the wind with friction and losses helping: η²·(wind − friction)/(wind + friction) of the above.
    let back = state(0.05 * start.shaft_torque_open_n_m.abs());
    assert_eq!(back.state, DrivenState::DrivenBack);
}

#[test]
fn without_wind_both_winds_are_one() {
    let mut value = crate::plan::example();
    value["wind"]["speed_m_s"] = json!(0);
    let planned = planned(&with_motor(&value, 500.0, 12.0, 24.0));
    let motion = planned.motion.unwrap();
    let driven = motion.driven.unwrap();
    assert_eq!(driven.opening, driven.opening_following);
    assert_eq!(driven.opening.energy.wind_j, 0.0);
    assert_eq!(motion.coast_open.calm_leaf_deg, motion.coast_open.following_leaf_deg);
}

#[test]
fn wind_from_behind_drives_the_leaf_and_the_motor_brakes() {
    let mut value = crate::plan::example();
    value["wind"]["speed_m_s"] = json!(16);
    let run = |stall: f64| planned(&with_motor(&value, stall, 12.0, 24.0)).motion.unwrap();
    let fastest = |motion: &pintle_core::plan::Motion| {
        let rows = &motion.driven.as_ref().unwrap().opening_following.curve;
        rows.iter().fold(0.0, |most: f64, row| most.max(row.shaft_speed_deg_s.abs()))
    };
    // A strong motor keeps the commanded speed; one whose leads joined do not brake enough is outrun.
    let (strong, weak) = (run(1500.0), run(300.0));
    assert!((fastest(&strong) - 9.0).abs() < 0.1, "{}", fastest(&strong));
    assert!(fastest(&weak) > 12.0, "the shaft outruns the motor's no-load speed: {}", fastest(&weak));
    for motion in [&strong, &weak] {
        let driven = &motion.driven.as_ref().unwrap().opening_following;
        assert_eq!(driven.state, DrivenState::Arrives);
        assert!(driven.energy.motor_j < 0.0 && driven.energy.wind_j > 0.0);
        assert_eq!(motion.coast_open.following, CoastState::RunsOn);
    }
}

#[test]
fn a_dead_point_at_closed_starts_and_ends_at_rest() {
    let value = straight();
    let planned = planned(&with_motor(&value, 900.0, 12.0, 24.0));
    assert_eq!(planned.curve[0].ratio, None, "the arm is straight when closed");
    assert!(finite(&planned));
    let motion = planned.motion.unwrap();
    // The shaft turns, the leaf does not yet: no speed at the closed stop however fast the shaft is.
    assert!(motion.closed_stop.full_edge_speed_m_s < 1e-3, "{:?}", motion.closed_stop);
    let driven = motion.driven.unwrap();
    for run in [&driven.opening, &driven.closing, &driven.opening_following, &driven.closing_following] {
        assert_eq!(run.state, DrivenState::Arrives);
        assert!(run.energy.error < 1e-6);
    }
    assert!(driven.closing.arrival_edge_speed_m_s < 1e-3);
    let job: Job = job(&value);
    let model = Model::new(&job).unwrap();
    assert!(ShaftPath::new(model.linkage()).at(0.0).gain < 1e-3);
}

/// Closed forms of a leaf let go: a steady moment stops it after `E/M`; a spring that gives way, `M = c·θ`, after `√(2E/c)`; a drag that grows with the
/// energy, `M = c·E`, leaves `e^−c` of it, and never stops it.
#[test]
fn a_leaf_let_go_stops_where_its_energy_is_spent() {
    for (moment, way) in [(20.0, 1.0), (3.0, 0.9), (50.0, 2.0)] {
        assert_eq!(coast(2.0, way, |_, _| -moment).0 == CoastState::Stops, 2.0 / moment <= way);
        let (_, turned) = coast(2.0, way, |_, _| -moment);
        assert!((turned - (2.0 / moment).min(way)).abs() < 1e-12, "{turned}");
    }
    let (state, turned) = coast(2.0, 1.0, |angle, _| -20.0 * angle);
    assert!(state == CoastState::Stops && (turned - 0.2f64.sqrt()).abs() < 1e-5, "{turned}");
    // Helped at first and braked later: what counts is the whole way.
    assert_eq!(coast(2.0, 1.0, |angle, _| 0.5 - 4.0 * angle).0, CoastState::ReachesStop);
    assert_eq!(coast(2.0, 1.0, |_, _| 0.0).0, CoastState::RunsOn);
    assert_eq!(coast(2.0, 1.0, |_, energy| -3.0 * energy), (CoastState::ReachesStop, 1.0));
}

/// A braking ramp with the wind behind asks more of the drive than holding the wind back steadily, by at least the inertia's part there.
#[test]
fn braking_with_the_wind_behind_is_part_of_normal_running() {
    let mut value = moving(&crate::plan::example(), 20.0, 0.3);
    value["breakaway"] = json!({});
    let planned = planned(&value);
    let (overrun, motion) = (planned.overrun.unwrap(), planned.motion.unwrap());
    assert!(motion.held_back.shaft_torque_n_m > 1.1 * overrun.shaft_torque_n_m);
    let most = [motion.opening.peak, motion.closing.peak, motion.held_back].map(|peak| peak.shaft_torque_n_m);
    let running = planned.breakaway.unwrap().running_torque_n_m;
    assert!(most.iter().all(|torque| running >= *torque), "{running} {most:?}");
}

/// A motor with far more torque than is asked for keeps the commanded speed: the driven run is the prescribed one, but for the time a
/// controller takes to make up for a difference.
#[test]
fn a_motor_with_torque_in_plenty_follows_ramps_and_slow_zones() {
    let mut value = with_motor(&crate::plan::example(), 20_000.0, 30.0, 24.0);
    for (key, number) in [("slow_open_deg", 15), ("slow_close_deg", 20), ("slow_speed_deg_s", 3)] {
        value["motion"][key] = json!(number);
    }
    value["samples"] = json!(2001);
    let planned = planned(&value);
    let (motion, zone) = (planned.motion.unwrap(), planned.shaft_travel_deg - 15.0);
    let driven = motion.driven.unwrap();
    for (asked, run) in [(&motion.opening, &driven.opening), (&motion.closing, &driven.closing)] {
        assert_eq!(run.state, DrivenState::Arrives);
        assert!((run.time_s - asked.time_s).abs() < 0.1, "{} {}", run.time_s, asked.time_s);
        assert!((run.edge_speed_m_s / asked.edge_speed_m_s - 1.0).abs() < 1e-3);
        assert!(run.arrival_edge_speed_m_s < 0.05 * asked.edge_speed_m_s);
    }
    // In the slow zone it is slow: closed form, the zone's angle over its speed and half a ramp.
    let slow = driven.opening.curve.iter().filter(|row| row.shaft_deg.abs() > zone);
    let fastest = slow.fold(0.0, |most: f64, row| most.max(row.shaft_speed_deg_s.abs()));
    assert!((fastest - 3.0).abs() < 0.01, "{fastest}");
}
