//! How findings read, and that the documentation lists them all.

use crate::planted::FAULTS;
use crate::school::{Asks, sound};
use crate::{Dice, checked, ill, readability};
use barm_domain::check::CAUTION_RULES;
use barm_domain::check::codes::{CODES, all};
use barm_domain::finding::{Finding, Severity};
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// Everything that the checks say about sound and ill plans, cautions apart.
static SAID: LazyLock<Vec<Finding>> = LazyLock::new(|| {
    let ill = FAULTS.iter().enumerate().map(|(number, fault)| ill(fault, 0, number));
    let sound =
        Asks::ALL.into_iter().zip(0..).map(|(asks, seed)| sound(asks, &mut Dice::of(seed)));
    let mut unlisted = sound.clone().take(1);
    let unlisted = unlisted.next().map(|mut plan| {
        plan.bags.clear();
        plan
    });
    let plans = ill.chain(sound).chain(unlisted);
    let found = plans.flat_map(|plan| checked(&plan));
    found.filter(|f| CAUTION_RULES.iter().all(|rule| rule.code != f.code)).collect()
});

/// A text without the names that a plan gives to things.
fn unnamed(text: &str) -> String {
    let mut out = String::new();
    let mut depth = 0;
    for letter in text.chars() {
        match letter {
            '“' => {
                depth += 1;
                out.push_str("it");
            }
            '”' => depth -= 1,
            _ if depth > 0 => {}
            letter => out.push(letter),
        }
    }
    out
}

#[test]
fn a_twelve_year_old_can_follow() {
    let mut trouble = BTreeSet::new();
    for finding in SAID.iter() {
        // What cannot be measured out is said in the bench's own words, to the teacher.
        let quoted = ["cannot-make", "cannot-foresee"].contains(&finding.code);
        let message = unnamed(&finding.message);
        let code = finding.code;
        if readability::sentences(&message).len() != 1 {
            trouble.insert(format!("{code}: not one sentence: {message}"));
        }
        for sentence in readability::sentences(&message)
            .into_iter()
            .chain(readability::sentences(&unnamed(&finding.fix)))
        {
            let count = readability::words(&sentence).len();
            if count > 25 {
                trouble.insert(format!("{code}: {count} words: {sentence}"));
            }
        }
        let grade = readability::grade(&message);
        if grade > 7.0 && !quoted {
            trouble.insert(format!("{code}: grade {grade:.1}: {message}"));
        }
        for text in [&finding.message, &finding.fix] {
            let open = text.matches('“').count() == text.matches('”').count();
            if !text.ends_with(['.', '?']) && !text.ends_with("”")
                || !open
                || text.contains("  ")
            {
                trouble.insert(format!("{code}: {text}"));
            }
        }
    }
    assert!(trouble.is_empty(), "{}", Vec::from_iter(trouble).join("\n"));
}

#[test]
fn every_code_is_listed_with_its_severity_and_can_come_up() {
    let said = &*SAID;
    for finding in said {
        let code = CODES.iter().find(|code| code.code == finding.code);
        let code = code.unwrap_or_else(|| panic!("{} is not listed", finding.code));
        // Two codes are milder where the question makes the thing harmless; the list says so.
        let milder =
            code.means.contains("; a note where") || code.means.contains("; a warning where");
        assert!(finding.severity == code.severity || milder, "{finding:?}");
    }
    let elsewhere = ["cannot-foresee", "answer-to-nothing", "letters-missing"];
    for code in CODES.iter().filter(|code| !elsewhere.contains(&code.code)) {
        assert!(said.iter().any(|f| f.code == code.code), "{} never came up", code.code);
    }
    let codes: BTreeSet<&str> = all().iter().map(|code| code.code).collect();
    assert_eq!(codes.len(), all().len(), "a code stands twice");
}

/// The table in the documentation is exactly the list of codes.
#[test]
fn the_documentation_lists_every_code() {
    let text = include_str!("../../../../docs/findings.md");
    let rows: Vec<&str> = text.lines().filter(|line| line.starts_with("| `")).collect();
    let wanted: Vec<String> = CODES
        .iter()
        .map(|c| format!("| `{}` | {} | {} |", c.code, c.severity.word(), c.means))
        .collect();
    assert_eq!(rows, wanted);
}

/// The gravest come first, and cautions last.
#[test]
fn findings_are_in_order() {
    for (number, fault) in FAULTS.iter().enumerate().step_by(7) {
        let found = checked(&ill(fault, 0, number));
        assert!(found.is_sorted_by_key(|finding| finding.severity), "{}", fault.what);
        assert_eq!(found.last().map(|f| f.severity), Some(Severity::Caution));
    }
}
