//! The whole job on an invented school.

use super::check::findings;
use super::rehearse::{Stage, Wish, claimed_before, done_before, stage_bytes};
use super::room::Kind;
use super::{Analysis, DeskError, OpenPlan, Progress, analyze_bytes, paper, plan_file};
use barm_domain::outlook::Look;
use barm_domain::pilot::Lots;
use barm_domain::prep::{self, Prep};
use barm_store::written::{Folder, Outcome};
use rayon::join;
use std::path::{Path, PathBuf};

const PLAN: &[u8] = include_bytes!("../demo/plan.toml");
/// The invented readings as a table.
pub(super) const READINGS: &[u8] = include_bytes!("../demo/readings.csv");

/// The invented claims of its first period.
const CLAIMS: &[u8] = include_bytes!("../demo/claims.json");

/// The invented plan as text.
pub(crate) fn plan() -> &'static str {
    std::str::from_utf8(PLAN).unwrap_or_default()
}

/// The period of the invented day that a served demonstration is in.
const RUNNING: &str = "4";

/// What the demo did.
#[derive(Debug)]
pub(crate) struct Demo {
    /// The plan, as it lies in the folder.
    pub(crate) open: OpenPlan,
    /// What to buy and mix.
    pub(crate) prep: Prep,
    /// What was expected and what the class found.
    pub(crate) analysis: Analysis,
    /// What was written, and whether a file of the person's own was left in its place.
    pub(crate) files: Vec<DemoFile>,
}

/// One file of the demo.
#[derive(Debug)]
pub(crate) struct DemoFile {
    /// What it is.
    pub(crate) what: &'static str,
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// Whether the person's own was left in its place.
    pub(crate) kept_yours: bool,
}

/// Writes the invented plan and readings into a folder, then does the whole job on what lies
/// there: a person who has changed the plan sees the job done on the changed plan.
pub(crate) fn demo(folder: &Path, progress: &dyn Progress) -> Result<Demo, DeskError> {
    let mut open_folder = Folder::open(folder)?;
    let mut files = Vec::new();
    let mut put = |what, name: &str, bytes: &[u8]| -> Result<PathBuf, DeskError> {
        let kept_yours = open_folder.write(name, bytes)? == Outcome::KeptYours;
        let path = open_folder.path_of(name);
        files.push(DemoFile { what, path: path.clone(), kept_yours });
        Ok(path)
    };
    let plan_path = put("plan", "plan.toml", PLAN)?;
    let readings_path = put("readings", "readings.csv", READINGS)?;
    let open = plan_file::open_plan(&plan_path)?;
    let readings = plan_file::bytes(&readings_path)?;
    let prep = prep::prep(&open.plan)?;
    let analysis = analyze_bytes(&open, &readings, progress)?;
    let outlook = &analysis.outlook;
    let found = findings(&open.plan, outlook, Look::default(), progress);
    progress.step("setting pages", 0, 3);
    let (prep_pdf, (results_pdf, forecast_pdf)) = join(
        || paper::prep_pdf(&open.plan, &prep, &found, paper::Size::Letter),
        || {
            join(
                || paper::results_pdf(&open.plan, &analysis, paper::Size::Letter),
                || paper::forecast_pdf(&open.plan, outlook, paper::Size::Letter),
            )
        },
    );
    put("forecast, for the teacher only", "forecast.pdf", &forecast_pdf?)?;
    put("prep sheet", "prep.pdf", &prep_pdf?)?;
    put("results report", "results.pdf", &results_pdf?)?;
    progress.step("setting pages", 3, 3);
    Ok(Demo { open, prep, analysis, files })
}

/// Gets the invented day ready to be served: the periods before the fourth are over, and its
/// groups are simulated. Waits for the disk.
pub(crate) fn demo_stage(folder: &Path, speed: f64) -> Result<Stage, DeskError> {
    let wish = Wish { period: Some(RUNNING), seed: 4, speed, kind: Kind::Invented };
    let stage = stage_bytes(PLAN, Path::new("plan.toml"), folder, wish, &Lots::default())?;
    done_before(&stage.room, RUNNING, READINGS)?;
    claimed_before(&stage.room, RUNNING, CLAIMS)?;
    Ok(stage)
}
