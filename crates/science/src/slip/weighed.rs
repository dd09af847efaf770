//! Hypotheses of one bag with their weights.

use super::Unit;
use super::logs::log_sum;
use super::sound::Sound;
use super::suspect::{Suspect, Suspected};

/// What may have gone wrong. Places count the heights of a bag, the zero reading being 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum What {
    /// Heights from one place to another were written in another unit.
    Unit {
        /// First of them.
        from: usize,
        /// Last of them.
        to: usize,
        /// The unit.
        unit: Unit,
    },
    /// Two digits of a height changed places.
    Transposed {
        /// Which.
        at: usize,
    },
    /// A height is far off.
    Misread {
        /// Which.
        at: usize,
    },
    /// The card was tilted at a reading and one end of it was read.
    Tilt {
        /// Which.
        at: usize,
    },
    /// Gas gets out.
    Leak {
        /// The last height before it began.
        after: usize,
    },
    /// Foam lifts the card.
    Foam {
        /// The first height on it.
        from: usize,
    },
    /// The clock of the bag began late or early.
    Start,
    /// No living yeast in this bag.
    Dead,
    /// Water that kills yeast within minutes.
    Hot,
    /// The enzyme was not shaken.
    Unshaken,
    /// A heaped spoon.
    Heaped,
    /// The heights are those of another bag.
    Copied {
        /// Place of that bag among those given.
        of: usize,
    },
    /// Taken for another bag of the group from the start.
    Swapped {
        /// Place of that bag among those given.
        with: usize,
    },
    /// Read to 5 mm only.
    Fives,
    /// Unlike all others in a way that is not on this list.
    Strange,
}

impl What {
    /// Whether two are one slip in two versions: what is said of it once, with all that it has.
    fn is_one_with(self, other: Self) -> bool {
        match (self, other) {
            (Self::Unit { to, .. }, Self::Unit { to: other, .. }) => to == other,
            (Self::Transposed { at }, Self::Transposed { at: other })
            | (Self::Misread { at }, Self::Misread { at: other })
            | (Self::Tilt { at }, Self::Tilt { at: other }) => at == other,
            (Self::Copied { of }, Self::Copied { of: other })
            | (Self::Swapped { with: of }, Self::Swapped { with: other }) => of == other,
            _ => core::mem::discriminant(&self) == core::mem::discriminant(&other),
        }
    }
}

/// Hypotheses of one bag with ln of prior times likelihood.
#[derive(Debug, Clone)]
pub(super) struct Weighed {
    sound: f64,
    slips: Vec<(What, f64)>,
}

/// What is less likely is not told of (1).
const TOLD_FROM: f64 = 1e-3;

impl Weighed {
    pub(super) fn new(sound: &Sound) -> Self {
        Self { sound: sound.log, slips: Vec::new() }
    }

    /// Adds a hypothesis with its prior probability and the ln likelihood of what was read.
    pub(super) fn add(&mut self, what: What, prior: f64, log: f64) {
        if prior > 0.0 && log > f64::NEG_INFINITY {
            self.slips.push((what, libm::log(prior) + log));
        }
    }

    /// ln of the probability of what was read, whatever went wrong with the bag itself.
    pub(super) fn evidence(&self) -> f64 {
        let slips: Vec<f64> = self.slips.iter().map(|(_, log)| *log).collect();
        log_sum(&[self.sound, log_sum(&slips)])
    }

    /// Bayes' rule.
    pub(super) fn suspected(&self) -> Suspected {
        let all = self.evidence();
        if !all.is_finite() {
            // So far off that nothing on the list explains it.
            return Suspected { sound: 0.0, suspects: Vec::new() };
        }
        let mut suspects: Vec<Suspect> = Vec::new();
        for (what, log) in &self.slips {
            let probability = libm::exp(log - all);
            let one = |suspect: &&mut Suspect| suspect.what.is_one_with(*what);
            match suspects.iter_mut().find(one) {
                Some(suspect) => suspect.add(*what, probability),
                None => suspects.push(Suspect::new(*what, probability)),
            }
        }
        suspects.retain(|suspect| suspect.probability >= TOLD_FROM);
        suspects.sort_by(|a, b| b.probability.total_cmp(&a.probability));
        Suspected { sound: libm::exp(self.sound - all), suspects }
    }
}
