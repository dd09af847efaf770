//! The one prompt that hangs on the wall of a period. It is kept as it was said, in every language, so that the wall need
//! not work out results.

use super::view::called;
use crate::desk::paper::asked;
use crate::desk::room::{Room, Scope};
use crate::desk::{Catalog, DeskError, Prompted};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A prompt on the wall.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Hung {
    /// By which it is known.
    pub(crate) key: String,
    /// By language: what is asked, and what it rests on.
    said: BTreeMap<String, (String, String)>,
}

impl Hung {
    /// In a language.
    pub(crate) fn said(&self, words: &Catalog) -> Option<Prompted> {
        let (asks, rests_on) = self.said.get(words.code())?.clone();
        Some(Prompted { asks, rests_on })
    }
}

fn named(room: &Room, period: &str) -> String {
    format!("wall-prompt-{}-{period}", room.id)
}

/// The wall of a period shows something else.
fn shows(room: &Room, period: &str) {
    room.pulse.beat(|scope| *scope == Scope::Wall(period.to_owned()));
}

/// Hangs a prompt on the wall of a period, in the place of another; says whether its data still call for it. Works out
/// results, and waits for the disk.
pub(crate) fn hang(room: &Room, period: &str, key: &str) -> Result<bool, DeskError> {
    let called = called(room, period)?;
    let mut all = called.of_period.iter().chain(&called.of_day);
    let Some((_, prompt)) = all.find(|(known, _)| known == key) else { return Ok(false) };
    let said = Catalog::all().map(|words| {
        let Prompted { asks, rests_on } = asked(prompt, words);
        (words.code().to_owned(), (asks, rests_on))
    });
    let hung = Hung { key: key.to_owned(), said: said.collect() };
    let text = serde_json::to_string(&hung).map_err(|_| DeskError::Stopped)?;
    room.store.keep_setting(&named(room, period), &text)?;
    shows(room, period);
    Ok(true)
}

/// Takes down what hangs there. Waits for the disk.
pub(crate) fn take_down(room: &Room, period: &str) -> Result<(), DeskError> {
    room.store.drop_setting(&named(room, period))?;
    shows(room, period);
    Ok(())
}

/// What hangs on the wall of a period. Waits for the disk.
pub(crate) fn hung(room: &Room, period: &str) -> Result<Option<Hung>, DeskError> {
    let kept = room.store.setting(&named(room, period))?;
    Ok(kept.and_then(|text| serde_json::from_str(&text).ok()))
}
