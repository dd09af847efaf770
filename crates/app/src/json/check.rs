//! `barm check --json`.

use crate::desk::Located;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Found<'a> {
    severity: &'static str,
    code: &'a str,
    message: &'a str,
    fix: &'a str,
    #[serde(rename = "where")]
    place: Option<Place>,
    source: Option<&'a str>,
}

#[derive(Serialize)]
struct Place {
    line: usize,
    column: usize,
}

pub(crate) fn findings(found: &[Located]) -> Vec<Found<'_>> {
    found.iter().map(one).collect()
}

fn one(located: &Located) -> Found<'_> {
    Found {
        severity: located.finding.severity.word(),
        code: located.finding.code,
        message: &located.finding.message,
        fix: &located.finding.fix,
        place: located.place.map(|place| Place { line: place.line, column: place.column }),
        source: located.finding.source,
    }
}
