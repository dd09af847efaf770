//! The best guess of a bag.

use super::{Key, Prior};
use crate::model::Parameters;
use crate::setup::{Portion, Setup};

/// A bag at the best guess of all that is not known of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Typical {
    /// What stands on the bench: enzymes as active, and foods as rich, as they are most likely to be.
    pub setup: Setup,
    /// The numbers of the model.
    pub parameters: Parameters,
}

impl Prior {
    /// The best guess of a bag: where something was learned its mean there, else the table's. On a scale
    /// of factors that is the middle, not the mean, of what may be.
    pub fn typical(&self, setup: &Setup) -> Typical {
        let (mut setup, mut parameters) = (setup.clone(), self.center);
        for row in self.rows.iter().filter(|row| row.spread.day > 0.0) {
            if let Some(mean) = row.key(&setup).and_then(|key| self.learned_mean(&key)) {
                let value = (row.place)(&mut parameters);
                *value = row.transform.moved(*value, row.spread.day, mean);
            }
        }
        for enzyme in &mut setup.enzymes {
            if let Some(mean) = self.learned_mean(&Key::activity(enzyme.kind)) {
                enzyme.units *= libm::exp(enzyme.activity_sd * mean);
            }
        }
        let carriers = setup.enzymes.iter_mut().filter_map(|enzyme| enzyme.carrier.as_mut());
        for portion in setup.foods.iter_mut().chain(carriers) {
            self.enrich(portion);
        }
        Typical { setup, parameters }
    }

    fn enrich(&self, portion: &mut Portion) {
        if let Some(mean) = self.learned_mean(&Key::content(&portion.composition)) {
            portion.enrich(libm::exp(portion.content_sd * mean));
        }
    }

    /// Mean of what was learned of a number (standard deviations of the table).
    fn learned_mean(&self, key: &Key) -> Option<f64> {
        let place = self.joint.keys.iter().position(|one| one == key)?;
        Some(self.joint.means[place])
    }
}
