//! The leaf told from the shaft, against the shaft told from the leaf.

use crate::jobs::{job, valid, with};
use pintle_core::{arm::ShaftPath, plan::Model};
use proptest::prelude::*;
use serde_json::{Value, json};

/// Leaves that open further than most: from a shaft close to the hinge, with crank and link about as long as bracket and crank.
fn wide() -> impl Strategy<Value = Value> {
    let arm = (-0.15..0.15f64, -0.15..0.15f64, 0.3..0.6f64, 0.3..0.6f64, 0.8..1.2f64, any::<bool>());
    (arm, 120.0..175.0f64)
        .prop_map(|((x, y, bracket, crank, link, left), open)| {
            let mut value = with(&crate::plan::example(), "swing", json!({ "open_deg": open }));
            value["arm"] = json!({ "shaft_x_m": x, "shaft_y_m": y, "bracket_u_m": bracket, "bracket_v_m": 0.0, "crank_m": crank,
                "link_m": link * (bracket - crank).abs() + 0.1, "elbow": if left { "left" } else { "right" } });
            value
        })
        .prop_filter("the arm works", |value| Model::new(&job(value)).is_ok())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, max_global_rejects: 100_000, max_local_rejects: 1_000_000, ..ProptestConfig::default() })]

    #[test]
    fn the_way_back_is_the_way_there(value in prop_oneof![3 => valid(), 1 => wide()], share in 0.03..0.97f64) {
        let model = Model::new(&job(&value)).unwrap();
        let linkage = model.linkage();
        let path = ShaftPath::new(linkage);
        let pose = linkage.pose(share * linkage.open_rad);
        prop_assume!(pose.ratio.is_some_and(|ratio| (0.1..8.0).contains(&ratio.abs())));
        let turned = pose.crank_rad.abs();
        let station = path.at(turned);
        prop_assert!((station.leaf_rad - pose.leaf_rad).abs() < 1e-7, "{} {}", station.leaf_rad, pose.leaf_rad);
        prop_assert!((station.gain * pose.ratio.unwrap().abs() - 1.0).abs() < 1e-6);
        prop_assert_eq!(path.sign(), pose.crank_rad.signum());
        prop_assert!((path.travel_rad() - linkage.pose(linkage.open_rad).crank_rad.abs()).abs() < 1e-9);
        prop_assert!((path.elbow(turned) - pose.elbow).hypot() < 1e-7);
        // Of fourth order, error h⁴·f⁗/30: towards a dead point the derivatives grow by the gain's own power, and this one shows in the fifth digit.
        let step = 1e-3 * path.travel_rad();
        prop_assume!(turned > 3.0 * step && turned < path.travel_rad() - 3.0 * step);
        let gain = |at: f64| path.at(at).gain;
        let rate = (8.0 * (gain(turned + step) - gain(turned - step)) - (gain(turned + 2.0 * step) - gain(turned - 2.0 * step)))
            / (12.0 * step);
        prop_assert!((station.gain_rate - rate).abs() <= 1e-4 * rate.abs().max(1.0), "{} {rate}", station.gain_rate);
    }
}
