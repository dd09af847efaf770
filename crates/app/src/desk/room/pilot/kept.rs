//! What pilots found and read, as the record keeps it: with the versions of the plan.

use crate::desk::DeskError;
use crate::desk::room::Room;
use barm_documents::pilot_text::{PilotFile, TypedSheet, read_lots, readings};
use barm_domain::pilot::{Known, Lots, PilotReadings};
use barm_domain::plan::Plan;
use barm_domain::record::Key;
use barm_store::PilotVersion;
use jiff::Timestamp;
use std::sync::Arc;

/// What pilots found and read, as one version of a plan has it.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct KeptPilot {
    /// What is known of each lot.
    pub(crate) lots: Lots,
    /// The same as it is kept.
    pub(in crate::desk::room) lots_text: String,
    /// What the newest pilot read, as a file.
    pub(crate) readings: String,
    /// Whether what is kept cannot be read, as from a newer program; then nothing is known.
    pub(crate) unreadable: bool,
}

impl KeptPilot {
    /// What stands with a version.
    pub(in crate::desk::room) fn of(found: PilotVersion) -> Self {
        let PilotVersion { lots: lots_text, readings, .. } = found;
        if lots_text.is_empty() {
            return Self { readings, ..Self::default() };
        }
        let read = read_lots(lots_text.as_bytes()).lots;
        let unreadable = read.is_none();
        Self { lots: read.unwrap_or_default(), lots_text, readings, unreadable }
    }

    /// The newest pilot's sheet as it was typed.
    pub(super) fn sheet(&self) -> TypedSheet {
        TypedSheet::read(self.readings.as_bytes())
    }

    /// What the newest pilot read; nothing if that cannot be read.
    pub(super) fn read(&self) -> Option<PilotReadings> {
        let PilotFile { readings, faults, .. } = readings(self.readings.as_bytes());
        (faults.is_empty() && !readings.parts().is_empty()).then_some(readings)
    }

    /// The lots as they were before the newest pilot.
    pub(super) fn before(&self) -> Lots {
        match self.read().map(|read| (read.date, read.lots.clone(), read.parts())) {
            Some((Some(date), names, parts)) => self.lots.without(date, &names, &parts),
            _ => self.lots.clone(),
        }
    }
}

impl Room {
    /// What pilots found and read so far.
    pub(crate) fn kept_pilot(&self) -> Arc<KeptPilot> {
        self.state().pilot.clone()
    }

    /// The newest pilot's sheet as it is kept.
    pub(crate) fn kept_sheet(&self) -> TypedSheet {
        self.kept_pilot().sheet()
    }

    /// Keeps what pilots found and read as a new version of the plan and notes it in the record;
    /// gives its number. Waits for the disk.
    pub(crate) fn keep_pilot(
        &self,
        lots: &str,
        readings: &str,
        key: Key,
        now: Timestamp,
    ) -> Result<u32, DeskError> {
        Self::about_to_wait();
        let version = self.store.save_pilot(self.id, lots, readings, now)?;
        {
            let mut state = self.state_mut();
            if version == state.newest.0 {
                return Ok(version);
            }
            let (lots, readings) = (lots.to_owned(), readings.to_owned());
            let pilot = KeptPilot::of(PilotVersion { version, saved: now, lots, readings });
            let known = Known::of(&pilot.lots);
            let plan = Arc::new(Plan { known, ..Plan::clone(&state.newest.1) });
            state.plans.insert(version, plan.clone());
            state.newest = (version, plan);
            state.pilot = Arc::new(pilot);
            state.bind();
        }
        self.note_plan(version, key, now)?;
        Ok(version)
    }
}
