//! Drawings on a real canvas: as large as the screen has dots, sharp, and found again under a finger.
#![cfg(target_arch = "wasm32")]

mod common;

use common::{calculation, faults, get, moving, set, view};
use pintle_web::Calculation;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

wasm_bindgen_test_configure!(run_in_browser);

const RATIOS: [f64; 4] = [1.0, 1.5, 2.0, 3.0];
const PAPER: [u8; 3] = [0xff, 0xff, 0xff];
const INK: [u8; 3] = [0x1a, 0x1a, 0x1a];
const CURSOR: [u8; 3] = [0x00, 0x77, 0x5a];
const LEAF: [u8; 3] = [0x33, 0x33, 0x88];

fn canvas() -> HtmlCanvasElement {
    let document = web_sys::window().and_then(|window| window.document()).expect("a page");
    document.create_element("canvas").expect("an element").unchecked_into()
}

fn with(ratio: f64, leaf_deg: f64) -> JsValue {
    let view = view();
    set(&view, "pixel_ratio", ratio);
    set(&view, "leaf_deg", leaf_deg);
    view
}

/// The dots of a canvas.
struct Dots {
    width: usize,
    rgba: Vec<u8>,
}

impl Dots {
    fn of(canvas: &HtmlCanvasElement) -> Dots {
        let context: CanvasRenderingContext2d =
            canvas.get_context("2d").expect("2d").expect("a context").unchecked_into();
        let (width, height) = (canvas.width(), canvas.height());
        let image = context.get_image_data(0.0, 0.0, width.into(), height.into()).expect("its own canvas");
        Dots { width: width as usize, rgba: image.data().0 }
    }

    /// Column and row of every dot of exactly this colour.
    fn places(&self, colour: [u8; 3]) -> Vec<(usize, usize)> {
        let dots = self.rgba.chunks_exact(4).enumerate();
        dots.filter(|(_, dot)| dot[..3] == colour).map(|(index, _)| (index % self.width, index / self.width)).collect()
    }
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

#[wasm_bindgen_test]
fn backing_size_is_css_size_times_density() {
    let calculation = calculation();
    for ratio in RATIOS {
        let (curve, plan) = (canvas(), canvas());
        calculation.draw_curve(curve.clone(), with(ratio, 60.0)).expect("drawn");
        calculation.draw_plan_view(plan.clone(), with(ratio, 60.0)).expect("drawn");
        for canvas in [curve, plan] {
            assert_eq!(f64::from(canvas.width()), 328.0 * ratio);
            assert_eq!(f64::from(canvas.height()), 300.0 * ratio);
            let dots = Dots::of(&canvas);
            let paper = dots.places(PAPER).len();
            let all = dots.rgba.len() / 4;
            assert!(paper > all / 2 && paper < all * 99 / 100, "{paper} of {all} dots are blank at {ratio}");
        }
    }
}

/// A level axis fills its dots wholly: its row has the exact ink along the plot, and the rows next to it have none of it.
#[wasm_bindgen_test]
fn lines_are_sharp_at_every_density() {
    let calculation = calculation();
    for ratio in RATIOS {
        let canvas = canvas();
        let area = calculation.draw_curve(canvas.clone(), with(ratio, 60.0)).expect("drawn");
        let number = |name| get(&area, name).as_f64().expect("a number");
        let dots = Dots::of(&canvas);
        let axis_y = (number("top") + number("height")) * ratio;
        let mut rows: Vec<usize> = dots.places(INK).into_iter().map(|(_, row)| row).collect();
        rows.retain(|row| (*row as f64 - axis_y).abs() <= 2.0 + ratio);
        let full =
            |row: &usize| rows.iter().filter(|other| *other == row).count() as f64 > 0.9 * number("width") * ratio;
        let mut axis: Vec<usize> = rows.iter().copied().filter(full).collect();
        axis.dedup();
        assert_eq!(axis.len() as f64, ratio.round(), "the axis is whole dots thick at {ratio}");
    }
}

#[wasm_bindgen_test]
fn a_finger_on_the_cursor_finds_its_angle() {
    let calculation = calculation();
    for ratio in RATIOS {
        for leaf_deg in [5.0, 33.0, 60.0, 88.0] {
            let view = with(ratio, leaf_deg);
            let curve = canvas();
            calculation.draw_curve(curve.clone(), view.clone()).expect("drawn");
            let found = Dots::of(&curve).places(CURSOR).into_iter().map(|(column, _)| (column as f64 + 0.5) / ratio);
            let found = calculation.leaf_deg_at_curve(median(found.collect()), 150.0, view.clone()).expect("an angle");
            // A px of the plot is about a third of a degree.
            assert!((found - leaf_deg).abs() < 0.4, "curve at {ratio}: {found} for {leaf_deg}");

            let plan = canvas();
            calculation.draw_plan_view(plan.clone(), view.clone()).expect("drawn");
            let angles = Dots::of(&plan).places(LEAF).into_iter().map(|(column, row)| {
                let (x, y) = ((column as f64 + 0.5) / ratio, (row as f64 + 0.5) / ratio);
                calculation.leaf_deg_at_plan_view(x, y, view.clone()).expect("an angle")
            });
            let found = median(angles.collect());
            assert!((found - leaf_deg).abs() < 1.5, "plan view at {ratio}: {found} for {leaf_deg}");
        }
    }
}

/// The time plot fills its canvas, its cursor is found under a finger in every run, and what the run says there is what was drawn from.
#[wasm_bindgen_test]
fn the_time_plot_is_drawn_and_found_again() {
    let calculation = Calculation::new(moving()).expect("valid");
    for (ratio, run) in RATIOS.into_iter().zip(["opening", "closing", "motor_opening", "motor_closing"]) {
        let canvas = canvas();
        let view = with(ratio, 40.0);
        set(&view, "run", run);
        calculation.draw_time(canvas.clone(), view.clone()).expect("drawn");
        assert_eq!(f64::from(canvas.width()), 328.0 * ratio);
        let dots = Dots::of(&canvas);
        let found = dots.places(CURSOR).into_iter().map(|(column, _)| (column as f64 + 0.5) / ratio);
        let found = calculation.leaf_deg_at_time(median(found.collect()), 0.0, view).expect("a view").expect("a run");
        // A px of the plot is a sixteenth of a second, in which the leaf turns half a degree.
        assert!((found - 40.0).abs() < 0.6, "{run} at {ratio}: {found}");
        let there = calculation.run_of_leaf(run, 40.0).expect("encodes");
        let again = calculation.run_at(run, get(&there, "time_s").as_f64().expect("a number")).expect("encodes");
        assert!((get(&again, "leaf_deg").as_f64().expect("a number") - 40.0).abs() < 1e-6);
    }
    for (name, time_s) in [("opening", f64::NAN), ("closing", f64::INFINITY)] {
        let thrown = calculation.run_at(name, time_s).expect_err("no time");
        assert_eq!(faults(&thrown), [("time_s".into(), "wrong_type".into())]);
    }
    assert!(calculation.run_at("backwards", 1.0).expect("encodes").is_null());
}

/// Without a motion there is no run to draw, follow or find.
#[wasm_bindgen_test]
fn without_a_motion_the_time_plot_is_blank() {
    let (calculation, canvas) = (calculation(), canvas());
    calculation.draw_time(canvas.clone(), with(1.0, 40.0)).expect("drawn");
    let dots = Dots::of(&canvas);
    assert_eq!(dots.places(PAPER).len(), dots.rgba.len() / 4);
    assert!(calculation.run_of_leaf("opening", 40.0).expect("encodes").is_null());
    assert_eq!(calculation.leaf_deg_at_time(100.0, 0.0, view()).expect("a view"), None);
}

#[wasm_bindgen_test]
fn angles_stay_inside_the_swing() {
    let calculation = calculation();
    for (x, y) in [(-1e6, 0.0), (1e6, 0.0), (0.0, 1e6), (0.0, -1e6), (164.0, 150.0)] {
        let curve = calculation.leaf_deg_at_curve(x, y, view()).expect("an angle");
        let plan = calculation.leaf_deg_at_plan_view(x, y, view()).expect("an angle");
        assert!((0.0..=90.0).contains(&curve) && (0.0..=90.0).contains(&plan));
    }
}

#[wasm_bindgen_test]
fn a_wrong_view_is_refused() {
    let calculation = calculation();
    for (path, bad, code) in [
        ("width", JsValue::from(f64::NAN), "wrong_type"),
        ("height", JsValue::from(0), "out_of_range"),
        ("pixel_ratio", JsValue::from(0), "out_of_range"),
        ("leaf_deg", JsValue::from(f64::NAN), "wrong_type"),
        ("system", JsValue::from("furlongs"), "not_one_of"),
        ("palette", JsValue::NULL, "missing"),
        ("palette.ink", JsValue::from("black"), "wrong_type"),
        ("labels.crank", JsValue::UNDEFINED, "missing"),
        ("zones", JsValue::from(1), "wrong_type"),
        ("overrun", JsValue::UNDEFINED, "missing"),
        ("run", JsValue::from("backwards"), "not_one_of"),
        ("colour", JsValue::from("#ffffff"), "unknown_field"),
    ] {
        let view = view();
        set(&view, path, bad);
        let thrown = calculation.draw_curve(canvas(), view).expect_err(path);
        assert!(faults(&thrown).contains(&(format!("view.{path}"), code.into())), "{path}: {:?}", faults(&thrown));
    }
}

#[wasm_bindgen_test]
fn the_same_drawing_as_svg() {
    let calculation = calculation();
    let moving = Calculation::new(moving()).expect("valid");
    for text in [calculation.curve_svg(view()), calculation.plan_view_svg(view()), moving.time_svg(view())] {
        let text = text.expect("drawn");
        assert!(text.starts_with("<svg ") && text.trim_end().ends_with("</svg>"));
        assert!(text.contains("viewBox=\"0 0 3280 3000\""));
        assert!(!text.contains("style="), "the page's policy refuses inline styles");
    }
}
