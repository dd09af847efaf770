//! The rule for odd heights is written twice: here for the teacher's computer, and in the page for
//! when that computer is away. Both are held to the same cases, whose answers were worked out by
//! hand from the rule.

use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use barm_domain::code::BagCode;
use barm_domain::record::{Bag, Height, Key, Mended, Odd, Tapped, Who};
use barm_domain::slip::{Mend, Own, SlipKind, seen_by_group};
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};

fn cases() -> Vec<Value> {
    let text = include_str!("odd_heights.json");
    let all: Value = serde_json::from_str(text).expect("cases are JSON");
    all.as_array().expect("a list").clone()
}

fn start() -> Timestamp {
    Timestamp::from_second(1_800_000_000).expect("a time")
}

fn height(number: usize, case: &Value) -> Height {
    let mm = case["mm"].as_f64().expect("a height");
    let minute = case["minute"].as_f64().expect("a minute");
    let measured = start() + SignedDuration::from_secs_f64(60.0 * minute);
    let key = Key(number as u128);
    let confirmed = case["confirmed"].as_bool() == Some(true);
    let again = Mended { height_mm: mm, by: Key(1000 + number as u128), at: measured };
    Height {
        key,
        measured,
        planned: (minute > 0.0).then_some(minute as u32),
        height_mm: mm,
        who: Who::Group { period: "1".into(), group: 1 },
        mended: if confirmed { vec![again] } else { Vec::new() },
        rival: case["rival"].as_bool() == Some(true),
    }
}

/// What the program says of a case, in the words of the cases.
fn said_by_program(case: &Value) -> Value {
    let heights = case["heights"].as_array().expect("heights");
    let mut heights = heights.iter().enumerate().map(|(number, case)| height(number, case));
    let odd = case["odd"].as_array().expect("odd things").iter().map(|odd| {
        let minute = odd[0].as_f64().expect("a minute");
        let word = odd[1].as_str().expect("a word");
        let odd = Odd::ALL.into_iter().find(|odd| odd.word() == word).expect("an odd thing");
        let at = start() + SignedDuration::from_secs_f64(60.0 * minute);
        Tapped { key: Key(0), at, odd, who: Who::Teacher }
    });
    let bag = Bag {
        zero: heights.next(),
        readings: heights.collect(),
        odd: odd.collect(),
        ..Bag::default()
    };
    let code: BagCode = BagCode::all_of(1, 1).next().expect("a code");
    let full_height_mm = case["full_mm"].as_f64().expect("a height");
    let slips = seen_by_group(Own { code, bag: &bag, full_height_mm, stopped: &[] });
    let said = slips.iter().filter_map(|slip| {
        let kind = match slip.kind {
            SlipKind::Unit { .. } => "unit",
            SlipKind::TooHigh { .. } => "too-high",
            SlipKind::HighZero { .. } => "high-zero",
            SlipKind::Jumped { .. } => "jumped",
            SlipKind::Fell { .. } => "fell",
            _ => return None,
        };
        let mut meant = Vec::new();
        let mut taps = Vec::new();
        for mend in &slip.mends {
            match mend {
                Mend::Write(mm) => meant.push(json!(mm)),
                Mend::Tap(odd) => taps.push(odd.word()),
                _ => {}
            }
        }
        let height = slip.reading.expect("a height").0 as u64;
        Some(json!({ "kind": kind, "height": height, "meant": meant, "taps": taps }))
    });
    said.collect()
}

#[test]
fn the_program_judges_odd_heights_by_the_rule() {
    let cases = cases();
    assert!(cases.len() >= 12);
    for case in cases {
        let said = said_by_program(&case);
        assert!(alike(&said, &case["says"]), "{}: {said}", case["case"]);
    }
}

#[test]
fn the_page_judges_odd_heights_by_the_same_rule() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("odd heights in the page", why),
    };
    let school = School::new();
    let served = school.serve(0);
    browser.open(&served.at("/join"));
    let script = r#"
        const [cases, done] = arguments;
        import("/a/0/bench-slip.js").then(({ hardToBelieve }) => {
            done(cases.map((one) => {
                const told = one.heights.map((height, number) => ({
                    key: String(number), at_ms: height.minute * 60000, mm: height.mm,
                    confirmed: height.confirmed === true, rival: height.rival === true,
                }));
                const odd = one.odd.map(([minute, word]) => [minute * 60000, word]);
                const slips = hardToBelieve(told[0], told.slice(1), odd, one.full_mm);
                return slips.map((slip) => ({
                    kind: slip.kind, height: Number(slip.reading),
                    meant: slip.meant.map(({ mm }) => mm), taps: slip.taps,
                }));
            }));
        }).catch((error) => done(String(error)));"#;
    let cases = cases();
    let said = browser.run_later(script, &json!(cases));
    let said = said.as_array().unwrap_or_else(|| panic!("{said}"));
    for (case, said) in cases.iter().zip(said) {
        assert!(alike(said, &case["says"]), "{}: {said}", case["case"]);
    }
}

/// JSON knows 10 and 10.0.
pub(crate) fn alike(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().unwrap_or(f64::NAN), b.as_f64().unwrap_or(f64::NAN));
            (a - b).abs() < 1e-9
        }
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| alike(a, b))
        }
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len()
                && a.iter().all(|(key, a)| b.get(key).is_some_and(|b| alike(a, b)))
        }
        _ => a == b,
    }
}
