//! The prescribed run on an arm whose ratio changes: `θ̇ = q̇/|n|`, `θ̈ = q̈/|n| − q̇²·n'/|n|³`, from the arm's geometry and a trapezoid alone.

use crate::bench::{Arm, INERTIA, LENGTH, WIND, demand, effort, near, on_an_arm};
use crate::jobs::planned;
use pintle_core::drive::PrescribedRun;
use serde_json::json;
use std::f64::consts::FRAC_PI_2;

/// What one moment of a run comes to.
struct Row {
    time_s: f64,
    leaf: f64,
    speed: f64,
    acceleration: f64,
    torque: f64,
    inertial: f64,
    power: f64,
}

struct Led {
    arm: Arm,
    travel: f64,
    sign: f64,
    wind: f64,
}

impl Led {
    fn new(sign: f64, wind: f64) -> Led {
        let arm = Arm::of(&on_an_arm());
        Led { arm, travel: (arm.at(FRAC_PI_2).crank_rad - arm.at(0.0).crank_rad).abs(), sign, wind }
    }

    /// Leaf angle where the crank has turned so far from closed.
    fn leaf(&self, turned: f64) -> f64 {
        let (mut low, mut high) = (-0.01, FRAC_PI_2 + 0.01);
        for _ in 0..50 {
            let middle = (low + high) / 2.0;
            let there = self.arm.at(0.0).crank_rad - self.arm.at(middle).crank_rad;
            if there * self.turn() < turned { low = middle } else { high = middle }
        }
        (low + high) / 2.0
    }

    /// −1 where the crank's angle grows on opening.
    fn turn(&self) -> f64 {
        (self.arm.at(0.0).crank_rad - self.arm.at(FRAC_PI_2).crank_rad).signum()
    }

    /// Way, speed and acceleration of the shaft, 2 s up to 10°/s and 1 s down; `before` at a corner takes what ends there.
    fn shaft(&self, time: f64, before: bool) -> (f64, f64, f64) {
        let speed = 10f64.to_radians();
        let total = self.time();
        let is = |corner: f64| if before { time <= corner } else { time < corner };
        if is(2.0) {
            (speed * time * time / 4.0, speed * time / 2.0, speed / 2.0)
        } else if is(total - 1.0) {
            (speed * (time - 1.0), speed, 0.0)
        } else {
            let left = total - time;
            (self.travel - speed * left * left / 2.0, speed * left, -speed)
        }
    }

    /// `D/v + (t_up + t_down)/2`.
    fn time(&self) -> f64 {
        self.travel / 10f64.to_radians() + 1.5
    }

    fn at(&self, time_s: f64, before: bool) -> Row {
        let (way, rate, rise) = self.shaft(time_s, before);
        let leaf = self.leaf(if self.sign > 0.0 { way } else { self.travel - way });
        let ratio = |leaf: f64| self.arm.at(leaf).ratio.abs();
        let slope = (ratio(leaf + 1e-5) - ratio(leaf - 1e-5)) / 2e-5;
        let n = ratio(leaf);
        // The way back runs the same path the other way: the curvature keeps its sign.
        let acceleration = self.sign * rise / n - rate * rate * slope / n.powi(3);
        let moment = demand(leaf, self.sign, self.wind) + INERTIA * acceleration;
        Row {
            time_s,
            leaf,
            speed: self.sign * rate / n,
            acceleration,
            torque: effort(moment, self.sign) / n,
            inertial: INERTIA * acceleration / n,
            power: effort(moment, self.sign) / n * self.sign * rate,
        }
    }

    /// Every stretch finely, both its ends its own.
    fn rows(&self) -> Vec<Row> {
        let corners = [0.0, 2.0, self.time() - 1.0, self.time()];
        let stretches = corners.windows(2).flat_map(|ends| {
            (0..=500).map(move |index| (ends[0] + (ends[1] - ends[0]) * f64::from(index) / 500.0, index == 500))
        });
        stretches.map(|(time, before)| self.at(time, before)).collect()
    }
}

fn most(rows: &[Row], of: impl Fn(&Row) -> f64) -> (f64, &Row) {
    rows.iter().fold((0.0, &rows[0]), |most, row| if of(row) > most.0 { (of(row), row) } else { most })
}

fn check(run: &PrescribedRun, led: &Led) {
    near(run.time_s, led.time(), 1e-9);
    for row in &run.curve[1..run.curve.len() - 1] {
        if (row.time_s - 2.0).abs() < 1e-9 || (row.time_s - led.time() + 1.0).abs() < 1e-9 {
            continue;
        }
        let at = led.at(row.time_s, false);
        near(row.leaf_deg, at.leaf.to_degrees(), 1e-8);
        near(row.shaft_deg, (led.arm.at(at.leaf).crank_rad - led.arm.at(0.0).crank_rad).to_degrees(), 1e-8);
        near(row.leaf_speed_deg_s, at.speed.to_degrees(), 1e-8);
        near(row.leaf_acceleration_deg_s2, at.acceleration.to_degrees(), 1e-6);
        near(row.edge_speed_m_s, at.speed.abs() * LENGTH, 1e-8);
        near(row.energy_j, INERTIA * at.speed * at.speed / 2.0, 1e-8);
        near(row.shaft_torque_n_m, -led.turn() * at.torque, 1e-6);
        near(row.inertial_torque_n_m, -led.turn() * at.inertial, 1e-6);
        near(row.shaft_power_w, at.power, 1e-6);
    }
    let rows = led.rows();
    let (speed, fastest) = most(&rows, |row| row.speed.abs());
    near(run.edge_speed_m_s, speed * LENGTH, 1e-4);
    assert!((run.edge_speed_leaf_deg - fastest.leaf.to_degrees()).abs() < 1.0, "{}", run.edge_speed_leaf_deg);
    near(run.energy_j, INERTIA * speed * speed / 2.0, 1e-4);
    near(run.leaf_acceleration_deg_s2, most(&rows, |row| row.acceleration.abs()).0.to_degrees(), 1e-4);
    near(run.shaft_power_w, most(&rows, |row| row.power).0, 1e-4);
    near(run.arrival_edge_speed_m_s, led.at(led.time() - 1.0, true).speed.abs() * LENGTH, 1e-8);
    for (found, (torque, at)) in
        [(run.peak, most(&rows, |row| row.torque.abs())), (run.inertial, most(&rows, |row| row.inertial.abs()))]
    {
        near(found.shaft_torque_n_m, torque, 1e-4);
        assert!((found.time_s - at.time_s).abs() < 0.05, "{found:?} {}", at.time_s);
        assert!((found.leaf_deg - at.leaf.to_degrees()).abs() < 0.5, "{found:?} {}", at.leaf);
    }
}

#[test]
fn a_shaft_that_keeps_its_speed_leads_the_leaf_along_the_arm() {
    let mut value = on_an_arm();
    value["motion"] = json!({ "ramp_up_s": 2, "ramp_down_s": 1 });
    let motion = planned(&value).motion.expect("motion");
    check(&motion.opening, &Led::new(1.0, WIND));
    check(&motion.closing, &Led::new(-1.0, WIND));
    // With the wind behind only the largest torque of both ways is told.
    let held = [1.0, -1.0].map(|sign| most(&Led::new(sign, -WIND).rows(), |row| row.torque.abs()).0);
    near(motion.held_back.shaft_torque_n_m, held[0].max(held[1]), 1e-4);
    near(
        motion.closed_stop.full_edge_speed_m_s,
        10f64.to_radians() / Led::new(1.0, WIND).arm.at(0.0).ratio.abs() * LENGTH,
        1e-9,
    );
}
