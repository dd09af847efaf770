//! Starting an investigation: from a ready plan and six answers, from a file, or by looking at the
//! invented school.

use super::editing::sentence;
use super::rehearse::done_before;
use super::room::on_shelf::{Line, in_short, work_out_rest};
use super::room::whole_check::Checkup;
use super::room::{Investigation, Kind, Shelf, library, plans};
use super::shared::years_on_shelf;
use super::{DeskError, Wording, demo, ready_plan, say};
use barm_documents::plan_text::{self, Mistake};
use barm_domain::amount;
use barm_domain::cupboard::spoken;
use barm_domain::plan::{BagChoice, Place};
use barm_domain::ready::{self, Ready};
use barm_domain::starter;
use jiff::Timestamp;
use jiff::civil::Time;
use std::fmt::Display;

/// The six answers as they are typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Typed {
    /// The day.
    pub(crate) date: String,
    /// When the first period begins.
    pub(crate) start: String,
    /// The time zone.
    pub(crate) zone: String,
    /// Height above the sea.
    pub(crate) altitude: String,
    /// Periods.
    pub(crate) periods: String,
    /// Groups in a period.
    pub(crate) groups: String,
    /// Students in a period.
    pub(crate) students: String,
    /// Ids of what is ticked in the cupboard.
    pub(crate) cupboard: Vec<String>,
    /// Bags.
    pub(crate) bag: String,
    /// Temperature of the water.
    pub(crate) water: String,
    /// Length of a period.
    pub(crate) length: String,
}

impl Default for Typed {
    fn default() -> Self {
        let text = |text: &str| text.to_owned();
        Self {
            date: String::new(),
            start: text("8:10 am"),
            zone: text("America/New_York"),
            altitude: text("100 m"),
            periods: text("4"),
            groups: text("8"),
            students: text("24"),
            cupboard: ready::USUAL.map(String::from).to_vec(),
            bag: text("snack"),
            water: text("40 °C"),
            length: text("45 min"),
        }
    }
}

/// Why no plan comes of the answers: which question, from 1, and what to write.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct NotYet {
    /// The question, from 1 to 6; 0 if it is none of them.
    pub(crate) question: usize,
    /// What is wrong and what to write, as sentences.
    pub(crate) says: String,
}

/// What is offered in the cupboard: id and name.
pub(crate) fn cupboard() -> Vec<(&'static str, &'static str)> {
    ready::OFFERED.iter().map(|one| (one.id, spoken(one.id))).collect()
}

/// A time of day as people write it, such as 8:10 am or 13:05.
pub(crate) fn time_of_day(text: &str) -> Option<Time> {
    plan_text::clock(text)
}

fn not(question: usize, says: &str) -> NotYet {
    NotYet { question, says: sentence(says) }
}

fn whole(w: Wording, question: usize, text: &str, what: String) -> Result<u32, NotYet> {
    let says = || not(question, &say!(w, "start-not-whole", text = text, what = what));
    text.trim().parse().map_err(|_| says())
}

fn read<T, E: Display>(question: usize, read: Result<T, E>) -> Result<T, NotYet> {
    read.map_err(|error| not(question, &error.to_string()))
}

/// Reads the answers for a ready plan.
pub(crate) fn answers(
    w: Wording,
    ready: Ready,
    typed: &Typed,
) -> Result<ready::Answers, NotYet> {
    let date = typed.date.trim().parse();
    let date = date.map_err(|_| not(1, &say!(w, "start-no-day")))?;
    let first_start = time_of_day(&typed.start)
        .ok_or_else(|| not(1, &say!(w, "start-no-time", text = typed.start.trim())))?;
    let school = starter::Answers {
        title: ready.title().to_owned(),
        date,
        zone: typed.zone.trim().to_owned(),
        place: Place::Altitude(read(1, amount::altitude_meters(&typed.altitude))?),
        first_start,
        periods: whole(w, 2, &typed.periods, say!(w, "start-of-periods"))?,
        groups: whole(w, 2, &typed.groups, say!(w, "start-of-groups"))?,
        students: whole(w, 2, &typed.students, say!(w, "start-of-students"))?,
        length_min: read(6, amount::minutes(&typed.length))?,
    };
    let bag = BagChoice::parse(&typed.bag);
    Ok(ready::Answers {
        school,
        cupboard: typed.cupboard.clone(),
        bag: bag.map_err(|error| not(4, &format!("{error}; {}", error.fix())))?,
        water_celsius: read(5, amount::celsius(&typed.water))?,
    })
}

/// The text of a ready plan for these answers.
pub(crate) fn written(w: Wording, ready: Ready, typed: &Typed) -> Result<String, NotYet> {
    let answers = answers(w, ready, typed)?;
    ready_plan(ready, &answers).map_err(|error| {
        let question = match &error {
            DeskError::Ready(ready::ReadyError::Cupboard(_)) => 3,
            DeskError::Ready(ready::ReadyError::Bag { .. }) => 4,
            DeskError::Ready(ready::ReadyError::Warmth { .. }) => 5,
            DeskError::Ready(ready::ReadyError::Minutes { .. }) => 6,
            DeskError::Ready(_) => 2,
            _ => 1,
        };
        let hint = error.hint().map(|hint| format!("; {hint}")).unwrap_or_default();
        not(question, &format!("{error}{hint}"))
    })
}

/// Whether a shelf is that of a rehearsal, on which nothing else is started.
pub(crate) fn of_a_rehearsal(shelf: &Shelf) -> Result<bool, DeskError> {
    match shelf.must_not_hold(Kind::Rehearsal) {
        Err(DeskError::OfARehearsal { .. }) => Ok(true),
        other => other.map(|()| false),
    }
}

/// Puts an investigation on the shelf.
pub(crate) fn begin(shelf: &Shelf, text: &str, now: Timestamp) -> Result<i64, DeskError> {
    plans::begin(shelf, text, Kind::Real, now)
}

/// What is wrong at one line of a plan that somebody brings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct AtLine {
    /// The line, from 1.
    pub(crate) line: usize,
    /// What stands there, without the space around it and no longer than a line.
    pub(crate) stands: String,
    /// What is wrong and what to do, as sentences.
    pub(crate) says: String,
}

/// The most letters of a line that are shown again.
const SHOWN: usize = 100;

/// What is wrong with a plan that somebody brings, checked by what is in it, in the order of its
/// lines; nothing if it can be opened.
pub(crate) fn look_at(w: Wording, text: &str) -> Vec<AtLine> {
    if text.trim().is_empty() {
        return vec![AtLine { line: 1, stands: String::new(), says: say!(w, "start-nothing") }];
    }
    let lines: Vec<&str> = text.lines().collect();
    let mistakes = plan_text::read_with_old_list(text.as_bytes()).mistakes;
    let at = |one: Mistake| {
        let stands = one.line.checked_sub(1).and_then(|at| lines.get(at)).unwrap_or(&"");
        AtLine {
            line: one.line,
            stands: stands.trim().chars().take(SHOWN).collect(),
            says: format!("{} {}", sentence(&one.what), sentence(&one.fix)),
        }
    };
    let mut all: Vec<AtLine> = mistakes.into_iter().map(at).collect();
    all.sort_by_key(|one| one.line);
    all
}

/// The invented school: the one that is on the shelf, or a new one.
pub(crate) fn invented(shelf: &Shelf, now: Timestamp) -> Result<i64, DeskError> {
    // A colleague's invented package is another.
    let there = shelf.investigations()?;
    let title = plan_text::read(demo::plan().as_bytes()).plan.map(|plan| plan.title);
    let is_ours =
        |one: &&Investigation| one.kind == Kind::Invented && title.as_ref() == Some(&one.title);
    if let Some(one) = there.iter().find(is_ours) {
        return Ok(one.id);
    }
    shelf.must_not_hold(Kind::Rehearsal)?;
    let id = plans::begin(shelf, demo::plan(), Kind::Invented, now)?;
    let room = shelf.room(id, now)?;
    // The last period is left for whoever wants to press the buttons.
    let last = room.read(|scene| scene.plan.periods.last().map(|period| period.name.clone()));
    done_before(&room, &last.unwrap_or_default(), demo::READINGS)?;
    Ok(id)
}

/// One line of the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct OnShelf {
    /// Its number.
    pub(crate) id: i64,
    /// Its title.
    pub(crate) title: String,
    /// What it is.
    pub(crate) kind: Kind,
    /// The first school day, such as 2027-03-09.
    pub(crate) day: String,
    /// Bags on its list, if that is known.
    pub(crate) bags: Option<usize>,
    /// How far it has come.
    pub(crate) stands: String,
    /// The line of its plan in which what was looked for stands.
    pub(crate) holds: Option<String>,
}

/// The shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct ShelfView {
    /// Its lines, the newest on top.
    pub(crate) lines: Vec<OnShelf>,
    /// What was looked for.
    pub(crate) asked: String,
    /// Whether some are still being counted.
    pub(crate) counting: bool,
    /// What is wrong with the record, if a full check found something, and when.
    pub(crate) damaged: Option<(String, Timestamp)>,
}

/// The shelf page; of all investigations, or of those whose plan holds the words that are asked for.
pub(crate) fn on_shelf(
    shelf: &Shelf,
    w: Wording,
    asked: &str,
    now: Timestamp,
) -> Result<ShelfView, DeskError> {
    let bare = |one: Investigation, stands: String| OnShelf {
        id: one.id,
        title: one.title,
        kind: one.kind,
        day: String::new(),
        bags: None,
        stands,
        holds: None,
    };
    let line = |(one, line): (Investigation, Line)| match line {
        Line::Unreadable => bare(one, say!(w, "shelf-unread")),
        Line::BeingCounted => bare(one, say!(w, "shelf-counting")),
        Line::Known(short) => OnShelf {
            id: one.id,
            kind: one.kind,
            stands: match (short.began, short.ended) {
                (0, _) => say!(w, "shelf-planned"),
                (_, ended) if ended >= short.periods => say!(w, "shelf-all-done"),
                (began, ended) if began > ended => say!(w, "shelf-running"),
                (_, ended) => say!(w, "shelf-some-done", done = ended, all = short.periods),
            },
            title: short.title,
            day: short.day,
            bags: Some(short.bags),
            holds: None,
        },
    };
    let all = in_short(shelf, now)?;
    let counting = all.iter().any(|(_, line)| *line == Line::BeingCounted);
    let damaged = match shelf.checkup() {
        Some(Checkup::Damaged { at, what }) => Some((sentence(&what), at)),
        Some(Checkup::Whole { .. }) | None => None,
    };
    let mut lines: Vec<OnShelf> = all.into_iter().rev().map(line).collect();
    let asked = asked.trim();
    if !asked.is_empty() {
        let mut found = library::find(shelf, asked)?;
        lines.retain_mut(|one| {
            one.holds = found.remove(&one.id);
            one.holds.is_some()
        });
    }
    Ok(ShelfView { lines, asked: asked.to_owned(), counting, damaged })
}

/// Works out the lines that are still being counted, and what classes found beside each other, which somebody may ask for
/// next. Waits for the disk.
pub(crate) fn count_rest(shelf: &Shelf, now: Timestamp) -> Result<(), DeskError> {
    work_out_rest(shelf, now)?;
    years_on_shelf(shelf, now).map(|_| ())
}

#[cfg(test)]
mod tests {
    use super::{Typed, invented, written};
    use crate::desk::Wording;
    use crate::desk::room::{Kind, Shelf};
    use barm_domain::ready::Ready;
    use jiff::Timestamp;

    fn typed() -> Typed {
        Typed { date: "2027-03-09".into(), ..Typed::default() }
    }

    #[test]
    fn six_answers_make_a_plan() {
        for ready in Ready::ALL {
            let text = written(Wording::english(), ready, &typed()).expect("a plan");
            assert!(text.contains(ready.title()));
        }
    }

    #[test]
    fn the_invented_school_has_read_its_bags_and_leaves_one_period_to_try() {
        let folder = tempfile::tempdir().expect("a folder");
        let now = Timestamp::from_second(1_800_000_000).expect("a time");
        let shelf = Shelf::open(folder.path(), now).expect("a shelf");
        let id = invented(&shelf, now).expect("an investigation");
        assert_eq!(invented(&shelf, now).expect("the same"), id);
        let room = shelf.room(id, now).expect("a room");
        assert_eq!(room.kind, Kind::Invented);
        room.read(|scene| {
            let periods = &scene.plan.periods;
            let (last, others) = periods.split_last().expect("periods");
            let over = |name: &String| {
                scene.standing().periods.get(name).is_some_and(|one| one.ended.is_some())
            };
            assert!(others.iter().all(|period| over(&period.name)) && !over(&last.name));
            assert!(scene.standing().refused.is_empty(), "{:?}", scene.standing().refused);
            for bag in scene.plan.bags.iter() {
                let code = bag.code.parse().expect("a code");
                let read = scene.standing().bags.get(&code).is_some_and(|of| of.zero.is_some());
                assert!(read || bag.period == last.name, "{}", bag.code);
            }
        });
    }

    #[test]
    fn a_wrong_answer_is_named_at_its_question() {
        let wrong = |change: fn(&mut Typed)| {
            let mut typed = typed();
            change(&mut typed);
            written(Wording::english(), Ready::WhichFood, &typed)
                .expect_err("not a plan")
                .question
        };
        assert_eq!(wrong(|t| t.date = String::new()), 1);
        assert_eq!(wrong(|t| t.start = "early".into()), 1);
        assert_eq!(wrong(|t| t.altitude = "high".into()), 1);
        assert_eq!(wrong(|t| t.zone = "Mars/Olympus".into()), 1);
        assert_eq!(wrong(|t| t.periods = "four".into()), 2);
        assert_eq!(wrong(|t| t.groups = "0".into()), 2);
        assert_eq!(wrong(|t| t.cupboard = vec!["moon dust".into()]), 3);
        assert_eq!(wrong(|t| t.bag = "sack".into()), 4);
        assert_eq!(wrong(|t| t.bag = "60 x 60 mm".into()), 4);
        assert_eq!(wrong(|t| t.water = "warm".into()), 5);
        assert_eq!(wrong(|t| t.water = "70 °C".into()), 5);
        assert_eq!(wrong(|t| t.length = "20 min".into()), 6);
    }
}
