//! Edge speed and shaft torque against time, drawn natively from the core's own runs.

use crate::svg::{self, Drawing};
use crate::{jobs, views};
use pintle_core::plan::{Model, Plan, Run};
use pintle_core::units::{Quantity, System, show};
use pintle_web::drawing::{View, leaf_deg_at_time, time_svg};
use serde_json::{Value, json};

/// A job with its shaft at 9 °/s, ramps and slow zones, and a motor that stalls at `stall` N·m at the shaft.
fn moving(job: &Value, stall: f64) -> Value {
    let mut job = job.clone();
    job["operator"]["shaft_speed_deg_s"] = json!(9);
    job["motion"] = json!({ "slow_open_deg": 15, "slow_close_deg": 20,
        "motor": { "stall_torque_n_m": stall, "no_load_speed_deg_s": 12, "rated_v": 24 } });
    job
}

fn drawn(runs: &[Run], view: &View) -> Drawing {
    Drawing::read(&time_svg(runs, view))
}

fn solved(job: &Value) -> (Model, Plan, Vec<Run>) {
    let (model, plan) = jobs::solved(job).expect("valid");
    let runs = model.fine_runs();
    (model, plan, runs)
}

#[test]
fn nothing_overlaps_or_runs_off_the_sheet() {
    for (name, job) in jobs::odd() {
        for stall in [250.0, 900.0] {
            let (model, _, runs) = solved(&moving(&job, stall));
            for (width, height) in [(328.0, 295.0), (520.0, 468.0), (1000.0, 600.0)] {
                for (part, run) in [(0.0, "opening"), (0.3, "motor_opening"), (0.7, "closing"), (1.0, "motor_closing")]
                {
                    let view =
                        views::changed(width, height, part * model.job().swing.open_deg, "us", &[("run", json!(run))]);
                    let label = format!("time, {name}, {stall} N·m, {width}×{height}, {run}");
                    let text = time_svg(&runs, &view);
                    svg::keep(&label, &text);
                    let drawing = Drawing::read(&text);
                    assert!(drawing.points.len() > 50, "{label}: hardly anything drawn");
                    for (index, text) in drawing.texts.iter().enumerate() {
                        assert!(drawing.holds(text), "{label}: {text:?} leaves the sheet");
                        for other in &drawing.texts[..index] {
                            assert!(!text.overlaps(other), "{label}: {text:?} over {other:?}");
                        }
                    }
                    for (x, y) in &drawing.points {
                        assert!(
                            (-1.0..=width + 1.0).contains(x) && (-1.0..=height + 1.0).contains(y),
                            "{label}: {x}, {y}"
                        );
                    }
                }
            }
        }
    }
}

/// The line of the opening run ends where the plan says it arrives and reaches as high as the plan's largest torque, by the scale of the
/// drawing's own ticks.
#[test]
fn the_lines_are_the_plan_s() {
    let (_, plan, runs) = solved(&moving(&jobs::usual(), 900.0));
    let motion = plan.motion.expect("motion");
    let drawing = drawn(&runs, &views::view(1000.0, 700.0, 0.0, "metric"));
    // The first line drawn is that of the opening run in the torque's plot, from the time 0 on.
    let line = &drawing.points_in("#0072b2")[..runs[0].rows.len()];
    let tick = |text: &str| drawing.texts.iter().find(|found| found.text == text).expect("a tick").middle_x();
    let per_s = (tick("18") - tick("10")) / 8.0;
    let end = (line[line.len() - 1].0 - line[0].0) / per_s;
    assert!((end - motion.opening.time_s).abs() < 0.1, "drawn to {end} s, the plan has {}", motion.opening.time_s);
    // The torque's ticks stand at the left in the lower half.
    let number = |text: &str| text.replace('\u{2212}', "-").parse::<f64>().ok();
    let ticks = drawing
        .texts
        .iter()
        .filter(|text| text.middle_x() < 60.0 && text.middle_y() > 330.0 && text.middle_y() < 650.0);
    let ticks: Vec<(f64, f64)> = ticks.filter_map(|text| Some((number(&text.text)?, text.middle_y()))).collect();
    let (first, last) = (ticks[0], ticks[ticks.len() - 1]);
    let torque = |y: f64| first.0 + (y - first.1) * (last.0 - first.0) / (last.1 - first.1);
    let highest = line.iter().map(|point| torque(point.1)).fold(0.0, f64::max);
    assert!(
        (highest - motion.opening.peak.shaft_torque_n_m).abs() < 10.0,
        "{highest} N·m of {:?}",
        motion.opening.peak
    );
}

/// A motor that stalls is marked where the plan says, in words and degrees.
#[test]
fn a_stall_is_marked() {
    let (_, plan, runs) = solved(&moving(&jobs::usual(), 250.0));
    let driven = plan.motion.expect("motion").driven.expect("a motor");
    let angle = show(driven.opening.leaf_deg, Quantity::Angle, System::Metric);
    let drawing = drawn(&runs, &views::view(700.0, 600.0, 0.0, "metric"));
    let wanted = format!("stalls, {angle}");
    let found = drawing.texts.iter().filter(|text| text.text == wanted).count();
    assert_eq!(found, 1, "{wanted} in {:?}", drawing.texts);
}

/// Titles have their units, every run its name, and the cursor its time, angle, speed and torque.
#[test]
fn titles_names_and_cursor() {
    let (_, _, runs) = solved(&moving(&jobs::usual(), 900.0));
    for (width, height) in [(328.0, 295.0), (1000.0, 600.0)] {
        for (index, run) in ["opening", "closing", "motor_opening", "motor_closing"].into_iter().enumerate() {
            let drawing = drawn(&runs, &views::changed(width, height, 40.0, "metric", &[("run", json!(run))]));
            let at = runs[index].of_leaf(40.0).expect("it passes");
            let mut wanted = vec!["Edge speed, m/s".to_owned(), "Shaft torque, N·m".into(), "Time, s".into()];
            wanted.extend(["opening", "closing", "motor opens", "motor closes"].map(String::from));
            wanted.push(format!("{}, 40°", show(at.time_s, Quantity::Time, System::Metric)));
            wanted.push(show(at.edge_speed_m_s, Quantity::Speed, System::Metric));
            wanted.push(show(at.shaft_torque_n_m, Quantity::Torque, System::Metric));
            for text in wanted {
                let all: Vec<_> = drawing.texts.iter().map(|text| &text.text).collect();
                assert!(
                    drawing.texts.iter().any(|found| found.text == text),
                    "{text} is missing, {run} at {width}: {all:?}"
                );
            }
        }
    }
}

/// A finger on the cursor's line finds the angle it stands at.
#[test]
fn a_finger_finds_the_angle_under_it() {
    let (_, _, runs) = solved(&moving(&jobs::usual(), 900.0));
    for run in ["opening", "closing", "motor_opening", "motor_closing"] {
        for leaf_deg in [3.0, 40.0, 85.0] {
            let view = views::changed(600.0, 540.0, leaf_deg, "metric", &[("run", json!(run))]);
            // The cursor's own ink.
            let x = drawn(&runs, &view).points_in("#00775a")[0].0;
            let found = leaf_deg_at_time(&runs, &view, x).expect("a run");
            assert!((found - leaf_deg).abs() < 0.2, "{run}: {found} for {leaf_deg}");
        }
    }
}

/// Without colour every line still differs from every other by its pieces or its width.
#[test]
fn line_types_tell_the_runs_apart() {
    let (_, _, runs) = solved(&moving(&jobs::usual(), 900.0));
    let text = time_svg(&runs, &views::view(1000.0, 700.0, 0.0, "metric"));
    let mut kinds: Vec<(usize, String)> = Vec::new();
    for ink in ["#0072B2", "#B34A00"] {
        for width in ["10", "20"] {
            let strokes = text.split('<').filter(|tag| {
                tag.starts_with("polyline") && tag.contains(ink) && tag.contains(&format!("stroke-width=\"{width}\""))
            });
            kinds.push((strokes.count(), width.into()));
        }
    }
    // Thin and thick in both inks; thick opening is whole, thick closing is cut.
    assert!(kinds.iter().all(|(count, _)| *count > 0), "{kinds:?}");
    assert!(kinds[1].0 <= 4 && kinds[3].0 > 20, "{kinds:?}");
    assert!(kinds[0].0 > 20 && kinds[2].0 > 20 && kinds[0].0 != kinds[2].0, "{kinds:?}");
}
