//! Carbon dioxide in water, with sugar, salt and acidity.

use super::{Picture, axis, drawn, line};
use barm_science::carbon_dioxide::{ostwald, salt_factor, sugar_factor};
use barm_science::carbonate::{activity_log10, carbon_over_carbon_dioxide};
use barm_science::units::Celsius;

pub(super) fn pictures() -> Vec<Picture> {
    vec![solubility(), acidity(), activity()]
}

fn solubility() -> Picture {
    let range = (5.0, 60.0);
    let water = |celsius: f64| ostwald(Celsius(celsius));
    drawn(
        "solubility",
        "Carbon dioxide that water holds",
        axis("temperature", "°C", 0.0, 60.0),
        axis("mL of gas in 1 mL of liquid", "1", 0.0, 1.5),
        &[
            line(1, "water", range, water),
            // 100 g of sugar in a litre leave 0.94 kg of water.
            line(2, "100 g/L sugar", range, move |t| water(t) * sugar_factor(0.94, Celsius(t))),
            line(3, "0.5 mol/kg salt", range, move |t| water(t) * salt_factor(0.5, Celsius(t))),
        ],
    )
}

fn acidity() -> Picture {
    let at = |look, name, celsius| {
        line(look, name, (4.0, 8.0), move |ph| {
            carbon_over_carbon_dioxide(ph, Celsius(celsius)).log10()
        })
    };
    drawn(
        "acidity",
        "All dissolved carbon over dissolved carbon dioxide",
        axis("pH", "1", 4.0, 8.0),
        axis("carbon over carbon dioxide, power of ten", "1", 0.0, 2.0),
        &[at(1, "25 °C", 25.0), at(2, "40 °C", 40.0)],
    )
}

fn activity() -> Picture {
    drawn(
        "activity",
        "Activity coefficient of a single charge",
        axis("ionic strength", "mol/kg", 0.0, 0.7),
        axis("activity coefficient", "1", 0.6, 1.0),
        &[line(1, "after Davies", (0.0, 0.7), |ionic| 10.0_f64.powf(-activity_log10(ionic)))],
    )
}
