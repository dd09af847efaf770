//! The breath meter: from what it shows to what is in the liquid.

use super::{Picture, axis, drawn, line};
use barm_science::meter::{Liquid, percent_over};
use barm_science::units::Celsius;

pub(super) fn pictures() -> Vec<Picture> {
    let over = |look, name, celsius| {
        line(look, name, (0.0, 10.0), move |grams| {
            percent_over(grams, &Liquid::water(Celsius(celsius)))
        })
    };
    vec![drawn(
        "meter",
        "What a breath meter would show over a bag; relative readings only",
        axis("ethanol in the liquid", "g/L", 0.0, 10.0),
        axis("shown", "%", 0.0, 1.2),
        &[over(1, "20 °C", 20.0), over(2, "30 °C", 30.0), over(3, "40 °C", 40.0)],
    )]
}
