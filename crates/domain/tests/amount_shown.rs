//! Amounts shown in kitchen units, read back by the parser of amounts.

use barm_domain::amount::show::{Kitchen, both_degrees, inches, ounces, spoons};
use barm_domain::amount::{Amount, celsius, millimeters};
use proptest::prelude::*;

/// NIST SP 811 (2008), appendix B.8, gives 4.928922 mL for the teaspoon and 236.5882 mL for the
/// cup; what is asked for here is a little off, as in a kitchen.
#[test]
fn says_what_a_cook_would_say() {
    for (ml, text) in [
        (0.6, "1/8 tsp"),
        (1.2, "1/4 tsp"),
        (4.9, "1 tsp"),
        (5.0, "1 tsp"),
        (7.5, "1 1/2 tsp"),
        (15.0, "1 tbsp"),
        (40.0, "3 tbsp"),
        (60.0, "1/4 cup"),
        (80.0, "1/3 cup"),
        (237.0, "1 cup"),
        (1000.0, "4 1/4 cups"),
    ] {
        assert_eq!(spoons(ml).unwrap().to_string(), text, "{ml} mL");
    }
    assert_eq!(spoons(0.1), None);
    assert_eq!(spoons(f64::NAN), None);
    for (mm, text) in [(3.0, "1/8 in"), (25.4, "1 in"), (34.925, "1 3/8 in"), (127.0, "5 in")] {
        assert_eq!(inches(mm).unwrap().to_string(), text, "{mm} mm");
    }
    for (grams, text) in
        [(113.0, "4 oz"), (454.0, "1 lb"), (580.0, "1 lb 4 1/2 oz"), (7.0, "1/4 oz")]
    {
        assert_eq!(ounces(grams).unwrap().to_string(), text, "{grams} g");
    }
}

/// A cup is 16 tablespoons of 3 teaspoons each (NIST SP 811, B.8): nobody counts out 12 tablespoons
/// where a set of cups has a measure for it.
#[test]
fn several_measures_together_are_the_largest_that_fit() {
    for (teaspoons, text) in [
        (0.25, "1/4 tsp"),
        (2.2, "2 1/4 tsp"),
        (3.0, "1 tbsp"),
        (11.75, "3 tbsp + 2 3/4 tsp"),
        (12.0, "1/4 cup"),
        (36.0, "3/4 cup"),
        (48.0, "1 cup"),
        (63.25, "1 1/4 cups + 1 tbsp + 1/4 tsp"),
        (96.0, "2 cups"),
    ] {
        assert_eq!(Kitchen::of_teaspoons(teaspoons).unwrap().to_string(), text);
    }
    assert_eq!(Kitchen::of_teaspoons(0.12), None);
    assert_eq!(Kitchen::of_teaspoons(f64::INFINITY), None);
    assert_eq!(Kitchen::of_milliliters(f64::NAN), None);
}

/// The fixed points of both scales: ice and steam, and where they meet (NIST SP 811, B.8).
#[test]
fn says_temperatures_in_both_units() {
    for (degrees, text) in [
        (0.0, "0 °C (32 °F)"),
        (100.0, "100 °C (212 °F)"),
        (-40.0, "-40 °C (-40 °F)"),
        (-0.2, "0 °C (32 °F)"),
        (40.0, "40 °C (104 °F)"),
        (43.3, "43 °C (110 °F)"),
    ] {
        assert_eq!(both_degrees(degrees), text);
    }
    assert!((celsius("104 °F").unwrap() - 40.0).abs() < 1e-12);
}

proptest! {
    #[test]
    fn measures_together_read_back_to_an_eighth_of_a_teaspoon(ml in 1.0..20_000.0_f64) {
        let text = Kitchen::of_milliliters(ml).unwrap().to_string();
        let read: f64 =
            text.split(" + ").map(|one| Amount::parse(one).unwrap().value).sum();
        // NIST SP 811, B.8: 4.928922 mL a teaspoon.
        prop_assert!((read - ml).abs() <= 4.928_922 / 8.0 + 1e-6, "{ml} mL: {text}");
    }

    #[test]
    fn what_is_shown_reads_back_as_far_off_as_it_says(exponent in -0.4..4.0_f64) {
        let wanted = 10f64.powf(exponent);
        if let Some(near) = spoons(wanted) {
            let read = Amount::parse(&near.text).unwrap().value;
            prop_assert!((read / wanted - 1.0 - near.off).abs() < 1e-9, "{wanted} mL: {near:?}");
            // The widest gaps are those between 1/8 and 1/4 and between 1 tbsp and 1 1/2 tbsp.
            let bound = if wanted > 0.6 { 2f64.sqrt() - 1.0 } else { 1.0 };
            prop_assert!(near.off.abs() <= bound + 1e-9, "{wanted} mL: {near:?}");
        }
        if let Some(near) = inches(wanted) {
            let read = millimeters(&near.text).unwrap();
            prop_assert!((read / wanted - 1.0 - near.off).abs() < 1e-9, "{wanted} mm: {near:?}");
            prop_assert!((read - wanted).abs() <= 25.4 / 32.0 + 1e-9, "{wanted} mm: {near:?}");
        }
        if let Some(near) = ounces(wanted) {
            let read = Amount::parse(&near.text).unwrap().value;
            prop_assert!((read / wanted - 1.0 - near.off).abs() < 1e-9, "{wanted} g: {near:?}");
            prop_assert!((read - wanted).abs() <= 28.35 / 8.0 + 1e-6, "{wanted} g: {near:?}");
        }
    }

    #[test]
    fn no_text_makes_the_parser_panic(text in "\\PC{0,90}") {
        let amount = Amount::parse(&text);
        if let Ok(amount) = amount {
            prop_assert!(amount.value >= 0.0 && amount.value <= 1e9, "{text}: {}", amount.value);
        }
        let _ = barm_domain::amount::size(&text);
        let _ = barm_domain::amount::dollars(&text);
        let _ = barm_domain::amount::number(&text);
        let _ = barm_domain::amount::altitude_meters(&text);
        let _ = text.parse::<barm_domain::code::BagCode>();
    }

    #[test]
    fn pieces_of_amounts_do_not_panic_either(
        pieces in prop::collection::vec(
            prop::sample::select(vec![
                "1", "0", "999", "/", "½", "⅓", ",", ".", "-", "−", " ", "tsp", "5 mL tsp", "g",
                "°F", "in", "\"", "'", "x", "×", "to ", "%", "$", "e9", "(5 mL)", "level ", "and ",
            ]),
            0..12,
        )
    ) {
        let text = pieces.concat();
        if let Ok(amount) = Amount::parse(&text) {
            // What was read says the same again.
            prop_assert_eq!(Amount::parse(&amount.written), Ok(amount));
        }
        let _ = barm_domain::amount::size(&text);
        let _ = barm_domain::amount::dollars(&text);
        let _ = celsius(&text);
        let _ = barm_domain::amount::minutes(&text);
    }
}
