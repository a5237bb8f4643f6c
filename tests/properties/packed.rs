//! Identities of packed documents: whatever goes in comes back, to the bit.

use crate::jobs::{damaged, document, loaded, valid};
use pintle_core::{Document, job::Job, packed};
use pintle_tests::documents::{same_to_the_bit, without_nulls};
use proptest::prelude::*;

proptest! {
    #[test]
    fn a_job_comes_back_as_it_was(value in loaded()) {
        let document = document(&value);
        let back = packed::unpack(&packed::pack(&document)).unwrap();
        prop_assert!(same_to_the_bit(&back, &without_nulls(&document)));
        prop_assert_eq!(Job::read(&back), Job::read(&document));
    }

    /// Fields that say nothing may go: the job is the same, and a page opens it.
    #[test]
    fn a_job_is_the_same_without_what_it_does_not_say(value in valid()) {
        let document = document(&value);
        let said = without_nulls(&document);
        prop_assert_eq!(Job::read(&said), Job::read(&document));
        prop_assert!(Job::open(&said).is_ok());
    }

    #[test]
    fn anything_comes_back_as_it_was(document in damaged(loaded())) {
        let back = packed::unpack(&packed::pack(&document)).unwrap();
        prop_assert!(same_to_the_bit(&back, &without_nulls(&document)));
    }

    #[test]
    fn every_number_comes_back(bits in any::<u64>(), short in -1_000_000i64..1_000_000, decimals in 0u32..8) {
        let typed = short as f64 / 10f64.powi(decimals as i32);
        for number in [f64::from_bits(bits), typed, typed * 0.0254, typed * 0.3048, typed * 0.001] {
            let number = Document::Number(number);
            prop_assert!(same_to_the_bit(&packed::unpack(&packed::pack(&number)).unwrap(), &number));
        }
    }
}
