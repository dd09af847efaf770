//! A school's roster is looked at first, and of it only the classes are taken that are periods here.

use super::kept::{keep_students, students};
use super::list::plan_periods;
use crate::desk::DeskError;
use crate::desk::room::Room;
use barm_documents::bundle::Refused;
use barm_documents::roster::{Taken, read};
use barm_domain::roster::{Section, Shown};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use std::collections::BTreeSet;

/// What a roster offers. Nothing of it is kept.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Offer {
    /// Its classes: title, code, number of students.
    pub(crate) sections: Vec<(Shown, Option<Shown>, usize)>,
    /// What was passed over, a sentence each.
    pub(crate) passed: Vec<String>,
    /// The day as of which it was read.
    pub(crate) on: Date,
    /// Each period: its name, the class that its name speaks for, and how many students it has now.
    pub(crate) periods: Vec<(String, Option<usize>, usize)>,
}

/// Why nothing was taken of a roster.
#[derive(Debug)]
pub(crate) enum NotTaken {
    /// It is no roster that can be read.
    Refused(Refused),
    /// No class was chosen for any period.
    Nothing,
    /// One class was chosen for two periods.
    Twice(Shown),
    /// A class or a period was chosen that is not there.
    Gone,
}

/// Says what a roster offers. Waits for the disk.
pub(crate) fn look_at_roster(
    room: &Room,
    zip: &[u8],
    now: Timestamp,
) -> Result<Result<Offer, NotTaken>, DeskError> {
    let on = today(room, now);
    let taken = match read(zip, on) {
        Ok(taken) => taken,
        Err(refused) => return Ok(Err(NotTaken::Refused(refused))),
    };
    let kept = students(&room.all_words()?);
    let sections = taken.roster.sections();
    let periods = plan_periods(room).into_iter().map(|(name, _)| {
        let now = kept.get(&name).map_or(0, |one| one.section.students.len());
        let guessed = spoken_for(sections, &name);
        (name, guessed, now)
    });
    let periods = periods.collect();
    let about = |one: &Section| (one.title.clone(), one.code.clone(), one.students.len());
    let (sections, passed) = (sections.iter().map(about).collect(), taken.passed.said());
    Ok(Ok(Offer { sections, passed, on, periods }))
}

/// Keeps the students of the classes that are chosen: for each period of the plan, in its order, the place of a class
/// among those of [`Offer::sections`], or none. All of it or nothing. Gives for how many periods. Waits for the disk.
pub(crate) fn take_roster(
    room: &Room,
    zip: &[u8],
    (on, chosen): (Date, &[Option<usize>]),
    now: Timestamp,
) -> Result<Result<usize, NotTaken>, DeskError> {
    let taken = match read(zip, on) {
        Ok(taken) => taken,
        Err(refused) => return Ok(Err(NotTaken::Refused(refused))),
    };
    Ok(match choice(&taken, &plan_periods(room), chosen) {
        Ok(chosen) => {
            keep_students(room, &chosen, now)?;
            Ok(chosen.len())
        }
        Err(why) => Err(why),
    })
}

fn choice(
    taken: &Taken,
    periods: &[(String, u32)],
    chosen: &[Option<usize>],
) -> Result<Vec<(String, Section)>, NotTaken> {
    if chosen.len() != periods.len() {
        return Err(NotTaken::Gone);
    }
    let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
    for ((period, _), at) in periods.iter().zip(chosen) {
        let Some(at) = *at else { continue };
        let section = taken.roster.sections().get(at).ok_or(NotTaken::Gone)?;
        if !seen.insert(at) {
            return Err(NotTaken::Twice(section.title.clone()));
        }
        all.push((period.clone(), section.clone()));
    }
    if all.is_empty() { Err(NotTaken::Nothing) } else { Ok(all) }
}

/// The day on which it is looked at, by the clock of the school.
pub(super) fn today(room: &Room, now: Timestamp) -> Date {
    let zone = room.read(|scene| scene.plan.days.first().map(|day| day.zone.clone()));
    let zone = zone.and_then(|zone| TimeZone::get(&zone).ok()).unwrap_or(TimeZone::UTC);
    zone.to_datetime(now).date()
}

/// The one class whose code or title ends with the name of the period; none if there are more.
fn spoken_for(sections: &[Section], period: &str) -> Option<usize> {
    let last = |words: &str| {
        let mut parts =
            words.split(|c: char| !c.is_alphanumeric()).filter(|part| !part.is_empty());
        parts.next_back().is_some_and(|last| last.eq_ignore_ascii_case(period))
    };
    let speaks = |one: &Section| {
        last(one.title.words()) || one.code.as_ref().is_some_and(|code| last(code.words()))
    };
    let mut found = sections.iter().enumerate().filter(|(_, one)| speaks(one));
    let (at, _) = found.next()?;
    found.next().is_none().then_some(at)
}

#[cfg(test)]
mod tests {
    use super::spoken_for;
    use barm_domain::roster::{Id, Section, Shown};

    fn section(title: &str, code: &str) -> Section {
        let code = (!code.is_empty()).then(|| Shown::of(code));
        let id = Id::new("c").expect("an id");
        let (title, students) = (Shown::of(title), Vec::new());
        Section { title, id, code, school: None, term: None, students }
    }

    #[test]
    fn a_class_is_offered_for_the_period_that_it_names_and_only_if_no_other_does() {
        let all = [
            section("Science 8, period 1", ""),
            section("Science 8", "SCI8-3"),
            section("Science 8 period 4", ""),
            section("Homeroom 4", ""),
        ];
        assert_eq!(spoken_for(&all, "1"), Some(0));
        assert_eq!(spoken_for(&all, "3"), Some(1));
        assert_eq!(spoken_for(&all, "4"), None, "two classes end so");
        assert_eq!(spoken_for(&all, "11"), None);
        // “Science 8” ends with the grade, which is no period of this plan but could be.
        assert_eq!(spoken_for(&all, ""), None);
    }
}
