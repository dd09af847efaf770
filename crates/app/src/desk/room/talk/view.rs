//! The teacher's page to talk from: prompts of a period and of the day, ideas, and what is in the bags.

use super::wall::hung;
use crate::desk::paper::asked;
use crate::desk::room::results::analysis;
use crate::desk::room::{Kind, Room};
use crate::desk::{Catalog, DeskError, Prompted};
use barm_domain::discussion::{Inside, Prompt, Spoken, ideas, inside, prompts};

/// A prompt as the page shows it.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Talk {
    /// By which it is known: the bags it is about, and the prompt's own key.
    pub(crate) key: String,
    /// In the words of a student.
    pub(crate) asked: Prompted,
    /// Whether it hangs on the wall.
    pub(crate) hangs: bool,
}

/// The page to talk from.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct TalkView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// The period.
    pub(crate) period: String,
    /// All periods.
    pub(crate) periods: Vec<String>,
    /// Bags of this period that were read.
    pub(crate) read: usize,
    /// What its own bags call for.
    pub(crate) of_period: Vec<Talk>,
    /// What all bags of the day call for, where others were read too.
    pub(crate) of_day: Vec<Talk>,
    /// What bags of the day say of ideas.
    pub(crate) ideas: Vec<Spoken>,
    /// What is in the bags of each treatment.
    pub(crate) inside: Vec<Inside>,
}

/// What a period and its day call for, key and prompt; and how many of the period's bags were read.
pub(super) struct Called {
    pub(super) of_period: Vec<(String, Prompt)>,
    pub(super) of_day: Vec<(String, Prompt)>,
    read: usize,
    title: String,
    periods: Vec<String>,
    ideas: Vec<Spoken>,
    inside: Vec<Inside>,
}

/// Works out results.
pub(super) fn called(room: &Room, period: &str) -> Result<Called, DeskError> {
    let (plan, analysis, _) = analysis(room)?;
    if plan.period(period).is_none() {
        return Err(DeskError::NoPeriod { name: period.to_owned() });
    }
    let (day, forecasts) = (&analysis.result, &analysis.outlook.treated);
    let own = day.of_period(&plan, period);
    let read = |result: &barm_domain::result::ClassResult| {
        result.bags.iter().filter(|bag| bag.summary.is_some()).count()
    };
    let keyed = |of: &str, all: Vec<Prompt>| {
        let keyed = |one: Prompt| (format!("{of}/{}", one.key()), one);
        all.into_iter().map(keyed).collect()
    };
    let of_day = if read(day) > read(&own) {
        keyed("day", prompts(&plan, day, &day.bags, forecasts))
    } else {
        Vec::new()
    };
    Ok(Called {
        of_period: keyed("period", prompts(&plan, &own, &day.bags, forecasts)),
        of_day,
        read: read(&own),
        ideas: ideas(&plan, day),
        inside: plan.treatments().filter_map(|(_, one)| inside(&plan, one)).collect(),
        periods: plan.periods.iter().map(|one| one.name.clone()).collect(),
        title: plan.title,
    })
}

/// The page of a period, with prompts in a language of the students. Works out results, and waits for the disk.
pub(crate) fn talk_view(
    room: &Room,
    period: &str,
    words: &Catalog,
) -> Result<TalkView, DeskError> {
    let called = called(room, period)?;
    let hung = hung(room, period)?;
    let shown = |all: Vec<(String, Prompt)>| {
        let talk = |(key, prompt): (String, Prompt)| Talk {
            asked: asked(&prompt, words),
            hangs: hung.as_ref().is_some_and(|hung| hung.key == key),
            key,
        };
        all.into_iter().map(talk).collect()
    };
    Ok(TalkView {
        id: room.id,
        kind: room.kind,
        title: called.title,
        period: period.to_owned(),
        periods: called.periods,
        read: called.read,
        of_period: shown(called.of_period),
        of_day: shown(called.of_day),
        ideas: called.ideas,
        inside: called.inside,
    })
}
