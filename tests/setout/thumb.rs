//! The rule of thumb against every arm that keeps its words, found by trying all lengths of the link.

use pintle_core::{
    arm::{ShortLength, rule_of_thumb},
    job::{Arm, Elbow},
};

const LEAST: f64 = 0.02;

/// Shaft, bracket, swing and bend of one question.
struct Site {
    shaft: (f64, f64),
    bracket: (f64, f64),
    open: f64,
    bend: f64,
}

impl Site {
    fn bracket(&self, leaf_rad: f64) -> (f64, f64) {
        let (sine, cosine) = leaf_rad.sin_cos();
        (self.bracket.0 * cosine - self.bracket.1 * sine, self.bracket.0 * sine + self.bracket.1 * cosine)
    }

    /// The elbow open: a link's length from the bracket, square to the leaf.
    fn elbow(&self, side: f64, link: f64) -> (f64, f64) {
        let ((x, y), (sine, cosine)) = (self.bracket(self.open), self.open.sin_cos());
        (x + side * link * sine, y - side * link * cosine)
    }

    fn crank(&self, side: f64, link: f64) -> f64 {
        let (x, y) = self.elbow(side, link);
        (x - self.shaft.0).hypot(y - self.shaft.1)
    }

    fn closed(&self) -> f64 {
        (self.bracket.0 - self.shaft.0).hypot(self.bracket.1 - self.shaft.1)
    }

    /// How much the arm at its bend outreaches the closed bracket, m².
    fn over(&self, side: f64, link: f64) -> f64 {
        let crank = self.crank(side, link);
        crank * crank + link * link + 2.0 * crank * link * self.bend.cos() - self.closed().powi(2)
    }

    fn arm(&self, side: f64, link: f64) -> Arm {
        let ((x, y), (ex, ey)) = (self.bracket(self.open), self.elbow(side, link));
        let turn = (x - self.shaft.0) * (ey - self.shaft.1) - (y - self.shaft.1) * (ex - self.shaft.0);
        Arm::builder()
            .shaft_x_m(self.shaft.0)
            .shaft_y_m(self.shaft.1)
            .bracket_u_m(self.bracket.0)
            .bracket_v_m(self.bracket.1)
            .crank_m(self.crank(side, link))
            .link_m(link)
            .elbow(if turn > 0.0 { Elbow::Left } else { Elbow::Right })
            .build()
    }

    /// Whether an arm closes and never turns its lever over, with something to spare: `None` where that is too close to say.
    fn works(&self, arm: &Arm) -> Option<bool> {
        let (mut least, mut spare) = (f64::MAX, f64::MAX);
        let mut sense = 0.0;
        // Closed, a straight arm reaches exactly; that it does is the rule itself.
        for index in 1..=500 {
            let (x, y) = self.bracket(self.open * f64::from(index) / 500.0);
            let (dx, dy) = (x - self.shaft.0, y - self.shaft.1);
            let reach = dx.hypot(dy);
            let (a, b) = (arm.crank_m, arm.link_m);
            spare = spare.min(a + b - reach).min(reach - (a - b).abs());
            let along = (a * a - b * b + reach * reach) / (2.0 * reach);
            let side = if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
            let across = side * (a * a - along * along).max(0.0).sqrt();
            let (ex, ey) = ((along * dx - across * dy) / reach, (along * dy + across * dx) / reach);
            let lever = (x * (dy - ey) - y * (dx - ex)) / b;
            if sense == 0.0 {
                sense = lever.signum();
            }
            least = least.min(sense * lever);
        }
        if spare > 1e-7 && least > 2e-3 {
            Some(true)
        } else if spare < -1e-4 || least < -1e-3 {
            Some(false)
        } else {
            None
        }
    }

    /// Links of all lengths from nothing up that keep the rule, by changes of sign.
    fn links(&self, side: f64) -> Vec<f64> {
        let step = 2e-3;
        let pairs = (0..1500).map(|index| (step * f64::from(index), step * f64::from(index + 1)));
        let changed = pairs.filter(|(low, high)| (self.over(side, *low) < 0.0) != (self.over(side, *high) < 0.0));
        changed
            .map(|(mut low, mut high)| {
                let below = self.over(side, low) < 0.0;
                for _ in 0..60 {
                    let middle = 0.5 * (low + high);
                    if (self.over(side, middle) < 0.0) == below { low = middle } else { high = middle }
                }
                0.5 * (low + high)
            })
            .collect()
    }
}

#[test]
fn no_arm_with_a_shorter_link_keeps_the_rule() {
    let (mut arms, mut none) = (0, 0);
    for shaft in [(-0.25, 0.45), (-0.4, 0.3), (0.1, 0.5), (-0.3, -0.4), (0.25, -0.2), (0.9, 0.4)] {
        for bracket in [(0.8, 0.06), (1.2, -0.1), (0.5, 0.0), (2.6, 0.1)] {
            for open_deg in [60.0_f64, 90.0, 120.0] {
                for bend_deg in [0.5_f64, 5.0, 25.0, 60.0] {
                    let (open, bend) = (open_deg.to_radians(), bend_deg.to_radians());
                    let site = Site { shaft, bracket, open, bend };
                    let sides = [1.0, -1.0].map(|side| site.links(side).into_iter().map(move |link| (side, link)));
                    let all: Vec<Arm> = sides.into_iter().flatten().map(|(side, link)| site.arm(side, link)).collect();
                    let long: Vec<&Arm> = all.iter().filter(|arm| arm.crank_m > LEAST && arm.link_m > LEAST).collect();
                    if long.iter().any(|arm| site.works(arm).is_none()) {
                        continue;
                    }
                    let working = long.iter().filter(|arm| site.works(arm) == Some(true));
                    let wanted = working.min_by(|one, other| one.link_m.total_cmp(&other.link_m));
                    let told = rule_of_thumb(shaft, bracket, open, bend);
                    match (wanted, told.arm) {
                        (Some(wanted), Some(arm)) => {
                            arms += 1;
                            assert!((wanted.link_m - arm.link_m).abs() < 1e-6, "{wanted:?} {arm:?}");
                            assert!((wanted.crank_m - arm.crank_m).abs() < 1e-6 && wanted.elbow == arm.elbow);
                            assert!(told.short.is_none());
                        }
                        (None, None) => none += 1,
                        (wanted, told) => panic!("{shaft:?} {bracket:?} {open_deg} {bend_deg}: {wanted:?}, {told:?}"),
                    }
                }
            }
        }
    }
    assert!(arms > 40 && none > 20, "{arms} arms, {none} none");
}

/// Straight, the condition `|E − S| = d − b` is linear in `b` once squared; of two short arms the one that lacks less is told.
#[test]
fn what_is_short_is_told_by_how_much() {
    let (mut links, mut cranks) = (0, 0);
    for index in 0..800 {
        let turn = |by: f64| (f64::from(index) * by).fract();
        let mut shaft = (2.0 * turn(0.618_034) - 0.7, 1.6 * turn(0.754_878) - 0.8);
        let mut bracket = (0.3 + turn(0.569_84), 0.2 * turn(0.381_966) - 0.1);
        let mut open = 1.0 + turn(0.141_42);
        if index % 2 == 0 {
            // As far from the bracket closed as open, and square to the leaf there: the elbow would stand on the shaft.
            shaft = (0.96 + 0.04 * turn(0.618_034), 0.9 + 0.2 * turn(0.754_878));
            (bracket, open) = ((1.0, 0.0), std::f64::consts::FRAC_PI_2);
        }
        let site = Site { shaft, bracket, open, bend: 0.0 };
        let told = rule_of_thumb(shaft, bracket, site.open, 0.0);
        let lacks = [1.0, -1.0].map(|side| {
            let over = |link: f64| site.crank(side, link).powi(2) - (site.closed() - link).powi(2);
            let link = over(0.0) / (over(0.0) - over(1.0));
            [(ShortLength::LinkM, LEAST - link), (ShortLength::CrankM, LEAST - (site.closed() - link))]
        });
        if (lacks[0][0].1 - lacks[1][1].1).abs() < 1e-6 || (lacks[0][1].1 - lacks[1][0].1).abs() < 1e-6 {
            continue;
        }
        let lacking = lacks.map(|[one, other]| if other.1 > one.1 { other } else { one });
        let least = lacking.into_iter().filter(|(_, by)| *by > 0.0).min_by(|one, other| one.1.total_cmp(&other.1));
        match (told.arm, told.short) {
            (None, Some((length, by))) => {
                let (wanted, most) = least.expect("an arm lacks something");
                assert!(length == wanted && (by - most).abs() < 1e-9 * most.max(1.0), "{by} {most}");
                if length == ShortLength::LinkM { links += 1 } else { cranks += 1 }
            }
            (Some(_), short) => assert!(short.is_none()),
            (None, None) => assert!(least.is_none()),
        }
    }
    assert!(links > 20 && cranks > 5, "{links} links, {cranks} cranks");
}
