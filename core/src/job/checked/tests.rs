//! A check after one input is replaced against the check of the whole job.

use crate::Document;
use crate::job::Job;

#[test]
fn a_replaced_input_is_refused_where_the_whole_job_is() {
    let texts = [
        include_str!("../../../../tests/fixtures/schema-1/every-block.json"),
        include_str!("../../../../tests/fixtures/slow/plan.json"),
        include_str!("../../../../www/data/starting-job.json"),
    ];
    let (mut refused, mut kept) = (0, 0);
    for text in texts {
        let document: Document = serde_json::from_str(text).expect("a document");
        let job = Job::read(&document).expect("a job");
        for (path, value) in job.inputs() {
            let shares = (0..40).map(|index| 0.05 * f64::from(index));
            for replaced in shares.chain([3.0, -1.0, 1e9, f64::NAN]).map(|share| share * value) {
                let whole = job.with_input(path, replaced);
                let checked = job.checked_with_input(path, replaced);
                assert_eq!(checked.is_ok(), whole.check().is_ok(), "{path} = {replaced}");
                *if checked.is_ok() { &mut kept } else { &mut refused } += 1;
                assert!(checked.is_err() || checked.ok().is_some_and(|job| *job == whole));
            }
        }
    }
    assert!(refused > 50 && kept > 50, "{refused} refused, {kept} kept");
}
