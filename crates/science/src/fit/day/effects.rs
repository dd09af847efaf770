//! What is not known about a bag, one deviate each.

use crate::model::Parameters;
use crate::prior::{AIR_LOG_SD, Key, Of, Prior, Row, Spread, Transform, habit, jug, made_of};
use crate::setup::{Setup, YeastKind};

/// What has a deviate in common.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Level {
    /// All bags of the day.
    Day,
    /// All bags of a period.
    Period,
    /// All bags of a group.
    Group,
    /// One bag.
    Bag,
}

/// Something that is not known about a bag: a standard normal deviate at one level.
#[derive(Debug, Clone, PartialEq)]
pub struct Effect {
    /// Its name, the same as in forecasts; with the level it says which bags have it in common.
    pub key: Key,
    /// Where it lives.
    pub level: Level,
    /// Standard deviation on its own scale.
    sd: f64,
    on: On,
}

/// What it changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum On {
    /// A parameter of the prior's table, by its row.
    Row(usize),
    /// Carbohydrate of a food.
    Content(usize),
    /// Activity of an enzyme.
    Activity(usize),
    Water,
    Warmth,
    Air,
    Yeast,
    Food(usize),
    Enzyme(usize),
    /// A distance each way, by its row: its square about its usual size.
    Distance(usize),
}

/// How far a deviate is tried either way: at √3 standard deviations the mean and the variance of
/// what hangs on it come out right up to its fifth power (Gauss and Hermite's rule of three points).
const REACH: f64 = 1.732_050_807_568_877_2;

/// Everything that is not known about a bag of this kind. A distance each way, such as that of the
/// card from the middle, is not among them: `typical` has its usual size.
pub fn effects(setup: &Setup, prior: &Prior) -> Vec<Effect> {
    let habit = habit();
    let mut all = Vec::new();
    let mut at_levels = |key: Key, spread: &Spread, sd: f64, on: On| {
        let levels = [
            (Level::Day, spread.day),
            (Level::Period, spread.period),
            (Level::Group, spread.group),
            (Level::Bag, spread.bag),
        ];
        for (level, share) in levels.into_iter().filter(|(_, share)| share * sd > 0.0) {
            all.push(Effect { key, level, sd: share * sd, on });
        }
    };
    for (at, row) in prior.rows.iter().enumerate() {
        if let Some(key) = row.key(setup).filter(|_| row.transform != Transform::Distance) {
            at_levels(key, &row.spread, 1.0, On::Row(at));
        }
    }
    for (at, food) in setup.foods.iter().enumerate() {
        if food.composition.carbohydrates().iter().any(|part| *part > 0.0) {
            // The same food has the same content in every bag.
            let key = Key::content(&food.composition);
            at_levels(key, &Spread::day(1.0), food.content_sd, On::Content(at));
        }
        // The same food has the same habit in all bags of a group.
        let key = Key::new("food", Of::Food(made_of(&food.composition)));
        at_levels(key, &habit, food.dosing_sd, On::Food(at));
    }
    for (at, enzyme) in setup.enzymes.iter().enumerate() {
        let key = Key::activity(enzyme.kind);
        at_levels(key, &Spread::day(1.0), enzyme.activity_sd, On::Activity(at));
        let key = Key::new("enzyme", Of::Enzyme(enzyme.kind));
        at_levels(key, &habit, enzyme.dosing_sd, On::Enzyme(at));
    }
    at_levels(Key::new("water", Of::All), &habit, setup.water_dosing_sd, On::Water);
    // Water of another temperature comes out of another jug.
    let jug_of = Of::Water(setup.water_celsius.to_bits());
    at_levels(Key::new("warmer", jug_of), &jug(), setup.water_celsius_sd, On::Warmth);
    at_levels(Key::new("air", Of::All), &habit, AIR_LOG_SD.value, On::Air);
    let kind = setup.yeast.map_or(YeastKind::Instant, |yeast| yeast.kind);
    let spoon = setup.yeast.map_or(0.0, |yeast| yeast.dosing_sd);
    at_levels(Key::new("yeast", Of::Yeast(kind)), &habit, spoon, On::Yeast);
    all
}

/// Distances each way, bag by bag. Their squares are exponential: as far from their mean on average as
/// that is from 0.
pub(super) fn distances(prior: &Prior) -> Vec<Effect> {
    let away = |row: &Row| row.transform == Transform::Distance && row.spread.total() > 0.0;
    let rows = prior.rows.iter().enumerate().filter(|(_, row)| away(row));
    rows.map(|(at, row)| {
        let key = Key::new(row.name, Of::All);
        Effect { key, level: Level::Bag, sd: 1.0, on: On::Distance(at) }
    })
    .collect()
}

/// The best guess of a bag before any deviate: distances each way at their root mean square.
pub(super) fn typical(prior: &Prior) -> Parameters {
    let mut parameters = prior.center;
    for row in prior.rows.iter().filter(|row| row.transform == Transform::Distance) {
        let value = (row.place)(&mut parameters);
        *value = value.hypot(row.spread.total() * 2.0_f64.sqrt());
    }
    parameters
}

impl Effect {
    /// Changes a bag by `z` of its standard deviations.
    pub fn apply(&self, prior: &Prior, z: f64, setup: &mut Setup, parameters: &mut Parameters) {
        let by = self.sd * z;
        let factor = libm::exp(by);
        match self.on {
            On::Row(at) => {
                let row = &prior.rows[at];
                let value = (row.place)(parameters);
                *value = row.transform.moved(*value, self.sd, z);
            }
            On::Content(at) => setup.foods[at].enrich(factor),
            On::Activity(at) => setup.enzymes[at].units *= factor,
            On::Water => setup.water_ml *= factor,
            On::Warmth => setup.water_celsius = (setup.water_celsius + by).clamp(0.0, 100.0),
            On::Air => setup.trapped_air_ml *= factor,
            On::Yeast => {
                if let Some(yeast) = &mut setup.yeast {
                    yeast.grams *= factor;
                }
            }
            On::Food(at) => setup.foods[at].grams *= factor,
            On::Enzyme(at) => {
                let enzyme = &mut setup.enzymes[at];
                enzyme.units *= factor;
                // The carrier comes out of the same dropper.
                if let Some(carrier) = &mut enzyme.carrier {
                    carrier.grams *= factor;
                }
            }
            On::Distance(at) => {
                *(prior.rows[at].place)(parameters) *= (1.0 + z).max(0.0).sqrt();
            }
        }
    }

    /// How far it is tried either way (its standard deviations).
    pub(super) const fn reach(&self) -> f64 {
        match self.on {
            // Nearer than the middle there is nothing.
            On::Distance(_) => 1.0,
            _ => REACH,
        }
    }

    /// Its place in an order that hangs on names and not on that of the table.
    pub(super) const fn rank(&self) -> (Key, On, Level) {
        (self.key, self.on, self.level)
    }

    /// Whether it is the same thing, perhaps at another level.
    pub(super) fn is_same_thing(&self, other: &Self) -> bool {
        self.key == other.key && self.on == other.on
    }

    /// Share of its standard deviation of another's.
    pub(super) const fn share_of(&self, whole: &Self) -> f64 {
        self.sd / whole.sd
    }

    /// The same thing at all its levels together.
    pub(super) fn whole<'e>(levels: impl Iterator<Item = &'e Self> + Clone) -> Option<Self> {
        let variance: f64 = levels.clone().map(|level| level.sd * level.sd).sum();
        levels.last().map(|last| Self { sd: variance.sqrt(), ..last.clone() })
    }

    /// Whether it changes how high a card lies on so much gas, and not the gas.
    pub(super) fn is_of_the_card(&self, prior: &Prior) -> bool {
        let (On::Row(at) | On::Distance(at)) = self.on else { return false };
        let mut moved = prior.center;
        *(prior.rows[at].place)(&mut moved) += 1.0;
        let card = Parameters {
            exponent: moved.exponent,
            dead_share: moved.dead_share,
            capacity: moved.capacity,
            crumple_mm: moved.crumple_mm,
            off_center_mm: moved.off_center_mm,
            ..prior.center
        };
        card == moved
    }
}
