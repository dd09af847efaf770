//! The breath meter: from what it shows to what is in the liquid.

use super::{Picture, axis, drawn, line};
use barm_science::ethanol::water_gas_ratio;
use barm_science::meter::{Liquid, percent_over};
use barm_science::units::Celsius;

pub(super) fn pictures() -> Vec<Picture> {
    vec![shown(), ratio()]
}

fn shown() -> Picture {
    let over = |look, name, celsius| {
        line(look, name, (0.0, 10.0), move |grams| {
            percent_over(grams, &Liquid::water(Celsius(celsius)))
        })
    };
    drawn(
        "meter",
        "What a breath meter would show over a bag; relative readings only",
        axis("ethanol in the liquid", "g/L", 0.0, 10.0),
        axis("shown", "%", 0.0, 1.2),
        &[over(1, "20 °C", 20.0), over(2, "30 °C", 30.0), over(3, "40 °C", 40.0)],
    )
}

fn ratio() -> Picture {
    drawn(
        "ethanol-ratio",
        "Ethanol in a litre of water over ethanol in a litre of the gas above it",
        axis("temperature", "°C", 15.0, 45.0),
        axis("water over gas, in thousands", "1", 0.0, 10.0),
        &[line(1, "mean of four", (15.0, 45.0), |t| 1e-3 * water_gas_ratio(Celsius(t)))],
    )
}
