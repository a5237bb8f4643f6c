//! The map of places for the shaft, drawn natively from the core's own map.

use crate::svg::{self, Drawing};
use crate::views;
use pintle_core::{Document, job::Job, plan::PadMap};
use pintle_web::drawing::{LIMIT_NAMES, Look, PadPicture, code_of};
use serde_json::{Value, json};

/// A site of the search's tests, changed as a test asks.
fn site(change: &[(&str, Value)]) -> Job {
    let mut job: Value = serde_json::from_str(include_str!("../setout/sites/yard.json")).expect("JSON");
    for (pointer, value) in change {
        match job.pointer_mut(pointer) {
            Some(place) => *place = value.clone(),
            None => job[pointer.trim_start_matches('/')] = value.clone(),
        }
    }
    let document: Document = serde_json::from_value(job).expect("a document");
    Job::read(&document).expect("valid")
}

fn look() -> Look {
    let limits: serde_json::Map<String, Value> =
        LIMIT_NAMES.iter().map(|name| (name.to_string(), json!(format!("why: {name}")))).collect();
    let look = json!({ "best": "found", "limits": limits });
    Look::read(&serde_json::from_value(look).expect("a document")).expect("a look")
}

/// The picture after some of the map's places, all of them for `None`.
fn picture(job: &Job, (columns, rows): (usize, usize), places: Option<usize>) -> PadPicture {
    let mut map = PadMap::new(job, columns, rows).expect("valid");
    match places {
        Some(places) => drop(map.step(places)),
        None => while map.step(1000) {},
    }
    let pads = map.pads();
    let reserves: Vec<f64> = pads.iter().map(|pad| pad.and_then(|pad| pad.reserve).unwrap_or(f64::NAN)).collect();
    let codes: Vec<u8> = pads.iter().map(|pad| code_of(pad.as_ref())).collect();
    let mut picture = PadPicture::new(job, columns, rows).expect("there is a block");
    picture.set(&reserves, &codes);
    picture.mark_best(Some((-0.2, 0.6)));
    picture.mark_here(columns / 3, rows / 3);
    picture.mark_arm(pads[rows / 3 * columns + columns / 3].filter(|pad| pad.ruled_out.is_none()).map(|pad| pad.arm));
    picture
}

/// Sites with hatchings of several kinds, a poured pad, a strip, a left hand, and maps that have just begun.
fn all() -> Vec<(&'static str, PadPicture)> {
    let wide = json!([-1.2, 0.4]);
    let yard = site(&[]);
    vec![
        ("yard", picture(&yard, (65, 65), None)),
        ("yard begun", picture(&yard, (65, 65), Some(25))),
        ("yard not begun", picture(&yard, (65, 65), Some(0))),
        ("wide", picture(&site(&[("/setout/shaft_x_m", wide.clone())]), (65, 65), None)),
        ("wide, left hand", picture(&site(&[("/setout/shaft_x_m", wide), ("/hand", "left".into())]), (65, 65), None)),
        ("no arm at all", picture(&site(&[("/setout/shaft_travel_deg", json!(60))]), (33, 33), None)),
        ("strip", picture(&site(&[("/setout/shaft_x_m", json!([-0.3, -0.3]))]), (1, 65), None)),
        (
            "one place",
            picture(
                &site(&[("/setout/shaft_x_m", json!([-0.3, -0.3])), ("/setout/shaft_y_m", json!([0.4, 0.4]))]),
                (1, 1),
                None,
            ),
        ),
    ]
}

#[test]
fn nothing_written_overlaps_or_runs_off_the_sheet() {
    for (name, picture) in all() {
        for (width, height) in [(328.0, 410.0), (838.0, 838.0), (160.0, 160.0)] {
            let text = picture.svg(&views::view(width, height, 0.0, "metric"), &look());
            svg::keep(&format!("map, {name}, {width}"), &text);
            let drawing = Drawing::read(&text);
            assert!(!drawing.points.is_empty(), "{name}: nothing drawn");
            for (x, y) in &drawing.points {
                let inside = (-40.0..=width + 40.0).contains(x) && (-40.0..=height + 40.0).contains(y);
                assert!(inside, "{name} at {width}: a point at {x}, {y}");
            }
            // The smallest sheet has no room for a legend's words.
            if width < 300.0 {
                continue;
            }
            for (index, text) in drawing.texts.iter().enumerate() {
                assert!(drawing.holds(text), "{name}: {text:?} leaves the sheet");
                for other in &drawing.texts[..index] {
                    assert!(!text.overlaps(other), "{name}: {text:?} over {other:?}");
                }
            }
        }
    }
}

/// The legend names what is on the map, and nothing else: nothing keeps within 60° of travel on this site.
#[test]
fn the_legend_says_why() {
    let job = site(&[("/setout/shaft_travel_deg", json!(60))]);
    let drawing = Drawing::read(&picture(&job, (33, 33), None).svg(&views::view(700.0, 700.0, 0.0, "metric"), &look()));
    let why: Vec<&str> = drawing.texts.iter().filter_map(|text| text.text.strip_prefix("why: ")).collect();
    assert!(!why.is_empty());
    let mut map = PadMap::new(&job, 33, 33).expect("valid");
    while map.step(1000) {}
    for pad in map.pads().into_iter().flatten() {
        let limit = serde_json::to_value(pad.ruled_out.expect("no arm anywhere").limit).expect("a word");
        assert!(why.contains(&limit.as_str().expect("a word")), "{limit} is on the map and not in {why:?}");
    }
}

/// A finger on the sheet finds the place that is marked there, mirrored or not.
#[test]
fn a_finger_finds_the_place_under_it() {
    for hand in ["right", "left"] {
        let mut picture = picture(&site(&[("/hand", hand.into())]), (65, 65), None);
        let view = views::view(600.0, 600.0, 0.0, "metric");
        // The arm is drawn in the cursor's ink too.
        picture.mark_arm(None);
        for (column, row) in [(0, 0), (64, 64), (13, 40)] {
            picture.mark_here(column, row);
            let drawing = Drawing::read(&picture.svg(&view, &look()));
            // The cursor's own ink: a level line and an upright one across the area.
            let points = drawing.points_in("#00775a");
            let (level, upright) = (points[0], points[2]);
            assert_eq!(picture.place_at(&view, upright.0, level.1), (column, row), "{hand}");
        }
    }
}
