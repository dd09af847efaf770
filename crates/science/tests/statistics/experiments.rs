//! Published experiments and what R makes of them, from the tables under `tests/rows`.

use crate::table::{number, rows};
use std::collections::HashMap;

/// One row of an experiment.
#[derive(Debug, Clone)]
pub(crate) struct Trial {
    pub(crate) value: f64,
    pub(crate) treatment: String,
    pub(crate) second: String,
    pub(crate) third: String,
    pub(crate) block: String,
}

/// All rows of one experiment.
pub(crate) fn experiment(set: &str) -> Vec<Trial> {
    let found: Vec<Trial> = rows(include_str!("../rows/experiments.csv"))
        .into_iter()
        .filter(|row| row["set"] == set)
        .map(|row| Trial {
            value: number(&row["value"]),
            treatment: row["treatment"].clone(),
            second: row["second"].clone(),
            third: row["third"].clone(),
            block: row["block"].clone(),
        })
        .collect();
    assert!(!found.is_empty(), "no experiment {set}");
    found
}

/// Values of each treatment, in the order of their first row.
pub(crate) fn by_treatment(trials: &[Trial]) -> Vec<(String, Vec<f64>)> {
    let mut groups: Vec<(String, Vec<f64>)> = Vec::new();
    for trial in trials {
        match groups.iter_mut().find(|(name, _)| *name == trial.treatment) {
            Some((_, values)) => values.push(trial.value),
            None => groups.push((trial.treatment.clone(), vec![trial.value])),
        }
    }
    groups
}

/// Numbers the different texts, in the order of their first use.
pub(crate) fn numbered<'a>(texts: impl Iterator<Item = &'a str>) -> Vec<usize> {
    let mut known: Vec<&str> = Vec::new();
    texts
        .map(|text| {
            known.iter().position(|k| *k == text).unwrap_or_else(|| {
                known.push(text);
                known.len() - 1
            })
        })
        .collect()
}

/// R's values for one case, by call and quantity.
pub(crate) fn r_values(case: &str) -> HashMap<(String, String), f64> {
    rows(include_str!("../rows/r_statistics.csv"))
        .into_iter()
        .filter(|row| row["case"] == case)
        .map(|row| ((row["call"].clone(), row["quantity"].clone()), number(&row["value"])))
        .collect()
}

/// Fails unless two numbers agree within `within` of the larger of `wanted` and `scale`.
#[track_caller]
pub(crate) fn near(what: &str, ours: f64, wanted: f64, within: f64, scale: f64) {
    let off = (ours - wanted).abs();
    assert!(off <= within * wanted.abs().max(scale), "{what}: {ours} where {wanted} is wanted");
}
