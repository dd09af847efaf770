//! Reading and judging.

use crate::scene::{honey, open_lesson, read, warmth};
use barm_domain::outlook::{Look, forecast, gather};
use barm_domain::plan::Plan;
use barm_domain::proposal::{
    Ask, Judged, Written, asks, coverage, judge, opened, partners, trial,
};

fn alone(plan: &Plan, written: &Written) -> Judged {
    judge(plan, written, &[], &[])
}

fn codes(judged: &Judged) -> Vec<&str> {
    judged.found.iter().map(|finding| finding.code).collect()
}

#[test]
fn good_ones_have_no_fault_and_no_question() {
    let plan = open_lesson();
    for written in [honey("1", 2), warmth("2", 4)] {
        let judged = alone(&plan, &written);
        assert_eq!(judged.faults(), 0, "{:?}", judged.found);
        assert_eq!(asks(&judged), Vec::<Ask>::new());
    }
}

#[test]
fn what_cannot_be_read_is_named_all_at_once() {
    let plan = open_lesson();
    let written = Written {
        period: "9".into(),
        group: 1,
        changes: "happiness".into(),
        bags: 0,
        ..Written::default()
    };
    let judged = alone(&plan, &written);
    assert!(judged.proposal.is_none());
    assert_eq!(codes(&judged), ["not-a-group", "unclear-change", "unclear-bags"]);
    let unread = |level: &str| {
        let written = Written { levels: vec![level.into(), "honey".into()], ..honey("1", 1) };
        codes(&alone(&plan, &written)).first().copied().map(str::to_owned)
    };
    assert_eq!(unread("moon dust").as_deref(), Some("unclear-level"));
    assert_eq!(unread("maple syrup").as_deref(), Some("not-in-cupboard"));
    assert_eq!(unread("lactase drops").as_deref(), Some("not-in-cupboard"));
}

#[test]
fn faults_are_those_of_a_plan_and_a_child_is_asked_not_told() {
    let plan = open_lesson();
    for (written, code, ask) in [
        (
            Written {
                levels: vec!["honey + 45 °C".into(), "white sugar".into()],
                ..honey("1", 1)
            },
            "two-variables",
            Ask::TwoThings,
        ),
        (Written { beside: String::new(), ..honey("1", 1) }, "no-reference", Ask::Compare),
        (
            Written {
                levels: vec!["honey".into(), "Honey + 0.5 g".into(), "white sugar".into()],
                ..honey("1", 1)
            },
            "levels-not-distinct",
            Ask::Alike,
        ),
        (Written { bags: 1, ..honey("1", 1) }, "no-replicate", Ask::Luck),
        (
            Written {
                levels: vec!["30 °C".into(), "65 °C".into()],
                beside: "30 °C".into(),
                ..warmth("1", 1)
            },
            "water-scalds",
            Ask::Hot,
        ),
    ] {
        let judged = alone(&plan, &written);
        assert!(codes(&judged).contains(&code), "{code}: {:?}", judged.found);
        assert!(asks(&judged).contains(&ask), "{code}");
    }
}

#[test]
fn a_child_is_never_asked_what_rests_on_a_forecast() {
    let plan = open_lesson();
    // So much sugar bursts the bag, and a pinch of flour shows nothing: both only a forecast tells.
    let written = Written {
        changes: "food amount".into(),
        levels: vec!["9 g".into(), "0.1 g".into()],
        keeps: "white sugar".into(),
        ..honey("1", 1)
    };
    let proposal = read(&plan, &written);
    let trial = trial(&plan, &proposal, 0);
    let treated: Vec<_> = trial
        .treatments()
        .map(|(_, t)| forecast(&trial, t, Look { draws: 16, ..Look::default() }).unwrap())
        .collect();
    let told = judge(&plan, &written, &[], &gather(&trial, &treated));
    assert!(codes(&told).contains(&"overfull"), "the teacher sees it: {:?}", told.found);
    assert_eq!(asks(&told), asks(&alone(&plan, &written)), "and the group is asked the same");
}

#[test]
fn amounts_salt_and_enzymes_can_be_written_as_one_says_them() {
    let plan = open_lesson();
    for (changes, levels, keeps, beside) in [
        ("food amount", ["none", "0.2 g", "0.5 g"], "honey", "none"),
        ("extra", ["none", "salt 0.5 g", "1 g salt"], "white sugar + 0.5 g", "none"),
        ("yeast amount", ["1 g", "2 g", "3 g"], "white sugar", "1 g"),
        ("lies", ["bench", "towel", "warm tray 40 °C"], "white sugar", "bench"),
        ("yeast", ["instant", "active dry", "no yeast"], "white sugar", "instant"),
        ("water", ["30 mL", "40 mL", "50 mL"], "white sugar", "40 mL"),
    ] {
        let written = Written {
            changes: changes.into(),
            levels: levels.map(String::from).to_vec(),
            keeps: keeps.into(),
            beside: beside.into(),
            ..honey("1", 1)
        };
        let judged = alone(&plan, &written);
        let proposal = judged.proposal.as_ref();
        assert!(proposal.is_some_and(|p| p.levels.len() == 3), "{changes}: {:?}", judged.found);
        assert!(proposal.is_some_and(|p| p.beside.is_some()), "{changes}");
        assert_eq!(judged.faults(), 0, "{changes}: {:?}", judged.found);
    }
}

#[test]
fn groups_with_the_same_question_are_partners_and_have_more_bags() {
    let plan = open_lesson();
    let written = [honey("1", 1), warmth("1", 2), honey("2", 3)];
    let turned =
        Written { levels: vec!["White Sugar".into(), "honey".into()], ..honey("2", 1) };
    let mut all: Vec<_> = written.iter().map(|w| read(&plan, w)).collect();
    all.push(read(&plan, &turned));
    let found: Vec<_> = partners(&all[0], &all).iter().map(|p| (&*p.period, p.group)).collect();
    assert_eq!(found, [("2", 3), ("2", 1)]);
    let covered = coverage(&all);
    assert_eq!(covered.len(), 2);
    assert_eq!((covered[0].groups.len(), covered[0].bags), (3, 6));
    // One bag is luck, unless two others make the same.
    let single = Written { bags: 1, ..honey("1", 1) };
    let judged = judge(&plan, &single, &all, &[]);
    assert!(!codes(&judged).contains(&"no-replicate"), "{:?}", judged.found);
}

#[test]
fn the_cupboard_is_what_the_teacher_put_out() {
    let open = opened(&open_lesson());
    assert!(open.has("honey") && open.has("salt"));
    assert!(!open.has("maple_syrup") && !open.has("yeast") && !open.has("bags"));
}

#[test]
fn the_same_kind_twice_is_asked_about_whatever_it_is_compared_with() {
    let plan = open_lesson();
    for beside in ["No food", "honey", "kind 1"] {
        for other in ["honey", "Honey", "honey + 0.5 g"] {
            let levels = vec!["honey".into(), other.into()];
            let written = Written { levels, beside: beside.into(), ..honey("1", 1) };
            let judged = alone(&plan, &written);
            let asked = asks(&judged);
            assert!(asked.contains(&Ask::Alike), "{other} beside {beside}: {:?}", judged.found);
        }
    }
}

#[test]
fn a_kind_can_be_named_by_its_place() {
    let plan = open_lesson();
    for beside in ["Kind 2", "2", "tipo 2", "bag 2"] {
        let written = Written { beside: beside.into(), ..honey("1", 1) };
        let judged = alone(&plan, &written);
        assert_eq!(judged.faults(), 0, "{beside}: {:?}", judged.found);
    }
    let ninth = Written { beside: "Kind 9".into(), ..honey("1", 1) };
    assert!(asks(&alone(&plan, &ninth)).contains(&Ask::Compare));
}

/// What has no room in the shut bag is no matter of a forecast: a group may be asked.
#[test]
fn what_has_no_room_in_the_bag_is_asked_about() {
    let plan = open_lesson();
    for (changes, levels, keeps) in [
        ("food amount", ["0.5 g", "500 g"], "white sugar"),
        ("water", ["40 mL", "4 L"], "white sugar"),
        ("yeast amount", ["2 g", "900 g"], "white sugar"),
    ] {
        let written = Written {
            changes: changes.into(),
            levels: levels.map(String::from).to_vec(),
            keeps: keeps.into(),
            beside: levels[0].into(),
            ..honey("1", 1)
        };
        let judged = alone(&plan, &written);
        assert!(asks(&judged).contains(&Ask::Make), "{levels:?}: {:?}", judged.found);
    }
}
