//! The plan view to scale: leaf and arm closed, open and at the cursor, with the dimensions that set it out.

mod around;
mod dimension;
mod draw;
mod fit;
pub mod marks;
mod parts;
mod scale_bar;
mod zones;

pub use draw::draw;
pub use fit::Fit;

use kurbo::{Point, Rect};
use pintle_core::{
    job::Hand,
    plan::{Model, Plan},
};

use super::view::View;

/// Leaf and arm at one leaf angle, in the core's frame, m.
#[derive(Clone, Copy, Debug)]
pub struct Position {
    /// Leaf angle, rad.
    pub leaf_rad: f64,
    /// Elbow.
    pub elbow: Point,
    /// Bracket pin.
    pub bracket: Point,
}

/// What the plan view shows, in the core's frame, m and rad.
#[derive(Clone, Debug)]
pub struct PlanView {
    /// Hinge at the left of a person on the opening side: the drawing is mirrored, its text never.
    pub mirrored: bool,
    /// Hinge axis to latch edge.
    pub leaf_m: f64,
    /// The operator's shaft.
    pub shaft: Point,
    /// Height of the leaf's face from the axis line, where it is said.
    pub face_m: Option<f64>,
    /// Bracket along the leaf.
    pub bracket_u_m: f64,
    /// Bracket pin proud of the leaf's line.
    pub bracket_v_m: f64,
    /// Crank.
    pub crank_m: f64,
    /// Link.
    pub link_m: f64,
    /// Closed.
    pub closed: Position,
    /// At the cursor.
    pub cursor: Position,
    /// Open.
    pub open: Position,
    /// The elbow through the swing.
    pub elbow_path: Vec<Point>,
    /// What stands around.
    pub standing: Vec<Rect>,
    /// Corners of the operator's body; none where its size is not known.
    pub body: Vec<Point>,
    /// Zones, where they are wanted.
    pub around: Option<around::Around>,
    /// Anchor holes, where it is marked out; then nothing but the closed arm is drawn.
    pub anchors: Option<Vec<Point>>,
    /// Whether the arm is looked at, not all of the gate.
    pub near: bool,
}

/// Points of the elbow's path.
const POINTS: u32 = 120;

impl PlanView {
    /// Reads the set-out off a solved job; the cursor is held inside the swing.
    pub fn new(model: &Model, plan: &Plan, view: &View) -> PlanView {
        let (job, arm) = (model.job(), model.arm());
        let open_rad = job.open_rad();
        let position = |leaf_rad: f64| {
            let pose = model.linkage().pose(leaf_rad);
            Position { leaf_rad, elbow: pose.elbow, bracket: pose.bracket }
        };
        PlanView {
            mirrored: job.hand == Some(Hand::Left),
            leaf_m: job.leaf.length_m,
            shaft: Point::new(arm.shaft_x_m, arm.shaft_y_m),
            face_m: job.leaf.face_m,
            bracket_u_m: arm.bracket_u_m,
            bracket_v_m: arm.bracket_v_m,
            crank_m: arm.crank_m,
            link_m: arm.link_m,
            closed: position(0.0),
            cursor: position(if view.marks { 0.0 } else { view.leaf_deg.to_radians().clamp(0.0, open_rad) }),
            open: position(open_rad),
            elbow_path: (0..=POINTS)
                .map(|step| position(open_rad * f64::from(step) / f64::from(POINTS)).elbow)
                .collect(),
            standing: around::standing(model),
            body: model.operator_corners_m().into_iter().flatten().map(Point::from).collect(),
            around: view.zones.then(|| around::Around::new(model, plan)),
            anchors: (view.marks && !view.zones).then(|| marks::anchors(model)),
            near: view.near(),
        }
    }
}
