//! What is known beforehand of groups and of spreads, and how it meets what the bags say.

use crate::bags::{bag, finite};
use crate::experiments::{by_treatment, experiment, near, r_values};
use crate::mixed_literal::{Bag, Literal, Matrix, bags, product, transposed};
use barm_science::statistics::compare::{
    BagValue, Compared, Comparison, Estimate, How, compare,
};
use barm_science::statistics::mixed::{
    Expected, GroupVariance, Method, Policy, TreatmentSpreads,
};
use barm_science::statistics::verdict::{Code, Reason, verdict};
use proptest::prelude::*;

/// As good as nothing known, in degrees of freedom.
const NOTHING: f64 = 1e-9;

fn values(bags: &[Bag]) -> Vec<BagValue> {
    bags.iter()
        .map(|&(value, treatment, block, group)| bag(treatment, block, group, value))
        .collect()
}

fn estimates(answer: &Comparison) -> Vec<Estimate> {
    answer.contrasts.iter().map(|c| *c.outcome.as_ref().unwrap()).collect()
}

fn expecting(ratio: f64, df: f64) -> How {
    How { policy: Policy::Expected(Expected { ratio, df }), ..How::default() }
}

/// R 4.2.2, `t.test(var.equal = FALSE)`: with nothing known beforehand of spreads, two treatments in one
/// period are compared by Welch's t, with its degrees of freedom.
#[test]
fn with_nothing_known_two_treatments_are_welchs() {
    let how = How { spreads: TreatmentSpreads::Apart(NOTHING), ..How::default() };
    for set in ["t_sleep", "t_chick_casein_linseed"] {
        let r = r_values(set);
        let groups = by_treatment(&experiment(set));
        let (a, b) = (&groups[0].1, &groups[1].1);
        let sides = a.iter().map(|&v| (1, v)).chain(b.iter().map(|&v| (0, v)));
        let list: Vec<BagValue> =
            sides.enumerate().map(|(group, (t, v))| bag(t, 0, group, v)).collect();
        let ours = estimates(&compare(&list, &Compared::Reference(0), &how))[0];
        let wanted =
            |what: &str| r[&("t.test(A,B,var.equal=FALSE)".to_owned(), what.to_owned())];
        near(set, ours.difference / ours.se, wanted("t"), 1e-8, 0.0);
        near(set, ours.df, wanted("df"), 1e-7, 0.0);
        near(set, ours.p_alone, wanted("p"), 1e-7, 0.0);
        near(set, ours.low, wanted("ci lo"), 1e-7, 0.0);
        near(set, ours.high, wanted("ci hi"), 1e-7, 0.0);
    }
}

/// Worked by hand: variances of 1 and 9 with 4 degrees of freedom each, known beforehand as well as 1
/// would tell. The common one is 5, the two come to 9/5 and 41/5, and the difference of two means of
/// 5 has the variance 2. What is drawn away, 2 · 0.2/5, goes to the common one, which the bags tell by
/// 2 · 4/5: so each sum of squares counts (0.2 + 0.08/1.6)/5 = 0.05 times. Chance makes
/// 0.05² · 4 · (1.8² + 8.2²) of it; as 0.05 · 4 is the 0.2 of either mean, nothing is off on average.
#[test]
fn spreads_are_drawn_towards_the_common_one() {
    let off = [-1.0, -1.0, 0.0, 1.0, 1.0];
    let list: Vec<BagValue> = (0..10)
        .map(|at| bag(at / 5, 0, at, [10.0, 20.0][at / 5] + [1.0, 3.0][at / 5] * off[at % 5]))
        .collect();
    let how = How { spreads: TreatmentSpreads::Apart(1.0), ..How::default() };
    let ours = estimates(&compare(&list, &Compared::Reference(0), &how))[0];
    near("se", ours.se, 2.0_f64.sqrt(), 1e-12, 0.0);
    let chance = 0.05_f64.powi(2) * 4.0 * (1.8_f64.powi(2) + 8.2_f64.powi(2));
    near("df", ours.df, 4.0 / chance, 1e-12, 0.0);
}

/// The variances of treatments as they are written, with full matrices: residuals σ² P y with groups
/// predicted, leverages from P, and each treatment's share of an estimate from its weights.
fn literally(
    bags: &[Bag],
    (within, between): (f64, f64),
    known: f64,
    alike: &Estimate,
    column: usize,
) -> (f64, f64) {
    let literal = Literal::of(bags, 2, 3);
    let (vi, _, phi, _) = literal.solved(within, between);
    let p = literal.projected(&vi, &phi);
    let left = product(&p, &literal.y);
    let weights: Matrix = transposed(&product(&product(&vi, &literal.x), &phi));
    let (mut squares, mut df, mut shares) = ([0.0; 3], [0.0; 3], [0.0; 3]);
    let mut common = [[0.0; 3]; 3];
    for (i, one) in bags.iter().enumerate() {
        squares[one.1] += (within * left[i][0]).powi(2);
        df[one.1] += within * p[i][i];
        shares[one.1] += weights[column][i].powi(2);
        for (j, other) in bags.iter().enumerate() {
            common[one.1][other.1] += (within * p[i][j]).powi(2);
        }
    }
    let sum = |of: &dyn Fn(usize) -> f64| (0..3).map(of).sum::<f64>();
    let told = sum(&|t| df[t] / (known + df[t]));
    let s = sum(&|t| squares[t] / (known + df[t])) / told;
    let own = |t: usize| (known * s + squares[t]) / (known + df[t]);
    let variance = phi[column][column] + sum(&|t| (own(t) - within) * shares[t]);
    let drawn = sum(&|t| shares[t] * known / (known + df[t]));
    let c = |t: usize| (shares[t] + drawn / told) / (known + df[t]);
    let chance = sum(&|t| sum(&|u| c(t) * c(u) * common[t][u] * own(t) * own(u)));
    let away = sum(&|u| (own(u) * (sum(&|t| c(t) * common[t][u]) - shares[u])).powi(2) / known);
    let part = within * sum(&|t| shares[t]) / phi[column][column];
    let pooled = part * part * sum(&|t| sum(&|u| common[t][u])) / sum(&|t| df[t]).powi(2);
    let groups = (1.0 / alike.df - pooled).max(0.0);
    (variance.sqrt(), 1.0 / ((chance + away) / variance.powi(2) + groups))
}

/// In pairs that one group made, the two treatments leave the same over: only the sum of their
/// variances is seen, and it needs nothing known beforehand. The comparison is the paired t.
#[test]
fn pairs_stay_the_paired_t() {
    let list: Vec<BagValue> = (0..12)
        .map(|at| {
            let value = [5.0, 9.5, 7.0, 8.0, 4.0, 10.5, 6.0, 9.0, 8.0, 10.0, 3.0, 9.0][at];
            bag(at % 2, at / 2, at / 2, value)
        })
        .collect();
    let [alike, apart] =
        [TreatmentSpreads::Alike, TreatmentSpreads::Apart(3.0)].map(|spreads| {
            let how = How { spreads, ..How::default() };
            estimates(&compare(&list, &Compared::Reference(0), &how))[0]
        });
    near("se", apart.se, alike.se, 1e-12, 0.0);
    near("df", apart.df, 5.0, 1e-9, 0.0);
    near("low", apart.low, alike.low, 1e-9, 0.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::size::counts(40, 120, 1_500)))]

    #[test]
    fn variances_of_treatments_are_what_is_written(bags in bags(), known in 0.5_f64..9.0) {
        let list = values(&bags);
        let with = |spreads| {
            let how = How { method: Method::Satterthwaite, spreads, ..How::default() };
            compare(&list, &Compared::Reference(0), &how)
        };
        let (alike, apart) =
            (with(TreatmentSpreads::Alike), with(TreatmentSpreads::Apart(known)));
        let found = alike.variances.unwrap();
        let variances = (found.bag.powi(2), found.group.powi(2));
        let whole = (found.df_within + found.df_between) as f64;
        for (at, (alike, apart)) in
            estimates(&alike).iter().zip(&estimates(&apart)).enumerate()
        {
            let (se, df) = literally(&bags, variances, known, alike, 2 + at);
            near("se", apart.se, se, 1e-7, 0.0);
            near("df", apart.df, df.clamp(1.0, whole), 1e-5, 0.0);
        }
    }

    /// What is expected of groups moves the likelihood's top to where the sum of both is highest.
    #[test]
    fn an_expected_ratio_counts_as_pairs_would(
        bags in bags(),
        ratio in 0.0_f64..2.0,
        df in 0.1_f64..20.0,
    ) {
        let answer = compare(&values(&bags), &Compared::Reference(0), &expecting(ratio, df));
        let found = answer.variances.unwrap();
        let (within, between) = (found.bag.powi(2), found.group.powi(2));
        let literal = Literal::of(&bags, 2, 3);
        let whole = |within: f64, between: f64| {
            let pairs = 1.0 + 2.0 * between / within;
            literal.criterion(within, between)
                + df * (pairs.ln() + (1.0 + 2.0 * ratio) / pairs)
        };
        let ours = whole(within, between);
        let total = within + between;
        for share in [0.0, 0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99] {
            // The size that goes best with a ratio, and others beside it.
            for size in [0.6, 0.8, 0.9, 1.0, 1.1, 1.25, 1.6] {
                let all = size * total;
                let other = whole((1.0 - share) * all, share * all);
                prop_assert!(other > ours - 1e-7, "{share} {size}: {other} {ours}");
            }
        }
    }
}

/// With nothing known the answer is that of the bags; with much known the ratio is the expected one.
#[test]
fn what_is_known_counts_by_its_degrees_of_freedom() {
    let list: Vec<BagValue> = (0..24)
        .map(|at| {
            let (group, treatment) = (at / 2, at / 2 % 3);
            let habit = [3.0, -1.0, 0.5, -2.0, 1.5, 0.0][group % 6];
            bag(treatment, group / 6, group, 10.0 + habit + [0.4, -0.7, 1.1][at % 3])
        })
        .collect();
    let with = |how: &How| compare(&list, &Compared::Reference(0), how);
    let (plain, nothing) = (with(&How::default()), with(&expecting(0.5, NOTHING)));
    for (plain, nothing) in estimates(&plain).iter().zip(&estimates(&nothing)) {
        near("se", nothing.se, plain.se, 1e-6, 0.0);
        near("df", nothing.df, plain.df, 1e-6, 0.0);
    }
    let much = with(&expecting(0.5, 1e9)).variances.unwrap();
    near("ratio", (much.group / much.bag).powi(2), 0.5, 1e-6, 0.0);
}

/// One group a treatment: nothing tells how much groups differ. What is expected of them gives a
/// difference with its doubt, and the verdict never goes beyond a leaning.
#[test]
fn what_only_rests_on_the_expected_is_never_clear() {
    let list: Vec<BagValue> = (0..8)
        .map(|at| bag(at / 4, 0, at / 4, 10.0 + 60.0 * (at / 4) as f64 + (at % 4) as f64))
        .collect();
    let answer = compare(&list, &Compared::Reference(0), &How::of_a_class(0.7));
    assert_eq!(answer.variances.unwrap().source, GroupVariance::Assumed);
    let ours = estimates(&answer)[0];
    assert!(ours.low > 0.0 && ours.assumes_groups, "{ours:?}");
    let said = verdict(&answer.contrasts[0], 3.0);
    assert_eq!(said.code, Code::Leaning);
    assert!(matches!(said.reason, Reason::OneGroup { .. }), "{:?}", said.reason);
}

/// Values that nobody reads, beside zeros: nothing is NaN, and no interval is the wrong way round.
#[test]
fn absurd_values_stay_numbers() {
    for (wild, other) in [(-2e97, 4.6e92), (1e99, 0.0), (3e60, -3e60), (1e-90, 1e-80)] {
        let values = [wild, 0.0, 0.0, 0.0, other, 0.0, 0.0, 0.0, 0.0];
        let list: Vec<BagValue> = values
            .iter()
            .enumerate()
            .map(|(at, &value)| bag(at % 3, at / 6, at / 2, value))
            .collect();
        let answer = compare(&list, &Compared::Reference(0), &How::of_a_class(0.7));
        assert!(finite(&answer), "{answer:?}");
        for one in estimates(&answer) {
            assert!(one.low <= one.difference && one.difference <= one.high, "{one:?}");
        }
    }
}
