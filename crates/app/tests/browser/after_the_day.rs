//! The whole of what comes after a day, in a browser: groups claim and read each other, the teacher marks by
//! keyboard and hands out, another round is proposed and made, and both rounds are judged together.

use crate::browser::Browser;
use crate::class::Class;
use crate::looks::{Codes, PASSPHRASE, Walk};
use crate::school::{PERIOD, School};
use crate::skip;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use jiff::{SignedDuration, Timestamp};

/// The invented day foreseen as the first of two, with one period over and one at its end.
fn first_round() -> School {
    let mut school = School::bare();
    school.investigation = school.begin("First round");
    let foreseen = crate::school::plan_text();
    school.save(&foreseen.replacen(
        "\ngrade = 8\n",
        "\ngrade = 8\nround = \"first of two\"\n",
        1,
    ));
    let mut class = Class::new();
    let mut entries = class.period("1", 300, true, &|_, _, mm| Some(mm));
    // Little was read, so that much is open.
    entries.extend(
        class.period(PERIOD, 40, false, &|code, _, mm| (code.group() < 4).then_some(mm)),
    );
    school.enter(school.investigation, &entries);
    school
}

/// Bags of the second round, read as its recipes would have it: every second one a little higher.
fn second_day(school: &School, investigation: i64) -> Vec<Entry> {
    let plan = school.plan_of(investigation);
    let now = Timestamp::now();
    let mut chance = 0;
    let mut entry = |subject: Subject, what: What, at: Timestamp, who: Who| {
        chance += 1;
        let ms = u64::try_from(at.as_millisecond()).expect("after 1970");
        Entry { key: Key::new(ms, chance), subject, what, measured: at, arrived: at, who }
    };
    let mut entries = Vec::new();
    for period in &plan.periods {
        let bell = now - SignedDuration::from_mins(60);
        let whole = Subject::Period(period.name.clone());
        entries.push(entry(whole.clone(), What::Began, bell, Who::Teacher));
        let own = plan.bags.iter().filter(|bag| bag.period == period.name);
        for (at, bag) in own.enumerate() {
            let subject = Subject::Bag(bag.code.parse().expect("a code"));
            let zero = bell + SignedDuration::from_mins(14);
            let who = || Who::Teacher;
            entries.push(entry(subject.clone(), What::Sealed { plan: 1 }, zero, who()));
            entries.push(entry(subject.clone(), What::Zero { height_mm: 5.0 }, zero, who()));
            for minute in [8_u32, 16, 24] {
                let height_mm = 5.0 + f64::from(minute) / 4.0 * (1.0 + (at % 2) as f64);
                let what = What::Reading { planned: Some(minute), height_mm };
                let at = zero + SignedDuration::from_mins(i64::from(minute));
                entries.push(entry(subject.clone(), what, at, who()));
            }
        }
        let end = bell + SignedDuration::from_mins(45);
        entries.push(entry(whole, What::Ended, end, Who::Teacher));
    }
    entries.sort_by_key(|entry| entry.measured);
    entries
}

/// Claims of two groups, each read by the other.
fn claims(walk: &Walk<'_>, period: &str, groups: [&str; 2]) {
    for (code, evidence) in groups.iter().zip(["Ours rose 12 mm.", "Ours hardly rose."]) {
        walk.join(period, code);
        walk.claim(evidence);
    }
    walk.open("/i/1/claims");
    assert!(walk.browser.text().contains("Ours hardly rose."), "{}", walk.browser.text());
    walk.leave_by("button[value=open]");
    // The group that came in last reads the other's, without a name.
    walk.open("/claim?lang=en");
    let text = walk.browser.text();
    assert!(text.contains("Ours rose 12 mm.") && !text.contains("Group 2"), "{text}");
    walk.set("#convinces-0", "Two numbers.");
    walk.set("#asks-0", "How many bags?");
    walk.leave_by("#others form button");
    let kept = walk.browser.run("return document.querySelector('#convinces-0').value;");
    assert_eq!(kept, "Two numbers.");
    walk.join(period, groups[0]);
    walk.open("/claim?lang=en");
    assert!(walk.browser.text().contains("How many bags?"), "{}", walk.browser.text());
}

/// Marks by keyboard alone, from group to group; then the group sees its own.
fn marks(walk: &Walk<'_>) {
    walk.open(&format!("/i/1/marks/{PERIOD}/1"));
    let strands = "return document.querySelectorAll('[data-strand]').length;";
    let strands = walk.browser.run(strands).as_u64().expect("strands");
    assert_eq!(strands, 8);
    for group in 1..=2 {
        assert_eq!(walk.path(), format!("/i/1/marks/{PERIOD}/{group}"), "n led on");
        for strand in 0..strands {
            walk.browser.press(if strand % 2 == 0 { "3" } else { "2" });
        }
        walk.leave_with("n");
    }
    walk.open("/i/1/marks");
    walk.leave_by(&format!("form:has(input[value='{PERIOD}']) button"));
    assert!(walk.browser.text().contains("2 groups of period 4"), "{}", walk.browser.text());
    walk.open("/claim?lang=en");
    assert!(walk.browser.text().contains("Your teacher wrote"), "{}", walk.browser.text());
}

/// Proposes another round and makes the plan of the first proposal that makes more of what was open.
fn another_round(walk: &Walk<'_>) -> i64 {
    walk.open(&format!("/i/1/run/{PERIOD}"));
    walk.browser.run("document.getElementById('hours').open = true;");
    walk.browser.click("#end");
    walk.browser.until("return document.querySelector('#end')?.value === 'go-on';");
    walk.open("/i/1/again");
    walk.leave_by("form button[type=submit]");
    // The page fills by itself.
    crate::browser::wait("proposals", || {
        let there =
            walk.browser.run("return document.querySelector('button[name=take]') !== null;");
        (there == true).then_some(())
    });
    let open = "const all = [...document.querySelectorAll('li.prop')];
        const more = all.find((one) => / more bags?/.test(one.querySelector('h3').textContent));
        more?.querySelector('button[name=take]').setAttribute('id', 'chosen');
        return more !== undefined;";
    assert_eq!(walk.browser.run(open), true, "{}", walk.browser.text());
    walk.leave_by("#chosen");
    let path = walk.path();
    let id = path.strip_prefix("/i/").and_then(|rest| rest.strip_suffix("/plan"));
    id.and_then(|id| id.parse().ok()).unwrap_or_else(|| panic!("a plan of its own: {path}"))
}

#[test]
fn claims_marks_and_another_round_follow_a_day() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("what comes after a day", why),
    };
    let school = first_round();
    let period = school.code(1, "PACE", "period", None);
    let groups = [("CHAT", 2), ("DART", 3)];
    let groups = groups.map(|(code, group)| school.code(1, code, "group", Some(group)));
    let served = school.serve(0);
    let codes = Codes::default();
    let walk = Walk { browser: &browser, bare: &served, full: &served, codes: &codes };
    walk.open("/teacher");
    walk.choose(PASSPHRASE);
    claims(&walk, &period, [&groups[0], &groups[1]]);
    marks(&walk);
    let second = another_round(&walk);
    served.stop();
    school.enter(second, &second_day(&school, second));
    let served = school.serve(0);
    let walk = Walk { browser: &browser, bare: &served, full: &served, codes: &codes };
    walk.open(&format!("/i/1/again?with={second}"));
    let text = walk.browser.text();
    for says in ["Both rounds", "First look at 2 %, both rounds together at 3."] {
        assert!(text.contains(says), "no “{says}” in {text}");
    }
}
