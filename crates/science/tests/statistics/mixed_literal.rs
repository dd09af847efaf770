//! The mixed model against its formulas written out with full matrices.

use crate::experiments::near;
use barm_science::statistics::mixed::{Method, Mixed, Policy, Records};
use proptest::prelude::*;

pub(crate) type Matrix = Vec<Vec<f64>>;

pub(crate) fn product(a: &Matrix, b: &Matrix) -> Matrix {
    let inner = |row: &[f64], j: usize| row.iter().zip(b).map(|(x, r)| x * r[j]).sum();
    a.iter().map(|row| (0..b[0].len()).map(|j| inner(row, j)).collect()).collect()
}

pub(crate) fn transposed(a: &Matrix) -> Matrix {
    (0..a[0].len()).map(|j| a.iter().map(|row| row[j]).collect()).collect()
}

fn trace(a: &Matrix) -> f64 {
    (0..a.len()).map(|i| a[i][i]).sum()
}

fn combined(a: &Matrix, times: f64, b: &Matrix) -> Matrix {
    a.iter()
        .zip(b)
        .map(|(x, y)| x.iter().zip(y).map(|(p, q)| p + times * q).collect())
        .collect()
}

/// Gauss–Jordan with row pivoting; the logarithm of the determinant beside it.
fn inverse(a: &Matrix) -> (Matrix, f64) {
    let n = a.len();
    let mut work: Matrix = a.clone();
    let mut out: Matrix =
        (0..n).map(|i| (0..n).map(|j| f64::from(u8::from(i == j))).collect()).collect();
    let mut ln = 0.0;
    for k in 0..n {
        let best =
            (k..n).max_by(|&i, &j| work[i][k].abs().total_cmp(&work[j][k].abs())).unwrap();
        work.swap(k, best);
        out.swap(k, best);
        let pivot = work[k][k];
        ln += pivot.abs().ln();
        for j in 0..n {
            work[k][j] /= pivot;
            out[k][j] /= pivot;
        }
        for i in (0..n).filter(|&i| i != k) {
            let times = work[i][k];
            for j in 0..n {
                work[i][j] -= times * work[k][j];
                out[i][j] -= times * out[k][j];
            }
        }
    }
    (out, ln)
}

/// A design: value, treatment, block, group.
pub(crate) type Bag = (f64, usize, usize, usize);

pub(crate) struct Literal {
    pub(crate) x: Matrix,
    zz: Matrix,
    pub(crate) y: Matrix,
}

impl Literal {
    /// Columns of all blocks, then of all treatments but the first.
    pub(crate) fn of(bags: &[Bag], blocks: usize, treatments: usize) -> Self {
        let mark = |yes: bool| f64::from(u8::from(yes));
        let x = bags
            .iter()
            .map(|bag| {
                let block = (0..blocks).map(|b| mark(bag.2 == b));
                block.chain((1..treatments).map(|t| mark(bag.1 == t))).collect()
            })
            .collect();
        let same = |a: &Bag, b: &Bag| mark((a.2, a.3) == (b.2, b.3));
        let zz = bags.iter().map(|a| bags.iter().map(|b| same(a, b)).collect()).collect();
        Self { x, zz, y: bags.iter().map(|bag| vec![bag.0]).collect() }
    }

    /// Minus twice the restricted log-likelihood, all constants in it.
    pub(crate) fn criterion(&self, within: f64, between: f64) -> f64 {
        let (vi, ln_v, phi, ln_a) = self.solved(within, between);
        let p = self.projected(&vi, &phi);
        let rest = product(&product(&transposed(&self.y), &p), &self.y)[0][0];
        let free = (self.y.len() - self.x[0].len()) as f64;
        free * (2.0 * std::f64::consts::PI).ln() + ln_v + ln_a + rest
    }

    pub(crate) fn solved(&self, within: f64, between: f64) -> (Matrix, f64, Matrix, f64) {
        let n = self.y.len();
        let one: Matrix = (0..n)
            .map(|i| (0..n).map(|j| within * f64::from(u8::from(i == j))).collect())
            .collect();
        let (vi, ln_v) = inverse(&combined(&one, between, &self.zz));
        let (phi, ln_phi) = inverse(&product(&product(&transposed(&self.x), &vi), &self.x));
        (vi, ln_v, phi, ln_phi)
    }

    pub(crate) fn projected(&self, vi: &Matrix, phi: &Matrix) -> Matrix {
        let vx = product(vi, &self.x);
        combined(vi, -1.0, &product(&product(&vx, phi), &transposed(&vx)))
    }

    /// Kenward and Roger's adjusted covariance Φ_A, and for the rows L their λ F and m, as printed.
    fn kenward_roger(&self, within: f64, between: f64, rows: &Matrix) -> (Matrix, f64, f64) {
        let n = self.y.len();
        let (vi, _, phi, _) = self.solved(within, between);
        let one: Matrix =
            (0..n).map(|i| (0..n).map(|j| f64::from(u8::from(i == j))).collect()).collect();
        let parts = [one, self.zz.clone()];
        let xt = transposed(&self.x);
        let p: Vec<Matrix> = parts
            .iter()
            .map(|part| {
                let inner = product(&product(&vi, part), &vi);
                let minus = product(&product(&xt, &inner), &self.x);
                minus.iter().map(|row| row.iter().map(|v| -v).collect()).collect()
            })
            .collect();
        let q = |i: usize, j: usize| {
            let inner =
                product(&product(&product(&product(&vi, &parts[i]), &vi), &parts[j]), &vi);
            product(&product(&xt, &inner), &self.x)
        };
        let mut information = vec![vec![0.0; 2]; 2];
        for i in 0..2 {
            for j in 0..2 {
                let first = trace(&product(&product(&product(&vi, &parts[i]), &vi), &parts[j]));
                let second = trace(&product(&phi, &q(i, j)));
                let third = trace(&product(&product(&product(&phi, &p[i]), &phi), &p[j]));
                information[i][j] = 0.5 * (first - 2.0 * second + third);
            }
        }
        let (w, _) = inverse(&information);
        let mut sum = combined(&phi, -1.0, &phi);
        for i in 0..2 {
            for j in 0..2 {
                let inner = combined(&q(i, j), -1.0, &product(&product(&p[i], &phi), &p[j]));
                sum = combined(&sum, w[i][j], &inner);
            }
        }
        let adjusted = combined(&phi, 2.0, &product(&product(&phi, &sum), &phi));
        let lt = transposed(rows);
        let (middle, _) = inverse(&product(&product(rows, &phi), &lt));
        let theta = product(&product(&lt, &middle), rows);
        let turned: Vec<Matrix> =
            p.iter().map(|p| product(&theta, &product(&product(&phi, p), &phi))).collect();
        let (mut a1, mut a2) = (0.0, 0.0);
        for i in 0..2 {
            for j in 0..2 {
                a1 += w[i][j] * trace(&turned[i]) * trace(&turned[j]);
                a2 += w[i][j] * trace(&product(&turned[i], &turned[j]));
            }
        }
        let l = rows.len() as f64;
        let b = (a1 + 6.0 * a2) / (2.0 * l);
        let g = ((l + 1.0) * a1 - (l + 4.0) * a2) / ((l + 2.0) * a2);
        let under = 3.0 * l + 2.0 * (1.0 - g);
        let (c1, c2, c3) = (g / under, (l - g) / under, (l + 2.0 - g) / under);
        let mean = 1.0 / (1.0 - a2 / l);
        let spread = 2.0 / l * (1.0 + c1 * b) / ((1.0 - c2 * b).powi(2) * (1.0 - c3 * b));
        let rho = spread / (2.0 * mean * mean);
        let m = 4.0 + (l + 2.0) / (l * rho - 1.0);
        let lambda = m / (mean * (m - 2.0));
        let vx = product(&vi, &self.x);
        let beta = product(&product(&phi, &transposed(&vx)), &self.y);
        let lb = product(rows, &beta);
        let (inner, _) = inverse(&product(&product(rows, &adjusted), &lt));
        let f = product(&product(&transposed(&lb), &inner), &lb)[0][0] / l;
        (adjusted, lambda * f, m)
    }
}

/// Up to 24 bags of 3 treatments in 2 blocks, each with 3 groups; every one of them occurs.
pub(crate) fn bags() -> impl Strategy<Value = Vec<Bag>> {
    let more = prop::collection::vec((0_usize..3, 0_usize..2, 0_usize..3), 2..12);
    (more, prop::collection::vec(-1.0_f64..1.0, 24), prop::collection::vec(-2.0_f64..2.0, 6))
        .prop_map(|(more, noise, habits)| {
            let base = (0..12).map(|i| ((i / 2 + i % 2 * (1 + i / 6)) % 3, i / 6, i / 2 % 3));
            base.chain(more)
                .zip(noise)
                .map(|((treatment, block, group), rest)| {
                    let habit = habits[3 * block + group];
                    let value = 10.0 + 4.0 * block as f64 + 1.5 * treatment as f64;
                    (value + habit + rest, treatment, block, group)
                })
                .collect()
        })
}

fn fitted(bags: &[Bag]) -> Mixed {
    let column = |t: usize| bags.iter().map(|b| f64::from(u8::from(b.1 == t))).collect();
    let columns: Vec<Vec<f64>> = vec![column(1), column(2)];
    let values: Vec<f64> = bags.iter().map(|b| b.0).collect();
    let blocks: Vec<usize> = bags.iter().map(|b| b.2).collect();
    let groups: Vec<usize> = bags.iter().map(|b| b.3).collect();
    let records = Records::new(&values, &columns, Some(&blocks), &groups).unwrap();
    Mixed::fit(&records, 0.0, Policy::DegreesFromGroups, Method::KenwardRoger).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::size::counts(40, 120, 1_500)))]

    #[test]
    fn the_short_way_is_the_long_way(bags in bags()) {
        let model = fitted(&bags);
        let found = model.variances();
        let (within, between) = (found.bag.powi(2), found.group.powi(2));
        let literal = Literal::of(&bags, 2, 3);
        // The likelihood, and that no other ratio or size is likelier.
        let ours = model.criterion();
        let there = literal.criterion(within, between);
        prop_assert!((ours - there).abs() < 1e-8, "{ours} {there}");
        for ratio in [0.0, 0.01, 0.1, 0.3, 1.0, 3.0, 10.0, 100.0] {
            for size in [0.8, 1.0, 1.25] {
                let total = size * (within + between) / (1.0 + ratio);
                let other = literal.criterion(total, ratio * total);
                prop_assert!(other > ours - 1e-7, "{ratio}: {other} {ours}");
            }
        }
        // Each contrast and both together.
        let rows: Matrix = vec![vec![0.0, 0.0, 1.0, 0.0], vec![0.0, 0.0, 0.0, 1.0]];
        let told = [model.told(&[1.0, 0.0]).unwrap(), model.told(&[0.0, 1.0]).unwrap()];
        for (row, told) in rows.iter().zip(&told) {
            let (adjusted, f, m) =
                literal.kenward_roger(within, between, &vec![row.clone()]);
            let at = row.iter().position(|v| *v > 0.5).unwrap();
            near("se", told.se, adjusted[at][at].sqrt(), 1e-7, 0.0);
            near("t²", (told.value / told.se).powi(2), f, 1e-6, 1e-3);
            // Fewer than one degree of freedom are given as one.
            near("df", told.df, m.max(1.0), 1e-6, 0.0);
        }
        let (_, f, m) = literal.kenward_roger(within, between, &rows);
        let joint = model.jointly(&[&told[0], &told[1]]).unwrap();
        if m > 2.001 && f > 0.0 {
            near("F", joint.f, f, 1e-6, 1e-3);
            near("m", joint.df2, m, 1e-6, 0.0);
        }
        prop_assert!(joint.p.is_finite() && joint.df2 > 0.0);
    }
}
