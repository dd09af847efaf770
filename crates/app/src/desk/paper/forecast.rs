//! The forecast on paper, for the teacher only.

use super::{imprint, looks, unforeseen};
use crate::desk::{Outlook, beyond, beyond_says};
use barm_documents::chart::{Estimate, Moment, Strand};
use barm_documents::sheet::{Entry as Note, ForecastPanel, ForecastRow, ForecastSheet};
use barm_domain::outlook::{Curve, Entry};
use barm_domain::plan::{CONTROLS, Plan};

/// The forecast of a plan as a sheet.
pub(crate) fn forecast_sheet(plan: &Plan, outlook: &Outlook) -> ForecastSheet {
    let entries = &outlook.entries;
    let panels = crate::desk::questions(plan)
        .into_iter()
        .filter_map(|(id, asks)| panel(plan, entries, id, asks))
        .collect();
    let note = |head: &str, says: String| Note { head: head.to_owned(), says };
    ForecastSheet {
        imprint: imprint(plan, "FORECAST"),
        title: plan.title.clone(),
        summary: format!("What {} kinds of bag may do", outlook.treated.len()),
        panels,
        notes: outlook
            .failed
            .iter()
            .map(|error| note("No forecast", unforeseen(error)))
            .chain(
                beyond_says(plan, &beyond(entries))
                    .into_iter()
                    .map(|says| note("Beyond what is known", says)),
            )
            .chain([
            note(
                "Bands",
                "8 of 10 bags are expected within a band. Heights are rises above the bag’s own \
                 zero reading."
                    .into(),
            ),
            note(
                "Shows",
                format!(
                    "A difference shows when two rises differ by {} mm or more, which two ruler \
                     readings can tell.",
                    plan.readable_mm
                ),
            ),
            match plan.known.says() {
                Some(says) => note("Yours", says),
                None => note(
                    "Not yet yours",
                    "The model has not met your yeast and your bags. Try them in a pilot, or one bag of \
                     each food in your room, before the day."
                        .into(),
                ),
            },
        ]).collect(),
    }
}

fn panel(plan: &Plan, entries: &[Entry], id: &str, asks: &str) -> Option<ForecastPanel> {
    let own: Vec<&Entry> = entries.iter().filter(|entry| entry.question == id).collect();
    let last = own.first()?.last_minute();
    let references: Vec<&str> =
        own.iter().filter(|e| e.reference).map(|e| e.treatment.as_str()).collect();
    let reference = match references.as_slice() {
        _ if id == CONTROLS => String::new(),
        [only] => (*only).to_owned(),
        [] => "each other".to_owned(),
        _ => "each treatment’s own reference".to_owned(),
    };
    // The bell of the shortest period, counted from its zero reading.
    let bell = plan
        .periods
        .iter()
        .map(|period| period.length_min - plan.timing.mixing_min)
        .min_by(f64::total_cmp);
    Some(ForecastPanel {
        asks: asks.to_owned(),
        reference,
        strands: own.iter().map(|entry| strand(plan, entry)).collect(),
        last_reading: f64::from(last),
        bell,
        rows: own.iter().map(|entry| row(plan, entry)).collect(),
    })
}

pub(crate) fn strand(plan: &Plan, entry: &Entry) -> Strand {
    let curve = &entry.rise_mm;
    let moments = curve.median.iter().zip(&curve.low).zip(&curve.high).enumerate();
    Strand {
        name: entry.treatment.clone(),
        look: looks::look(plan, &entry.treatment),
        moments: moments
            .map(|(minute, ((&median, &low), &high))| Moment {
                minute: minute as f64,
                median,
                low,
                high,
            })
            .collect(),
    }
}

fn last(curve: &Curve) -> Estimate {
    let (value, low, high) = curve.last();
    Estimate { value, low, high }
}

fn row(plan: &Plan, entry: &Entry) -> ForecastRow {
    let vents_early =
        entry.vent_by_min.is_some_and(|minute| minute <= f64::from(entry.last_minute()));
    let remark = if vents_early {
        "Bag too small"
    } else if entry.question == CONTROLS {
        "Control"
    } else if entry.beside.is_none() {
        "Reference"
    } else if entry.lacks_reference() {
        "No reference"
    } else if entry.readable_at_min.is_some() {
        "Shows"
    } else {
        "May not show"
    };
    ForecastRow {
        treatment: entry.treatment.clone(),
        look: looks::look(plan, &entry.treatment),
        rise: last(&entry.rise_mm),
        gas_ml: last(&entry.gas_ml),
        ethanol_g: last(&entry.ethanol_g),
        readable_at: entry.readable_at_min.map(f64::from),
        chance: entry.chance_readable,
        fill: entry.peak_fill,
        vent_by: entry.vent_by_min,
        remark: remark.to_owned(),
    }
}
