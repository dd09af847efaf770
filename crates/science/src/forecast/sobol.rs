//! Points that fill a cube more evenly than chance does, in as many dimensions as a day has
//! uncertain numbers.
//!
//! # Source
//! I. M. Sobol' (1967), *USSR Comput. Math. Math. Phys.* 7, 86-112, in the order of Gray's code;
//! direction numbers of S. Joe, F. Y. Kuo (2008), "Constructing Sobol sequences with better
//! two-dimensional projections", *SIAM J. Sci. Comput.* 30, 2635-2654, table new-joe-kuo-6, as
//! SciPy 1.17.1 has them. Scrambling by a random lower triangular matrix and a shift: J. Matoušek
//! (1998), "On the L2-discrepancy for anchored boxes", *J. Complexity* 14, 527-556; its variance
//! is that of full nested scrambling (A. B. Owen (2003), "Variance with alternative scramblings of
//! digital nets", *ACM Trans. Model. Comput. Simul.* 13, 363-378).

use super::directions::ROWS;
use super::streams::SplitMix;

/// Bits of a coordinate.
const BITS: usize = 32;

/// Dimensions there are.
pub(super) const DIMENSIONS: usize = ROWS.len();

/// One coordinate of the points: the pattern that each bit of a point's number switches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Coordinate {
    patterns: [u32; BITS],
    shift: u32,
}

impl Coordinate {
    /// Coordinate `dimension` (from 0) as published, its first point at 0.
    fn plain(dimension: usize) -> Self {
        let (polynomial, first) = ROWS[dimension];
        let degree = first.len();
        let mut patterns = [0; BITS];
        for j in 0..BITS {
            patterns[j] = if degree == 0 {
                1 << (BITS - 1 - j)
            } else if j < degree {
                first[j] << (BITS - 1 - j)
            } else {
                let back = patterns[j - degree];
                (1..degree).fold(back ^ (back >> degree), |sum, k| {
                    if polynomial >> (degree - k) & 1 == 1 {
                        sum ^ patterns[j - k]
                    } else {
                        sum
                    }
                })
            };
        }
        Self { patterns, shift: 0 }
    }

    /// The same, scrambled: every point is uniform by itself, and the points together are as even
    /// as before.
    pub(super) fn scrambled(dimension: usize, random: &mut SplitMix) -> Self {
        let mut half = || (random.next() >> 32) as u32;
        // Row i of the matrix: any of the digits before digit i, and itself.
        let rows: [u32; BITS] = core::array::from_fn(|i| {
            let own = 1 << (BITS - 1 - i);
            half() & !(own | (own - 1)) | own
        });
        let stirred = |pattern: u32| {
            rows.iter().fold(0, |digits, row| digits << 1 | (row & pattern).count_ones() & 1)
        };
        Self { patterns: Self::plain(dimension).patterns.map(stirred), shift: half() }
    }

    /// The first `count` values, inside (0, 1).
    pub(super) fn values(&self, count: usize) -> impl Iterator<Item = f64> {
        let mut bits = self.shift;
        (1..=count).map(move |following| {
            let value = (f64::from(bits) + 0.5) * HALF_TO_BITS;
            bits ^= self.patterns[following.trailing_zeros() as usize % BITS];
            value
        })
    }
}

/// 2⁻³².
const HALF_TO_BITS: f64 = 1.0 / (1_u64 << BITS) as f64;

#[cfg(test)]
mod tests {
    use super::{Coordinate, DIMENSIONS};
    use crate::forecast::streams::SplitMix;

    fn points(coordinates: &[Coordinate], count: usize, cells: f64) -> Vec<Vec<i64>> {
        let columns: Vec<Vec<f64>> =
            coordinates.iter().map(|one| one.values(count).collect()).collect();
        (0..count)
            .map(|k| columns.iter().map(|column| (column[k] * cells).floor() as i64).collect())
            .collect()
    }

    /// Unscrambled points of SciPy 1.17.1, `qmc.Sobol(96, scramble=False)`: the first eight in
    /// eighths (six dimensions), number 999 in 1024ths (all).
    #[test]
    fn points_are_those_of_the_published_table() {
        let plain: Vec<Coordinate> = (0..DIMENSIONS).map(Coordinate::plain).collect();
        let first = [
            [0, 0, 0, 0, 0, 0],
            [4, 4, 4, 4, 4, 4],
            [6, 2, 2, 2, 6, 6],
            [2, 6, 6, 6, 2, 2],
            [3, 3, 5, 7, 3, 1],
            [7, 7, 1, 3, 7, 5],
            [5, 1, 7, 5, 5, 7],
            [1, 5, 3, 1, 1, 3],
        ];
        assert_eq!(points(&plain[..6], 8, 8.0), first);
        let late = [
            161, 931, 83, 1013, 991, 865, 879, 729, 833, 647, 23, 453, 485, 969, 851, 571, 289,
            673, 695, 39, 343, 371, 397, 361, 789, 353, 233, 171, 381, 797, 983, 85, 495, 799,
            757, 341, 549, 147, 763, 811, 359, 709, 791, 655, 285, 671, 957, 365, 959, 299,
            169, 849, 579, 129, 577, 721, 145, 657, 329, 393, 9, 681, 585, 649, 581, 829, 893,
            893, 133, 45, 221, 453, 613, 565, 509, 85, 223, 611, 931, 187, 303, 51, 759, 191,
            287, 687, 3, 299, 407, 659, 211, 739, 199, 935, 823, 183,
        ];
        assert_eq!(points(&plain, 1000, 1024.0)[999], late);
    }

    /// What makes the points even: any 2ᵐ points from the start hold one in each of 2ᵐ equal
    /// slices of every coordinate, and of the first two coordinates together in every shape of box.
    #[test]
    fn scrambled_points_stay_even() {
        for seed in 0..8 {
            let mut random = SplitMix(seed);
            let stirred: Vec<Coordinate> =
                (0..DIMENSIONS).map(|d| Coordinate::scrambled(d, &mut random)).collect();
            for one in &stirred {
                let mut slices: Vec<usize> =
                    one.values(256).map(|value| (value * 256.0) as usize).collect();
                slices.sort_unstable();
                assert_eq!(slices, (0..256).collect::<Vec<_>>());
            }
            for (wide, high) in [(1, 256), (2, 128), (16, 16), (64, 4)] {
                let pairs = stirred[0].values(256).zip(stirred[1].values(256));
                let mut boxes: Vec<usize> = pairs
                    .map(|(x, y)| {
                        (x * wide as f64) as usize * high + (y * high as f64) as usize
                    })
                    .collect();
                boxes.sort_unstable();
                assert_eq!(boxes, (0..256).collect::<Vec<_>>(), "{wide} by {high}");
            }
        }
    }

    /// Every single point is uniform over seeds: the mean of its value and of its square over
    /// 20,000 seeds lies within four standard errors of a uniform number's.
    #[test]
    fn a_single_scrambled_point_is_a_uniform_number() {
        for place in [0, 1, 5] {
            let values: Vec<f64> = (0..20_000)
                .map(|seed| {
                    let mut random = SplitMix(1000 + seed);
                    let one = Coordinate::scrambled(3, &mut random);
                    one.values(place + 1).last().expect("a point")
                })
                .collect();
            let mean = |power: i32| {
                values.iter().map(|v| v.powi(power)).sum::<f64>() / values.len() as f64
            };
            let error = |variance: f64| 4.0 * (variance / values.len() as f64).sqrt();
            assert!((mean(1) - 0.5).abs() < error(1.0 / 12.0), "mean {}", mean(1));
            assert!((mean(2) - 1.0 / 3.0).abs() < error(4.0 / 45.0), "square {}", mean(2));
        }
    }
}
