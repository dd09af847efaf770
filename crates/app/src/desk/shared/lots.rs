//! How active each lot of yeast and of an enzyme was over the days on which it was tried or used.

use crate::desk::room::{Kind, Room, Shelf};
use crate::desk::{DeskError, Wording, say};
use barm_documents::chart::{Dated, DatesChart, Estimate, Frame, Look};
use barm_domain::cupboard;
use barm_domain::pilot::{
    Ageing, By, FIRST_LOT, Left, LotDay, LotOf, LotOverTime, Lots, over_time, pilot_days,
};
use barm_domain::plan::YeastKind;
use jiff::Timestamp;
use std::sync::Arc;

/// Lots of the shelf.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LotsFound {
    /// Each over its days.
    pub(crate) lots: Vec<LotOverTime>,
    /// Class days whose readings are still being worked out.
    pub(crate) working: usize,
}

/// The lots of all investigations. What the readings of class days say is worked out beside the requests, one after the
/// other. Replays what is not open yet, and waits for the disk.
pub(crate) fn lots_on_shelf(shelf: &Shelf, now: Timestamp) -> Result<LotsFound, DeskError> {
    let mut days: Vec<(Kind, LotDay)> = Vec::new();
    let mut waiting: Vec<Arc<Room>> = Vec::new();
    for one in shelf.investigations()?.into_iter().filter(|one| one.kind != Kind::Rehearsal) {
        // What cannot be opened is told where classes are compared.
        let Ok(room) = shelf.room(one.id, now) else { continue };
        let pilots = pilot_days(&room.kept_pilot().lots);
        if pilots.is_empty() {
            continue;
        }
        let class = room.lots_of_day();
        if class.is_none() {
            waiting.push(room);
        }
        let all = pilots.into_iter().chain(class.unwrap_or_default());
        days.extend(all.map(|day| (one.kind, own_name(day, one.id))));
    }
    // What is made up stays apart from what is not.
    let real = days.iter().any(|(kind, _)| *kind == Kind::Real);
    let shown = days.into_iter().filter(|(kind, _)| !real || *kind == Kind::Real);
    let working = waiting.len();
    shelf.learn_days(waiting);
    Ok(LotsFound { lots: over_time(shown.map(|(_, day)| day)), working })
}

/// A lot that nobody named is another in each investigation.
fn own_name(day: LotDay, id: i64) -> LotDay {
    if day.name == FIRST_LOT {
        LotDay { name: format!("{FIRST_LOT}, investigation {id}"), ..day }
    } else {
        day
    }
}

/// What a lot is called, with what it is a lot of.
pub(crate) fn lot_name(lot: &LotOverTime) -> String {
    let first = lot.days.first();
    let of = first.map(|day| match &day.of {
        LotOf::Yeast(YeastKind::ActiveDry) => "active dry yeast".to_owned(),
        LotOf::Yeast(YeastKind::Instant) => "instant yeast".to_owned(),
        LotOf::Yeast(YeastKind::Compressed) => "fresh yeast".to_owned(),
        LotOf::Enzyme(key) => cupboard::spoken(key).to_owned(),
    });
    let name = first.map(|day| day.name.clone()).unwrap_or_default();
    format!("{name} ({})", of.unwrap_or_default())
}

/// Whether a lot ages, and what to do, in a sentence.
pub(crate) fn lot_says(w: Wording, lot: &LotOverTime) -> String {
    let name = lot_name(lot);
    let date = |day: Option<&LotDay>| day.map(|day| day.date.to_string()).unwrap_or_default();
    let (since, until) = (date(lot.days.first()), date(lot.days.last()));
    let percent = |share: f64| format!("{:.0}", (100.0 * share).clamp(0.0, 999.0));
    match lot.ageing {
        Ageing::OneDate => say!(w, "years-lot-once", lot = name, date = since),
        Ageing::NotTold(Left { low, .. }) => {
            let low = percent(low);
            say!(w, "years-lot-same", lot = name, since = since, until = until, low = low)
        }
        Ageing::Lost(Left { best, low, high }) => say!(
            w,
            "years-lot-lost",
            lot = name,
            share = share(1.0 - best),
            since = since,
            low = percent(1.0 - high),
            high = percent(1.0 - low),
            times = format!("{:.1}", (1.0 / best.max(0.05)).min(20.0))
        ),
        Ageing::Gained(Left { best, .. }) => {
            say!(w, "years-lot-gained", lot = name, times = format!("{best:.1}"), since = since)
        }
    }
}

/// Whether lots of one plan age, in English, a sentence for each that was measured on several days.
pub(crate) fn lots_say(lots: &Lots) -> Vec<String> {
    let several = |lot: &LotOverTime| lot.ageing != Ageing::OneDate;
    let lots = over_time(pilot_days(lots));
    lots.iter()
        .filter(|lot| several(lot))
        .map(|lot| lot_says(Wording::english(), lot))
        .collect()
}

/// The word for a share in the catalog.
fn share(lost: f64) -> &'static str {
    const WORDS: [(f64, &str); 8] = [
        (0.15, "tenth"),
        (0.225, "fifth"),
        (0.29, "quarter"),
        (0.42, "third"),
        (0.58, "half"),
        (0.71, "two-thirds"),
        (0.85, "three-quarters"),
        (f64::INFINITY, "nearly-all"),
    ];
    WORDS.iter().find(|(below, _)| lost < *below).map_or("nearly-all", |(_, word)| word)
}

/// Whose readings a day rests on.
pub(crate) fn by_says(w: Wording, day: &LotDay) -> String {
    match day.by {
        By::Pilot => say!(w, "years-lot-pilot"),
        By::Class => say!(w, "years-lot-class"),
    }
}

/// Lots over their dates as a picture of that width.
pub(crate) fn lots_picture(w: Wording, lots: &[LotOverTime], width: f64) -> String {
    let dated = |(at, lot): (usize, &LotOverTime)| {
        let dot = |day: &LotDay| {
            let [value, low, high] = day.times_usual();
            (day.date, Estimate { value, low, high })
        };
        let look = Look(u8::try_from(at % 16 + 1).unwrap_or(1));
        let name = lot.days.first().map(|day| day.name.clone()).unwrap_or_default();
        Dated { name, look, dots: lot.days.iter().map(dot).collect() }
    };
    let series: Vec<Dated> = lots.iter().enumerate().map(dated).collect();
    let (title, usual) = (say!(w, "years-lots"), say!(w, "years-lots-usual"));
    DatesChart { title: &title, usual: &usual, series: &series }.svg(&Frame::screen(width))
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::{Date, date};

    fn day(date: Date, log: f64) -> LotDay {
        let of = LotOf::Yeast(YeastKind::Instant);
        LotDay { of, name: "jar of March".into(), date, by: By::Pilot, log, log_sd: 0.1 }
    }

    fn says(log: f64) -> String {
        let days = vec![day(date(2027, 3, 2), 0.0), day(date(2027, 5, 11), log)];
        lot_says(Wording::english(), &over_time(days)[0])
    }

    /// By hand: 0.1 √2 · 1.96 = 0.277; of ln 0.65 the ends are 0.49 and 0.86.
    #[test]
    fn a_jar_that_lost_a_third_is_told_with_what_to_do() {
        let said = says(0.65_f64.ln());
        assert_eq!(
            said,
            "jar of March (instant yeast): it has lost about a third since 2027-03-02 (14 to 51 %). \
             Buy new, or take 1.5 times as much."
        );
        assert!(says(0.5_f64.ln()).contains("about half"), "{}", says(0.5_f64.ln()));
        assert!(says(0.02_f64.ln()).contains("nearly all"));
    }

    #[test]
    fn without_a_change_no_loss_is_told() {
        let said = says(-0.05);
        assert!(said.contains("no change is told from 2027-03-02 to 2027-05-11"), "{said}");
        assert!(!said.contains("lost about"), "{said}");
        assert!(says(0.7).contains("does not grow stronger"), "{}", says(0.7));
        let once = over_time(vec![day(date(2027, 3, 2), 0.0)]);
        let said = lot_says(Wording::english(), &once[0]);
        assert!(said.contains("measured on 2027-03-02 only"), "{said}");
    }

    #[test]
    fn a_lot_that_nobody_named_is_another_in_each_investigation() {
        let unnamed =
            |id| own_name(LotDay { name: FIRST_LOT.into(), ..day(date(2027, 3, 2), 0.0) }, id);
        assert_eq!(over_time(vec![unnamed(1), unnamed(2)]).len(), 2);
        assert_eq!(own_name(day(date(2027, 3, 2), 0.0), 1).name, "jar of March");
    }
}
