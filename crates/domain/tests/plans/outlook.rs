//! Forecasts of a plan beside their references.

use crate::school::{Asks, sound};
use crate::{Dice, LOOK, foreseen};
use barm_domain::outlook::{self, Entry, Look};
use barm_domain::plan::Plan;
use barm_science::prior::{Learned, Prior};

fn plan() -> Plan {
    sound(Asks::FoodAndEnzyme, &mut Dice::of(2))
}

fn entry<'e>(entries: &'e [Entry], question: &str, treatment: &str) -> &'e Entry {
    entries
        .iter()
        .find(|entry| entry.question == question && entry.treatment == treatment)
        .unwrap_or_else(|| panic!("{treatment} in {question}"))
}

#[test]
fn a_treatment_that_serves_two_questions_stands_in_both() {
    let plan = plan();
    let entries = foreseen(&plan);
    let (first, second) =
        (entry(&entries, "food", "Dry milk"), entry(&entries, "enzyme", "Dry milk"));
    assert_eq!(first.rise_mm, second.rise_mm, "it is the same bag");
    assert_eq!((first.reference, second.reference), (false, true));
    assert_eq!(first.beside.as_deref(), Some("No food"));
    assert_eq!(second.beside, None);
    assert!(first.chance_readable.is_some() && second.chance_readable.is_none());
    assert!(entry(&entries, "food", "No food").control);
    assert_eq!(entry(&entries, "controls", "Enzyme, no food").beside, None);
    assert!(entries.iter().filter(|e| e.treatment == "No food").count() == 1);
}

/// Nothing can be said of a difference from a bag without a forecast, not even that it may not show.
#[test]
fn a_reference_without_a_forecast_is_no_sign_that_nothing_shows() {
    let plan = plan();
    let treated: Vec<_> = plan
        .treatments()
        .filter(|(_, treatment)| treatment.name != "Dry milk")
        .map(|(_, treatment)| outlook::forecast(&plan, treatment, LOOK).unwrap())
        .collect();
    let entries = outlook::gather(&plan, &treated);
    let helped = entry(&entries, "enzyme", "Dry milk + lactase");
    assert!(helped.lacks_reference() && helped.readable_at_min.is_none());
    assert!(!entry(&entries, "food", "Oat flour").lacks_reference());
    let spoken = |finding: &&barm_domain::finding::Finding| {
        ["nothing-shows", "may-not-show"].contains(&finding.code)
            && (finding.message.contains("Dry milk + lactase")
                || finding.message.contains("“enzyme”"))
    };
    assert_eq!(barm_domain::check::check(&plan, &entries).iter().find(spoken), None);
}

#[test]
fn an_enzyme_shows_beside_its_own_food() {
    let entries = foreseen(&plan());
    let helped = entry(&entries, "enzyme", "Dry milk + lactase");
    assert_eq!(helped.beside.as_deref(), Some("Dry milk"));
    assert!(helped.chance_readable.unwrap() > 0.5, "{:?}", helped.chance_readable);
    let minute = helped.readable_at_min.unwrap() as usize;
    let alone = entry(&entries, "enzyme", "Dry milk");
    // Draw by draw is not the difference of medians, but not far from it either.
    let apart = helped.rise_mm.median[minute] - alone.rise_mm.median[minute];
    assert!((apart - 3.0).abs() < 1.5, "{apart} mm at minute {minute}");
}

#[test]
fn bands_run_from_the_zero_reading_to_the_last_that_all_periods_reach() {
    let plan = plan();
    let last = plan.common_last_reading_min();
    for entry in foreseen(&plan) {
        assert_eq!(entry.last_minute(), last);
        for curve in [&entry.rise_mm, &entry.gas_ml, &entry.ethanol_g] {
            assert_eq!(curve.median.len(), last as usize + 1);
            let within = (0..curve.median.len())
                .all(|i| curve.low[i] <= curve.median[i] && curve.median[i] <= curve.high[i]);
            assert!(within, "{}", entry.treatment);
        }
        assert!(entry.rise_mm.high[0].abs() < 1e-12, "minute 0 is the zero reading");
    }
}

/// One treatment's forecast must not change because another was added or is forecast first.
#[test]
fn a_forecast_depends_on_nothing_but_its_own_bag_and_the_seed() {
    let whole = plan();
    let mut less = whole.clone();
    less.questions.truncate(1);
    let treatment = |plan: &Plan| plan.treatment("Oat flour").unwrap().clone();
    let of = |plan: &Plan, look| outlook::forecast(plan, &treatment(plan), look).unwrap();
    assert_eq!(of(&whole, LOOK), of(&less, LOOK));
    assert_ne!(of(&whole, LOOK), of(&whole, Look { seed: LOOK.seed + 1, ..LOOK }));
}

#[test]
fn a_forgotten_bag_holds_more_alcohol_the_next_day() {
    let plan = plan();
    for entry in foreseen(&plan) {
        let treatment = plan.treatment(&entry.treatment).unwrap();
        let left = outlook::overnight(&plan, treatment, LOOK).unwrap();
        let (now, then) = (entry.upper.ethanol_percent_last, left.ethanol_percent);
        if plan.recipe(treatment).yeast.is_some() {
            assert!(then > now, "{}: {now} % now, {then} % then", entry.treatment);
        } else {
            assert_eq!((now, then), (0.0, 0.0), "{}", entry.treatment);
        }
        // All the carbohydrate of 2 g of food is at most 2.1 g of hexose, and half of that ethanol
        // (51.1 %, Gay-Lussac) in 40 mL: 3.4 % by volume with 0.789 g/mL; reserves of 3 g of yeast
        // add less than a third of that.
        assert!(then < 4.5, "{}: {then} %", entry.treatment);
    }
}

/// A pilot says what a lot of yeast is; a forecast from that is narrower, and one from nothing new is
/// the same.
#[test]
fn what_was_learned_narrows_a_forecast() {
    let plan = plan();
    let (_, treatment) = plan.treatments().find(|(_, one)| one.name == "Oat flour").unwrap();
    let table = Prior::default();
    let from = |prior: &Prior| {
        outlook::forecast_from(&plan, &plan.days[0], treatment, LOOK, prior).unwrap()
    };
    assert_eq!(outlook::forecast(&plan, treatment, LOOK).unwrap(), from(&table));
    let names = ["vigor of instant yeast", "vigor of active dry yeast", "wake"];
    let learned = Learned {
        names: names.map(str::to_owned).to_vec(),
        means: vec![0.0; 3],
        covariance: vec![vec![0.02, 0.0, 0.0], vec![0.0, 0.02, 0.0], vec![0.0, 0.0, 0.02]],
    };
    let width = |treated: &outlook::Treated| {
        let band = treated.forecast.gas_ml().band();
        let last = treated.forecast.last_minute() as usize;
        band.high[last] - band.low[last]
    };
    let (before, after) = (from(&table), from(&table.knowing(&learned).unwrap()));
    assert!(width(&after) < 0.9 * width(&before), "{} {}", width(&after), width(&before));
}
