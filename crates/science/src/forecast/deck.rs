//! The deck: what each draw says about the day and about the bag.

use super::spread::{Day, parameters, scaled};
use super::streams::Streams;
use crate::model::Parameters;
use crate::prior::{AIR_LOG_SD, Key, Prior, habit, jug, made_of};
use crate::setup::{Portion, Setup};

/// A portion's own factors, one for each draw.
struct Helping {
    mass: Vec<f64>,
    content: Vec<f64>,
}

/// All that a forecast draws: one column for each uncertain number.
pub(super) struct Deck<'a> {
    setup: &'a Setup,
    parameters: Vec<Parameters>,
    water: Vec<f64>,
    warmer: Vec<f64>,
    air: Vec<f64>,
    yeast: Vec<f64>,
    foods: Vec<Helping>,
    /// Activity, and the carrier's factors.
    enzymes: Vec<(Vec<f64>, Helping)>,
}

impl<'a> Deck<'a> {
    pub(super) fn new(
        setup: &'a Setup,
        streams: &Streams,
        prior: &Prior,
        draws: usize,
    ) -> Self {
        let sources = streams.sources(draws);
        let day = Day::new(prior, sources.day);
        let (habit, jug) = (habit(), jug());
        let content = |portion: &Portion| {
            scaled(portion.content_sd, day.deviates(&Key::content(&portion.composition)))
        };
        // The same food has the same habit in all bags of a group, wherever it stands in a recipe.
        let helping = |place: usize, portion: &Portion| Helping {
            mass: scaled(
                portion.dosing_sd,
                sources.deviates(&habit, "food", made_of(&portion.composition), place as u64),
            ),
            content: content(portion),
        };
        let foods: Vec<Helping> =
            setup.foods.iter().enumerate().map(|(i, food)| helping(i, food)).collect();
        let enzymes = setup
            .enzymes
            .iter()
            .enumerate()
            .map(|(i, enzyme)| {
                let kind = enzyme.kind as u64;
                let label = day.deviates(&Key::activity(enzyme.kind));
                let label = scaled(enzyme.activity_sd, label);
                let dosing = scaled(
                    enzyme.dosing_sd,
                    sources.deviates(&habit, "enzyme", kind, i as u64),
                );
                let activity = label.iter().zip(&dosing).map(|(a, b)| a * b).collect();
                let content = enzyme.carrier.as_ref().map_or_else(Vec::new, content);
                // The carrier comes out of the same dropper as the enzyme.
                (activity, Helping { mass: dosing, content })
            })
            .collect();
        let (yeast, yeast_sd) =
            setup.yeast.map_or((0, 0.0), |yeast| (yeast.kind as u64, yeast.dosing_sd));
        let by_habit = |name: &str, of: u64| sources.deviates(&habit, name, of, 0);
        // Water of another temperature comes out of another jug.
        let warmer = sources.deviates(&jug, "warmer", setup.water_celsius.to_bits(), 0);
        Self {
            setup,
            parameters: parameters(setup, &day, &sources),
            water: scaled(setup.water_dosing_sd, by_habit("water", 0)),
            warmer: warmer.into_iter().map(|z| setup.water_celsius_sd * z).collect(),
            air: scaled(AIR_LOG_SD.value, by_habit("air", 0)),
            yeast: scaled(yeast_sd, by_habit("yeast", yeast)),
            foods,
            enzymes,
        }
    }

    /// The bag as draw `k` has it.
    pub(super) fn deal(&self, k: usize) -> (Setup, Parameters) {
        let mut setup = self.setup.clone();
        setup.water_ml *= self.water[k];
        setup.water_celsius = (setup.water_celsius + self.warmer[k]).clamp(0.0, 100.0);
        setup.trapped_air_ml *= self.air[k];
        if let Some(yeast) = &mut setup.yeast {
            yeast.grams *= self.yeast[k];
        }
        for (food, helping) in setup.foods.iter_mut().zip(&self.foods) {
            helping.apply(k, food);
        }
        for (enzyme, (activity, helping)) in setup.enzymes.iter_mut().zip(&self.enzymes) {
            enzyme.units *= activity[k];
            if let Some(carrier) = &mut enzyme.carrier {
                helping.apply(k, carrier);
            }
        }
        (setup, self.parameters[k])
    }
}

impl Helping {
    fn apply(&self, k: usize, portion: &mut Portion) {
        portion.grams *= self.mass[k];
        portion.enrich(self.content[k]);
    }
}

#[cfg(test)]
mod tests;
