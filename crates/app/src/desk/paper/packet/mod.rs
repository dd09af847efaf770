//! The teacher's packet: a chapter a file.

mod changeover;
mod hazards;
mod limits;
mod overview;
mod run_sheet;
mod steps;

use super::{forecast, prep, teacher_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use barm_documents::sheet::{self, Packet};

/// The packet as a PDF.
pub(crate) fn packet_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    Ok(sheet::packet_pdf(&packet(job)?, job.wish.size.into())?)
}

fn packet(job: &Job<'_>) -> Result<Packet, DeskError> {
    let (plan, ready, outlook) = (job.plan, job.prep()?, job.outlook()?);
    let prep = prep::on_paper(plan, ready, job.found(), job.wish.size.into());
    let hazards = hazards::hazards(job.found());
    Ok(Packet {
        imprint: teacher_imprint(job, "PACKET"),
        title: plan.title.clone(),
        summary: prep.summary.clone(),
        overview: overview::overview(job, ready),
        runs: run_sheet::run_sheets(job, ready, &outlook.entries, &hazards),
        changeovers: changeover::changeovers(plan, ready, job.wish.size.into()),
        forecast: forecast::forecast_sheet(plan, outlook),
        limits: limits::limits(plan),
        clearing: hazards::clearing(plan, ready),
        hazards,
        prep,
    })
}
