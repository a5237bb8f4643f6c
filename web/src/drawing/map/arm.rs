//! The arm of the place looked at, over the map: closed in full, open dashed, cut off at the frame.

use kurbo::{Point, Rect, Vec2};
use pintle_core::arm::Linkage;

use super::PadPicture;
use super::fit::Fit;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::surface::Surface;

/// Draws leaf and arm closed and open, and the operator's body that crank and link pass over.
pub(super) fn draw(surface: &mut Surface<'_>, map: &PadPicture, fit: &Fit) {
    let Some(arm) = &map.arm else { return };
    let linkage = Linkage::new(arm, map.open_rad);
    if let Some(body) = &map.body {
        let corners = body.corners_m(&linkage, map.turn_rad).map(|corner| fit.at(Point::from(corner)));
        for (index, from) in corners.into_iter().enumerate() {
            if let Some(seen) = clipped(fit.frame, [from, corners[(index + 1) % 4]]) {
                surface.line(&seen, Pen::thin(Ink::Cursor, Dash::Solid));
            }
        }
    }
    let pens = |dash: Dash| (Pen::thin(Ink::Leaf, dash), Pen::thick(Ink::Cursor, dash));
    for (leaf_rad, (leaf, thick)) in [(map.open_rad, pens(Dash::Dashed)), (0.0, pens(Dash::Solid))] {
        let pose = linkage.pose(leaf_rad);
        let tip = Vec2::from_angle(leaf_rad) * map.leaf_m;
        let joints = [linkage.shaft, pose.elbow, pose.bracket].map(|joint| fit.at(joint));
        for (ends, pen) in [
            ([fit.at(Point::ZERO), fit.at(tip.to_point())], leaf),
            ([joints[0], joints[1]], thick),
            ([joints[1], joints[2]], thick),
        ] {
            if let Some(seen) = clipped(fit.frame, ends) {
                surface.line(&seen, pen);
            }
        }
        for joint in joints.into_iter().filter(|joint| fit.frame.contains(*joint)) {
            surface.ring(joint, 2.5, Pen::thin(Ink::Cursor, Dash::Solid));
        }
    }
}

/// The part of a line inside a frame, by clipping against its four sides.
///
/// Source: Liang and Barsky (1984), from memory.
fn clipped(frame: Rect, [from, to]: [Point; 2]) -> Option<[Point; 2]> {
    let way = to - from;
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (slope, room) in [
        (-way.x, from.x - frame.x0),
        (way.x, frame.x1 - from.x),
        (-way.y, from.y - frame.y0),
        (way.y, frame.y1 - from.y),
    ] {
        if slope == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if slope < 0.0 {
            enters = enters.max(room / slope);
        } else {
            leaves = leaves.min(room / slope);
        }
    }
    (enters < leaves).then(|| [from + way * enters, from + way * leaves])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_cut_off_at_the_frame() {
        let frame = Rect::new(0.0, 0.0, 10.0, 10.0);
        let line = |from: (f64, f64), to: (f64, f64)| clipped(frame, [from.into(), to.into()]);
        assert_eq!(line((2.0, 3.0), (4.0, 5.0)), Some([Point::new(2.0, 3.0), Point::new(4.0, 5.0)]));
        assert_eq!(line((-5.0, 5.0), (15.0, 5.0)), Some([Point::new(0.0, 5.0), Point::new(10.0, 5.0)]));
        assert_eq!(line((5.0, 5.0), (5.0, 25.0)), Some([Point::new(5.0, 5.0), Point::new(5.0, 10.0)]));
        assert_eq!(line((-5.0, 8.0), (2.0, 15.0)), None);
        assert_eq!(line((11.0, 0.0), (11.0, 9.0)), None);
    }
}
