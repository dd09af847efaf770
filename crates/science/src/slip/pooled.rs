//! What the bags of a class show together beside the curves that were expected of them.
//!
//! No forecast and no grid has the day's curve: yeast wakes and slows down by a law of its own. At
//! the minutes that were planned, a treatment's rise is R (1 + u + v) with its expected rise R, a
//! share u that the class has in common and a share v of its own. Both are normal and smooth; every
//! other bag tells of them by its residuals, so that a bag is weighed beside what its class did
//! between two readings and not beside a law.

use super::matrix::{self, Matrix};
use super::nodes::between;
use super::says::{AT_LEAST_MM, Says, says};
use super::sound::{Expectation, Sound, paces};
use super::{Followed, scale};
use std::collections::BTreeMap;

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

/// How much a bag is listened to (1): less where it is farther off than sound bags are.
pub(super) fn weight(sound: &Sound) -> f64 {
    let share = (1.3 * sound.count() as f64 / sound.square().max(1e-9)).min(1.0);
    share * share
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
