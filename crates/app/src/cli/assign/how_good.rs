//! Which wishes are served, what the others would cost, and the proof.

use crate::cli::failure::Failure;
use crate::cli::page;
use barm_domain::assign::day::Day;
use barm_domain::assign::{Assigned, Price, STEPS};
use std::io::Write;

pub(super) fn wishes(day: &Day, found: &Assigned, out: &mut impl Write) -> Result<(), Failure> {
    page::part(out, "Wishes")?;
    let asked = day.groups.iter().filter(|group| !group.ranks.is_empty()).count();
    if asked == 0 {
        writeln!(out, "No wish counted.")?;
        return Ok(());
    }
    let served = asked - found.broken.len();
    writeln!(out, "{served} of {asked} groups with a wish get what they ranked first.")?;
    if found.broken.is_empty() {
        return Ok(());
    }
    page::paragraph(
        out,
        0,
        "A second choice counts 1, a third 3, a fourth 6: so much it costs a group not to get its \
         first. What each wish that is not served would cost all others:",
    )?;
    for broken in &found.broken {
        let says = format!(
            "{}: “{}” in place of “{}” {}",
            sentence(&day.name_of(broken.group)),
            day.questions[broken.gets],
            day.questions[broken.wanted],
            price(day, &broken.price)
        );
        page::paragraph(out, 4, &says)?;
    }
    Ok(())
}

fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn price(day: &Day, price: &Price) -> String {
    match price {
        Price::Costs { missing, short, others, proven } => {
            let mut parts = Vec::new();
            let mut part = |count: i64, more: &str, fewer: &str| {
                if count != 0 {
                    let words = if count > 0 { more } else { fewer };
                    parts.push(format!("{} {words}", count.abs()));
                }
            };
            part(
                *missing,
                "times more a period goes without a treatment",
                "times fewer a period goes without a treatment",
            );
            part(*short, "more bags short of what is asked for", "fewer bags short");
            part(*others, "to the wishes of others", "less to the wishes of others");
            let costs = if parts.is_empty() {
                "nothing but evenness".to_owned()
            } else {
                parts.join(", ")
            };
            format!("– it would cost {costs}{}", if *proven { "." } else { ", or less." })
        }
        Price::Clashes(clash) => {
            let words = clash.rules.iter().map(|rule| day.rules[*rule].words(day));
            format!("– it cannot be served: {}.", words.collect::<Vec<_>>().join("; "))
        }
        Price::NotFound => "– what it would cost was not found out.".to_owned(),
    }
}

pub(super) fn proof(day: &Day, found: &Assigned, out: &mut impl Write) -> Result<(), Failure> {
    page::part(out, "How good that is")?;
    let (own, bound) = (&found.worth, &found.bound);
    let rows = [
        ("times a period goes without a treatment", own.missing, bound.missing),
        ("bags short of what the plan asks for", own.short, bound.short),
        ("wishes not served, in points", own.regret, bound.regret),
    ];
    let rows = rows
        .map(|(what, own, bound)| vec![what.to_owned(), own.to_string(), bound.to_string()]);
    page::rows(out, &["", "here", "at best"], &[1, 2], rows)?;
    let says = if found.proven {
        "Proven: no way to share groups out is better, the first line before the second, the second \
         before the third."
            .to_owned()
    } else {
        format!(
            "Not proven: a better way may exist, better by at most {:.1} % of the best there can be \
             in the first line that differs.",
            100.0 * found.gap(day)
        )
    };
    page::paragraph(out, 0, &says)?;
    let says = format!(
        "{} flows were worked out, at most {STEPS} for the whole day and for each period by itself. Every bag was held against every rule once more, \
         and the bound was worked out from prices.{}",
        found.steps,
        if found.dealt {
            ""
        } else {
            " Treatments may be dealt more evenly to the same groups."
        }
    );
    page::paragraph(out, 0, &says)?;
    Ok(())
}
