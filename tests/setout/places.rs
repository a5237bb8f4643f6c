//! The map place by place: its grid and order by counting, its arms against every crank tried, its words against the plan.

use crate::{block, check, document, folder, read};
use pintle_core::{
    arm::Limit,
    job::{Arm, Elbow, Job, SetOut},
    plan::{Pad, PadMap, TorqueSweep, plan},
};
use serde_json::{Value, json};

/// The yard with bracket and straightness fixed, so that a place leaves the crank free alone; partly too far and partly on the post.
fn narrow() -> Value {
    let mut job = document(folder().join("sites").join("yard.json"));
    let block = &mut job["setout"];
    block["shaft_x_m"] = json!([-0.6, 0.0]);
    block["shaft_y_m"] = json!([0.1, 0.7]);
    block["bracket_u_m"] = json!([1.0, 1.0]);
    block["straightness"] = json!([0.97, 0.97]);
    block["crank_m"] = json!([0.4, 0.8]);
    block["link_m"] = json!([0.3, 0.9]);
    block["square_deg"] = json!(25);
    job
}

fn finished(job: &Job, columns: usize, rows: usize) -> PadMap {
    let mut map = PadMap::new(job, columns, rows).expect("a valid job");
    while map.step(50) {}
    map
}

fn at(job: &Job, (x, y): (f64, f64)) -> SetOut {
    pintle_tests::changed!(block(job).clone(), shaft_x_m: [x, x], shaft_y_m: [y, y])
}

#[test]
fn places_stand_evenly_from_end_to_end() {
    let job = read(&narrow());
    let map = PadMap::new(&job, 7, 4).expect("a valid job");
    let close = |(x, y): (f64, f64), (a, b): (f64, f64)| assert!((x - a).abs() < 1e-12 && (y - b).abs() < 1e-12);
    close(map.place_m(0, 0), (-0.6, 0.1));
    close(map.place_m(6, 0), (0.0, 0.1));
    close(map.place_m(0, 3), (-0.6, 0.7));
    close(map.place_m(6, 3), (0.0, 0.7));
    close(map.place_m(2, 1), (-0.4, 0.3));
    // One alone stands in the middle; of none there is one.
    close(PadMap::new(&job, 1, 0).expect("a valid job").place_m(0, 0), (-0.3, 0.4));
    close(PadMap::new(&job, 2, 1).expect("a valid job").place_m(1, 0), (0.0, 0.4));
    // A job of neither a block nor an arm is refused for the arm already.
    let (mut job, found) = (job.clone(), pintle_core::plan::set_out(&job).expect("a valid job").best.expect("a place"));
    (job.setout, job.arm) = (None, Some(found.arm));
    let paths: Vec<String> =
        PadMap::new(&job, 3, 3).expect_err("no block").errors.into_iter().map(|e| e.path).collect();
    assert!(paths.contains(&"setout".to_string()), "{paths:?}");
}

/// Coarse first: at 13 by 14 every other place, so that there are six each way, row by row, then what is left.
#[test]
fn a_map_stands_coarse_first() {
    let job = read(&narrow());
    let mut map = PadMap::new(&job, 13, 14).expect("a valid job");
    assert_eq!(map.progress(), (0, 13 * 14));
    let coarse: Vec<usize> = (0..13 * 14).filter(|index| (index % 13) % 2 == 0 && (index / 13) % 2 == 0).collect();
    let stands = |map: &PadMap| -> Vec<usize> {
        map.pads().iter().enumerate().filter_map(|(index, pad)| pad.map(|_| index)).collect()
    };
    assert!(map.step(10));
    assert_eq!(map.progress().0, 10);
    assert_eq!(stands(&map), coarse[..10]);
    assert!(map.pad(1, 0).is_none() && map.pad(0, 0).is_some());
    assert!(map.step(39));
    assert_eq!(stands(&map), coarse);
    let torques = map.torques_n_m();
    assert!(torques.iter().enumerate().all(|(index, torque)| torque.is_none() || coarse.contains(&index)));
    while map.step(20) {}
    assert_eq!(map.progress(), (13 * 14, 13 * 14));
    assert_eq!(stands(&map).len(), 13 * 14);
    assert!(!map.step(1) && map.pad(0, 14).is_none());
}

/// The passes halve: what stands after each is every fourth, every other, every place.
#[test]
fn each_pass_halves_the_distance() {
    let job = read(&narrow());
    for (side, first) in [(5, 1_usize), (11, 1), (12, 2), (23, 2), (24, 4)] {
        let mut map = PadMap::new(&job, side, side).expect("a valid job");
        let mut apart = first;
        let mut before = 0;
        while apart > 0 {
            let on: Vec<usize> =
                (0..side * side).filter(|i| (i % side) % apart == 0 && (i / side) % apart == 0).collect();
            assert!(map.step(on.len() - before));
            before = on.len();
            assert_eq!(map.progress().0, on.len());
            let pads = map.pads();
            assert!(on.iter().all(|&index| pads[index].is_some()), "{side} at {apart}");
            apart /= 2;
        }
        assert_eq!(map.progress().0, side * side);
    }
}

/// Whether an arm's lever keeps its sense and its least at a few angles: most arms are dismissed here.
fn may_do(arm: &Arm) -> bool {
    let mut sense = 0.0;
    (0..=20).all(|index| {
        let (sine, cosine) = (f64::from(index) / 20.0 * std::f64::consts::FRAC_PI_2).sin_cos();
        let (u, v) = (arm.bracket_u_m, arm.bracket_v_m);
        let (x, y) = (u * cosine - v * sine, u * sine + v * cosine);
        let (dx, dy) = (x - arm.shaft_x_m, y - arm.shaft_y_m);
        let (reach, a, b) = (dx.hypot(dy), arm.crank_m, arm.link_m);
        let along = (a * a - b * b + reach * reach) / (2.0 * reach);
        let across = (a * a - along * along).sqrt() * if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
        let (ex, ey) = ((along * dx - across * dy) / reach, (along * dy + across * dx) / reach);
        let lever = (x * (dy - ey) - y * (dx - ex)) / b;
        sense = if sense == 0.0 { lever.signum() } else { sense };
        sense * lever > if index < 2 { 0.0 } else { 0.249 }
    })
}

/// The least torque of a place over its cranks, each arm held by the dense check.
fn tried(job: &Job, sweep: &TorqueSweep, place: (f64, f64)) -> Option<f64> {
    let setout = at(job, place);
    let both = (1.0 - place.0).hypot(0.06 - place.1) / 0.97;
    let arms = (0..=40).map(|index| 0.4 + 0.01 * f64::from(index)).flat_map(|crank_m| {
        [Elbow::Left, Elbow::Right].map(|elbow| {
            Arm::builder()
                .shaft_x_m(place.0)
                .shaft_y_m(place.1)
                .bracket_u_m(1.0)
                .bracket_v_m(0.06)
                .crank_m(crank_m)
                .link_m(both - crank_m)
                .elbow(elbow)
                .build()
        })
    });
    let mut arms: Vec<(f64, Arm)> = arms
        .filter(|arm| (0.3..=0.9).contains(&arm.link_m) && may_do(arm))
        .map(|arm| (sweep.largest_n_m(&arm), arm))
        .collect();
    arms.sort_by(|one, other| one.0.total_cmp(&other.0));
    arms.into_iter().find(|(_, arm)| check::exceeded(job, &setout, arm, 1e-9).is_empty()).map(|(torque, _)| torque)
}

#[test]
fn every_place_has_its_best_crank() {
    let job = read(&narrow());
    let sweep = TorqueSweep::new(&job, 181).expect("a valid job");
    for (columns, rows) in [(6, 6), (3, 7)] {
        let map = finished(&job, columns, rows);
        let (pads, torques) = (map.pads(), map.torques_n_m());
        let (mut some, mut none) = (0, 0);
        for index in 0..columns * rows {
            let place = map.place_m(index % columns, index / columns);
            let pad = pads[index].expect("every place is done");
            assert_eq!(pad.shaft_torque_n_m, torques[index]);
            assert!((pad.arm.shaft_x_m - place.0).abs() < 1e-12 && (pad.arm.shaft_y_m - place.1).abs() < 1e-12);
            let wanted = tried(&job, &sweep, place);
            let Some(torque) = torques[index] else {
                none += 1;
                assert!(wanted.is_none(), "{place:?}: {wanted:?}, none on the map");
                assert!(pad.reserve.is_none());
                continue;
            };
            some += 1;
            let broken = check::exceeded(&job, &at(&job, place), &pad.arm, 1.2e-4);
            assert!(broken.is_empty(), "{place:?}: {broken:?}");
            assert_eq!(pad.reserve, Some(400.0 / torque));
            assert!(pad.ruled_out.is_none());
            assert_eq!(map.pad(index % columns, index / columns), Some(pad));
            let peak =
                plan(&pintle_tests::changed!(job.clone(), arm: Some(pad.arm))).expect("it works").peak.shaft_torque_n_m;
            assert!((torque / peak - 1.0).abs() < 1e-3, "{place:?}: {torque}, the plan {peak}");
            if let Some(wanted) = wanted {
                assert!(torque < 1.01 * wanted, "{place:?}: {torque}, tried {wanted}");
            }
        }
        assert!(some > 10 && none > 5, "{some} arms, {none} places without");
    }
}

/// Turned from closed to open, by steps of the bench's own triangle.
fn travel_deg(arm: &Arm) -> f64 {
    let crank = |index: i32| {
        let leaf_rad = f64::from(index) / 400.0 * std::f64::consts::FRAC_PI_2;
        let (sine, cosine) = leaf_rad.sin_cos();
        let (u, v) = (arm.bracket_u_m, arm.bracket_v_m);
        let (dx, dy) = (u * cosine - v * sine - arm.shaft_x_m, u * sine + v * cosine - arm.shaft_y_m);
        let reach = dx.hypot(dy);
        let at_shaft = (arm.crank_m.powi(2) + reach * reach - arm.link_m.powi(2)) / (2.0 * arm.crank_m * reach);
        let side = if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
        dy.atan2(dx) + side * at_shaft.clamp(-1.0, 1.0).acos()
    };
    let turn = std::f64::consts::TAU;
    let steps = (0..400).map(|index| crank(index + 1) - crank(index)).map(|step| step - (step / turn).round() * turn);
    steps.sum::<f64>().abs().to_degrees()
}

/// Where no arm turns its shaft little enough, that is said, in degrees; asked alone a place comes no less near than in the whole.
#[test]
fn what_rules_a_place_out_is_told_in_its_unit() {
    let mut value = narrow();
    value["setout"]["shaft_travel_deg"] = json!(60);
    value["obstacles"] = Value::Null;
    for (key, none) in [("square_deg", Value::Null), ("least_lever_m", Value::Null)] {
        value["setout"][key] = none;
    }
    let job = read(&value);
    let map = finished(&job, 6, 6);
    let mut told = 0;
    for (index, pad) in map.pads().iter().enumerate() {
        let pad: Pad = pad.expect("done");
        let Some(change) = pad.ruled_out else { continue };
        assert!(pad.shaft_torque_n_m.is_none() && pad.reserve.is_none() && change.by > 0.0);
        // Asked alone a place is searched longer, and may have an arm after all.
        let alone = map.pad(index % 6, index / 6).expect("done").ruled_out;
        if change.limit == Limit::ShaftTravelDeg {
            told += 1;
            assert!((travel_deg(&pad.arm) - 60.0 - change.by).abs() < 1e-2, "{} {change:?}", travel_deg(&pad.arm));
            let alone = alone.filter(|alone| alone.limit == Limit::ShaftTravelDeg);
            assert!(alone.is_none_or(|alone| alone.by < change.by + 1e-6));
        }
    }
    assert!(told > 2, "{told}");
}
