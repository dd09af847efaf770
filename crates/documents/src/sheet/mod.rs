//! The sheets that go to paper, as plain values: words, numbers and choices, nothing to work out.
//!
//! Whoever fills them has done the thinking; this module only lays out. All text prints as itself, whatever
//! signs it holds. The serial form of these values is read by our own page templates and promised to nobody.

mod bench_card;
mod data_sheet;
mod forecast;
mod gauge;
#[cfg(feature = "pdf")]
mod hand;
mod head;
mod join;
mod labels;
mod packet;
mod pilot;
mod planning;
mod prep;
#[cfg(feature = "pdf")]
mod print;
#[cfg(feature = "pdf")]
mod print_labels;
#[cfg(feature = "pdf")]
mod print_pilot;
#[cfg(feature = "pdf")]
mod print_results;
mod results;
mod slides;
mod squares;
mod substitute;
mod tally;

#[cfg(feature = "pdf")]
pub use bench_card::bench_cards_pdf;
pub use bench_card::{BenchCard, BenchCards, CardAmount, CardOwn, CardStep, CardThing};
#[cfg(feature = "pdf")]
pub use data_sheet::data_sheets_pdf;
pub use data_sheet::{DataRow, DataSheet, DataSheets};
pub use forecast::{ForecastPanel, ForecastRow, ForecastSheet};
#[cfg(feature = "pdf")]
pub use gauge::gauges_pdf;
pub use gauge::{GaugeSheet, Gauges};
#[cfg(feature = "pdf")]
pub use hand::Face;
pub use head::{Head, HeadBag};
pub use join::JoinSheet;
pub use labels::{Label, Labels, TestPrint};
pub use packet::{
    Asked, Changeovers, Dated, GroupTimes, Hazard, Heed, Hoped, Lettered, LimitRow, Named,
    Overview, Packet, Pause, PauseRow, PeriodRow, RunSheet, Step, Stretch,
};
pub use pilot::{PilotBagPicture, PilotBagRow, PilotReport, PilotSheet, PilotStep, PilotTable};
#[cfg(feature = "pdf")]
pub use planning::planning_pdf;
pub use planning::{
    PlanningKind, PlanningLevel, PlanningQuestion, PlanningSheet, PlanningSheets,
    PlanningVariable,
};
pub use prep::{PeriodTrays, PrepSheet, Purchase, Stock, Total, Tray, TrayBag, WaterMix};
#[cfg(feature = "pdf")]
pub use print::{forecast_pdf, packet_pdf, prep_pdf, results_pdf, substitute_pdf};
#[cfg(feature = "pdf")]
pub use print_labels::{join_pdf, labels_pdf, test_print_pdf};
#[cfg(feature = "pdf")]
pub use print_pilot::{pilot_pdf, pilot_report_pdf};
#[cfg(feature = "pdf")]
pub use print_results::{slides_pdf, summary_pdf};
pub use results::{
    Claim, Comparison, Counted, DayPart, Gap, GasRow, LeftOut, MeterPart, PeriodResult,
    QuestionResult, Rejected, ResultsReport, Slope,
};

pub use slides::{ClassSlides, Drawn, FamilySummary, Prompted, SlideWords, Slides};
#[cfg(feature = "pdf")]
pub use squares::graph_paper_pdf;
pub use squares::{GraphPaper, GraphSheet, Squares};
pub use substitute::{SubstituteHour, SubstitutePack, SubstituteStep};
#[cfg(feature = "pdf")]
pub use tally::tally_pdf;
pub use tally::{TallyBag, TallyRow, TallySheet, TallySheets};

/// What stands at the foot of every page of a sheet, and what language it is in.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Imprint {
    /// The school, as the plan names it.
    pub school: String,
    /// The code of the sheet, such as `RES-D-M`.
    pub sheet: String,
    /// Whether school, class and readings are made up; every page says so.
    pub invented: bool,
    /// Whether the readings are of a rehearsal of a true plan; every page says so.
    pub rehearsal: bool,
    /// The language of the text as a BCP 47 tag, such as `en`.
    pub language: String,
}

/// A sentence or two under a short heading.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Entry {
    /// The heading, two or three words.
    pub head: String,
    /// What there is to say.
    pub says: String,
}

/// A hazard and what to do about it.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Caution {
    /// The stable code, such as `S05`.
    pub code: String,
    /// What could hurt and what to do; that the school's own rules come first is said once over all.
    pub says: String,
    /// Who says so.
    pub source: Option<String>,
}
