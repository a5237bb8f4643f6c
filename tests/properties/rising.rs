//! A leaf on rising hinges, cut free of its ramp and pins: forces as vectors, round the axis and along it, and a line of equations for each.
//!
//! Nothing here knows of tan(α ± φ). Every friction force points against the way of sliding (Coulomb), the ramp's other force square to it.

use crate::jobs::{job, planned, valid};
use crate::plan::example;
use pintle_core::{
    STANDARD_GRAVITY_M_S2,
    elements::{helix_lowering_n_m, helix_raising_n_m, helix_steepest_m_per_rad},
    fault::FaultCode,
    job::Job,
    leaf::RisingLeaf,
    plan::{FindingCode, Model, plan},
    terms::Direction,
};
use proptest::prelude::*;
use serde_json::{Value, json};

/// Moment that turns the leaf steadily up (`way` 1) or down (−1), N·m, positive in the sense of up, and the ramp's normal force, N.
pub fn cut_free(leaf: &RisingLeaf, way: f64) -> (f64, f64) {
    let RisingLeaf { weight_n, couple_n, pin_radius_m, collar_radius_m: r, rise_m_per_rad: p, friction_coefficient } =
        *leaf;
    let unit = |round: f64, along: f64| (round / round.hypot(along), along / round.hypot(along));
    let (sliding_round, sliding_along) = unit(way * r, way * p);
    let (normal_round, normal_along) = unit(-p, r);
    let pins_n = 2.0 * friction_coefficient * couple_n;
    let (pins_round, pins_along) = unit(way * pin_radius_m, way * p);
    let (pins_round, pins_along) = (-pins_n * pins_round, -pins_n * pins_along);
    // Along the axis: N·(n − μ·t) + pins − W = 0.
    let normal_n = (weight_n - pins_along) / (normal_along - friction_coefficient * sliding_along);
    let ramp_round = normal_n * (normal_round - friction_coefficient * sliding_round);
    // About it: M + r·ramp + r_p·pins = 0.
    (-r * ramp_round - pin_radius_m * pins_round, normal_n)
}

/// The same for a leaf whose pins may hold it up: then nothing presses on the ramp, and they let it down no faster than their friction carries it.
pub fn moment_n_m(leaf: &RisingLeaf, way: f64) -> f64 {
    match cut_free(leaf, way) {
        (_, normal_n) if normal_n < 0.0 => {
            let friction_n = 2.0 * leaf.friction_coefficient * leaf.couple_n;
            // How steep the pins slide, by bisection: their friction's part along the axis is the weight.
            let (mut flat, mut steep) = (0.0f64, std::f64::consts::FRAC_PI_2);
            for _ in 0..200 {
                let middle = (flat + steep) / 2.0;
                if friction_n * middle.sin() < leaf.weight_n { flat = middle } else { steep = middle }
            }
            way * friction_n * flat.cos() * leaf.pin_radius_m
        }
        (moment_n_m, _) => moment_n_m,
    }
}

/// The leaf of a job on rising hinges without ice, by its drawing.
pub fn of(value: &Value, weight_n: f64) -> RisingLeaf {
    let hinges = &value["hinges"];
    let at = |name: &str| hinges[name].as_f64().expect("a number");
    let centre = value["leaf"]["mass_centroid_m"].as_f64().expect("said");
    let (outer, inner) = (at("thrust_outer_radius_m"), at("thrust_inner_radius_m"));
    // Where the load of a flat collar of that pressure has its friction: a ring's weighted mean.
    let ring = |power: i32| (outer.powi(power) - inner.powi(power)) / f64::from(power);
    let collar_radius_m = match hinges["collar"].as_str() {
        Some("uniform_wear") => ring(2) / ring(1),
        _ => ring(3) / ring(2),
    };
    RisingLeaf {
        weight_n,
        couple_n: weight_n * centre.abs() / at("spacing_m"),
        pin_radius_m: at("pin_radius_m"),
        collar_radius_m,
        rise_m_per_rad: at("rise_m").abs() / value["swing"]["open_deg"].as_f64().expect("said").to_radians(),
        friction_coefficient: at("friction_coefficient"),
    }
}

fn near(one: f64, other: f64, scale: f64) -> bool {
    (one - other).abs() <= 1e-9 * scale.max(1.0)
}

proptest! {
    #[test]
    fn a_leaf_on_a_ramp_is_in_equilibrium(
        weight in 50.0..8000.0f64, couple in 0.0..20000.0f64, pin in 0.003..0.04f64, collar in 0.003..0.08f64, friction in 0.0..0.6f64,
        steepness in 0.0..0.95f64,
    ) {
        // Up to 95 % of where it binds, φ = atan μ below a right angle.
        let rise = (steepness * collar * (std::f64::consts::FRAC_PI_2 - friction.atan()).tan()).min(0.5);
        let leaf = RisingLeaf { weight_n: weight, couple_n: couple, pin_radius_m: pin, collar_radius_m: collar, rise_m_per_rad: rise,
            friction_coefficient: friction };
        let (up, down) = (moment_n_m(&leaf, 1.0), moment_n_m(&leaf, -1.0));
        let scale = up.abs() + weight * (collar + rise);
        prop_assert!(near(leaf.raising_n_m(), up, scale), "{} {up}", leaf.raising_n_m());
        prop_assert!(near(-leaf.lowering_n_m(), down, scale), "{} {down}", leaf.lowering_n_m());
        // Work of a radian: the weight lifted, and friction along the ways of sliding.
        let (_, normal) = cut_free(&leaf, 1.0);
        let work = weight * rise + friction * (normal * collar.hypot(rise) + 2.0 * couple * pin.hypot(rise));
        prop_assert!(near(up, work, scale), "{up} {work}");
    }

    /// Through a whole job, either way the ramp goes; without friction the weight gives back all it took.
    #[test]
    fn a_ramp_of_a_job_is_the_same_leaf(value in valid(), share in -0.95..0.95f64, worn in any::<bool>(), smooth in any::<bool>()) {
        let mut value = value;
        prop_assume!(value["hinges"]["kind"] == "plain");
        value["lean"] = json!({});
        value["wind"]["speed_m_s"] = json!(0);
        value["hinges"]["kind"] = json!("rising");
        value["hinges"]["rise_m"] = json!(0.0);
        value["hinges"]["collar"] = json!(if worn { "uniform_wear" } else { "uniform_pressure" });
        if smooth {
            value["hinges"]["friction_coefficient"] = json!(0);
        }
        let weight = value["leaf"]["mass_kg"].as_f64().unwrap() * STANDARD_GRAVITY_M_S2;
        let open = value["swing"]["open_deg"].as_f64().unwrap().to_radians();
        let flat = of(&value, weight);
        let binds = flat.collar_radius_m / flat.friction_coefficient.max(1e-9) * open;
        value["hinges"]["rise_m"] = json!(share * binds.min(0.5));
        let leaf = of(&value, weight);
        let planned = planned(&value);
        let (up, down) = (moment_n_m(&leaf, 1.0), moment_n_m(&leaf, -1.0));
        let (opening, closing) = if share >= 0.0 { (up, down) } else { (-down, -up) };
        let row = planned.curve[1];
        let scale = up.abs() + weight;
        prop_assert!(near(row.leaf_torque_open_n_m, opening, scale), "{} {opening}", row.leaf_torque_open_n_m);
        prop_assert!(near(row.leaf_torque_close_n_m, closing, scale), "{} {closing}", row.leaf_torque_close_n_m);
        if smooth {
            prop_assert!(near(row.leaf_torque_open_n_m, weight * leaf.rise_m_per_rad * share.signum(), scale));
        }
        let ramp = planned.loads.ramp.expect("a ramp");
        prop_assert!(near(ramp.friction_open_n_m + ramp.weight_n_m, opening, scale));
        prop_assert!(near(ramp.friction_close_n_m - ramp.weight_n_m, -closing, scale));
    }
}

/// The demonstration leaf, its centre on the hinge axis so that the pins carry no couple, in calm air on a ramp.
fn hung_on_its_ramp(rise_m: f64, friction: f64) -> Value {
    let mut value = example();
    value["leaf"]["mass_centroid_m"] = json!(0);
    value["wind"]["speed_m_s"] = json!(0);
    value["hinges"]["kind"] = json!("rising");
    value["hinges"]["rise_m"] = json!(rise_m);
    value["hinges"]["friction_coefficient"] = json!(friction);
    value
}

/// 160 kg on a collar of 12 and 20 mm, μ 0.2, 90° open: W·r·tan(α ± φ) with r = 16.33 mm, reckoned by hand.
#[test]
fn the_ramp_alone_asks_what_the_textbook_says() {
    for (rise_m, opening, closing, half_digit) in [(0.04, 65.5, 26.6, 0.05), (0.08, 226.0, 46.0, 0.5)] {
        let plan = planned(&hung_on_its_ramp(rise_m, 0.2));
        let row = plan.curve[0];
        assert!((row.leaf_torque_open_n_m - opening).abs() < half_digit, "{}", row.leaf_torque_open_n_m);
        assert!((row.leaf_torque_close_n_m - closing).abs() < half_digit, "{}", row.leaf_torque_close_n_m);
        // What it asks at the latch edge with the arm off, and what it pushes back.
        let record = Model::new(&job(&hung_on_its_ramp(rise_m, 0.2))).expect("valid").commissioning(&plan);
        let pull = |path: &str| record.checks.iter().find(|check| check.path == path).expect("a pull").planned;
        assert!((pull("record.pull_open_n").unwrap() * 3.2 - row.leaf_torque_open_n_m).abs() < 1e-9);
        assert!((pull("record.pull_close_n").unwrap() * 3.2 + row.leaf_torque_close_n_m).abs() < 1e-9);
    }
}

/// A ramp steeper than friction can hold lets the leaf run: tan α = p/r above μ. Down is shut where it rises, open where it falls.
#[test]
fn a_leaf_runs_down_a_ramp_steeper_than_friction() {
    let told = |rise_m: f64| {
        let codes: Vec<FindingCode> =
            planned(&hung_on_its_ramp(rise_m, 0.2)).findings.iter().map(|finding| finding.code).collect();
        [FindingCode::RampRunsShut, FindingCode::RampRunsOpen].map(|code| codes.contains(&code))
    };
    // Mean radius of friction of 12 and 20 mm under even pressure, by the rings of the collar.
    let radius: f64 = (20f64.powi(3) - 12f64.powi(3)) / 3.0 / ((20f64.powi(2) - 12f64.powi(2)) / 2.0) / 1000.0;
    let holds = 0.2 * radius * std::f64::consts::FRAC_PI_2;
    assert_eq!(told(holds * 0.999), [false, false]);
    assert_eq!(told(holds * 1.001), [true, false]);
    assert_eq!(told(-holds * 0.999), [false, false]);
    assert_eq!(told(-holds * 1.001), [false, true]);
}

/// α + φ = 90° is where it binds: refused, with what would do, whichever way the leaf rises and for the upper end of the friction.
#[test]
fn a_ramp_that_binds_is_refused() {
    let radius: f64 = (20f64.powi(3) - 12f64.powi(3)) / 3.0 / ((20f64.powi(2) - 12f64.powi(2)) / 2.0) / 1000.0;
    let rise =
        |friction: f64| radius * (std::f64::consts::FRAC_PI_2 - friction.atan()).tan() * std::f64::consts::FRAC_PI_2;
    for (sign, high) in [(1.0, None), (-1.0, None), (1.0, Some(0.5))] {
        let at = |share: f64| {
            let mut value = hung_on_its_ramp(sign * share * rise(high.unwrap_or(0.3)), 0.3);
            value["hinges"]["friction_high"] = json!(high);
            Job::read(&crate::jobs::document(&value))
        };
        let steep = at(0.99999).expect("just below");
        let demand = plan(&steep).expect("it turns").peak.shaft_torque_n_m;
        assert!(demand.is_finite() && (high.is_some() || demand > 1e4), "{demand}");
        let fault = at(1.00001).expect_err("it binds").errors;
        assert_eq!((fault.len(), fault[0].path.as_str(), fault[0].code), (1, "hinges.rise_m", FaultCode::RampBinds));
    }
    assert_eq!(helix_raising_n_m(1.0, 0.01, 0.05, 0.2), None);
    assert!(helix_lowering_n_m(1.0, 0.01, 0.05, 0.2) < 0.0);
    assert_eq!((helix_steepest_m_per_rad(0.01, 0.25), helix_steepest_m_per_rad(0.01, 0.0)), (0.04, f64::INFINITY));
}

/// Friction by the way the leaf moves reaches the run through time: what the motor gives is what weight, friction and motion take.
#[test]
fn the_run_of_a_motor_pays_the_ramp_both_ways() {
    let mut value = hung_on_its_ramp(0.03, 0.2);
    value["operator"]["shaft_speed_deg_s"] = json!(9);
    value["motion"] = json!({ "motor": { "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24 } });
    let weight = 160.0 * STANDARD_GRAVITY_M_S2;
    let leaf = of(&value, weight);
    let model = Model::new(&job(&value)).expect("valid");
    let driven = model.plan().motion.expect("motion").driven.expect("a motor");
    for (run, way, direction) in [(&driven.opening, 1.0, Direction::Open), (&driven.closing, -1.0, Direction::Close)] {
        let taken = way * moment_n_m(&leaf, way) * std::f64::consts::FRAC_PI_2;
        let found = run.energy.friction_j - run.energy.gravity_j;
        assert!((found - taken).abs() <= 1e-3 * taken.abs(), "{direction:?}: {found} {taken}");
        assert!(run.energy.error < 1e-6);
    }
}
