//! What a map does with its places: neighbours, improvements and what is tried again because of them, by hand on three by three.

use super::{BESIDE, JobLoads, PLACE_TOLERANCE, PadMap, Problem, SlpScratch};
use crate::Document;
use crate::arm::setout::Found;
use crate::job::{Elbow, Job};
use serde_json::json;

fn map(columns: usize, rows: usize) -> PadMap {
    let job = json!({
        "schema": 2,
        "leaf": { "mass_kg": 160, "length_m": 3.2, "wind_area_m2": 1.9 },
        "hinges": { "kind": "plain", "spacing_m": 1.3, "pin_radius_m": 0.012, "thrust_outer_radius_m": 0.02,
            "thrust_inner_radius_m": 0.012, "friction_coefficient": 0.2 },
        "wind": { "speed_m_s": 12, "force_coefficient": 1.4 },
        "swing": { "open_deg": 90 },
        "operator": { "rated_torque_n_m": 400, "peak_torque_n_m": 650, "shaft_speed_deg_s": 9, "arm_efficiency": 0.95 },
        "setout": { "shaft_x_m": [-0.5, -0.2], "shaft_y_m": [0.3, 0.6], "bracket_u_m": [0.7, 1.5], "bracket_v_m": 0.06,
            "crank_m": [0.35, 0.9], "link_m": [0.35, 0.9] }
    });
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    PadMap::new(&Job::read(&document).expect("valid"), columns, rows).expect("valid")
}

fn found(objective: f64, excess: f64) -> Found {
    Found { point: [0.0; 5], elbow: Elbow::Left, sense: 1.0, objective, excess }
}

#[test]
fn a_place_s_neighbours_stop_at_the_edge() {
    let map = map(3, 4);
    let beside = |index: usize| BESIDE.map(|step| map.beside(index, step));
    assert_eq!(beside(4), [Some(3), Some(1), Some(5), Some(7)]);
    assert_eq!(beside(0), [None, None, Some(1), Some(3)]);
    assert_eq!(beside(2), [Some(1), None, None, Some(5)]);
    assert_eq!(beside(9), [None, Some(6), Some(10), None]);
    assert_eq!(beside(11), [Some(10), Some(8), None, None]);
    // The opposite of each is two further on.
    for way in 0..4 {
        let (one, other) = (BESIDE[way], BESIDE[(way + 2) % 4]);
        assert_eq!((one.0 + other.0, one.1 + other.1), (0, 0));
    }
}

/// Kept beats not kept, then the smaller torque; of two not kept the smaller excess. A pencil line counts as kept.
#[test]
fn only_what_is_better_is_taken() {
    let mut map = map(3, 3);
    let mut take = |objective: f64, excess: f64| {
        map.improve(4, found(objective, excess));
        map.places[4].map(|found| (found.objective, found.excess))
    };
    assert_eq!(take(5.0, 0.3), Some((5.0, 0.3)));
    assert_eq!(take(1.0, 0.4), Some((5.0, 0.3)));
    assert_eq!(take(9.0, 0.2), Some((9.0, 0.2)));
    assert_eq!(take(8.0, 0.2), Some((8.0, 0.2)));
    assert_eq!(take(9.0, PLACE_TOLERANCE), Some((9.0, PLACE_TOLERANCE)));
    assert_eq!(take(9.5, -1.0), Some((9.0, PLACE_TOLERANCE)));
    assert_eq!(take(3.0, -1.0), Some((3.0, -1.0)));
    assert_eq!(take(3.0, -2.0), Some((3.0, -1.0)));
    assert_eq!(take(1.0, 1.1 * PLACE_TOLERANCE), Some((3.0, -1.0)));
}

/// A place that got better is worth another look from each of its neighbours, and from no other side.
#[test]
fn neighbours_look_again_at_what_got_better() {
    let mut map = map(3, 3);
    map.tried = alloc::vec![0b1111; 9];
    map.improve(4, found(1.0, -1.0));
    // From the left neighbour it is on the right, and so on round.
    let wanted = [15, 15 & !(1 << 3), 15, 15 & !(1 << 2), 15, 15 & !1, 15, 15 & !(1 << 1), 15];
    assert_eq!(map.tried, wanted);
    map.tried = alloc::vec![0b1111; 9];
    map.improve(4, found(2.0, -1.0));
    assert_eq!(map.tried, [15; 9]);
}

/// Asks something of a map's problem.
fn on<T>(map: &mut PadMap, then: impl FnOnce(&mut PadMap, &mut Problem, &mut SlpScratch) -> T) -> T {
    let (job, setout) = (map.job.clone(), map.setout.clone());
    JobLoads::new(&job).with_problem(&setout, |problem| then(map, problem, &mut SlpScratch::new()))
}

/// A map with every place's own arm.
fn finished(columns: usize, rows: usize) -> PadMap {
    let mut map = map(columns, rows);
    while map.step(10) {}
    assert!(map.places.iter().all(|place| place.is_some_and(|found| found.excess <= PLACE_TOLERANCE)));
    map
}

#[test]
fn a_place_without_an_arm_takes_its_neighbours() {
    let whole = finished(3, 3);
    for (sweeps, next) in [(4, 4), (3, 4), (4, 1), (3, 7)] {
        let index = if sweeps == 3 { 8 - next } else { next };
        let mut map = whole.clone();
        (map.sweeps, map.next, map.tried) = (sweeps, next, alloc::vec![0; 9]);
        map.places[index] = None;
        let ways: u8 = (0..4).filter(|way| map.beside(index, BESIDE[*way]).is_some()).map(|way| 1 << way).sum();
        assert!(on(&mut map, |map, problem, scratch| map.spread(problem, scratch)));
        let there = map.places[index].expect("an arm is brought");
        let place = map.place_m(index % 3, index / 3);
        assert!(there.excess <= PLACE_TOLERANCE && (there.point[0], there.point[1]) == place);
        assert_eq!(map.tried[index], ways);
        // Once tried, not again; with one way left, from there.
        map.places[index] = None;
        assert!(!on(&mut map, |map, problem, scratch| map.spread(problem, scratch)));
        map.tried[index] &= !1;
        assert_eq!(on(&mut map, |map, problem, scratch| map.spread(problem, scratch)), ways & 1 == 1);
    }
}

#[test]
fn only_a_jump_is_tried_from_beside() {
    let whole = finished(3, 3);
    let own = whole.places[4].expect("an arm").objective;
    for (share, excess, tried) in
        [(0.99, -1.0, 0), (0.97, -1.0, 1), (0.97, PLACE_TOLERANCE, 1), (0.97, 2.0 * PLACE_TOLERANCE, 0), (1.5, -1.0, 0)]
    {
        let mut map = whole.clone();
        (map.sweeps, map.next, map.tried) = (4, 4, alloc::vec![0; 9]);
        for (way, step) in BESIDE.into_iter().enumerate() {
            let beside = map.beside(4, step).expect("the middle has four");
            let neighbour = map.places[beside].as_mut().expect("an arm");
            (neighbour.objective, neighbour.excess) = if way == 0 { (share * own, excess) } else { (own, -1.0) };
        }
        let cost = on(&mut map, |map, problem, scratch| map.spread(problem, scratch));
        assert_eq!((cost, map.tried[4]), (tried == 1, tried), "{share} {excess}");
    }
}

/// Between solved places all eight at the distance of the pass are looked at, and nothing else.
#[test]
fn place_looks_at_its_eight_neighbours() {
    let whole = finished(9, 9);
    for (apart, step) in [(1, 1_usize), (2, 2)] {
        for index in 0..81 {
            let mut map = whole.clone();
            (map.first, map.apart) = (4, apart);
            map.places = alloc::vec![None; 81];
            // Alone, and so bad that it is left as it is.
            let mut bad = whole.places[index].expect("an arm");
            (bad.excess, bad.point[3]) = (1e3, 0.61);
            map.places[index] = Some(bad);
            let place = map.place_m(4, 4);
            let told = on(&mut map, |map, problem, scratch| map.solve(problem, scratch, 4, 4, place));
            let (column, row) = (index % 9, index / 9);
            let (across, along) = (column.abs_diff(4), row.abs_diff(4));
            let wanted = across.max(along) == step && across % step == 0 && along % step == 0;
            assert_eq!(told.is_some(), wanted, "{column} {row} at {apart}");
            if let Some(found) = told {
                assert_eq!((found.point[0], found.point[1], found.point[3]), (place.0, place.1, 0.61));
            }
        }
    }
    // The first pass needs none.
    let mut map = map(9, 9);
    let place = map.place_m(2, 3);
    let told = on(&mut map, |map, problem, scratch| map.solve(problem, scratch, 2, 3, place)).expect("alone");
    assert_eq!((told.point[0], told.point[1]), place);
}

/// How far an excess may be made up for is measured in the distance of the pass along the wider side of the grid.
#[test]
fn what_is_too_far_from_an_arm_is_left() {
    // Places stand 0.0375 m apart one way, 0.075 m the other: at 4 apart 0.3 m, of which three times is 0.9.
    for (columns, rows) in [(9, 5), (5, 9)] {
        let whole = finished(columns, rows);
        for (excess, apart, left) in [(0.85, 4, false), (0.95, 4, true), (0.01, 2, true)] {
            let mut map = whole.clone();
            (map.first, map.apart) = (8, apart);
            map.places = alloc::vec![None; 45];
            // Near the best of the place itself, so that a descent has something to gain.
            let mut bad = whole.places[apart * columns + apart].expect("an arm");
            (bad.excess, bad.point[3]) = (excess, bad.point[3] - 0.02);
            map.places[0] = Some(bad);
            let place = map.place_m(apart, apart);
            let told = on(&mut map, |map, problem, scratch| map.solve(problem, scratch, apart, apart, place));
            assert_eq!(told.expect("some").point[2..] == bad.point[2..], left, "{excess} at {apart}");
        }
    }
}

/// Sweeps carry an arm on, a place at a time; nothing is seeded_at but between the passes and the first of them.
#[test]
fn sweeps_go_on_until_all_have_arms() {
    let whole = finished(3, 3);
    let state = |apart: usize, sweeps: usize, next: usize, first: Option<Found>| {
        let mut map = whole.clone();
        (map.apart, map.sweeps, map.next, map.tried) = (apart, sweeps, next, alloc::vec![0; 9]);
        map.places = alloc::vec![None; 9];
        map.places[0] = first;
        map
    };
    let count = |map: &PadMap| map.places.iter().flatten().count();
    for (apart, sweeps, next, seeded_at, on) in [
        (0, 4, 0, true, true),
        (0, 3, 0, false, true),
        (0, 4, 5, false, true),
        (1, 4, 0, false, true),
        (2, 0, 0, false, true),
        (0, 0, 0, false, false),
    ] {
        let mut map = state(apart, sweeps, next, None);
        assert_eq!(map.step(0), on, "{apart} {sweeps} {next}");
        assert_eq!(count(&map) > 0, seeded_at, "{apart} {sweeps} {next}");
    }
    let mut map = state(0, 2, 0, whole.places[0]);
    assert!(map.step(2));
    assert_eq!(count(&map), 3);
    assert!(map.step(3));
    assert_eq!(count(&map), 6);
    while map.step(3) {}
    assert_eq!((count(&map), map.sweeps), (9, 0));
}

#[test]
fn seeds_are_planted_at_the_nearest_places() {
    let mut map = map(12, 13);
    assert_eq!(map.first, 2);
    let seeds = on(&mut map, |map, problem, scratch| {
        map.plant(problem, scratch);
        problem.seeds(scratch)
    });
    let mut nearest_of = alloc::vec::Vec::new();
    for seed in &seeds {
        let distance = |index: usize| {
            let (x, y) = map.place_m(index % 12, index / 12);
            (x - seed.point[0]).hypot(y - seed.point[1])
        };
        let nearest = (0..12 * 13).min_by(|one, other| distance(*one).total_cmp(&distance(*other))).expect("places");
        nearest_of.push(nearest);
        let place = map.place_m(nearest % 12, nearest / 12);
        let there = map.places[nearest].expect("a seed is seeded_at");
        assert_eq!((there.point[0], there.point[1]), place);
        let seeded_at = on(&mut map, |_, problem, scratch| problem.seeded_at(scratch, place, seed));
        assert!(
            there.excess <= PLACE_TOLERANCE.max(seeded_at.excess)
                && (seeded_at.excess > PLACE_TOLERANCE || there.objective <= seeded_at.objective)
        );
    }
    // Coarse places that had none are searched longer, others not.
    for index in 0..12 * 13 {
        let coarse = (index % 12) % 2 == 0 && (index / 12) % 2 == 0;
        assert_eq!(map.places[index].is_some(), coarse || nearest_of.contains(&index), "{index}");
        if let Some(found) = map.places[index] {
            assert_eq!((found.point[0], found.point[1]), map.place_m(index % 12, index / 12));
        }
    }
    // Where every place has an arm nothing is seeded_at.
    let mut map = finished(4, 4);
    map.places.iter_mut().flatten().for_each(|found| found.objective += 100.0);
    let before = map.torques_n_m();
    on(&mut map, |map, problem, scratch| map.plant(problem, scratch));
    assert_eq!(map.torques_n_m(), before);
    // A coarse place with an excess is searched longer, one within a pencil line is not.
    map.places[5].as_mut().expect("an arm").excess = 1.0;
    map.places[6].as_mut().expect("an arm").excess = PLACE_TOLERANCE;
    map.places[6].as_mut().expect("an arm").objective = -5.0;
    on(&mut map, |map, problem, scratch| map.plant(problem, scratch));
    assert!(map.places[5].expect("an arm").excess <= PLACE_TOLERANCE);
    assert_eq!(map.places[6].expect("an arm").objective, -5.0);
}

/// Torques are the objective in the job's scale; within a pencil line an arm stands, beyond it the place is ruled out.
#[test]
fn places_say_what_was_found() {
    let mut map = finished(3, 2);
    let scale = on(&mut map, |_, problem, _| problem.torque_scale_n_m);
    map.places[1].as_mut().expect("an arm").excess = PLACE_TOLERANCE;
    map.places[2].as_mut().expect("an arm").excess = 1.01 * PLACE_TOLERANCE;
    map.places[3] = None;
    let (pads, torques) = (map.pads(), map.torques_n_m());
    assert_eq!((pads.len(), torques.len()), (6, 6));
    for index in [0, 1, 4, 5] {
        let (found, pad) = (map.places[index].expect("an arm"), pads[index].expect("said"));
        assert!((torques[index].expect("an arm") - found.objective * scale).abs() < 1e-9);
        assert_eq!(pad.shaft_torque_n_m, torques[index]);
        assert!((pad.reserve.expect("an arm") - 400.0 / (found.objective * scale)).abs() < 1e-9);
        assert!(pad.ruled_out.is_none());
        assert_eq!(map.pad(index % 3, index / 3), Some(pad));
    }
    assert!(pads[2].expect("said").shaft_torque_n_m.is_none() && torques[2].is_none());
    assert!(pads[3].is_none() && torques[3].is_none() && map.pad(0, 1).is_none() && map.pad(0, 2).is_none());
    // Asked alone, the place ruled out is searched again, and the arm that was there all along is found.
    assert!(map.pad(2, 0).expect("said").shaft_torque_n_m.is_some());
}
