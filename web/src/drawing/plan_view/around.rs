//! What surrounds the leaf, in the core's frame: zones, the ground the elbow sweeps, what stands there.

use kurbo::{Point, Rect, Size};
use pintle_core::{
    job::Obstacle,
    plan::{Model, Plan},
    safety::Zone,
};

/// What surrounds the leaf, in the core's frame.
#[derive(Clone, Debug)]
pub struct Around {
    /// Zones, in the plan's order.
    pub zones: Vec<Zone>,
    /// Outline of what the elbow sweeps, m.
    pub sweep: Vec<Point>,
}

/// Post and obstacles, m: everything that checks look at stands on the surface.
pub fn standing(model: &Model) -> Vec<Rect> {
    let job = model.job();
    job.standing().map(|(_, Obstacle { x_m: [x0, x1], y_m: [y0, y1], .. })| Rect::new(*x0, *y0, *x1, *y1)).collect()
}

impl Around {
    /// Reads it off a solved job.
    pub fn new(model: &Model, plan: &Plan) -> Around {
        Around {
            zones: plan.entrapment.as_ref().map_or_else(Vec::new, |entrapment| entrapment.zones.clone()),
            sweep: model.swept().outline.into_iter().map(|[x, y]| Point::new(x, y)).collect(),
        }
    }

    /// The ground that is swept, m.
    pub fn bounds(&self) -> Rect {
        self.sweep.iter().fold(Rect::ZERO, |bounds, point| bounds.union_pt(*point))
    }
}

/// What of things that stand around is to be on the surface beside what moves: all within a reach of the hinge, m.
pub fn near(standing: &[Rect], reach_m: f64) -> Rect {
    let near = Rect::from_center_size(Point::ZERO, Size::new(2.0 * reach_m, 2.0 * reach_m));
    let seen = standing.iter().map(|rectangle| rectangle.intersect(near)).filter(|seen| seen.area() > 0.0);
    seen.fold(Rect::ZERO, |bounds, rectangle| bounds.union(rectangle))
}
