//! What the class found, on paper.

use super::prep::of_bags;
use super::results_parts::{claims, day, did_not_work, gas_rows, left_out, meter, method};
use super::{imprint, looks};
use crate::desk::{Analysis, voice};
use barm_documents::chart::{Dot, DotRow, Estimate, Reading, Sheaf};
use barm_documents::sheet::{
    Comparison, Counted, Drawn, Gap, PeriodResult, QuestionResult, Rejected, ResultsReport,
    Slope,
};
use barm_domain::plan::{Plan, Question};
use barm_domain::reading::Rejected as Unread;
use barm_domain::result::{Answer, BagResult, Compared, Judged, Ladder, TreatmentDots};

/// The results report of a class.
pub(crate) fn results_report(plan: &Plan, analysis: &Analysis) -> ResultsReport {
    let result = &analysis.result;
    let minute = result.minute.unwrap_or(f64::NAN);
    let counted = result.bags.iter().filter(|bag| bag.summary.is_some()).count();
    let held: Vec<&str> = plan
        .periods
        .iter()
        .map(|period| period.name.as_str())
        .filter(|name| result.bags.iter().any(|bag| bag.bag.period == *name))
        .collect();
    let periods = match held.as_slice() {
        [only] if plan.periods.len() > 1 => format!("period {only}"),
        [_] => "1 period".to_owned(),
        _ => format!("{} periods", held.len()),
    };
    ResultsReport {
        imprint: imprint(plan, "RESULTS"),
        title: plan.title.clone(),
        summary: format!("Results, {periods}, {}", of_bags(counted)),
        claims: claims(plan, analysis),
        every_bag: every_bag(plan, &result.bags),
        minute,
        questions: plan
            .questions
            .iter()
            .zip(&result.questions)
            .map(|(question, answer)| question_result(plan, question, answer, analysis))
            .collect(),
        gas: gas_rows(plan, &result.bags),
        day: day(plan, analysis),
        meter: meter(plan, analysis),
        left_out: left_out(plan, analysis),
        did_not_work: did_not_work(plan, analysis),
        rejected: told_singly(analysis)
            .iter()
            .map(|rejected| Rejected {
                line: usize::try_from(rejected.line).unwrap_or(usize::MAX),
                reason: rejected.reason.clone(),
            })
            .collect(),
        method: method(plan, analysis),
        cautions: super::disposal_cautions(plan, &analysis.outlook),
        periods: if held.len() > 1 {
            period_results(plan, analysis, &held)
        } else {
            Vec::new()
        },
    }
}

/// What each of these periods found by itself.
fn period_results(plan: &Plan, analysis: &Analysis, held: &[&str]) -> Vec<PeriodResult> {
    let one = |(place, name): (usize, &&str)| {
        let own = analysis.of_period(plan, name);
        let bags = own.result.bags.iter().filter(|bag| bag.summary.is_some()).count();
        PeriodResult {
            period: format!("Period {name}"),
            sign: super::period_number(plan, name).unwrap_or(place + 1),
            summary: format!("{bags} bags"),
            claims: claims(plan, &own),
            every_bag: every_bag(plan, &own.result.bags),
            curves: all_curves(plan, &own.result.bags),
            questions: own_questions(plan, &own),
            left_out: left_out(plan, &own),
            did_not_work: did_not_work(plan, &own),
        }
    };
    held.iter().enumerate().map(one).collect()
}

/// The questions that have bags, answered from these alone. Slopes of so few bags would say little, and the
/// curves of all of them stand in one picture.
fn own_questions(plan: &Plan, own: &Analysis) -> Vec<QuestionResult> {
    let answers = plan.questions.iter().zip(&own.result.questions);
    let all = answers.map(|(question, answer)| question_result(plan, question, answer, own));
    let with_bags = all.filter(|one| !one.curves.is_empty());
    with_bags
        .map(|one| QuestionResult { slopes: Vec::new(), curves: Vec::new(), ..one })
        .collect()
}

/// Curves of all treatments that answer a question, each once.
pub(crate) fn all_curves(plan: &Plan, bags: &[BagResult]) -> Vec<Sheaf> {
    let mut all: Vec<Sheaf> = Vec::new();
    for sheaf in questions_drawn(plan, bags).into_iter().flat_map(|drawn| drawn.curves) {
        if !all.iter().any(|known| known.name == sheaf.name) {
            all.push(sheaf);
        }
    }
    all
}

/// The questions that have bags, with their curves.
pub(super) fn questions_drawn(plan: &Plan, bags: &[BagResult]) -> Vec<Drawn> {
    let drawn = plan.questions.iter().map(|question| Drawn {
        asks: question.asks.clone(),
        curves: plan
            .answering(question)
            .iter()
            .map(|treatment| sheaf(plan, &treatment.name, bags))
            .filter(|sheaf| !sheaf.bags.is_empty())
            .collect(),
    });
    drawn.filter(|drawn| !drawn.curves.is_empty()).collect()
}

/// The rows whose reasons are printed: none where one sentence says what became of all of them.
fn told_singly(analysis: &Analysis) -> &[Unread] {
    let told_together = analysis.above_all.is_some() && analysis.nothing_taken;
    if told_together { &[] } else { &analysis.rejected }
}

/// One row of dots for each treatment with a bag, the highest mean first.
pub(super) fn every_bag(plan: &Plan, bags: &[BagResult]) -> Vec<DotRow> {
    dot_rows(plan, bags, |bag| Some(bag.summary.as_ref()?.rise_mm.value))
}

/// The same of any number that a bag has.
pub(crate) fn dot_rows(
    plan: &Plan,
    bags: &[BagResult],
    of: impl Fn(&BagResult) -> Option<f64>,
) -> Vec<DotRow> {
    let row = |name: &str| {
        let own = bags.iter().filter(|bag| bag.bag.treatment == name);
        let dots: Vec<Dot> = own
            .filter_map(|bag| {
                let rise = of(bag)?;
                Some(Dot { rise, set_aside: bag.set_aside.is_some() })
            })
            .collect();
        let kept: Vec<f64> = dots.iter().filter(|d| !d.set_aside).map(|d| d.rise).collect();
        let summary = barm_science::statistics::summary::summarize(&kept).ok();
        DotRow {
            name: name.to_owned(),
            look: looks::look(plan, name),
            dots,
            mean: summary.map(|s| s.mean),
            // The spread of a single bag is not known; it is not zero.
            mad: summary.filter(|_| kept.len() > 1).map(|s| s.mad),
        }
    };
    let mut rows: Vec<DotRow> =
        plan.treatments().map(|(_, treatment)| row(&treatment.name)).collect();
    rows.retain(|row| !row.dots.is_empty());
    let mean = |row: &DotRow| row.mean.unwrap_or(f64::NEG_INFINITY);
    rows.sort_by(|a, b| mean(b).total_cmp(&mean(a)));
    rows
}

fn question_result(
    plan: &Plan,
    question: &Question,
    answer: &Answer,
    analysis: &Analysis,
) -> QuestionResult {
    let grade = plan.grade;
    QuestionResult {
        asks: question.asks.clone(),
        reference: answer
            .reference
            .clone()
            .unwrap_or_else(|| "the same food without enzyme".to_owned()),
        minute: analysis.result.minute.unwrap_or(f64::NAN),
        curves: plan
            .answering(question)
            .iter()
            .map(|treatment| sheaf(plan, &treatment.name, &analysis.result.bags))
            .filter(|sheaf| !sheaf.bags.is_empty())
            .collect(),
        comparisons: answer
            .comparisons
            .iter()
            .map(|compared| comparison(plan, answer, compared))
            .collect(),
        gaps: if grade >= 7 {
            gaps(plan, answer.ladder_without.as_ref().unwrap_or(&answer.ladder))
        } else {
            Vec::new()
        },
        slopes: if grade >= 8 { slopes(plan, answer, analysis) } else { Vec::new() },
    }
}

fn sheaf(plan: &Plan, treatment: &str, bags: &[BagResult]) -> Sheaf {
    let own: Vec<&BagResult> = bags
        .iter()
        .filter(|bag| bag.bag.treatment == treatment && !bag.curve.rises.is_empty())
        .collect();
    let curve = |bag: &&BagResult| {
        let doubtful = bag.set_aside.is_some();
        let zero = Reading { minute: 0.0, rise: 0.0, doubtful };
        let later = bag.curve.rises.iter().map(|rise| Reading {
            minute: rise.minute,
            rise: rise.rise_mm.value,
            doubtful,
        });
        std::iter::once(zero).chain(later).collect::<Vec<_>>()
    };
    Sheaf {
        name: treatment.to_owned(),
        look: looks::look(plan, treatment),
        bags: own.iter().map(curve).collect(),
        mean: mean_curve(plan, &own),
    }
}

/// Mean rise at each planned minute, over the bags that were read there and are not set aside.
fn mean_curve(plan: &Plan, bags: &[&BagResult]) -> Vec<(f64, f64)> {
    let interval = plan.timing.interval_min;
    let last = f64::from(plan.common_last_reading_min());
    let count = if interval > 0.0 { (last / interval).round() as usize } else { 0 };
    let mut mean = vec![(0.0, 0.0)];
    for step in 1..=count {
        let minute = step as f64 * interval;
        let rises: Vec<f64> = bags
            .iter()
            .filter(|bag| bag.set_aside.is_none())
            .flat_map(|bag| &bag.curve.rises)
            .filter(|rise| (rise.minute - minute).abs() < interval / 2.0)
            .map(|rise| rise.rise_mm.value)
            .collect();
        if !rises.is_empty() {
            mean.push((minute, rises.iter().sum::<f64>() / rises.len() as f64));
        }
    }
    mean
}

fn comparison(plan: &Plan, answer: &Answer, compared: &Compared) -> Comparison {
    let own = answer.reference.as_ref() != Some(&compared.reference);
    Comparison {
        treatment: compared.treatment.clone(),
        look: looks::look(plan, &compared.treatment),
        reference: (own && answer.reference.is_some()).then(|| compared.reference.clone()),
        with_all: counted(plan, &compared.with),
        without_set_aside: counted(plan, &compared.without),
        reason: voice(plan).why(compared),
    }
}

fn counted(plan: &Plan, judged: &Judged) -> Counted {
    Counted {
        n: judged.n,
        n_reference: judged.n_reference,
        difference: judged.difference.as_ref().map(|d| Estimate {
            value: d.difference,
            low: d.low,
            high: d.high,
        }),
        verdict: voice(plan).verdict(judged.verdict.code).to_owned(),
    }
}

fn gaps(plan: &Plan, ladder: &Ladder) -> Vec<Gap> {
    let bags = |name: &str| {
        ladder.dots.iter().find(|dots| dots.treatment == name).map_or(0, |dots| dots.bags.len())
    };
    let row = |gap: &barm_domain::result::LadderGap| {
        let found = gap.gap?;
        Some(Gap {
            treatment: gap.treatment.clone(),
            look: looks::look(plan, &gap.treatment),
            reference: gap.reference.clone(),
            gap: found.gap,
            mad: found.mad,
            in_mads: found.in_mads,
            bags: bags(&gap.treatment).min(bags(&gap.reference)),
            asked: found.needed,
            says: voice(plan).gap_in_brief(&found, plan.readable_mm),
        })
    };
    ladder.gaps.iter().filter_map(row).collect()
}

/// Mean of the bags' steepest stretches with the interval that bag-to-bag spread leaves.
fn slopes(plan: &Plan, answer: &Answer, analysis: &Analysis) -> Vec<Slope> {
    let to = analysis.result.minute.unwrap_or(f64::NAN);
    let row = |dots: &TreatmentDots| {
        let found = dots.slopes?;
        let half = found.half_width_95()?;
        Some(Slope {
            treatment: dots.treatment.clone(),
            look: looks::look(plan, &dots.treatment),
            bags: found.n,
            slope: Estimate {
                value: found.mean,
                low: found.mean - half,
                high: found.mean + half,
            },
            from: 0.0,
            to,
        })
    };
    answer.ladder.dots.iter().filter_map(row).collect()
}
