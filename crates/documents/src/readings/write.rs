//! Writes a readings file that [`read`](super::read) takes again.

use barm_domain::reading::{Reading, SetAside};
use barm_domain::result::meter::MeterReading;
use std::borrow::Cow;
use std::collections::BTreeSet;

/// A file of heights, a row each, with the rule of bags that were set aside; under it what a breath meter
/// showed, if it did. How much gas was held to the meter has no column and is not in it.
pub fn write(readings: &[Reading], set_aside: &[SetAside], meter: &[MeterReading]) -> Vec<u8> {
    let mut told = BTreeSet::new();
    let mut rule = |bag: &str| {
        let aside = set_aside.iter().find(|one| one.bag == bag)?;
        told.insert(bag.to_owned()).then(|| aside.rule.clone())
    };
    let mut rows: Vec<[String; 4]> = readings
        .iter()
        .map(|one| {
            let (minute, height) = (one.minute.to_string(), one.height_mm.to_string());
            [one.bag.clone(), minute, height, rule(&one.bag).unwrap_or_default()]
        })
        .collect();
    for aside in set_aside {
        if let Some(rule) = rule(&aside.bag) {
            rows.push([aside.bag.clone(), String::new(), String::new(), rule]);
        }
    }
    let mut file = table(&["bag", "minute", "height (mm)", "set aside"], rows);
    if !meter.is_empty() {
        let or_blank = |minute: Option<f64>| minute.map(|one| one.to_string());
        let rows = meter.iter().map(|one| {
            [
                one.bag.clone(),
                or_blank(one.minute).unwrap_or_default(),
                one.turn.map(|turn| turn.to_string()).unwrap_or_default(),
                one.percent.to_string(),
            ]
        });
        file.extend_from_slice(b"\r\n");
        file.extend(table(&["bag", "minute", "turn", "meter (%)"], rows));
    }
    file
}

fn table(heads: &[&str; 4], rows: impl IntoIterator<Item = [String; 4]>) -> Vec<u8> {
    let rows = rows.into_iter().map(|row| row.map(Cow::Owned));
    crate::rfc4180::write(heads, rows)
}
