//! What is not known about a bag, one deviate each.

use crate::model::Parameters;
use crate::prior::{AIR_LOG_SD, Prior, Spread, Transform, habit, jug};
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
    /// Its name; with the level it says which bags have it in common.
    pub name: String,
    /// Where it lives.
    pub level: Level,
    /// Standard deviation on its own scale.
    sd: f64,
    on: On,
}

/// What it changes.
#[derive(Debug, Clone, Copy, PartialEq)]
enum On {
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
}

/// Everything that is not known about a bag of this kind. A distance each way, such as that of the
/// card from the middle, is not among them: `typical` has its usual size.
pub fn effects(setup: &Setup, prior: &Prior) -> Vec<Effect> {
    let kind = setup.yeast.map_or(YeastKind::Instant, |yeast| yeast.kind);
    let habit = habit();
    let mut all = Vec::new();
    let mut at_levels = |name: &str, spread: &Spread, sd: f64, on: On| {
        let levels = [
            (Level::Day, spread.day),
            (Level::Period, spread.period),
            (Level::Group, spread.group),
            (Level::Bag, spread.bag),
        ];
        for (level, share) in levels.into_iter().filter(|(_, share)| share * sd > 0.0) {
            all.push(Effect { name: name.to_owned(), level, sd: share * sd, on });
        }
    };
    let rows = prior.rows.iter().enumerate();
    for (at, row) in rows.filter(|(_, row)| row.kind.is_none_or(|only| only == kind)) {
        if row.transform == Transform::Distance {
            continue;
        }
        let name = match row.kind {
            Some(kind) => format!("{} of {kind:?}", row.name),
            None => row.name.to_owned(),
        };
        at_levels(&name, &row.spread, 1.0, On::Row(at));
    }
    for (at, food) in setup.foods.iter().enumerate() {
        let carries = food.composition.carbohydrates();
        if carries.iter().any(|part| *part > 0.0) {
            // The same food has the same content in every bag.
            let name = format!("content {carries:?}");
            at_levels(&name, &Spread::day(1.0), food.content_sd, On::Content(at));
        }
        // The same food has the same habit in all bags of a group.
        let name = format!("food {carries:?}");
        at_levels(&name, &habit, food.dosing_sd, On::Food(at));
    }
    for (at, enzyme) in setup.enzymes.iter().enumerate() {
        let name = format!("activity of {:?}", enzyme.kind);
        at_levels(&name, &Spread::day(1.0), enzyme.activity_sd, On::Activity(at));
        let name = format!("enzyme {:?}", enzyme.kind);
        at_levels(&name, &habit, enzyme.dosing_sd, On::Enzyme(at));
    }
    at_levels("water", &habit, setup.water_dosing_sd, On::Water);
    // Water of another temperature comes out of another jug.
    let name = format!("warmth of {} °C", setup.water_celsius);
    at_levels(&name, &jug(), setup.water_celsius_sd, On::Warmth);
    at_levels("air", &habit, AIR_LOG_SD.value, On::Air);
    let spoon = setup.yeast.map_or(0.0, |yeast| yeast.dosing_sd);
    at_levels(&format!("yeast {kind:?}"), &habit, spoon, On::Yeast);
    all
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
        }
    }
}
