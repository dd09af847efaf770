//! Periods that are over before a demonstration begins, from a readings file.

use crate::desk::DeskError;
use crate::desk::doors::{bells, key};
use crate::desk::room::Room;
use crate::desk::room::claims::{TypedClaim, hand_in_claim};
use barm_documents::readings;
use barm_domain::code::BagCode;
use barm_domain::plan::{Period, Plan};
use barm_domain::record::{Entry, Subject, What, Who};
use barm_domain::schedule::{Schedule, schedule};
use jiff::{SignedDuration, Timestamp};
use serde::Deserialize;

/// A claim that a group handed in, as a file has it.
#[derive(Deserialize)]
struct Claimed {
    period: String,
    group: u32,
    claim: TypedClaim,
}

/// Hands in what a file says that groups of periods before the named one claimed, three minutes before their bell.
/// Waits for the disk.
pub(crate) fn claimed_before(room: &Room, period: &str, file: &[u8]) -> Result<(), DeskError> {
    let claims: Vec<Claimed> = serde_json::from_slice(file).map_err(|_| DeskError::Stopped)?;
    let plan = room.read(|scene| scene.plan.clone());
    for (one, (_, ends)) in before(&plan, period) {
        let at = ends.checked_sub(SignedDuration::from_mins(3)).unwrap_or(ends);
        for Claimed { group, claim, .. } in claims.iter().filter(|of| of.period == one.name) {
            hand_in_claim(room, &(one.name.clone(), *group), claim.clone(), at)?;
        }
    }
    Ok(())
}

/// The periods before the named one, each with its bells.
fn before<'a>(
    plan: &'a Plan,
    period: &'a str,
) -> impl Iterator<Item = (&'a Period, (Timestamp, Timestamp))> {
    let before = plan.periods.iter().take_while(move |one| one.name != period);
    before.filter_map(|one| Some((one, bells(plan, one)?)))
}

/// Puts on record what a readings file holds for all periods before the named one, as if it had
/// been typed at the benches at its time. Waits for the disk.
pub(crate) fn done_before(room: &Room, period: &str, file: &[u8]) -> Result<(), DeskError> {
    let (plan, version) = room.read(|scene| (scene.plan.clone(), scene.version));
    let read = readings::read(file, &plan);
    for (one, (begins, ends)) in before(&plan, period) {
        let whole = Subject::Period(one.name.clone());
        let mut made = Made { entries: Vec::new() };
        made.note(whole.clone(), What::Began, begins, Who::Teacher)?;
        for bag in plan.bags.iter().filter(|bag| bag.period == one.name) {
            let Ok(code) = bag.code.parse::<BagCode>() else { continue };
            let own = read.readings.iter().filter(|reading| reading.bag == bag.code);
            let heights: Vec<(f64, f64)> =
                own.map(|reading| (reading.minute, reading.height_mm)).collect();
            let rule = read.set_aside.iter().find(|aside| aside.bag == bag.code);
            let rule = rule.map(|aside| aside.rule.clone());
            let of = OneBag { code, group: bag.group, place: bag.place, heights, rule };
            of.on_record(&plan, one, version, (begins, ends), &mut made)?;
        }
        made.note(whole, What::Ended, ends, Who::Teacher)?;
        made.entries.sort_by_key(|entry| entry.measured);
        room.enter_and_wait(&made.entries)?;
    }
    Ok(())
}

struct Made {
    entries: Vec<Entry>,
}

impl Made {
    fn note(
        &mut self,
        subject: Subject,
        what: What,
        measured: Timestamp,
        who: Who,
    ) -> Result<(), DeskError> {
        let key = key(measured)?;
        self.entries.push(Entry { key, subject, what, measured, arrived: measured, who });
        Ok(())
    }
}

struct OneBag {
    code: BagCode,
    group: u32,
    place: u32,
    /// Minute and height (mm), the zero reading at 0.
    heights: Vec<(f64, f64)>,
    rule: Option<String>,
}

impl OneBag {
    fn on_record(
        self,
        plan: &Plan,
        period: &Period,
        version: u32,
        (begins, ends): (Timestamp, Timestamp),
        made: &mut Made,
    ) -> Result<(), DeskError> {
        let schedule = schedule(plan, period, None);
        let after = |from: Timestamp, minutes: f64| {
            let passed = SignedDuration::try_from_secs_f64(60.0 * minutes).unwrap_or_default();
            from.checked_add(passed).unwrap_or(from)
        };
        let start = schedule.start_of(self.group).unwrap_or(0.0);
        let zero_at = after(begins, start + 0.1 * f64::from(self.place));
        let who = match self.group {
            0 => Who::Teacher,
            group => Who::Group { period: period.name.as_str().into(), group },
        };
        let subject = Subject::Bag(self.code);
        let wet = plan.timing.wet_before_zero_min;
        let mut note = |what, at, who: &Who| made.note(subject.clone(), what, at, who.clone());
        note(What::Sealed { plan: version }, after(zero_at, -wet), &who)?;
        for (minute, height_mm) in self.heights {
            let what = if minute <= 0.0 {
                What::Zero { height_mm }
            } else {
                What::Reading { planned: planned(&schedule, minute), height_mm }
            };
            note(what, after(zero_at, minute), &who)?;
        }
        note(What::Vented, after(ends, -4.0 + 0.1 * f64::from(self.place)), &who)?;
        if let Some(rule) = self.rule {
            note(What::SetAside { rule }, after(ends, -1.0), &Who::Teacher)?;
        }
        Ok(())
    }
}

/// The planned minute that a reading is for: the last one that has come.
fn planned(schedule: &Schedule, minute: f64) -> Option<u32> {
    let come = schedule.minutes.iter().filter(|planned| f64::from(**planned) <= minute + 0.5);
    come.max().copied()
}
