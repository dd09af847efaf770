//! From a class's readings to its answers.

use super::beyond::beyond_on_the_day;
use super::plan_file::bytes;
use super::{DeskError, OpenPlan, Outlook, Progress, Pushes, further_days, outlook};
use barm_documents::readings;
use barm_domain::outlook::{BeyondTogether, Look, Treated};
use barm_domain::plan::Plan;
use barm_domain::reading::{Reading, Rejected, Remark, SetAside};
use barm_domain::record::Counted;
use barm_domain::result::meter::{ClassMeter, MeterResult, by_meter};
use barm_domain::result::taught::{DayTaught, day_taught};
use barm_domain::result::{self, ClassResult};
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// What a class found, with all that was not taken.
#[derive(Debug)]
pub(crate) struct Analysis {
    /// Bags and questions.
    pub(crate) result: ClassResult,
    /// Whether the file gave no reading at all.
    pub(crate) nothing_taken: bool,
    /// What has to be said of the file as a whole, before anything else.
    pub(crate) above_all: Option<String>,
    /// Rows that were not taken, by the reader or by the analysis, in the order of the file.
    pub(crate) rejected: Vec<Rejected>,
    /// How the file was read, where a person should know.
    pub(crate) notes: Vec<String>,
    /// What was noted beside bags.
    pub(crate) remarks: Vec<Remark>,
    /// What was expected.
    pub(crate) outlook: Arc<Outlook>,
    /// What the breath meter says of bags, if any was held to it.
    pub(crate) meter: Option<MeterResult>,
    /// The forecasts of its days, bag by bag.
    forecasts: Arc<Vec<Treated>>,
    /// What the readings teach of the yeast, the enzymes, the cooling and the cards, if that was asked
    /// for and they teach anything.
    pub(crate) day: Option<DayTaught>,
    /// Laws of the bag model that forecasts of its days go beyond.
    pub(crate) beyond: Vec<BeyondTogether>,
}

impl Analysis {
    /// What one period found by itself. What has to be said of the whole file stays with the day.
    pub(crate) fn of_period(&self, plan: &Plan, period: &str) -> Self {
        let result = self.result.of_period(plan, period);
        let own = |remark: &&Remark| result.bags.iter().any(|bag| bag.bag.code == remark.bag);
        Self {
            nothing_taken: self.nothing_taken,
            above_all: None,
            rejected: Vec::new(),
            notes: Vec::new(),
            remarks: self.remarks.iter().filter(own).cloned().collect(),
            outlook: Arc::clone(&self.outlook),
            // So few bags of a period are held to a meter that they are told together.
            meter: None,
            forecasts: Arc::clone(&self.forecasts),
            day: None,
            beyond: self.beyond.clone(),
            result,
        }
    }
}

impl Analysis {
    /// The same with what the readings of the day teach; `poured` is how warm the water of a bag was
    /// (°C), by its code, where that was measured. Takes seconds.
    ///
    /// # Errors
    /// [`DeskError::Day`] where they fit no day that the model knows.
    pub(crate) fn with_day(
        self,
        plan: &Plan,
        poured: &BTreeMap<String, f64>,
    ) -> Result<Self, DeskError> {
        let day = day_taught(plan, &self.forecasts, &self.result, poured)?;
        Ok(Self { day, ..self })
    }
}

/// Analyzes a file of readings for a plan.
pub(crate) fn analyze(
    open: &OpenPlan,
    readings: &Path,
    progress: &dyn Progress,
) -> Result<Analysis, DeskError> {
    analyze_bytes(open, &bytes(readings)?, progress)
}

/// Analyzes what counts of a record. `plan` says what each bag is in truth.
pub(crate) fn analyze_record(
    plan: &Plan,
    counted: Counted,
    pushes: &Pushes,
    progress: &dyn Progress,
) -> Result<Analysis, DeskError> {
    let Counted { readings, remarks, set_aside } = counted;
    let analysis = found(plan, &readings, &set_aside, pushes, progress)?;
    Ok(Analysis { remarks, ..analysis })
}

/// Analyzes readings for a plan.
pub(crate) fn analyze_bytes(
    open: &OpenPlan,
    bytes: &[u8],
    progress: &dyn Progress,
) -> Result<Analysis, DeskError> {
    let file = readings::read(bytes, &open.plan);
    let pushes = Pushes {
        meter: ClassMeter::of(open.plan.known.meter(), &file.meter, file.blanks),
        readings: file.meter,
    };
    let analysis = found(&open.plan, &file.readings, &file.set_aside, &pushes, progress)?;
    let mut rejected = file.rejected;
    rejected.extend(analysis.rejected);
    rejected.sort_by_key(|rejected| rejected.line);
    Ok(Analysis {
        above_all: file.above_all,
        rejected,
        notes: file.notes,
        remarks: file.remarks,
        ..analysis
    })
}

/// What heights say, wherever they come from, each bag beside the forecast of its own day.
fn found(
    plan: &Plan,
    readings: &[Reading],
    set_aside: &[SetAside],
    pushes: &Pushes,
    progress: &dyn Progress,
) -> Result<Analysis, DeskError> {
    let outlook = outlook(plan, Look::default(), progress)?;
    let mut forecasts = outlook.treated.clone();
    forecasts.extend(further_days(plan, Look::default(), progress));
    let result = result::analyze(plan, &forecasts, readings, set_aside);
    Ok(Analysis {
        nothing_taken: readings.is_empty(),
        above_all: None,
        rejected: result.rejected.clone(),
        notes: Vec::new(),
        remarks: Vec::new(),
        beyond: beyond_on_the_day(&forecasts, &result),
        result,
        outlook: Arc::new(outlook),
        meter: (!pushes.readings.is_empty())
            .then(|| by_meter(plan, &forecasts, &pushes.readings, set_aside, &pushes.meter)),
        forecasts: Arc::new(forecasts),
        day: None,
    })
}
