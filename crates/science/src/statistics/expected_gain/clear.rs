//! The chance of a clear verdict on both rounds, by quadrature over what round two may show.

use super::belief::Foreseen;
use crate::statistics::distribution::{Rule, gamma};

/// When both rounds together are clear; lengths in units of the true spread of bags.
///
/// Everything is told by e = d₂ − d₁, how far round two lies from round one.
#[derive(Debug)]
pub(super) struct Clear {
    /// d₁.
    pub(super) seen: f64,
    /// I₂/(I₁ + I₂): how far the pooled difference follows e.
    pub(super) follows: f64,
    /// F (I₁ + I₂)/c²: what the pooled difference squared allows the squares to be.
    pub(super) allows: f64,
    /// f₁ s₁²: squares that round one saw.
    pub(super) squares: f64,
    /// I₁ I₂/(I₁ + I₂): squares that e² brings in.
    pub(super) apart: f64,
    /// n + n₀ − 2: degrees of freedom of the squares inside round two.
    pub(super) inside: f64,
    /// The smallest difference that counts.
    pub(super) readable: f64,
}

impl Clear {
    /// How large the squares inside round two may be.
    fn room(&self, e: f64) -> f64 {
        let pooled = self.seen + self.follows * e;
        self.allows * pooled * pooled - self.squares - self.apart * e * e
    }

    /// The chance of a clear verdict where round two lies at `e`.
    fn at(&self, e: f64) -> f64 {
        let room = self.room(e);
        if room <= 0.0 || (self.seen + self.follows * e).abs() < self.readable {
            0.0
        } else if self.inside < 0.5 {
            1.0
        } else {
            gamma::incomplete(0.5 * self.inside, 0.5 * room).0
        }
    }

    /// Where the chance has a kink or a step, and where it begins and ends to rise steeply.
    fn cuts(&self) -> Vec<f64> {
        let mut cuts = vec![
            (self.readable - self.seen) / self.follows,
            (-self.readable - self.seen) / self.follows,
        ];
        let steep = 7.0 * libm::sqrt(2.0 * self.inside);
        for room in [0.0, self.inside - steep, self.inside, self.inside + steep] {
            if room >= 0.0 {
                cuts.extend(self.where_room_is(room));
            }
        }
        cuts
    }

    fn where_room_is(&self, wanted: f64) -> impl Iterator<Item = f64> {
        // room(e) = a e² + 2 b e + c.
        let a = self.allows * self.follows * self.follows - self.apart;
        let b = self.allows * self.follows * self.seen;
        let c = self.allows * self.seen * self.seen - self.squares - wanted;
        // The larger root without cancellation, and the other one by the product of both.
        let sum = -(b + libm::sqrt(b * b - a * c).copysign(b));
        [sum / a, c / sum].into_iter().filter(|root| root.is_finite())
    }

    /// The chance over all that round two may show (1).
    ///
    /// # Accuracy
    /// About 1 part in 10⁶: where there is one degree of freedom inside round two, the integrand rises
    /// from a kink like a square root.
    pub(super) fn chance(&self, foreseen: &Foreseen) -> f64 {
        let rule = Rule::new(16);
        let kinks = self.cuts();
        let mut chance = 0.0;
        for (low, high) in foreseen.stretches() {
            let mut cuts: Vec<f64> =
                kinks.iter().copied().filter(|&k| k > low && k < high).collect();
            cuts.extend([low, high]);
            cuts.sort_by(f64::total_cmp);
            for ends in cuts.windows(2).filter(|ends| ends[1] > ends[0]) {
                let panels = libm::ceil((ends[1] - ends[0]) / (2.5 * foreseen.width));
                let nodes = rule.spread(ends[0], ends[1], (panels as u32).max(2));
                let part = nodes.map(|(e, weight)| {
                    let clear = self.at(e);
                    if clear > 0.0 { weight * clear * foreseen.density(e) } else { 0.0 }
                });
                chance += part.sum::<f64>();
            }
        }
        chance.clamp(0.0, 1.0)
    }
}
