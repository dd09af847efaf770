//! What a forecast comes to, in three kinds of sentence.

use crate::desk::wording::listed;
use crate::desk::{Wording, say};
use barm_domain::outlook::Entry;
use barm_domain::plan::{CONTROLS, Plan};

/// One sentence under the chart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Verdict {
    /// Shows, May not show, Bag holds, Bag too small.
    pub(crate) word: String,
    /// The sentence.
    pub(crate) says: String,
}

/// Fill that a bag must not pass before the last reading (1).
const LIMIT: f64 = 0.8;

/// What shows, what may not show, and whether the bags hold.
pub(crate) fn verdicts(w: Wording, plan: &Plan, entries: &[Entry]) -> Vec<Verdict> {
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
        let says = say!(
            w,
            "verdict-shows-says",
            count = names.len(),
            names = listed(w, &names),
            beside = beside,
            minute = last.to_string(),
        );
        all.push(Verdict { word: say!(w, "verdict-shows"), says });
    }
    for (beside, names) in by_reference(&hide) {
        let says = say!(
            w,
            "verdict-hides-says",
            count = names.len(),
            names = listed(w, &names),
            beside = beside,
            mm = plan.readable_mm.to_string(),
        );
        all.push(Verdict { word: say!(w, "verdict-hides"), says });
    }
    all.extend(among(w, plan, entries));
    all.extend(fullest(w, plan, entries));
    all
}

/// Whether treatments can be told from each other, and not only from what they are compared with:
/// by the medians at the last minute, one beside the next.
fn among(w: Wording, plan: &Plan, entries: &[Entry]) -> Vec<Verdict> {
    let mut all = Vec::new();
    for question in &plan.questions {
        let own = entries.iter().filter(|entry| entry.question == question.id);
        let own = own.filter(|entry| !entry.reference && !entry.control);
        let mut own: Vec<(f64, &str)> = own
            .filter_map(|entry| Some((*entry.rise_mm.median.last()?, entry.treatment.as_str())))
            .collect();
        if own.len() < 2 {
            continue;
        }
        own.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut alike: Vec<Vec<String>> = Vec::new();
        let mut last = None;
        for (rise, name) in own {
            match (alike.last_mut(), last) {
                (Some(group), Some(last)) if rise - last < plan.readable_mm => {
                    group.push(name.to_owned());
                }
                _ => alike.push(vec![name.to_owned()]),
            }
            last = Some(rise);
        }
        let mm = plan.readable_mm.to_string();
        if alike.iter().all(|group| group.len() == 1) {
            let (word, says) =
                (say!(w, "verdict-apart"), say!(w, "verdict-apart-says", mm = &mm));
            all.push(Verdict { word, says });
        }
        for group in alike.iter().filter(|group| group.len() > 1) {
            let says = say!(w, "verdict-alike-says", names = listed(w, group), mm = &mm);
            all.push(Verdict { word: say!(w, "verdict-alike"), says });
        }
    }
    all
}

/// Names of treatments by what they are compared with, in order.
fn by_reference<'e>(entries: &[&'e Entry]) -> Vec<(&'e str, Vec<String>)> {
    let mut found: Vec<(&str, Vec<String>)> = Vec::new();
    for entry in entries {
        let beside = entry.beside.as_deref().unwrap_or_default();
        match found.iter_mut().find(|(known, _)| *known == beside) {
            Some((_, names)) if names.contains(&entry.treatment) => {}
            Some((_, names)) => names.push(entry.treatment.clone()),
            None => found.push((beside, vec![entry.treatment.clone()])),
        }
    }
    found
}

fn fullest(w: Wording, plan: &Plan, entries: &[Entry]) -> Option<Verdict> {
    let full = entries.iter().max_by(|a, b| a.peak_fill.total_cmp(&b.peak_fill))?;
    let early = full.vent_by_min.filter(|minute| *minute <= f64::from(full.last_minute()));
    let bag = plan.treatment(&full.treatment).map(|t| plan.recipe(t).bag.written)?;
    let percent = (100.0 * full.peak_fill).round();
    let (percent, name) = (percent.to_string(), &full.treatment);
    Some(match early {
        Some(minute) => Verdict {
            word: say!(w, "verdict-small"),
            says: say!(
                w,
                "verdict-over-from",
                bag = bag,
                name = name,
                percent = percent,
                minute = minute.floor().to_string(),
            ),
        },
        None if full.peak_fill >= LIMIT => Verdict {
            word: say!(w, "verdict-small"),
            says: say!(w, "verdict-over", bag = bag, name = name, percent = percent),
        },
        None => Verdict {
            word: say!(w, "verdict-holds"),
            says: say!(w, "verdict-holds-says", bag = bag, name = name, percent = percent),
        },
    })
}

#[cfg(test)]
mod tests {
    use super::verdicts;
    use crate::desk::Wording;
    use crate::desk::room::acted::Acted;

    #[test]
    fn foods_are_also_told_from_each_other() {
        let acted = Acted::new(2, 2);
        let entries = &acted.outlook.as_ref().expect("a forecast").entries;
        let mut plan = (*acted.plan).clone();
        let words = |plan: &barm_domain::plan::Plan| -> Vec<(String, String)> {
            let all = verdicts(Wording::english(), plan, entries);
            all.into_iter().map(|one| (one.word, one.says)).collect()
        };
        // One treatment lies 1.9 mm under the one before it at minute 24, so 3.2 mm at minute 40:
        // too little to tell by 4 mm.
        plan.readable_mm = 4.0;
        let said = words(&plan);
        let alike = said.iter().find(|(word, _)| word == "Look alike").expect("they do");
        assert!(alike.1.contains("less than 4 mm"), "{alike:?}");
        assert!(said.iter().all(|(word, _)| word != "Told apart"), "{said:?}");
        // A finer ruler would tell them.
        plan.readable_mm = 1.0;
        let said = words(&plan);
        assert!(said.iter().any(|(word, _)| word == "Told apart"), "{said:?}");
        assert!(said.iter().all(|(word, _)| word != "Look alike"), "{said:?}");
    }
}
