//! The leaf over the ground against the closed form at thousands of angles.
//!
//! A point u along the leaf falls on an axis leaning by λ towards ψ by u·sin λ·cos(θ − ψ), rises evenly with a rising hinge, and stands over
//! ground that rises towards χ by u·tan s·cos(θ − χ).

use crate::jobs::planned;
use crate::plan::example;
use pintle_core::plan::OverGround;
use serde_json::{Value, json};

/// A site in degrees and metres.
#[derive(Clone, Copy, Default)]
struct Site {
    lean: f64,
    downhill: f64,
    slope: f64,
    uphill: f64,
    gap: f64,
    bottom: f64,
    rise: f64,
    open: f64,
}

impl Site {
    fn job(&self) -> Value {
        let mut job = example();
        if self.open > 120.0 {
            // A short arm that goes so far.
            job["arm"] = json!({ "shaft_x_m": 0.22, "shaft_y_m": 0.04, "bracket_u_m": 0.4, "bracket_v_m": 0.0, "crank_m": 0.25,
                "link_m": 0.42, "elbow": "right" });
        }
        job["lean"] = json!({ "angle_deg": self.lean, "downhill_deg": self.downhill });
        job["ground"] = json!({ "gap_m": self.gap, "slope_deg": self.slope, "uphill_deg": self.uphill, "bottom_rise_m": self.bottom });
        job["swing"]["open_deg"] = json!(self.open);
        if self.rise != 0.0 {
            job["hinges"]["kind"] = json!("rising");
            job["hinges"]["rise_m"] = json!(self.rise);
            // With friction the steeper ones bind.
            job["hinges"]["friction_coefficient"] = json!(0);
        }
        job
    }

    fn fall(&self, along: f64, leaf: f64) -> f64 {
        along * self.lean.to_radians().sin() * (leaf - self.downhill.to_radians()).cos()
    }

    fn lift(&self, leaf: f64) -> f64 {
        self.rise * leaf / self.open.to_radians()
    }

    fn gap_at(&self, along: f64, leaf: f64) -> f64 {
        let ground = along * self.slope.to_radians().tan() * (leaf - self.uphill.to_radians()).cos();
        self.gap + self.bottom * along / 3.2 + self.lift(leaf) - self.fall(along, leaf) - ground
    }

    /// Height of the pin, 1.2 m along and 0.06 m proud, on the short arm 0.4 m along.
    fn pin(&self, leaf: f64) -> f64 {
        let (along, proud) = if self.open > 120.0 { (0.4_f64, 0.0_f64) } else { (1.2, 0.06) };
        self.lift(leaf) - self.fall(along.hypot(proud), leaf + proud.atan2(along))
    }

    fn over(&self) -> OverGround {
        planned(&self.job()).ground.expect("the ground is said")
    }
}

// The last two have a least or a greatest height inside the swing more than a turn, or less than none, from where the cosine is greatest.
const SITES: [Site; 11] = [
    Site { lean: 0.0, downhill: 0.0, slope: 0.0, uphill: 0.0, gap: 0.08, bottom: 0.0, rise: 0.0, open: 90.0 },
    Site { lean: 2.0, downhill: 30.0, slope: 0.0, uphill: 0.0, gap: 0.08, bottom: 0.0, rise: 0.0, open: 90.0 },
    Site { lean: 0.0, downhill: 0.0, slope: 3.0, uphill: 60.0, gap: 0.15, bottom: 0.02, rise: 0.0, open: 90.0 },
    Site { lean: 1.5, downhill: -250.0, slope: 2.0, uphill: 400.0, gap: 0.12, bottom: -0.05, rise: 0.0, open: 100.0 },
    Site { lean: 1.0, downhill: 170.0, slope: 1.0, uphill: -30.0, gap: 0.1, bottom: 0.0, rise: 0.06, open: 90.0 },
    Site { lean: 0.0, downhill: 0.0, slope: 0.0, uphill: 0.0, gap: 0.1, bottom: 0.0, rise: 0.05, open: 90.0 },
    Site { lean: 0.0, downhill: 0.0, slope: 0.0, uphill: 0.0, gap: 0.03, bottom: 0.04, rise: -0.05, open: 90.0 },
    Site { lean: 2.0, downhill: 45.0, slope: 0.0, uphill: 0.0, gap: 0.2, bottom: 0.0, rise: 0.08, open: 100.0 },
    Site { lean: 2.0, downhill: 225.0, slope: 0.0, uphill: 0.0, gap: 0.2, bottom: 0.0, rise: -0.08, open: 100.0 },
    Site { lean: 2.0, downhill: -10.0, slope: 0.0, uphill: 0.0, gap: 0.4, bottom: -0.1, rise: -0.152, open: 90.0 },
    Site { lean: 10.0, downhill: 1.0, slope: 0.0, uphill: 0.0, gap: 1.5, bottom: 0.0, rise: -0.0415, open: 180.0 },
];

/// Least value over the swing on a fine grid, with its angle.
fn least(open: f64, value: impl Fn(f64) -> f64) -> (f64, f64) {
    let angles = (0..=20_000).map(|index| open.to_radians() * f64::from(index) / 20_000.0);
    angles.map(|leaf| (value(leaf), leaf)).fold((f64::MAX, 0.0), |one, other| if other.0 < one.0 { other } else { one })
}

fn close(one: f64, other: f64, by: f64) {
    assert!((one - other).abs() <= by, "{one} is not {other}");
}

#[test]
fn every_row_is_the_closed_form() {
    for site in SITES {
        for row in site.over().curve {
            let leaf = row.leaf_deg.to_radians();
            close(row.gap_hinge_m, site.gap_at(0.0, leaf), 1e-12);
            close(row.gap_latch_m, site.gap_at(3.2, leaf), 1e-12);
            close(row.bracket_rise_m, site.pin(leaf) - site.pin(0.0), 1e-12);
        }
    }
}

#[test]
fn the_least_gap_and_the_rise_are_those_of_a_fine_grid() {
    for site in SITES {
        let over = site.over();
        let ends = [0.0, 3.2].map(|along| least(site.open, |leaf| site.gap_at(along, leaf)));
        let (gap, leaf) = if ends[0].0 < ends[1].0 { ends[0] } else { ends[1] };
        // The grid misses the least by a second-order amount, and never finds less.
        assert!(over.least_gap_m <= gap + 1e-12 && gap - over.least_gap_m < 1e-8, "{} {gap}", over.least_gap_m);
        close(over.least_gap_leaf_deg, leaf.to_degrees(), 0.01);
        let (low, _) = least(site.open, |leaf| site.pin(leaf));
        let (high, _) = least(site.open, |leaf| -site.pin(leaf));
        close(over.bracket_rise_m, -high - low, 1e-8);
    }
}

#[test]
fn the_first_touch_is_where_the_gap_is_used_up() {
    let mut touched = 0;
    for site in SITES {
        // Lowered until the leaf touches by a little, by much, and from the start.
        let least = site.over().least_gap_m;
        for lowered in [least - 0.001, least + 1e-9, least + 0.01, least + 0.03] {
            let low = Site { gap: site.gap - lowered, ..site };
            if low.gap < 0.0 {
                continue;
            }
            let gap = |leaf: f64| low.gap_at(0.0, leaf).min(low.gap_at(3.2, leaf));
            let touch = low.over().touch_leaf_deg.map(f64::to_radians);
            if lowered < least {
                assert_eq!(touch, None);
                continue;
            }
            touched += 1;
            let touch = touch.expect("it touches");
            if gap(0.0) <= 0.0 {
                close(touch, 0.0, 1e-4);
                continue;
            }
            close(gap(touch), 0.0, 1e-9);
            assert!(
                (0..1000).all(|index| gap((touch - 1e-4).max(0.0) * f64::from(index) / 1000.0) > 0.0),
                "nothing before"
            );
        }
    }
    assert!(touched > 12, "{touched}");
}

/// Exactly nothing left counts as touching: all along where the leaf lies on the ground, at the end where it comes down on it there.
#[test]
fn no_gap_at_all_is_a_touch() {
    let flat = Site { gap: 0.0, open: 90.0, ..Site::default() };
    assert_eq!((flat.over().touch_leaf_deg, flat.over().least_gap_m), (Some(0.0), 0.0));
    let down = Site { gap: 0.0625, rise: -0.0625, open: 90.0, ..Site::default() };
    close(down.over().touch_leaf_deg.expect("at the end"), 90.0, 1e-9);
    let over = Site { gap: 0.0626, rise: -0.0625, open: 90.0, ..Site::default() }.over();
    assert_eq!(over.touch_leaf_deg, None);
    close(over.least_gap_leaf_deg, 90.0, 1e-9);
}
