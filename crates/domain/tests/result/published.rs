//! Published block and control experiments, read as if they were bags.

use crate::class::{Class, answer, treatment};
use barm_domain::plan::BagChoice;

/// Box, Hunter & Hunter, *Statistics for Experimenters* (Wiley 1978), p. 209: penicillin yield,
/// four treatments in five blends. Printed there: treatment means 84, 85, 89, 86, error mean square
/// 18.8 on 12 degrees of freedom. Data from memory.
#[test]
fn a_block_experiment_comes_out_as_printed() {
    let blends = [
        ("1", [89.0, 88.0, 97.0, 94.0]),
        ("2", [84.0, 77.0, 92.0, 79.0]),
        ("3", [81.0, 87.0, 87.0, 85.0]),
        ("4", [87.0, 92.0, 89.0, 84.0]),
        ("5", [79.0, 81.0, 80.0, 88.0]),
    ];
    let mut class = Class::with_periods(&["1", "2", "3", "4", "5"]);
    // Yields of 97 need a bag that can stand so high.
    class.plan.base.bag = BagChoice::parse("gallon").unwrap();
    class.ask("food", Some("A"), ["A", "B", "C", "D"].map(|name| treatment(name, None)));
    for (period, yields) in blends {
        for (name, rise) in ["A", "B", "C", "D"].into_iter().zip(yields) {
            class.grow(name, period, rise);
        }
    }
    let result = class.result();
    assert_eq!(result.minute, Some(24.0));
    let answer = answer(&result, "food");
    let found = answer.variances.unwrap();
    assert_eq!(found.df_within + found.df_between, 12);
    assert!((found.bag * found.bag - 18.8).abs() < 0.05, "{found:?}");
    for (compared, expected) in answer.comparisons.iter().zip([1.0, 5.0, 2.0]) {
        let difference = compared.with.difference.unwrap();
        assert!((difference.difference - expected).abs() < 1e-9, "{}", compared.treatment);
        assert_eq!((compared.with.n, compared.with.n_reference), (5, 5));
    }
}

/// R data set PlantGrowth (Dobson 1983), here in tenths, and Dunnett's comparisons with control by
/// R 4.2.2, package multcomp, `confint(glht(aov(weight ~ group), mcp(group = "Dunnett")))`:
/// trt1 − ctrl −0.371 (−1.02155, 0.27955), critical value 2.33341 by quadrature. There all treatments
/// spread alike; here each may spread in its own way, which makes the interval a little wider.
#[test]
fn comparisons_with_a_control_hold_together_as_by_dunnett() {
    let groups = [
        ("ctrl", [4.17, 5.58, 5.18, 6.11, 4.50, 4.61, 5.17, 4.53, 5.33, 5.14]),
        ("trt1", [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69]),
        ("trt2", [6.31, 5.12, 5.54, 5.50, 5.37, 5.29, 4.92, 6.15, 5.80, 5.26]),
    ];
    let mut class = Class::with_periods(&["1"]);
    class.ask("food", Some("ctrl"), groups.map(|(name, _)| treatment(name, None)));
    for (name, weights) in groups {
        for weight in weights {
            class.grow(name, "1", 10.0 * weight);
        }
    }
    let result = class.result();
    let first = &answer(&result, "food").comparisons[0];
    let found = first.with.difference.unwrap();
    assert!((found.difference / 10.0 + 0.371).abs() < 1e-9, "{found:?}");
    for (found, published) in [(found.low, -1.02155), (found.high, 0.27955)] {
        let (half, theirs) = ((found / 10.0 + 0.371).abs(), (published + 0.371_f64).abs());
        assert!(half > theirs && half < 1.15 * theirs, "{found} for {published}");
    }
}
