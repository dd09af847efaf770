//! All deals of a table whose deals are few.

use crate::statistics::blocked::Blocked;

/// Rows of a block beyond which its deals are not listed.
const LONGEST: usize = 1_000;

/// For each block, what each of its deals gives to the sums of the levels.
#[derive(Debug)]
pub(super) struct Deals {
    /// From blocks that can be dealt in one way only.
    fixed: Vec<f64>,
    blocks: Vec<Vec<Vec<f64>>>,
}

impl Deals {
    /// Lists the deals of each block; `None` where all blocks together have more than `most`.
    pub(super) fn of(table: &Blocked, most: u64) -> Option<Self> {
        let levels = table.inverse.len();
        let mut all = 1_u64;
        let mut fixed = vec![0.0; levels];
        let mut open = Vec::new();
        for ends in table.starts.windows(2) {
            let (labels, values) =
                (&table.labels[ends[0]..ends[1]], &table.centered[ends[0]..ends[1]]);
            let mut counts = vec![0_usize; levels];
            for &level in labels {
                counts[level] += 1;
            }
            let own = deals(&counts, most)?;
            all = all.checked_mul(own)?;
            if all > most || (own > 1 && labels.len() > LONGEST) {
                return None;
            }
            if own > 1 {
                open.push((values, counts));
            } else {
                fixed[labels[0]] += values.iter().sum::<f64>();
            }
        }
        let listed = |(values, mut left): (&[f64], Vec<usize>)| {
            let mut found = Vec::new();
            deal(values, &mut left, &mut vec![0.0; levels], &mut found);
            found
        };
        Some(Self { fixed, blocks: open.into_iter().map(listed).collect() })
    }

    /// Hands over the sums of the levels in every deal.
    pub(super) fn each(&self, mut hand: impl FnMut(&[f64])) {
        self.from(0, &self.fixed, &mut hand);
    }

    fn from(&self, block: usize, before: &[f64], hand: &mut impl FnMut(&[f64])) {
        let Some(own) = self.blocks.get(block) else { return hand(before) };
        for deal in own {
            let sums: Vec<f64> = before.iter().zip(deal).map(|(a, b)| a + b).collect();
            self.from(block + 1, &sums, hand);
        }
    }
}

/// In how many ways labels of these counts can be dealt; `None` if more than `most`.
fn deals(counts: &[usize], most: u64) -> Option<u64> {
    let (mut all, mut dealt) = (1_u64, 0_u64);
    for &count in counts {
        // (dealt + count)! / (dealt! count!), kept whole step by step.
        for step in 1..=count as u64 {
            dealt += 1;
            all = all.checked_mul(dealt)? / step;
            // It never falls again: each factor is dealt/step ≥ 1.
            if all > most {
                return None;
            }
        }
    }
    Some(all)
}

/// Deals what is left of the labels to what is left of the values.
fn deal(values: &[f64], left: &mut [usize], sums: &mut Vec<f64>, found: &mut Vec<Vec<f64>>) {
    let Some((value, rest)) = values.split_first() else {
        found.push(sums.clone());
        return;
    };
    for level in 0..left.len() {
        if left[level] == 0 {
            continue;
        }
        let before = sums[level];
        left[level] -= 1;
        sums[level] += value;
        deal(rest, left, sums, found);
        sums[level] = before;
        left[level] += 1;
    }
}
