//! The plan view, back to front: paths and other positions, the position at the cursor, dimensions, names.

use kurbo::{Point, Rect};
use pintle_core::units::{Quantity, mark, show};

use super::dimension::{Linear, angular};
use super::{Fit, PlanView, marks, parts, scale_bar, zones};
use crate::drawing::datum::Datum;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around};
use crate::drawing::surface::Surface;
use crate::drawing::view::View;

/// Draws the plan view on an empty surface.
pub fn draw(surface: &mut Surface<'_>, plan: &PlanView, fit: &Fit, view: &View) {
    let mut places = Places::new(surface.frame().inset(-1.0));
    scale_bar::draw(surface, &mut places, fit, view.system);

    if let Some(around) = &plan.around {
        zones::ground(surface, around, fit);
    }
    zones::solid(surface, &plan.standing, fit);
    zones::body(surface, &plan.body, fit);
    if plan.anchors.is_none() {
        let path: Vec<_> = plan.elbow_path.iter().map(|point| fit.at(*point)).collect();
        surface.line(&path, Pen::thin(Ink::Faint, Dash::Chain));
        let other = Pen::thin(Ink::Faint, Dash::DoubleChain);
        for position in [&plan.closed, &plan.open] {
            parts::position(surface, &mut places, fit, plan, position, (other, other), 1.0);
        }
    }
    let datum = datum(surface, plan, fit);
    datum.draw(surface, &mut places);
    parts::centre_lines(surface, &mut places, fit, plan);
    let pens = (Pen::thick(Ink::Leaf, Dash::Solid), Pen::thick(Ink::Plain, Dash::Solid));
    parts::position(surface, &mut places, fit, plan, &plan.cursor, pens, 4.0);
    if fit.broken {
        parts::break_line(surface, fit, plan.cursor.leaf_rad);
    }

    // Either where people are caught or how it is set out: both at once nobody reads.
    if let Some(around) = &plan.around {
        zones::marks(surface, &mut places, around, fit, plan.cursor.leaf_rad.to_degrees(), view);
    } else if let Some(anchors) = &plan.anchors {
        marks::draw(surface, &mut places, anchors, fit);
        set_out(surface, &mut places, plan, fit, view);
        members(surface, &mut places, plan, fit, view);
    } else {
        set_out(surface, &mut places, plan, fit, view);
        swing(surface, &mut places, plan, fit, view);
        members(surface, &mut places, plan, fit, view);
    }
    names(surface, &mut places, plan, fit, view);
    datum.name(surface, &mut places, &view.labels);
    parts::pins(surface, fit, plan);
}

/// Axis line and hinge line, past all that is set out from them and short of the scale bar.
fn datum(surface: &Surface<'_>, plan: &PlanView, fit: &Fit) -> Datum {
    let (hinge, room) = (fit.at(Point::ZERO), 0.6 * surface.text_size);
    let frame = surface.frame().inset(-room);
    let lowest = hinge.y.max(fit.at(plan.shaft).y).max(fit.at(plan.closed.bracket).y) + 2.0 * surface.text_size;
    let frame = Rect { y1: lowest.min(frame.y1), ..frame };
    let face_y = plan.face_m.map(|face_m| fit.at(Point::new(0.0, face_m)).y);
    Datum::new(hinge, frame, fit.on_leaf(0.0, fit.leaf_m), face_y)
}

fn short(metres: f64, view: &View) -> String {
    mark(metres, view.system)
}

/// Shaft offsets from the hinge, the bracket's distance along the closed leaf and how far its pin stands proud of it.
fn set_out(surface: &mut Surface<'_>, places: &mut Places, plan: &PlanView, fit: &Fit, view: &View) {
    let (hinge, shaft) = (fit.at(Point::ZERO), fit.at(plan.shaft));
    let row = 1.7 * surface.text_size;
    let lowest = hinge.y.max(shaft.y) + 1.5 * row;
    let bracket = fit.at(plan.closed.bracket);
    let on_leaf = Point::new(bracket.x, hinge.y);
    // Offsets on one side of the hinge would lie over each other in one row.
    let same_side = (shaft.x - hinge.x) * (bracket.x - hinge.x) > 0.0;
    let second = if same_side { lowest + row } else { lowest };
    Linear::level([hinge, on_leaf], lowest.max(bracket.y + row)).draw(
        surface,
        places,
        &short(plan.bracket_u_m.abs(), view),
    );
    Linear::level([shaft, hinge], second).draw(surface, places, &short(plan.shaft.x.abs(), view));
    let outside = if plan.mirrored { 1.0 } else { -1.0 };
    let outermost = if plan.mirrored { hinge.x.max(shaft.x) } else { hinge.x.min(shaft.x) };
    let upright = Linear::upright([hinge, shaft], outermost + outside * 2.2 * row);
    upright.draw(surface, places, &short(plan.shaft.y.abs(), view));
    // Beside the bracket, towards the latch.
    let proud = Linear::upright([on_leaf, bracket], bracket.x - outside * row);
    proud.draw(surface, places, &short(plan.bracket_v_m.abs(), view));
}

/// The opening angle, near the end of the leaf.
fn swing(surface: &mut Surface<'_>, places: &mut Places, plan: &PlanView, fit: &Fit, view: &View) {
    let text = show(plan.open.leaf_rad.to_degrees(), Quantity::Angle, view.system);
    // Upwards on the surface is a negative angle; the mirror starts from the left.
    let on_sheet = |leaf_rad: f64| if plan.mirrored { std::f64::consts::PI + leaf_rad } else { -leaf_rad };
    let angles = [on_sheet(0.0), on_sheet(plan.open.leaf_rad)];
    let radius = fit.leaf_m * fit.scale * 0.93;
    angular(surface, places, fit.at(Point::ZERO), radius, angles, &text);
}

/// Lengths of crank and link, along them, on the side where there is room.
fn members(surface: &mut Surface<'_>, places: &mut Places, plan: &PlanView, fit: &Fit, view: &View) {
    let (shaft, elbow, bracket) = (fit.at(plan.shaft), fit.at(plan.cursor.elbow), fit.at(plan.cursor.bracket));
    for (ends, length_m, name, inner) in [
        ([shaft, elbow], plan.crank_m, &view.labels.crank, bracket),
        ([elbow, bracket], plan.link_m, &view.labels.link, shaft),
    ] {
        let text = format!("{name} {}", short(length_m, view));
        let size = surface.text_box(&text);
        // Away from the other member first.
        let along = ends[1] - ends[0];
        let away = if along.cross(inner - ends[0]) > 0.0 { -1.0 } else { 1.0 };
        let offsets = [1.6, -1.6, 2.4, -2.4, 3.4, -3.4].map(|step| away * step * surface.text_size);
        let dimensions = offsets.map(|offset| Linear::aligned(ends, offset));
        let chosen = dimensions.iter().find(|dimension| dimension.is_free(places, size)).unwrap_or(&dimensions[0]);
        chosen.draw(surface, places, &text);
    }
}

/// Names of pins and positions, and the angle at the cursor.
fn names(surface: &mut Surface<'_>, places: &mut Places, plan: &PlanView, fit: &Fit, view: &View) {
    let end = |leaf_rad: f64| fit.on_leaf(leaf_rad, fit.leaf_m);
    let cursor = show(plan.cursor.leaf_rad.to_degrees(), Quantity::Angle, view.system);
    let labels = &view.labels;
    let at_pin = 10.0;
    let at_end = 8.0;
    // Marked out is with the leaf closed, whatever is looked at elsewhere.
    let of_swing = plan.anchors.is_none();
    for (text, at, distance, ink, shown) in [
        (&cursor, end(plan.cursor.leaf_rad), at_end, Ink::Cursor, of_swing),
        (&labels.shaft, fit.at(plan.shaft), at_pin, Ink::Plain, true),
        (&labels.hinge, fit.at(Point::ZERO), at_pin, Ink::Plain, true),
        (&labels.closed, end(0.0), at_end, Ink::Plain, true),
        (&labels.open, end(plan.open.leaf_rad), at_end, Ink::Plain, of_swing),
    ] {
        if !shown {
            continue;
        }
        let size = surface.text_box(text);
        if let Some(area) = places.best(&around(at, size, distance)) {
            surface.text(text, area, ink);
        }
    }
}
