//! What a nutrition label leaves open.

use super::{Picture, axis, drawn, line};
use barm_science::food::label::{Declared, LabelStarch, NaturalSugar, NutritionLabel, food};

pub(super) fn pictures() -> Vec<Picture> {
    let open = |look, name, sugars: f64, natural_sugar| {
        line(look, name, (2.0, 40.0), move |grams| 100.0 * doubt(grams, sugars, natural_sugar))
    };
    vec![drawn(
        "label-doubt",
        "How unsure the carbohydrate is that a label declares",
        axis("carbohydrate in a serving", "g", 0.0, 40.0),
        axis("standard deviation", "%", 0.0, 30.0),
        &[
            open(1, "all starch", 0.0, NaturalSugar::Unknown),
            open(2, "all sugar, its kind known", 1.0, NaturalSugar::Fruit),
            open(3, "all sugar, its kind not known", 1.0, NaturalSugar::Unknown),
        ],
    )]
}

/// Standard deviation of the carbohydrate of such a label (1); a part `sugars` of it is sugar.
fn doubt(grams: f64, sugars: f64, natural_sugar: NaturalSugar) -> f64 {
    let label = NutritionLabel {
        serving_g: 50.0,
        carbohydrate: Declared::Grams(grams),
        fiber: Declared::Grams(0.0),
        sugars: Declared::Grams(sugars * grams),
        added_sugars: None,
        sugar_alcohols: None,
        fat_g: None,
        protein_g: None,
        sodium_mg: None,
        starch: LabelStarch::Raw,
        natural_sugar,
    };
    food(&label).map_or(f64::NAN, |food| food.content_sd)
}
