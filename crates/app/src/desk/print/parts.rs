//! The table of what can be printed. A new part is one row here, and one file of `desk::paper`
//! that fills its pages.

use super::Job;
use crate::desk::paper::{self, On};
use crate::desk::{Analysis, DeskError, Wording, say};

/// Something that can be printed: one file.
#[derive(Debug)]
pub(crate) struct Part {
    /// How it is asked for, and how its file is called.
    pub(crate) key: &'static str,
    /// What the name of its file ends in.
    pub(crate) ending: &'static str,
    /// What it is, for the teacher, in a few words.
    pub(crate) says: fn(Wording) -> String,
    /// Whether a plan has use for it; otherwise it is made only when it is asked for by name.
    pub(crate) of_use: fn(&Job<'_>) -> bool,
    /// Makes its bytes.
    pub(crate) make: fn(&Job<'_>) -> Result<Vec<u8>, DeskError>,
}

/// Every part, in the order in which a teacher needs them.
pub(crate) static PARTS: &[Part] = &[
    Part {
        key: "labels",
        ending: "pdf",
        says: |w| say!(w, "print-labels"),
        of_use: has_bags,
        make: |job| paper::labels_pdf(job, On::Bag),
    },
    Part {
        key: "card-labels",
        ending: "pdf",
        says: |w| say!(w, "print-card-labels"),
        of_use: has_bags,
        make: |job| paper::labels_pdf(job, On::Card),
    },
    Part {
        key: "test-print",
        ending: "pdf",
        says: |w| say!(w, "print-test-print"),
        of_use: has_bags,
        make: paper::test_print_pdf,
    },
    Part {
        key: "packet",
        ending: "pdf",
        says: |w| say!(w, "print-packet"),
        of_use: always,
        make: paper::packet_pdf,
    },
    Part {
        key: "substitute",
        ending: "pdf",
        says: |w| say!(w, "print-substitute"),
        of_use: always,
        make: paper::substitute_pdf,
    },
    Part {
        key: "calendar",
        ending: "ics",
        says: |w| say!(w, "print-calendar"),
        of_use: always,
        make: paper::calendar_ics,
    },
    Part {
        key: "prep",
        ending: "pdf",
        says: |w| say!(w, "print-prep"),
        of_use: always,
        make: |job| {
            paper::prep_pdf_of(job.kind, job.plan, job.prep()?, job.found(), job.wish.size)
        },
    },
    Part {
        key: "planning",
        ending: "pdf",
        says: |w| say!(w, "print-planning"),
        of_use: has_groups,
        make: paper::planning_pdf,
    },
    Part {
        key: "bench-cards",
        ending: "pdf",
        says: |w| say!(w, "print-bench-cards"),
        of_use: has_groups,
        make: paper::bench_cards_pdf,
    },
    Part {
        key: "data-sheets",
        ending: "pdf",
        says: |w| say!(w, "print-data-sheets"),
        of_use: has_bags,
        make: paper::data_sheets_pdf,
    },
    Part {
        key: "tally",
        ending: "pdf",
        says: |w| say!(w, "print-tally"),
        of_use: has_bags,
        make: paper::tally_pdf,
    },
    Part {
        key: "graph-paper",
        ending: "pdf",
        says: |w| say!(w, "print-graph-paper"),
        of_use: has_readings_planned,
        make: paper::graph_paper_pdf,
    },
    Part {
        key: "gauge",
        ending: "pdf",
        says: |w| say!(w, "print-gauge"),
        of_use: has_bags,
        make: paper::gauges_pdf,
    },
    Part {
        key: "forecast",
        ending: "pdf",
        says: |w| say!(w, "print-forecast"),
        of_use: always,
        make: |job| paper::forecast_pdf_of(job.kind, job.plan, job.outlook()?, job.wish.size),
    },
    Part {
        key: "results",
        ending: "pdf",
        says: |w| say!(w, "print-results"),
        of_use: has_readings,
        make: |job| {
            let day = analysis(job)?;
            let own = job.wish.period.as_ref().map(|name| day.of_period(job.plan, name));
            let found = own.as_ref().unwrap_or(day);
            paper::results_pdf_with(job.kind, job.plan, found, &job.beside, job.wish.size)
        },
    },
    Part {
        key: "summary",
        ending: "pdf",
        says: |w| say!(w, "print-summary"),
        of_use: has_readings,
        make: |job| paper::summary_pdf(job, analysis(job)?),
    },
    Part {
        key: "slides",
        ending: "pdf",
        says: |w| say!(w, "print-slides"),
        of_use: has_readings,
        make: |job| paper::slides_pdf(job, analysis(job)?),
    },
    Part {
        key: "join",
        ending: "pdf",
        says: |w| say!(w, "print-join"),
        of_use: |job| job.wish.address.is_some(),
        make: paper::join_pdf,
    },
];

fn always(_: &Job<'_>) -> bool {
    true
}

fn has_groups(job: &Job<'_>) -> bool {
    job.periods().any(|period| period.groups > 0)
}

fn has_bags(job: &Job<'_>) -> bool {
    job.bags().next().is_some()
}

fn has_readings_planned(job: &Job<'_>) -> bool {
    job.periods().any(|period| job.plan.last_reading_min(period) > 0)
}

fn has_readings(job: &Job<'_>) -> bool {
    job.readings
}

/// What the class found.
fn analysis<'a>(job: &Job<'a>) -> Result<&'a Analysis, DeskError> {
    job.analysis.ok_or(DeskError::NoReadings)
}

impl Part {
    /// The part that is asked for by this key.
    pub(crate) fn of(key: &str) -> Option<&'static Self> {
        PARTS.iter().find(|part| part.key == key)
    }

    /// The name of its file where nothing else is to be told by it: `labels.pdf`.
    pub(crate) fn plain_name(&self) -> String {
        format!("{}.{}", self.key, self.ending)
    }

    /// The name of its file: `labels.pdf`, or `labels-period-3.pdf` if it is for one period only.
    pub(crate) fn file_name(&self, job: &Job<'_>) -> String {
        let period = job.wish.period.as_ref().map(|name| {
            let place = job.plan.periods.iter().position(|period| period.name == *name);
            let plain = !name.is_empty() && name.chars().all(|c| c.is_ascii_alphanumeric());
            // A name that no file may have gives way to the place of the period in the plan.
            let name = if plain { name.clone() } else { (place.unwrap_or(0) + 1).to_string() };
            format!("-period-{name}")
        });
        format!("{}{}.{}", self.key, period.unwrap_or_default(), self.ending)
    }
}
