//! The drawing's scale and place on the surface: one scale for both axes, independent of the cursor and of any font.

use kurbo::{Affine, Insets, Point, Rect, Size, Vec2};

use super::{PlanView, around};

/// Scale and place of the plan view.
#[derive(Clone, Copy, Debug)]
pub struct Fit {
    /// From metres in the core's frame to px.
    pub to_surface: Affine,
    /// px per metre.
    pub scale: f64,
    /// How much of the leaf is drawn, m; less than its length where it is cut by a break line.
    pub leaf_m: f64,
    /// Whether the leaf is cut short.
    pub broken: bool,
}

/// Where the arm is looked at, it fills at least this part of the drawing, or the leaf is cut short.
const LEAST_ARM: f64 = 0.62;
/// What stands within this many lengths of the leaf from the hinge is on the surface.
const NEAR: f64 = 1.15;
/// Where the leaf is cut, as a multiple of the arm's reach from the hinge.
const CUT: f64 = 1.12;

impl Fit {
    /// Fits the whole swing into the surface, with room around it for dimensions and the scale bar.
    pub fn new(view: &PlanView, size: Size, text_size: f64) -> Fit {
        let insets = Insets::new(4.6 * text_size, 1.8 * text_size, 2.2 * text_size, 5.8 * text_size);
        // The shaft stands on the hinge's side, which the mirror moves to the right.
        let insets = if view.mirrored { Insets { x0: insets.x1, x1: insets.x0, ..insets } } else { insets };
        let inner = size.to_rect() - insets;
        let whole = Fit::of(view, inner, view.leaf_m, false);
        // A zone may be at the latch.
        let cut = CUT * view.reach_m();
        if !view.near || view.around.is_some() || cut >= view.leaf_m {
            return whole;
        }
        let fills =
            view.anchors.is_none() && view.reach_m() * whole.scale >= LEAST_ARM * inner.width().min(inner.height());
        if fills && view.standing.is_empty() { whole } else { Fit::of(view, inner, cut, true) }
    }

    fn of(view: &PlanView, inner: Rect, leaf_m: f64, broken: bool) -> Fit {
        let bounds = view.bounds(leaf_m);
        let scale = (inner.width() / bounds.width()).min(inner.height() / bounds.height());
        let (across, middle) = (if view.mirrored { -scale } else { scale }, bounds.center());
        let to_surface = Affine::translate(inner.center().to_vec2())
            * Affine::new([across, 0.0, 0.0, -scale, 0.0, 0.0])
            * Affine::translate(-middle.to_vec2());
        Fit { to_surface, scale, leaf_m, broken }
    }

    /// A point of the core's frame on the surface.
    pub fn at(&self, point: Point) -> Point {
        self.to_surface * point
    }

    /// A point on the leaf at a leaf angle, `along` metres from the hinge, on the surface.
    pub fn on_leaf(&self, leaf_rad: f64, along: f64) -> Point {
        self.at((along * Vec2::from_angle(leaf_rad)).to_point())
    }

    /// The leaf angle nearest to the direction of a px from the hinge, degrees, held inside the swing.
    pub fn leaf_deg_at(&self, px: Point, open_deg: f64) -> f64 {
        let direction = (self.to_surface.inverse() * px).to_vec2();
        let turned = direction.atan2().to_degrees().rem_euclid(360.0);
        // Outside the swing the nearer end counts; the far side is split in the middle.
        if turned <= open_deg {
            turned
        } else if turned - open_deg <= 360.0 - turned {
            open_deg
        } else {
            0.0
        }
    }
}

impl PlanView {
    /// The farthest of what is drawn of the arm from the hinge, m.
    fn reach_m(&self) -> f64 {
        let marked = [self.shaft, self.closed.elbow, self.closed.bracket];
        let swung = self.elbow_path.iter().filter(|_| self.anchors.is_none());
        swung.chain(&marked).map(|point| point.to_vec2().hypot()).fold(0.0, f64::max)
    }

    /// The smallest box around everything that is drawn, m.
    fn bounds(&self, leaf_m: f64) -> Rect {
        let arm = [self.shaft, self.closed.bracket, self.closed.elbow].into_iter().chain(self.body.iter().copied());
        if let Some(anchors) = &self.anchors {
            let tip = Point::new(leaf_m, 0.0);
            return arm
                .chain(anchors.iter().copied())
                .chain([tip])
                .fold(Rect::ZERO, |bounds, point| bounds.union_pt(point));
        }
        let steps = 36;
        let tips = (0..=steps).map(|step| {
            (leaf_m * Vec2::from_angle(self.open.leaf_rad * f64::from(step) / f64::from(steps))).to_point()
        });
        let all = tips.chain([self.open.bracket]).chain(self.elbow_path.iter().copied()).chain(arm);
        let moving = all.fold(Rect::ZERO, |bounds, point| bounds.union_pt(point));
        let swept = self.around.as_ref().map_or(Rect::ZERO, around::Around::bounds);
        moving.union(swept).union(around::near(&self.standing, NEAR * leaf_m))
    }
}
