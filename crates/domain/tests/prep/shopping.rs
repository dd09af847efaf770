//! What is bought, and what is said where the plan does not tell enough.

use crate::school::{
    amount, cases, fill, material, of, plan, purchase, treatment, with_enzyme, with_food,
};
use barm_domain::plan::{BagChoice, Plan};
use barm_domain::prep::{Buy, Chosen, Item, prep};
use barm_science::setup::YeastKind;
use proptest::prelude::*;

const YEAST: Item = Item::Yeast(YeastKind::Instant);

/// 60 bags of 2 g of oat flour, and 5 of yeast alone: 66 g of flour, 222.4 g of yeast with spare.
fn some_day() -> Plan {
    let mut plan = plan(5, 4, vec![with_food("oat_flour", "1 g")]);
    fill(&mut plan, 3);
    plan
}

fn bought(buy: &Buy) -> Vec<(&str, u64)> {
    match buy {
        Buy::Packs { packs, .. } => {
            packs.iter().map(|pack| (pack.written.as_str(), pack.count)).collect()
        }
        Buy::Nothing | Buy::NoPackKnown => Vec::new(),
    }
}

#[test]
fn stock_counts_and_the_rest_costs_least() {
    let mut plan = some_day();
    plan.materials = vec![
        material("yeast", "113 g", Some(5.49), "20 g"),
        material("yeast", "1 lb", Some(8.99), ""),
        material("yeast", "3 packets", Some(2.49), "1 packet"),
        material("oat_flour", "1 lb", Some(4.0), "1 kg"),
        material("bags", "50 bags", Some(3.79), "12 bags"),
    ];
    let prep = prep(&plan).unwrap();
    let yeast = purchase(&prep, &YEAST);
    assert_eq!(yeast.in_stock, of(&YEAST, 27.0));
    assert_eq!(yeast.short, yeast.need.less(of(&YEAST, 27.0)));
    // 195.4 g: a pound for $8.99, two jars for $10.98, ten times three packets for $24.90.
    assert_eq!(bought(&yeast.buy), [("1 lb", 1)]);
    assert!(
        matches!(yeast.buy, Buy::Packs { chosen: Chosen::LeastCost, cost: Some(c), .. } if (c - 8.99).abs() < 1e-9)
    );
    assert_eq!(purchase(&prep, &Item::Food("oat_flour".into())).buy, Buy::Nothing);
    // 65 bags and 7 to spare; 12 are there.
    let bags = purchase(&prep, &Item::Bag("sandwich".into()));
    assert_eq!(
        (bags.short.to_string().as_str(), bought(&bags.buy)),
        ("60", vec![("50 bags", 2)])
    );
    assert!((prep.shopping.cost - (8.99 + 7.58)).abs() < 1e-9);
    // Nobody named a pack of the rest.
    for item in [Item::Label, Item::Cup, Item::Spoon, Item::Card("3 x 5 in".into())] {
        assert_eq!(purchase(&prep, &item).buy, Buy::NoPackKnown, "{}", item.name());
        assert!(prep.shopping.without_price.contains(&item));
    }
}

#[test]
fn without_a_price_the_fewest_packs_are_bought() {
    let mut plan = some_day();
    plan.materials = vec![
        material("yeast", "113 g", Some(5.49), ""),
        material("yeast", "227 g", None, ""),
        material("yeast", "500 g", Some(99.0), ""),
    ];
    let prep = prep(&plan).unwrap();
    let yeast = purchase(&prep, &YEAST);
    // One pack of 227 g or of 500 g suffices; the smaller leaves less over.
    assert_eq!(bought(&yeast.buy), [("227 g", 1)]);
    assert!(matches!(yeast.buy, Buy::Packs { chosen: Chosen::FewestPacks, cost: None, .. }));
    assert!(prep.shopping.without_price.contains(&YEAST));
    assert!(prep.shopping.cost < 1e-9);
}

#[test]
fn what_cannot_be_counted_is_left_out_with_a_reason() {
    let mut plan = some_day();
    plan.materials = vec![
        material("oat_flour", "3 bags", Some(1.0), ""),
        material("oat_flour", "0 g", Some(0.0), ""),
        material("oat_flour", "500 g", Some(3.0), "2 bags"),
        material("bags", "1 lb", None, ""),
    ];
    let prep = prep(&plan).unwrap();
    let flour = purchase(&prep, &Item::Food("oat_flour".into()));
    assert_eq!(bought(&flour.buy), [("500 g", 1)]);
    let reasons: Vec<&str> = flour.left_out.iter().map(|left| left.written.as_str()).collect();
    assert_eq!(reasons, ["3 bags", "0 g", "2 bags"]);
    assert!(
        flour.left_out.iter().all(|left| left.fix.starts_with("w")),
        "{:?}",
        flour.left_out
    );
    assert!(flour.in_stock.is_none());
    let bags = purchase(&prep, &Item::Bag("sandwich".into()));
    assert_eq!((&bags.buy, bags.left_out.len()), (&Buy::NoPackKnown, 1));
}

#[test]
fn two_kinds_of_bag_share_packs_but_no_stock() {
    let quart = treatment("Quart bag", |difference| {
        difference.bag = Some(BagChoice::parse("quart").unwrap());
    });
    let mut plan = plan(1, 2, vec![quart, treatment("Sandwich bag", |_| {})]);
    plan.materials = vec![material("bags", "2 bags", Some(1.0), "100 bags")];
    fill(&mut plan, 2);
    let prep = prep(&plan).unwrap();
    for (kind, packs) in [("quart", 2), ("sandwich", 2)] {
        let bags = purchase(&prep, &Item::Bag(kind.into()));
        assert!(bags.kinds_not_told_apart && bags.in_stock.is_none());
        assert_eq!(bought(&bags.buy), [("2 bags", packs)], "{kind}: {}", bags.need);
    }
}

#[test]
fn drops_tablets_and_powders_are_bought_as_they_are_sold() {
    let treatments = vec![
        with_enzyme("lactase drops", "5 drops"),
        with_enzyme("lactase tablet", "10 mL"),
        with_enzyme("glucoamylase powder", "2 mL"),
        with_enzyme("glucoamylase powder", "0.1 g"),
        with_enzyme("invertase liquid", "1 mL"),
    ];
    let mut plan = plan(1, 10, treatments);
    plan.materials = vec![
        material("lactase-drops", "15 mL", Some(9.0), ""),
        material("lactase-drops", "100 drops", Some(5.0), ""),
        material("lactase-tablet", "60 tablets", Some(7.0), ""),
        material("glucoamylase-powder", "1 oz", Some(6.0), ""),
        material("invertase-liquid", "2 fl oz", Some(8.0), "1 packet"),
    ];
    fill(&mut plan, 1);
    let prep = prep(&plan).unwrap();
    for (key, need, packs) in [
        // Two bags of 5 drops of 0.05 mL and a tenth to spare.
        ("lactase-drops", 0.55, ("100 drops", 1)),
        // 22 mL of solution: one tablet makes 100 mL.
        ("lactase-tablet", 1.0, ("60 tablets", 1)),
        // 4.4 mL of solution, made as 10 mL of 1 g per 100 mL, and 0.22 g straight from the jar.
        ("glucoamylase-powder", 0.32, ("1 oz", 1)),
        ("invertase-liquid", 2.2, ("2 fl oz", 1)),
    ] {
        let bought_of = purchase(&prep, &Item::Enzyme(key));
        assert_eq!(bought_of.need, of(&bought_of.item, need), "{key}");
        assert_eq!(bought(&bought_of.buy), [packs], "{key}");
    }
    assert_eq!(purchase(&prep, &Item::Enzyme("invertase-liquid")).left_out.len(), 1);
    assert_eq!(Item::Solution("glucoamylase-powder").name(), "glucoamylase solution");
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn packs_and_stock_cover_the_need(
        packs in prop::collection::vec((1_u32..=800, prop::option::of(0_u32..=3000)), 0..=4),
        stock in 0_u32..=400,
        spare in 0_u32..=50,
    ) {
        let mut plan = some_day();
        plan.spare = f64::from(spare) / 100.0;
        plan.materials = packs
            .iter()
            .map(|(grams, cents)| {
                let price = cents.map(|cents| f64::from(cents) / 100.0);
                material("yeast", &format!("{grams} g"), price, "")
            })
            .collect();
        if let Some(first) = plan.materials.first_mut() {
            first.in_stock = Some(amount(&format!("{stock} g")));
        }
        let found = prep(&plan).unwrap();
        plan.materials.reverse();
        let turned = prep(&plan).unwrap();
        let yeast = purchase(&found, &YEAST);
        match &yeast.buy {
            Buy::Nothing => prop_assert!(yeast.in_stock >= yeast.need),
            Buy::NoPackKnown => prop_assert!(packs.is_empty()),
            Buy::Packs { packs: bought, cost, left_over, .. } => {
                let held = bought
                    .iter()
                    .fold(yeast.in_stock, |sum, pack| sum.plus(pack.holds.times(pack.count)));
                prop_assert_eq!(held, yeast.need.plus(*left_over));
                prop_assert!(bought.iter().all(|pack| pack.count > 0));
                let priced = bought.iter().all(|pack| pack.price.is_some());
                prop_assert_eq!(cost.is_some(), priced);
                // Not one pack too many.
                prop_assert!(bought.iter().all(|pack| pack.holds > *left_over));
            }
        }
        prop_assert_eq!(&yeast.buy, &purchase(&turned, &YEAST).buy);
    }
}
