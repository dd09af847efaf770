//! Balanced designs, in which the mixed model is the analysis of variance of textbooks.

use crate::bags::{bag, bags};
use crate::experiments::{by_treatment, experiment, near};
use crate::mixed_experiments::mixed_experiment;
use barm_science::statistics::anova;
use barm_science::statistics::compare::{
    BagValue, Compared, Comparison, Estimate, How, compare,
};
use barm_science::statistics::distribution::studentized_range::StudentizedRange;
use barm_science::statistics::mixed::{GroupVariance, Method, Policy, Together};

pub(crate) fn estimates(answer: &Comparison) -> Vec<Estimate> {
    answer.contrasts.iter().map(|c| *c.outcome.as_ref().unwrap()).collect()
}

/// Dyestuff, one-way: the restricted likelihood gives the variances of the analysis of variance,
/// (between − within)/5 and within, to all digits; the mean has 5 degrees of freedom.
#[test]
fn a_one_way_table_gives_the_variances_exactly() {
    let dyestuff = mixed_experiment("dyestuff");
    let mut batches = vec![Vec::new(); 6];
    for (value, group) in dyestuff.values.iter().zip(&dyestuff.groups) {
        batches[*group].push(*value);
    }
    let table = anova::one_way(&batches).unwrap();
    for method in [Method::KenwardRoger, Method::Satterthwaite] {
        let model = dyestuff.fit(method);
        let found = model.variances();
        let between = (table.terms[0].ms - table.rest.ms) / 5.0;
        near("within", found.bag.powi(2), table.rest.ms, 1e-12, 0.0);
        near("between", found.group.powi(2), between, 1e-12, 0.0);
        let mean = model.told(&[1.0]).unwrap();
        near("df", mean.df, 5.0, 1e-11, 0.0);
        near("se", mean.se, (table.terms[0].ms / 30.0).sqrt(), 1e-12, 0.0);
    }
}

/// A split plot by hand: in each of 4 periods each of 3 treatments is made by one group, 2 bags each.
/// Treatments are judged by the interaction with periods, 6 degrees of freedom.
#[test]
fn treatments_of_whole_groups_are_judged_by_groups() {
    let mut list: Vec<BagValue> = Vec::new();
    for block in 0..4_usize {
        for treatment in 0..3_usize {
            let habit =
                [[2.0, -3.0, 1.0], [0.5, 4.0, -4.0], [-2.0, 1.0, 3.5], [1.0, -2.5, 0.0]];
            for twin in [-0.7, 0.7] {
                let value = 10.0 + 3.0 * treatment as f64 + habit[block][treatment] + twin;
                list.push(bag(treatment, block, 10 * block + treatment, value));
            }
        }
    }
    let means: Vec<Vec<f64>> = (0..3)
        .map(|t| {
            let of = |b| list.iter().filter(move |v| v.treatment == t && v.block == b);
            (0..4).map(|b| of(b).map(|v| v.value).sum::<f64>() / 2.0).collect()
        })
        .collect();
    let mean = |v: &[f64]| v.iter().sum::<f64>() / v.len() as f64;
    let all = mean(&means.concat());
    let mut interaction = 0.0;
    for treatment in &means {
        for (block, value) in treatment.iter().enumerate() {
            let period = mean(&means.iter().map(|t| t[block]).collect::<Vec<_>>());
            interaction += 2.0 * (value - mean(treatment) - period + all).powi(2);
        }
    }
    let ms = interaction / 6.0;
    let within = 2.0 * 0.49 * 12.0 / 12.0;
    for method in [Method::KenwardRoger, Method::Satterthwaite] {
        let how = How { method, ..How::default() };
        let ours = compare(&list, &Compared::Reference(0), &how);
        let found = ours.variances.unwrap();
        near("within", found.bag.powi(2), within, 1e-12, 0.0);
        near("between", found.group.powi(2), (ms - within) / 2.0, 1e-11, 0.0);
        assert_eq!((found.df_between, found.df_within), (6, 12));
        for (estimate, treatment) in estimates(&ours).iter().zip(1..) {
            near("df", estimate.df, 6.0, 1e-10, 0.0);
            near("se", estimate.se, (ms / 4.0).sqrt(), 1e-11, 0.0);
            let wanted = mean(&means[treatment]) - mean(&means[0]);
            near("difference", estimate.difference, wanted, 1e-12, 0.0);
        }
        let joint = ours.joint.unwrap();
        let between = 8.0 * means.iter().map(|t| (mean(t) - all).powi(2)).sum::<f64>();
        near("F", joint.f, between / 2.0 / ms, 1e-10, 0.0);
        near("df", joint.df2, 6.0, 1e-9, 0.0);
    }
}

/// Each group makes each treatment: differences are within groups, with their degrees of freedom.
#[test]
fn differences_within_groups_do_not_hang_on_groups() {
    let list: Vec<BagValue> = (0..24)
        .map(|i| {
            let (treatment, group) = (i % 3, i / 3);
            let value = 5.0 * (group as f64 * 1.7).sin() + (i as f64 * 2.3).cos();
            bag(treatment, group / 4, group, value + treatment as f64)
        })
        .collect();
    let ours = compare(&list, &Compared::Reference(0), &How::default());
    // The classical blocks are the groups.
    let by_group: Vec<BagValue> =
        list.iter().map(|b| BagValue { block: b.group, ..*b }).collect();
    let classical = compare(&by_group, &Compared::Reference(0), &How::read_with(0.0));
    for (ours, classical) in estimates(&ours).iter().zip(&classical.contrasts) {
        let classical = classical.outcome.as_ref().unwrap();
        near("difference", ours.difference, classical.difference, 1e-11, 1.0);
        near("se", ours.se, classical.se, 1e-10, 0.0);
        near("df", ours.df, classical.df, 1e-9, 0.0);
        near("low", ours.low, classical.low, 1e-8, 1.0);
        assert!(ours.group_share < 1e-9);
    }
}

/// With one bag a group the model is that of blocks and treatments alone, on published sets.
#[test]
fn single_bags_are_the_comparison_without_groups() {
    for set in ["penicillin", "blood", "fabric", "cotton", "recovery", "aov_PlantGrowth"] {
        let list = bags(&experiment(set));
        let ours = compare(&list, &Compared::Reference(0), &How::default());
        let theirs = compare(&list, &Compared::Reference(0), &How::read_with(0.0));
        assert_eq!(ours.variances.unwrap().source, GroupVariance::SingleBags);
        for (ours, theirs) in estimates(&ours).iter().zip(&theirs.contrasts) {
            let theirs = theirs.outcome.as_ref().unwrap();
            near(set, ours.difference, theirs.difference, 1e-11, 1.0);
            near(set, ours.se, theirs.se, 1e-12, 0.0);
            near(set, ours.low, theirs.low, 1e-8, 1.0);
            near(set, ours.high, theirs.high, 1e-8, 1.0);
        }
    }
}

/// SciPy's quadrature of R's data sets (adjusted p of Dunnett's comparisons).
#[test]
fn dunnetts_chances_agree() {
    let list = bags(&experiment("aov_PlantGrowth"));
    let answered = compare(&list, &Compared::Reference(0), &How::default());
    let ours = estimates(&answered);
    near("p", answered.p(&ours[0]), 0.322_695_685_768_773_17, 1e-9, 0.0);
    near("p", answered.p(&ours[1]), 0.153_485_861_515_114_79, 1e-9, 0.0);
}

/// R's `TukeyHSD` (intervals) and the printed p of the NIST handbook's resistances (7.4.7.1).
#[test]
fn all_pairs_are_tukeys() {
    let list = bags(&experiment("aov_PlantGrowth"));
    let answered = compare(&list, &Compared::AllPairs, &How::default());
    assert_eq!(answered.together, Some(Together::StudentizedRange));
    let ours = estimates(&answered);
    let wanted = [
        (-0.371, -1.062_216_1, 0.320_216_1, 0.390_871_1),
        (0.494, -0.197_216_1, 1.185_216_1, 0.197_996_0),
        (0.865, 0.173_783_9, 1.556_216_1, 0.012_006_42),
    ];
    for (ours, (difference, low, high, p)) in ours.iter().zip(wanted) {
        near("difference", ours.difference, difference, 1e-12, 0.0);
        // R's studentized range is off by 1e-6 at 27 degrees of freedom.
        near("low", ours.low, low, 2e-6, 1.0);
        near("high", ours.high, high, 2e-6, 1.0);
        near("p", answered.p(ours), p, 2e-6, 1.0);
    }
    let pairs =
        compare(&bags(&experiment("nist-resistance")), &Compared::AllPairs, &How::default());
    let p = |a: usize, b: usize| {
        let found = pairs.contrasts.iter().find(|c| (c.treatment, c.reference) == (a, b));
        pairs.p(found.unwrap().outcome.as_ref().unwrap())
    };
    for (a, b, wanted) in [
        (1, 0, 0.022_793_4),
        (2, 0, 0.002_210_8),
        (3, 0, 0.996_121_1),
        (2, 1, 0.664_464_9),
        (3, 1, 0.035_154_5),
        (3, 2, 0.003_450_6),
    ] {
        near("p", p(a, b), wanted, 1e-6, 1.0);
    }
}

/// All pairs of an unbalanced class in blocks: the model's own correlations; their bound lies below
/// Tukey and Kramer's, which is conservative (Hayter 1984), and above that of one comparison.
#[test]
fn all_pairs_in_uneven_blocks_use_their_own_correlations() {
    let mut list = Vec::new();
    let counts = [[2, 1, 3, 0], [1, 2, 0, 2], [0, 2, 1, 2], [3, 1, 1, 1]];
    for (block, treatments) in counts.iter().enumerate() {
        for (treatment, &count) in treatments.iter().enumerate() {
            for _ in 0..count {
                let i = list.len() as f64;
                list.push(bag(
                    treatment,
                    block,
                    list.len(),
                    (i * 1.9).sin() + treatment as f64,
                ));
            }
        }
    }
    let ours = compare(&list, &Compared::AllPairs, &How::default());
    assert_eq!(ours.together, Some(Together::Sampled));
    assert!(ours.chance_error < 1e-4, "{}", ours.chance_error);
    let first = estimates(&ours)[0];
    let half = (first.high - first.difference) / first.se;
    let tukey = StudentizedRange::new(4, first.df).quantile(0.95) / 2.0_f64.sqrt();
    assert!(half < tukey && half > 0.97 * tukey, "{half} {tukey}");
    // Another seed, the same to the stated error.
    let other = compare(&list, &Compared::AllPairs, &How { seed: 5, ..How::default() });
    for (a, b) in estimates(&ours).iter().zip(estimates(&other)) {
        let (p, again) = (ours.p(a), other.p(&b));
        assert!((p - again).abs() < 2e-4, "{p} {again}");
        assert!((a.low - b.low).abs() < 2e-3 * a.se);
    }
}

/// A share of the variance that is kept by policy widens what hangs on groups and nothing else.
#[test]
fn a_kept_share_widens_what_hangs_on_groups() {
    // Groups alike on average: the estimate is zero. Group 0 to 3 make both, 4 and 5 one.
    let list: Vec<BagValue> = (0..12)
        .map(|i| {
            let sign = if i % 2 == 0 { 1.0 } else { -1.0 };
            let treatment = if i < 8 { i % 2 } else { (i - 8) / 2 };
            let twin = if i < 8 && i / 2 % 2 == 0 { -sign } else { sign };
            bag(treatment, 0, i / 2, 10.0 + 4.0 * treatment as f64 + twin)
        })
        .collect();
    let with =
        |policy| compare(&list, &Compared::Reference(0), &How { policy, ..How::default() });
    let plain = with(Policy::DegreesFromGroups);
    assert_eq!(plain.variances.unwrap().source, GroupVariance::Zero);
    let kept = with(Policy::LeastShare(0.3));
    let found = kept.variances.unwrap();
    assert_eq!(found.source, GroupVariance::Kept);
    near(
        "share",
        found.group.powi(2) / (found.group.powi(2) + found.bag.powi(2)),
        0.3,
        1e-12,
        0.0,
    );
    assert!(estimates(&kept)[0].group_share > 0.0);
}

/// The smallest difference usually found, by the noncentral t of SciPy 1.17.1 (`power.csv` of the
/// trade): two treatments, n bags each, power 0.80: 3.07 sd at n = 3, 1.80 at 6, 1.51 at 8.
#[test]
fn the_smallest_difference_usually_found_agrees() {
    for (n, wanted, within) in
        [(2, 5.65, 0.005), (3, 3.07, 0.005), (6, 1.80, 0.005), (8, 1.51, 0.005)]
    {
        let list: Vec<BagValue> =
            (0..2 * n).map(|i| bag(i % 2, 0, i, (i as f64 * 2.1).sin())).collect();
        let ours = compare(&list, &Compared::Reference(0), &How::default());
        let sd = ours.variances.unwrap().bag;
        let found = estimates(&ours)[0].smallest_found / sd;
        assert!((found - wanted).abs() <= within, "{n}: {found}");
    }
}

/// PlantGrowth, control and first treatment: d = −0.5327478 (R, SciPy) times the correction of 18
/// degrees of freedom, 0.9576 in Hedges' table; with his approximation 1 − 3/(4·18 − 1) R gives
/// −0.5102374.
#[test]
fn the_standardized_difference_is_hedges() {
    let trials = experiment("aov_PlantGrowth");
    let groups = by_treatment(&trials);
    let pair: Vec<BagValue> = [0_usize, 1]
        .iter()
        .flat_map(|&t| groups[t].1.iter().map(move |&v| (t, v)))
        .enumerate()
        .map(|(group, (t, v))| bag(t, 0, group, v))
        .collect();
    let ours = estimates(&compare(&pair, &Compared::Reference(0), &How::default()));
    let g = ours[0].standardized.unwrap();
    near("correction", g / -0.532_747_8, 0.9576, 1e-4, 0.0);
    near("g", g, -0.510_237_4, 2e-4, 0.0);
    near("ratio", ours[0].ratio.unwrap(), 4.661 / 5.032, 1e-12, 0.0);
}
