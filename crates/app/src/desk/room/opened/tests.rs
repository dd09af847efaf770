//! Lent numbers from the teacher's button to every place that must say so and none that may count
//! them.

use crate::desk::Wording;
use crate::desk::room::acted::{Acted, PERIOD, at, bag};
use crate::desk::room::results::{what_counts, who_had_lent};
use crate::desk::room::round::{Turn, round_view};
use crate::desk::room::run::{Act, When, run_view};
use crate::desk::room::wall::wall_view;
use barm_domain::record::{Key, Lent, Refused, What};
use std::collections::{BTreeMap, BTreeSet};

/// Presses a button of the run page.
fn press(acted: &mut Acted, minute: f64, line: &str) -> Key {
    let fields = BTreeMap::from([("do".to_owned(), line.to_owned())]);
    let act = Act::read(&fields, PERIOD).expect("an offer of the page");
    let key = Key::new(at(60.0 * minute).as_millisecond() as u64, 0xbeef);
    let plan = acted.plan.clone();
    let period = plan.period(PERIOD).expect("the period");
    let entries = acted.scene(|scene| act.entries(scene, period, key, at(60.0 * minute)));
    for entry in entries.expect("entries") {
        assert!(acted.ledger.add(entry), "{line}");
    }
    key
}

fn lent(acted: &Acted, group: u32) -> Option<Lent> {
    let standing = acted.ledger.standing().groups.get(&(PERIOD.to_owned(), group));
    standing.and_then(|standing| standing.stand_in).map(|stand_in| stand_in.lent)
}

#[test]
fn what_is_lent_is_said_everywhere_and_counted_nowhere() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(24.0, 1.0, |_, _| false);
    let counted = |acted: &Acted| acted.scene(what_counts);
    let before = counted(&acted);
    for (minute, line, simulated) in [(25.0, "lend-class 3", false), (25.5, "lend-run 3", true)]
    {
        let key = press(&mut acted, minute, line);
        assert_eq!(matches!(lent(&acted, 3), Some(Lent::Simulated { .. })), simulated);
        assert_eq!(counted(&acted), before, "{line} counts nowhere");
        let now = at(60.0 * minute + 1.0);
        let wall = acted.scene(|scene| wall_view(scene, PERIOD, now)).expect("a wall");
        assert_eq!(wall.stand_ins, [(3, simulated)]);
        let w = Wording::english();
        let run = acted.scene(|scene| run_view(scene, w, PERIOD, Some(key), now));
        let run = run.expect("a run page");
        let row = run.roles.iter().find(|row| row.group == 3).expect("a row");
        assert_eq!(row.stand_in, lent(&acted, 3));
        let bench = run.now.iter().chain(&run.next).find(|bench| bench.group == 3);
        let bench = bench.expect("its bench");
        assert!(run.summary.contains("3 with lent numbers"), "{}", run.summary);
        let round = acted.scene(|scene| round_view(scene, w, PERIOD, now)).expect("a round");
        let group = round.groups.iter().find(|row| row.group == 3).expect("a row");
        assert_eq!(Some(group.turn), lent(&acted, 3).map(Turn::Lent), "lent is not done");
        assert_eq!(bench.stand_in, lent(&acted, 3));
        assert_eq!(bench.when, When::Over, "nobody waits for a height that would not count");
        assert_eq!(run.done.expect("said").back.as_deref(), Some("own-numbers 3"));
        assert_eq!(acted.scene(who_had_lent).len(), 1, "the results say it");
    }
    // What the group types meanwhile is kept and does not count; another group is not touched.
    let typed = |mm| What::Reading { planned: Some(12), height_mm: mm };
    let meanwhile = acted.bag(60.0 * 26.0, bag(3, 0), typed(55.0));
    assert_eq!(counted(&acted), before);
    assert!(acted.ledger.standing().refused.contains(&(meanwhile, Refused::StandIn)));
    acted.bag(60.0 * 26.1, bag(4, 0), typed(20.0));
    assert_eq!(counted(&acted).1.readings.len(), before.1.readings.len() + 1);
    // Taken back, it reads on with its own.
    let back = press(&mut acted, 27.0, "own-numbers 3");
    assert_eq!(lent(&acted, 3), None);
    acted.bag(60.0 * 27.5, bag(3, 0), typed(15.0));
    assert_eq!(counted(&acted).1.readings.len(), before.1.readings.len() + 2);
    assert!(acted.scene(who_had_lent).is_empty());
    // A slip of the hand: the same run comes back.
    let w = Wording::english();
    let now = at(60.0 * 27.0 + 2.0);
    let run = acted.scene(|scene| run_view(scene, w, PERIOD, Some(back), now)).expect("a page");
    let again = run.done.and_then(|done| done.back).expect("a way back");
    let first = acted.ledger.standing().clone();
    press(&mut acted, 28.0, &again);
    assert_ne!(&first, acted.ledger.standing());
    let Some(Lent::Simulated { plan, .. }) = lent(&acted, 3) else { panic!("{again}") };
    assert_eq!(again, format!("lend-run 3 {} {plan}", 0xbeef));
}

#[test]
fn the_page_offers_it_to_every_group_and_takes_nothing_else() {
    for line in ["lend-class", "lend-class 3 4", "lend-class x", "lend-run 3 4", "own-numbers"]
    {
        let fields = BTreeMap::from([("do".to_owned(), line.to_owned())]);
        assert!(Act::read(&fields, PERIOD).is_err(), "{line}");
    }
}

#[test]
fn class_data_is_offered_once_another_group_has_read_such_a_bag() {
    let mut acted = Acted::new(8, 3);
    let offered = |acted: &Acted, group: u32| {
        let now = at(60.0 * 30.0);
        let w = Wording::english();
        let run = acted.scene(|scene| run_view(scene, w, PERIOD, None, now)).expect("a page");
        run.roles.iter().find(|row| row.group == group).expect("a row").class_data
    };
    assert!(!offered(&acted, 3), "nobody has read yet");
    // Its own readings are no class data.
    acted.runs_to(24.0, 1.0, |code, _| code.group() != 3);
    assert!(!offered(&acted, 3));
    let mut acted = Acted::new(8, 3);
    acted.runs_to(24.0, 1.0, |_, _| false);
    assert!(offered(&acted, 3));
}

#[test]
fn what_has_not_run_yet_is_named_and_not_judged() {
    // One group of the acted period has its kind and the control; all others wait for periods
    // that have not begun.
    let mut acted = Acted::new(1, 3);
    acted.runs_to(30.0, 1.0, |_, _| false);
    let here = |acted: &Acted| -> BTreeSet<String> {
        let bags = acted.plan.bags.iter().filter(|bag| bag.period == PERIOD);
        bags.map(|bag| bag.treatment.clone()).collect()
    };
    let found = acted.scene(super::answers::found).answers;
    let here = here(&acted);
    let mut waiting = 0;
    for answer in &found {
        for (one, other, ..) in &answer.told {
            assert!(here.contains(one) && here.contains(other), "{one}, {other}");
        }
        assert!(answer.not_run.iter().all(|name| !here.contains(name)));
        waiting += answer.not_run.len();
    }
    assert!(waiting > 1, "{found:?}");
    // A height of such a bag is enough: then it is no kind that waits.
    let named = found.iter().flat_map(|answer| &answer.not_run).next().expect("one").clone();
    let code = acted.plan.bags.iter().find(|bag| bag.treatment == named).expect("a bag");
    let code = code.code.parse().expect("a code");
    acted.bag(60.0 * 31.0, code, What::Zero { height_mm: 9.0 });
    let found = acted.scene(super::answers::found).answers;
    assert!(found.iter().all(|answer| !answer.not_run.contains(&named)));
}
