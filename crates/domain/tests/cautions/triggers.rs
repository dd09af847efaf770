//! For every caution: plans that bring it up, each beside one that differs in the trigger alone.

use super::scene::{Scene, amount, calm, period, quiet};
use barm_domain::outlook::Overnight;
use barm_domain::plan::{BagChoice, Circumstance, Extra, Lies};
use barm_science::food::label::{LabelStarch, NaturalSugar};

pub(crate) struct Trigger {
    pub(crate) code: &'static str,
    pub(crate) what: &'static str,
    pub(crate) with: Scene,
    pub(crate) without: Scene,
}

fn trigger(code: &'static str, what: &'static str, with: Scene, without: Scene) -> Trigger {
    Trigger { code, what, with, without }
}

fn circumstance(circumstance: Circumstance) -> Scene {
    Scene::changed(|plan| plan.circumstances = vec![circumstance])
}

fn tray(celsius: f64) -> Scene {
    Scene::changed(|plan| plan.base.lies = Lies::WarmTray(celsius))
}

fn poured(celsius: f64) -> Scene {
    Scene::changed(|plan| plan.base.water_celsius = celsius)
}

fn kettles(count: u32) -> Scene {
    Scene::changed(|plan| plan.equipment.kettles = Some(count))
}

fn meters(count: u32) -> Scene {
    Scene::changed(|plan| plan.equipment.meters = Some(count))
}

fn vent_by(minute: f64) -> Scene {
    Scene::expecting(|entry| entry.vent_by_min = Some(minute))
}

fn overnight_vent_by(minute: Option<f64>) -> Scene {
    let mut scene = circumstance(Circumstance::KeptOvernight);
    let mut entry = calm("Maple syrup");
    entry.vent_by_min = minute;
    scene.outlook = vec![entry];
    scene
}

fn full(fill: f64) -> Scene {
    Scene::expecting(|entry| entry.peak_fill = fill)
}

fn second_period(day: &str) -> Scene {
    Scene::changed(|plan| plan.periods.push(period("2", day, 9)))
}

fn students(count: u32) -> Scene {
    Scene::changed(|plan| plan.periods[0].students = count)
}

fn bag(name: &str) -> Scene {
    Scene::changed(|plan| plan.base.bag = BagChoice::parse(name).unwrap())
}

fn no_yeast(scene: Scene) -> Scene {
    let mut scene = scene;
    scene.plan.base.yeast = None;
    scene
}

fn extra(item: &str, how_much: &str) -> Scene {
    Scene::changed(|plan| {
        plan.base.extras = vec![Extra { item: item.into(), amount: amount(how_much) }];
    })
}

fn label_starch(starch: LabelStarch) -> Scene {
    Scene::label(|label| label.starch = starch, &[])
}

fn natural_sugar(sugar: NaturalSugar) -> Scene {
    Scene::label(|label| label.natural_sugar = sugar, &[])
}

/// An overnight forecast beside that of the class.
fn alcohol(last: f64, overnight: f64) -> Scene {
    let mut scene = Scene::expecting(|entry| entry.upper.ethanol_percent_last = last);
    scene.overnight =
        vec![Overnight { treatment: "Maple syrup".into(), ethanol_percent: overnight }];
    scene
}

/// All triggers, in the order of the codes.
#[rustfmt::skip]
pub(crate) fn triggers() -> Vec<Trigger> {
    let mut all = vec![
        trigger("S01", "a solution made of a powder",
            Scene::enzyme("glucoamylase-powder", "2 mL"), Scene::enzyme("glucoamylase-liquid", "2 mL")),
        trigger("S01", "powder straight from the jar",
            Scene::enzyme("amylase-powder", "0.1 g"), Scene::enzyme("invertase-liquid", "1 mL")),
        trigger("S01", "tablets that are crushed",
            Scene::enzyme("lactase-tablet", "5 mL"), Scene::enzyme("lactase-drops", "5 drops")),
        trigger("S01", "powder that is bought",
            Scene::buying("glucoamylase-powder"), Scene::buying("glucoamylase-liquid")),
        trigger("S02", "an enzyme in a bag",
            Scene::enzyme("lactase-drops", "5 drops"), quiet()),
        trigger("S02", "an enzyme in a bag, not only bought",
            Scene::enzyme("glucoamylase-liquid", "1 mL"), Scene::buying("glucoamylase-liquid")),
        trigger("S03", "water above 43 °C", poured(43.5), poured(43.0)),
        trigger("S03", "a kettle", kettles(1), kettles(0)),
        trigger("S03", "a tray above 43 °C", tray(44.0), tray(42.0)),
        trigger("S04", "a tray at 45 °C", tray(45.0), tray(44.5)),
        trigger("S04", "a tray, not water poured that is gone in minutes", tray(48.0), poured(48.0)),
        trigger("S05", "any bag", quiet(), Scene::empty()),
        trigger("S06", "any bag", quiet(), Scene::empty()),
        trigger("S07", "80 % full at the last reading", full(0.8), full(0.79)),
        // The bell rings 31 minutes after the zero reading.
        trigger("S07", "80 % full before the bell", vent_by(31.0), vent_by(31.5)),
        trigger("S07", "80 % full in a bag that is kept", overnight_vent_by(Some(900.0)), overnight_vent_by(None)),
        trigger("S08", "bags kept overnight", circumstance(Circumstance::KeptOvernight), quiet()),
        trigger("S08", "bags kept overnight, with a forecast", overnight_vent_by(Some(95.0)), vent_by(95.0)),
        trigger("S09", "a food", quiet(), Scene::changed(|plan| plan.questions.clear())),
        trigger("S09", "salt as an extra", extra("salt", "1/4 tsp"), Scene::changed(|plan| plan.questions.clear())),
        trigger("S10", "milk", Scene::food("milk_powder_nonfat"), quiet()),
        trigger("S10", "traces of wheat", Scene::food("oat_flour"), Scene::food("rice_flour")),
        trigger("S10", "an allergen that is bought", Scene::buying("wheat_flour_white"), Scene::buying("corn_starch")),
        trigger("S11", "milk", Scene::food("milk_skim"), Scene::food("apple_juice")),
        trigger("S11", "milk, not another allergen", Scene::food("milk_powder_instant"), Scene::food("wheat_flour_white")),
        trigger("S11", "lactose on a label", natural_sugar(NaturalSugar::Milk), natural_sugar(NaturalSugar::Fruit)),
        trigger("S12", "wheat", Scene::food("wheat_flour_whole"), Scene::food("rice_flour")),
        trigger("S12", "wheat, not milk", Scene::food("rolled_oats"), Scene::food("milk_skim")),
        trigger("S13", "yeast", quiet(), no_yeast(quiet())),
        trigger("S14", "any bag", quiet(), Scene::empty()),
        trigger("S15", "alcohol at the last reading",
            Scene::expecting(|entry| entry.upper.ethanol_percent_last = 0.3),
            Scene::expecting(|entry| entry.upper.ethanol_percent_last = 0.0)),
        trigger("S15", "alcohol the next day", alcohol(0.01, 1.2), alcohol(0.01, 0.01)),
        trigger("S16", "a breath meter", meters(1), meters(0)),
        trigger("S17", "a breath meter", meters(2), quiet()),
        trigger("S18", "a thermometer",
            Scene::changed(|plan| plan.equipment.thermometers = Some(4)),
            Scene::changed(|plan| plan.equipment.thermometers = Some(0))),
        trigger("S19", "one class after another", second_period("Tuesday"), second_period("Wednesday")),
        trigger("S20", "a kettle", kettles(1), kettles(0)),
        trigger("S20", "a tray", tray(38.0), quiet()),
        trigger("S21", "more than 24 students", students(25), students(24)),
        trigger("S22", "any bag", quiet(), Scene::empty()),
        trigger("S23", "gloves", circumstance(Circumstance::Gloves), circumstance(Circumstance::Substitute)),
        trigger("S24", "gas in the bags of a class",
            Scene::expecting(|entry| entry.gas_ml.high = vec![60.0]),
            Scene::expecting(|entry| entry.gas_ml.high = vec![0.0])),
        trigger("S25", "yeast", quiet(), no_yeast(quiet())),
        trigger("S25", "soda", no_yeast(extra("baking_soda", "1/4 tsp")), no_yeast(extra("salt", "1/4 tsp"))),
        trigger("S26", "a large bag", bag("gallon"), bag("snack")),
        trigger("S26", "a young class",
            Scene::changed(|plan| plan.grade = 5), Scene::changed(|plan| plan.grade = 6)),
        trigger("S26", "young children", circumstance(Circumstance::YoungChildren), quiet()),
        trigger("S27", "a declared allergy", circumstance(Circumstance::YeastAllergy), quiet()),
        trigger("S27", "a declared allergy where there is yeast",
            circumstance(Circumstance::YeastAllergy), no_yeast(circumstance(Circumstance::YeastAllergy))),
        trigger("S28", "a substitute", circumstance(Circumstance::Substitute), quiet()),
        trigger("S29", "enzyme in mL", Scene::enzyme("lactase-drops", "0.5 mL"), Scene::enzyme("lactase-drops", "5 drops")),
        trigger("S29", "vinegar in mL", extra("vinegar", "5 mL"), extra("vinegar", "1 tsp")),
        trigger("S30", "a cooked mash", Scene::food("cooked_oats"), Scene::food("rolled_oats")),
        trigger("S30", "a mash, not flakes from a pack", Scene::food("sweet_potato_boiled"), Scene::food("potato_flakes")),
        trigger("S30", "cooked starch on a label", label_starch(LabelStarch::Cooked), label_starch(LabelStarch::Raw)),
        trigger("S31", "any bag", quiet(), Scene::empty()),
        trigger("S32", "yeast", quiet(), no_yeast(quiet())),
        trigger("S32", "soda", no_yeast(extra("baking_soda", "1/4 tsp")), no_yeast(quiet())),
    ];
    for allergen in barm_science::food::Allergen::ALL {
        let named = Scene::label(|_| (), &[allergen.name()]);
        all.push(trigger("S10", allergen.name(), named, Scene::label(|_| (), &[])));
    }
    for allergen in ["soy", "tree nuts", "peanut", "sesame"] {
        all.push(trigger("S12", allergen, Scene::label(|_| (), &[allergen]), Scene::label(|_| (), &["egg"])));
    }
    all
}
