//! Student's t of a first set of values, and of the same values with further ones.

use super::quadrature::Rule;
use super::{beta, student};
use std::f64::consts::FRAC_PI_2;

/// Two looks at one difference: first at some blocks, then at these and further ones, block by block.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoStudents {
    share: f64,
    first: f64,
    pooled: f64,
}

impl TwoStudents {
    /// The first look has `share` of the information (strictly between 0 and 1) and `first` degrees of
    /// freedom of its spread, the pooled look `pooled`, at least one more: that by which the rounds'
    /// differences differ. Nothing outside.
    pub fn new(share: f64, first: f64, pooled: f64) -> Option<Self> {
        let known = share > 0.0 && share < 1.0 && first >= 1.0 && pooled.is_finite();
        (known && pooled - first >= 1.0 - 1e-9).then_some(Self { share, first, pooled })
    }

    /// Chance that without a true difference at least one t lies further from 0 than its bound, `a` at
    /// the first look or `b` at the pooled one (1); bounds at least 0, infinite for no look.
    ///
    /// With Z of the pooled look and W, what the rounds differ by, independent and standard normal,
    ///
    /// ```text
    /// T₁ = (√s Z + √(1−s) W)/√(A/f₁)      T₂ = Z/√((A + W² + B)/f₂)
    /// A ~ χ²(f₁)      B ~ χ²(f₂ − f₁ − 1)
    /// ```
    ///
    /// How A + W² + B is made up does not depend on T₂, so that T₂ is integrated in closed form and two
    /// angles are left: cos²ψ = A/(A + W² + B) and sin²φ = W²/(W² + B).
    ///
    /// # Accuracy
    /// About 1 part in 10⁷. Less than one degree of freedom for B counts as none.
    /// # Source
    /// Derived; held against simulation, and against the normal case, in the tests.
    pub fn either_outside(&self, a: f64, b: f64) -> f64 {
        if !(a >= 0.0 && b >= 0.0) {
            return f64::NAN;
        }
        let beyond = |bound: f64, df: f64| {
            if bound.is_finite() { student::two_sided(bound, df) } else { 0.0 }
        };
        if b.is_infinite() || a.is_infinite() {
            return beyond(a, self.first) + beyond(b, self.pooled);
        }
        let extra = self.pooled - self.first;
        let others = if extra - 1.0 < 1.0 - 1e-9 { 0.0 } else { extra - 1.0 };
        // An angle of this kind has a standard deviation of 1/√(2 f₂); ten of them leave e⁻⁵⁰.
        let middle = libm::atan2(libm::sqrt(extra), libm::sqrt(self.first));
        let reach = 10.0 / libm::sqrt(2.0 * self.pooled);
        let (low, high) = ((middle - reach).max(0.0), (middle + reach).min(FRAC_PI_2));
        let ln_norm = beta::ln_beta(0.5 * self.first, 0.5 * extra);
        let rule = Rule::new(16);
        let only_pooled: f64 = rule
            .spread(low, high, 6)
            .map(|(psi, weight)| {
                let (cosine, sine) = (libm::cos(psi), libm::sin(psi));
                let ln =
                    (self.first - 1.0) * libm::log(cosine) + (extra - 1.0) * libm::log(sine);
                let density = 2.0 * libm::exp(ln - ln_norm);
                weight * density * self.over_phi(&rule, a * cosine, sine, b, others)
            })
            .sum();
        beyond(a, self.first) + only_pooled
    }

    /// The average over φ of the chance that only the pooled look lies outside.
    fn over_phi(&self, rule: &Rule, a_cosine: f64, sine: f64, b: f64, others: f64) -> f64 {
        // |√s T₂/√f₂ + √(1−s) w| ≤ a cosψ/√f₁ is where the first look is inside.
        let bound = a_cosine / libm::sqrt(self.first);
        let slant = libm::sqrt(1.0 - self.share) * sine;
        let scale = libm::sqrt(self.pooled / self.share);
        let chance = |sin_phi: f64| {
            let (low, high) =
                (scale * (-bound - slant * sin_phi), scale * (bound - slant * sin_phi));
            self.between(low.max(b), high) + self.between(low, high.min(-b))
        };
        if others <= 0.0 {
            return chance(1.0);
        }
        let end = (10.0 / libm::sqrt(others)).min(FRAC_PI_2);
        let kink = |at: f64| libm::asin((at / slant).clamp(0.0, 1.0)).min(end);
        let edge = b / scale;
        let (one, other) = (kink((bound - edge).abs()), kink(bound + edge));
        let ln_norm = beta::ln_beta(0.5, 0.5 * others);
        [(0.0, one), (one, other), (other, end)]
            .into_iter()
            .filter(|(low, high)| high > low)
            .flat_map(|(low, high)| rule.spread(low, high, 1))
            .map(|(phi, weight)| {
                let ln = (others - 1.0) * libm::log(libm::cos(phi));
                weight * 2.0 * libm::exp(ln - ln_norm) * chance(libm::sin(phi))
            })
            .sum()
    }

    /// Chance that T₂ lies between two values, which may be the wrong way round: then 0.
    fn between(&self, low: f64, high: f64) -> f64 {
        if high <= low {
            return 0.0;
        }
        // From the nearer tail, so that small chances keep their digits.
        let (near, far) = if low >= 0.0 { (low, high) } else { (-high, -low) };
        if near < 0.0 {
            return student::cdf(high, self.pooled) - student::cdf(low, self.pooled);
        }
        student::upper(near, self.pooled) - student::upper(far, self.pooled)
    }
}
