//! What was foretold of bags that are read, and whether their average kept to it.
//!
//! Nothing is worked out here: what the room foresaw ([`super::Room::foresee`]) is looked at.

use super::Scene;
use barm_documents::chart::{CurvesChart, Frame, Ground, Moment, Sheaf, Strand, Words};
use barm_documents::chart_table;
use barm_domain::code::BagCode;
use barm_domain::outlook::{Curve, Foretold, ForetoldAt, Outside, further_days};
use std::collections::BTreeMap;

/// Bands of treatments, as far as they were worked out.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Foretelling {
    bands: Vec<Foretold>,
    /// Whether some are still being worked out.
    pub(crate) working: bool,
    /// Whether bags stood in another room or air than that of the first day, for which it is.
    pub(crate) first_day: bool,
}

impl Foretelling {
    /// What was foretold of these bags, each with its treatment, by the lots in use when each was sealed.
    pub(super) fn of<'a>(
        scene: &Scene<'_>,
        bags: impl Iterator<Item = (BagCode, &'a str)>,
    ) -> Self {
        let mut rises: BTreeMap<&str, Vec<&Curve>> = BTreeMap::new();
        let mut working = false;
        for (code, treatment) in bags {
            let Some(outlook) = scene.outlook_of(code) else {
                working = true;
                continue;
            };
            let mut entries = outlook.entries.iter();
            let Some(entry) = entries.find(|entry| entry.treatment == treatment) else {
                continue;
            };
            let known = rises.entry(treatment).or_default();
            if !known.iter().any(|own| std::ptr::eq(*own, &entry.rise_mm)) {
                known.push(&entry.rise_mm);
            }
        }
        let bands = rises.into_iter().filter_map(|(name, all)| Foretold::of(name, all));
        Self {
            bands: bands.collect(),
            working,
            first_day: !further_days(scene.plan).is_empty(),
        }
    }

    fn band(&self, treatment: &str) -> Option<&Foretold> {
        self.bands.iter().find(|band| band.treatment == treatment)
    }

    /// The bands of what is drawn, as they are drawn.
    pub(super) fn strands(&self, sheaves: &[Sheaf]) -> Vec<Strand> {
        let moment = |(minute, at): (f64, ForetoldAt)| Moment {
            minute,
            median: at.median,
            low: at.low,
            high: at.high,
        };
        let strand = |sheaf: &Sheaf| {
            let moments = self.band(&sheaf.name)?.minutes().map(moment).collect();
            Some(Strand { name: sheaf.name.clone(), look: sheaf.look, moments })
        };
        sheaves.iter().filter_map(strand).collect()
    }

    /// The same in numbers, beside the averages of what is drawn.
    pub(super) fn beside(&self, sheaves: &[Sheaf]) -> Vec<BandRow> {
        let row = |sheaf: &Sheaf| {
            let band = self.band(&sheaf.name)?;
            // At the zero reading nothing has risen, by definition.
            let read: Vec<(f64, f64)> =
                sheaf.mean.iter().filter(|(minute, _)| *minute > 0.0).copied().collect();
            let at = read
                .iter()
                .filter_map(|(minute, mean)| Some((*minute, *mean, band.at(*minute)?)));
            let (at, left) = (at.collect(), band.left_by(&read));
            Some(BandRow { treatment: sheaf.name.clone(), at, left })
        };
        sheaves.iter().filter_map(row).collect()
    }
}

/// What was foretold of a treatment, beside its average.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BandRow {
    /// The treatment.
    pub(crate) treatment: String,
    /// Minute, average rise (mm), and what was foretold for it.
    pub(crate) at: Vec<(f64, f64, ForetoldAt)>,
    /// Where the average left the band.
    pub(crate) left: Vec<Outside>,
}

/// Curves of a class on a page of the teacher's, with what was foretold of them.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct CurvesShown {
    /// For a wide page and for a narrow one.
    pub(crate) pictures: [String; 2],
    /// A row for each treatment with a band.
    pub(crate) rows: Vec<BandRow>,
    /// Whether some bands are still being worked out.
    pub(crate) working: bool,
    /// Whether bags stood in another room or air than the one for which it was foretold.
    pub(crate) first_day: bool,
}

impl CurvesShown {
    /// Draws them; nothing where there is no curve.
    pub(super) fn of(
        title: &str,
        sheaves: &[Sheaf],
        foretelling: &Foretelling,
    ) -> Option<Self> {
        let bands = foretelling.strands(sheaves);
        let chart = CurvesChart { title, sheaves, bands: &bands };
        let words = Words::ENGLISH;
        let pictures = [(960.0, 15.0), (340.0, 13.0)].map(|(width, type_size)| {
            chart.svg(&Frame { width, type_size, ground: Ground::Screen, words })
        });
        (!sheaves.is_empty()).then(|| Self {
            pictures,
            rows: foretelling.beside(sheaves),
            working: foretelling.working,
            first_day: foretelling.first_day,
        })
    }
}

/// Averages and bands as a table for a spreadsheet.
pub(super) fn table(sheaves: &[Sheaf], foretelling: &Foretelling) -> Vec<u8> {
    chart_table(sheaves, &foretelling.strands(sheaves))
}
