//! Small changes that make a sharing-out better, for groups with different numbers of bags.
//!
//! Proves nothing: it only gives branch and bound something good to compare with early.

use super::case::{Case, Count};
use super::worth::{Part, Worth, worth};

/// Rounds of changes at most.
const ROUNDS: u32 = 30;

/// Whether a sharing-out keeps every rule but for materials, which hang on the treatments.
pub(super) fn keeps(case: &Case<'_>, parts: &[Part]) -> bool {
    parts.len() == case.day.groups.len() && broken(case, parts) == 0
}

/// By how much rules are broken.
fn broken(case: &Case<'_>, parts: &[Part]) -> u32 {
    let day = case.day;
    let mut broken = 0;
    let mut control = vec![(false, false); day.arms.len() * day.periods.len()];
    for (g, part) in parts.iter().enumerate() {
        broken += u32::from(!case.allowed[g][part.arm]);
        if case.needs_control(part.arm) {
            let (single, made) =
                &mut control[part.arm * day.periods.len() + day.groups[g].period];
            if case.bags[g] == 1 && !part.reference {
                *single = true;
            } else {
                *made = true;
            }
        }
    }
    broken += control.iter().map(|(single, made)| u32::from(*single && !made)).sum::<u32>();
    for Count { period, question, least, most } in &case.counts {
        let of = day.groups.iter().zip(parts).filter(|(group, part)| {
            case.arm(part.arm).question == *question
                && period.is_none_or(|period| period == group.period)
        });
        let count = u32::try_from(of.count()).unwrap_or(u32::MAX);
        broken += least.saturating_sub(count) + count.saturating_sub(*most);
    }
    broken
}

/// A sharing-out that no other arm for one group, and no exchange between two of a period, makes
/// better.
pub(super) fn improved(case: &Case<'_>, mut parts: Vec<Part>) -> Vec<Part> {
    let day = case.day;
    if parts.len() != day.groups.len() {
        return parts;
    }
    let score = |parts: &[Part]| -> (u32, Worth) { (broken(case, parts), worth(case, parts)) };
    let mut best = score(&parts);
    for _ in 0..ROUNDS {
        let before = best;
        for g in 0..parts.len() {
            for arm in (0..day.arms.len()).filter(|arm| case.allowed[g][*arm]) {
                let was = parts[g];
                parts[g] = Part { arm, reference: false };
                keep_if_better(&mut parts, &mut best, &score, |parts| parts[g] = was);
                if case.bags[g] == 1 && case.needs_control(arm) {
                    let was = parts[g];
                    parts[g] = Part { arm, reference: true };
                    keep_if_better(&mut parts, &mut best, &score, |parts| parts[g] = was);
                }
            }
            for other in g + 1..parts.len() {
                if day.groups[other].period != day.groups[g].period || parts[g] == parts[other]
                {
                    continue;
                }
                // Only a single bag is a reference by itself.
                let single = case.bags[g] == 1 && case.bags[other] == 1;
                if (parts[g].reference || parts[other].reference) && !single {
                    continue;
                }
                parts.swap(g, other);
                keep_if_better(&mut parts, &mut best, &score, |parts| parts.swap(g, other));
            }
        }
        if best == before {
            break;
        }
    }
    parts
}

fn keep_if_better(
    parts: &mut [Part],
    best: &mut (u32, Worth),
    score: &impl Fn(&[Part]) -> (u32, Worth),
    back: impl Fn(&mut [Part]),
) {
    let now = score(parts);
    if now < *best {
        *best = now;
    } else {
        back(parts);
    }
}
