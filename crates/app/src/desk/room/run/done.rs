//! What was done last, in a plain line, with the way back.

use super::odd_word;
use super::water::hard_to_believe;
use crate::desk::room::Scene;
use crate::desk::room::benches::{group_name, millimeters, name};
use crate::desk::{Wording, say};
use barm_domain::code::BagCode;
use barm_domain::plan::Period;
use barm_domain::record::{Entry, Face, Key, Ledger, Lent, Subject, What};
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
    w: Wording,
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
        let says = say!(w, "done-refused", reason = reason.to_string());
        return Some(Done { says, back: None, until });
    }
    let (mut says, back) = told(w, scene.ledger, entry);
    if let Some(asks) = hard_to_believe(scene, w, entry) {
        says = format!("{says} {asks}");
    }
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
fn told(w: Wording, ledger: &Ledger, entry: &Entry) -> (String, Option<String>) {
    match &entry.subject {
        Subject::Bag(code) => of_bag(w, ledger, *code, entry),
        Subject::Group { group, .. } => match &entry.what {
            What::Here { students } => {
                let before = before(ledger, entry, |what| match what {
                    What::Here { students } => Some(*students),
                    _ => None,
                });
                let group = group_name(*group);
                let back = before.map(|before| format!("here {group} {before}"));
                (say!(w, "done-here", group = group, count = *students), back)
            }
            What::StandIn(lent) => {
                let name = group_name(*group);
                let says = match lent {
                    Lent::ClassData => say!(w, "done-class-data", group = name),
                    Lent::Simulated { .. } => say!(w, "done-simulated", group = name),
                };
                (says, Some(format!("own-numbers {group}")))
            }
            What::TakenBack => {
                let lent = before(ledger, entry, |what| match what {
                    What::StandIn(lent) => Some(*lent),
                    _ => None,
                });
                let back = lent.map(|lent| match lent {
                    Lent::ClassData => format!("lend-class {group}"),
                    Lent::Simulated { seed, plan } => {
                        format!("lend-run {group} {seed} {plan}")
                    }
                });
                (say!(w, "done-own-numbers", group = group_name(*group)), back)
            }
            _ => (say!(w, "done-noted"), None),
        },
        Subject::Period(_) => of_period(w, ledger, entry),
        Subject::Investigation => {
            let (face, back) = match &entry.what {
                What::Opened { face, .. } => (face, "close"),
                What::Closed { face, .. } => (face, "open"),
                _ => return (say!(w, "done-noted"), None),
            };
            let to = match &entry.what {
                What::Opened { to, .. } | What::Closed { to, .. } => match to {
                    barm_domain::record::Audience::Wall { .. } => "wall".to_owned(),
                    barm_domain::record::Audience::Groups { .. } => "groups".to_owned(),
                    barm_domain::record::Audience::Group { group, .. } => group.to_string(),
                },
                _ => return (say!(w, "done-noted"), None),
            };
            let what = match face {
                Face::PeriodCurves => say!(w, "face-period-curves"),
                Face::DayCurves => say!(w, "face-day-curves"),
                Face::Results => say!(w, "face-results"),
                Face::Forecast => say!(w, "face-forecast"),
                Face::Background => say!(w, "face-background"),
                Face::Marks => say!(w, "face-marks"),
            };
            let says = if back == "close" {
                say!(w, "done-opened", what = what)
            } else {
                say!(w, "done-closed", what = what)
            };
            (says, Some(format!("{back} {} {to}", face.word())))
        }
    }
}

fn of_period(w: Wording, ledger: &Ledger, entry: &Entry) -> (String, Option<String>) {
    let (says, back) = match &entry.what {
        What::Began => (say!(w, "done-began"), Some("not-begun".to_owned())),
        What::TakenBack => (say!(w, "done-not-begun"), Some("begin".to_owned())),
        What::Stopped => (say!(w, "done-stopped"), Some("go-on".to_owned())),
        What::WentOn => (say!(w, "done-went-on"), Some("stop".to_owned())),
        What::Ended => (say!(w, "done-ended"), Some("go-on".to_owned())),
        What::LastReading { minute } => {
            let before = before(ledger, entry, |what| match what {
                What::LastReading { minute } => Some(*minute),
                _ => None,
            });
            let back = before.map(|before| format!("last {before}"));
            (say!(w, "done-last", minute = minute.to_string()), back)
        }
        What::Jug { celsius, jug } => {
            let (jug, celsius) = (jug.to_string(), format!("{celsius:.1}"));
            (say!(w, "done-jug", jug = jug, celsius = celsius), None)
        }
        What::Blank { turn, percent } => {
            let before = before(ledger, entry, |what| match what {
                What::Blank { turn: of, percent } if of == turn => Some(*percent),
                _ => None,
            });
            let written = |percent: Option<f64>| {
                percent.map_or_else(String::new, |percent| format!("{percent}"))
            };
            let back = before.map(|was| format!("air {turn} {}", written(was)));
            let (turn, percent) = (turn.to_string(), written(*percent));
            (say!(w, "done-air", turn = turn, percent = percent), back)
        }
        _ => (say!(w, "done-noted"), None),
    };
    (says, back)
}

fn of_bag(
    w: Wording,
    ledger: &Ledger,
    code: BagCode,
    entry: &Entry,
) -> (String, Option<String>) {
    let bag = name(code);
    let mm = |mm: f64| millimeters(mm);
    match &entry.what {
        What::Sealed { .. } | What::Zero { .. } => {
            let zero = ledger.standing().bags.get(&code).and_then(|bag| bag.zero.as_ref());
            let says = match zero {
                Some(zero) => say!(w, "done-zero", bag = bag, mm = mm(zero.height_mm)),
                None => say!(w, "done-sealed", bag = bag),
            };
            (says, None)
        }
        What::Reading { planned, height_mm } => {
            let says = match planned {
                Some(minute) => {
                    let minute = minute.to_string();
                    say!(w, "done-reading", bag = bag, mm = mm(*height_mm), minute = minute)
                }
                None => say!(w, "done-between", bag = bag, mm = mm(*height_mm)),
            };
            (says, None)
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
                    (say!(w, "done-right", bag = bag, mm = mm(was)), None)
                }
                Some(was) => {
                    let (mm, was) = (mm(*height_mm), mm(was));
                    (say!(w, "done-corrected", bag = bag, mm = mm, was = was), back)
                }
                None => (say!(w, "done-height", bag = bag, mm = mm(*height_mm)), None),
            }
        }
        What::Meter { percent, .. } => {
            (say!(w, "done-meter", bag = bag, percent = percent.to_string()), None)
        }
        What::Odd(odd) => {
            let says = say!(w, "done-odd", bag = bag, odd = odd_word(w, *odd));
            (says, Some(format!("odd-back {code} {}", entry.key)))
        }
        What::OddBack { .. } => (say!(w, "done-odd-back", bag = bag), None),
        What::Made(_) => (say!(w, "done-made", bag = bag), None),
        What::SetRight(_) => (say!(w, "done-set-right", bag = bag), None),
        What::SetAside { rule } => {
            let says = say!(w, "done-set-aside", bag = bag, rule = rule);
            (says, Some(format!("take-back {code}")))
        }
        What::TakenBack => (say!(w, "done-taken-back", bag = bag), None),
        What::Vented => (say!(w, "done-vented", bag = bag), None),
        What::Lost => (say!(w, "done-lost", bag = bag), Some(format!("take-back {code}"))),
        _ => (say!(w, "done-bag-noted", bag = bag), None),
    }
}

/// The newest before an entry of its kind about the same thing.
fn before<T>(ledger: &Ledger, entry: &Entry, pick: impl Fn(&What) -> Option<T>) -> Option<T> {
    let entries = ledger.entries_of(&entry.subject).iter();
    let earlier =
        entries.filter(|other| (other.measured, other.key) < (entry.measured, entry.key));
    earlier.filter_map(|other| pick(&other.what)).last()
}
