//! `barm fit --json`.

use super::real;
use crate::desk::CurveFit;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct FittedAnswer {
    shape: &'static str,
    parameters: Vec<ParameterRow>,
    rss: Option<f64>,
    df: usize,
    converged: bool,
}

#[derive(Serialize)]
struct ParameterRow {
    name: &'static str,
    value: Option<f64>,
    se: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
}

pub(crate) fn fitted(fit: &CurveFit) -> FittedAnswer {
    let row = |parameter: &crate::desk::Parameter| ParameterRow {
        name: parameter.name,
        value: real(parameter.value),
        se: parameter.doubt.and_then(|doubt| real(doubt.se)),
        low: parameter.doubt.and_then(|doubt| real(doubt.low)),
        high: parameter.doubt.and_then(|doubt| real(doubt.high)),
    };
    FittedAnswer {
        shape: fit.shape.word(),
        parameters: fit.parameters.iter().map(row).collect(),
        rss: real(fit.rss),
        df: fit.df,
        converged: fit.converged,
    }
}
