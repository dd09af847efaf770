//! Rows as people type them.

use barm_domain::assign::rule::Rule;
use barm_domain::assign::{NotPrepared, Prepared, Row, Taken, prepare};
use barm_domain::plan::{Inquiry, Plan};
use barm_domain::ready::{Ready, plan};
use barm_domain::testing::{answers, period};

fn school() -> Plan {
    plan(Ready::Enzyme, &answers(3, 6, &barm_domain::ready::USUAL)).unwrap()
}

fn ids(plan: &Plan) -> Vec<String> {
    plan.questions.iter().map(|question| question.id.clone()).collect()
}

fn row(period: &str, group: &str, choices: &[&str]) -> Row {
    Row {
        line: 2,
        period: period.into(),
        group: group.into(),
        choices: choices.iter().map(|choice| (*choice).to_owned()).collect(),
        ..Row::default()
    }
}

fn read(plan: &Plan, rows: &[Row]) -> Prepared {
    prepare(plan, rows, Taken::default()).unwrap()
}

fn refused(plan: &Plan, row: Row) -> String {
    match prepare(plan, &[row], Taken::default()) {
        Err(NotPrepared::Rows(bad)) => {
            assert!(bad.iter().all(|bad| bad.line == 2));
            bad.iter().map(ToString::to_string).collect::<Vec<_>>().join(" | ")
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_row_is_read_by_id_or_by_words() {
    let plan = school();
    let asks = plan.questions[0].asks.clone();
    let id = plan.questions[0].id.to_uppercase();
    let prepared = read(&plan, &[row("1", "2", &["", &id]), row(" 2", "1", &[&asks])]);
    let of = |period, number| {
        let own =
            |g: &&barm_domain::assign::day::Group| (g.period, g.number) == (period, number);
        prepared.day.groups.iter().find(own).unwrap()
    };
    assert_eq!((of(0, 2).ranks.as_slice(), of(1, 1).ranks.as_slice()), (&[0][..], &[0][..]));
    assert!(of(0, 1).ranks.is_empty());
    assert_eq!(prepared.notes.len(), 1, "{:?}", prepared.notes);
    assert!(prepared.notes[0].starts_with("16 groups have no wish"), "{:?}", prepared.notes);
}

#[test]
fn bad_rows_say_what_is_wrong_and_what_to_do() {
    let plan = school();
    let id = ids(&plan).remove(0);
    let id = id.as_str();
    for (row, says) in [
        (row("9", "1", &[id]), "the plan has no period “9”; write one of 1, 2, 3"),
        (row("", "1", &[id]), "the period is blank"),
        (row("1", "7", &[id]), "“7” is no number for group; write a whole number from 1 to 6"),
        (row("1", "two", &[id]), "“two” is no number for group"),
        (row("1", "1", &["stones"]), "the plan has no question “stones”"),
        (row("1", "1", &[&format!("{id}x")]), "did you mean"),
        (row("1", "1", &[id, id]), "group 1 of period 1 ranks"),
        (Row { never: vec![id.into()], ..row("1", "1", &[id]) }, "and must not get it"),
        (Row { bags: "0".into(), ..row("1", "1", &[]) }, "from 1 to 8"),
        (Row { bags: "many".into(), ..row("1", "1", &[]) }, "“many” is no number for bags"),
        (Row { most: "2".into(), ..row("1", "1", &[]) }, "leave the group blank"),
        (row("1", "", &[id]), "write the group's number"),
        (row("1", "", &[]), "neither a group nor a question"),
        (Row { question: id.into(), ..row("1", "", &[]) }, "fill in least or most"),
        (
            Row { question: id.into(), least: "-1".into(), ..row("", "", &[]) },
            "“-1” is no number for least",
        ),
    ] {
        let said = refused(&plan, row);
        assert!(said.contains(says), "{said}");
    }
    let twice = [row("1", "1", &[id]), Row { line: 3, ..row("1", "1", &[id]) }];
    let Err(NotPrepared::Rows(bad)) = prepare(&plan, &twice, Taken::default()) else {
        panic!()
    };
    assert!(
        bad[0].to_string().contains("line 3: group 1 of period 1 stands on line 2 already")
    );
    let Err(NotPrepared::Rows(bad)) = prepare(&plan, &[], Taken::default()) else { panic!() };
    assert!(bad[0].to_string().contains("no row"), "{bad:?}");
}

#[test]
fn all_bad_rows_come_back_at_once() {
    let plan = school();
    let rows: Vec<Row> = (2..6).map(|line| Row { line, ..row("9", "1", &["x"]) }).collect();
    let Err(NotPrepared::Rows(bad)) = prepare(&plan, &rows, Taken::default()) else { panic!() };
    assert_eq!(bad.iter().map(|bad| bad.line).collect::<Vec<_>>(), [2, 3, 4, 5]);
}

#[test]
fn a_given_question_is_not_wished_for() {
    let mut plan = school();
    let id = ids(&plan).remove(0);
    plan.inquiry = Inquiry::Guided;
    plan.periods[1].inquiry = Some(Inquiry::Structured);
    let rows = [row("1", "1", &[&id]), Row { line: 3, ..row("2", "1", &[&id]) }];
    let prepared = read(&plan, &rows);
    let ranks: Vec<usize> = prepared.day.groups.iter().map(|g| g.ranks.len()).collect();
    assert_eq!((ranks[0], ranks[6]), (1, 0));
    let note = &prepared.notes[0];
    assert!(note.contains("group 1 of period 2") && note.contains("structured"), "{note}");
    // The teacher's word counts at every level, and takes the place of wishes.
    let set = Row { set: id.clone(), ..row("2", "1", &[]) };
    let prepared = read(&plan, &[set, Row { set: id.clone(), ..row("1", "1", &[&id]) }]);
    let sets = prepared.day.rules.iter().filter(|rule| matches!(rule, Rule::Set { .. }));
    assert_eq!(sets.count(), 2);
    assert!(prepared.day.groups[0].ranks.is_empty());
    assert!(prepared.notes[0].contains("is set"), "{:?}", prepared.notes);
}

#[test]
fn a_limit_is_for_a_period_or_for_the_day() {
    let plan = school();
    let id = ids(&plan).remove(0);
    let limit = |period: &str| Row {
        question: id.clone(),
        least: "1".into(),
        most: "4".into(),
        ..row(period, "", &[])
    };
    let prepared = read(&plan, &[limit(""), limit("3")]);
    let rules = &prepared.day.rules;
    for period in [None, Some(2)] {
        assert!(rules.contains(&Rule::Least { period, question: 0, groups: 1 }));
        assert!(rules.contains(&Rule::Most { period, question: 0, groups: 4 }));
    }
}

#[test]
fn tools_of_the_plan_are_limits_where_it_counts_them() {
    let mut plan = school();
    plan.equipment.rulers = Some(2);
    plan.equipment.meters = Some(1);
    plan.timing.interval_min = 4.0;
    let read = read(&plan, &[row("1", "1", &[])]);
    let of_first: Vec<u32> = (read.day.rules.iter())
        .filter_map(|rule| match rule {
            Rule::Tools { period: 0, bags, .. } => Some(*bags),
            _ => None,
        })
        .collect();
    // A ruler reads a bag in half a minute: 8 in 4 min. A meter takes a minute for each.
    assert_eq!(of_first, [16, plan.last_reading_min(&plan.periods[0])]);
    plan.equipment.rulers = None;
    plan.equipment.meters = None;
    let read = prepare(&plan, &[row("1", "1", &[])], Taken::default()).unwrap();
    assert!(!read.day.rules.iter().any(|rule| matches!(rule, Rule::Tools { .. })));
}

#[test]
fn a_plan_without_questions_or_periods_says_so() {
    let mut plan = barm_domain::testing::base_plan();
    plan.periods.push(period("1"));
    let prepared = read(&plan, &[row("1", "1", &[])]);
    let refused = barm_domain::assign::assign(&prepared.day, 1, 10).unwrap_err();
    assert!(refused.to_string().contains("no question"), "{refused}");
    plan.periods[0].groups = 0;
    let said = self::refused(&plan, row("1", "1", &[]));
    assert!(said.contains("period 1 has no groups"), "{said}");
}
