//! Whose turn it is and what stands for a bag is worked out twice: here for the teacher's computer,
//! and in the page for when that computer is away. Both are held to the same cases, whose answers
//! were worked out by hand from the rules. A device's own clock may be wrong all the while.

use crate::bench::{ALL_SAVED, join, tap};
use crate::browser::Browser;
use crate::school::{PERIOD, School, plan};
use crate::skip;
use barm_domain::board::{State, board};
use barm_domain::code::BagCode;
use barm_domain::record::{
    Bag, Entry, Height, Home, Key, Known, Odd, PeriodStanding, Standing, Subject, Tapped, What,
    Who, replay,
};
use barm_domain::schedule::{Phase, PhaseKind, Schedule};
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};

fn cases(of: &str) -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("clocks.json")).expect("JSON");
    all[of].as_array().expect("a list").clone()
}

/// Seconds after the bell.
fn at(seconds: f64) -> Timestamp {
    Timestamp::from_second(1_800_000_000).expect("a time")
        + SignedDuration::from_secs_f64(seconds)
}

fn list(value: &Value) -> Vec<Value> {
    value.as_array().cloned().unwrap_or_default()
}

fn odd(word: &Value) -> Odd {
    Odd::ALL.into_iter().find(|odd| Some(odd.word()) == word.as_str()).expect("an odd thing")
}

fn height(key: u128, planned: Option<u32>, at_s: f64) -> Height {
    Height {
        key: Key(key),
        measured: at(at_s),
        planned,
        height_mm: 4.0,
        who: Who::Teacher,
        mended: Vec::new(),
        rival: false,
    }
}

fn minute(value: &Value) -> Option<u32> {
    value.as_u64().map(|minute| u32::try_from(minute).expect("a minute"))
}

/// What the program says of a case: state, planned minute, and seconds until it.
fn turn_by_program(case: &Value) -> Value {
    let seconds = |value: &Value| value.as_f64();
    let plan = plan();
    let period = plan.period(PERIOD).expect("a period");
    let of_period = plan.bags.iter().find(|bag| bag.period == PERIOD).expect("a bag");
    let code: BagCode = of_period.code.parse().expect("a code");
    let clearing = seconds(&case["clearing_s"]).unwrap_or(2400.0) / 60.0;
    let vent = Phase { kind: PhaseKind::Vent, from_min: clearing, to_min: 45.0 };
    let (starts, minutes) = (vec![(of_period.group, 15.0)], vec![4, 8, 12]);
    let schedule = Schedule { phases: vec![vent], starts, minutes, last: 12 };
    let stopped = list(&case["stopped"]);
    let stopped = stopped
        .iter()
        .map(|one| (at(seconds(&one[0]).expect("from")), seconds(&one[1]).map(at)));
    let day = PeriodStanding {
        began: Some(at(0.0)),
        stopped: stopped.collect(),
        ended: seconds(&case["ended"]).map(at),
        ..PeriodStanding::default()
    };
    let readings = list(&case["readings"]);
    let readings = (1..)
        .zip(&readings)
        .map(|(key, one)| height(key, minute(&one[0]), seconds(&one[1]).expect("a time")));
    let odds = list(&case["odd"]);
    let odds = odds.iter().map(|one| Tapped {
        key: Key(0),
        at: at(seconds(&one[1]).expect("a time")),
        odd: odd(&one[0]),
        who: Who::Teacher,
    });
    let bag = Bag {
        zero: seconds(&case["zero"]).map(|zero| height(0, None, zero)),
        readings: readings.collect(),
        odd: odds.collect(),
        vented: (case["vented"] == true).then(|| at(1000.0)),
        lost: (case["lost"] == true).then(|| at(1000.0)),
        ..Bag::default()
    };
    let mut standing = Standing::default();
    standing.periods.insert(PERIOD.into(), day);
    standing.bags.insert(code, bag);
    let now = at(seconds(&case["now"]).expect("a time"));
    let board = board(&plan, &schedule, &standing, period, now);
    let line = board.lines.iter().find(|line| line.code == code).expect("its line");
    match line.state {
        State::NotStarted => json!(["zero", null, null]),
        State::Due { planned, since_s } => json!(["due", planned, -since_s]),
        State::Late { planned, late_s } => json!(["late", planned, -late_s]),
        State::Waiting { planned, in_s } => json!(["waiting", planned, in_s]),
        State::Stopped => json!(["stopped", null, null]),
        State::Done => json!(["done", null, null]),
        State::Vented => json!(["vented", null, null]),
        State::Lost => json!(["lost", null, null]),
        State::SetAside => json!(["set aside", null, null]),
    }
}

/// What the record says of a bag with these entries.
fn stands_by_program(case: &Value) -> Value {
    let code = BagCode::all_of(1, 1).next().expect("a code");
    let home = Home { period: "1".into(), group: 1 };
    let known = Known { bags: [(code, home)].into(), ..Known::default() };
    let entries = (1..).zip(list(&case["entries"])).map(|(number, one)| {
        let height_mm = one[2].as_f64().unwrap_or_default();
        let what = match one[0].as_str().expect("a word") {
            "sealed" => What::Sealed { plan: 1 },
            "zero" => What::Zero { height_mm },
            "reading" => What::Reading { planned: minute(&one[3]), height_mm },
            "correction" => {
                What::Correction { of: Key(one[3].as_u64().expect("a key").into()), height_mm }
            }
            "odd" => What::Odd(odd(&one[2])),
            "vented" => What::Vented,
            other => panic!("{other}"),
        };
        let measured = at(one[1].as_f64().expect("a time"));
        let who = Who::Group { period: "1".into(), group: 1 };
        let subject = Subject::Bag(code);
        Entry { key: Key(number), subject, what, measured, arrived: at(5000.0), who }
    });
    let entries: Vec<Entry> = entries.collect();
    let standing = replay(&known, &entries);
    let bag = &standing.bags[&code];
    let told = |one: &Height| {
        let was: Vec<f64> = one.mended.iter().map(|mended| mended.height_mm).collect();
        json!([one.height_mm, was, one.is_confirmed(), one.rival])
    };
    let readings = bag.readings.iter().map(|one| {
        let mut told = told(one);
        told.as_array_mut().expect("a list").insert(0, json!(one.planned));
        told
    });
    let others: Vec<f64> = bag.other_zeros.iter().map(|zero| zero.height_mm).collect();
    let odd: Vec<&str> = bag.odd.iter().map(|tap| tap.odd.word()).collect();
    json!({
        "sealed": bag.sealed.is_some(),
        "zero": bag.zero.as_ref().map(told),
        "others": others,
        "readings": readings.collect::<Value>(),
        "odd": odd,
        "vented": bag.vented.is_some(),
    })
}

/// What a case says, with what it leaves out.
fn expected(case: &Value) -> Value {
    let mut says = case["says"].clone();
    if let Some(says) = says.as_object_mut() {
        for (key, nothing) in [
            ("sealed", json!(false)),
            ("others", json!([])),
            ("odd", json!([])),
            ("vented", json!(false)),
        ] {
            says.entry(key).or_insert(nothing);
        }
    }
    says
}

fn check(of: &str, said: &[Value]) {
    let cases = cases(of);
    assert_eq!(cases.len(), said.len());
    for (case, said) in cases.iter().zip(said) {
        assert!(crate::rules::alike(said, &expected(case)), "{}: {said}", case["case"]);
    }
}

#[test]
fn the_program_knows_whose_turn_it_is_and_what_stands() {
    let turns: Vec<Value> = cases("turns").iter().map(turn_by_program).collect();
    check("turns", &turns);
    let stands: Vec<Value> = cases("stands").iter().map(stands_by_program).collect();
    check("stands", &stands);
}

const IN_THE_PAGE: &str = r#"
    const [cases, done] = arguments;
    const turn = ({ stateOf }, one) => {
        const clock = {
            began_ms: 0, ended_ms: one.ended === undefined ? null : one.ended * 1000,
            stopped: (one.stopped ?? []).map(([a, b]) => [a * 1000, b === null ? null : b * 1000]),
            start_s: 900, clearing_s: one.clearing_s ?? 2400, minutes: [4, 8, 12],
        };
        const height = (planned, at) => ({ at_ms: at * 1000, planned, mm: 4 });
        const bag = {
            zero: one.zero === null ? null : height(null, one.zero),
            readings: (one.readings ?? []).map(([planned, at]) => height(planned, at)),
            odd: (one.odd ?? []).map(([word, at]) => [at * 1000, word]),
            vented: one.vented === true, lost: one.lost === true,
        };
        const state = stateOf(clock, bag, one.now * 1000);
        const counts = ["due", "late", "waiting"].includes(state.is);
        return [state.is, counts ? state.planned : null, counts ? state.inS : null];
    };
    const stand = ({ folded }, one) => {
        const bag = { code: "b", sealed: false, zero: null, other_zeros: [], readings: [], odd: [], vented: false, lost: false };
        const kept = one.entries.map(([what, at, value, more], number) => ({
            key: String(number + 1), seat: "s", state: "kept",
            entry: {
                key: String(number + 1), bag: "b", what, at: at * 1000, offset: 0,
                ...(what === "odd" ? { odd: value } : { mm: value }),
                ...(what === "reading" ? { planned: more } : {}),
                ...(what === "correction" ? { of: String(more) } : {}),
            },
        }));
        const scene = { seat: "s", keys: [], guess: null, bags: [bag] };
        const [whole] = folded(scene, kept, 0).bags;
        const told = (height) => [height.mm, height.was, height.confirmed, height.rival];
        return {
            sealed: whole.sealed, zero: whole.zero && told(whole.zero),
            others: whole.other_zeros.map((zero) => zero.mm),
            readings: whole.readings.map((height) => [height.planned, ...told(height)]),
            odd: whole.odd.map(([, word]) => word), vented: whole.vented,
        };
    };
    const skew = ({ Skew }, one) => {
        const own = new Skew();
        for (const [sent, back, now] of one.heard) own.hear(sent, back, now);
        return own.offset;
    };
    Promise.all([import("/a/0/bench-clock.js"), import("/a/0/bench-fold.js")])
        .then(([clock, fold]) => done([
            cases[0].map((one) => turn(clock, one)),
            cases[1].map((one) => stand(fold, one)),
            cases[2].map((one) => skew(clock, one)),
        ]))
        .catch((error) => done(String(error)));"#;

#[test]
fn the_page_knows_it_by_the_same_rules_and_measures_its_clock() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("turns and clocks in the page", why),
    };
    let school = School::new();
    let served = school.serve(0);
    browser.open(&served.at("/join"));
    let all = json!([cases("turns"), cases("stands"), cases("skews")]);
    let said = browser.run_later(IN_THE_PAGE, &all);
    for (place, of) in ["turns", "stands", "skews"].into_iter().enumerate() {
        check(of, said[place].as_array().unwrap_or_else(|| panic!("{said}")));
    }
}

/// The device's clock is an hour wrong, ahead or behind: the page asks when it is time, and the
/// record holds the true time.
#[test]
fn a_wrong_clock_of_a_device_changes_neither_turn_nor_record() {
    for hours in [1, -1] {
        let profile = tempfile::tempdir().expect("a folder");
        let browser = match Browser::start(profile.path()) {
            Ok(browser) => browser,
            Err(why) => return skip("a device whose clock is wrong", why),
        };
        let school = School::new();
        school.has_read(&[(0, 4.0), (4, 5.0)], 245);
        let served = school.serve(0);
        let wrong = format!(
            "const True = Date; const off = {hours} * 3600000;
             globalThis.Date = class extends True {{
                constructor(...of) {{ if (of.length) super(...of); else super(True.now() + off); }}
                static now() {{ return True.now() + off; }}
             }};"
        );
        let script = json!({ "source": wrong });
        browser.special("Page.addScriptToEvaluateOnNewDocument", &script);
        join(&browser, &school, &served);
        browser.until("return document.querySelector('#clock .st.due') !== null;");
        tap(&browser, 7);
        browser.until(ALL_SAVED);
        served.stop();
        let record = school.record();
        let typed = record.iter().find(|entry| match entry.what {
            What::Reading { height_mm, .. } => (height_mm - 7.0).abs() < 1e-9,
            _ => false,
        });
        let typed = typed.expect("it is on record");
        // It was under way for no more than a test waits for anything.
        let under_way = typed.arrived.duration_since(typed.measured).abs();
        assert!(under_way < SignedDuration::from_mins(10), "{hours} h: {under_way:?}");
    }
}
