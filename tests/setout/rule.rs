//! The rule of thumb against its own words, measured with vectors: link square to the leaf when open, arm at the chosen bend when closed.

use pintle_core::{
    arm::{ShortLength, rule_of_thumb},
    job::Elbow,
};

/// Angle between two vectors, degrees.
fn between(one: [f64; 2], other: [f64; 2]) -> f64 {
    (one[0] * other[1] - one[1] * other[0]).atan2(one[0] * other[0] + one[1] * other[1]).abs().to_degrees()
}

fn elbow(arm: &pintle_core::job::Arm, leaf_rad: f64) -> ([f64; 2], [f64; 2]) {
    let (sine, cosine) = leaf_rad.sin_cos();
    let bracket =
        [arm.bracket_u_m * cosine - arm.bracket_v_m * sine, arm.bracket_u_m * sine + arm.bracket_v_m * cosine];
    let reach = [bracket[0] - arm.shaft_x_m, bracket[1] - arm.shaft_y_m];
    let d = reach[0].hypot(reach[1]);
    let along = (arm.crank_m.powi(2) - arm.link_m.powi(2) + d * d) / (2.0 * d);
    let across =
        (arm.crank_m.powi(2) - along * along).max(0.0).sqrt() * if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
    let unit = [reach[0] / d, reach[1] / d];
    let elbow =
        [arm.shaft_x_m + along * unit[0] - across * unit[1], arm.shaft_y_m + along * unit[1] + across * unit[0]];
    (elbow, bracket)
}

#[test]
fn the_rule_keeps_its_words() {
    let mut arms = 0;
    for (x, y) in [(-0.25, 0.45), (-0.4, 0.3), (-0.15, 0.6), (0.0, 0.5)] {
        for u in [0.8, 1.0, 1.3] {
            for open_deg in [75.0_f64, 90.0, 105.0] {
                for bend_deg in [0.0_f64, 0.01, 2.0, 8.0, 25.0] {
                    let rule = rule_of_thumb((x, y), (u, 0.06), open_deg.to_radians(), bend_deg.to_radians());
                    let Some(arm) = rule.arm else { continue };
                    arms += 1;
                    let open_rad = open_deg.to_radians();
                    let (at, bracket) = elbow(&arm, open_rad);
                    let link = [bracket[0] - at[0], bracket[1] - at[1]];
                    let square = between(link, [open_rad.cos(), open_rad.sin()]);
                    assert!((square - 90.0).abs() < 1e-4, "link at {square}° to the leaf: {arm:?}");
                    let (at, bracket) = elbow(&arm, 0.0);
                    let bend = between(
                        [at[0] - arm.shaft_x_m, at[1] - arm.shaft_y_m],
                        [bracket[0] - at[0], bracket[1] - at[1]],
                    );
                    // Near straight the bend is the root of a difference of lengths: 1e-4° of it are 1e-12 m.
                    assert!((bend - bend_deg).abs() < 2e-4, "bent by {bend}° instead of {bend_deg}°: {arm:?}");
                }
            }
        }
    }
    assert!(arms > 60, "only {arms} arms");
}

/// A shaft nearer to the bracket closed than open leaves nothing for the link.
#[test]
fn a_length_without_room_is_named() {
    let rule = rule_of_thumb((1.2, -0.5), (1.0, 0.0), 90_f64.to_radians(), 0.0);
    assert!(rule.arm.is_none());
    let (length, by) = rule.short.expect("a length is short");
    assert!(length == ShortLength::LinkM && by > 0.0);
}
