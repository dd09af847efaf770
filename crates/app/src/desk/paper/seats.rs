//! The groups for which paper is printed, each with what stands at the head of all of its sheets.

use super::look;
use crate::desk::print::Job;
use barm_documents::sheet::{Head, HeadBag};
use barm_domain::code::BagCode;
use barm_domain::plan::{Inquiry, Period, PlannedBag};
use barm_domain::sheet_code::SheetCode;

/// A group, or the teacher's bench.
pub(super) struct Seat<'a> {
    /// Its period.
    pub(super) period: &'a Period,
    /// Its number within it; 0 for the teacher's bench.
    pub(super) group: u32,
    /// How much is left to it.
    pub(super) inquiry: Inquiry,
    /// What stands at the head of its sheet.
    pub(super) head: Head,
    /// Its bags by bench place, as on its page.
    pub(super) bags: Vec<&'a PlannedBag>,
}

/// Whether the teacher's bench has paper of that kind, where it has bags.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Bench {
    /// It has.
    Too,
    /// It has not.
    Not,
}

/// The groups to print for, in the order of the plan; `name` is the key of what the sheet is called.
pub(super) fn seats<'a>(job: &Job<'a>, name: &str, bench: Bench) -> Vec<Seat<'a>> {
    let groups = job.periods().flat_map(|period| (0..=period.groups).map(move |n| (period, n)));
    let all = groups.map(|(period, group)| seat(job, name, period, group));
    all.filter(|seat| seat.group > 0 || (bench == Bench::Too && !seat.bags.is_empty()))
        .collect()
}

fn seat<'a>(job: &Job<'a>, name: &str, period: &'a Period, group: u32) -> Seat<'a> {
    let plan = job.plan;
    let own = |bag: &&PlannedBag| bag.period == period.name && bag.group == group;
    let mut bags: Vec<&PlannedBag> = plan.bags.iter().filter(own).collect();
    bags.sort_by(|a, b| (a.place, &a.code).cmp(&(b.place, &b.code)));
    let code = SheetCode::of(plan, &period.name, group);
    // The teacher's bench makes what the plan says.
    let planned = match group {
        0 => Inquiry::Structured,
        _ => job.wish.level.unwrap_or_else(|| plan.inquiry_of(period, group)),
    };
    Seat {
        period,
        group,
        inquiry: planned,
        head: Head {
            sheet: code.map(|code| code.to_string()).unwrap_or_default(),
            sign: code.map_or(1, SheetCode::period),
            whose: whose(job, period, group),
            name: job.wish.words.say(name),
        },
        bags,
    }
}

fn whose(job: &Job<'_>, period: &Period, group: u32) -> String {
    let (words, number) = (job.wish.words, group.to_string());
    let named = [("group", number.as_str()), ("period", period.name.as_str())];
    let settings = job.plan.group_settings.iter();
    let mut own = settings.filter(|one| one.period == period.name && one.group == group);
    match own.find_map(|one| one.label.as_deref()) {
        _ if group == 0 => words.say_with("hand-teacher-bench", &[("period", &period.name)]),
        Some(label) => {
            words.say_with("bench-title-named", &[("label", label), named[0], named[1]])
        }
        None => words.say_with("bench-title", &named),
    }
}

impl Seat<'_> {
    /// Its bags in the head of a table.
    pub(super) fn head_bags(&self, job: &Job<'_>) -> Vec<HeadBag> {
        self.bags.iter().map(|bag| head_bag(job, bag)).collect()
    }

    /// Whether it plans itself what goes into its bags.
    pub(super) fn plans(&self) -> bool {
        matches!(self.inquiry, Inquiry::Guided | Inquiry::Open)
    }
}

/// The letter of a bag; one whose code cannot be read has its place for a letter.
pub(super) fn letter(bag: &PlannedBag) -> String {
    let letter = bag.code.parse::<BagCode>().map(|code| code.letter().to_string());
    letter.unwrap_or_else(|_| bag.place.to_string())
}

/// A bag in the head of a table.
pub(super) fn head_bag(job: &Job<'_>, bag: &PlannedBag) -> HeadBag {
    HeadBag {
        code: bag.code.clone(),
        letter: letter(bag),
        look: look(job.plan, &bag.treatment),
    }
}
