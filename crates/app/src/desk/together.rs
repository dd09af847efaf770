//! Many lines that say the same, said once.

use super::voice;
use barm_domain::plan::Plan;
use barm_domain::reading::Rejected;
use barm_domain::result::BagResult;

/// So many are named; of more, only how many.
const NAMED: usize = 4;

/// Each reason with the lines it stands for, in the order of the file.
pub(crate) fn by_reason(rejected: &[Rejected]) -> Vec<(String, String)> {
    let lines = rejected.iter().map(|r| (r.reason.clone(), r.line.to_string()));
    together(lines, "line", "lines")
}

/// Each hint with the bags it stands for, in the order of the plan.
pub(crate) fn by_hint(plan: &Plan, bags: &[BagResult]) -> Vec<(String, String)> {
    let voice = voice(plan);
    let hints = bags.iter().flat_map(|bag| {
        let name = || format!("{} ({})", bag.bag.code, bag.bag.treatment);
        bag.hints.iter().map(move |hint| (voice.hint(hint), name()))
    });
    together(hints, "", "bags")
}

/// Groups what is said of several things; `one` and `many` are what they are called.
fn together(
    said: impl Iterator<Item = (String, String)>,
    one: &str,
    many: &str,
) -> Vec<(String, String)> {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for (says, of) in said {
        match groups.iter_mut().find(|(known, _)| *known == says) {
            Some((_, all)) => all.push(of),
            None => groups.push((says, vec![of])),
        }
    }
    let named = |all: &[String]| match all.len() {
        1 => format!("{one} {}", all[0]).trim().to_owned(),
        few if few <= NAMED => format!("{many} {}", all.join(", ")),
        count => format!("{count} {many}, first {}", all[..NAMED].join(", ")),
    };
    groups
        .into_iter()
        .map(|(says, all)| {
            let named = named(&all);
            (says, named)
        })
        .collect()
}
