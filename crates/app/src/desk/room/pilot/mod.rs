//! The pilot's page: what to do, what was read, what it taught, and the lots that forecasts go by.

mod act;
mod form;
mod kept;
mod learned;
#[cfg(test)]
mod tests;
mod view;

pub(crate) use act::{
    Change, Faults, Looked, Saved, change_lots, go_back, keep_file, look_at_file, put_away,
    save_parts,
};
pub(crate) use barm_documents::pilot_text::TypedSheet;
pub(crate) use form::{Field, PartForm, PartStands, Table};
pub(crate) use kept::KeptPilot;
pub(crate) use learned::{Learned, PilotDesk};
pub(crate) use view::{Past, PilotView, ToDo, pilot_view};
