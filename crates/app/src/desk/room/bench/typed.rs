//! What a group has typed, made into entries. A group writes about itself and its own bags only.

use super::view::is_own;
use crate::desk::DeskError;
use crate::desk::room::{Said, Scene, Shelf, on_our_clock};
use barm_domain::code::BagCode;
use barm_domain::record::{Entry, Key, Made, Odd, Subject, What, Who, WordsKey};
use jiff::Timestamp;

/// The most that a ruler at a bench shows (mm), and that any bag lifts a card.
const TALLEST_MM: f64 = 250.0;
/// Water is no colder and no warmer than this (°C).
const WATER_CELSIUS: std::ops::RangeInclusive<f64> = 0.0..=100.0;
/// No period is longer (min).
const LONGEST_MIN: u32 = 24 * 60;
/// The longest reason for a guess (characters).
const LONGEST_REASON: usize = 500;

/// An entry as a page sends it; nothing of it is believed yet.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Typed {
    /// Key, made where it was typed.
    pub(crate) key: String,
    /// Code of the bag; nothing for the group.
    pub(crate) bag: Option<String>,
    /// What happened, in one word.
    pub(crate) what: String,
    /// The device's clock (ms since 1970).
    pub(crate) at: i64,
    /// How far this program's clock was ahead of it (ms).
    pub(crate) offset: i64,
    /// A height (mm).
    pub(crate) mm: Option<f64>,
    /// The planned minute it is for.
    pub(crate) planned: Option<u32>,
    /// The height that it corrects.
    pub(crate) of: Option<String>,
    /// What is odd.
    pub(crate) odd: Option<String>,
    /// How warm the water was at pouring (°C).
    pub(crate) celsius: Option<f64>,
    /// Version of the plan.
    pub(crate) plan: Option<u32>,
    /// What is expected of each bag (mm).
    pub(crate) expects: Option<Vec<(String, f64)>>,
    /// Why.
    pub(crate) because: Option<String>,
    /// Key of that reason.
    pub(crate) words: Option<String>,
}

/// What becomes of what was typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Taken {
    /// To be put on record.
    pub(crate) entries: Vec<Entry>,
    /// On record already.
    pub(crate) known: Vec<Key>,
    /// Reasons to be kept apart from the record.
    pub(crate) reasons: Vec<(WordsKey, String)>,
    /// Keys, as they were sent, of what cannot be put on record for this group.
    pub(crate) refused: Vec<String>,
}

/// Sorts what a group sent.
pub(crate) fn take(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
    sent: &[Typed],
    now: Timestamp,
) -> Taken {
    let mut taken = Taken::default();
    for typed in sent {
        let Some((entry, reason)) = entry(scene, period, group, typed, now) else {
            taken.refused.push(typed.key.clone());
            continue;
        };
        if scene.ledger.knows(entry.key) {
            let there = scene.ledger.entries_of(&entry.subject);
            let same = |there: &Entry| {
                there.key == entry.key && there.what == entry.what && there.who == entry.who
            };
            if there.iter().any(same) {
                taken.known.push(entry.key);
            } else {
                taken.refused.push(typed.key.clone());
            }
            continue;
        }
        // Twice in one sending is once.
        if taken.entries.iter().all(|other| other.key != entry.key) {
            taken.reasons.extend(reason);
            taken.entries.push(entry);
        }
    }
    taken
}

/// Keeps reasons apart from the record. Waits for the disk.
pub(crate) fn keep_reasons(
    shelf: &Shelf,
    investigation: i64,
    reasons: &[(WordsKey, String)],
) -> Result<(), DeskError> {
    for (key, text) in reasons {
        shelf.keep_words(investigation, *key, "reason", text)?;
    }
    Ok(())
}

type Reason = (WordsKey, String);

fn entry(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
    typed: &Typed,
    now: Timestamp,
) -> Option<(Entry, Option<Reason>)> {
    let own = |written: &str| {
        let code = written.parse::<BagCode>().ok()?;
        is_own(scene, code, period, group).then_some(code)
    };
    let (what, reason) = what(scene, typed, own)?;
    let subject = match (&typed.bag, &what) {
        (None, What::Guess { .. }) => Subject::Group { period: period.to_owned(), group },
        (Some(_), What::Guess { .. }) | (None, _) => return None,
        (Some(bag), _) => Subject::Bag(own(bag)?),
    };
    let at = Timestamp::from_millisecond(typed.at).ok()?;
    let measured = on_our_clock(Said { at, offset_ms: typed.offset }, now);
    if matches!(what, What::OddBack { .. }) && is_over(scene, period, measured) {
        return None;
    }
    let entry = Entry {
        key: typed.key.parse().ok()?,
        subject,
        what,
        measured,
        arrived: now,
        who: Who::Group { period: period.into(), group },
    };
    Some((entry, reason))
}

/// After its period a group takes nothing back any more.
fn is_over(scene: &Scene<'_>, period: &str, at: Timestamp) -> bool {
    let day = scene.standing().periods.get(period);
    day.and_then(|day| day.ended).is_some_and(|ended| at > ended)
}

fn what(
    scene: &Scene<'_>,
    typed: &Typed,
    own: impl Fn(&str) -> Option<BagCode>,
) -> Option<(What, Option<Reason>)> {
    let height = |mm: f64| (0.0..=TALLEST_MM).contains(&mm).then_some(mm);
    let height_mm = || typed.mm.and_then(height);
    let what = match typed.what.as_str() {
        "sealed" => {
            let plan = typed.plan.filter(|version| (1..=scene.version).contains(version))?;
            What::Sealed { plan }
        }
        "zero" => What::Zero { height_mm: height_mm()? },
        "reading" => {
            let planned = typed.planned;
            if planned.is_some_and(|minute| minute > LONGEST_MIN) {
                return None;
            }
            What::Reading { planned, height_mm: height_mm()? }
        }
        "correction" => {
            What::Correction { of: typed.of.as_deref()?.parse().ok()?, height_mm: height_mm()? }
        }
        "odd" => {
            let word = typed.odd.as_deref()?;
            What::Odd(Odd::ALL.into_iter().find(|odd| odd.word() == word)?)
        }
        "odd-back" => What::OddBack { of: typed.of.as_deref()?.parse().ok()? },
        "made" => {
            let celsius = typed.celsius.filter(|celsius| WATER_CELSIUS.contains(celsius))?;
            What::Made(Made { water_celsius: Some(celsius), difference: None })
        }
        "vented" => What::Vented,
        "guess" => return guess(typed, own, height),
        _ => return None,
    };
    Some((what, None))
}

fn guess(
    typed: &Typed,
    own: impl Fn(&str) -> Option<BagCode>,
    height: impl Fn(f64) -> Option<f64>,
) -> Option<(What, Option<Reason>)> {
    let sent = typed.expects.as_ref()?;
    let expects = sent.iter().map(|(code, mm)| Some((own(code)?, height(*mm)?)));
    let expects = expects.collect::<Option<Vec<_>>>()?;
    let key: Option<WordsKey> = typed.words.as_deref().and_then(|key| key.parse().ok());
    let text: String = typed
        .because
        .as_deref()
        .map(str::trim)
        .unwrap_or_default()
        .chars()
        .filter(|c| !c.is_control() || *c == '\n')
        .take(LONGEST_REASON)
        .collect();
    let reason = key.filter(|_| !text.is_empty()).map(|key| (key, text));
    let because = reason.as_ref().map(|(key, _)| *key);
    Some((What::Guess { expects, because }, reason))
}
