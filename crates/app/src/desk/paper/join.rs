//! The join sheet: the address of the day for the wall.

use super::student_imprint;
use crate::desk::DeskError;
use crate::desk::print::Job;
use barm_documents::sheet::{self, JoinSheet};

/// The join sheet as a PDF.
pub(crate) fn join_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    Ok(sheet::join_pdf(&join_sheet(job)?, job.wish.size.into())?)
}

fn join_sheet(job: &Job<'_>) -> Result<JoinSheet, DeskError> {
    let address = job.wish.address.as_ref().ok_or(DeskError::NoAddress)?.join();
    let words = job.wish.words;
    let say = |key: &str| words.say(key);
    Ok(JoinSheet {
        imprint: student_imprint(job, "JOIN"),
        title: say("join-title"),
        aside: job.plan.title.clone(),
        open: say("join-sheet-open"),
        square: address.clone(),
        square_says: words.say_with("join-sheet-square", &[("address", &address)]),
        address,
        camera: say("join-sheet-camera"),
        steps: ["join-sheet-class", "join-sheet-group"].map(say).to_vec(),
        again: say("join-sheet-again"),
    })
}
