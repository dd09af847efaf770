//! What a rehearsal needs before the bell: a folder, an investigation that is marked, a clock.

use crate::desk::doors::{bells, key, suggest};
use crate::desk::pilot::lots_beside;
use crate::desk::room::{Kind, Room, Shelf};
use crate::desk::{Clock, DeskError, plan_file};
use barm_documents::pilot_text::write_lots;
use barm_documents::plan_text;
use barm_domain::pilot::{Known, Lots};
use barm_domain::rehearsal::{Rates, Script, script};
use jiff::{SignedDuration, Timestamp};
use std::path::Path;
use std::sync::Arc;

/// So long before its bell a rehearsal begins, by its own clock.
const BEFORE_BELL: SignedDuration = SignedDuration::from_mins(2);

/// How a rehearsal is asked to be.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wish<'a> {
    /// The period; the first, if none is named.
    pub(crate) period: Option<&'a str>,
    /// Seed of everything that is left to chance.
    pub(crate) seed: u64,
    /// How many times as fast as a true clock.
    pub(crate) speed: f64,
    /// Rehearsed, or invented for a demonstration.
    pub(crate) kind: Kind,
}

/// Everything that stands ready.
pub(crate) struct Stage {
    /// The folder of its own.
    pub(crate) shelf: Arc<Shelf>,
    /// The investigation.
    pub(crate) room: Arc<Room>,
    /// The clock that the server must run on.
    pub(crate) clock: Arc<Clock>,
    /// The teacher's passphrase, made for this time.
    pub(crate) passphrase: String,
    /// What the benches do.
    pub(crate) script: Script,
    pub(super) seed: u64,
}

impl Stage {
    /// Where its run page lies on the server.
    pub(crate) fn run_page(&self) -> String {
        run_page(self.room.id, &self.script.period)
    }
}

/// The path of a run page: a period may be called anything.
fn run_page(id: i64, period: &str) -> String {
    let mut path = format!("/i/{id}/run/");
    for byte in period.bytes() {
        if byte.is_ascii_alphanumeric() {
            path.push(char::from(byte));
        } else {
            path.push_str(&format!("%{byte:02X}"));
        }
    }
    path
}

/// Gets ready. Waits for the disk and works out every bag.
pub(crate) fn stage(plan: &Path, folder: &Path, wish: Wish<'_>) -> Result<Stage, DeskError> {
    stage_bytes(&plan_file::bytes(plan)?, plan, folder, wish, &lots_beside(plan)?)
}

/// The same with the text of a plan and what pilots found for it; `name` is what the plan is called
/// where it has mistakes.
pub(crate) fn stage_bytes(
    bytes: &[u8],
    name: &Path,
    folder: &Path,
    wish: Wish<'_>,
    lots: &Lots,
) -> Result<Stage, DeskError> {
    let mut plan = plan_file::sound(name, plan_text::read(bytes))?.plan;
    plan.known = Known::of(lots);
    let period = match wish.period {
        None => plan.periods.first(),
        Some(name) => plan.period(name),
    };
    let period = period
        .ok_or_else(|| DeskError::NoPeriod { name: wish.period.unwrap_or("1").to_owned() })?;
    let script = script(&plan, period, wish.seed, &Rates::default())?;
    let (bell, _) = bells(&plan, period)
        .ok_or_else(|| DeskError::NoPeriod { name: period.name.clone() })?;
    let shelf = Arc::new(Shelf::open(folder, Timestamp::now())?);
    // What was never read in a class must not lie beside what was.
    shelf.must_not_hold(Kind::Real)?;
    let from = bell.checked_sub(BEFORE_BELL).unwrap_or(bell);
    let passphrase = suggest()?;
    shelf.doors.new_passphrase(&passphrase)?;
    let text = String::from_utf8_lossy(bytes);
    let room = shelf.begin(&text, wish.kind, key(from)?, from)?;
    if !lots.is_empty() {
        room.keep_pilot(&write_lots(lots), "", key(from)?, from)?;
    }
    let clock = Arc::new(Clock::fast(from, wish.speed));
    Ok(Stage { shelf, room, clock, passphrase, script, seed: wish.seed })
}

#[cfg(test)]
mod tests {
    use super::run_page;

    #[test]
    fn any_name_of_a_period_stands_in_the_path_of_its_run_page() {
        assert_eq!(run_page(7, "3"), "/i/7/run/3");
        assert_eq!(run_page(7, "Año 3/B?"), "/i/7/run/A%C3%B1o%203%2FB%3F");
    }
}
