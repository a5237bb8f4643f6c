//! Two operators on one curve: the part of its rated torque that each is asked for.

use pintle_web::drawing::pair_svg;
use serde_json::json;

use crate::jobs;
use crate::svg::{self, Drawing};
use crate::views;

/// Inks of the two lines in the view that draws.
const INKS: [&str; 2] = ["#a0467f", "#857400"];
const SIZES: [(f64, f64); 2] = [(328.0, 260.0), (600.0, 260.0)];

/// The usual job's operator, and one of twice its torque in its place. Invented.
fn drawn(width: f64, height: f64) -> Drawing {
    let twice =
        jobs::changed(&[("/operator/rated_torque_n_m", json!(800)), ("/operator/peak_torque_n_m", json!(1300))]);
    let [(one, _), (other, _)] = [jobs::usual(), twice].map(|job| jobs::solved(&job).expect("valid"));
    let view = views::view(width, height, 0.0, "metric");
    let text = pair_svg([&one, &other], ["first", "second"], &view);
    svg::keep(&format!("pair, {width}×{height}"), &text);
    Drawing::read(&text)
}

/// px of a percent, from the numbers of the axis.
fn scale(drawing: &Drawing) -> (f64, f64) {
    let height = |text: &str| drawing.texts.iter().find(|found| found.text == text).map(svg::Text::middle_y);
    let zero = height("0").expect("a number at the foot");
    let hundred = height("100").expect("a number at the rated torque");
    (zero, (zero - hundred) / 100.0)
}

/// The usual job asks for 308.27 N·m at most (contract), of 400 N·m and of 800.
#[test]
fn each_is_drawn_at_its_own_part() {
    for (width, height) in SIZES {
        let drawing = drawn(width, height);
        let (zero, per_percent) = scale(&drawing);
        for (ink, rated_n_m) in INKS.into_iter().zip([400.0, 800.0]) {
            let top = drawing.points_in(ink).into_iter().map(|point| point.1).fold(f64::INFINITY, f64::min);
            let found = (zero - top) / per_percent;
            let wanted = 100.0 * 308.27 / rated_n_m;
            assert!((found - wanted).abs() < 1.0, "{ink} at {found} %, {wanted} % is asked for");
        }
    }
}

#[test]
fn names_stand_at_the_lines_and_nothing_overlaps() {
    for (width, height) in SIZES {
        let drawing = drawn(width, height);
        for name in ["first", "second", "rated"] {
            assert!(drawing.texts.iter().any(|text| text.text == name), "{name}: {:?}", drawing.texts);
        }
        for (index, text) in drawing.texts.iter().enumerate() {
            assert!(drawing.holds(text), "{text:?} leaves the sheet");
            assert!(drawing.texts[..index].iter().all(|other| !text.overlaps(other)), "{text:?}");
        }
    }
}
