//! Center and spread of a handful of numbers.

use crate::experiments::{by_treatment, experiment, near, r_values};
use crate::outside::nist;
use barm_science::statistics::summary::{SummaryError, summarize};
use proptest::prelude::*;

/// R 4.2.2, n, mean and sd by group.
#[test]
fn means_and_standard_deviations_agree_with_r() {
    for set in ["aov_PlantGrowth", "aov_InsectSprays", "aov_warpbreaks_tension"] {
        let r = r_values(set);
        let call = "mean/sd/quantile type 7/t.test conf.int by group";
        for (name, values) in by_treatment(&experiment(set)) {
            let ours = summarize(&values).unwrap();
            let wanted = |what: &str| r[&(call.to_owned(), format!("{name} {what}"))];
            near(&name, ours.n as f64, wanted("n"), 0.0, 0.0);
            near(&name, ours.mean, wanted("mean"), 1e-15, 0.0);
            near(&name, ours.median, wanted("median"), 1e-15, 0.0);
            near(&name, ours.sd.unwrap(), wanted("sd"), 1e-14, 0.0);
        }
    }
}

/// NIST StRD univariate sets, certified to 14 digits, where the data are at hand.
#[test]
fn nists_certified_means_and_deviations_are_met() {
    let certified = [
        ("PiDigits", 4.5348, 2.867_339_060_288_71, 14.0),
        ("Lew", -177.435, 277.332_168_044_316, 14.0),
        ("Michelso", 299.8524, 0.079_010_547_819_051_8, 12.5),
        ("NumAcc1", 10_000_002.0, 1.0, 14.0),
        ("NumAcc2", 1.2, 0.1, 13.5),
        // The data themselves, as doubles, hold 8 digits of their deviation.
        ("NumAcc4", 10_000_000.2, 0.1, 7.9),
    ];
    for (set, mean, sd, digits) in certified {
        let Some(text) = nist(&format!("univ/{set}.dat")) else { continue };
        let after = text.lines().skip_while(|line| !line.starts_with("---")).skip(1);
        let values: Vec<f64> =
            after.flat_map(str::split_whitespace).map(|v| v.parse().unwrap()).collect();
        let ours = summarize(&values).unwrap();
        near(set, ours.mean, mean, 1e-14, 0.0);
        near(set, ours.sd.unwrap(), sd, 10_f64.powf(-digits), 0.0);
    }
}

/// R's data set PlantGrowth: MAD 0.4636, 0.5970, 0.3392, worked outside to 4 digits.
#[test]
fn mads_of_plant_growth_agree() {
    let groups = by_treatment(&experiment("aov_PlantGrowth"));
    for ((name, values), wanted) in groups.iter().zip([0.4636, 0.5970, 0.3392]) {
        near(name, summarize(values).unwrap().mad, wanted, 0.000_05 / wanted, 0.0);
    }
}

#[test]
fn numbers_that_cannot_be_summarized_say_why() {
    assert_eq!(summarize(&[]), Err(SummaryError::Empty));
    for wild in [f64::NAN, f64::NEG_INFINITY, 1e308] {
        assert!(matches!(summarize(&[1.0, wild]), Err(SummaryError::OutOfReach { at: 1, .. })));
    }
    assert_eq!(summarize(&[7.0]).unwrap().sd, None);
}

proptest! {
    #[test]
    fn summaries_are_finite_and_in_order(values in prop::collection::vec(-1e60_f64..1e60, 1..40)) {
        let s = summarize(&values).unwrap();
        prop_assert!(s.low <= s.median && s.median <= s.high);
        let slack = s.range() * 1e-12;
        prop_assert!(s.low - slack <= s.mean && s.mean <= s.high + slack);
        // The mean of sizes is at most the root of the mean of their squares.
        if let Some(sd) = s.sd {
            prop_assert!(sd.is_finite() && s.mad <= sd * (1.0 + 1e-12));
        }
    }
}
