//! Identities of the arm: its derivatives, and its statics against virtual work.

use crate::jobs::{job, valid};
use pintle_core::{
    arm::{Linkage, Pose},
    plan::Model,
};
use proptest::prelude::*;

/// Far enough from a dead point for finite differences to mean something: the elbow's angle is at least about 6°.
fn elbow_sine(linkage: &Linkage, pose: &Pose) -> f64 {
    let crank = pose.elbow - linkage.shaft;
    let link = pose.bracket - pose.elbow;
    crank.cross(link).abs() / (linkage.crank_m * linkage.link_m)
}

/// Central difference of fourth order, error `h⁴·f⁗/30`.
fn slope(of: impl Fn(f64) -> f64, at: f64, step: f64) -> f64 {
    (8.0 * (of(at + step) - of(at - step)) - (of(at + 2.0 * step) - of(at - 2.0 * step))) / (12.0 * step)
}

proptest! {
    #[test]
    fn link_statics_agree_with_virtual_work(value in valid(), share in 0.0..1.0f64) {
        let model = Model::new(&job(&value)).unwrap();
        let linkage = model.linkage();
        let pose = linkage.pose(share * linkage.open_rad);
        prop_assume!(elbow_sine(linkage, &pose) > 1e-3);
        let leaf_torque = 100.0;
        // Statics: the link presses the bracket with F along û and the elbow with −F; the shaft holds the elbow's moment.
        let along = (pose.bracket - pose.elbow) / linkage.link_m;
        let shaft_torque = (pose.elbow - linkage.shaft).cross(pose.link_force_n(leaf_torque) * along);
        // Virtual work: T_shaft·dφ = T_leaf·dθ.
        let by_work = leaf_torque / pose.ratio.unwrap();
        prop_assert!((shaft_torque - by_work).abs() <= 1e-9 * by_work.abs().max(leaf_torque), "{shaft_torque} {by_work}");
    }

    #[test]
    fn bars_keep_their_lengths(value in valid(), share in 0.0..=1.0f64) {
        let model = Model::new(&job(&value)).unwrap();
        let linkage = model.linkage();
        let pose = linkage.pose(share * linkage.open_rad);
        prop_assert!(((pose.elbow - linkage.shaft).hypot() - linkage.crank_m).abs() < 2e-9);
        prop_assert!(((pose.bracket - pose.elbow).hypot() - linkage.link_m).abs() < 2e-9);
        prop_assert!((pose.bracket.to_vec2().hypot() - linkage.bracket_radius_m()).abs() < 1e-12);
    }

    #[test]
    fn ratio_and_its_rate_are_the_derivatives_of_the_shaft_angle(value in valid(), share in 0.02..0.98f64) {
        let model = Model::new(&job(&value)).unwrap();
        let linkage = model.linkage();
        let at = share * linkage.open_rad;
        let pose = linkage.pose(at);
        prop_assume!(elbow_sine(linkage, &pose) > 0.1);
        let (ratio, rate) = (pose.ratio.unwrap(), pose.ratio_rate.unwrap());
        let by_difference = slope(|leaf| linkage.pose(leaf).crank_rad, at, 1e-4);
        prop_assert!((ratio - by_difference).abs() <= 1e-7 * ratio.abs().max(1.0), "{ratio} {by_difference}");
        let rate_by_difference = slope(|leaf| linkage.pose(leaf).ratio.unwrap_or(f64::NAN), at, 1e-4);
        prop_assert!((rate - rate_by_difference).abs() <= 1e-6 * rate.abs().max(1.0), "{rate} {rate_by_difference}");
        let link_by_difference = slope(|leaf| {
            let pose = linkage.pose(leaf);
            // Measured from the link's direction here, so that no turn is lost.
            let from = (linkage.pose(at).bracket - linkage.pose(at).elbow).atan2();
            let turned = (pose.bracket - pose.elbow).atan2() - from;
            turned.sin().atan2(turned.cos())
        }, at, 1e-4);
        let link_rate = pose.link_rate.unwrap();
        prop_assert!((link_rate - link_by_difference).abs() <= 1e-7 * link_rate.abs().max(1.0));
    }

    #[test]
    fn leaf_per_crank_integrates_to_the_swing(value in valid()) {
        let model = Model::new(&job(&value)).unwrap();
        let linkage = model.linkage();
        let swing = |steps: u32| -> f64 {
            let nodes: Vec<(f64, f64)> = (0..=steps)
                // Closer towards both ends, where an arm near straight or folded makes the ratio steep.
                .map(|index| 0.5 - 0.5 * (core::f64::consts::PI * f64::from(index) / f64::from(steps)).cos())
                .map(|share| linkage.pose(linkage.open_rad * share))
                // At a dead point the crank turns without the leaf.
                .map(|pose| (pose.crank_rad, pose.ratio.map_or(0.0, |ratio| 1.0 / ratio)))
                .collect();
            nodes.windows(2).map(|pair| (pair[0].1 + pair[1].1) / 2.0 * (pair[1].0 - pair[0].0)).sum()
        };
        let (coarse, fine) = (swing(2000), swing(4000));
        // The trapezoidal rule's own error: it at least halves when the steps do, so it is less than what halving them changed.
        let own_error = (coarse - fine).abs() + 1e-5 * linkage.open_rad;
        prop_assert!((fine - linkage.open_rad).abs() <= own_error, "{fine} of {}", linkage.open_rad);
    }

    #[test]
    fn the_shaft_never_jumps(value in valid()) {
        let model = Model::new(&job(&value)).unwrap();
        let linkage = model.linkage();
        let cranks: Vec<f64> = (0..=720).map(|index| linkage.pose(linkage.open_rad * f64::from(index) / 720.0).crank_rad).collect();
        prop_assert_eq!(cranks[0], 0.0);
        let turning = (cranks[720] - cranks[0]).signum();
        for pair in cranks.windows(2) {
            let step = (pair[1] - pair[0]) * turning;
            prop_assert!(step > 0.0 && step < 0.6, "the crank steps {step} rad");
        }
    }
}
