//! Periods that overlap, follow each other too fast, run past midnight, or have no address.

use crate::finding::{Finding, Severity};
use crate::plan::{Period, Plan};
use crate::schedule::LEAST_CHANGEOVER_MIN;

/// Minutes from midnight to midnight.
const DAY_MIN: f64 = 24.0 * 60.0;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found = past_midnight(plan);
    found.extend(dotted(plan));
    for (p, period) in plan.periods.iter().enumerate() {
        // Of two that start together, the later in the list is the one to mend.
        let before = plan
            .periods
            .iter()
            .enumerate()
            .filter(|(o, other)| {
                let earlier =
                    starts(other) < starts(period) || (other.start == period.start && *o < p);
                other.day == period.day && earlier
            })
            .map(|(_, other)| other)
            .max_by(|a, b| ends(a).total_cmp(&ends(b)));
        let Some(before) = before else { continue };
        let gap = starts(period) - ends(before);
        let (name, earlier) = (&period.name, &before.name);
        if gap < 0.0 {
            found.push(
                Finding::new(
                    Severity::Fault,
                    "periods-overlap",
                    format!("The bell for period “{name}” rings while period “{earlier}” is still on."),
                    "Mend the start or the length of one of the two.",
                )
                .at(format!("period[{p}].start")),
            );
        } else if gap < LEAST_CHANGEOVER_MIN {
            found.push(
                Finding::new(
                    Severity::Warning,
                    "short-changeover",
                    format!(
                        "There are {gap:.0} min to swap trays between periods “{earlier}” and “{name}”."
                    ),
                    "End the first one early: add the missing minutes to clearing.",
                )
                .at(format!("period[{p}].start"))
                .says("common practice, no source: 4 to 5 minutes"),
            );
        }
    }
    found
}

/// In an address, a dot stands for the place itself and two for the one above (RFC 3986, section
/// 5.2.4), however they are written: no page of such a period could be opened.
fn dotted(plan: &Plan) -> impl Iterator<Item = Finding> + '_ {
    let periods = plan.periods.iter().enumerate();
    periods.filter(|(_, period)| matches!(period.name.as_str(), "." | "..")).map(
        |(p, period)| {
            let message = format!(
                "A period is called “{}”: no page of it can be opened under that name.",
                period.name
            );
            let fix = "Give it a letter or a number, such as “1” or “3B”.";
            Finding::new(Severity::Fault, "dotted-period", message, fix)
                .at(format!("period[{p}].name"))
        },
    )
}

fn past_midnight(plan: &Plan) -> Vec<Finding> {
    let late = plan.periods.iter().enumerate().filter(|(_, period)| ends(period) > DAY_MIN);
    late.map(|(p, period)| {
        let message = format!(
            "Period “{}” starts at {:02}:{:02} and would run past midnight.",
            period.name,
            period.start.hour(),
            period.start.minute()
        );
        let fix = "Mend its start or its length; one in the afternoon is 13:00.";
        Finding::new(Severity::Fault, "past-midnight", message, fix)
            .at(format!("period[{p}].start"))
    })
    .collect()
}

/// Minutes from midnight.
fn starts(period: &Period) -> f64 {
    let start = period.start;
    f64::from(start.hour()) * 60.0
        + f64::from(start.minute())
        + f64::from(start.second()) / 60.0
}

fn ends(period: &Period) -> f64 {
    starts(period) + period.length_min
}
