//! A bench for closed forms: a leaf of round numbers, an arm of ratio one, and the mechanics of both written again by hand.

use serde_json::{Value, json};

/// Steady hinge friction: a pull of 20 N at 1 m both ways, N·m.
pub const FRICTION: f64 = 20.0;
/// Moment of the gust, N·m: ½·1.25·8²·1·1 m² at 1 m.
pub const WIND: f64 = 40.0;
/// Moment of inertia of the leaf, kg·m².
pub const INERTIA: f64 = 200.0;
/// Part of the shaft's work that reaches the leaf.
pub const EFFICIENCY: f64 = 0.8;
/// Hinge axis to latch edge, m.
pub const LENGTH: f64 = 2.0;
/// Lean of the hinge axis and the direction of its downhill, degrees.
pub const LEAN: (f64, f64) = (1.5, -70.0);

/// A leaf of round numbers on a parallelogram: shaft 0.4 m beside the hinge, crank and bracket 0.9 m, 60° open. Crank and leaf turn alike,
/// the link stays parallel to the line hinge–shaft, and its lever is 0.9·cos θ.
pub fn bench() -> Value {
    json!({
        "schema": 2,
        "leaf": { "mass_kg": 100, "length_m": LENGTH, "wind_area_m2": 1, "mass_centroid_m": 0.75, "wind_centroid_m": 1,
            "inertia_kg_m2": INERTIA },
        "hinges": { "kind": "measured", "pull_open_n": 20, "pull_close_n": 20, "pull_radius_m": 1, "pull_leaf_deg": 45 },
        "lean": { "angle_deg": LEAN.0, "downhill_deg": LEAN.1 },
        "wind": { "speed_m_s": 8, "force_coefficient": 1, "air_density_kg_m3": 1.25 },
        "swing": { "open_deg": 60 },
        "arm": { "shaft_x_m": 0, "shaft_y_m": 0.4, "bracket_u_m": 0.9, "bracket_v_m": 0, "crank_m": 0.9, "link_m": 0.4,
            "elbow": "left" },
        "operator": { "rated_torque_n_m": 160, "peak_torque_n_m": 250, "shaft_speed_deg_s": 10,
            "arm_efficiency": EFFICIENCY },
        "samples": 61
    })
}

/// The bench on an arm whose ratio changes over 90° open, as the demonstration job's.
pub fn on_an_arm() -> Value {
    let mut value = bench();
    value["arm"] = json!({ "shaft_x_m": -0.25, "shaft_y_m": 0.45, "bracket_u_m": 1.2, "bracket_v_m": 0.06,
        "crank_m": 0.8728, "link_m": 0.6363, "elbow": "left" });
    value["swing"]["open_deg"] = json!(90);
    value
}

/// The bench on an arm that is all but straight when closed and all but folded when open: the ratio is large at both ends, and negative.
pub fn tight_at_both_ends() -> Value {
    let mut value = on_an_arm();
    value["arm"] = json!({ "shaft_x_m": -0.6, "shaft_y_m": 0.54, "bracket_u_m": 0.62, "bracket_v_m": 0.16,
        "crank_m": 0.4263, "link_m": 0.8556, "elbow": "right" });
    value
}

/// Moment of the weight about the leaning axis, N·m, positive opening: `−m·g·x·sin λ·sin(θ − ψ)`, from statics.
pub fn gravity(leaf_rad: f64) -> f64 {
    -100.0 * 9.80665 * 0.75 * LEAN.0.to_radians().sin() * (leaf_rad - LEAN.1.to_radians()).sin()
}

/// Moment the drive brings to the leaf moving steadily, N·m, positive opening: `sign` +1 opening, `wind` positive against the movement.
pub fn demand(leaf_rad: f64, sign: f64, wind: f64) -> f64 {
    sign * (FRICTION + wind) - gravity(leaf_rad)
}

/// What a moment on the leaf asks of a shaft of ratio one, N·m: losses are paid by whoever drives.
pub fn effort(leaf_n_m: f64, sign: f64) -> f64 {
    if leaf_n_m * sign >= 0.0 { leaf_n_m / EFFICIENCY } else { leaf_n_m * EFFICIENCY }
}

/// A crank-and-link arm by plane geometry.
#[derive(Clone, Copy)]
pub struct Arm {
    pub shaft: [f64; 2],
    pub bracket: [f64; 2],
    pub crank: f64,
    pub link: f64,
    /// +1 for an elbow left of the way from shaft to bracket.
    pub side: f64,
}

/// The arm at one leaf angle.
#[derive(Clone, Copy)]
pub struct Stand {
    pub bracket: [f64; 2],
    pub elbow: [f64; 2],
    /// Direction of the crank, rad.
    pub crank_rad: f64,
    /// Lever of the link about the hinge, m, positive where a pushing link opens.
    pub lever: f64,
    /// Crank turned per leaf turned.
    pub ratio: f64,
}

impl Arm {
    pub fn of(value: &Value) -> Arm {
        let arm = &value["arm"];
        let number = |key: &str| arm[key].as_f64().expect("a number");
        Arm {
            shaft: [number("shaft_x_m"), number("shaft_y_m")],
            bracket: [number("bracket_u_m"), number("bracket_v_m")],
            crank: number("crank_m"),
            link: number("link_m"),
            side: if arm["elbow"] == "left" { 1.0 } else { -1.0 },
        }
    }

    /// Elbow by the law of cosines at the shaft; the ratio from the virtual work of a link of constant length: the pins' speeds along it are
    /// the same, `φ'·(E−S)×û = θ'·P×û`.
    pub fn at(&self, leaf_rad: f64) -> Stand {
        let ([sx, sy], [u, v]) = (self.shaft, self.bracket);
        let (sin, cos) = leaf_rad.sin_cos();
        let (px, py) = (u * cos - v * sin, u * sin + v * cos);
        let reach = (px - sx).hypot(py - sy);
        let inside = (self.crank.powi(2) + reach.powi(2) - self.link.powi(2)) / (2.0 * self.crank * reach);
        let crank_rad = (py - sy).atan2(px - sx) + self.side * inside.acos();
        let (cx, cy) = (self.crank * crank_rad.cos(), self.crank * crank_rad.sin());
        let (lx, ly) = ((px - sx - cx) / self.link, (py - sy - cy) / self.link);
        let lever = px * ly - py * lx;
        Stand { bracket: [px, py], elbow: [sx + cx, sy + cy], crank_rad, lever, ratio: lever / (cx * ly - cy * lx) }
    }
}

/// Where a function of one bump between two places is largest, by golden section.
pub fn top(mut low: f64, mut high: f64, of: impl Fn(f64) -> f64) -> f64 {
    let golden = (5f64.sqrt() - 1.0) / 2.0;
    for _ in 0..60 {
        let (left, right) = (high - golden * (high - low), low + golden * (high - low));
        if of(left) < of(right) { low = left } else { high = right }
    }
    (low + high) / 2.0
}

/// Holds a number to another within a share of it and of one.
#[track_caller]
pub fn near(found: f64, wanted: f64, share: f64) {
    assert!((found - wanted).abs() <= share * wanted.abs().max(1.0), "{found} is not {wanted}");
}
