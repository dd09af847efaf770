//! Laws of the bag model that a treatment's bag leaves the range of.

use super::Treated;
use barm_science::model::validity;

/// A law that a treatment's bag goes beyond: the bag model's own mark as plain values.
#[derive(Debug, Clone, PartialEq)]
pub struct Beyond {
    /// Name of the law, such as `yeast.slow_loss`.
    pub law: &'static str,
    /// What it is read at, in words.
    pub quantity: &'static str,
    /// The unit of that; empty for a share or a pH.
    pub unit: &'static str,
    /// Low and high end of the range in which the law is known, in that unit.
    pub holds: (f64, f64),
    /// What the model does outside.
    pub outside: &'static str,
    /// The farthest outside that the bag gets, in that unit.
    pub value: f64,
    /// Minute after the zero reading at which it is outside first; negative before it.
    pub from_min: f64,
}

impl From<&validity::Beyond> for Beyond {
    fn from(mark: &validity::Beyond) -> Self {
        let law = mark.law;
        Self {
            law: law.name,
            quantity: law.quantity,
            unit: law.unit,
            holds: law.holds,
            outside: law.outside,
            value: mark.value,
            from_min: mark.from_min,
        }
    }
}

impl Beyond {
    /// How far outside it gets, in the law's own unit.
    fn off(&self) -> f64 {
        (self.holds.0 - self.value).max(self.value - self.holds.1)
    }
}

/// A law with all treatments that go beyond it.
#[derive(Debug, Clone, PartialEq)]
pub struct BeyondTogether {
    /// Names of the treatments, in the order in which they were met, each once.
    pub treatments: Vec<String>,
    /// The one that gets farthest.
    pub farthest: Beyond,
}

impl Treated {
    /// Laws that this treatment's bag goes beyond, by the model's best guess.
    pub fn beyond(&self) -> Vec<Beyond> {
        self.forecast.beyond().iter().map(Beyond::from).collect()
    }
}

/// All laws that some treatment goes beyond, each once, in the order in which they are met. What is handed
/// in are names of treatments, each with what it goes beyond; a name may stand there twice.
pub fn beyond_together<'n>(
    all: impl IntoIterator<Item = (&'n str, Vec<Beyond>)>,
) -> Vec<BeyondTogether> {
    let mut together: Vec<BeyondTogether> = Vec::new();
    let each =
        all.into_iter().flat_map(|(name, own)| own.into_iter().map(move |one| (name, one)));
    for (name, beyond) in each {
        match together.iter_mut().find(|known| known.farthest.law == beyond.law) {
            None => together
                .push(BeyondTogether { treatments: vec![name.to_owned()], farthest: beyond }),
            Some(known) => {
                if !known.treatments.iter().any(|one| one == name) {
                    known.treatments.push(name.to_owned());
                }
                if beyond.off() > known.farthest.off() {
                    known.farthest = beyond;
                }
            }
        }
    }
    together
}
