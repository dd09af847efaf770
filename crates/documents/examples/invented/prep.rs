//! Invented preparation.

use super::{TITLE, Treatment, caution, entry, imprint};
use barm_documents::sheet::{
    PeriodTrays, PrepSheet, Purchase, Stock, Total, Tray, TrayBag, WaterMix,
};
use barm_domain::code::BagCode;

fn purchase(item: &str, need: &str, in_stock: &str, packs: &str, cost: &str) -> Purchase {
    Purchase {
        item: item.to_owned(),
        need: need.to_owned(),
        in_stock: in_stock.to_owned(),
        packs: packs.to_owned(),
        cost: cost.to_owned(),
    }
}

fn total(what: &str, amount: &str, note: &str) -> Total {
    Total { what: what.to_owned(), amount: amount.to_owned(), note: note.to_owned() }
}

fn stock(name: &str, makes: &str, recipe: &str, serves: &str) -> Stock {
    Stock {
        name: name.to_owned(),
        makes: makes.to_owned(),
        recipe: recipe.to_owned(),
        serves: serves.to_owned(),
    }
}

fn tray(period: usize, group: usize, bags: usize, all: &[Treatment]) -> Tray {
    let bag = |at: usize| {
        let own = 1 + (group - 1) % (all.len() - 1);
        let one = &all[if at + 1 == bags { 0 } else { own }];
        let code = BagCode::all_of(period as u8, group as u8).nth(at);
        TrayBag {
            code: code.expect("a period has codes for each group").to_string(),
            treatment: one.name.clone(),
            look: one.look,
        }
    };
    Tray {
        group: group.to_string(),
        bags: (0..bags).map(bag).collect(),
        also: if group.is_multiple_of(4) {
            vec!["2 mL glucoamylase solution in a cup".to_owned()]
        } else {
            Vec::new()
        },
    }
}

fn water(period: usize) -> WaterMix {
    let minute = 4 + 6 * period;
    WaterMix {
        period: format!("Period {period}"),
        poured: "41 °C".to_owned(),
        whose: String::new(),
        clock: format!("{}:{minute:02}", 7 + period),
        hot: "0.56 L".to_owned(),
        cold: "0.68 L".to_owned(),
        total: "1.24 L".to_owned(),
        jug: "42.5 °C (108 °F)".to_owned(),
        bag: "40 °C".to_owned(),
    }
}

/// The sheet of a day with so many periods, groups in each and bags in each group.
pub(crate) fn full(periods: usize, groups: usize, bags: usize, all: &[Treatment]) -> PrepSheet {
    let every_tray = [
        "3 snack bags, labeled",
        "3 index cards",
        "1 ruler",
        "1 thermometer",
        "6 g yeast in a cup",
    ];
    PrepSheet {
        imprint: imprint("PREP-D-T"),
        title: TITLE.to_owned(),
        summary: "Prep sheet, Tuesday March 9".to_owned(),
        totals: vec![
            total("snack bags", "116", "96 for groups, 8 controls, 12 spare"),
            total("index cards", "26", "3 × 5 in, used again each period"),
            total("labels", "116", "4 sheets of 30"),
            total("warm water", "4.9 L", "20 ¾ cups, 40 mL a bag"),
            total("instant yeast", "232 g", "about 1 ⅔ cups"),
            total("readings", "728", "7 a bag"),
        ],
        shopping: vec![
            purchase("Instant yeast", "232 g (1 ⅔ cups)", "40 g", "2 × 113 g", "$10.98"),
            purchase("Maple syrup", "18 g (1 tbsp)", "", "1 × 250 mL", "$6.29"),
            purchase("Oat flour", "36 g (¼ cup + 1 tbsp)", "", "1 × 680 g", "$4.49"),
            purchase("Potato flakes", "36 g (⅔ cup)", "1 kg", "", ""),
            purchase("Nonfat dry milk", "36 g (½ cup)", "", "1 × 272 g", "$5.15"),
            purchase("Lactase drops", "4 mL", "", "1 × 15 mL", ""),
            purchase("Snack bags", "116", "", "2 × 90", "$7.58"),
        ],
        cost: Some("$34.49".to_owned()),
        cost_note: "without lactase drops, which have no price in the plan".to_owned(),
        stocks: vec![
            stock("Glucoamylase solution", "60 mL", "Stir 0.6 g (about ¼ tsp) of powder into 60 mL (¼ cup) of cool water. Wet wipe, no dry sweeping. Keep it cold, use it the same day.", "16 bags of oat flour and potato flakes, 2 mL each, and 4 enzyme controls"),
            stock("Mashed banana", "40 g", "Mash one ripe banana with a fork until smooth. Cover it; it browns, which does no harm here.", "8 bags, 4 g each"),
        ],
        water: (1..=periods).map(water).collect(),
        water_note: "Hot 60 °C from the kettle, cold 18 °C from the tap. The jug loses 0.4 °C a minute; a bag takes 2 °C.".to_owned(),
        trays: (1..=periods)
            .map(|period| PeriodTrays {
                period: format!("Period {period}"),
                clock: format!("{}:10 to {}:55", 7 + period, 7 + period),
                every_tray: every_tray.map(str::to_owned).to_vec(),
                trays: (1..=groups).map(|group| tray(period, group, bags, all)).collect(),
            })
            .collect(),
        notes: vec![entry("Teacher's bench", "Each period: 2 bags without food, 1 with enzyme and no food, 1 with maple syrup and no yeast.")],
        cautions: vec![
            caution("S10", "Milk (nonfat dry milk) is an allergen: ask the nurse's list, wipe benches, wash hands.", "FALCPA 2004"),
            caution("S11", "Oat flour may carry wheat: read the pack.", "FALCPA 2004"),
            caution("S01", "Enzyme powder can sensitize airways: the teacher makes the solution before school, lid on; students get liquid only.", "GHS H334"),
            caution("S05", "Water over 43 °C (110 °F) is poured by the teacher; at 60 °C (140 °F) skin burns in about 5 seconds.", "Moritz & Henriques 1947"),
            caution("S03", "Goggles until the last bag is vented.", "ANSI/ISEA Z87.1"),
        ],
    }
}

/// The same with three waters in every period.
pub(crate) fn of_three_waters(sheet: PrepSheet) -> PrepSheet {
    const WATERS: [(&str, &str); 3] =
        [("20 °C", "Cold"), ("40 °C", "all other bags"), ("45 °C", "Warm, Warm + enzyme")];
    let water = sheet.water.iter().flat_map(|one| {
        WATERS.map(|(poured, whose)| WaterMix {
            poured: poured.to_owned(),
            whose: whose.to_owned(),
            ..one.clone()
        })
    });
    PrepSheet { water: water.collect(), ..sheet }
}

/// The sheet of a plan without bags.
pub(crate) fn empty() -> PrepSheet {
    PrepSheet {
        imprint: imprint("PREP-D-T"),
        title: "Yeast".to_owned(),
        summary: "Prep sheet".to_owned(),
        totals: vec![total("bags", "0", "the plan lists none")],
        shopping: Vec::new(),
        cost: None,
        cost_note: String::new(),
        stocks: Vec::new(),
        water: Vec::new(),
        water_note: String::new(),
        trays: Vec::new(),
        notes: Vec::new(),
        cautions: Vec::new(),
    }
}
