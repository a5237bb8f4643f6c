//! Zones that can catch a person, on the plan view.

use crate::svg::{self, Drawing};
use crate::{jobs, views};
use pintle_core::plan::{Model, Plan};
use pintle_core::units::{Quantity, System, show};
use pintle_web::drawing::{leaf_deg_at_plan_view, plan_view_svg};
use serde_json::{Value, json};

/// A job on a site with a hinge post, a wall behind the open leaf, a step and something out of reach.
fn on_site(job: &Value) -> Value {
    let mut job = job.clone();
    let post = json!({ "x_m": [-0.3, -0.05], "y_m": [-0.15, 0.15] });
    let wall = json!({ "x_m": [-0.9, -0.35], "y_m": [0.9, 4.0] });
    let far = json!({ "x_m": [8.0, 9.0], "y_m": [-2.0, 2.0] });
    pintle_tests::around(&mut job, json!({ "hinge_post": post, "obstacles": [wall, far], "arm_half_width_m": 0.04 }));
    job["site"] = json!({ "latch_gap_m": 0.02 });
    job
}

fn drawn(solved: &(Model, Plan), size: (f64, f64), leaf_deg: f64, zones: bool) -> (String, Drawing) {
    let view = views::changed(size.0, size.1, leaf_deg, "metric", &[("zones", zones.into())]);
    let text = plan_view_svg(&solved.0, &solved.1, &view);
    let drawing = Drawing::read(&text);
    (text, drawing)
}

const SIZES: [(f64, f64); 3] = [(328.0, 295.0), (620.0, 520.0), (1000.0, 600.0)];

#[test]
fn nothing_written_overlaps_or_runs_off_the_sheet() {
    for (name, job) in jobs::odd() {
        // A site has to be one a leaf fits into; where the post is in the way the job still is valid.
        let Some(solved) = jobs::solved(&on_site(&job)) else { panic!("{name} stands on a site") };
        for size in SIZES {
            for part in [0.0, 0.5, 1.0] {
                let (text, drawing) = drawn(&solved, size, part * solved.0.job().swing.open_deg, true);
                svg::keep(&format!("zones, {name}, {}, {part}", size.0), &text);
                for (index, text) in drawing.texts.iter().enumerate() {
                    assert!(drawing.holds(text), "{name} at {size:?}: {text:?} leaves the sheet");
                    for other in &drawing.texts[..index] {
                        assert!(!text.overlaps(other), "{name} at {size:?}: {text:?} over {other:?}");
                    }
                }
                for (x, y) in &drawing.points {
                    let inside = (-40.0..=size.0 + 40.0).contains(x) && (-40.0..=size.1 + 40.0).contains(y);
                    assert!(inside, "{name} at {size:?}: a point at {x}, {y}");
                }
            }
        }
    }
}

/// Every zone of the plan has its number and its worst angle on the sheet, on a phone too; without the toggle none has.
#[test]
fn every_zone_has_its_number_and_angle() {
    for hand in ["right", "left"] {
        let mut job = on_site(&jobs::usual());
        job["hand"] = hand.into();
        let solved = jobs::solved(&job).expect("valid");
        let zones = &solved.1.entrapment.as_ref().expect("a site").zones;
        assert!(zones.len() >= 6, "{zones:?}");
        for size in SIZES {
            for leaf_deg in [0.0, 37.0, 90.0] {
                let (_, shown) = drawn(&solved, size, leaf_deg, true);
                let (_, hidden) = drawn(&solved, size, leaf_deg, false);
                for (index, zone) in zones.iter().enumerate() {
                    let wanted = format!("{}: {}", index + 1, show(zone.leaf_deg, Quantity::Angle, System::Metric));
                    let count = |drawing: &Drawing| drawing.texts.iter().filter(|text| text.text == wanted).count();
                    assert_eq!(
                        (count(&shown), count(&hidden)),
                        (1, 0),
                        "{wanted} at {size:?}, {leaf_deg}°: {:?}",
                        shown.texts
                    );
                }
            }
        }
    }
}

/// A mark stands where the core says the zone is: by the leaf's own length on the sheet, hinge at its start, along and square to it.
#[test]
fn marks_stand_where_the_zones_are() {
    let solved = jobs::solved(&on_site(&jobs::usual())).expect("valid");
    let (_, drawing) = drawn(&solved, (1000.0, 700.0), 0.0, true);
    let leaf = drawing.points_in("#333388");
    let per_m = (leaf[1].0 - leaf[0].0) / 3.2;
    assert!(per_m > 50.0 && (leaf[0].1 - leaf[1].1).abs() < 0.2, "the whole leaf, level: {:?}", &leaf[..2]);
    for zone in &solved.1.entrapment.as_ref().expect("a site").zones {
        let at = (leaf[0].0 + zone.x_m * per_m, leaf[0].1 - zone.y_m * per_m);
        // Its outline lies round that place at an even distance.
        let radius = (0.5 * zone.free_gap_m * per_m).clamp(11.0, 30.0);
        let round = drawing.points.iter().filter(|(x, y)| ((x - at.0).hypot(y - at.1) - radius).abs() < 0.3).count();
        assert!(round >= 20, "{zone:?}: {round} points round {at:?}");
    }
}

/// The way of the hatching tells in which movement a zone catches, without colour.
#[test]
fn hatching_tells_the_movement() {
    let solved = jobs::solved(&on_site(&jobs::usual())).expect("valid");
    let (text, _) = drawn(&solved, (1000.0, 700.0), 0.0, true);
    // Pieces of one ink: two points each, rising or falling on the sheet.
    let slopes = |ink: &str| {
        let lines = text.split('<').filter(|tag| tag.starts_with("polyline") && tag.contains(ink));
        let ends = lines.filter_map(|tag| {
            let points = tag.split_once("points=\"")?.1.split_once('"')?.0;
            let numbers: Vec<f64> = points.split([' ', ',']).filter_map(|number| number.parse().ok()).collect();
            (numbers.len() == 4).then(|| ((numbers[3] - numbers[1]) * (numbers[2] - numbers[0])).signum())
        });
        ends.collect::<Vec<_>>()
    };
    let (opening, closing) = (slopes("#0072B2"), slopes("#B34A00"));
    assert!(opening.len() > 3 && opening.iter().all(|slope| *slope == -1.0), "opening rises: {opening:?}");
    assert!(closing.len() > 3 && closing.iter().all(|slope| *slope == 1.0), "closing falls: {closing:?}");
}

/// With zones shown the drawing has another scale, and a finger still finds the leaf's angle.
#[test]
fn a_finger_finds_the_leaf_among_the_zones() {
    for hand in ["right", "left"] {
        let mut job = on_site(&jobs::usual());
        (job["hand"], job["leaf"]["length_m"]) = (hand.into(), json!(6.0));
        let (model, plan) = jobs::solved(&job).expect("valid");
        for zones in [true, false] {
            let view = views::changed(700.0, 520.0, 33.0, "metric", &[("zones", zones.into())]);
            let leaf = Drawing::read(&plan_view_svg(&model, &plan, &view)).points_in("#333388");
            let middle = ((leaf[0].0 + leaf[1].0) / 2.0, (leaf[0].1 + leaf[1].1) / 2.0);
            let found = leaf_deg_at_plan_view(&model, &plan, &view, middle.0, middle.1);
            assert!((found - 33.0).abs() < 0.3, "{hand}, zones {zones}: {found}");
        }
    }
}
