//! The lines of the shelf, without replaying what has not changed.
//!
//! What an investigation adds up to is kept beside the record with the place of its last entry and
//! the program that worked it out. A line that is out of date is worked out anew; so nothing is
//! lost if all of them are thrown away. After an update of the program that is every line: a few
//! are worked out while the page waits, and more in the background, so that nobody waits for years
//! of classes.

use super::{Investigation, Shelf};
use crate::desk::DeskError;
use barm_domain::code::BagCode;
use barm_domain::record::{Bag, Standing};
use barm_store::Summary;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::Ordering;

/// What an investigation adds up to for the shelf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct InShort {
    /// The title of its newest plan.
    pub(crate) title: String,
    /// The first school day, such as 2027-03-09.
    pub(crate) day: String,
    /// Bags on its list.
    pub(crate) bags: usize,
    /// Periods of its plan.
    pub(crate) periods: usize,
    /// Periods whose clock was started.
    pub(crate) began: usize,
    /// Periods that were closed.
    pub(crate) ended: usize,
}

/// What a bag adds up to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct BagInShort {
    /// Rise at its last reading (mm).
    pub(crate) end_rise_mm: Option<f64>,
    /// Minute of that reading after its own zero.
    pub(crate) end_min: Option<f64>,
    /// Largest slope between two readings in a row (mm/min).
    pub(crate) slope_mm_per_min: Option<f64>,
    /// Minutes until it had risen by what is readable, between two readings if need be.
    pub(crate) lag_min: Option<f64>,
}

const SHELF: &str = "shelf";
const BAG: &str = "bag";
const PROGRAM: &str = env!("CARGO_PKG_VERSION");

/// So many lines are worked out while a page waits (own rule: a class day is replayed in some
/// hundredths of a second).
const AT_ONCE: usize = 3;

/// A line of the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Line {
    /// What it adds up to.
    Known(InShort),
    /// It is still to be worked out: see [`work_out_rest`].
    BeingCounted,
    /// This program cannot read it.
    Unreadable,
}

impl Line {
    #[cfg(test)]
    const fn known(&self) -> Option<&InShort> {
        match self {
            Self::Known(short) => Some(short),
            Self::BeingCounted | Self::Unreadable => None,
        }
    }
}

/// Every investigation with what it adds up to, in the order in which they were made. Waits for
/// the disk, and for few replays.
pub(crate) fn in_short(
    shelf: &Shelf,
    now: Timestamp,
) -> Result<Vec<(Investigation, Line)>, DeskError> {
    lines(shelf, AT_ONCE, now)
}

/// Works out every line that is out of date, unless somebody is at it. Waits for the disk, and for
/// all replays.
pub(crate) fn work_out_rest(shelf: &Shelf, now: Timestamp) -> Result<(), DeskError> {
    if shelf.counting.swap(true, Ordering::AcqRel) {
        return Ok(());
    }
    let done = lines(shelf, usize::MAX, now);
    shelf.counting.store(false, Ordering::Release);
    done.map(|_| ())
}

fn lines(
    shelf: &Shelf,
    mut at_once: usize,
    now: Timestamp,
) -> Result<Vec<(Investigation, Line)>, DeskError> {
    let last: BTreeMap<i64, i64> = shelf.store.last_places()?.into_iter().collect();
    let kept: BTreeMap<i64, Summary> = shelf.store.summaries(SHELF)?.into_iter().collect();
    let mut all = Vec::new();
    for one in shelf.investigations()? {
        let place = last.get(&one.id).copied().unwrap_or_default();
        let fresh = kept
            .get(&one.id)
            .filter(|kept| kept.last == place && kept.program == PROGRAM)
            .and_then(|kept| serde_json::from_str(&kept.body).ok());
        let line = match fresh {
            Some(short) => Line::Known(short),
            None if at_once == 0 && shelf.open_room(one.id).is_none() => Line::BeingCounted,
            None => {
                at_once = at_once.saturating_sub(1);
                work_out(shelf, &one, place, now).map_or(Line::Unreadable, Line::Known)
            }
        };
        all.push((one, line));
    }
    Ok(all)
}

/// The bags of an investigation in short, worked out anew if they are out of date. Waits for the
/// disk.
#[cfg_attr(not(test), expect(dead_code, reason = "what compares years will ask for it"))]
pub(crate) fn bags_in_short(
    shelf: &Shelf,
    id: i64,
    now: Timestamp,
) -> Result<BTreeMap<String, BagInShort>, DeskError> {
    work_out_rest(shelf, now)?;
    let own = shelf.store.summaries(BAG)?.into_iter().filter(|(of, _)| *of == id);
    Ok(own
        .filter_map(|(_, kept)| Some((kept.subject, serde_json::from_str(&kept.body).ok()?)))
        .collect())
}

impl Shelf {
    /// The place of the last entry of each investigation that has any. Waits for the disk.
    pub(in crate::desk) fn last_places(&self) -> Result<Vec<(i64, i64)>, DeskError> {
        Ok(self.store.last_places()?)
    }

    /// What this very program keeps of a kind, by investigation and place of the last entry in it. Waits for the disk.
    pub(in crate::desk) fn summaries(
        &self,
        kind: &str,
    ) -> Result<BTreeMap<(i64, i64), String>, DeskError> {
        let own = self.store.summaries(kind)?.into_iter();
        let own = own.filter(|(_, kept)| kept.program == PROGRAM);
        Ok(own.map(|(id, kept)| ((id, kept.last), kept.body)).collect())
    }

    /// Keeps what an investigation adds up to; what cannot be kept is worked out again the next time. Waits for the disk.
    pub(in crate::desk) fn keep_summary(&self, id: i64, kind: &str, last: i64, body: String) {
        let summary =
            Summary { subject: String::new(), last, program: PROGRAM.to_owned(), body };
        let _ = self.store.keep_summaries(id, kind, &[summary]);
    }
}

/// Replays one investigation and keeps what it adds up to; it stays open only if it was.
fn work_out(shelf: &Shelf, of: &Investigation, place: i64, now: Timestamp) -> Option<InShort> {
    let room = match shelf.open_room(of.id) {
        Some(room) => room,
        None => Arc::new(shelf.replay(of, now).ok()?),
    };
    let (short, bags) = room.read(|scene| {
        let plan = scene.plan;
        let periods = &scene.standing().periods;
        let short = InShort {
            title: plan.title.clone(),
            day: plan.days.first().map(|day| day.date.to_string()).unwrap_or_default(),
            bags: plan.bags.len(),
            periods: plan.periods.len(),
            began: periods.values().filter(|period| period.began.is_some()).count(),
            ended: periods.values().filter(|period| period.ended.is_some()).count(),
        };
        (short, bags(scene.standing(), plan.readable_mm))
    });
    let row = |subject: String, body: String| Summary {
        subject,
        last: place,
        program: PROGRAM.to_owned(),
        body,
    };
    let bags: Vec<Summary> = bags
        .into_iter()
        .filter_map(|(code, bag)| {
            Some(row(code.to_string(), serde_json::to_string(&bag).ok()?))
        })
        .collect();
    let whole = row(String::new(), serde_json::to_string(&short).ok()?);
    // A list that cannot be kept is worked out again the next time.
    let _ = shelf.store.keep_summaries(of.id, BAG, &bags);
    let _ = shelf.store.keep_summaries(of.id, SHELF, &[whole]);
    Some(short)
}

fn bags(standing: &Standing, readable_mm: f64) -> Vec<(BagCode, BagInShort)> {
    standing.bags.iter().map(|(code, bag)| (*code, bag_in_short(bag, readable_mm))).collect()
}

/// What a bag's readings add up to.
fn bag_in_short(bag: &Bag, readable_mm: f64) -> BagInShort {
    let rises = bag.rises();
    let end = rises.last().filter(|_| rises.len() > 1);
    let pairs = || rises.windows(2).map(|pair| (pair[0], pair[1])).filter(|(a, b)| b.0 > a.0);
    let lag = pairs().find(|(_, b)| b.1 >= readable_mm).map(|(a, b)| {
        let share = if b.1 > a.1 { (readable_mm - a.1) / (b.1 - a.1) } else { 1.0 };
        a.0 + share.clamp(0.0, 1.0) * (b.0 - a.0)
    });
    BagInShort {
        end_rise_mm: end.map(|(_, rise)| *rise),
        end_min: end.map(|(minute, _)| *minute),
        slope_mm_per_min: pairs().map(|(a, b)| (b.1 - a.1) / (b.0 - a.0)).reduce(f64::max),
        lag_min: lag,
    }
}

#[cfg(test)]
mod tests {
    use super::{
        AT_ONCE, BagInShort, Line, bag_in_short, bags_in_short, in_short, work_out_rest,
    };
    use crate::desk::demo;
    use crate::desk::room::kept_words::delete_due;
    use crate::desk::room::{Kind, Shelf};
    use barm_domain::code::BagCode;
    use barm_domain::record::{Bag, Entry, Height, Key, Subject, What, Who};
    use jiff::{SignedDuration, Timestamp};

    fn at(minutes: i64) -> Timestamp {
        let bell: Timestamp = "2027-03-09T15:10:00Z".parse().expect("a time");
        bell + SignedDuration::from_mins(minutes)
    }

    #[test]
    fn a_bag_in_short_is_worked_out_by_hand() {
        let height = |minute, height_mm| Height {
            key: Key(1),
            measured: at(minute),
            planned: None,
            height_mm,
            who: Who::Teacher,
            mended: Vec::new(),
            rival: false,
        };
        let bag = Bag {
            zero: Some(height(0, 4.0)),
            readings: vec![height(4, 5.0), height(8, 9.0), height(12, 10.0)],
            ..Bag::default()
        };
        // It rose 1, 5 and 6 mm; 3 mm lie half way between minutes 4 and 8.
        let short = bag_in_short(&bag, 3.0);
        let expected = BagInShort {
            end_rise_mm: Some(6.0),
            end_min: Some(12.0),
            slope_mm_per_min: Some(1.0),
            lag_min: Some(6.0),
        };
        assert_eq!(short, expected);
        let unread = bag_in_short(&Bag::default(), 3.0);
        assert!(unread.end_rise_mm.is_none() && unread.lag_min.is_none());
    }

    #[test]
    fn the_shelf_replays_nothing_that_has_not_changed() {
        let folder = tempfile::tempdir().expect("a folder");
        // Each is replayed twice below; the quick size has fewer.
        let quick = std::env::var("BARM_TEST_SIZE").as_deref() == Ok("quick");
        let count: u128 = if quick { 20 } else { 200 };
        {
            let shelf = Shelf::open(folder.path(), at(0)).expect("a shelf");
            // One is begun as a teacher would; the others are put straight on record.
            for number in 0..count {
                let made = shelf.store.add_investigation("Invented", Kind::Invented, at(0));
                let id = made.expect("kept").id;
                shelf.store.save_plan(id, demo::plan(), at(0)).expect("kept");
                let key = Key::new(1, number);
                let (subject, what) = (Subject::Investigation, What::PlanSaved { version: 1 });
                let entry = Entry {
                    key,
                    subject,
                    what,
                    measured: at(0),
                    arrived: at(0),
                    who: Who::Teacher,
                };
                shelf.store.append(id, [entry]).expect("kept");
            }
            // As after an update of the program, nothing is known: the page waits for few lines.
            let counted =
                |all: &[(_, Line)]| all.iter().filter(|(_, l)| l.known().is_some()).count();
            let all = in_short(&shelf, at(1)).expect("a list");
            assert!(all.len() as u128 == count && counted(&all) == AT_ONCE);
            assert_eq!(shelf.replays(), AT_ONCE);
            assert_eq!(all.last().expect("lines").1, Line::BeingCounted);
            work_out_rest(&shelf, at(1)).expect("counted");
            let all = in_short(&shelf, at(1)).expect("a list");
            assert_eq!(counted(&all) as u128, count);
            assert_eq!(shelf.replays() as u128, count, "each once");
            assert_eq!(shelf.rooms_open(), 0, "nothing stays in memory for a list");
        }
        let shelf = Shelf::open(folder.path(), at(2)).expect("a shelf");
        delete_due(&shelf, at(2)).expect("looked");
        assert_eq!(shelf.replays(), 0, "nothing is replayed at the start");
        let before = shelf.replays();
        let all = in_short(&shelf, at(2)).expect("a list");
        assert!(all.len() >= 20);
        assert_eq!(shelf.replays() - before, 0);
        // One class begins: one line is worked out anew.
        let room = shelf.room(7, at(3)).expect("a room");
        let code: BagCode = room.read(|scene| scene.plan.bags[0].code.parse()).expect("a code");
        let enter = |number, minute, subject, what| {
            let (key, when) = (Key::new(2, number), at(minute));
            let who = Who::Teacher;
            room.enter_and_wait(&[Entry {
                key,
                subject,
                what,
                measured: when,
                arrived: when,
                who,
            }])
            .expect("on disk");
        };
        enter(1, 0, Subject::Period("1".into()), What::Began);
        enter(2, 14, Subject::Bag(code), What::Zero { height_mm: 4.0 });
        let reading = What::Reading { planned: Some(4), height_mm: 9.0 };
        enter(3, 18, Subject::Bag(code), reading);
        let before = shelf.replays();
        let all = in_short(&shelf, at(20)).expect("a list");
        assert_eq!(shelf.replays() - before, 0, "it is open already");
        let began: Vec<usize> =
            all.iter().filter_map(|(_, line)| Some(line.known()?.began)).collect();
        assert_eq!(began.iter().sum::<usize>(), 1);
        let bags = bags_in_short(&shelf, 7, at(20)).expect("its bags");
        assert_eq!(bags[&code.to_string()].end_rise_mm, Some(5.0));
        // Thrown away, they come back as they were.
        shelf.store.drop_summaries().expect("gone");
        work_out_rest(&shelf, at(21)).expect("counted");
        assert_eq!(in_short(&shelf, at(21)).expect("a list"), all);
        assert_eq!(bags_in_short(&shelf, 7, at(21)).expect("its bags"), bags);
    }
}
