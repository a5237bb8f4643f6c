//! What the product shows with its provenance, and what the trade does.

use pintle_core::{
    Document,
    job::Job,
    safety::{Source, SourceProvenance},
};

/// Values that the product shows beside their provenance: what is from memory or superseded says so.
#[test]
fn cautionary_limits_carry_their_provenance() {
    let mut job: serde_json::Value =
        serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    job["contact"] = serde_json::json!({});
    job["motion"] = serde_json::json!({});
    job["site"] = serde_json::json!({ "public": true });
    let document: Document = serde_json::from_value(job).expect("a document");
    let plan = pintle_core::plan::plan(&Job::read(&document).expect("valid")).expect("valid");
    let (person, entrapment) = (plan.person.expect("a contact"), plan.entrapment.expect("a site"));
    // From memory of Annex A of EN 12453: 400 N dynamic at gaps of 50 to 500 mm, 1,400 N beyond, for 0.75 s, then 150 N static; measured at 50, 300 and 500 mm (EN 12445).
    let limits: Vec<_> = person.blows.iter().map(|blow| (blow.gap_m, blow.dynamic_limit_n)).collect();
    assert_eq!(limits, [(Some(0.05), 400.0), (Some(0.3), 400.0), (Some(0.5), 400.0), (None, 1400.0)]);
    assert_eq!((person.dynamic_time_s, person.static_limit_n), (0.75, 150.0));
    assert!(person.must_be_measured && person.limits_source.superseded && person.measuring_source.superseded);
    assert_eq!(person.limits_source.provenance, SourceProvenance::FromMemory);
    // EN 12604, 150 N where people live: doubtful.
    let hand = plan.motion.expect("motion").hand;
    assert_eq!((hand.limit_n, hand.source.provenance), (150.0, SourceProvenance::Doubtful));
    // UL 325: two independent means each way where a zone exists.
    assert_eq!(entrapment.means.each_ref().map(|count| count.wanted), [2, 2]);
    assert_eq!(entrapment.means[0].source, Source::UL_325);
    assert_eq!(entrapment.class_source.provenance, SourceProvenance::Seen);
}

/// Common practice, no source: the breakaway is tried half open, and does not slip in ordinary running.
#[test]
fn the_breakaway_is_tried_half_open_and_holds_in_ordinary_running() {
    let mut job: serde_json::Value =
        serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    (job["motion"], job["breakaway"]) = (serde_json::json!({}), serde_json::json!({}));
    let document: Document = serde_json::from_value(job).expect("a document");
    let plan = pintle_core::plan::plan(&Job::read(&document).expect("valid")).expect("valid");
    let breakaway = plan.breakaway.expect("asked for");
    assert_eq!(breakaway.trial.leaf_deg, 45.0);
    assert!(breakaway.least_slip_n_m > plan.peak.shaft_torque_n_m);
    // Limits are set with the leaf closed, then open: the shaft counts from closed.
    let limits = plan.motion.expect("motion").limits;
    assert_eq!(limits.closed_deg, 0.0);
    assert!((limits.open_deg.abs() - plan.shaft_travel_deg).abs() < 1e-9);
}
