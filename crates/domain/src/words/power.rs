//! What may be expected of a plan's bags, in a teacher's words.

use super::Voice;
use super::number::{mid_sentence, short};
use crate::power::{Chances, Pair, QuestionPower, USUAL};

impl Voice {
    /// What the bags of a question will probably show, how small a difference they usually find, and
    /// what to add, in one sentence.
    pub fn power(self, question: &QuestionPower) -> String {
        let (seen, missed): (Vec<&Pair>, Vec<&Pair>) =
            question.pairs.iter().partition(|pair| pair.own.with_slips >= USUAL);
        let mut parts = vec![format!("With {} {}", each(question), shows(question, &seen))];
        let found = question.pairs.iter().filter_map(|pair| pair.own.usually_found_mm);
        if let Some(largest) = found.reduce(f64::max) {
            parts.push(format!(
                "the smallest difference usually found is about {} mm",
                short(rounded(largest))
            ));
        }
        parts.extend(adds(&missed));
        format!("{}.", parts.join("; "))
    }
}

/// Millimeters that claim no more than they know: halves below 5, whole above.
fn rounded(mm: f64) -> f64 {
    if mm < 5.0 { (2.0 * mm).round() / 2.0 } else { mm.round() }
}

/// How many bags each treatment has.
fn each(question: &QuestionPower) -> String {
    let bags = || question.pairs.iter().map(|pair| pair.own.bags);
    match (bags().min(), bags().max()) {
        (Some(1), Some(1)) => "1 bag of each".to_owned(),
        (Some(least), Some(most)) if least == most => format!("{least} bags of each"),
        (Some(least), Some(most)) => format!("{least} to {most} bags of each"),
        _ => "no bags".to_owned(),
    }
}

fn shows(question: &QuestionPower, seen: &[&Pair]) -> String {
    let all = question.pairs.len();
    if seen.is_empty() {
        return "you will probably see no difference clearly".to_owned();
    }
    let references: Vec<&str> = seen.iter().map(|pair| pair.reference.as_str()).collect();
    let same = references.iter().all(|reference| *reference == references[0]);
    let from = if same {
        format!("from {}", mid_sentence(references[0]))
    } else {
        "from what each is compared with".to_owned()
    };
    if seen.len() == all && all > 1 {
        return format!("you will probably see how each of the {all} differs {from}");
    }
    let names = listed(seen);
    let differs = if seen.len() == 1 { "differs" } else { "differ" };
    format!("you will probably see that {names} {differs} {from}")
}

/// What would show the rest.
fn adds(missed: &[&Pair]) -> Vec<String> {
    let enough = |pair: &Pair| {
        let more = |one: &&Chances| one.bags > pair.own.bags && one.with_slips >= USUAL;
        pair.by_bags.iter().find(more).map(|one| one.bags)
    };
    let mut by_count: Vec<(usize, Vec<&Pair>)> = Vec::new();
    let mut hopeless = Vec::new();
    for &pair in missed {
        match enough(pair) {
            Some(bags) => match by_count.iter_mut().find(|(known, _)| *known == bags) {
                Some((_, pairs)) => pairs.push(pair),
                None => by_count.push((bags, vec![pair])),
            },
            None => hopeless.push(pair),
        }
    }
    by_count.sort_by_key(|(bags, _)| *bags);
    let mut says: Vec<String> = by_count
        .into_iter()
        .map(|(bags, pairs)| format!("make {bags} bags of {} to see it", listed(&pairs)))
        .collect();
    if !hopeless.is_empty() {
        let most = hopeless.iter().flat_map(|pair| &pair.by_bags).map(|one| one.bags).max();
        let most = most.unwrap_or_default();
        says.push(format!(
            "for {}, {most} bags would not do: change more, or take any answer as \u{201c}can\u{2019}t \
             tell\u{201d}",
            listed(&hopeless)
        ));
    }
    says
}

fn listed(pairs: &[&Pair]) -> String {
    let names: Vec<String> = pairs.iter().map(|pair| mid_sentence(&pair.treatment)).collect();
    match names.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
    }
}
