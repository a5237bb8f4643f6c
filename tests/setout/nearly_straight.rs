//! The rule of thumb next to straight.

use pintle_core::arm::rule_of_thumb;

/// A bend of a hair is next to none: lengths differ by its square.
#[test]
fn arm_bent_by_next_to_nothing_is_nearly_straight() {
    for bend in [1e-9, 1e-7, 9e-7, 3e-6] {
        let [straight, bent] = [0.0, bend].map(|bend| {
            let rule = rule_of_thumb((-0.25, 0.45), (1.0, 0.06), 90_f64.to_radians(), bend);
            rule.arm.unwrap_or_else(|| panic!("no arm at {bend}: {:?}", rule.short))
        });
        assert!((straight.link_m - bent.link_m).abs() < 1e-6 && (straight.crank_m - bent.crank_m).abs() < 1e-6);
    }
}
