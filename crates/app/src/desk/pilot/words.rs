//! What to lay out and how to do each part, in words for the teacher.

use super::Pilot;
use crate::desk::contents::contents;
use barm_documents::catalog::Catalog;
use barm_documents::sheet::PilotTable;
use barm_domain::amount::show::both_degrees;
use barm_domain::pilot::{PilotBag, Protocol, Role};
use barm_domain::plan::{Lies, Plan};

/// What goes into a bag with yeast, line by line.
pub(crate) fn recipe(plan: &Plan, bag: &PilotBag) -> Vec<String> {
    let recipe = &bag.recipe;
    let catalog = Catalog::of("en");
    let mut all: Vec<String> = contents(plan, recipe)
        .into_iter()
        .map(|one| {
            let other = one.other.map(|other| format!(" ({other})")).unwrap_or_default();
            format!("{}{other} {}", one.amount.written, one.thing.name(catalog))
        })
        .collect();
    all.push(format!(
        "{} water of {}",
        recipe.water.written,
        both_degrees(recipe.water_celsius)
    ));
    if let Lies::WarmTray(celsius) = recipe.lies {
        all.push(format!("lies in a tray of water of {}", both_degrees(celsius)));
    }
    all
}

/// Why a bag is there.
pub(crate) const fn reason(role: &Role) -> &'static str {
    match role {
        Role::Yeast => "how strong the yeast is and how fast it wakes",
        Role::Carrier(_) => "how much sugar the enzyme brings along",
        Role::Enzyme(_) => "how fast the enzyme works",
    }
}

/// What to lay out.
pub(crate) fn tools(plan: &Plan, pilot: &Pilot) -> Vec<String> {
    let protocol = &pilot.protocol;
    let mut all = vec!["clock, millimeter ruler, thermometer".to_owned()];
    let bags = protocol.bags.len() + 1 + usize::from(protocol.syringe.is_some());
    let (bag, card) = (&plan.base.bag.written, &plan.base.card.written);
    all.push(format!("{bags} bags ({bag}) and a card ({card}) for each"));
    if !protocol.bags.is_empty() {
        all.push(format!(
            "a tray of water of {}, deep enough to float a bag",
            both_degrees(35.0)
        ));
        all.push("the yeast, white sugar, and what else the bags below get".to_owned());
    }
    if protocol.spoons.is_some() {
        all.push("balance that shows 0.1 g, level measuring teaspoon".to_owned());
    }
    if protocol.syringe.is_some() {
        all.push("blunt 60 mL syringe, tape, a pin for the hole".to_owned());
    }
    if protocol.meter.is_some() {
        all.push("the breath meter, a clean tube, two bags for the mixes".to_owned());
        all.push("ethanol fit to drink, of known strength (adult only)".to_owned());
    }
    all
}

/// Every table that is filled in value by value.
pub(crate) fn tables(protocol: &Protocol) -> Vec<PilotTable> {
    let mut all = Vec::new();
    if let Some(spoons) = protocol.spoons {
        let of_use = if spoons.of_use {
            ""
        } else {
            " This plan weighs its yeast, so nothing hangs on them."
        };
        all.push(PilotTable {
            name: "Teaspoons".into(),
            how: format!(
                "Scoop, level with a straight edge, weigh, tip back; each one anew.{of_use}"
            ),
            typed: "spoon, mass (g)".into(),
            rows: (1..=spoons.count).map(|number| number.to_string()).collect(),
            read: "Grams of one level teaspoon.".into(),
        });
    }
    let dummy = &protocol.dummy;
    let lies = match dummy.recipe.lies {
        Lies::Towel => "between towels",
        Lies::Bench | Lies::WarmTray(_) => "flat on the bench",
    };
    all.push(PilotTable {
        name: "Bag of plain water".into(),
        how: format!(
            "{} water of {}, no yeast, air pressed out, {lies} with its card, thermometer in a fold of \
             the bag.",
            dummy.recipe.water.written,
            both_degrees(dummy.recipe.water_celsius)
        ),
        typed: "cooling, temperature (°C)".into(),
        rows: dummy.minutes.iter().map(|minute| format!("{minute} min")).collect(),
        read: "Temperature; write °C or °F.".into(),
    });
    if let Some(syringe) = &protocol.syringe {
        let most = syringe.volumes_ml.last().copied().unwrap_or_default();
        all.push(PilotTable {
            name: "Air from the syringe".into(),
            how: format!(
                "{:.0} mL of cool water in a {} bag, air pressed out, sealed. Prick a hole near a \
                 corner and tape it around the tip of the blunt syringe; no mouth touches it. Card in the \
                 middle: read its height. Then push air in up to each volume, tape the hole while you \
                 draw the next stroke, wait ten seconds, read. Stop at {most:.0} mL.",
                syringe.water_ml, syringe.bag.written
            ),
            typed: "syringe (mL), height (mm)".into(),
            rows: std::iter::once(0.0)
                .chain(syringe.volumes_ml.iter().copied())
                .map(|volume| format!("{volume:.0} mL"))
                .collect(),
            read: "Height of the card over the bench, in mm, for all air put in so far.".into(),
        });
    }
    if let Some(meter) = &protocol.meter {
        all.push(PilotTable {
            name: "Meter over ethanol".into(),
            how: mixes(&meter.strengths),
            typed: "ethanol (%), meter (%)".into(),
            rows: meter.strengths.iter().map(|strength| format!("{strength} %")).collect(),
            read: "What the display shows. It says nothing about any person.".into(),
        });
    }
    all
}

/// Strength of what the mixes are made from (% by volume): a common spirit.
const SPIRIT_PERCENT: f64 = 40.0;
/// How much of each mix is made (mL).
const MIX_ML: f64 = 100.0;

/// How the mixes are made and read.
fn mixes(strengths: &[f64]) -> String {
    let made: Vec<String> = strengths
        .iter()
        .filter(|strength| **strength > 0.0)
        .map(|strength| {
            let spirit = MIX_ML * strength / SPIRIT_PERCENT;
            format!("{strength} %: {spirit:.2} mL of a {SPIRIT_PERCENT:.0} % spirit")
        })
        .collect();
    format!(
        "Fill up with water of the room to {MIX_ML:.0} mL: {}. 40 mL of each in a bag of the plan's kind, \
         filled half with air, sealed, shaken, left for ten minutes. Push the gas through the tube as on \
         the day, plain water first.",
        made.join("; ")
    )
}
