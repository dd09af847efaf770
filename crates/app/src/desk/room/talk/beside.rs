//! Ideas and insides of bags in the teacher's words.

use crate::desk::wording::listed;
use crate::desk::{Wording, say};
use barm_domain::discussion::{ByYeast, Carbohydrate, Idea, Inside, Speaks, Spoken};
use barm_domain::words::tenths;
use barm_science::setup::EnzymeKind;

/// The idea, what bags say of it, and what there is to tell.
pub(crate) fn idea_says(w: Wording, spoken: &Spoken) -> [String; 4] {
    let (a, b) = (&spoken.read_from.0, &spoken.read_from.1);
    let (x, y) = (tenths(spoken.mm.0), tenths(spoken.mm.1));
    let (idea, numbers, tell) = match spoken.idea {
        Idea::FoodMakesGas => (
            say!(w, "talk-food-gas"),
            say!(w, "talk-food-gas-bags", a = a, b = b, x = x, y = y),
            say!(w, "talk-food-gas-tell"),
        ),
        Idea::TwiceTheFood => (
            say!(w, "talk-twice"),
            say!(w, "talk-two-rose", a = a, b = b, x = x, y = y),
            say!(w, "talk-twice-tell"),
        ),
        Idea::WarmerIsBetter => (
            say!(w, "talk-warmer"),
            say!(w, "talk-two-rose", a = a, b = b, x = x, y = y),
            say!(w, "talk-warmer-tell"),
        ),
        Idea::EnzymeAlwaysHelps => (
            say!(w, "talk-enzyme"),
            say!(w, "talk-two-rose", a = a, b = b, x = x, y = y),
            say!(w, "talk-enzyme-tell"),
        ),
        Idea::UnclearMeansEqual => (
            say!(w, "talk-equal"),
            say!(w, "talk-equal-bags", a = a, b = b, x = x, y = y),
            say!(w, "talk-equal-tell"),
        ),
        Idea::OddMeansWrong => (
            say!(w, "talk-odd"),
            say!(w, "talk-odd-bags", a = a, b = b, x = x, y = y),
            say!(w, "talk-odd-tell"),
        ),
        Idea::OneBagIsEnough => (
            say!(w, "talk-one"),
            say!(w, "talk-one-bags", a = a, x = x, y = y),
            say!(w, "talk-one-tell"),
        ),
    };
    let speaks = match spoken.speaks {
        Speaks::For => say!(w, "talk-fits"),
        Speaks::Against => say!(w, "talk-against"),
        Speaks::Open => say!(w, "talk-leaves-open"),
    };
    [idea, numbers, speaks, tell]
}

/// What is in a bag, a sentence each.
pub(crate) fn inside_says(w: Wording, inside: &Inside) -> Vec<String> {
    let mut says = Vec::new();
    if !inside.yeast {
        says.push(say!(w, "talk-no-yeast"));
    }
    if inside.carbohydrates.is_empty() {
        says.push(say!(w, "talk-no-food"));
    }
    let of = |by: ByYeast| -> Vec<String> {
        let own = inside.carbohydrates.iter().filter(|(one, _)| one.by_yeast() == by);
        let told = own.map(|(one, grams)| {
            say!(w, "talk-grams", grams = hundredths(*grams), sugar = carbohydrate(w, *one))
        });
        told.collect()
    };
    let rows = [
        (ByYeast::AtOnce, of(ByYeast::AtOnce)),
        (ByYeast::CutOutside, of(ByYeast::CutOutside)),
        (ByYeast::Later, of(ByYeast::Later)),
        (ByYeast::InPart, of(ByYeast::InPart)),
        (ByYeast::NotAtAll, of(ByYeast::NotAtAll)),
    ];
    for (by, named) in rows.into_iter().filter(|(_, named)| !named.is_empty()) {
        let named = listed(w, &named);
        says.push(match by {
            ByYeast::AtOnce => say!(w, "talk-at-once", sugars = named),
            ByYeast::CutOutside => say!(w, "talk-cut-outside", sugars = named),
            ByYeast::Later => say!(w, "talk-later", sugars = named),
            ByYeast::InPart => say!(w, "talk-in-part", sugars = named),
            ByYeast::NotAtAll => say!(w, "talk-not-at-all", sugars = named),
        });
    }
    for enzyme in &inside.enzymes {
        let finds = inside.carbohydrates.iter().any(|(one, _)| one.is_cut_by(*enzyme));
        let does = enzyme_does(w, *enzyme);
        says.push(if finds { does } else { say!(w, "talk-finds-nothing", does = does) });
    }
    says
}

fn carbohydrate(w: Wording, one: Carbohydrate) -> String {
    match one {
        Carbohydrate::Glucose => say!(w, "talk-glucose"),
        Carbohydrate::Fructose => say!(w, "talk-fructose"),
        Carbohydrate::Sucrose => say!(w, "talk-sucrose"),
        Carbohydrate::Maltose => say!(w, "talk-maltose"),
        Carbohydrate::Galactose => say!(w, "talk-galactose"),
        Carbohydrate::Lactose => say!(w, "talk-lactose"),
        Carbohydrate::Raffinose => say!(w, "talk-raffinose"),
        Carbohydrate::Dextrin => say!(w, "talk-dextrin"),
        Carbohydrate::CookedStarch => say!(w, "talk-cooked-starch"),
        Carbohydrate::RawStarch => say!(w, "talk-raw-starch"),
    }
}

fn enzyme_does(w: Wording, enzyme: EnzymeKind) -> String {
    match enzyme {
        EnzymeKind::Glucoamylase => say!(w, "talk-glucoamylase"),
        EnzymeKind::FungalAlphaAmylase | EnzymeKind::BacterialAlphaAmylase => {
            say!(w, "talk-alpha-amylase")
        }
        EnzymeKind::BetaAmylase => say!(w, "talk-beta-amylase"),
        EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => say!(w, "talk-lactase"),
        EnzymeKind::Invertase => say!(w, "talk-invertase"),
        EnzymeKind::AlphaGalactosidase => say!(w, "talk-alpha-galactosidase"),
    }
}

/// Grams: tenths from a gram on, hundredths below.
fn hundredths(grams: f64) -> String {
    if grams >= 1.0 { format!("{grams:.1}") } else { format!("{grams:.2}") }
}
