//! Clearances against distances worked by hand, and the swept area against a count of squares.

use crate::{marks, read};
use pintle_core::plan::{Against, Clearances, FindingCode, Gap, Model, MovingPart, plan};
use serde_json::{Value, json};

fn with(room: Value) -> Value {
    let mut job = marks::job();
    job["marks"] = Value::Null;
    pintle_tests::around(&mut job, room);
    job
}

fn clearances(room: Value) -> Clearances {
    plan(&read(&with(room))).expect("valid").clearances.expect("the room is said")
}

fn codes(room: Value) -> Vec<FindingCode> {
    plan(&read(&with(room))).expect("valid").findings.into_iter().map(|finding| finding.code).collect()
}

fn gap(room: &Clearances, part: MovingPart, against: Against) -> Gap {
    *room.gaps.iter().find(|gap| gap.part == part && gap.against == against).expect("the pair was looked at")
}

fn close(one: f64, other: f64, by: f64) {
    assert!((one - other).abs() < by, "{one} is not {other}");
}

#[test]
fn the_leaf_passes_a_stone_at_its_corner() {
    // A stone without size 3.1 m from the hinge at 45°; the leaf's corner is 3 m along and 0.05 m across.
    let at = 3.1 * std::f64::consts::FRAC_1_SQRT_2;
    let room = clearances(json!({ "front_m": 0.05, "obstacles": [{ "x_m": [at, at], "y_m": [at, at] }] }));
    let leaf = gap(&room, MovingPart::Leaf, Against::Obstacle);
    close(leaf.least_m, 3.1 - 9.0025_f64.sqrt(), 1e-9);
    close(leaf.leaf_deg, 45.0 - (0.05_f64 / 3.0).atan().to_degrees(), 1e-4);
}

#[test]
fn a_wall_behind_the_open_leaf() {
    let wall = |x: f64| json!({ "front_m": 0.05, "obstacles": [{ "x_m": [-2, x], "y_m": [1, 2] }] });
    let room = clearances(wall(-0.4));
    // Open, the leaf's face is at x = −0.05.
    close(room.open[0].gap_m, 0.35, 1e-12);
    close(room.open[0].reach_m, 2.0, 1e-12);
    let leaf = gap(&room, MovingPart::Leaf, Against::Obstacle);
    close(leaf.least_m, 0.35, 1e-9);
    close(leaf.leaf_deg, 90.0, 1e-9);
    assert!(codes(wall(-0.4)).contains(&FindingCode::OpenGapSmall));
    assert!(!codes(wall(-0.5)).contains(&FindingCode::OpenGapSmall));
    // 20 mm into the leaf's face.
    let room = clearances(wall(-0.03));
    close(gap(&room, MovingPart::Leaf, Against::Obstacle).least_m, -0.02, 1e-9);
    assert!(codes(wall(-0.03)).contains(&FindingCode::LeafHits));
}

#[test]
fn a_gap_at_the_hinge_closes_on_the_heel() {
    let post = |x: f64| json!({ "front_m": 0.05, "back_m": 0.05, "heel_m": 0.1, "hinge_post": { "x_m": [-0.4, x], "y_m": [-0.2, 0.2] } });
    let gap = clearances(post(-0.13)).hinge_gap.expect("the post is said");
    // The heel's corner goes round at √(0.1² + 0.05²) and is square to the post at atan(1/2).
    close(gap.closed_m, 0.03, 1e-12);
    close(gap.open_m, 0.08, 1e-12);
    close(gap.widest_m, 0.08, 1e-9);
    close(gap.least_m, 0.13 - 0.0125_f64.sqrt(), 1e-9);
    close(gap.least_leaf_deg, 0.5_f64.atan().to_degrees(), 1e-4);
    assert!(codes(post(-0.13)).contains(&FindingCode::HingeGapCloses));
    assert!(!codes(post(-0.14)).contains(&FindingCode::HingeGapCloses), "it stays above 25 mm");
}

#[test]
fn the_elbow_passes_a_stone_on_its_circle() {
    let job = read(&with(json!({})));
    let model = Model::new(&job).expect("valid");
    // Where the elbow is half-way, and 0.1 m further out from the shaft: there a widened arm leaves 0.07 m.
    let elbow = model.linkage().pose(0.7).elbow;
    let (x, y) = (-0.3 + (elbow.x + 0.3) * 0.85 / 0.75, 0.43 + (elbow.y - 0.43) * 0.85 / 0.75);
    let room = json!({ "arm_half_width_m": 0.03, "obstacles": [{ "x_m": [x, x], "y_m": [y, y] }] });
    let clear = clearances(room.clone());
    for part in [MovingPart::Elbow, MovingPart::Crank] {
        let gap = gap(&clear, part, Against::Obstacle);
        close(gap.least_m, 0.07, 1e-9);
        close(gap.leaf_deg, 0.7_f64.to_degrees(), 1e-3);
    }
    assert!(codes(room).contains(&FindingCode::ArmCrushes));
    // In its way it is hit.
    let (x, y) = (elbow.x, elbow.y);
    let room = json!({ "arm_half_width_m": 0.03, "obstacles": [{ "x_m": [x, x], "y_m": [y, y] }] });
    close(gap(&clearances(room.clone()), MovingPart::Elbow, Against::Obstacle).least_m, -0.03, 1e-9);
    assert!(codes(room).contains(&FindingCode::ArmHits));
}

#[test]
fn the_elbow_is_as_far_from_the_closed_leaf_as_the_straight_arm_says() {
    // Elbow closed at y = 0.22, face at 0.03, arm half 0.03 wide: 0.16 m; nothing comes nearer as the leaf opens away under it.
    let clear = clearances(json!({ "front_m": 0.03, "arm_half_width_m": 0.03 }));
    let elbow = gap(&clear, MovingPart::Elbow, Against::Leaf);
    assert!(elbow.least_m <= 0.16 + 1e-12);
    // The link's centre-line ends at the bracket, 0.08 − 0.03 proud.
    close(
        gap(&clear, MovingPart::Link, Against::Leaf).least_m.min(0.05),
        gap(&clear, MovingPart::Link, Against::Leaf).least_m,
        1e-12,
    );
    // Every least is no more than what 5,000 angles see, and hardly less.
    let model = Model::new(&read(&with(json!({ "front_m": 0.03, "arm_half_width_m": 0.03 })))).expect("valid");
    let seen = (0..=5000).map(|index| f64::from(index) / 5000.0 * std::f64::consts::FRAC_PI_2).map(|leaf| {
        let elbow = model.linkage().pose(leaf).elbow;
        let (along, across) =
            (elbow.x * leaf.cos() + elbow.y * leaf.sin(), elbow.y * leaf.cos() - elbow.x * leaf.sin());
        let over = |value: f64, least: f64, most: f64| (least - value).max(value - most).max(0.0);
        over(along, 0.0, 3.0).hypot(over(across, 0.0, 0.03)) - 0.03
    });
    let least = seen.fold(f64::MAX, f64::min);
    assert!(elbow.least_m <= least + 1e-12 && least - elbow.least_m < 1e-3, "{} {least}", elbow.least_m);
}

/// The area of a polygon, by the shoelace.
fn polygon(outline: &[[f64; 2]]) -> f64 {
    let next = outline.iter().skip(1).chain(outline.first());
    outline.iter().zip(next).map(|([x0, y0], [x1, y1])| 0.5 * (x0 * y1 - x1 * y0)).sum()
}

#[test]
fn the_swept_area_is_what_squares_count() {
    let wide = 0.06;
    let value = with(json!({ "arm_half_width_m": wide }));
    let sweep = plan(&read(&value)).expect("valid").clearances.expect("said").sweep;
    let model = Model::new(&read(&value)).expect("valid");
    let [closed, open] = [0.0, std::f64::consts::FRAC_PI_2].map(|leaf| model.linkage().pose(leaf));
    let from = (closed.elbow.y - 0.43).atan2(closed.elbow.x + 0.3);
    let turned = open.crank_rad;
    let (low, angle) = (from.min(from + turned), turned.abs());
    // Squares of 4 mm: in where within the width of the sector; its nearest point is on it, on a side or at the rim.
    let side = 0.004;
    let inside = |x: f64, y: f64| {
        let round = (y.atan2(x) - low).rem_euclid(std::f64::consts::TAU);
        if round <= angle {
            return x.hypot(y) <= 0.75 + wide;
        }
        [low, low + angle].into_iter().any(|direction| {
            let along = (x * direction.cos() + y * direction.sin()).clamp(0.0, 0.75);
            (x - along * direction.cos()).hypot(y - along * direction.sin()) <= wide
        })
    };
    let squares = (-250..250).flat_map(|i| (-250..250).map(move |j| (f64::from(i), f64::from(j))));
    let count = squares.filter(|(i, j)| inside((i + 0.5) * side, (j + 0.5) * side)).count();
    let counted = count as f64 * side * side;
    close(sweep.area_m2 / counted, 1.0, 2e-3);
    // Chords of five degrees lose a thousandth of a circle.
    close(polygon(&sweep.outline) / sweep.area_m2, 1.0, 2e-3);
}
