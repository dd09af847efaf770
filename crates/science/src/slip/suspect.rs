//! What a bag is suspected of, and how strongly.

use super::What;

/// What a bag is suspected of.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Suspected {
    /// Probability that nothing is wrong (1).
    pub sound: f64,
    /// Each slip with its probability, the likeliest first.
    pub suspects: Vec<Suspect>,
}

/// One slip that may have happened.
#[derive(Debug, Clone, PartialEq)]
pub struct Suspect {
    /// Its likeliest version.
    pub what: What,
    /// Probability that it happened, in any version (1).
    pub probability: f64,
    /// Versions with their probabilities, as they came.
    pub versions: Vec<(What, f64)>,
}

impl Suspect {
    pub(super) fn new(what: What, probability: f64) -> Self {
        Self { what, probability, versions: vec![(what, probability)] }
    }

    pub(super) fn add(&mut self, what: What, probability: f64) {
        self.probability += probability;
        match self.versions.iter_mut().find(|(version, _)| *version == what) {
            Some((_, sum)) => *sum += probability,
            None => self.versions.push((what, probability)),
        }
        let likelier = |a: &&(What, f64), b: &&(What, f64)| a.1.total_cmp(&b.1);
        if let Some((version, _)) = self.versions.iter().max_by(likelier) {
            self.what = *version;
        }
    }
}
