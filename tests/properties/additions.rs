//! Identities of the optional blocks: storm, bearing, band, members, ground, sensitivity.

use crate::jobs::{damaged, job, loaded, valid, with};
use crate::plan::finite;
use pintle_core::{
    job::{Job, MemberTotals},
    leaf::{en1991_wall_force_coefficient, en1991_wall_moment_coefficient, normal_component},
    plan::{Model, Subject, plan},
};
use proptest::prelude::*;
use serde_json::{Value, json};

proptest! {
    // Each case is a plan or sixty of them.
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn the_closed_leaf_is_in_equilibrium_in_the_storm(value in valid(), speed in 5.0..60.0f64) {
        let job = job(&with(&value, "storm", json!({ "speed_m_s": speed, "force_coefficient": 1.3 })));
        let model = Model::new(&job).unwrap();
        let storm = model.plan().storm.unwrap();
        let pose = model.linkage().pose(0.0);
        let force = 0.5 * 1.225 * speed * speed * 1.3 * value["leaf"]["wind_area_m2"].as_f64().unwrap();
        let centre = value["leaf"]["length_m"].as_f64().unwrap() / 2.0;
        prop_assert!((storm.wind_n - force).abs() <= 1e-9 * force.max(1.0));
        // Moments about the hinge: wind along +y at the centre, link along its own line at the bracket.
        let along = (pose.bracket - pose.elbow).normalize();
        let link = -force * centre / pose.bracket.to_vec2().cross(along);
        prop_assert!((storm.link_force_n - link.abs()).abs() <= 1e-9 * link.abs().max(1.0));
        // Forces on the leaf sum to nothing.
        let (x, y) = (-link * along.x, -force - link * along.y);
        prop_assert!((storm.hinge_n - x.hypot(y)).abs() <= 1e-9 * storm.hinge_n.max(1.0));
        let parts = storm.bracket_along_n.hypot(storm.bracket_across_n);
        prop_assert!((parts - storm.link_force_n).abs() <= 1e-9 * parts.max(1.0));
    }

    #[test]
    fn ice_is_weight_and_width_on_the_wind_area(value in valid(), thickness in 0.0..0.03f64, factor in 1.0..1.5f64) {
        let number = |path: &str| value.pointer(path).and_then(Value::as_f64);
        let (mass, length, area) = (
            number("/leaf/mass_kg").unwrap(), number("/leaf/length_m").unwrap(), number("/leaf/wind_area_m2").unwrap());
        let centre = number("/leaf/mass_centroid_m").unwrap_or(length / 2.0);
        let windward = number("/leaf/wind_centroid_m").unwrap_or(length / 2.0);
        // Both faces, at 900 kg/m3, spread along the leaf.
        let ice = 2.0 * thickness * 900.0 * area;
        let mut heavy = value.clone();
        heavy["leaf"]["mass_kg"] = json!(mass + ice);
        heavy["leaf"]["mass_centroid_m"] = json!((mass * centre + ice * windward) / (mass + ice));
        heavy["leaf"]["wind_centroid_m"] = json!(windward);
        heavy["leaf"]["wind_area_m2"] = json!(area * factor);
        let own = number("/leaf/inertia_kg_m2").unwrap_or(mass * length * length / 3.0);
        heavy["leaf"]["inertia_kg_m2"] = json!(own + ice * length * length / 3.0);
        prop_assume!(mass + ice <= 5000.0 && area * factor <= 60.0);
        let iced = with(&value, "ice", json!({ "thickness_m": thickness, "area_factor": factor, "density_kg_m3": 900 }));
        let (iced, heavy) = (plan(&job(&iced)).unwrap(), plan(&job(&heavy)).unwrap());
        let same = |one: f64, other: f64| (one - other).abs() <= 1e-9 * one.abs().max(1.0);
        prop_assert!(same(iced.loads.hinge_friction_n_m, heavy.loads.hinge_friction_n_m));
        prop_assert!(same(iced.loads.wind_n_m, heavy.loads.wind_n_m));
        prop_assert!(same(iced.loads.inertia_kg_m2, heavy.loads.inertia_kg_m2));
        prop_assert!(same(iced.peak.shaft_torque_n_m, heavy.peak.shaft_torque_n_m));
    }

    #[test]
    fn the_storm_does_not_touch_the_working_wind(value in valid(), speed in 5.0..60.0f64) {
        let mut calm = plan(&job(&value)).unwrap();
        let mut stormy = plan(&job(&with(&value, "storm", json!({ "speed_m_s": speed, "force_coefficient": 1.3 })))).unwrap();
        stormy.storm = None;
        stormy.findings.retain(|finding| finding.code.about() != Subject::Storm);
        for plan in [&mut calm, &mut stormy] {
            plan.judgements.retain(|one| one.about != Subject::Storm);
        }
        stormy.assumed.retain(|path| !path.starts_with("storm."));
        // The overall is the worst of the judgements, the storm's own among them.
        stormy.overall = calm.overall.clone();
        prop_assert!(calm == stormy);
    }

    #[test]
    fn a_bearing_never_asks_for_more_than_the_wind_always_against(value in valid(), bearing in -400.0..400.0f64) {
        let mut value = value;
        value["wind"]["bearing_deg"] = json!(bearing);
        let planned = plan(&job(&value)).unwrap();
        let fixed = planned.wind.unwrap().bearing.unwrap();
        prop_assert!(fixed.peak.shaft_torque_n_m <= planned.peak.shaft_torque_n_m * (1.0 + 1e-12));
        for row in &fixed.curve {
            let moment = planned.loads.wind_n_m * normal_component(bearing.to_radians(), row.leaf_deg.to_radians());
            prop_assert!((row.wind_n_m - moment).abs() <= 1e-9 * planned.loads.wind_n_m.max(1.0));
            let top = row.shaft_torque_open_n_m.abs().max(row.shaft_torque_close_n_m.abs());
            prop_assert!(top <= fixed.peak.shaft_torque_n_m * (1.0 + 1e-12) + 1e-12, "a row lies above the peak");
        }
    }

    #[test]
    fn more_friction_asks_for_more(value in valid(), low in 0.0..0.2f64, high in 0.3..0.8f64) {
        let mut value = value;
        prop_assume!(value["hinges"]["kind"] == "plain");
        value["hinges"]["friction_coefficient"] = json!(0.25);
        value["hinges"]["friction_low"] = json!(low);
        value["hinges"]["friction_high"] = json!(high);
        let planned = plan(&job(&value)).unwrap();
        let band = planned.band.unwrap();
        prop_assert!(band.peak_n_m.low <= band.peak_n_m.likely && band.peak_n_m.likely <= band.peak_n_m.high);
        prop_assert_eq!(band.peak_n_m.likely, planned.peak.shaft_torque_n_m);
        for (end, friction) in [(band.peak_n_m.low, low), (band.peak_n_m.high, high)] {
            let mut alone = value.clone();
            alone["hinges"] = with(&value["hinges"], "friction_coefficient", json!(friction));
            alone["hinges"]["friction_low"] = Value::Null;
            alone["hinges"]["friction_high"] = Value::Null;
            let alone = plan(&job(&alone)).unwrap();
            prop_assert!(alone.band.is_none());
            prop_assert_eq!(alone.peak.shaft_torque_n_m, end);
        }
    }

    #[test]
    fn a_latch_counts_up_to_its_angle(value in valid(), latch in 10.0..500.0f64, share in 0.05..0.9f64) {
        let open = value["swing"]["open_deg"].as_f64().unwrap();
        let open = open.min(45.0);
        let free = plan(&job(&value)).unwrap();
        let latched = plan(&job(&with(&value, "drag", json!({ "latch_n_m": latch, "latch_deg": share * open })))).unwrap();
        prop_assert!(latched.peak.shaft_torque_n_m >= free.peak.shaft_torque_n_m * (1.0 - 1e-12));
        for (with, without) in latched.curve.iter().zip(&free.curve) {
            // The rows' angles have been to degrees and back.
            prop_assume!((with.leaf_deg - share * open).abs() > 1e-9);
            let added = with.leaf_torque_open_n_m - without.leaf_torque_open_n_m;
            let expected = if with.leaf_deg < share * open { latch } else { 0.0 };
            prop_assert!((added - expected).abs() < 1e-9 * latch.max(without.leaf_torque_open_n_m.abs()));
            let top = with.shaft_torque_open_n_m.abs().max(with.shaft_torque_close_n_m.abs());
            prop_assert!(top <= latched.peak.shaft_torque_n_m * (1.0 + 1e-12), "a row lies above the peak");
        }
    }

    #[test]
    fn members_add_up_as_if_each_piece_were_listed(
        count in 1..30u32, from in 0.0..1.0f64, spread in 0.0..3.0f64, height in 0.5..1.5f64, face in 0.02..0.06f64,
    ) {
        let bar = |from: f64, to: f64, count: u32| json!({ "section": "bar", "face_m": face,
            "place": { "from_m": from, "to_m": to, "height_m": height, "count": count } });
        let totals = |members: Vec<Value>| {
            let leaf = json!({ "length_m": 5.0, "mass_kg": 100, "wind_area_m2": 1, "members": members });
            let job = job(&with(&simple(), "leaf", leaf));
            MemberTotals::of(job.leaf.members.as_deref().unwrap())
        };
        let row = totals(vec![bar(from, from + spread, count)]);
        let step = if count > 1 { spread / f64::from(count - 1) } else { 0.0 };
        let first = if count > 1 { from } else { from + spread / 2.0 };
        let single = (0..count).map(|index| first + step * f64::from(index)).map(|x| bar(x, x, 1)).collect();
        let single = totals(single);
        for (one, other) in [
            (row.mass_kg, single.mass_kg), (row.mass_centroid_m, single.mass_centroid_m),
            (row.inertia_kg_m2, single.inertia_kg_m2), (row.wind_area_m2, single.wind_area_m2),
            (row.wind_centroid_m, single.wind_centroid_m),
        ] {
            prop_assert!((one - other).abs() <= 1e-9 * one.abs().max(1e-3), "{row:?} {single:?}");
        }
        prop_assert!((row.mass_kg - 7850.0 * face * face * height * f64::from(count)).abs() <= 1e-9 * row.mass_kg);
    }

    #[test]
    fn the_beaufort_limit_is_the_last_within(value in valid(), gust in 1.0..2.0f64, height in 0.5..1.0f64) {
        let mut value = value;
        let from = |number: u8| json!({ "kind": "beaufort", "number": number, "gust_factor": gust, "height_factor": height });
        value["wind"]["speed_m_s"] = Value::Null;
        value["wind"]["from"] = from(4);
        let planned = plan(&job(&value)).unwrap();
        prop_assume!(planned.wind_limit.speed_m_s.is_some());
        let limit = planned.wind.unwrap().limit_beaufort;
        let mut over = |number| {
            value["wind"]["from"] = from(number);
            plan(&job(&value)).unwrap().rating.utilisation > 1.0
        };
        let Some(number) = limit else {
            // Not even a calm's two decimetres a second.
            prop_assert!(over(0));
            return Ok(());
        };
        prop_assert!(number > 11 || !over(number));
        prop_assert!(number > 10 || over(number + 1));
    }

    #[test]
    fn a_range_of_friction_is_what_the_reserve_is_asked_over(value in valid()) {
        prop_assume!(value["hinges"]["kind"] == "plain");
        let mut value = with(&value, "uncertainty", json!({}));
        value["hinges"]["pairing"] = json!("steel_bronze_greased");
        value["hinges"]["friction_coefficient"] = Value::Null;
        let planned = plan(&job(&value)).unwrap();
        let (list, band) = (planned.sensitivity.unwrap(), planned.band.unwrap());
        let friction = list.iter().find(|entry| entry.path == "hinges.friction_coefficient").unwrap();
        let rated = value["operator"]["rated_torque_n_m"].as_f64().unwrap();
        prop_assert_eq!(friction.low, Some(rated / band.peak_n_m.low));
        prop_assert_eq!(friction.high, Some(rated / band.peak_n_m.high));
    }

    #[test]
    fn zones_keep_their_moment(
        length in 0.5..8.0f64, height in 0.5..4.0f64, zones in prop::array::uniform4(0.5..4.0f64), shelter in 0.3..1.0f64,
    ) {
        // A sum of narrow strips from the free end, each in the zone its middle lies in.
        const STRIPS: u32 = 20_000;
        let width = length / f64::from(STRIPS);
        let (moment, force) = (0..STRIPS)
            .map(|strip| {
                let from_end = (f64::from(strip) + 0.5) * width;
                let zone = [0.3, 2.0, 4.0].iter().filter(|end| from_end > **end * height).count();
                // What stands upwind does not shelter the stretch within a height of the free end.
                let factor = if from_end > height { shelter } else { 1.0 };
                let force = zones[zone] * factor * width;
                (force * (length - from_end), force)
            })
            .fold((0.0, 0.0), |(moment, force), (more, own)| (moment + more, force + own));
        let coefficient = en1991_wall_moment_coefficient(length, height, zones, shelter);
        prop_assert!((moment - coefficient * length * length / 2.0).abs() <= 1e-3 * moment);
        let coefficient = en1991_wall_force_coefficient(length, height, zones, shelter);
        prop_assert!((force - coefficient * length).abs() <= 1e-3 * force);
    }

    #[test]
    fn a_wind_from_a_standard_is_the_gust_it_says(value in loaded()) {
        let planned = plan(&job(&value)).unwrap();
        let gust = planned.wind.unwrap().gust;
        let mut plain = value.clone();
        plain["wind"] = json!({ "speed_m_s": gust.speed_m_s, "force_coefficient": gust.force_coefficient });
        prop_assume!(gust.speed_m_s <= 100.0 && gust.force_coefficient <= 4.0);
        let plain = plan(&job(&plain)).unwrap();
        prop_assert_eq!(plain.loads, planned.loads);
        prop_assert_eq!(plain.peak, planned.peak);
        let plain_pressure = 0.5 * gust.air_density_kg_m3 * gust.speed_m_s * gust.speed_m_s;
        prop_assert!((gust.pressure_pa - plain_pressure).abs() <= 1e-9 * plain_pressure.max(1.0));
        prop_assert!(plain.wind.is_none());
    }

    #[test]
    fn the_least_gap_is_no_sampled_one_and_the_touch_is_the_first(
        value in valid(), slope in 0.0..12.0f64, uphill in -180.0..180.0f64, gap in 0.01..0.4f64, rake in -0.1..0.1f64,
    ) {
        let ground = json!({ "slope_deg": slope, "uphill_deg": uphill, "gap_m": gap, "bottom_rise_m": rake });
        let value = with(&with(&value, "ground", ground), "samples", json!(500));
        let over = plan(&job(&value)).unwrap().ground.unwrap();
        let length = value["leaf"]["length_m"].as_f64().unwrap();
        let lean = value["lean"]["angle_deg"].as_f64().unwrap().to_radians().sin();
        let downhill = value["lean"]["downhill_deg"].as_f64().unwrap();
        let mut least = f64::MAX;
        for row in &over.curve {
            // The latch edge in space: it falls where the axis leans to, the ground rises where uphill is.
            let cosine = |deg: f64| (row.leaf_deg - deg).to_radians().cos();
            let expected = gap + rake - length * (lean * cosine(downhill) + slope.to_radians().tan() * cosine(uphill));
            prop_assert!((row.gap_latch_m - expected).abs() < 1e-9, "{} {expected}", row.gap_latch_m);
            prop_assert!((row.gap_hinge_m - gap).abs() < 1e-12);
            least = least.min(row.gap_latch_m).min(row.gap_hinge_m);
            match over.touch_leaf_deg {
                Some(touch) if row.leaf_deg >= touch => {}
                _ => prop_assert!(row.gap_latch_m > -1e-9, "touches before it says"),
            }
        }
        prop_assert!(over.least_gap_m <= least + 1e-12 && least - over.least_gap_m < 1e-3 * length);
        prop_assert_eq!(over.touch_leaf_deg.is_some(), over.least_gap_m <= 0.0);
    }

    #[test]
    fn what_is_said_twice_about_the_reserve_agrees(value in valid()) {
        let reserve = |value: &Value| plan(&job(value)).ok().and_then(|plan| plan.rating.reserve);
        let stated = with(&value, "uncertainty", json!({ "leaf.mass_kg": 0.05 }));
        let planned = plan(&job(&stated)).unwrap();
        let list = planned.sensitivity.unwrap();
        let of = |path: &str| *list.iter().find(|entry| entry.path == path).unwrap();
        let now = planned.rating.reserve;
        prop_assume!(now.is_some());
        let rated = of("operator.rated_torque_n_m");
        prop_assert!((rated.low.unwrap() / now.unwrap() - 0.9).abs() < 1e-12);
        prop_assert!((rated.high.unwrap() / now.unwrap() - 1.1).abs() < 1e-12);
        let mut heavier = value.clone();
        heavier["leaf"]["mass_kg"] = json!(value["leaf"]["mass_kg"].as_f64().unwrap() * 1.05);
        prop_assert_eq!(of("leaf.mass_kg").fraction, 0.05);
        prop_assert_eq!(of("leaf.mass_kg").high, reserve(&heavier));
    }

    #[test]
    fn a_job_with_everything_plans_with_finite_numbers_and_reads_back(value in loaded()) {
        let once = job(&value);
        let planned = plan(&once).unwrap();
        prop_assert!(finite(&planned));
        let again = job(&serde_json::to_value(&once).unwrap());
        prop_assert_eq!(planned, plan(&again).unwrap());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn no_damaged_job_with_everything_panics(document in damaged(loaded())) {
        match Job::read(&document).and_then(|job| plan(&job)) {
            Ok(plan) => prop_assert!(finite(&plan)),
            Err(invalid) => prop_assert!(!invalid.errors.is_empty()),
        }
    }
}

fn simple() -> Value {
    crate::plan::example()
}
