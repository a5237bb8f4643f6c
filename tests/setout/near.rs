//! Every distance through the swing against thousands of poses, for stones and rectangles all round the arm, and what stands beside the open leaf.

use crate::{marks, read};
use pintle_core::plan::{Against, Clearances, Gap, Model, MovingPart, plan};
use serde_json::{Value, json};
use std::f64::consts::FRAC_PI_2;

type Place = (f64, f64);

fn with(room: Value) -> Value {
    let mut job = marks::job();
    job["marks"] = Value::Null;
    pintle_tests::around(&mut job, room);
    job
}

fn clearances(job: &Value) -> Clearances {
    plan(&read(job)).expect("valid").clearances.expect("the room is said")
}

/// Distance of a point from a segment.
fn to_segment(place: Place, from: Place, to: Place) -> f64 {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let along = ((place.0 - from.0) * dx + (place.1 - from.1) * dy) / (dx * dx + dy * dy);
    let along = along.clamp(0.0, 1.0);
    (place.0 - from.0 - along * dx).hypot(place.1 - from.1 - along * dy)
}

/// Distance of a point from the leaf turned by an angle: heel 0.1 m, faces at 0.04 and −0.03 m, 3 m long.
fn to_leaf(place: Place, leaf: f64) -> f64 {
    let (along, across) = (place.0 * leaf.cos() + place.1 * leaf.sin(), place.1 * leaf.cos() - place.0 * leaf.sin());
    let over = |value: f64, least: f64, most: f64| (least - value).max(value - most).max(0.0);
    over(along, -0.1, 3.0).hypot(over(across, -0.03, 0.04))
}

/// The least of a distance over 20 000 poses and the two ends.
fn least(of: impl Fn(f64) -> f64) -> f64 {
    (0..=20_000).map(|index| of(FRAC_PI_2 * f64::from(index) / 20_000.0)).fold(f64::MAX, f64::min)
}

/// Stones without size, so that the distance of a part is that of a point: on all sides, near and far.
#[test]
fn stones_on_every_side_have_their_gaps() {
    let wide = 0.03;
    let stones: Vec<Place> = (0..12)
        .flat_map(|index| {
            let direction = f64::from(index) * std::f64::consts::TAU / 12.0;
            [0.3, 0.7, 1.1].map(|far| (-0.3 + far * direction.cos(), 0.43 + far * direction.sin()))
        })
        .collect();
    let obstacles: Vec<Value> = stones.iter().map(|(x, y)| json!({ "x_m": [x, x], "y_m": [y, y] })).collect();
    let job = with(
        json!({ "front_m": 0.04, "back_m": 0.03, "heel_m": 0.1, "arm_half_width_m": wide, "obstacles": obstacles }),
    );
    let read = read(&job);
    let model = Model::new(&read).expect("valid");
    let elbow = |leaf: f64| (model.linkage().pose(leaf).elbow.x, model.linkage().pose(leaf).elbow.y);
    let pin = |leaf: f64| (0.9 * leaf.cos() - 0.08 * leaf.sin(), 0.9 * leaf.sin() + 0.08 * leaf.cos());
    let room = clearances(&job);
    assert_eq!(room.gaps.len(), 3 + 4 * stones.len());
    for (index, &stone) in stones.iter().enumerate() {
        for (part, of) in [
            (
                MovingPart::Crank,
                &(|leaf: f64| to_segment(stone, (-0.3, 0.43), elbow(leaf)) - wide) as &dyn Fn(f64) -> f64,
            ),
            (MovingPart::Link, &|leaf: f64| to_segment(stone, elbow(leaf), pin(leaf)) - wide),
            (MovingPart::Elbow, &|leaf: f64| (stone.0 - elbow(leaf).0).hypot(stone.1 - elbow(leaf).1) - wide),
            (MovingPart::Leaf, &|leaf: f64| to_leaf(stone, leaf)),
        ] {
            let seen = least(of);
            let same = |gap: &&Gap| gap.part == part && gap.against == Against::Obstacle && gap.index == index;
            let gap = room.gaps.iter().find(same).expect("looked at");
            // A leaf over a stone overlaps by the least shift that parts them; a point inside has no distance.
            if part == MovingPart::Leaf && seen == 0.0 {
                assert!(gap.least_m <= 0.0);
                continue;
            }
            assert!(
                gap.least_m <= seen + 1e-9 && seen - gap.least_m < 2e-4,
                "{part:?} {stone:?}: {} {seen}",
                gap.least_m
            );
            assert!(
                (of(gap.leaf_deg.to_radians()) - gap.least_m).abs() < 1e-9,
                "{part:?} {stone:?} at {}",
                gap.leaf_deg
            );
        }
    }
    assert!(room.gaps.windows(2).all(|pair| pair[0].least_m <= pair[1].least_m), "the least first");
    // Where a stone is nearest to crank and link at the elbow they are as near as it, and stand before it.
    let order = |gap: &Gap| {
        [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow, MovingPart::Leaf]
            .iter()
            .position(|part| *part == gap.part)
    };
    let alike: Vec<_> = room
        .gaps
        .windows(2)
        .filter(|pair| {
            pair[0].least_m == pair[1].least_m && pair[0].index == pair[1].index && pair[0].against == pair[1].against
        })
        .collect();
    assert!(alike.iter().all(|pair| order(&pair[0]) < order(&pair[1])) && !alike.is_empty(), "{alike:?}");
}

/// Where the distance stays the same the first leaf angle counts: 0.4 m off the shaft, away from all the crank's directions.
#[test]
fn a_level_stretch_is_told_from_its_start() {
    let (sine, cosine) = 240.0_f64.to_radians().sin_cos();
    let (x, y) = (-0.3 + 0.05 * cosine, 0.43 + 0.05 * sine);
    let room = clearances(&with(json!({ "obstacles": [{ "x_m": [x, x], "y_m": [y, y] }] })));
    let crank = room
        .gaps
        .iter()
        .find(|gap| gap.part == MovingPart::Crank && gap.against == Against::Obstacle)
        .expect("looked at");
    assert!((crank.least_m - 0.05).abs() < 1e-12);
    // The shaft itself is the nearest all the way; rounding alone may tell one angle from another.
    let touching = clearances(&with(json!({ "obstacles": [{ "x_m": [-0.3, -0.3], "y_m": [0.43, 0.43] }] })));
    let crank = touching
        .gaps
        .iter()
        .find(|gap| gap.part == MovingPart::Crank && gap.against == Against::Obstacle)
        .expect("looked at");
    assert_eq!((crank.least_m, crank.leaf_deg), (0.0, 0.0));
}

/// Mirrored at the half-open leaf, the arm opens as it closed and the leaf's faces change places: every part is as near to the leaf, at the
/// angle that is left of 90°.
#[test]
fn the_mirrored_arm_is_as_near_to_the_leaf() {
    let arm = with(json!({ "front_m": 0.03, "back_m": 0.02, "arm_half_width_m": 0.03 }));
    let mut mirrored = with(json!({ "front_m": 0.02, "back_m": 0.03, "arm_half_width_m": 0.03 }));
    mirrored["arm"] = json!({ "shaft_x_m": 0.43, "shaft_y_m": -0.3, "bracket_u_m": 0.9, "bracket_v_m": -0.08, "crank_m": 0.75,
        "link_m": 0.5, "elbow": "right" });
    let [one, other] = [arm, mirrored].map(|job| clearances(&job));
    for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
        let [one, other] =
            [&one, &other].map(|room| *room.gaps.iter().find(|gap| gap.part == part).expect("looked at"));
        assert!((one.least_m - other.least_m).abs() < 1e-9, "{one:?} {other:?}");
        if part != MovingPart::Link {
            assert!((one.leaf_deg + other.leaf_deg - 90.0).abs() < 1e-3, "{one:?} {other:?}");
        }
    }
}

/// Rectangles turned against each other, leaf and wall: distances between corners and sides at four angles by hand.
#[test]
fn the_leaf_and_a_post_at_both_ends() {
    let gap = |post: Value| {
        clearances(&with(json!({ "front_m": 0.04, "back_m": 0.03, "heel_m": 0.1, "hinge_post": post })))
            .hinge_gap
            .expect("said")
    };
    // Closed, the heel ends at x = −0.1; open, the faces are at x = −0.04 and 0.03 and the heel at y = −0.1.
    let beside = gap(json!({ "x_m": [-0.5, -0.3], "y_m": [-0.5, 0.5] }));
    assert!((beside.closed_m - 0.2).abs() < 1e-12 && (beside.open_m - 0.26).abs() < 1e-12, "{beside:?}");
    // Diagonally below the closed heel: 3-4-5 from its corner (−0.1, −0.03).
    let corner = gap(json!({ "x_m": [-0.5, -0.13], "y_m": [-0.5, -0.07] }));
    assert!((corner.closed_m - 0.05).abs() < 1e-12, "{corner:?}");
    // Under the open heel: 0.06 m below it.
    let under = gap(json!({ "x_m": [-0.02, 0.02], "y_m": [-0.5, -0.16] }));
    assert!((under.open_m - 0.06).abs() < 1e-12 && (under.closed_m - 0.13).abs() < 1e-12, "{under:?}");
    assert!(under.widest_m >= under.closed_m && under.least_m <= under.open_m);
    // In the leaf: the least shift that parts them, 0.01 m of the heel.
    let inside = gap(json!({ "x_m": [-0.5, -0.09], "y_m": [-0.5, 0.5] }));
    assert!((inside.closed_m + 0.01).abs() < 1e-12, "{inside:?}");
}

/// Beside the open leaf (along +y from −0.1 to 3 m) is what reaches past its heel and begins before its end.
#[test]
fn what_is_beside_the_open_leaf() {
    let walls = |walls: &[[f64; 2]]| {
        let walls: Vec<Value> = walls.iter().map(|y| json!({ "x_m": [-1.0, -0.5], "y_m": y })).collect();
        let open =
            clearances(&with(json!({ "front_m": 0.04, "back_m": 0.03, "heel_m": 0.1, "obstacles": walls }))).open;
        open.iter().map(|gap| (gap.obstacle, gap.gap_m, gap.reach_m)).collect::<Vec<_>>()
    };
    let found = walls(&[[1.0, 2.0], [3.1, 4.0], [2.9, 4.0], [-2.0, -0.2], [-2.0, -0.05], [-2.0, 5.0]]);
    let expected = [(0, 2.0), (2, 4.0), (4, -0.05), (5, 5.0)];
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for ((obstacle, gap, reach), (index, to)) in found.into_iter().zip(expected) {
        assert_eq!(obstacle, index);
        assert!((reach - to).abs() < 1e-12 && (gap - 0.46).abs() < 1e-12, "{reach} {gap}");
    }
}

/// What stops pad and arm only is looked at for the arm, not for the leaf, which may swing over it.
#[test]
fn only_what_it_stops_meets_an_obstacle() {
    let job = with(json!({ "arm_half_width_m": 0.03, "hinge_post": { "x_m": [-0.6, -0.5], "y_m": [-0.2, 0.1] },
        "obstacles": [{ "x_m": [1.0, 1.1], "y_m": [1.0, 1.1], "stops": ["pad", "arm"] },
                      { "x_m": [-1.0, -0.9], "y_m": [-0.9, -0.8], "stops": ["arm"] }] }));
    let room = clearances(&job);
    let count = |part: MovingPart, against: Against| {
        room.gaps.iter().filter(|gap| gap.part == part && gap.against == against).count()
    };
    for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
        assert_eq!(
            (count(part, Against::Obstacle), count(part, Against::HingePost), count(part, Against::Leaf)),
            (2, 1, 1)
        );
    }
    assert_eq!((count(MovingPart::Leaf, Against::Obstacle), count(MovingPart::Leaf, Against::HingePost)), (0, 1));
    let indices: Vec<usize> = room
        .gaps
        .iter()
        .filter(|gap| gap.against == Against::Obstacle && gap.part == MovingPart::Elbow)
        .map(|gap| gap.index)
        .collect();
    assert!(indices.contains(&0) && indices.contains(&1));
}
