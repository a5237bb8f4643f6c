//! What is built: leaf, bracket, arm, pins, and their centre lines.

use kurbo::{Point, Vec2};

use super::{Fit, PlanView, Position};
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::Places;
use crate::drawing::surface::Surface;

/// Radii of pins, px: not to scale, their size is not known.
const PIN: f64 = 3.5;
const SHAFT: f64 = 5.0;
/// How far a centre line runs past a pin, px.
const CROSS: f64 = 15.0;

/// Leaf, bracket and arm in one position; `pens` of the leaf and the arm.
pub fn position(
    surface: &mut Surface<'_>,
    places: &mut Places,
    fit: &Fit,
    view: &PlanView,
    at: &Position,
    pens: (Pen, Pen),
    cost: f64,
) {
    let hinge = fit.at(Point::ZERO);
    let leaf = [hinge, fit.on_leaf(at.leaf_rad, fit.leaf_m)];
    let bracket = [fit.on_leaf(at.leaf_rad, view.bracket_u_m), fit.at(at.bracket)];
    let arm = [fit.at(view.shaft), fit.at(at.elbow), fit.at(at.bracket)];
    for (points, pen) in [(&leaf[..], pens.0), (&bracket[..], pens.0), (&arm[..], pens.1)] {
        surface.line(points, pen);
        places.avoid(points, cost);
    }
}

/// The break line across the end of a leaf that is cut short: a narrow line with a zigzag (ISO 128-2, 01.1, from memory).
pub fn break_line(surface: &mut Surface<'_>, fit: &Fit, leaf_rad: f64) {
    let end = fit.on_leaf(leaf_rad, fit.leaf_m);
    let along = (end - fit.at(Point::ZERO)).normalize();
    let across = Vec2::new(-along.y, along.x);
    let corners = [(-11.0, 0.0), (-3.0, 0.0), (-1.5, 4.0), (1.5, -4.0), (3.0, 0.0), (11.0, 0.0)];
    surface.line(&corners.map(|(side, ahead)| end + across * side + along * ahead), Pen::thin(Ink::Leaf, Dash::Solid));
}

/// Pins of the position at the cursor, over the lines they join.
pub fn pins(surface: &mut Surface<'_>, fit: &Fit, view: &PlanView) {
    let pen = Pen::thick(Ink::Plain, Dash::Solid);
    for at in [view.cursor.elbow, view.cursor.bracket] {
        surface.ring(fit.at(at), PIN, pen);
    }
    surface.ring(fit.at(Point::ZERO), PIN, Pen::thick(Ink::Leaf, Dash::Solid));
    surface.ring(fit.at(view.shaft), SHAFT, pen);
    surface.dot(fit.at(view.shaft), 1.5, Ink::Plain);
}

/// Centre lines through the shaft; those of the hinge are the datum.
pub fn centre_lines(surface: &mut Surface<'_>, places: &mut Places, fit: &Fit, view: &PlanView) {
    let centre = fit.at(view.shaft);
    for arm in [Vec2::new(CROSS, 0.0), Vec2::new(0.0, CROSS)] {
        // From the middle outwards, so that dashes cross in the centre.
        for end in [centre + arm, centre - arm] {
            surface.line(&[centre, end], Pen::thin(Ink::Plain, Dash::Chain));
        }
        places.avoid(&[centre - arm, centre + arm], 0.5);
    }
}
