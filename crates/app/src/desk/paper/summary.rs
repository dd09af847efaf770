//! One page for families and the principal, without anything about a student.

use super::results::every_bag;
use super::{looks, student_imprint};
use crate::desk::print::Job;
use crate::desk::{Analysis, DeskError};
use barm_documents::catalog::Catalog;
use barm_documents::chart::{DotRow, Look, Words};
use barm_documents::sheet::{self, Entry, FamilySummary};
use barm_domain::plan::{Circumstance, Plan};
use barm_domain::result::Compared;
use barm_science::statistics::verdict::Code;
use jiff::civil::Date;

/// Findings that stand on the page, the clearest first.
const MOST: usize = 4;
/// Findings whose bags are drawn.
const DRAWN: usize = 2;

/// The summary as a PDF of one page.
pub(crate) fn summary_pdf(job: &Job<'_>, analysis: &Analysis) -> Result<Vec<u8>, DeskError> {
    let (plan, words) = (job.plan, job.wish.words);
    let heads = ["did", "found", "know", "safe", "learned", "home"];
    let summary = FamilySummary {
        imprint: student_imprint(job, "SUMMARY"),
        name: words.say("summary-name"),
        title: if plan.big_question.is_empty() { &plan.title } else { &plan.big_question }
            .clone(),
        summary: days(plan, words),
        heads: heads.map(|head| words.say(&format!("summary-{head}"))),
        did: did(plan, analysis, words),
        found: found(plan, analysis, words),
        picture_note: picture_note(analysis, words),
        every_bag: drawn(plan, analysis, words),
        know: words.say("summary-know-says"),
        safe_lead: words.say("summary-safe-lead"),
        safe: safe(plan, words),
        standards: plan
            .standards
            .iter()
            .filter_map(|standard| {
                let shown = standard.shown_by.as_ref()?;
                Some(Entry { head: standard.code.clone(), says: shown.clone() })
            })
            .collect(),
        home: words.say("summary-home-says"),
    };
    Ok(sheet::summary_pdf(&summary, Words::of(words), job.wish.size.into())?)
}

/// What a treatment is called in that language.
fn told(plan: &Plan, words: &Catalog, treatment: &str) -> String {
    if looks::look(plan, treatment) == Look::NO_FOOD {
        words.say("summary-no-food")
    } else {
        words.own_words(treatment)
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Where the catalog has the names of the months.
const MONTHS: [&str; 12] = [
    "month-1", "month-2", "month-3", "month-4", "month-5", "month-6", "month-7", "month-8",
    "month-9", "month-10", "month-11", "month-12",
];

/// The day in words, or the first and the last of several.
fn days(plan: &Plan, words: &Catalog) -> String {
    let told = |date: Date| {
        let month = MONTHS[date.month() as usize - 1];
        let month = words.say(month);
        let (day, year) = (date.day().to_string(), date.year().to_string());
        words.say_with("date-words", &[("month", &month), ("day", &day), ("year", &year)])
    };
    let dates = || plan.days.iter().map(|day| day.date);
    match (dates().min(), dates().max()) {
        (Some(first), Some(last)) if first == last => told(first),
        (Some(first), Some(last)) => {
            words.say_with("date-span", &[("first", &told(first)), ("last", &told(last))])
        }
        _ => String::new(),
    }
}

/// What was done: planned, and read.
fn did(plan: &Plan, analysis: &Analysis, words: &Catalog) -> String {
    let read = analysis.result.bags.iter().filter(|bag| bag.summary.is_some()).count();
    let periods = match plan.periods.len() {
        1 => words.say("summary-periods-one"),
        many => words.say_with("summary-periods", &[("count", &many.to_string())]),
    };
    let of_them = if read == 0 {
        words.say("summary-read-none")
    } else if read >= plan.bags.len() {
        words.say("summary-read-all")
    } else {
        words.say_with("summary-read-some", &[("count", &read.to_string())])
    };
    let bags = plan.bags.len().to_string();
    let values = [("bags", bags.as_str()), ("periods", &periods), ("read", &of_them)];
    words.say_with("summary-did-says", &values)
}

/// The bags of the clearest findings, each with those it is compared with; of all if nothing is clear.
fn drawn(plan: &Plan, analysis: &Analysis, words: &Catalog) -> Vec<DotRow> {
    let shown: Vec<&Compared> =
        clearest(analysis).into_iter().take(DRAWN).map(|(compared, _)| compared).collect();
    let named = |row: &DotRow| {
        shown.iter().any(|one| one.treatment == row.name || one.reference == row.name)
    };
    let mut rows = every_bag(plan, &analysis.result.bags);
    rows.retain(|row| shown.is_empty() || named(row));
    for row in &mut rows {
        row.name = capital(&told(plan, words, &row.name));
    }
    rows
}

/// What stands under the picture; it tells of an older plan too, if a name on the page does.
fn picture_note(analysis: &Analysis, words: &Catalog) -> String {
    let clear = clearest(analysis).into_iter().take(MOST);
    let named = clear.flat_map(|(one, _)| [one.treatment.as_str(), one.reference.as_str()]);
    let bags = analysis.result.bags.iter().map(|bag| bag.bag.treatment.as_str());
    let all = clearest(analysis).is_empty();
    let older = super::older_names_told(words, named.chain(bags.filter(|_| all)));
    std::iter::once(words.say("summary-picture")).chain(older).collect::<Vec<_>>().join(" ")
}

/// The safety rules of this plan. Nobody has ticked them, so they are told as what it asks for.
fn safe(plan: &Plan, words: &Catalog) -> Vec<String> {
    let enzyme = plan.treatments().any(|(_, one)| plan.recipe(one).enzyme.is_some());
    let overnight = plan.circumstances.contains(&Circumstance::KeptOvernight);
    let mut keys = vec!["goggles", "taste", "water"];
    if enzyme {
        keys.insert(2, "enzyme");
    }
    if !overnight {
        keys.push("poured");
    }
    keys.into_iter().map(|key| words.say(&format!("summary-safe-{key}"))).collect()
}

/// Comparisons with a difference that chance hardly makes, the clearest and largest first, with their
/// millimeters.
fn clearest(analysis: &Analysis) -> Vec<(&Compared, f64)> {
    let all = analysis.result.questions.iter().flat_map(|answer| &answer.comparisons);
    let mut clear: Vec<(&Compared, f64)> = all
        .filter(|compared| matches!(compared.with.verdict.code, Code::Clear | Code::Leaning))
        .filter_map(|compared| Some((compared, compared.with.difference.as_ref()?.difference)))
        .collect();
    clear.sort_by(|a, b| {
        let code = |one: &Compared| one.with.verdict.code;
        code(a.0).cmp(&code(b.0)).then(b.1.abs().total_cmp(&a.1.abs()))
    });
    clear
}

/// What was found: the clear first, in plain words; then how many more, and how many are open.
fn found(plan: &Plan, analysis: &Analysis, words: &Catalog) -> Vec<Entry> {
    let all = analysis.result.questions.iter().map(|answer| answer.comparisons.len()).sum();
    let clear = clearest(analysis);
    let (more, open) = (clear.len().saturating_sub(MOST), rest(all, clear.len()));
    let entry = |(compared, mm): (&Compared, f64)| {
        let key = if mm >= 0.0 { "summary-more" } else { "summary-less" };
        let millimeters = format!("{:.0}", mm.abs());
        Entry {
            head: words.say(match compared.with.verdict.code {
                Code::Clear => "summary-clear",
                _ => "summary-leaning",
            }),
            says: words.say_with(
                key,
                &[
                    ("treatment", &capital(&told(plan, words, &compared.treatment))),
                    ("reference", &told(plan, words, &compared.reference)),
                    ("mm", &millimeters),
                ],
            ),
        }
    };
    let mut found: Vec<Entry> = clear.into_iter().take(MOST).map(entry).collect();
    if more > 0 {
        let says = words.say_with("summary-further-says", &[("count", &more.to_string())]);
        found.push(Entry { head: words.say("summary-further"), says });
    }
    if let Some((key, count)) = open {
        let (count, mm) = (count.to_string(), format!("{:.0}", plan.readable_mm));
        let says = words.say_with(key, &[("count", &count), ("mm", &mm)]);
        found.push(Entry { head: words.say("summary-open"), says });
    }
    found
}

/// How the comparisons without a clear answer are told, and how many they are.
const fn rest(all: usize, clear: usize) -> Option<(&'static str, usize)> {
    match (all, all.saturating_sub(clear)) {
        (0, _) => Some(("summary-rest-none", 0)),
        (_, 0) => None,
        (all, open) if open == all => Some(("summary-rest-all", open)),
        (_, 1) => Some(("summary-rest-one", 1)),
        (_, open) => Some(("summary-rest", open)),
    }
}

#[cfg(test)]
mod tests {
    use super::rest;

    #[test]
    fn what_is_open_is_told_by_how_much_it_is() {
        let key = |all, clear| rest(all, clear).map(|(key, count)| (key.to_owned(), count));
        let told = |key: &str, count| Some((key.to_owned(), count));
        assert_eq!(key(0, 0), told("summary-rest-none", 0));
        assert_eq!(key(8, 0), told("summary-rest-all", 8));
        assert_eq!(key(8, 7), told("summary-rest-one", 1));
        assert_eq!(key(8, 3), told("summary-rest", 5));
        assert_eq!(key(8, 8), None);
    }
}
