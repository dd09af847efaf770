//! One page for families and the principal, without anything about a student.

use super::results::every_bag;
use super::slides::chart_words;
use super::{looks, student_imprint};
use crate::desk::print::Job;
use crate::desk::{Analysis, DeskError};
use barm_documents::catalog::Catalog;
use barm_documents::chart::Look;
use barm_documents::sheet::{self, Entry, FamilySummary};
use barm_domain::plan::{Circumstance, Plan};
use barm_domain::result::Compared;
use barm_science::statistics::verdict::Code;

/// Findings that stand on the page, the clearest first.
const MOST: usize = 4;

/// The summary as a PDF of one page.
pub(crate) fn summary_pdf(job: &Job<'_>, analysis: &Analysis) -> Result<Vec<u8>, DeskError> {
    let (plan, words) = (job.plan, job.wish.words);
    let bags = analysis.result.bags.iter().filter(|bag| bag.summary.is_some()).count();
    let count = bags.to_string();
    let periods = plan.periods.len().to_string();
    let date = plan.days.first().map_or_else(String::new, |day| day.date.to_string());
    let mut rows = every_bag(plan, &analysis.result.bags);
    for row in &mut rows {
        row.name = capital(&told(plan, words, &row.name));
    }
    let heads = ["did", "found", "know", "safe", "learned", "home"];
    let summary = FamilySummary {
        imprint: student_imprint(job, "SUMMARY"),
        name: words.say("summary-name"),
        title: if plan.big_question.is_empty() { &plan.title } else { &plan.big_question }
            .clone(),
        summary: date,
        heads: heads.map(|head| words.say(&format!("summary-{head}"))),
        did: words.say_with("summary-did-says", &[("bags", &count), ("periods", &periods)]),
        found: found(plan, analysis, words),
        picture_note: words.say("summary-picture"),
        every_bag: rows,
        know: words.say("summary-know-says"),
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
    Ok(sheet::summary_pdf(&summary, chart_words(words), job.wish.size.into())?)
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

/// How it was kept safe: only what is true of this plan.
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

/// What was found: the clear first, in plain words; then how many could not be told apart.
fn found(plan: &Plan, analysis: &Analysis, words: &Catalog) -> Vec<Entry> {
    let all = || analysis.result.questions.iter().flat_map(|answer| &answer.comparisons);
    let mut clear: Vec<(&Compared, f64)> = all()
        .filter(|compared| matches!(compared.with.verdict.code, Code::Clear | Code::Leaning))
        .filter_map(|compared| Some((compared, compared.with.difference.as_ref()?.difference)))
        .collect();
    clear.sort_by(|a, b| {
        let code = |one: &Compared| one.with.verdict.code;
        code(a.0).cmp(&code(b.0)).then(b.1.abs().total_cmp(&a.1.abs()))
    });
    let rest = all().count() - clear.len().min(MOST);
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
    if rest > 0 || found.is_empty() {
        let says = words.say_with(
            "summary-rest",
            &[("count", &rest.to_string()), ("mm", &format!("{:.0}", plan.readable_mm))],
        );
        found.push(Entry { head: words.say("summary-open"), says });
    }
    found
}
