//! `barm years --json`.

use super::{FORMAT, real};
use crate::desk::shared::{OverYears, YearsFound};
use barm_domain::years::Found;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct YearsAnswer {
    format: u32,
    classes: Vec<ClassRow>,
    differences: Vec<DifferenceRow>,
    left_out: Vec<LeftOutRow>,
    passed_over: Vec<String>,
    not_read: Vec<NotReadRow>,
}

#[derive(Serialize)]
struct ClassRow {
    name: String,
    bags: usize,
    heights: usize,
    made_up: bool,
}

#[derive(Serialize)]
struct DifferenceRow {
    treatment: String,
    reference: String,
    minute: f64,
    of: Vec<OfClass>,
    together: Option<Together>,
    between: Option<BetweenRow>,
    next: Option<Ends>,
    says: Vec<String>,
}

#[derive(Serialize)]
struct OfClass {
    class: usize,
    n: usize,
    n_reference: usize,
    difference: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    se: Option<f64>,
    df: Option<f64>,
}

#[derive(Serialize)]
struct Together {
    difference: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    se: Option<f64>,
    df: Option<f64>,
    p: Option<f64>,
    shares: Vec<f64>,
}

#[derive(Serialize)]
struct BetweenRow {
    q: Option<f64>,
    df: f64,
    p: Option<f64>,
    tau: Option<f64>,
    tau_low: Option<f64>,
    tau_high: Option<f64>,
    i2: Option<f64>,
    h2: Option<f64>,
}

#[derive(Serialize)]
struct Ends {
    low: Option<f64>,
    high: Option<f64>,
}

#[derive(Serialize)]
struct LeftOutRow {
    class: usize,
    treatment: String,
    bags: usize,
    reason: String,
}

#[derive(Serialize)]
struct NotReadRow {
    path: String,
    reason: String,
}

pub(crate) fn over_years(found: &YearsFound) -> YearsAnswer {
    let classes = found.classes.iter().map(|class| ClassRow {
        name: class.name.clone(),
        bags: class.shared.rows().bags.len(),
        heights: class.shared.rows().readings.len(),
        made_up: class.investigation.plan.invented,
    });
    let left_out = found.classes.iter().enumerate().flat_map(|(class, own)| {
        own.investigation.left_out.iter().map(move |one| LeftOutRow {
            class,
            treatment: one.treatment.to_string(),
            bags: one.bags,
            reason: one.why.clone(),
        })
    });
    let not_read = found.not_read.iter().map(|(path, why)| NotReadRow {
        path: path.display().to_string(),
        reason: why.clone(),
    });
    YearsAnswer {
        format: FORMAT,
        classes: classes.collect(),
        differences: found.years.differences.iter().map(difference).collect(),
        left_out: left_out.collect(),
        passed_over: found
            .years
            .passed_over
            .iter()
            .map(|one| one.says(&found.classes))
            .collect(),
        not_read: not_read.collect(),
    }
}

fn difference(of: &OverYears) -> DifferenceRow {
    let together = of.together.as_ref();
    DifferenceRow {
        treatment: of.treatment_says(),
        reference: of.reference_says(),
        minute: of.minute,
        of: of.classes.iter().map(of_class).collect(),
        together: together.map(|one| Together {
            difference: real(one.mean.estimate),
            low: real(one.mean.low),
            high: real(one.mean.high),
            se: real(one.mean.se),
            df: real(one.mean.df),
            p: real(one.mean.p),
            shares: one.shares.clone(),
        }),
        between: together.and_then(|one| one.between.as_ref()).map(|one| BetweenRow {
            q: real(one.q),
            df: one.df,
            p: real(one.p),
            tau: real(one.tau()),
            tau_low: real(one.tau2_low.max(0.0).sqrt()),
            tau_high: real(one.tau2_high.max(0.0).sqrt()),
            i2: real(one.i2),
            h2: real(one.h2),
        }),
        next: of.next.map(|(low, high)| Ends { low: real(low), high: real(high) }),
        says: of.says(),
    }
}

fn of_class(found: &Found) -> OfClass {
    let told = found.difference;
    OfClass {
        class: found.class,
        n: found.bags.0,
        n_reference: found.bags.1,
        difference: told.and_then(|one| real(one.estimate)),
        low: told.and_then(|one| real(one.low)),
        high: told.and_then(|one| real(one.high)),
        se: told.and_then(|one| real(one.se)),
        df: told.and_then(|one| real(one.df)),
    }
}
