//! What a forecast comes to, in three kinds of sentence.

use barm_domain::outlook::Entry;
use barm_domain::plan::{CONTROLS, Plan};

/// One sentence under the chart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Verdict {
    /// Shows, May not show, Bag holds, Bag too small.
    pub(crate) word: &'static str,
    /// The sentence.
    pub(crate) says: String,
}

/// Fill that a bag must not pass before the last reading (1).
const LIMIT: f64 = 0.8;

/// What shows, what may not show, and whether the bags hold.
pub(crate) fn verdicts(plan: &Plan, entries: &[Entry]) -> Vec<Verdict> {
    let compared: Vec<&Entry> = entries
        .iter()
        .filter(|entry| entry.question != CONTROLS && entry.beside.is_some())
        .filter(|entry| !entry.lacks_reference())
        .collect();
    let (show, hide): (Vec<&Entry>, Vec<&Entry>) =
        compared.into_iter().partition(|entry| entry.readable_at_min.is_some());
    let mut all = Vec::new();
    for (beside, names) in by_reference(&show) {
        let last = entries.first().map_or(0, Entry::last_minute);
        let verb = if names.len() == 1 { "stands" } else { "stand" };
        let says = format!("{} {verb} clear of {beside} by minute {last}.", listed(&names));
        all.push(Verdict { word: "Shows", says });
    }
    for (beside, names) in by_reference(&hide) {
        let verb = if names.len() == 1 { "differs" } else { "differ" };
        let says = format!(
            "{} {verb} from {beside} by less than {} mm, so a ruler may not tell.",
            listed(&names),
            plan.readable_mm
        );
        all.push(Verdict { word: "May not show", says });
    }
    all.extend(fullest(plan, entries));
    all
}

/// Names of treatments by what they are compared with, in order.
fn by_reference<'e>(entries: &[&'e Entry]) -> Vec<(&'e str, Vec<&'e str>)> {
    let mut found: Vec<(&str, Vec<&str>)> = Vec::new();
    for entry in entries {
        let beside = entry.beside.as_deref().unwrap_or_default();
        match found.iter_mut().find(|(known, _)| *known == beside) {
            Some((_, names)) if names.contains(&entry.treatment.as_str()) => {}
            Some((_, names)) => names.push(&entry.treatment),
            None => found.push((beside, vec![&entry.treatment])),
        }
    }
    found
}

fn listed(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [all @ .., last] => format!("{} and {last}", all.join(", ")),
    }
}

fn fullest(plan: &Plan, entries: &[Entry]) -> Option<Verdict> {
    let full = entries.iter().max_by(|a, b| a.peak_fill.total_cmp(&b.peak_fill))?;
    let early = full.vent_by_min.filter(|minute| *minute <= f64::from(full.last_minute()));
    let bag = plan.treatment(&full.treatment).map(|t| plan.recipe(t).bag.written)?;
    let percent = (100.0 * full.peak_fill).round();
    Some(match early {
        Some(minute) => Verdict {
            word: "Bag too small",
            says: format!(
                "A {bag} bag of {} may be {percent} % full, and over the limit of 80 % from minute \
                 {}. Take a bigger bag or less food.",
                full.treatment,
                minute.floor()
            ),
        },
        None if full.peak_fill >= LIMIT => Verdict {
            word: "Bag too small",
            says: format!(
                "A {bag} bag of {} may be {percent} % full at the last reading. The limit is 80 %.",
                full.treatment
            ),
        },
        None => Verdict {
            word: "Bag holds",
            says: format!(
                "The fullest bag ({}, top of its band) fills {percent} % of a {bag} bag. The limit \
                 is 80 %.",
                full.treatment
            ),
        },
    })
}
