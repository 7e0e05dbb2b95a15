//! Every way in which fitting a machine can fail, shown: the words are what a user reads.

use crate::fitted::NoFit;
use std::collections::BTreeSet;

/// Fails to compile when a variant is added, so that its words come into the table below.
fn fit_variant(error: &NoFit) -> usize {
    match error {
        NoFit::Lanes => 0,
        NoFit::SeveralMachines { .. } => 1,
        NoFit::TooFewTurns { .. } => 2,
        NoFit::NoLegs => 3,
        NoFit::NoGround => 4,
    }
}

#[test]
fn every_fit_error_says_what_it_means() {
    let table: Vec<(NoFit, &str)> = vec![
        (NoFit::Lanes, "it drives lanes, which are no matter of chance"),
        (
            NoFit::SeveralMachines { machines: 2 },
            "2 machines worked here; expected one",
        ),
        (
            NoFit::TooFewTurns { turns: 3 },
            "3 turns at an edge can be told; expected at least 15",
        ),
        (NoFit::NoLegs, "the path shows no straight legs between turns"),
        (NoFit::NoGround, "the plan leaves no ground to drive on"),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| fit_variant(error)).collect();
    assert_eq!(seen.len(), 5, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
