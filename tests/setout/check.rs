//! Every limit of a set-out, checked on an answer by dense sampling: written apart from the search, from the four-bar's law of cosines and
//! plain distances, so that the two can only agree by being right.

use pintle_core::job::{Arm, Elbow, Job, KeepOut, SetOut};

/// Leaf angles looked at.
const ANGLES: usize = 4001;

/// The arm at one leaf angle: bracket, elbow, unit vector of the link, all from two angles of the triangle shaft–elbow–bracket.
struct Pose {
    bracket: [f64; 2],
    elbow: [f64; 2],
    link: [f64; 2],
    crank_rad: f64,
}

fn pose(arm: &Arm, leaf_rad: f64) -> Pose {
    let (sine, cosine) = leaf_rad.sin_cos();
    let (u, v) = (arm.bracket_u_m, arm.bracket_v_m);
    let bracket = [u * cosine - v * sine, u * sine + v * cosine];
    let (dx, dy) = (bracket[0] - arm.shaft_x_m, bracket[1] - arm.shaft_y_m);
    let d = dx.hypot(dy);
    let at_shaft = (arm.crank_m.powi(2) + d * d - arm.link_m.powi(2)) / (2.0 * arm.crank_m * d);
    let side = if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
    let crank_rad = dy.atan2(dx) + side * at_shaft.clamp(-1.0, 1.0).acos();
    let elbow = [arm.shaft_x_m + arm.crank_m * crank_rad.cos(), arm.shaft_y_m + arm.crank_m * crank_rad.sin()];
    let link = [(bracket[0] - elbow[0]) / arm.link_m, (bracket[1] - elbow[1]) / arm.link_m];
    Pose { bracket, elbow, link, crank_rad }
}

/// Every limit the arm exceeds by more than `allowed`, in metres, radians or plain numbers.
pub fn exceeded(job: &Job, setout: &SetOut, arm: &Arm, allowed: f64) -> Vec<String> {
    let mut broken = Vec::new();
    let mut hold = |what: &str, excess: f64| {
        // An excess that is no number is one.
        if excess.is_nan() || excess > allowed {
            broken.push(format!("{what} by {excess:e}"));
        }
    };
    let mut within = |what: &str, value: f64, [least, most]: [f64; 2]| hold(what, (least - value).max(value - most));
    within("shaft_x_m", arm.shaft_x_m, setout.shaft_x_m);
    within("shaft_y_m", arm.shaft_y_m, setout.shaft_y_m);
    within("bracket_u_m", arm.bracket_u_m, setout.bracket_u_m);
    within("bracket_v_m", arm.bracket_v_m, [setout.bracket_v_m; 2]);
    within("crank_m", arm.crank_m, setout.crank_m);
    within("link_m", arm.link_m, setout.link_m);
    let closed = (arm.bracket_u_m - arm.shaft_x_m).hypot(arm.bracket_v_m - arm.shaft_y_m);
    within("straightness", closed / (arm.crank_m + arm.link_m), setout.straightness());
    if !setout.elbows().contains(&arm.elbow) {
        hold("elbow", 1.0);
    }
    if let Some(step) = setout.step_m {
        for value in [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, arm.link_m] {
            hold("step_m", (value / step - (value / step).round()).abs() * step);
        }
    }
    let open_rad = job.open_rad();
    let poses: Vec<(f64, Pose)> = (0..ANGLES)
        .map(|index| open_rad * index as f64 / (ANGLES - 1) as f64)
        .map(|leaf_rad| (leaf_rad, pose(arm, leaf_rad)))
        .collect();
    let last = &poses[ANGLES - 1].1;
    let along_leaf = last.link[0] * open_rad.cos() + last.link[1] * open_rad.sin();
    hold("square_deg", along_leaf.clamp(-1.0, 1.0).asin().abs() - setout.square().to_radians());
    let mut turned = 0.0;
    for pair in poses.windows(2) {
        let step = pair[1].1.crank_rad - pair[0].1.crank_rad;
        turned += step - (step / std::f64::consts::TAU).round() * std::f64::consts::TAU;
    }
    hold("shaft_travel_deg", turned.abs() - setout.shaft_travel().to_radians());
    let mut sense = 0.0;
    for (leaf_rad, pose) in &poses {
        let reach = (pose.bracket[0] - arm.shaft_x_m).hypot(pose.bracket[1] - arm.shaft_y_m);
        hold("assembly", (reach - arm.crank_m - arm.link_m).max((arm.crank_m - arm.link_m).abs() - reach));
        let lever = pose.bracket[0] * pose.link[1] - pose.bracket[1] * pose.link[0];
        if sense * lever < 0.0 || lever == 0.0 {
            hold("turning back", f64::INFINITY);
        }
        sense = lever.signum();
        if *leaf_rad >= 0.1 * open_rad {
            hold("least_lever_m", setout.least_lever() - lever.abs());
        }
        let shaft = [arm.shaft_x_m, arm.shaft_y_m];
        for rectangle in &job.arm_keeps_out_of() {
            for (from, to) in [(shaft, pose.elbow), (pose.elbow, pose.bracket)] {
                hold("keep_out", job.arm_half_width() - distance(rectangle, from, to));
            }
        }
    }
    broken
}

/// Distance of a segment from a rectangle; where they cross, minus the deepest any of its points lies inside.
fn distance(rectangle: &KeepOut, from: [f64; 2], to: [f64; 2]) -> f64 {
    let ([x0, x1], [y0, y1]) = (rectangle.x_m, rectangle.y_m);
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    // The part of the segment inside the rectangle, by clipping against its four sides (Liang and Barsky).
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    let mut apart = false;
    for (slope, room) in [(-dx, from[0] - x0), (dx, x1 - from[0]), (-dy, from[1] - y0), (dy, y1 - from[1])] {
        if slope == 0.0 {
            apart |= room < 0.0;
        } else if slope < 0.0 {
            enters = enters.max(room / slope);
        } else {
            leaves = leaves.min(room / slope);
        }
    }
    if !apart && enters < leaves {
        let depth = |share: f64| {
            let (x, y) = (from[0] + share * dx, from[1] + share * dy);
            (x - x0).min(x1 - x).min(y - y0).min(y1 - y)
        };
        return -(0..=32).map(|index| depth(enters + (leaves - enters) * f64::from(index) / 32.0)).fold(0.0, f64::max);
    }
    let to_rectangle = |[x, y]: [f64; 2]| (x0 - x).max(x - x1).max(0.0).hypot((y0 - y).max(y - y1).max(0.0));
    let to_segment = |x: f64, y: f64| {
        let share = (((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
        (x - from[0] - share * dx).hypot(y - from[1] - share * dy)
    };
    [
        to_rectangle(from),
        to_rectangle(to),
        to_segment(x0, y0),
        to_segment(x0, y1),
        to_segment(x1, y0),
        to_segment(x1, y1),
    ]
    .into_iter()
    .fold(f64::MAX, f64::min)
}
