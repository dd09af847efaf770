//! `barm facts --json`.

use crate::desk::Fact;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct FactRow<'a> {
    name: &'a str,
    value: f64,
    unit: &'a str,
    low: Option<f64>,
    high: Option<f64>,
    status: &'a str,
    source: &'a str,
}

pub(crate) fn facts(facts: &[Fact]) -> Vec<FactRow<'_>> {
    let row = |fact: &'_ Fact| FactRow {
        name: fact.name,
        value: fact.value,
        unit: fact.unit,
        low: fact.range.map(|(low, _)| low),
        high: fact.range.map(|(_, high)| high),
        status: fact.status.word(),
        source: fact.source,
    };
    facts.iter().map(row).collect()
}
