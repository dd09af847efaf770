//! What a day's readings teach, as every face tells it.

use super::pilot::change_rows;
use super::{DeskError, Progress, Pushes, analyze_record, voice};
use barm_documents::chart::{BeforeAfterChart, BeforeAfterRow, Frame, Terminal};
use barm_domain::plan::Plan;
use barm_domain::record::Counted;
use barm_domain::result::taught::{DayTaught, UnlikeBag};
use std::collections::BTreeMap;

/// What a day's readings teach, in words and rows as they are shown.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct DaySays {
    /// What it rests on.
    pub(crate) rests: String,
    /// What changed, before and after.
    pub(crate) rows: Vec<BeforeAfterRow>,
    /// What the readings could not tell.
    pub(crate) untold: Option<String>,
    /// That they scatter, where they do.
    pub(crate) scatters: Option<String>,
    /// Bags to look at: code, treatment, and what to ask.
    pub(crate) look_at: Vec<(String, String, String)>,
}

/// The words over then and now.
pub(crate) const DAY_WORDS: (&str, &str) = ("before", "after this day");

/// What it comes to, in words and rows.
pub(crate) fn day_says(plan: &Plan, taught: &DayTaught) -> DaySays {
    let voice = voice(plan);
    let asks = |one: &UnlikeBag| {
        (one.bag.code.clone(), one.bag.treatment.clone(), voice.day_asks(one))
    };
    DaySays {
        rests: voice.day_rests_on(taught),
        rows: change_rows(&taught.changes),
        untold: voice.day_could_not_tell(taught),
        scatters: voice.day_scatters(taught),
        look_at: taught.unlike.iter().map(asks).collect(),
    }
}

impl DaySays {
    /// All that is to be known beside it.
    pub(crate) fn notes(&self) -> impl Iterator<Item = &String> {
        self.untold.iter().chain(&self.scatters)
    }

    /// What changed, in letters.
    pub(crate) fn chart(&self, terminal: Terminal) -> String {
        terminal.before_after(&self.rows)
    }

    /// What changed, as a picture for a wide page and one for a phone, which has no room for ranges in
    /// figures; nothing where nothing did.
    pub(crate) fn pictures(&self, title: &str) -> Option<[String; 2]> {
        let drawn = |rows: &[BeforeAfterRow], width| {
            BeforeAfterChart { title, words: DAY_WORDS, rows }.svg(&Frame::screen(width))
        };
        let bare = |figures: &str| figures.split(" (").next().unwrap_or_default().to_owned();
        let short = |row: &BeforeAfterRow| {
            let (was, is) = (bare(&row.was), bare(&row.is));
            BeforeAfterRow { was, is, ..row.clone() }
        };
        let narrow: Vec<BeforeAfterRow> = self.rows.iter().map(short).collect();
        (!self.rows.is_empty()).then(|| [drawn(&self.rows, 960.0), drawn(&narrow, 340.0)])
    }

    /// What changed, in words and figures.
    pub(crate) fn in_words(&self) -> String {
        BeforeAfterChart { title: "", words: DAY_WORDS, rows: &self.rows }.description()
    }
}

/// What the readings of a record teach; nothing where no bag has a height to go by. Takes seconds.
pub(super) fn day_of_record(
    plan: &Plan,
    counted: Counted,
    poured: &BTreeMap<String, f64>,
    progress: &dyn Progress,
) -> Result<Option<DayTaught>, DeskError> {
    let analysis = analyze_record(plan, counted, &Pushes::default(), progress)?;
    analysis.with_day(plan, poured).map(|analysis| analysis.day)
}
