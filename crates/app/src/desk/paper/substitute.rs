//! Two pages for a substitute: the same class with fewer hazards.

use super::clock::{at_minute, minute};
use super::teacher_imprint;
use crate::desk::DeskError;
use crate::desk::print::Job;
use barm_documents::sheet::{
    self, Entry, Stretch, SubstituteHour, SubstitutePack, SubstituteStep,
};
use barm_domain::check::not_by_a_substitute;
use barm_domain::plan::{Period, Plan};
use barm_domain::schedule::{PhaseKind, Schedule, schedule};

/// Periods that fit in the table.
const MOST_HOURS: usize = 7;

/// The pack as a PDF of two pages.
pub(crate) fn substitute_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let plan = job.plan;
    let periods: Vec<&Period> = job.periods().collect();
    let hour = periods.first().map(|first| (*first, schedule(plan, first, None)));
    let more = periods.len().saturating_sub(MOST_HOURS);
    let pack = SubstitutePack {
        imprint: teacher_imprint(job, "SUBSTITUTE"),
        about: if plan.big_question.is_empty() { &plan.title } else { &plan.big_question }
            .clone(),
        hours: periods.iter().take(MOST_HOURS).map(|period| clock_of(plan, period)).collect(),
        more_hours: if more == 0 {
            String::new()
        } else {
            format!("And {more} more periods: the same minutes after their own bell.")
        },
        stretches: hour.as_ref().map_or_else(Vec::new, |(_, hour)| stretches(hour)),
        length: hour.as_ref().map_or(0.0, |(period, _)| period.length_min),
        steps: hour.as_ref().map_or_else(Vec::new, |(period, hour)| steps(plan, period, hour)),
        never: never(),
        left_out: left_out(plan),
        ready: ready(plan),
        trouble: trouble(),
        ask: ASK.map(str::to_owned).to_vec(),
    };
    Ok(sheet::substitute_pdf(&pack, job.wish.size.into())?)
}

/// Minutes that matter in a period, counted from its bell.
struct Marks {
    water: f64,
    last_zero: f64,
    last_read: f64,
    open: f64,
}

fn marks(plan: &Plan, period: &Period, hour: &Schedule) -> Marks {
    let starts = || hour.starts.iter().map(|(_, at)| *at);
    let first = starts().reduce(f64::min).unwrap_or(plan.timing.mixing_min);
    Marks {
        water: (first - plan.timing.wet_before_zero_min).max(0.0),
        last_zero: starts().reduce(f64::max).unwrap_or(first),
        last_read: first + f64::from(hour.last),
        open: hour.clearing_min().min(period.length_min),
    }
}

fn clock_of(plan: &Plan, period: &Period) -> SubstituteHour {
    let marks = marks(plan, period, &schedule(plan, period, None));
    let bags = plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let minutes =
        [0.0, marks.water, marks.last_zero, marks.last_read, marks.open, period.length_min];
    SubstituteHour {
        period: period.name.clone(),
        count: format!("{}, {bags}", period.groups),
        times: minutes.map(|minute| at_minute(period.start, minute)),
    }
}

fn stretches(hour: &Schedule) -> Vec<Stretch> {
    let says = |kind| match kind {
        PhaseKind::SetUp => "mix and seal",
        PhaseKind::Read => "read",
        PhaseKind::Vent => "open",
        PhaseKind::Clean => "clean",
    };
    let long = hour.phases.iter().filter(|phase| phase.to_min > phase.from_min);
    long.map(|phase| Stretch {
        says: says(phase.kind).to_owned(),
        from: phase.from_min,
        to: phase.to_min,
    })
    .collect()
}

fn steps(plan: &Plan, period: &Period, hour: &Schedule) -> Vec<SubstituteStep> {
    let marks = marks(plan, period, hour);
    let all = [
        (0.0, "Goggles on. Roles from the sheet. Read “Not today” aloud.", "you"),
        (
            3.0,
            "Labels on bags. Yeast and food in, as the tray list says. Shake ready-made \
               solutions, then measure.",
            "groups",
        ),
        (
            marks.water - 1.0,
            "Thermometer into the jug: 38 to 43 °C (100 to 109 °F)? Warmer: wait. \
                             Cooler: go on all the same.",
            "you",
        ),
        (
            marks.water,
            "Water in, air out, zip shut, card on. One group after the other, half a \
                       minute apart.",
            "groups",
        ),
        (
            marks.water + plan.timing.wet_before_zero_min,
            "First height is the zero reading. Then \
                       at the times on each sheet, at eye level, without touching.",
            "groups",
        ),
        (
            marks.open,
            "Bags that have their last reading are opened over the tub, away from faces.",
            "groups",
        ),
        (
            (period.length_min - plan.timing.clearing_min / 2.0).max(marks.open),
            "Empty, wipe, \
                       count bags back, wash hands with soap.",
            "all",
        ),
        (period.length_min, "Sheets into the folder of the period.", "you"),
    ];
    let step = |(at, what, who): (f64, &str, &str)| SubstituteStep {
        minute: minute(at.max(0.0)),
        what: what.to_owned(),
        who: who.to_owned(),
    };
    all.into_iter().map(step).collect()
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
