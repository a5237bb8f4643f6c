//! The drawings, natively: every valid job draws, nothing written lies over anything else written or outside the sheet.
//!
//! `PINTLE_DRAWINGS=folder` also writes them there, to be looked at.
mod jobs;
mod map;
mod pair;
mod qr;
mod svg;
mod template;
mod time;
mod views;
mod zones;

use pintle_core::plan::{Model, Plan};
use pintle_web::drawing::{curve_svg, plan_view_svg};
use serde_json::Value;
use svg::{Drawing, Text};

/// Sizes a phone and a projector show.
const SIZES: [(f64, f64); 3] = [(328.0, 240.0), (328.0, 328.0), (1000.0, 600.0)];
/// Cursor positions, as parts of the swing.
const CURSORS: [f64; 4] = [0.0, 0.13, 0.6, 1.0];

/// Both drawings of a job at every size and cursor.
fn all_drawings(name: &str, job: &Value, mut look: impl FnMut(&str, &Drawing)) {
    let (model, plan) = jobs::solved(job).unwrap_or_else(|| panic!("{name} is a valid job"));
    for (width, height) in SIZES {
        for (part, system) in CURSORS.into_iter().zip(["metric", "us"].into_iter().cycle()) {
            let view = views::view(width, height, part * model.job().swing.open_deg, system);
            let drawings =
                [("curve", curve_svg(&model, &plan, &view)), ("plan view", plan_view_svg(&model, &plan, &view))];
            for (kind, text) in drawings {
                let label = format!("{name}, {kind}, {width}×{height}, cursor {part}, {system}");
                svg::keep(&label, &text);
                look(&label, &Drawing::read(&text));
            }
        }
    }
}

#[test]
fn nothing_overlaps_or_runs_off_the_sheet() {
    for (name, job) in jobs::odd() {
        all_drawings(name, &job, |label, drawing| {
            for (index, text) in drawing.texts.iter().enumerate() {
                assert!(drawing.holds(text), "{label}: {text:?} leaves the sheet");
                for other in &drawing.texts[..index] {
                    assert!(!text.overlaps(other), "{label}: {text:?} over {other:?}");
                }
            }
            assert!(drawing.points.len() > 50, "{label}: hardly anything drawn");
            for (x, y) in &drawing.points {
                // An extension line may end a little beyond the sheet; nothing may run away.
                let inside = (-40.0..=drawing.width + 40.0).contains(x) && (-40.0..=drawing.height + 40.0).contains(y);
                assert!(inside, "{label}: a point at {x}, {y}");
            }
        });
    }
}

/// Smallest, flattest and narrowest sheets, any cursor: something is drawn and nothing panics.
#[test]
fn odd_sheets_draw_too() {
    for (name, job) in jobs::odd() {
        let (model, plan) = jobs::solved(&job).expect("valid");
        for (width, height) in [(160.0, 160.0), (1600.0, 160.0), (160.0, 1600.0)] {
            for leaf_deg in [-1e9, 1e9] {
                let view = views::view(width, height, leaf_deg, "us");
                for text in [curve_svg(&model, &plan, &view), plan_view_svg(&model, &plan, &view)] {
                    assert!(Drawing::read(&text).points.len() > 50, "{name} at {width}×{height}");
                }
            }
        }
    }
}

/// Every number that sets the arm out stands on the plan view, in the units asked for, on a phone too.
#[test]
fn the_plan_view_states_the_set_out() {
    let (model, plan) = jobs::solved(&jobs::usual()).expect("valid");
    for (width, height) in SIZES {
        for (system, wanted) in [
            (
                "metric",
                [
                    "250\u{a0}mm",
                    "450\u{a0}mm",
                    "1200\u{a0}mm",
                    "60\u{a0}mm",
                    "crank 873\u{a0}mm",
                    "link 636\u{a0}mm",
                    "90°",
                ],
            ),
            // 1 in = 25.4 mm: 9.843, 17.717, 47.244, 2.362, 34.362, 25.051 in, to the nearest sixteenth.
            (
                "us",
                ["9 13/16\"", "1'-5 11/16\"", "3'-11 1/4\"", "2 3/8\"", "crank 2'-10 3/8\"", "link 2'-1 1/16\"", "90°"],
            ),
        ] {
            for part in CURSORS {
                let view = views::view(width, height, 90.0 * part, system);
                let drawing = Drawing::read(&plan_view_svg(&model, &plan, &view));
                for text in wanted {
                    let found = drawing.texts.iter().filter(|found| found.text == text).count();
                    let all: Vec<_> = drawing.texts.iter().map(|text| &text.text).collect();
                    assert!(found >= 1, "{text} is missing at {width}×{height}, cursor {part}: {all:?}");
                }
            }
        }
    }
}

/// Rated and peak torque, the deciding angle (contract: 308.27 N·m at 37.768°), and the values at the cursor.
#[test]
fn the_curve_states_limits_peak_and_cursor() {
    let (model, plan) = jobs::solved(&jobs::usual()).expect("valid");
    for (width, height) in SIZES {
        let view = views::view(width, height, 0.0, "metric");
        let drawing = Drawing::read(&curve_svg(&model, &plan, &view));
        // At 0° the contract has 144.03 N·m opening and −144.03 N·m closing.
        let wanted = [
            "rated 400\u{a0}N·m",
            "peak 650\u{a0}N·m",
            "308\u{a0}N·m, 37.8°",
            "144\u{a0}N·m",
            "−144\u{a0}N·m",
            "opening",
            "closing",
        ];
        for text in wanted {
            let all: Vec<_> = drawing.texts.iter().map(|text| &text.text).collect();
            assert!(
                drawing.texts.iter().any(|found| found.text == text),
                "{text} is missing at {width}×{height}: {all:?}"
            );
        }
    }
}

/// `hand` mirrors lines about the sheet's middle; text stays readable and stays on the sheet.
#[test]
fn a_left_hand_is_the_mirror_image() {
    let right = jobs::solved(&jobs::usual()).expect("valid");
    let left = jobs::solved(&jobs::changed(&[("/hand", "left".into())])).expect("valid");
    let view = views::view(700.0, 420.0, 40.0, "metric");
    let drawn = |(model, plan): &(Model, Plan)| Drawing::read(&plan_view_svg(model, plan, &view));
    let (right, left) = (drawn(&right), drawn(&left));
    // The leaf is drawn in an ink of its own.
    let leaf = |drawing: &Drawing| drawing.points_in("#333388").into_iter().take(2).collect::<Vec<_>>();
    let (right_leaf, left_leaf) = (leaf(&right), leaf(&left));
    assert_eq!(right_leaf.len(), 2);
    for (a, b) in right_leaf.iter().zip(&left_leaf) {
        assert!((a.0 + b.0 - 700.0).abs() < 0.2 && (a.1 - b.1).abs() < 0.2, "{a:?} is not mirrored to {b:?}");
    }
    let words = |drawing: &Drawing| {
        let mut words: Vec<_> = drawing.texts.iter().map(|text: &Text| text.text.clone()).collect();
        words.sort();
        words
    };
    assert_eq!(words(&right), words(&left));
}

/// Two views of the one drawing: of the arm, and of all the gate, which has the latch edge of the closed leaf in it whatever the leaf's length.
#[test]
fn the_whole_gate_is_shown_when_it_is_asked_for() {
    let (model, plan) = jobs::solved(&jobs::changed(&[("/leaf/length_m", 6.0.into())])).expect("valid");
    let drawn = |part: &str| {
        let view = views::changed(700.0, 420.0, 0.0, "metric", &[("part", part.into())]);
        Drawing::read(&plan_view_svg(&model, &plan, &view))
    };
    let (gate, arm) = (drawn("gate"), drawn("arm"));
    let leaf = gate.points_in("#333388");
    assert!(leaf.iter().all(|point| (0.0..=700.0).contains(&point.0) && (0.0..=420.0).contains(&point.1)), "{leaf:?}");
    let leaf_px = (leaf[0].0 - leaf[1].0).hypot(leaf[0].1 - leaf[1].1);
    let (of_gate, of_arm) = (crank_px(&gate), crank_px(&arm));
    assert!((of_gate / leaf_px - 0.8728 / 6.0).abs() < 2e-3, "{of_gate} px of crank to {leaf_px} px of leaf");
    assert!(of_arm > 1.5 * of_gate, "the arm is drawn larger: {of_arm} px, {of_gate} px");
}

/// Length of the crank, px: of a line of two pieces, as long to each other as crank and link of the usual job are.
fn crank_px(drawing: &Drawing) -> f64 {
    let length = |one: (f64, f64), other: (f64, f64)| (one.0 - other.0).hypot(one.1 - other.1);
    let bent = drawing.lines().filter_map(|line| <[_; 3]>::try_from(&line[..]).ok());
    let arms = bent.filter(|[shaft, elbow, bracket]| {
        (length(*shaft, *elbow) / length(*elbow, *bracket) - 0.8728 / 0.6363).abs() < 0.02
    });
    arms.map(|[shaft, elbow, _]| length(shaft, elbow)).fold(f64::NAN, f64::max)
}

/// The holes stand on the plan view where they are marked out, each with its number.
#[test]
fn holes_have_their_numbers_on_the_plan_view() {
    let marks = serde_json::json!({ "anchor_along_m": 0.25, "anchor_across_m": 0.15 });
    let (model, plan) = jobs::solved(&jobs::changed(&[("/marks", marks)])).expect("valid");
    let drawn = |shown: bool| {
        let view = views::changed(700.0, 420.0, 0.0, "metric", &[("marks", shown.into())]);
        Drawing::read(&plan_view_svg(&model, &plan, &view))
    };
    let has = |drawing: &Drawing, number: &str| drawing.texts.iter().any(|text| text.text == number);
    let (with, without) = (drawn(true), drawn(false));
    for number in ["1", "2", "3", "4"] {
        assert!(has(&with, number) && !has(&without, number), "{number}: {:?}", with.texts);
    }
}

/// Equal scale on both axes: the drawn leaf, turned, keeps its length.
#[test]
fn the_plan_view_has_one_scale() {
    let (model, plan) = jobs::solved(&jobs::usual()).expect("valid");
    let lengths = [0.0, 30.0, 60.0, 90.0].map(|leaf_deg| {
        let drawing = Drawing::read(&plan_view_svg(&model, &plan, &views::view(1000.0, 700.0, leaf_deg, "metric")));
        let points = drawing.points_in("#333388");
        (points[0].0 - points[1].0).hypot(points[0].1 - points[1].1)
    });
    for length in lengths {
        assert!((length - lengths[0]).abs() < 0.2, "{lengths:?}");
    }
}

/// At a dead point the torque is 0 (model: straight arm), so the curve starts on the zero line.
#[test]
fn a_dead_point_lies_on_the_zero_line() {
    let (_, job) = jobs::odd().into_iter().find(|(name, _)| *name == "straight when closed").expect("it is there");
    let (model, plan) = jobs::solved(&job).expect("valid");
    assert!(plan.curve[0].ratio.is_none(), "the arm is straight when closed");
    let drawing = Drawing::read(&curve_svg(&model, &plan, &views::view(700.0, 420.0, 0.0, "metric")));
    let zero = drawing.texts.iter().find(|text| text.text == "0").expect("a tick at zero").middle_y();
    let start = drawing.points_in("#0072b2")[0];
    assert!((start.1 - zero).abs() < 2.0, "the curve starts at {start:?}, zero is at {zero}");
}

/// A range of the hinge friction is two thin lines beside each curve: at the deciding angle the drawing reaches from the low to the high
/// demand, by the scale of its own ticks.
#[test]
fn a_range_of_friction_is_drawn_beside_the_curve() {
    let (model, plan) = jobs::solved(&jobs::friction_range()).expect("valid");
    let band = plan.band.as_ref().expect("a range");
    let drawing = Drawing::read(&curve_svg(&model, &plan, &views::view(1000.0, 700.0, 0.0, "metric")));
    let height = |text: &str| drawing.texts.iter().find(|found| found.text == text).expect("a tick").middle_y();
    let per_n_m = (height("0") - height("400")) / 400.0;
    let lines = drawing.points_in("#0072b2");
    let top = lines.iter().map(|point| point.1).fold(f64::INFINITY, f64::min);
    let highest = (height("0") - top) / per_n_m;
    assert!(
        (highest - band.peak_n_m.high).abs() < 3.0,
        "drawn to {highest}, high friction asks {}",
        band.peak_n_m.high
    );
    let (single, plain) = jobs::solved(&jobs::usual()).expect("valid");
    let without = Drawing::read(&curve_svg(&single, &plain, &views::view(1000.0, 700.0, 0.0, "metric")));
    let rows = 2 * plan.curve.len();
    assert!(lines.len() >= without.points_in("#0072b2").len() + rows, "two lines more, of {rows} points");
}

/// The wind from behind, where it is wanted: each line under its name and in a line type of its own, reaching as far as the core says.
#[test]
fn what_is_held_back_is_drawn_when_wanted() {
    let (model, plan) = jobs::solved(&jobs::usual()).expect("valid");
    let names = ["held back opening", "held back closing", "holds at a stand"];
    for (width, height) in SIZES {
        let wanted = views::changed(width, height, 20.0, "metric", &[("overrun", true.into())]);
        let drawing = Drawing::read(&curve_svg(&model, &plan, &wanted));
        let without = Drawing::read(&curve_svg(&model, &plan, &views::view(width, height, 20.0, "metric")));
        for name in names {
            let has = |drawing: &Drawing| drawing.texts.iter().any(|text| text.text == name);
            assert!(has(&drawing) && !has(&without), "{name} at {width}×{height}: {:?}", drawing.texts);
        }
        assert!(without.points_in("#a0467f").is_empty());
    }
    let wanted = views::changed(1000.0, 700.0, 20.0, "metric", &[("overrun", true.into())]);
    let text = curve_svg(&model, &plan, &wanted);
    let drawing = Drawing::read(&text);
    let height = |text: &str| drawing.texts.iter().find(|found| found.text == text).expect("a tick").middle_y();
    let per_n_m = (height("0") - height("200")) / 200.0;
    // The most that is held back while opening lies below the zero line.
    let lowest = drawing.points_in("#a0467f").into_iter().map(|point| point.1).fold(0.0, f64::max);
    let most = plan.overrun.expect("wind drives it").shaft_torque_n_m;
    assert!(((lowest - height("0")) / per_n_m - most).abs() < 3.0, "{lowest} {most}");
    // Without colour: dots against long gaps in one ink, and thin against thick.
    let pieces = |ink: &str, width: &str| {
        let width = format!("stroke-width=\"{width}\"");
        text.split('<').filter(|tag| tag.starts_with("polyline") && tag.contains(ink) && tag.contains(&width)).count()
    };
    assert!(pieces("#A0467F", "20") > 100 && pieces("#857400", "10") > 10 && pieces("#857400", "20") == 0);
}

#[test]
fn the_wind_from_behind_overlaps_nothing() {
    for (name, job) in jobs::odd() {
        let (model, plan) = jobs::solved(&job).expect("valid");
        for (width, height) in SIZES {
            let view =
                views::changed(width, height, 0.3 * model.job().swing.open_deg, "us", &[("overrun", true.into())]);
            let text = curve_svg(&model, &plan, &view);
            svg::keep(&format!("overrun, {name}, {width}×{height}"), &text);
            let drawing = Drawing::read(&text);
            for (index, text) in drawing.texts.iter().enumerate() {
                assert!(drawing.holds(text), "{name}: {text:?} leaves the sheet");
                assert!(drawing.texts[..index].iter().all(|other| !text.overlaps(other)), "{name}: {text:?}");
            }
        }
    }
}
