//! Whole days as a teacher counts them.

use crate::school::{
    add_bag, amount, fill, material, of, plan, purchase, total, treatment, with_enzyme,
    with_food,
};
use barm_domain::plan::{GroupSetting, Lies};
use barm_domain::prep::{Buy, Item, prep};
use barm_science::setup::YeastKind;

const YEAST: Item = Item::Yeast(YeastKind::Instant);

fn sugar() -> Item {
    Item::Food("sugar_white".into())
}

/// Common practice, no source: five periods of eight groups with three bags each, one control of
/// the teacher's in every period and a tenth to spare. By hand: 5 · (8 · 3 + 1) = 125 bags, 137.5
/// with the spare, so 138; 125 · 3.11 g · 1.1 = 427.6 g of yeast, 125 · 60 mL · 1.1 = 8.25 L of
/// water, 125 · 8.4 g · 1.1 = 1155 g of sugar if all choose sugar. Each bag and its card have a label: 250
/// and 25 to spare are 275, which are 10 sheets of 30.
#[test]
fn a_full_day_comes_to_138_bags() {
    let mut plan = plan(5, 8, vec![with_food("sugar_white", "2 tsp")]);
    plan.controls[0].treatment.difference = plan.questions[0].treatments[0].difference.clone();
    plan.materials = vec![
        material("labels", "30 labels", None, ""),
        material("yeast", "1 packet", Some(0.75), ""),
    ];
    fill(&mut plan, 3);
    let prep = prep(&plan).unwrap();

    assert_eq!(prep.bags().to_string(), "138");
    assert_eq!(prep.cards().to_string(), "138");
    assert_eq!(prep.labels().to_string(), "275");
    let water = total(&prep, &Item::Water);
    assert_eq!(water.need(), of(&Item::Water, 8250.0));
    assert_eq!(water.most_in_a_period, of(&Item::Water, 1500.0));
    assert_eq!(total(&prep, &YEAST).need().to_string(), "428 g");
    assert_eq!(total(&prep, &sugar()).need().to_string(), "1.16 kg");

    // 428 g in packets of 7 g are 61.1 packets.
    for (item, packs) in [(Item::Label, 10), (YEAST, 62)] {
        match &purchase(&prep, &item).buy {
            Buy::Packs { packs: bought, .. } => {
                assert_eq!(bought.iter().map(|pack| pack.count).sum::<u64>(), packs);
            }
            other => panic!("{}: {other:?}", item.name()),
        }
    }
    // 1.65 L a period, which a jug with marks every 50 mL shows.
    for period in &prep.periods {
        assert_eq!(period.trays.len(), 9);
        let [jug] = period.jugs.as_slice() else { panic!("{:?}", period.jugs) };
        assert_eq!((jug.bags, jug.makes.to_string().as_str()), (25, "1.65 L"));
    }
}

#[test]
fn a_tray_says_what_goes_into_which_bag() {
    let mut day = plan(
        2,
        2,
        vec![
            with_food("oat_flour", "2 g"),
            treatment("Oat flour, more", |difference| {
                difference.food = Some(Some("oat_flour".into()));
                difference.food_amount = Some(amount("1 tsp"));
                difference.water = Some(amount("1/4 cup"));
                difference.lies = Some(Lies::Towel);
            }),
            treatment("No yeast", |difference| difference.yeast = Some(None)),
        ],
    );
    day.group_settings.push(GroupSetting {
        period: "1".into(),
        group: 2,
        label: Some("Otters".into()),
        grade: None,
        inquiry: None,
    });
    for name in ["oat_flour", "oat_flour", "Oat flour, more", "No yeast"] {
        add_bag(&mut day, 0, 2, name);
    }
    add_bag(&mut day, 0, 0, "Yeast alone");
    let prep = prep(&day).unwrap();

    let [period] = prep.periods.as_slice() else {
        panic!("a period without bags has no trays")
    };
    let [bench, otters] = period.trays.as_slice() else { panic!("{:?}", period.trays) };
    assert_eq!((bench.group, bench.bags.len(), &bench.label), (0, 1, &None));
    assert_eq!((otters.group, otters.label.as_deref()), (2, Some("Otters")));
    let codes: Vec<&str> = otters.bags.iter().map(|bag| bag.code.as_str()).collect();
    assert_eq!(codes, ["bag 1", "bag 2", "bag 3", "bag 4"]);
    assert_eq!(otters.bags[2].lies, Lies::Towel);

    let lines: Vec<(String, &str, u32, String)> = otters
        .lines
        .iter()
        .map(|line| {
            let written = line.each.written.as_str();
            (line.item.name(), written, line.bags, line.total.to_string())
        })
        .collect();
    let expected = [
        ("instant yeast", "1 tsp", 3, "9.4 g"),
        ("oat flour", "2 g", 2, "4 g"),
        ("oat flour", "1 tsp", 1, "2.2 g"),
        ("water", "1/4 cup", 1, "60 mL"),
        ("water", "60 mL", 3, "180 mL"),
    ];
    for (item, written, bags, sum) in expected {
        assert!(
            lines.contains(&(item.into(), written, bags, sum.into())),
            "{item} {written}: {lines:?}"
        );
    }
    assert_eq!(lines.len(), expected.len());
    // Yeast, oat flour, water; yeast and oat flour have a spoon each.
    assert_eq!(otters.sum(&Item::Cup).to_string(), "3");
    assert_eq!(otters.sum(&Item::Spoon).to_string(), "2");
    assert_eq!(otters.sum(&Item::Label).to_string(), "8");
}

#[test]
fn amounts_are_said_in_the_kitchens_measures_too() {
    let mut day = plan(
        3,
        4,
        vec![with_food("sugar_white", "2 tsp"), with_enzyme("lactase drops", "5 drops")],
    );
    fill(&mut day, 3);
    let prep = prep(&day).unwrap();
    let kitchen = |item: &Item, value: f64| {
        prep.kitchen(item, of(item, value)).map(|kitchen| kitchen.to_string())
    };
    // 7 g packet = 2 1/4 tsp, as on the packet; USDA SR28: 1 tsp of granulated sugar 4.2 g.
    assert_eq!(kitchen(&YEAST, 7.0).as_deref(), Some("2 1/4 tsp"));
    assert_eq!(kitchen(&YEAST, 3.11 * 36.0).as_deref(), Some("3/4 cup"));
    assert_eq!(kitchen(&sugar(), 8.4).as_deref(), Some("2 tsp"));
    assert_eq!(kitchen(&sugar(), 8.8).as_deref(), Some("2 tsp"));
    assert_eq!(kitchen(&sugar(), 9.0).as_deref(), Some("2 1/4 tsp"));
    // NIST SP 811: a cup is 236.588 mL.
    assert_eq!(kitchen(&Item::Water, 236.588).as_deref(), Some("1 cup"));
    // 1650 mL / 4.92892 mL = 334.76 tsp; 6 3/4 · 48 + 3 · 3 = 333.
    let water = kitchen(&Item::Water, 1650.0);
    assert_eq!(water.as_deref(), Some("6 3/4 cups + 3 tbsp + 1 3/4 tsp"));
    // Too little for a spoon, never weighed by the spoon, counted.
    assert_eq!(kitchen(&sugar(), 0.1), None);
    assert_eq!(kitchen(&Item::Enzyme("glucoamylase-powder"), 5.0), None);
    assert_eq!(kitchen(&Item::Label, 5.0), None);
    let rounded = prep.kitchen(&sugar(), of(&sugar(), 100.0)).unwrap().teaspoons();
    assert!((rounded - 100.0 / 4.2).abs() <= 0.125, "{rounded}");
}

#[test]
fn a_plan_without_bags_needs_nothing() {
    let prep = prep(&plan(2, 4, Vec::new())).unwrap();
    assert!(prep.totals.is_empty() && prep.periods.is_empty() && prep.stocks.is_empty());
    assert!(prep.shopping.purchases.is_empty() && prep.shopping.cost < 1e-9);
    assert!(prep.bags().is_none());
}
