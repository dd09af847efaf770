//! Names of foods, enzymes, bags, cards and places, however loosely they are written.

use barm_domain::amount::Amount;
use barm_domain::bench;
use barm_domain::cupboard::{Cupboard, NotInCupboard, PLAIN_MATERIALS, spoken};
use barm_domain::plan::{BagChoice, CardChoice, ChoiceError, Lies};
use barm_science::bag::StandardBag;
use barm_science::enzyme::PRODUCTS;
use barm_science::food;

#[test]
fn every_built_in_thing_is_found_by_every_name() {
    let cupboard = Cupboard::with(&[]);
    for food in food::all() {
        for name in food.names().chain([spoken(food.id)]) {
            assert_eq!(cupboard.food(name).as_deref(), Ok(food.id), "{name}");
            assert_eq!(cupboard.food(&name.to_uppercase()).as_deref(), Ok(food.id), "{name}");
            assert!(Cupboard::is_built_in(name));
        }
    }
    for product in PRODUCTS {
        for name in [product.key, product.name] {
            assert_eq!(Cupboard::enzyme(name).as_deref(), Ok(product.key), "{name}");
        }
    }
    for item in PLAIN_MATERIALS {
        assert_eq!(cupboard.material(item).as_deref(), Ok(item));
    }
    assert_eq!(cupboard.material("Oat flour").as_deref(), Ok("oat_flour"));
    assert_eq!(
        cupboard.material("glucoamylase solution").as_deref(),
        Ok("glucoamylase-powder")
    );
}

#[test]
fn what_does_not_fit_is_said_with_what_would() {
    let cupboard = Cupboard::with(&[]);
    assert_eq!(cupboard.food("flour, oat").as_deref(), Ok("oat_flour"));
    let fix = |written: &str| cupboard.food(written).unwrap_err().fix();
    assert_eq!(fix("maple sirup"), "did you mean maple syrup?");
    assert!(matches!(cupboard.food("flakes syrup"), Err(NotInCupboard::Unknown { .. })));
    assert!(matches!(cupboard.food("boiled"), Ok(id) if id == "sweet_potato_boiled"));
    let unclear = cupboard.food("syrup").unwrap_err();
    assert!(matches!(&unclear, NotInCupboard::Unclear { fitting, .. } if fitting.len() > 2));
    assert!(fix("granite").contains("[[label_food]]"));
    assert!(matches!(Cupboard::enzyme("amylase"), Err(NotInCupboard::Unclear { .. })));
    let unknown = Cupboard::enzyme("granite").unwrap_err();
    assert!(unknown.fix().contains("lactase drops"), "{}", unknown.fix());
    assert_eq!(cupboard.material("bagz").unwrap_err().fix(), "did you mean bags?");
    assert!(matches!(cupboard.food(""), Err(NotInCupboard::Unknown { .. })));
}

/// What the plan takes as an enzyme can be put on the bench by its usual measure.
#[test]
fn every_enzyme_of_the_cupboard_can_be_measured_out() {
    for product in PRODUCTS {
        let amounts = ["0.1 g", "2 mL", "5 drops", "1 tablet"];
        let fits = amounts.iter().filter(|amount| {
            let amount = Amount::parse(amount).unwrap();
            bench::enzyme(product.name, &amount).and_then(|enzyme| enzyme.dose(&amount)).is_ok()
        });
        assert!(fits.count() >= 2, "{}", product.name);
    }
}

/// Retail sizes in inches: a sandwich bag of 6.5 x 5.875 in; an index card of 3 x 5 in is 76 x
/// 127 mm.
#[test]
fn bags_and_cards_are_read_by_name_and_by_size() {
    let named = BagChoice::parse("Sandwich bag").unwrap();
    assert_eq!(named.bag, StandardBag::Sandwich.bag());
    assert_eq!(named.written, "Sandwich bag");
    let sized = BagChoice::parse("6.5 x 5.875 in").unwrap();
    assert!((sized.bag.width_mm - named.bag.width_mm).abs() < 1.0);
    assert!((sized.bag.height_mm - named.bag.height_mm).abs() < 1.0);
    assert!(sized.bag.film_um > 0.0);
    for freezer in ["quart freezer", "freezer quart bag", "Freezer Quart"] {
        assert_eq!(BagChoice::parse(freezer).unwrap().bag, StandardBag::Quart.freezer_bag());
    }
    for card in ["3 x 5 in", "5 x 3 in", "76.2 mm × 127 mm"] {
        let card = CardChoice::parse(card).unwrap().card;
        assert!((card.length_mm - 127.0).abs() < 0.1 && (card.width_mm - 76.2).abs() < 0.1);
        // An index card weighs a little under 2 g (kitchen scale, from memory).
        assert!((1.5..2.2).contains(&card.grams));
    }
    let wrong = BagChoice::parse("gallen").unwrap_err();
    assert_eq!(wrong.fix(), "did you mean gallon?");
    assert!(matches!(BagChoice::parse("3 x 5 mm"), Err(ChoiceError::Size { what: "bag", .. })));
    assert!(matches!(
        CardChoice::parse("3 x 5 m"),
        Err(ChoiceError::Size { what: "card", .. })
    ));
    assert!(matches!(CardChoice::parse("small"), Err(ChoiceError::Amount(_))));
}

#[test]
fn bags_lie_where_people_say() {
    assert_eq!(Lies::parse("Bench"), Ok(Lies::Bench));
    assert_eq!(Lies::parse("towels"), Ok(Lies::Towel));
    for tray in ["warm tray 40 °C", "Warm tray at 104 °F", "tray of 40 C"] {
        let Ok(Lies::WarmTray(celsius)) = Lies::parse(tray) else { panic!("{tray}") };
        assert!((celsius - 40.0).abs() < 1e-9, "{tray}");
    }
    assert!(matches!(Lies::parse("warm tray"), Err(ChoiceError::Amount(_))));
    assert!(matches!(
        Lies::parse("towle"),
        Err(ChoiceError::Lies { meant: Some("towel"), .. })
    ));
}
