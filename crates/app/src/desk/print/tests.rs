//! What holds of the table of parts.

use super::{Job, PARTS, Part, Wish, wanted};
use crate::desk::{DeskError, Size, Unheard, Wording, demo};
use barm_documents::plan_text;
use barm_domain::plan::Plan;
use std::collections::BTreeSet;

fn plan() -> Plan {
    plan_text::read(demo::plan().as_bytes()).plan.expect("the invented plan")
}

#[test]
fn every_part_has_its_own_key_and_words() {
    let keys: BTreeSet<&str> = PARTS.iter().map(|part| part.key).collect();
    assert_eq!(keys.len(), PARTS.len());
    let words = |part: &Part| (part.says)(Wording::english());
    assert_eq!(PARTS.iter().map(words).collect::<BTreeSet<_>>().len(), PARTS.len());
    for part in PARTS {
        let plain = |c: char| c.is_ascii_lowercase() || c == '-';
        assert!(part.key.chars().all(plain), "{}", part.key);
        assert!(Part::of(part.key).is_some_and(|found| found.key == part.key));
    }
}

#[test]
fn what_is_named_comes_once_in_the_order_of_the_table() {
    let (plan, wish) = (plan(), Wish::plain(Size::Letter));
    let job = Job::new(&plan, &wish, None, &Unheard);
    let keys = ["forecast", "prep", "forecast"].map(str::to_owned);
    let found: Vec<&str> = wanted(&job, &keys).iter().map(|part| part.key).collect();
    assert_eq!(found, ["prep", "forecast"]);
    assert!(wanted(&job, &[]).len() >= 2);
}

#[test]
fn a_file_is_called_after_its_part_and_period() {
    let mut plan = plan();
    plan.periods[1].name = "3/B: late".to_owned();
    let name = |period: Option<&str>| {
        let period = period.map(str::to_owned);
        let wish = Wish { period, ..Wish::plain(Size::A4) };
        Part::of("prep").expect("a part").file_name(&Job::new(&plan, &wish, None, &Unheard))
    };
    assert_eq!(name(None), "prep.pdf");
    assert_eq!(name(Some("6")), "prep-period-6.pdf");
    assert_eq!(name(Some("3/B: late")), "prep-period-2.pdf");
}

#[test]
fn a_period_or_cell_that_is_not_there_is_said() {
    let plan = plan();
    let error = |wish: Wish| Job::new(&plan, &wish, None, &Unheard).can_be_done().err();
    let plain = Wish::plain(Size::Letter);
    assert!(error(plain.clone()).is_none());
    let wish = Wish { period: Some("9".into()), ..plain.clone() };
    assert!(matches!(error(wish), Some(DeskError::NoPeriod { name }) if name == "9"));
    for cell in [0, 31] {
        let wish = Wish { start_cell: cell, ..plain.clone() };
        assert!(matches!(error(wish), Some(DeskError::NoCell { cells: 30, .. })), "{cell}");
    }
}
