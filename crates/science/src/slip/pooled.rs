//! What the bags of a class show together beside the curves that were expected of them.
//!
//! No forecast and no grid has the day's curve: yeast wakes and slows down by a law of its own. At
//! the minutes that were planned, a treatment's rise is R (1 + u + v) with its expected rise R, a
//! share u that the class has in common and a share v of its own. Both are normal and smooth; every
//! other bag tells of them by its residuals, so that a bag is weighed beside what its class did
//! between two readings and not beside a law.

use super::matrix::{self, Matrix};
use super::sound::{Expectation, Sound};
use super::student::Student;
use super::{Followed, scale};
use std::collections::BTreeMap;

/// Minutes at which the shares are worked out at most: with more, those left out lie between two.
const NODES: usize = 12;

/// Added to an expected rise, of which u and v are shares (mm): shares of next to nothing tell
/// nothing.
const AT_LEAST_MM: f64 = 0.5;

/// What one bag, or some, say of u + v at the nodes.
#[derive(Debug, Clone)]
struct Says {
    /// How surely: D' C⁻¹ D.
    precision: Matrix,
    /// What: D' C⁻¹ (heights − zero − R).
    toward: Vec<f64>,
}

/// What is expected of one treatment by all of its bags and its class's.
struct OfTreatment {
    /// How v goes with itself.
    own: Matrix,
    /// What all of its bags say.
    said: Says,
    /// What they say of u.
    heard: Says,
}

/// What all bags of a period show.
pub(super) struct Pooled {
    nodes: Vec<f64>,
    treatments: BTreeMap<usize, OfTreatment>,
    bags: Vec<Option<Says>>,
    class: Says,
}

impl Pooled {
    /// `bases` are the expected rises of each bag's treatment at its own minutes, all bags counted;
    /// `at_nodes` the same at the nodes. Of each bag, what the ruler leaves open (variance, mm²) and how much it is
    /// listened to.
    pub(super) fn of(
        bags: &[Followed],
        nodes: Vec<f64>,
        at_nodes: &BTreeMap<usize, Vec<f64>>,
        bases: &[Vec<f64>],
        (rulers, weights): (&[f64], &[f64]),
    ) -> Option<Self> {
        let count = nodes.len();
        let mut treatments = BTreeMap::new();
        let says: Vec<Option<Says>> = bags
            .iter()
            .zip(bases)
            .zip(rulers.iter().zip(weights))
            .map(|((bag, base), (ruler, weight))| says(bag, *ruler, base, (&nodes, *weight)))
            .collect();
        for (treatment, rise) in at_nodes {
            let own = of_treatment(&nodes, rise);
            let mut said = Says::nothing(count);
            for (bag, says) in bags.iter().zip(&says) {
                if let Some(says) = says.as_ref().filter(|_| bag.treatment == *treatment) {
                    said.add(says, 1.0);
                }
            }
            let heard = said.through(&own)?;
            treatments.insert(*treatment, OfTreatment { own, said, heard });
        }
        let mut class = Says::nothing(count);
        treatments.values().for_each(|of| class.add(&of.heard, 1.0));
        Some(Self { nodes, treatments, bags: says, class })
    }

    /// What is expected of a treatment by all bags but one, if there are others, where the grid alone expects
    /// `grid_at_nodes`; `base` is what the grid expects by all bags, at minutes and at the nodes.
    pub(super) fn expected(
        &self,
        but: usize,
        treatment: usize,
        minutes: &[f64],
        grid_at_nodes: &Expectation,
        (base, base_at_nodes): (&[f64], &[f64]),
    ) -> Option<Expectation> {
        let of = self.treatments.get(&treatment)?;
        let count = self.nodes.len();
        // A bag that is alone has but its forecast.
        let mut others = self.bags.iter().enumerate().filter(|(at, _)| *at != but);
        if !others.any(|(_, says)| says.is_some()) {
            return None;
        }
        // Before anything was read: the grid's curve and how far it may be off, and a smooth share
        // that no grid has.
        let soft: Vec<f64> = base_at_nodes.iter().map(|rise| rise + AT_LEAST_MM).collect();
        let first = matrix::of(count, |a, b| {
            grid_at_nodes.scatter[a][b] / (soft[a] * soft[b])
                + of_class(self.nodes[a], self.nodes[b])
                + if a == b { 1e-6 } else { 0.0 }
        });
        let begins: Vec<f64> = (0..count)
            .map(|at| (grid_at_nodes.rise[at] - base_at_nodes[at]) / soft[at])
            .collect();
        let first_precision = matrix::inverse(&first)?;
        let mut class = Says {
            toward: matrix::times(&first_precision, &begins),
            precision: first_precision,
        };
        class.add(&self.class, 1.0);
        class.add(&of.heard, -1.0);
        let (scatter, middle) = class.solved()?;
        let told = matrix::of(count, |a, b| scatter[a][b] + of.own[a][b]);
        let told_precision = matrix::inverse(&told)?;
        let mut own =
            Says { toward: matrix::times(&told_precision, &middle), precision: told_precision };
        own.add(&of.said, 1.0);
        if let Some(says) = self.bags[but].as_ref() {
            own.add(says, -1.0);
        }
        let (scatter, middle) = own.solved()?;
        // Between the nodes.
        let places: Vec<(usize, usize, f64)> =
            minutes.iter().map(|minute| between(&self.nodes, *minute)).collect();
        let soft: Vec<f64> = base.iter().map(|rise| rise + AT_LEAST_MM).collect();
        let began = |at: usize| if minutes[at] > 0.0 { soft[at] } else { 0.0 };
        let rise = (0..minutes.len()).map(|at| {
            let (low, high, share) = places[at];
            base[at] + began(at) * ((1.0 - share) * middle[low] + share * middle[high])
        });
        let scatter = matrix::of(minutes.len(), |a, b| {
            let ((la, ha, sa), (lb, hb, sb)) = (places[a], places[b]);
            let along = |row: usize| (1.0 - sb) * scatter[row][lb] + sb * scatter[row][hb];
            began(a) * began(b) * ((1.0 - sa) * along(la) + sa * along(ha))
        });
        Some(Expectation { rise: rise.collect(), scatter })
    }
}

/// Minutes of the nodes: those that were planned, or read where none was.
pub(super) fn nodes(bags: &[Followed]) -> Vec<f64> {
    let mut minutes: Vec<f64> = bags
        .iter()
        .flat_map(|bag| bag.heights.iter().skip(1))
        .map(|height| height.planned.map_or(height.minute, f64::from))
        .filter(|minute| *minute > 0.0)
        .collect();
    minutes.sort_by(f64::total_cmp);
    minutes.dedup_by(|a, b| *a - *b < 1.0);
    let each = minutes.len().div_ceil(NODES).max(1);
    let last = minutes.last().copied();
    let mut nodes: Vec<f64> = minutes.iter().copied().step_by(each).collect();
    if let Some(last) = last.filter(|last| nodes.last() != Some(last)) {
        nodes.push(last);
    }
    nodes
}

/// How much a bag is listened to (1): less where it is farther off than sound bags are.
pub(super) fn weight(sound: &Sound) -> f64 {
    let share = (1.3 * sound.count() as f64 / sound.square().max(1e-9)).min(1.0);
    share * share
}

impl Says {
    fn nothing(count: usize) -> Self {
        Self { precision: matrix::of(count, |_, _| 0.0), toward: vec![0.0; count] }
    }

    fn add(&mut self, other: &Self, times: f64) {
        for (row, others) in self.precision.iter_mut().zip(&other.precision) {
            row.iter_mut().zip(others).for_each(|(value, other)| *value += times * other);
        }
        self.toward
            .iter_mut()
            .zip(&other.toward)
            .for_each(|(value, other)| *value += times * other);
    }

    /// Scatter and middle.
    fn solved(&self) -> Option<(Matrix, Vec<f64>)> {
        let scatter = matrix::inverse(&self.precision)?;
        let middle = matrix::times(&scatter, &self.toward);
        Some((scatter, middle))
    }

    /// What is said of u by what is said of u + v: Λ − Λ (V⁻¹ + Λ)⁻¹ Λ, and so on.
    fn through(&self, own: &Matrix) -> Option<Self> {
        let count = own.len();
        let mut both = matrix::inverse(own)?;
        for (row, said) in both.iter_mut().zip(&self.precision) {
            row.iter_mut().zip(said).for_each(|(value, said)| *value += said);
        }
        let left = matrix::inverse(&both)?;
        let columns: Vec<Vec<f64>> =
            self.precision.iter().map(|row| matrix::times(&left, row)).collect();
        let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
        let precision = matrix::of(count, |a, b| {
            self.precision[a][b] - dot(&self.precision[a], &columns[b])
        });
        let drawn = matrix::times(&left, &self.toward);
        let toward =
            (0..count).map(|at| self.toward[at] - dot(&self.precision[at], &drawn)).collect();
        Some(Self { precision, toward })
    }
}

/// What one bag says, listened to with a weight.
fn says(
    bag: &Followed,
    ruler: f64,
    base: &[f64],
    (nodes, weight): (&[f64], f64),
) -> Option<Says> {
    let count = bag.heights.len();
    if count < 2 || nodes.is_empty() {
        return None;
    }
    let minutes = bag.minutes();
    let paces = paces(&minutes, base);
    let scatter = super::level::matrix(count, ruler, |a, b| {
        scale::ZERO_MM.1 * scale::ZERO_MM.1
            + scale::of_one_bag(
                (minutes[a], base[a], paces[a]),
                (minutes[b], base[b], paces[b]),
            )
    });
    let student = Student::new(count, |a, b| scatter[a][b])?;
    let off: Vec<f64> =
        bag.written().iter().zip(base).map(|(mm, rise)| mm - scale::ZERO_MM.0 - rise).collect();
    let white = student.whitened(&off);
    let mut shares = vec![vec![0.0; count]; nodes.len()];
    for (at, (minute, rise)) in minutes.iter().zip(base).enumerate().skip(1) {
        let (low, high, share) = between(nodes, *minute);
        shares[low][at] += (1.0 - share) * (rise + AT_LEAST_MM);
        shares[high][at] += share * (rise + AT_LEAST_MM);
    }
    let shares: Vec<Vec<f64>> = shares.iter().map(|share| student.whitened(share)).collect();
    let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
    Some(Says {
        precision: matrix::of(nodes.len(), |a, b| weight * dot(&shares[a], &shares[b])),
        toward: shares.iter().map(|share| weight * dot(share, &white)).collect(),
    })
}

/// How u goes with itself beyond what the grid leaves open.
fn of_class(a: f64, b: f64) -> f64 {
    let (share, over_min) = scale::CLASS_SHAPE;
    let apart = (a - b) / over_min;
    share * share * libm::exp(-0.5 * apart * apart)
}

/// How v goes with itself: rise, delay, bend, and a smooth share.
fn of_treatment(nodes: &[f64], rise: &[f64]) -> Matrix {
    let paces = paces(nodes, rise);
    let (rise_sd, delay_sd, bend_sd) = scale::TREATMENT;
    let (smooth, over_min) = scale::TREATMENT_SHAPE;
    let share = |at: usize| rise[at] / (rise[at] + AT_LEAST_MM);
    let delay = |at: usize| delay_sd * paces[at] / (rise[at] + AT_LEAST_MM);
    let bend = |at: usize| bend_sd * libm::log((nodes[at] + 1.0) / 11.0);
    matrix::of(nodes.len(), |a, b| {
        let apart = (nodes[a] - nodes[b]) / over_min;
        rise_sd * rise_sd * share(a) * share(b)
            + delay(a) * delay(b)
            + bend(a) * bend(b)
            + smooth * smooth * libm::exp(-0.5 * apart * apart)
            + if a == b { 1e-6 } else { 0.0 }
    })
}

/// The nodes before and after a minute, and how far it lies on the way.
fn between(nodes: &[f64], minute: f64) -> (usize, usize, f64) {
    let after = nodes.partition_point(|node| *node < minute);
    if after == 0 {
        return (0, 0, 0.0);
    }
    if after == nodes.len() {
        return (after - 1, after - 1, 0.0);
    }
    let (from, to) = (nodes[after - 1], nodes[after]);
    (after - 1, after, (minute - from) / (to - from))
}

fn paces(minutes: &[f64], rise: &[f64]) -> Vec<f64> {
    (0..minutes.len()).map(|at| super::sound::pace(minutes, rise, at)).collect()
}
