//! The parts of the results report that are words.

use super::looks;
use crate::desk::{Analysis, DAY_WORDS, METERED_HEADS, beyond_says, day_says, metered, voice};
use barm_documents::chart::Estimate;
use barm_documents::sheet::{Claim, DayPart, Entry, GasRow, LeftOut, MeterPart};
use barm_domain::plan::Plan;
use barm_domain::result::{BagResult, Compared, Hint, Measured};
use barm_science::statistics::verdict::Code;

/// What can be said, strongest first; the order of the plan within one strength.
pub(super) fn claims(plan: &Plan, analysis: &Analysis) -> Vec<Claim> {
    let mut compared: Vec<&Compared> =
        analysis.result.questions.iter().flat_map(|answer| &answer.comparisons).collect();
    compared.sort_by_key(|compared| compared.with.verdict.code);
    let voice = voice(plan);
    // Those that did not rise are told together: one line each would bury what did.
    let (flat, told): (Vec<&Compared>, Vec<&Compared>) =
        compared.into_iter().partition(|c| c.with.verdict.code == Code::NoRise);
    let mut claims: Vec<Claim> = told
        .into_iter()
        .map(|compared| Claim {
            verdict: capital(voice.verdict(compared.with.verdict.code)),
            claim: voice.comparison(compared),
            evidence: [Some(voice.bags_behind(compared)), voice.size_without(compared)]
                .into_iter()
                .flatten()
                .chain(voice.without_set_aside(compared))
                .collect::<Vec<_>>()
                .join(" "),
        })
        .collect();
    if let Some((claim, evidence)) = voice.none_rose(&flat, plan.readable_mm) {
        claims.push(Claim { verdict: capital(voice.verdict(Code::NoRise)), claim, evidence });
    }
    claims
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Gas and ethanol per bag: mean over the bags of a treatment. The interval is as wide as that of
/// one bag, since what the card's shape leaves open is common to all of them.
pub(super) fn gas_rows(plan: &Plan, bags: &[BagResult]) -> Vec<GasRow> {
    let row = |name: &str| {
        let contents: Vec<_> = bags
            .iter()
            .filter(|bag| bag.bag.treatment == name && bag.set_aside.is_none())
            .filter_map(|bag| bag.contents)
            .collect();
        let ethanol: Vec<Measured> = contents.iter().filter_map(|c| c.ethanol_g).collect();
        Some(GasRow {
            treatment: name.to_owned(),
            look: looks::look(plan, name),
            bags: contents.len(),
            gas_ml: mean(contents.iter().map(|c| c.gas_ml))?,
            ethanol_g: mean(ethanol.into_iter())?,
        })
    };
    plan.treatments().filter_map(|(_, treatment)| row(&treatment.name)).collect()
}

fn mean(measured: impl Iterator<Item = Measured>) -> Option<Estimate> {
    let all: Vec<Measured> = measured.collect();
    let n = all.len() as f64;
    let of = |part: fn(&Measured) -> f64| all.iter().map(part).sum::<f64>() / n;
    (!all.is_empty()).then(|| Estimate {
        value: of(|m| m.value),
        low: of(|m| m.low),
        high: of(|m| m.high),
    })
}

/// What the day teaches, and bags to look at, if that was worked out.
pub(super) fn day(plan: &Plan, analysis: &Analysis) -> Option<DayPart> {
    let says = day_says(plan, analysis.day.as_ref()?);
    let entry = |head: &str, says: String| Entry { head: head.to_owned(), says };
    let notes: Vec<Entry> = says.notes().map(|note| entry("To know", note.clone())).collect();
    let look_at = says.look_at.into_iter();
    let look_at = look_at.map(|(code, treatment, asks)| {
        entry("Look at", format!("{code} ({treatment}). {asks}"))
    });
    Some(DayPart {
        rests: says.rests,
        words: (DAY_WORDS.0.to_owned(), DAY_WORDS.1.to_owned()),
        rows: says.rows,
        says: look_at.chain(notes).collect(),
    })
}

/// What the breath meter says, beside the words that have to stand there.
pub(super) fn meter(plan: &Plan, analysis: &Analysis) -> Option<MeterPart> {
    let metered = metered(plan, analysis.meter.as_ref())?;
    let entry = |head: &str, says: String| Entry { head: head.to_owned(), says };
    let compared = metered.compared.into_iter().flat_map(|one| {
        let says = entry("Compared", format!("{} {}", one.says, one.rests));
        [says].into_iter().chain(one.warning.map(|warning| entry("Careful", warning)))
    });
    let not_used = metered.not_used.into_iter();
    Some(MeterPart {
        note: metered.note,
        says: compared
            .chain(not_used.map(|says| entry("Not used", format!("{says}."))))
            .collect(),
        heads: METERED_HEADS.map(str::to_owned).to_vec(),
        bags: metered.bags.iter().map(|bag| bag.cells().map(str::to_owned).to_vec()).collect(),
    })
}

/// Bags that were set aside by a rule.
pub(super) fn left_out(plan: &Plan, analysis: &Analysis) -> Vec<LeftOut> {
    let rule_says = |id: &str| {
        let rule = plan.set_aside_rules.iter().find(|rule| rule.id == id);
        rule.map_or(String::new(), |rule| rule.says.clone())
    };
    let one = |bag: &BagResult| {
        let rule = bag.set_aside.clone()?;
        let noted = bag.curve.rises.iter().filter_map(|rise| rise.event.clone());
        let noted: Vec<String> = noted.collect();
        Some(LeftOut {
            bag: bag.bag.code.clone(),
            treatment: bag.bag.treatment.clone(),
            seen: if noted.is_empty() { rule_says(&rule) } else { noted.join("; ") },
            rule,
        })
    };
    analysis.result.bags.iter().filter_map(one).collect()
}

/// Bags that gave no rise or look odd, and what was noted at the bench.
pub(super) fn did_not_work(plan: &Plan, analysis: &Analysis) -> Vec<Entry> {
    let voice = voice(plan);
    let of_file = |says: &String| Entry { head: "File".to_owned(), says: says.clone() };
    let mut entries: Vec<Entry> = analysis.above_all.iter().map(of_file).collect();
    entries.extend(analysis.outlook.failed.iter().map(|error| Entry {
        head: "No forecast".to_owned(),
        says: format!("{} Its gas and ethanol are not estimated.", super::unforeseen(error)),
    }));
    for bag in analysis.result.bags.iter().filter(|bag| bag.set_aside.is_none()) {
        // A height between two readings is nothing that went wrong.
        let hints = bag.hints.iter().filter(|hint| !matches!(hint, Hint::Between { .. }));
        let mut says: Vec<String> = hints.map(|hint| voice.hint(hint)).collect();
        says.extend(bag.curve.rises.iter().filter_map(|rise| {
            let event = rise.event.as_ref()?;
            Some(format!("Noted at minute {}: {event}.", rise.minute))
        }));
        if !says.is_empty() {
            let says = format!("{}: {}", bag.bag.treatment, says.join(" "));
            entries.push(Entry { head: bag.bag.code.clone(), says });
        }
    }
    entries.extend(
        analysis
            .remarks
            .iter()
            .map(|remark| Entry { head: remark.bag.clone(), says: remark.says.clone() }),
    );
    entries
}

/// How the numbers were worked out.
pub(super) fn method(plan: &Plan, analysis: &Analysis) -> Vec<Entry> {
    let entry = |head: &str, says: String| Entry { head: head.to_owned(), says };
    let mut entries = vec![
        entry(
            "Rise",
            "Card height less the bag’s own zero reading. One bag gives one number, however often \
             it was read."
                .into(),
        ),
        entry("Minute", voice(plan).common_minute(&analysis.result)),
        entry(
            "Difference",
            "Treatment less reference, adjusted for periods: least squares with period as block \
             and bag as unit."
                .into(),
        ),
        entry("Interval", voice(plan).intervals_of(plan.round)),
        entry("Verdict", voice(plan).verdicts_of(plan.round, plan.readable_mm)),
        entry(
            "Slope",
            "The steepest three readings in a row of each bag. Reading doubt alone gives a bag \
             that does not rise a small slope too."
                .into(),
        ),
        entry(
            "Gas, ethanol",
            "Gas from the rise by the shape of a carded bag (own simulation, not yet compared with \
             measured bags); ethanol from gas through the forecast. An estimate, not a test of a \
             person."
                .into(),
        ),
    ];
    let beyond = beyond_says(plan, &analysis.beyond).into_iter();
    entries.extend(beyond.map(|says| entry("Beyond what is known", says)));
    let names = plan.treatments().map(|(_, treatment)| treatment.name.as_str());
    entries.extend(super::older_names(names));
    entries.extend(analysis.notes.iter().map(|note| entry("File", note.clone())));
    entries
}
