//! What was done last, in a plain line, with the way back.

use crate::desk::room::Scene;
use crate::desk::room::benches::{group_name, millimeters, name};
use barm_domain::code::BagCode;
use barm_domain::plan::Period;
use barm_domain::record::{Entry, Face, Key, Ledger, Subject, What};
use jiff::Timestamp;

/// The way back is offered so long.
const OFFERED_S: f64 = 10.0;

/// What was done last.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Done {
    /// In a plain line.
    pub(crate) says: String,
    /// What takes it back, as another entry; nothing where nothing can.
    pub(crate) back: Option<String>,
    /// Until when that is offered.
    pub(crate) until: Timestamp,
}

/// The entry with this key, if it was made in the last seconds.
pub(super) fn done(
    scene: &Scene<'_>,
    period: &Period,
    key: Key,
    now: Timestamp,
) -> Option<Done> {
    let entry = find(scene, period, key)?;
    let until = entry.arrived.checked_add(jiff::SignedDuration::from_secs(10)).ok()?;
    if now.duration_since(entry.arrived).as_secs_f64() > OFFERED_S {
        return None;
    }
    let refused = scene.ledger.standing().refused.iter().find(|(of, _)| *of == key);
    if let Some((_, reason)) = refused {
        let says = format!("Written down, but it does not count: {reason}.");
        return Some(Done { says, back: None, until });
    }
    let (says, back) = told(scene.ledger, entry);
    Some(Done { says, back, until })
}

fn find<'a>(scene: &Scene<'a>, period: &Period, key: Key) -> Option<&'a Entry> {
    let bags = scene.plan.bags.iter().filter(|bag| bag.period == period.name);
    let bags = bags.filter_map(|bag| bag.code.parse().ok().map(Subject::Bag));
    let groups =
        (0..=period.groups).map(|group| Subject::Group { period: period.name.clone(), group });
    let others = [Subject::Period(period.name.clone()), Subject::Investigation];
    let mut subjects = bags.chain(groups).chain(others);
    subjects.find_map(|subject| {
        scene.ledger.entries_of(&subject).iter().find(|entry| entry.key == key)
    })
}

/// The line and what takes it back.
fn told(ledger: &Ledger, entry: &Entry) -> (String, Option<String>) {
    match &entry.subject {
        Subject::Bag(code) => of_bag(ledger, *code, entry),
        Subject::Group { group, .. } => match &entry.what {
            What::Here { students } => {
                let before = before(ledger, entry, |what| match what {
                    What::Here { students } => Some(*students),
                    _ => None,
                });
                let group = group_name(*group);
                let back = before.map(|before| format!("here {group} {before}"));
                (format!("Group {group}: {students} here."), back)
            }
            What::StandIn => {
                (format!("Group {} stands in from now on.", group_name(*group)), None)
            }
            _ => ("Noted.".to_owned(), None),
        },
        Subject::Period(_) => of_period(ledger, entry),
        Subject::Investigation => {
            let (face, verb, back) = match &entry.what {
                What::Opened { face, .. } => (face, "Opened", "close"),
                What::Closed { face, .. } => (face, "Closed", "open"),
                _ => return ("Noted.".to_owned(), None),
            };
            let to = match &entry.what {
                What::Opened { to, .. } | What::Closed { to, .. } => match to {
                    barm_domain::record::Audience::Wall { .. } => "wall".to_owned(),
                    barm_domain::record::Audience::Groups { .. } => "groups".to_owned(),
                    barm_domain::record::Audience::Group { group, .. } => group.to_string(),
                },
                _ => return ("Noted.".to_owned(), None),
            };
            let what = match face {
                Face::PeriodCurves => "this period's curves",
                Face::DayCurves => "all periods' curves",
                Face::Results => "the results",
                Face::Forecast => "the forecast",
                Face::Background => "the background",
                Face::Marks => "the marks",
            };
            (format!("{verb}: {what}."), Some(format!("{back} {} {to}", face.word())))
        }
    }
}

fn of_period(ledger: &Ledger, entry: &Entry) -> (String, Option<String>) {
    let (says, back) = match &entry.what {
        What::Began => ("The clock runs.".to_owned(), Some("not-begun".to_owned())),
        What::TakenBack => ("The clock has not started.".to_owned(), Some("begin".to_owned())),
        What::Stopped => ("All clocks stand still.".to_owned(), Some("go-on".to_owned())),
        What::WentOn => ("The clocks go on.".to_owned(), Some("stop".to_owned())),
        What::Ended => ("The period is over.".to_owned(), Some("go-on".to_owned())),
        What::LastReading { minute } => {
            let before = before(ledger, entry, |what| match what {
                What::LastReading { minute } => Some(*minute),
                _ => None,
            });
            let back = before.map(|before| format!("last {before}"));
            (format!("The last reading is at {minute} minutes."), back)
        }
        What::Jug { celsius, jug } => (format!("Jug {jug}: {celsius:.1} °C noted."), None),
        _ => ("Noted.".to_owned(), None),
    };
    (says, back)
}

fn of_bag(ledger: &Ledger, code: BagCode, entry: &Entry) -> (String, Option<String>) {
    let bag = name(code);
    let mm = |mm: f64| millimeters(mm);
    match &entry.what {
        What::Sealed { .. } | What::Zero { .. } => {
            let zero = ledger.standing().bags.get(&code).and_then(|bag| bag.zero.as_ref());
            let height =
                zero.map_or_else(String::new, |zero| format!(" {} mm", mm(zero.height_mm)));
            (format!("{bag}: zero reading{height}. Its clock runs."), None)
        }
        What::Reading { planned, height_mm } => {
            let minute = planned.map_or_else(String::new, |m| format!(" at {m} minutes"));
            (format!("{bag}: {} mm{minute} written.", mm(*height_mm)), None)
        }
        What::Correction { of, height_mm } => {
            let heights =
                ledger.standing().bags.get(&code).into_iter().flat_map(|bag| {
                    bag.readings.iter().chain(&bag.zero).chain(&bag.other_zeros)
                });
            let mut mended = heights.flat_map(|height| &height.mended);
            let was = mended.find(|mended| mended.by == entry.key).map(|m| m.height_mm);
            let back = was.map(|was| format!("correct {code} {of} {was}"));
            match was {
                Some(was) if (was - height_mm).abs() < 1e-9 => {
                    (format!("{bag}: {} mm is right as it is.", mm(was)), None)
                }
                Some(was) => {
                    (format!("{bag}: {} mm in place of {}.", mm(*height_mm), mm(was)), back)
                }
                None => (format!("{bag}: {} mm.", mm(*height_mm)), None),
            }
        }
        What::Meter { percent, .. } => (format!("{bag}: meter {percent} noted."), None),
        What::Odd(odd) => (format!("{bag}: {} noted.", odd.word().replace('-', " ")), None),
        What::SetRight(_) => (format!("{bag} is set right."), None),
        What::SetAside { rule } => {
            (format!("{bag} is set aside by “{rule}”."), Some(format!("take-back {code}")))
        }
        What::TakenBack => (format!("{bag} counts again."), None),
        What::Vented => (format!("{bag} is vented."), None),
        What::Lost => (format!("{bag} is lost."), Some(format!("take-back {code}"))),
        _ => (format!("{bag}: noted."), None),
    }
}

/// The newest before an entry of its kind about the same thing.
fn before<T>(ledger: &Ledger, entry: &Entry, pick: impl Fn(&What) -> Option<T>) -> Option<T> {
    let entries = ledger.entries_of(&entry.subject).iter();
    let earlier =
        entries.filter(|other| (other.measured, other.key) < (entry.measured, entry.key));
    earlier.filter_map(|other| pick(&other.what)).last()
}
