//! Laws by which the simulated bags rise. None of them is the bag model's, nor the detector's.

use barm_science::statistics::chance::Chance;

/// A law of growth with its half time at 1 and its height there at 1/2 of the last.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Law {
    /// P. F. Verhulst (1838).
    Logistic,
    /// B. Gompertz (1825) in the form of M. H. Zwietering et al. (1990), *Appl. Environ.
    /// Microbiol.* 56, 1875.
    Gompertz,
    /// A lag, then toward a limit by the same share in every minute.
    Saturating,
    /// A lag, a slow stretch on reserves, then a straight line: yeast that wakes in two steps.
    TwoSteps,
}

impl Law {
    pub(crate) fn any(chance: &mut Chance) -> Self {
        [Self::Logistic, Self::Gompertz, Self::Saturating, Self::TwoSteps][chance.below(4)]
    }

    /// Height at a time, in a unit of its own.
    fn raw(self, time: f64, wake: f64) -> f64 {
        match self {
            Self::Logistic => 1.0 / (1.0 + (-3.4 * (time - wake)).exp()),
            Self::Gompertz => {
                (-(1.0 + std::f64::consts::E * 0.9 * (0.45 * wake - time)).exp()).exp()
            }
            Self::Saturating => {
                let after = (time - 0.3 * wake).max(0.0);
                (1.0 - (-0.8 * after).exp()) * after / (after + 0.2)
            }
            Self::TwoSteps => {
                let slow = (time - 0.15 * wake).max(0.0);
                let bend = 12.0 * (time - 0.6 * wake);
                let fast = if bend > 30.0 { bend } else { bend.exp().ln_1p() } / 12.0;
                0.12 * slow + 0.7 * fast
            }
        }
    }

    /// How soon the yeast must wake so that a bag has risen by this share of the last at a minute.
    pub(crate) fn waking(self, share: f64, minute: f64, half: f64, last: f64) -> f64 {
        let (mut soon, mut late) = (0.1, 3.0);
        for _ in 0..30 {
            let wake = 0.5 * (soon + late);
            let at = |minute: f64| self.raw(minute / half, wake) - self.raw(0.0, wake);
            if at(minute) / at(last) > share {
                soon = wake;
            } else {
                late = wake;
            }
        }
        0.5 * (soon + late)
    }

    /// Rise at a minute after the zero reading as a share of that at `last`, for a bag that is half
    /// as high as at last about minute `half`; yeast wakes by `factor` later than usual.
    pub(crate) fn rise(self, minute: f64, half: f64, last: f64, wake: (f64, f64)) -> f64 {
        let (usual, factor) = wake;
        let at = |minute: f64, wake: f64| {
            self.raw(minute.max(0.0) / half, wake) - self.raw(0.0, wake)
        };
        at(minute, usual * factor) / at(last, usual)
    }
}
