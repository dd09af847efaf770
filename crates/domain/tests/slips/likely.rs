//! Whether what is called 80 % likely is real eight times in ten.

use crate::mishap::Mishap;
use crate::share::Share;
use crate::trial::{Bin, mishap};
use crate::{bags, classes, full};
use std::collections::BTreeMap;

/// How often mishaps come: as often as the detector takes for granted, in ways of their own.
fn chances(mishap: Mishap) -> f64 {
    match mishap {
        Mishap::Unit | Mishap::Transposed | Mishap::Dead | Mishap::Hot => 0.01,
        Mishap::Misread => 0.003,
        Mishap::Tilt | Mishap::Foam => 0.005,
        Mishap::Leak => 0.04,
        Mishap::Start | Mishap::Unshaken | Mishap::Heaped | Mishap::Swapped => 0.03,
        Mishap::Copied | Mishap::Fives => 0.02,
    }
}

#[test]
fn what_is_called_likely_is_real_as_often() {
    // Four times as many bags: few slips are called just so likely.
    let classes = classes("how likely", 4 * bags(), &chances);
    let mut found = BTreeMap::<Mishap, Share>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        if let Some(mishap) = mishap(&bag.read) {
            let said = bag.said.iter().flat_map(|(_, slips)| slips);
            let real = said.into_iter().any(|slip| bag.is_real(slip));
            found.entry(mishap).or_default().count(real);
        }
    }
    for (mishap, share) in found {
        println!("| {} | {share} |", mishap.says());
    }
    for (from, to) in [(0.5, 0.65), (0.65, 0.75), (0.75, 0.85), (0.85, 0.95), (0.95, 1.1)] {
        let bin = Bin::of(&classes, from, to);
        println!(
            "| called {:.0} to {:.0} % likely | {} |",
            100.0 * from,
            100.0 * to.min(1.0),
            bin.real
        );
        for (kind, share) in &bin.kinds {
            println!("    {kind}: {share}");
        }
    }
    let eighty = Bin::of(&classes, 0.75, 0.85).real;
    eighty.at_least(0.70, full(), "called 80 % likely");
    eighty.under(0.90, full(), "called 80 % likely");
}
