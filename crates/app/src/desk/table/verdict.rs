//! What a comparison or a curve says, in plain words.

use super::figures::{chance, figure};
use barm_science::fit::curve::CurveFit;
use barm_science::statistics::levels::{Difference, Levels};
use barm_science::statistics::randomization::Randomization;

/// Differences that are named one by one.
const NAMED: usize = 6;

/// The answer of a comparison, its cross-check, and what all of it rests on.
pub(super) fn compared(told: &Levels, names: &[String]) -> Vec<String> {
    let sure = |d: &&Difference| d.low > 0.0 || d.high < 0.0;
    let clear: Vec<&Difference> = told.pairs.iter().filter(sure).collect();
    let mut says = Vec::new();
    let all = match told.pairs.len() {
        1 => String::new(),
        count => format!(", all {count} pairs judged together"),
    };
    let needed = needed(told);
    if clear.is_empty() {
        says.push(format!(
            "These values do not tell the levels apart (95 %{all}). That does not show that they \
             are equal: here two levels had to differ by {needed} to stand out."
        ));
    } else {
        let named: Vec<String> = clear.iter().take(NAMED).map(|d| above(d, names)).collect();
        let more = clear.len().saturating_sub(NAMED);
        let more = if more > 0 { format!("; and {more} more pairs") } else { String::new() };
        let close = match told.pairs.len() - clear.len() {
            0 => String::new(),
            1 => " The other pair is too close to tell apart here, which does not show that it is \
                  equal."
                .to_owned(),
            count => format!(
                " The other {count} pairs are too close to tell apart here, which does not show \
                 that they are equal; {needed} was needed."
            ),
        };
        says.push(format!(
            "More than chance explains (95 %{all}): {}{more}.{close}",
            named.join("; ")
        ));
    }
    says.push(dealt_again(&told.randomization, told.blocks > 1));
    says.push(
        "All of this takes each row as one bag of its own, not as one of several readings of a \
         bag, and the levels as dealt to the bags by chance."
            .to_owned(),
    );
    says
}

fn above(d: &Difference, names: &[String]) -> String {
    let (higher, lower) =
        if d.difference > 0.0 { (d.level, d.from) } else { (d.from, d.level) };
    format!("{} above {}", names[higher], names[lower])
}

/// How far apart two levels had to lie.
fn needed(told: &Levels) -> String {
    let half = told.pairs.iter().map(|d| 0.5 * (d.high - d.low));
    let (least, most) =
        half.fold((f64::INFINITY, 0.0_f64), |(a, b), half| (a.min(half), b.max(half)));
    if most < 1.02 * least {
        format!("about {}", figure(most))
    } else {
        format!("{} to {}", figure(least), figure(most))
    }
}

/// What dealing the labels out again says. With too few deals for any small p it is no verdict.
fn dealt_again(told: &Randomization, in_blocks: bool) -> String {
    let inside = if in_blocks { " inside the blocks" } else { "" };
    let share = chance(told.p);
    match told.smallest {
        Some(smallest) if smallest > 0.05 || told.draws < 20 => format!(
            "Cross-check: the labels could have been dealt{inside} in only {} ways, so the smallest p \
             that any outcome could give is {}; that is too few to judge by.",
            told.draws,
            chance(smallest)
        ),
        Some(_) => format!(
            "Cross-check: of all {} ways to deal the labels{inside}, a share of {share} makes as large \
             a difference.",
            told.draws
        ),
        None => format!(
            "Cross-check: with the labels dealt out again{inside} {} times (seed {}), a share of \
             {share} makes as large a difference.",
            told.draws, told.seed
        ),
    }
}

/// What a curve says.
pub(super) fn fitted(fit: &CurveFit, n: usize) -> Vec<String> {
    if !fit.converged {
        return vec![
            "No best curve was found: these points do not tell all numbers of this shape. What \
             stands below is only where the search ended. Try a simpler shape, or measure over a \
             wider range."
                .to_owned(),
        ];
    }
    let mut says = vec![format!(
        "The nearest curve of this shape was found; the {n} points lie about {} from it. The \
         intervals (95 %) hold if this is the right shape, and a near fit alone does not show that \
         it is.",
        figure(fit.residual_sd())
    )];
    let vague = |p: &&barm_science::fit::curve::Parameter| {
        p.doubt.is_some_and(|d| d.low <= 0.0 && d.high >= 0.0)
    };
    let vague: Vec<&str> = fit.parameters.iter().filter(vague).map(|p| p.name).collect();
    if !vague.is_empty() {
        says.push(format!(
            "Hardly known from these points (the interval holds 0): {}.",
            vague.join(", ")
        ));
    }
    says
}
