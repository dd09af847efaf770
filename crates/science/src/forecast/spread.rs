//! The uncertain numbers of the model, draw by draw.

use super::streams::Sources;
use crate::model::Parameters;
use crate::prior::Prior;
use crate::setup::{Setup, YeastKind};

pub(super) fn scaled(log_sd: f64, deviates: Vec<f64>) -> Vec<f64> {
    deviates.into_iter().map(|z| libm::exp(log_sd * z)).collect()
}

/// Reads the table of what is not known: one set of parameters a draw.
pub(super) fn parameters(setup: &Setup, prior: &Prior, sources: &Sources) -> Vec<Parameters> {
    let kind = setup.yeast.map_or(YeastKind::Instant, |yeast| yeast.kind);
    let mut all = vec![prior.center; sources.day.draws];
    for row in prior.rows.iter().filter(|row| row.kind.is_none_or(|only| only == kind)) {
        let levels = [
            (&sources.day, row.spread.day),
            (&sources.period, row.spread.period),
            (&sources.group, row.spread.group),
            (&sources.bag, row.spread.bag),
        ];
        for (source, sd) in levels.into_iter().filter(|(_, sd)| *sd > 0.0) {
            for way in 0..row.transform.deviates() {
                // A lot of yeast has the stream of its kind.
                let of = row.kind.map_or(way, |kind| kind as u64);
                for (one, z) in all.iter_mut().zip(source.deviates(row.name, of)) {
                    let value = (row.place)(one);
                    *value = row.transform.moved(*value, sd, z);
                }
            }
        }
    }
    all
}
