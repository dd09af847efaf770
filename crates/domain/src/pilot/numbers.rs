//! Numbers of the bag model as a pilot leaves them.

use super::linear::{narrowed, root, solved};
use barm_science::prior::Learned;

/// Wider than this a number cannot be after a measurement (1); a little more than 1 for rounding in
/// a file.
const WIDEST: f64 = 1.01;
/// Further than this from the best guess no measurement takes a number (1).
const FARTHEST: f64 = 12.0;

/// Mean and standard deviation of a number, as it was before any measurement if nothing is known.
pub(super) fn of(learned: &Learned, name: &str) -> (f64, f64) {
    learned.place(name).map_or((0.0, 1.0), |at| (learned.means[at], learned.sd(at)))
}

/// What is wrong with numbers that are said to come from a pilot; nothing if they can.
pub fn impossible(learned: &Learned) -> Option<String> {
    if let Err(error) = learned.check() {
        return Some(error.to_string());
    }
    let odd = (0..learned.len())
        .find(|at| learned.sd(*at) > WIDEST || learned.means[*at].abs() > FARTHEST)?;
    Some(format!("{} is further off or wider than any pilot leaves it", learned.names[odd]))
}

/// The same with a place for each of these names.
fn with_all(learned: &Learned, names: &[&str]) -> Learned {
    let missing: Vec<String> = names
        .iter()
        .filter(|name| learned.place(name).is_none())
        .map(|name| (*name).to_owned())
        .collect();
    let count = missing.len();
    let unit = |i: usize| (0..count).map(|j| f64::from(u8::from(i == j))).collect();
    learned.with(&Learned {
        names: missing,
        means: vec![0.0; count],
        covariance: (0..count).map(unit).collect(),
    })
}

/// What is known of numbers once some of them became known otherwise, through something of which
/// each is a part: yᵢ = share z(nameᵢ) + own eᵢ, e ~ N(0, 1), of which `found` says mean and
/// covariance.
///
/// ```text
/// z ← z + K (mean y′ − mean y)      C ← C + K (cov y′ − cov y) Kᵀ      K = cov(z, y) (cov y)⁻¹
/// ```
///
/// # Source
/// Conditioning of a normal distribution on part of it; R. C. Jeffrey's rule, *The Logic of
/// Decision* (1965), ch. 11, from memory. Where moments of a distribution that is not normal would
/// widen something, it keeps the width it had.
pub(super) fn told(before: &Learned, names: &[&str], share: f64, found: &Told) -> Learned {
    let all = with_all(before, names);
    let places: Vec<usize> = names.iter().filter_map(|name| all.place(name)).collect();
    let known = through(&all, names, share, found.own);
    // Each row of K solves (cov y) kᵀ = cov(y, z).
    let Some(lower) = root(&known.covariance) else { return all };
    let gain: Vec<Vec<f64>> = all
        .covariance
        .iter()
        .map(|row| {
            let with_y: Vec<f64> = places.iter().map(|at| share * row[*at]).collect();
            solved(&lower, &with_y)
        })
        .collect();
    let off: Vec<f64> = found.mean.iter().zip(&known.mean).map(|(a, b)| a - b).collect();
    let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let narrowed = narrowed(&found.covariance, &lower);
    let change: Vec<Vec<f64>> = (0..places.len())
        .map(|i| {
            let pair = narrowed[i].iter().zip(&known.covariance[i]);
            pair.map(|(after, before)| after - before).collect()
        })
        .collect();
    let count = all.len();
    let entry = |i: usize, j: usize| {
        let along: Vec<f64> = change.iter().map(|row| dot(row, &gain[j])).collect();
        all.covariance[i][j] + dot(&gain[i], &along)
    };
    Learned {
        means: all.means.iter().zip(&gain).map(|(mean, k)| mean + dot(k, &off)).collect(),
        covariance: (0..count).map(|i| (0..count).map(|j| entry(i, j)).collect()).collect(),
        names: all.names,
    }
}

/// Mean and covariance of yᵢ = share z(nameᵢ) + own eᵢ.
pub(super) fn through(learned: &Learned, names: &[&str], share: f64, own: f64) -> Told {
    let all = with_all(learned, names);
    let places: Vec<usize> = names.iter().filter_map(|name| all.place(name)).collect();
    let entry = |i: usize, j: usize| {
        let apart = if i == j { own * own } else { 0.0 };
        share * share * all.covariance[places[i]][places[j]] + apart
    };
    let count = places.len();
    Told {
        mean: places.iter().map(|at| share * all.means[*at]).collect(),
        covariance: (0..count).map(|i| (0..count).map(|j| entry(i, j)).collect()).collect(),
        own,
    }
}

/// Something of which numbers are a part, as it became known.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Told {
    /// Means.
    pub mean: Vec<f64>,
    /// Covariance.
    pub covariance: Vec<Vec<f64>>,
    /// Standard deviation of what each has besides the number (1).
    pub own: f64,
}

#[cfg(test)]
mod tests {
    use super::{Learned, Told, impossible, of, through, told, with_all};

    /// y = z + e with both standard normal; y is measured as 1 without doubt. By the textbook:
    /// z has mean 1/2 and variance 1/2.
    #[test]
    fn half_of_what_is_seen_is_the_number() {
        let known = Told { mean: vec![1.0], covariance: vec![vec![0.0]], own: 1.0 };
        let after = told(&Learned::default(), &["wake"], 1.0, &known);
        let (mean, sd) = of(&after, "wake");
        assert!((mean - 0.5).abs() < 1e-12, "{mean}");
        assert!((sd * sd - 0.5).abs() < 1e-12, "{sd}");
    }

    /// Two numbers of correlation 0.8; the first is found to be 2 without doubt. The second then
    /// has mean 1.6 and variance 1 − 0.64.
    #[test]
    fn what_goes_together_is_learned_together() {
        let names = vec!["a".to_owned(), "b".to_owned()];
        let covariance = vec![vec![1.0, 0.8], vec![0.8, 1.0]];
        let before = Learned { names, means: vec![0.0; 2], covariance };
        let known = Told { mean: vec![2.0], covariance: vec![vec![0.0]], own: 0.0 };
        let after = told(&before, &["a"], 1.0, &known);
        assert!((after.means[1] - 1.6).abs() < 1e-12);
        assert!((after.covariance[1][1] - 0.36).abs() < 1e-12);
        assert!(after.covariance[0][0].abs() < 1e-12);
    }

    /// One of two numbers is said to be known less well than before, the other better: it stays as it
    /// was, the other is taken.
    #[test]
    fn nothing_is_known_less_well_than_before() {
        let covariance = vec![vec![1.2, 0.0], vec![0.0, 0.25]];
        let known = Told { mean: vec![0.3, 0.4], covariance, own: 0.0 };
        let after = told(&Learned::default(), &["a", "b"], 1.0, &known);
        assert!((of(&after, "a").1 - 1.0).abs() < 1e-12);
        assert!((of(&after, "b").1 - 0.5).abs() < 1e-12);
        assert!((after.means[0] - 0.3).abs() < 1e-12);
        // Turned by an eighth of a turn: variances 1.5 and 0.5 along the diagonals.
        let covariance = vec![vec![1.0, 0.5], vec![0.5, 1.0]];
        let known = Told { mean: vec![0.0; 2], covariance, own: 0.0 };
        let after = told(&Learned::default(), &["a", "b"], 1.0, &known);
        // By hand: 1 and 0.5 along the diagonals, so 0.75 each and 0.25 together.
        assert!((after.covariance[0][0] - 0.75).abs() < 1e-12, "{:?}", after.covariance);
        assert!((after.covariance[0][1] - 0.25).abs() < 1e-12, "{:?}", after.covariance);
    }

    /// To be told what was believed anyway teaches nothing.
    #[test]
    fn no_news_changes_nothing() {
        let before = with_all(&Learned::default(), &["a", "b"]);
        let same = through(&before, &["a", "b"], 0.9, 0.4);
        let after = told(&before, &["a", "b"], 0.9, &same);
        assert_eq!(before.names, after.names);
        for (one, other) in before.covariance.iter().zip(&after.covariance) {
            assert!(one.iter().zip(other).all(|(a, b)| (a - b).abs() < 1e-14));
        }
    }

    #[test]
    fn what_no_pilot_leaves_is_told_apart() {
        let good = with_all(&Learned::default(), &["a", "b"]);
        assert_eq!(impossible(&good), None);
        let bad = |change: fn(&mut Learned)| {
            let mut learned = good.clone();
            change(&mut learned);
            impossible(&learned).is_some()
        };
        assert!(bad(|learned| learned.means[0] = f64::NAN));
        assert!(bad(|learned| learned.means[0] = 40.0));
        assert!(bad(|learned| learned.covariance[0][0] = 1.5));
        assert!(bad(|learned| learned.covariance[0][1] = 0.3));
    }
}
