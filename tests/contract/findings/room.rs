//! Gaps of the room at their limits, in distances worked by hand, and what the tape and the builder did.

use super::{LESS, MORE, planned, silent, straight, tells};
use pintle_core::plan::{FindingCode as Code, Severity};
use serde_json::{Value, json};

/// The straight arm, its shaft at (−0.3, 0.43); what stands behind the shaft is as far from the crank as from the shaft.
fn with(room: Value) -> Value {
    let mut job = straight();
    pintle_tests::around(&mut job, room);
    job
}

fn stone(x: f64, y: f64) -> Value {
    json!({ "x_m": [x, x], "y_m": [y, y] })
}

/// Beyond the shaft in a direction (240°) more than a right angle from all the crank's, an arm 50 mm wide on either side leaves so much.
fn beside_the_shaft(gap: f64) -> Value {
    let (sine, cosine) = 240.0_f64.to_radians().sin_cos();
    let away = 0.05 + gap;
    with(json!({ "arm_half_width_m": 0.05, "obstacles": [stone(-0.3 + away * cosine, 0.43 + away * sine)] }))
}

/// 120 mm do not crush an arm (EN 349, ISO 13854, from memory).
#[test]
fn the_arm_near_something() {
    for (gap, told) in [(0.12 * LESS, true), (1e-6, true), (0.12 * MORE, false)] {
        let job = beside_the_shaft(gap);
        match told {
            true => {
                let finding = super::found(&job, Code::ArmCrushes).expect("near");
                let values: Vec<_> = finding.values.iter().map(|value| (value.name, value.value)).collect();
                assert!((values[0].1 - gap).abs() < 1e-12 && values[0].0 == "gap");
                assert_eq!(
                    (values[1], values[2].0, finding.severity),
                    (("limit", 0.12), "leaf_angle", Severity::Warning)
                );
            }
            false => silent(&job, Code::ArmCrushes),
        }
        silent(&job, Code::ArmHits);
    }
    let hit = beside_the_shaft(-0.01);
    silent(&hit, Code::ArmCrushes);
    let finding = super::found(&hit, Code::ArmHits).expect("in the way");
    assert_eq!(
        (finding.severity, finding.values[0].name, finding.values[1].name),
        (Severity::Error, "overlap", "leaf_angle")
    );
    assert!((finding.values[0].value - 0.01).abs() < 1e-12);
    // Exactly touching is no overlap, and crushes. An arm without width on the stone touches it without a rounding.
    let touching = with(json!({ "obstacles": [stone(-0.3, 0.43)] }));
    silent(&touching, Code::ArmHits);
    tells(&touching, Code::ArmCrushes, Severity::Warning, &[("gap", 0.0), ("limit", 0.12), ("leaf_angle", 0.0)]);
}

/// Closed, the elbow is 0.22 m from the axis line, and nearer to no face than the straight arm lets it.
#[test]
fn the_elbow_near_the_leaf() {
    let faced = |front: f64, half: f64| with(json!({ "front_m": front, "arm_half_width_m": half }));
    // The shaft end of the crank comes nearest once the leaf is open: how near is asked of the plan's own clearances, the limit is not.
    let nearest = |job: &Value| {
        let gaps = planned(job).clearances.expect("said").gaps;
        let elbow = gaps.iter().filter(|gap| {
            gap.against == pintle_core::plan::Against::Leaf && gap.part != pintle_core::plan::MovingPart::Link
        });
        elbow
            .map(|gap| (gap.least_m, gap.leaf_deg))
            .fold((f64::MAX, 0.0), |one, other| if other.0 < one.0 { other } else { one })
    };
    // Moving the half width moves the gap by as much.
    let (bare, _) = nearest(&faced(0.0, 0.0));
    assert!(bare > 0.13, "{bare}");
    let job = faced(0.0, bare - 0.12 * LESS);
    let (gap, angle) = nearest(&job);
    tells(&job, Code::ElbowNearsLeaf, Severity::Warning, &[("gap", gap), ("limit", 0.12), ("leaf_angle", angle)]);
    assert!((gap - 0.12 * LESS).abs() < 1e-12);
    silent(&faced(0.0, bare - 0.12 * MORE), Code::ElbowNearsLeaf);
    for code in [Code::ArmHitsLeaf, Code::LeafHits] {
        silent(&job, code);
    }
    let hit = faced(0.0, bare + 0.01);
    let (gap, angle) = nearest(&hit);
    tells(&hit, Code::ArmHitsLeaf, Severity::Error, &[("overlap", -gap), ("leaf_angle", angle)]);
    assert!((gap + 0.01).abs() < 1e-12);
    silent(&hit, Code::ElbowNearsLeaf);
}

/// Of a link in the leaf and an elbow deeper in it the deeper is told: a face 81 mm proud takes the pin by 1 mm, a wide elbow goes in by 20 mm.
#[test]
fn the_deeper_of_link_and_elbow() {
    let faced = |half: f64| with(json!({ "front_m": 0.081, "arm_half_width_m": half }));
    let elbow = |job: &Value| {
        let gaps = planned(job).clearances.expect("said").gaps;
        let to_leaf = gaps.into_iter().filter(|gap| gap.against == pintle_core::plan::Against::Leaf);
        to_leaf
            .filter(|gap| gap.part != pintle_core::plan::MovingPart::Link)
            .map(|gap| gap.least_m)
            .fold(f64::MAX, f64::min)
    };
    let overlap = |job: &Value| super::found(job, Code::ArmHitsLeaf).expect("it is in the leaf").values[0].value;
    let bare = elbow(&faced(0.0));
    assert!(bare > 0.0 && (overlap(&faced(0.0)) - 0.001).abs() < 1e-12);
    assert!((overlap(&faced(bare + 0.02)) - 0.02).abs() < 1e-12);
    // A link that meets something else is not in the leaf: half-way along it, closed, from (0.42, 0.22) to (0.9, 0.08).
    let hit = with(json!({ "obstacles": [stone(0.66, 0.15)] }));
    assert!(super::found(&hit, Code::ArmHits).is_some() || super::found(&hit, Code::ArmCrushes).is_some());
    silent(&hit, Code::ArmHitsLeaf);
    let wide = with(json!({ "arm_half_width_m": 0.02, "obstacles": [stone(0.66, 0.15)] }));
    assert!(super::found(&wide, Code::ArmHits).is_some());
    silent(&wide, Code::ArmHitsLeaf);
}

/// A link through the leaf is told, however far the elbow is: the bracket stands 80 mm off the axis, a face at 100 mm swallows its end.
#[test]
fn the_link_in_the_leaf() {
    let job = with(json!({ "front_m": 0.1 }));
    let finding = super::found(&job, Code::ArmHitsLeaf).expect("the pin is inside the leaf");
    assert_eq!(finding.severity, Severity::Error);
    assert!(finding.values[0].value >= 0.02 - 1e-12, "{:?}", finding.values);
    silent(&with(json!({ "front_m": 0.07 })), Code::ArmHitsLeaf);
}

/// A wall behind the open leaf, whose face is then at x = −0.05.
#[test]
fn room_behind_the_open_leaf() {
    let wall = |x: f64, y: f64| json!({ "x_m": [-3.0, x], "y_m": [y - 1.0, y] });
    let room = |walls: Vec<Value>| with(json!({ "front_m": 0.05, "obstacles": walls }));
    // 406 mm of room, or within 102 mm of the hinge's centre line (ASTM F2200, from memory).
    let small = |gap: f64| [("gap", gap), ("limit", 0.406)];
    let at = |gap: f64| room(vec![wall(-0.05 - gap, 2.0)]);
    tells(&at(0.406 * LESS), Code::OpenGapSmall, Severity::Warning, &small(0.406 * LESS));
    silent(&at(0.406 * MORE), Code::OpenGapSmall);
    tells(&at(0.0), Code::OpenGapSmall, Severity::Warning, &small(0.0));
    silent(&at(-0.01), Code::OpenGapSmall);
    // Covered by what the leaf is hung on.
    silent(&room(vec![wall(-0.25, 0.102)]), Code::OpenGapSmall);
    tells(&room(vec![wall(-0.25, 0.102 * MORE)]), Code::OpenGapSmall, Severity::Warning, &small(0.2));
    // Of several the smallest is told.
    tells(
        &room(vec![wall(-0.25, 2.0), wall(-0.15, 1.5), wall(-0.35, 2.5)]),
        Code::OpenGapSmall,
        Severity::Warning,
        &small(0.1),
    );
    // What stands beyond the leaf's end is not behind it; what the leaf meets is told with its depth.
    silent(&room(vec![json!({ "x_m": [-3.0, -0.2], "y_m": [3.3, 4.0] })]), Code::OpenGapSmall);
    let hit = super::found(&at(-0.02), Code::LeafHits).expect("into the wall");
    assert_eq!((hit.severity, hit.values[0].name, hit.values[1].name), (Severity::Error, "overlap", "leaf_angle"));
    assert!((hit.values[0].value - 0.02).abs() < 1e-9 && (hit.values[1].value - 90.0).abs() < 1e-6, "{hit:?}");
    // A kerb along the back of the closed leaf is touched there and left as it opens.
    silent(&room(vec![json!({ "x_m": [1.0, 2.0], "y_m": [-1.0, 0.0] })]), Code::LeafHits);
    let kerb = super::found(&room(vec![json!({ "x_m": [1.0, 2.0], "y_m": [-1.0, 0.001] })]), Code::LeafHits);
    assert!((kerb.expect("it is in the way").values[0].value - 0.001).abs() < 1e-12);
}

/// A heel of 0.1 m between faces of ±0.05 m goes round at √(0.1² + 0.05²): that corner passes the post nearest.
#[test]
fn the_gap_at_the_hinge() {
    let reach = 0.1_f64.hypot(0.05);
    let post = |gap: f64, heel: f64| {
        with(json!({ "front_m": 0.05, "back_m": 0.05, "heel_m": heel,
            "hinge_post": { "x_m": [-0.6, -(reach + gap)], "y_m": [-0.3, 0.3] } }))
    };
    let angle = 0.5_f64.atan().to_degrees();
    // Open, the heel has turned away and the post is as far as the face, at −0.05.
    for gap in [0.025 * LESS, 0.01, 0.0005] {
        let finding = super::found(&post(gap, 0.1), Code::HingeGapCloses).expect("it closes below 25 mm");
        assert_eq!(finding.severity, Severity::Warning);
        let told: Vec<_> = finding.values.iter().map(|value| (value.name, value.value)).collect();
        for (told, expected) in
            told.iter().zip([("widest", reach + gap - 0.05), ("gap", gap), ("limit", 0.025), ("leaf_angle", angle)])
        {
            assert!(
                told.0 == expected.0 && (told.1 - expected.1).abs() < 1e-3 * expected.1.max(1e-4),
                "{told:?} {expected:?}"
            );
        }
    }
    silent(&post(0.025 * MORE, 0.1), Code::HingeGapCloses);
    // Without a heel and 10 mm off, the leaf of ±2 mm only turns in its gap: what changes by less than the play of a hinge is none.
    let still = |half: f64, post: f64| {
        with(json!({ "front_m": half, "back_m": half, "hinge_post": { "x_m": [-0.6, -post], "y_m": [-0.6, 0.6] } }))
    };
    silent(&still(0.0009, 0.01), Code::HingeGapCloses);
    assert!(super::found(&still(0.0012, 0.01), Code::HingeGapCloses).is_some(), "1.2 mm are more");
    // A gap that is never wider than 8 mm takes no finger.
    silent(&still(0.003, 0.008 * LESS), Code::HingeGapCloses);
    assert!(super::found(&still(0.003, 0.008 * MORE), Code::HingeGapCloses).is_some());
}

/// A tape error that takes the reserve below one; rated for the planned demand there is none to lose.
#[test]
fn what_a_tape_error_costs() {
    let mut job = straight();
    job["arm"]["crank_m"] = json!(0.77);
    job["tape"] = json!({ "error_m": 0.003 });
    let tape = planned(&job).tape.expect("asked for");
    let (planned_n_m, worst_n_m) =
        (400.0 / tape.planned.reserve.expect("some"), 400.0 / tape.worst.reserve.expect("some"));
    assert!(worst_n_m > planned_n_m * 1.0001);
    for (rated, told) in
        [(worst_n_m * MORE, false), (worst_n_m * LESS, true), (planned_n_m * MORE, true), (planned_n_m * LESS, false)]
    {
        job["operator"]["rated_torque_n_m"] = json!(rated);
        match told {
            true => tells(
                &job,
                Code::TapeErrorCosts,
                Severity::Warning,
                &[("error", 0.003), ("reserve", rated / worst_n_m)],
            ),
            false => silent(&job, Code::TapeErrorCosts),
        }
    }
}

#[test]
fn what_was_built_and_does_not_work() {
    let mut job = straight();
    job["as_built"] = json!({ "link_m": 0.49 });
    tells(&job, Code::BuiltBroken, Severity::Error, &[]);
    job["as_built"] = json!({ "link_m": 0.51 });
    silent(&job, Code::BuiltBroken);
}

/// The arm reaches 1.25 m and is half a millimetre longer: of all errors of 3 mm those break it that lengthen the reach by more than they
/// lengthen the arm. Counted here corner by corner from the triangle alone.
#[test]
fn tape_errors_that_break_the_arm() {
    let error: f64 = 0.003;
    let at = |corner: u32, dimension: u32| if corner >> dimension & 1 == 1 { error } else { -error };
    let breaks = |corner: &u32| {
        let of = |dimension| at(*corner, dimension);
        let reach = (0.9 + of(2) + 0.3 - of(0)).hypot(0.08 + of(3) - 0.43 - of(1));
        reach > 0.75 + of(4) + 0.5005 + of(5)
    };
    let broken = (0..64).filter(breaks).count();
    assert!((16..48).contains(&broken), "{broken}");
    let mut job = straight();
    job["arm"]["link_m"] = json!(0.5005);
    job["tape"] = json!({ "error_m": error });
    tells(&job, Code::TapeErrorBreaks, Severity::Error, &[("count", broken as f64), ("error", error)]);
    // A bent arm bears it.
    job["arm"]["link_m"] = json!(0.56);
    silent(&job, Code::TapeErrorBreaks);
    job["arm"]["link_m"] = json!(0.5);
    job["tape"] = serde_json::Value::Null;
    silent(&job, Code::TapeErrorBreaks);
}
