//! The tally sheet of a class, and its height gauges.

use super::data_sheet::digits;
use super::seats::{Bench, seats};
use super::squares::gauge_to;
use super::{face, look, student_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use crate::desk::room::benches::name;
use barm_documents::sheet::{
    self, GaugeSheet, Gauges, Head, TallyBag, TallyRow, TallySheet, TallySheets,
};
use barm_domain::code::BagCode;
use barm_domain::plan::{Period, PlannedBag};
use barm_domain::sheet_code::SheetCode;

/// Marks below and above zero on the line for dots. Each is as many millimeters as the class or its
/// teacher writes: how far cards will rise is not told to students, and a full bag stands far higher
/// than most do.
const BELOW: u32 = 5;
const ABOVE: u32 = 30;

/// The tally sheets as a PDF, one for each period.
pub(crate) fn tally_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let sheets = TallySheets {
        imprint: student_imprint(job, "TALLY"),
        title: job.plan.title.clone(),
        sheets: job.periods().map(|period| tally_sheet(job, period)).collect(),
    };
    Ok(sheet::tally_pdf(&sheets, face(job))?)
}

fn tally_sheet(job: &Job<'_>, period: &Period) -> TallySheet {
    let (plan, words) = (job.plan, job.wish.words);
    let sign = SheetCode::of(plan, &period.name, 0).map_or(1, SheetCode::period);
    let rows = plan.treatments().filter_map(|(_, treatment)| {
        let own =
            |bag: &&PlannedBag| bag.period == period.name && bag.treatment == treatment.name;
        let mut bags: Vec<&PlannedBag> = plan.bags.iter().filter(own).collect();
        bags.sort_by_key(|bag| (bag.group, bag.place, &bag.code));
        let bag = |bag: &&PlannedBag| TallyBag {
            name: bag.code.parse::<BagCode>().map_or_else(|_| bag.code.clone(), name),
            digits: digits(job, bag),
        };
        (!bags.is_empty()).then(|| TallyRow {
            treatment: words.treatment(&treatment.name),
            look: look(plan, &treatment.name),
            bags: bags.iter().map(bag).collect(),
        })
    });
    TallySheet {
        head: Head {
            sheet: format!("P{sign}-TALLY"),
            sign,
            whose: words.say_with("wall-period", &[("period", &period.name)]),
            name: words.say("tally-name"),
        },
        below: BELOW,
        above: ABOVE,
        rows: rows.collect(),
    }
}

/// The height gauges as a PDF: a strip for every bench of the largest period.
pub(crate) fn gauges_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let words = job.wish.words;
    let top = gauge_to(job);
    let count = GaugeSheet::fits(job.wish.size.into(), top, job.wish.large);
    let sheet = GaugeSheet {
        head: Head {
            sheet: "GAUGE".into(),
            sign: 0,
            whose: words.say("gauge-name"),
            name: String::new(),
        },
        steps: ["gauge-cut", "gauge-fold", "gauge-stand", "gauge-read"]
            .map(|key| words.say(key))
            .to_vec(),
        wide: GaugeSheet::WIDE,
        top,
        cap: GaugeSheet::CAP,
        across: GaugeSheet::ACROSS,
        count,
    };
    let benches = seats(job, "gauge-name", Bench::Too);
    let of_period =
        |period: &Period| benches.iter().filter(|seat| seat.period.name == period.name).count();
    let most = job.periods().map(of_period).max().unwrap_or(1).max(1);
    let pages = most.div_ceil(count as usize);
    let gauges = Gauges {
        imprint: student_imprint(job, "GAUGE"),
        title: job.plan.title.clone(),
        sheets: vec![sheet; pages],
    };
    Ok(sheet::gauges_pdf(&gauges, face(job))?)
}
