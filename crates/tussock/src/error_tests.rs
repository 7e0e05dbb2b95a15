//! Shows every way in which a comparison can fail, in the words that a user reads.

use crate::{AnalyseError, CompareError};
use std::collections::BTreeSet;

/// Does not compile when a variant is added, so that its words are added to the table below.
fn compare_variant(error: &CompareError) -> usize {
    match error {
        CompareError::NoPlan { .. } => 0,
        CompareError::NoWidth { .. } => 1,
        CompareError::WidthsDiffer { .. } => 2,
        CompareError::NoPlace => 3,
        CompareError::NothingInCommon { .. } => 4,
        CompareError::Analyse(_) => 5,
    }
}

#[test]
fn every_compare_error_says_what_it_means() {
    let table: Vec<(CompareError, &str)> = vec![
        (
            CompareError::NoPlan { side: "before" },
            "no plan on the side before (expected a plan on both sides)",
        ),
        (
            CompareError::NoWidth { side: "after" },
            "no cutting width on the side after (expected the same width on both sides)",
        ),
        (
            CompareError::WidthsDiffer {
                before_m: 0.22,
                after_m: 0.24,
            },
            "cutting width 0.22 m before and 0.24 m after (expected one width)",
        ),
        (
            CompareError::NoPlace,
            "private findings and findings on Earth cannot be laid over each other (expected both of one kind)",
        ),
        (
            CompareError::NothingInCommon { common_m2: 0.0 },
            "the two plans have 0.0 m2 of lawn in common (expected plans of one garden)",
        ),
        (
            CompareError::Analyse(AnalyseError::MixedFrames),
            "some logs are on Earth and some in metres of their own (expected one kind)",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| compare_variant(error)).collect();
    assert_eq!(seen.len(), 6, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
