//! What tests of numbers share.

pub fn close(one: f64, other: f64, within: f64) {
    assert!((one - other).abs() <= within, "{one} is not {other}");
}

/// Even random numbers: Knuth's linear congruential generator.
pub struct Dice(pub u64);

impl Dice {
    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        least + (most - least) * (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// The least of a function between two angles: sampled, then by thirds around the least sample.
pub fn least(from: f64, to: f64, value: impl Fn(f64) -> f64) -> f64 {
    const SAMPLES: usize = 400;
    let at = |index: usize| from + (to - from) * index as f64 / SAMPLES as f64;
    let lowest = |one: usize, other: usize| if value(at(other)) < value(at(one)) { other } else { one };
    let lowest = (0..=SAMPLES).reduce(lowest).expect("there are samples");
    let (mut low, mut high) = (at(lowest.saturating_sub(1)), at((lowest + 1).min(SAMPLES)));
    for _ in 0..80 {
        let (one, other) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
        if value(one) < value(other) {
            high = other;
        } else {
            low = one;
        }
    }
    value(0.5 * (low + high)).min(value(at(lowest)))
}
