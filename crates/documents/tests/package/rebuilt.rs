//! From shared data back to a plan and readings that can be analyzed.

use crate::any::{any_shared, small};
use crate::by_hand::cases;
use crate::plan::{PLAN, demo};
use barm_documents::package::{About, flat, read, read_files, write};
use barm_documents::{plan_text, readings};
use barm_domain::plan::{BagChoice, Place, Plan};
use barm_domain::ready::{self, Ready};
use barm_domain::result::{self, ClassResult};
use barm_domain::shared::{Investigation, NotRebuilt, Rows, Shared, TreatmentCode, Unsaid};
use barm_domain::starter::Answers;
use jiff::civil::{date, time};
use proptest::prelude::*;

pub(crate) fn unsaid() -> Unsaid {
    Unsaid {
        title: "Another class".into(),
        date: date(2027, 3, 9),
        readable_mm: None,
        interval_min: None,
        grade: None,
        made_up: true,
    }
}

/// The plan as it is written and read again, which must be the same.
fn sound(investigation: &Investigation) -> Plan {
    let text = plan_text::write_new(&investigation.plan);
    let read = plan_text::read(text.as_bytes());
    assert!(read.mistakes.is_empty(), "{:?}\n{text}", read.mistakes);
    let plan = read.plan.expect("a plan");
    assert_eq!(plan, investigation.plan);
    plan
}

fn again(plan: &Plan, own: &Investigation) -> Shared {
    Shared::of(plan, &own.readings, &own.set_aside, &own.meter).expect("it can be shared")
}

#[test]
fn the_demo_comes_back_and_can_be_shared_again() {
    let (_, _, shared) = demo();
    let own = shared.investigation(&unsaid()).expect("it comes back");
    assert!(own.left_out.is_empty(), "{:?}", own.left_out);
    assert_eq!(again(&sound(&own), &own), shared);
    assert_eq!(own.names.len(), shared.rows().treatments.len());
}

/// Treatment, reference and difference by the codes of the shared data.
fn differences(
    result: &ClassResult,
    code: impl Fn(&str) -> TreatmentCode,
) -> Vec<(TreatmentCode, TreatmentCode, f64, f64)> {
    let of = result.questions.iter().flat_map(|answer| &answer.comparisons);
    let told = of.filter_map(|one| {
        let difference = one.with.difference?;
        let (treatment, reference) = (code(&one.treatment), code(&one.reference));
        Some((treatment, reference, difference.difference, difference.se))
    });
    told.collect()
}

#[test]
fn what_the_demo_found_is_found_again() {
    let (plan, day, shared) = demo();
    let unsaid = Unsaid { interval_min: Some(plan.timing.interval_min), ..unsaid() };
    let own = shared.investigation(&unsaid).expect("it comes back");
    let first = result::analyze(&plan, &[], &day.readings, &day.set_aside);
    let second = result::analyze(&own.plan, &[], &own.readings, &own.set_aside);
    assert_eq!(first.minute, second.minute);
    let names: Vec<&str> = plan.treatments().map(|(_, one)| one.name.as_str()).collect();
    let place = |name: &str| {
        let at = names.iter().position(|one| *one == name).expect("a treatment");
        TreatmentCode::of(u16::try_from(at + 1).expect("few")).expect("a code")
    };
    let first = differences(&first, place);
    let second = differences(&second, |name| own.names[name]);
    assert_eq!(first.len(), 8, "{first:?}");
    assert_eq!(first.len(), second.len());
    for (one, other) in first.iter().zip(&second) {
        assert_eq!((one.0, one.1), (other.0, other.1));
        // Heights and minutes are shared to hundredths.
        let near = (one.2 - other.2).abs() < 0.02 && (one.3 - other.3).abs() < 0.02;
        assert!(near, "{one:?} {other:?}");
    }
}

#[test]
fn every_ready_lesson_comes_back() {
    for lesson in Ready::ALL {
        let plan = ready::plan(lesson, &ready_answers()).expect("a plan");
        let shared = Shared::of(&plan, &[], &[], &[]).expect("it can be shared");
        let own = shared.investigation(&unsaid()).expect("it comes back");
        assert!(own.left_out.is_empty(), "{lesson:?}: {:?}", own.left_out);
        assert_eq!(again(&sound(&own), &own), shared, "{lesson:?}");
    }
}

fn ready_answers() -> ready::Answers {
    ready::Answers {
        school: Answers {
            title: "Foods".into(),
            date: date(2027, 3, 9),
            zone: "America/Denver".into(),
            place: Place::Altitude(1400.0),
            first_start: time(8, 10, 0, 0),
            length_min: 60.0,
            periods: 3,
            groups: 8,
            students: 24,
        },
        cupboard: ready::USUAL.iter().map(|one| (*one).to_string()).collect(),
        bag: BagChoice::parse("snack").expect("a bag"),
        water_celsius: 40.0,
    }
}

#[test]
fn a_food_that_only_a_label_told_is_left_out_with_its_bags_and_said() {
    let (_, day, _) = demo();
    let text = String::from_utf8(PLAN.to_vec()).expect("UTF-8");
    let label = "[[label_food]]\nname = \"Aunt's own mix\"\nserving = \"40 g\"\ncarbohydrate = \"28 g\"\n\
                 sugars = \"12 g\"\nstarch = \"raw\"\nnatural_sugar = \"unknown\"\n\n";
    let text = text.replacen("[base]\n", &format!("{label}[base]\n"), 1).replacen(
        "food = \"maple syrup\"",
        "food = \"Aunt's own mix\"",
        1,
    );
    let read = plan_text::read(text.as_bytes());
    let plan = read.plan.unwrap_or_else(|| panic!("{:?}", read.mistakes));
    let shared = Shared::of(&plan, &day.readings, &day.set_aside, &[]).expect("shared");
    let own = shared.investigation(&unsaid()).expect("the others come back");
    assert_eq!(own.left_out.len(), 1);
    assert!(own.left_out[0].bags > 0 && own.left_out[0].why.contains("label"));
    let lost =
        shared.rows().bags.iter().filter(|bag| bag.treatment == own.left_out[0].treatment);
    assert_eq!(own.plan.bags.len() + lost.count(), shared.rows().bags.len());
    sound(&own);
}

#[test]
fn nothing_comes_of_nothing() {
    let empty = Shared::new(Rows::default()).expect("no rows");
    assert_eq!(empty.investigation(&unsaid()), Err(NotRebuilt::Nothing));
}

#[test]
fn two_rooms_in_one_period_are_no_plan() {
    let (_, _, shared) = demo();
    let mut rows = shared.rows().clone();
    rows.bags[0].room_celsius += 4.0;
    let shared = Shared::new(rows).expect("rows");
    let refused = shared.investigation(&unsaid());
    assert!(matches!(refused, Err(NotRebuilt::TwoRooms { .. })), "{refused:?}");
}

#[test]
fn a_readings_file_says_what_was_read() {
    let (plan, day, _) = demo();
    assert!(!day.set_aside.is_empty());
    let mut meter = day.meter.clone();
    meter.push(result::meter::MeterReading {
        bag: plan.bags[0].code.clone(),
        percent: 0.12,
        turn: Some(2),
        minute: Some(26.0),
        celsius: None,
        sample: barm_science::meter::Sample::UNTHINNED,
        line: 0,
    });
    let bytes = readings::write(&day.readings, &day.set_aside, &meter);
    let back = readings::read(&bytes, &plan);
    assert!(back.rejected.is_empty(), "{:?}", back.rejected);
    let heights = |file: &[barm_domain::reading::Reading]| {
        let mut all: Vec<(String, u64, u64)> = file
            .iter()
            .map(|one| (one.bag.clone(), one.minute.to_bits(), one.height_mm.to_bits()))
            .collect();
        all.sort();
        all
    };
    assert_eq!(heights(&back.readings), heights(&day.readings));
    let aside = |all: &[barm_domain::reading::SetAside]| {
        let mut all: Vec<(String, String)> =
            all.iter().map(|one| (one.bag.clone(), one.rule.clone())).collect();
        all.sort();
        all.dedup();
        all
    };
    assert_eq!(aside(&back.set_aside), aside(&day.set_aside));
    assert_eq!(back.meter.len(), meter.len());
    assert_eq!(back.meter.last().map(|one| (one.percent, one.turn)), Some((0.12, Some(2))));
}

#[test]
fn an_unpacked_package_is_read_as_well_and_its_files_alone_are_asked() {
    let (_, _, shared) = demo();
    let zip = write(&shared, &About::default());
    let mut files = crate::files(&zip);
    assert_eq!(read_files(&files), read(&zip));
    files.remove("bags.csv");
    let refused = read_files(&files).expect_err("a table is missing").to_string();
    assert!(refused.contains("which is not in the folder"), "{refused}");
    files.remove("datapackage.json");
    let refused = read_files(&files).expect_err("no package").to_string();
    assert!(refused.contains("no datapackage.json in the folder"), "{refused}");
}

#[test]
fn one_plain_table_has_a_row_a_height_and_is_read_by_any_program() {
    let (_, _, shared) = demo();
    let bytes = flat(&shared);
    let text = bytes.strip_prefix(b"\xef\xbb\xbf").expect("a mark for spreadsheets");
    let rows = shared.rows();
    let unread = rows.bags.iter().filter(|bag| rows.readings.iter().all(|r| r.bag != bag.code));
    let mut reader = csv::Reader::from_reader(text);
    assert_eq!(reader.headers().expect("heads").len(), 22);
    let records: Vec<csv::StringRecord> =
        reader.records().map(|row| row.expect("a row")).collect();
    assert_eq!(records.len(), rows.readings.len() + unread.count());
    let aside = records.iter().filter(|row| !row[19].is_empty());
    let bags: std::collections::BTreeSet<&str> = aside.map(|row| &row[0]).collect();
    assert_eq!(bags.len(), rows.set_aside.len());
    for row in &records {
        assert!(row.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@'])), "{row:?}");
    }
    let one = flat(&small());
    let one = String::from_utf8(one).expect("UTF-8");
    assert!(
        one.contains("P1-02B-6,1,2,T01,,1,honey 2.5 g,,,instant,2,40,40,bench,,165 x 83,"),
        "{one}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn whatever_is_shared_comes_back_or_is_refused(shared in any_shared()) {
        let Ok(own) = shared.investigation(&unsaid()) else { return Ok(()) };
        let rows = shared.rows();
        let lost: usize = own.left_out.iter().map(|one| one.bags).sum();
        prop_assert_eq!(own.plan.bags.len() + lost, rows.bags.len());
        let _ = plan_text::read(plan_text::write_new(&own.plan).as_bytes());
        let _ = result::analyze(&own.plan, &[], &own.readings, &own.set_aside);
    }
}
