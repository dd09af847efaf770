//! `barm compare --json`.

use super::real;
use crate::desk::{self, Compared, Difference};
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct ComparedAnswer<'a> {
    n: usize,
    anova: Test,
    welch: Option<Test>,
    groups: Vec<Group<'a>>,
    tukey: Vec<Pair<'a>>,
    dunnett: Vec<Against<'a>>,
    kruskal: Option<ByRanks>,
    randomization: Dealt,
}

#[derive(Serialize)]
struct Test {
    f: Option<f64>,
    df1: f64,
    df2: f64,
    p: Option<f64>,
}

#[derive(Serialize)]
struct Group<'a> {
    level: &'a str,
    n: usize,
    mean: Option<f64>,
    sd: Option<f64>,
    mad: Option<f64>,
}

#[derive(Serialize)]
struct Pair<'a> {
    a: &'a str,
    b: &'a str,
    difference: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    p: Option<f64>,
}

#[derive(Serialize)]
struct Against<'a> {
    level: &'a str,
    difference: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    p: Option<f64>,
}

#[derive(Serialize)]
struct ByRanks {
    h: Option<f64>,
    df: usize,
    p: Option<f64>,
}

#[derive(Serialize)]
struct Dealt {
    p: Option<f64>,
    draws: usize,
    seed: u64,
}

fn group<'a>(level: &'a str, own: &desk::Group) -> Group<'a> {
    Group {
        level,
        n: own.summary.n,
        mean: real(own.summary.mean),
        sd: own.summary.sd.and_then(real),
        mad: real(own.summary.mad),
    }
}

pub(crate) fn compared(compared: &Compared) -> ComparedAnswer<'_> {
    let Compared { names, told, .. } = compared;
    let (df1, df2) = (told.anova.df as f64, told.rest.df as f64);
    let pair = |d: &Difference| Pair {
        a: &names[d.level],
        b: &names[d.from],
        difference: real(d.difference),
        low: real(d.low),
        high: real(d.high),
        p: real(d.p),
    };
    let against = |d: &Difference| Against {
        level: &names[d.level],
        difference: real(d.difference),
        low: real(d.low),
        high: real(d.high),
        p: real(d.p),
    };
    let others = told.against.iter().flat_map(|against| &against.together.differences);
    let dealt = told.randomization;
    ComparedAnswer {
        n: told.n,
        anova: Test { f: real(told.anova.f), df1, df2, p: real(told.anova.p) },
        welch: told.welch.map(|w| Test { f: real(w.f), df1: w.df1, df2: w.df2, p: real(w.p) }),
        groups: names.iter().zip(&told.groups).map(|(level, own)| group(level, own)).collect(),
        tukey: told.pairs.iter().map(pair).collect(),
        dunnett: others.map(against).collect(),
        kruskal: told.by_ranks.map(|r| ByRanks { h: real(r.h), df: r.df, p: real(r.p) }),
        randomization: Dealt { p: real(dealt.p), draws: dealt.draws, seed: dealt.seed },
    }
}
