//! The template of the base: its holes at their true distances, on one sheet or on several that are joined, beside a line that proves the print.
//!
//! CSS Values and Units 4, 5.2: 1 px is 1/96 inch. ISO 216: A4 is 210 mm wide, of which the sheet leaves 180 mm to the drawing.

use pintle_web::drawing::template_svgs;
use serde_json::json;

use crate::jobs;
use crate::svg::{self, Drawing};
use crate::views;

const PX_PER_MM: f64 = 96.0 / 25.4;
/// Of the view that draws: inks of a hole and of a line, and width and height as the page of marks asks.
const HOLE: &str = "#00775a";
const PLAIN: &str = "#1a1a1a";
const SHEET: (f64, f64) = (680.0, 780.0);

/// Sheets of an invented base: spacing along and across, m; the crank of the closed arm turns it as it will.
fn sheets(along_m: f64, across_m: f64, hand: &str, system: &str) -> Vec<Drawing> {
    let marks = json!({ "anchor_along_m": along_m, "anchor_across_m": across_m });
    let job = jobs::changed(&[("/marks", marks), ("/hand", json!(hand))]);
    let (model, _) = jobs::solved(&job).expect("valid");
    let view = views::view(SHEET.0, SHEET.1, 0.0, system);
    let drawn = template_svgs(&model, &view);
    drawn
        .iter()
        .enumerate()
        .map(|(index, text)| {
            svg::keep(&format!("template, {along_m} × {across_m}, {hand}, {system}, {index}"), text);
            Drawing::read(text)
        })
        .collect()
}

/// Middles of the holes of a sheet, mm: of the crosses' two lines each.
fn holes(drawing: &Drawing) -> Vec<(f64, f64)> {
    let crosses: Vec<_> = drawing.lines_in(HOLE).filter(|line| line.len() == 2).collect();
    crosses
        .chunks(2)
        .map(|pair| {
            let points: Vec<_> = pair.iter().flat_map(|line| line.iter()).collect();
            let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(|point| of(point)).sum::<f64>() / 4.0 / PX_PER_MM;
            (mean(|point| point.0), mean(|point| point.1))
        })
        .collect()
}

/// Distances between all pairs, mm, the least first.
fn distances(holes: &[(f64, f64)]) -> Vec<f64> {
    let mut found: Vec<f64> = holes
        .iter()
        .enumerate()
        .flat_map(|(index, one)| holes[..index].iter().map(move |other| (one.0 - other.0).hypot(one.1 - other.1)))
        .collect();
    found.sort_by(f64::total_cmp);
    found
}

fn assert_rectangle(holes: &[(f64, f64)], along_mm: f64, across_mm: f64) {
    let (least, most) = (along_mm.min(across_mm), along_mm.max(across_mm));
    let wanted = [least, least, most, most, least.hypot(most), least.hypot(most)];
    let found = distances(holes);
    assert_eq!(found.len(), wanted.len(), "{holes:?}");
    for (found, wanted) in found.iter().zip(wanted) {
        // Drawn to a tenth of a pixel, 0.03 mm.
        assert!((found - wanted).abs() < 0.06, "{found} mm on paper, {wanted} mm in the job");
    }
}

#[test]
fn holes_are_as_far_apart_on_paper_as_in_the_pad() {
    for hand in ["right", "left"] {
        for system in ["metric", "us"] {
            let drawn = sheets(0.12, 0.08, hand, system);
            assert_eq!(drawn.len(), 1);
            assert_rectangle(&holes(&drawn[0]), 120.0, 80.0);
            for text in &drawn[0].texts {
                assert!(drawn[0].holds(text), "{text:?}");
            }
        }
    }
}

/// A left hand is the mirror image: seen from above, the numbers run the other way round.
#[test]
fn numbers_run_the_other_way_for_a_left_hand() {
    let area = |hand: &str| {
        let found = holes(&sheets(0.12, 0.08, hand, "metric")[0]);
        let next = found.iter().cycle().skip(1);
        found.iter().zip(next).map(|(one, other)| one.0 * other.1 - other.0 * one.1).sum::<f64>() / 2.0
    };
    let (right, left) = (area("right"), area("left"));
    assert!((right + left).abs() < 0.02 * right.abs(), "{right} mm², {left} mm²");
    assert!(right.abs() > 0.9 * 120.0 * 80.0);
}

/// What is longer than a sheet goes on over the next: laid edge to edge at their joints the sheets hold the whole rectangle once.
#[test]
fn a_long_base_is_joined_of_sheets() {
    let drawn = sheets(0.32, 0.1, "right", "metric");
    assert_eq!(drawn.len(), 2, "320 mm and its turn do not go on 206 mm");
    let joints = |drawing: &Drawing| -> Vec<f64> {
        let wide = drawing
            .lines_in(PLAIN)
            .filter(|line| line.first().is_some_and(|point| point.0 < 1.0) && line[0].1 == line[1].1);
        let mut heights: Vec<f64> = wide.map(|line| line[0].1).collect();
        heights.dedup();
        heights
    };
    let (first, second) = (joints(&drawn[0]), joints(&drawn[1]));
    let moved = (first.last().expect("a joint below") - second.first().expect("a joint above")) / PX_PER_MM;
    let below = holes(&drawn[1]).into_iter().map(|(x, y)| (x, y + moved));
    let all: Vec<_> = holes(&drawn[0]).into_iter().chain(below).collect();
    assert_rectangle(&all, 320.0, 100.0);
}

/// The proof of the print: a line between two ticks, 100 mm or 4 inches, with that length written on it.
#[test]
fn a_line_proves_the_print() {
    for (system, length_mm, text) in [("metric", 100.0, "100\u{a0}mm"), ("us", 101.6, "4\"")] {
        let drawn = sheets(0.12, 0.08, "right", system);
        assert!(drawn[0].texts.iter().any(|found| found.text == text), "{text}: {:?}", drawn[0].texts);
        let foot = SHEET.1 - 44.0;
        let found = drawn[0].lines_in(PLAIN).any(|line| {
            let [one, other] = line[..] else { return false };
            one.1 > foot && one.1 == other.1 && ((other.0 - one.0).abs() / PX_PER_MM - length_mm).abs() < 0.06
        });
        assert!(found, "no line of {length_mm} mm");
    }
}

#[test]
fn without_holes_or_room_there_is_none() {
    assert!(sheets(0.4, 0.3, "right", "metric").is_empty(), "300 mm is wider than any sheet");
    let (model, _) = jobs::solved(&jobs::usual()).expect("valid");
    assert!(template_svgs(&model, &views::view(SHEET.0, SHEET.1, 0.0, "metric")).is_empty(), "no holes are said");
}
