//! Two pages for a substitute: the same class with fewer hazards.

use super::clock::{Hours, minute};
use super::hour::Hour;
use super::teacher_imprint;
use crate::desk::DeskError;
use crate::desk::print::Job;
use barm_documents::sheet::{self, Entry, SubstituteHour, SubstitutePack, SubstituteStep};
use barm_domain::check::not_by_a_substitute;
use barm_domain::plan::{Period, Plan};
use barm_domain::schedule::schedule;

/// Periods that fit in the table.
const MOST_HOURS: usize = 7;

/// The pack as a PDF of two pages.
pub(crate) fn substitute_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let plan = job.plan;
    let periods: Vec<&Period> = job.periods().collect();
    let hours = Hours::from(job.wish.size);
    let first = periods.first().map(|first| (*first, hour(plan, first)));
    let more = periods.len().saturating_sub(MOST_HOURS);
    let pack = SubstitutePack {
        imprint: teacher_imprint(job, "SUBSTITUTE"),
        title: plan.title.clone(),
        about: if plan.big_question.is_empty() { &plan.title } else { &plan.big_question }
            .clone(),
        hours: periods
            .iter()
            .take(MOST_HOURS)
            .map(|period| clock_of(plan, period, hours))
            .collect(),
        more_hours: if more == 0 {
            String::new()
        } else {
            format!("And {more} more periods: the same minutes after their own bell.")
        },
        stretches: first.map_or_else(Vec::new, |(_, hour)| hour.stretches()),
        length: first.map_or(0.0, |(period, _)| period.length_min),
        steps: first.map_or_else(Vec::new, |(_, hour)| steps(plan, hour)),
        never: never(),
        left_out: left_out(plan),
        ready: ready(plan),
        trouble: trouble(),
        ask: ASK.map(str::to_owned).to_vec(),
    };
    Ok(sheet::substitute_pdf(&pack, job.wish.size.into())?)
}

fn hour(plan: &Plan, period: &Period) -> Hour {
    Hour::of(plan, period, &schedule(plan, period, None))
}

/// The columns stand in the order of time for those who still read when the first bags are opened.
fn clock_of(plan: &Plan, period: &Period, hours: Hours) -> SubstituteHour {
    let hour = hour(plan, period);
    let bags = plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let minutes = [0.0, hour.water, hour.last_zero, hour.open, hour.last_read, hour.bell];
    SubstituteHour {
        period: period.name.clone(),
        count: format!("{}, {bags}", period.groups),
        times: minutes.map(|minute| hours.at_minute(period.start, minute)),
    }
}

fn steps(plan: &Plan, hour: Hour) -> Vec<SubstituteStep> {
    let open = if hour.last_read > hour.bell {
        "A group opens its bags over the tub, away from faces, once all of them have their last \
         reading. In time before the bell everybody opens, read or not: the last groups do not get \
         to their last reading."
            .to_owned()
    } else if hour.last_read > hour.open {
        format!(
            "A group opens its bags over the tub, away from faces, once all of them have their \
             last reading, and no earlier: the last group reads at minute {}.",
            minute(hour.last_read)
        )
    } else {
        "All bags have their last reading now: open them over the tub, away from faces."
            .to_owned()
    };
    let all = [
        (
            0.0,
            "Goggles on. Each group: who mixes, who reads, who writes? Read “Not today” aloud."
                .to_owned(),
            "you",
        ),
        (
            3.0_f64.min(hour.water),
            "Labels on bags. Yeast and food in, as the tray list says. Shake ready-made \
             solutions, then measure."
                .to_owned(),
            "groups",
        ),
        (
            hour.water - 1.0,
            "Thermometer into the jug: 38 to 43 °C (100 to 109 °F)? Warmer: wait. Cooler: go on \
             all the same."
                .to_owned(),
            "you",
        ),
        (
            hour.water,
            format!("Water in, air out, zip shut, card on. {}", order(hour)),
            "groups",
        ),
        (
            hour.water + plan.timing.wet_before_zero_min,
            "First height is the zero reading. Then at the times on each sheet, at eye level, \
             without touching."
                .to_owned(),
            "groups",
        ),
        (hour.open, open, "groups"),
        (hour.clean, "Empty, wipe, count bags back, wash hands with soap.".to_owned(), "all"),
        (hour.bell, "Sheets into the folder of the period.".to_owned(), "you"),
    ];
    let step = |(at, what, who): (f64, String, &str)| SubstituteStep {
        minute: minute(at.max(0.0)),
        what,
        who: who.to_owned(),
    };
    all.into_iter().map(step).collect()
}

/// How groups follow one another.
fn order(hour: Hour) -> String {
    match (hour.waves, hour.at_once) {
        (0 | 1, _) => "All groups at once.".to_owned(),
        (_, 0 | 1) => "One group after the other, half a minute apart.".to_owned(),
        (_, most) => {
            format!("{most} groups at a time, half a minute apart, as the sheets say.")
        }
    }
}

/// The reduced-hazard variant: what is left out whatever the plan says.
fn never() -> Vec<String> {
    [
        "No enzyme powder, no tablet: only solutions that the teacher made and labeled.",
        "No kettle, no hot tap: no water above 43 °C (109 °F) in anybody’s hands.",
        "No breath meter.",
        "No tasting, eating, drinking or sniffing. No flame.",
        "No bag sealed past the bell, none taken home.",
        "No group works without goggles, and none alone.",
    ]
    .map(str::to_owned)
    .to_vec()
}

fn left_out(plan: &Plan) -> String {
    let names = not_by_a_substitute(plan);
    if names.is_empty() {
        "Every bag of the plan can be made so, as long as its solution stands ready.".to_owned()
    } else {
        format!("Not made today, whatever its label says: {}.", names.join(", "))
    }
}

fn ready(plan: &Plan) -> Vec<String> {
    let enzyme = plan.treatments().any(|(_, one)| plan.recipe(one).enzyme.is_some());
    let mut list = vec![
        "A tray for each group, bags labeled, food and yeast measured out".to_owned(),
        "Sheets, one for each group; bench cards; rulers".to_owned(),
        "Goggles for everybody, you too".to_owned(),
        "A lidded jug of warm water and a thermometer without glass".to_owned(),
        "A tub for emptying, towels, soap, a bin with a lid".to_owned(),
    ];
    if enzyme {
        list.insert(
            2,
            "Bottles with ready solutions, each with today’s date and a use-by time".to_owned(),
        );
    }
    list
}

fn trouble() -> Vec<Entry> {
    [
        ("Eyes", "To the eyewash at once, 15 minutes of water, lids held open. Send somebody to the office."),
        ("Breathing", "Cough, wheeze, rash, swelling: out into fresh air, call the nurse; if it is hard to breathe, call emergency."),
        ("Tight bag", "Goggles on, face away, open the zip over the tub. Do not poke it."),
        ("Leak, spill", "Wipe wet, dry the floor. Write “leak” on the sheet. No new bag."),
        ("Nothing rises", "Some bags never do: they are meant to. All of them? Read on all the same."),
        ("Too much", "Stop. Open all bags, clear away, sit down with the sheets. That is a good lesson, too."),
    ]
    .map(|(head, says)| Entry { head: head.to_owned(), says: says.to_owned() })
    .to_vec()
}

const ASK: [&str; 6] = [
    "Nurse",
    "Office",
    "Custodian (spill, bin)",
    "Science teacher next door",
    "Eyewash, first aid: where",
    "Where the key and trays are",
];
