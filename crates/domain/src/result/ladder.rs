//! The same bags in the words of grades 6 to 8: dots, gaps in MADs, slopes.

use super::sample::Sample;
use barm_science::ruler;
use barm_science::statistics::ladder::{Gap, Overlap, Side, dots, gap_in_mads};
use barm_science::statistics::summary::{Summary, summarize};
use std::collections::BTreeSet;

/// Dots, gaps and slopes of one question; periods do not count here.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    /// The dot plot of each treatment.
    pub dots: Vec<TreatmentDots>,
    /// Each comparison.
    pub gaps: Vec<LadderGap>,
}

/// One treatment's dots.
#[derive(Debug, Clone, PartialEq)]
pub struct TreatmentDots {
    /// The treatment.
    pub treatment: String,
    /// One dot a bag.
    pub bags: Vec<Dot>,
    /// How many groups made them.
    pub groups: usize,
    /// Mean, MAD and range of the rises (mm), if there is a bag (grade 6).
    pub rises: Option<Summary>,
    /// Mean, MAD and range of the largest slopes (mm/min), if there is one (grade 8).
    pub slopes: Option<Summary>,
}

/// One bag as a dot.
#[derive(Debug, Clone, PartialEq)]
pub struct Dot {
    /// Code of the bag.
    pub bag: String,
    /// Its rise (mm).
    pub rise_mm: f64,
    /// Whether it is set aside.
    pub set_aside: bool,
}

/// One comparison on the ladder.
#[derive(Debug, Clone, PartialEq)]
pub struct LadderGap {
    /// The treatment.
    pub treatment: String,
    /// What it is compared with.
    pub reference: String,
    /// Where the two dot plots overlap (mm), if they do (grade 6).
    pub overlap: Option<Overlap>,
    /// Gap between the means in MADs, with the multiple that is needed for so many bags of so many
    /// groups, if there are bags of both (grade 7).
    pub gap: Option<Gap>,
    /// Mean largest slope of the treatment less that of the reference (mm/min), if there are
    /// slopes of both (grade 8).
    pub slope_gap: Option<f64>,
}

impl Ladder {
    /// The ladder of one question.
    pub(super) fn of(
        names: &[&str],
        pairs: &[(&str, &str)],
        sample: &Sample<'_>,
        and_set_aside: bool,
    ) -> Self {
        let dots: Vec<TreatmentDots> =
            names.iter().map(|name| treatment_dots(name, sample, and_set_aside)).collect();
        let gaps = {
            let has =
                |name: &str| dots.iter().any(|d| d.treatment == name && d.rises.is_some());
            let count = pairs.iter().filter(|pair| has(pair.0) && has(pair.1)).count();
            pairs.iter().filter_map(|pair| gap(pair, count, &dots)).collect()
        };
        Self { dots, gaps }
    }
}

impl Ladder {
    /// Treatments that are compared with a reference and not with each other, each beside the next
    /// lower by mean. Nobody asked for these before the day: they are a hint what to ask next.
    pub fn neighbors(&self) -> Vec<LadderGap> {
        let is_reference = |name: &str| self.gaps.iter().any(|gap| gap.reference == name);
        let mut own: Vec<(f64, &str)> = self
            .dots
            .iter()
            .filter(|dots| !is_reference(&dots.treatment))
            .filter_map(|dots| Some((dots.rises?.mean, dots.treatment.as_str())))
            .collect();
        own.sort_by(|a, b| a.0.total_cmp(&b.0));
        let gaps = own.len().saturating_sub(1);
        let beside = |pair: &[(f64, &str)]| gap(&(pair[1].1, pair[0].1), gaps, &self.dots);
        own.windows(2).filter_map(beside).collect()
    }
}

fn treatment_dots(name: &str, sample: &Sample<'_>, and_set_aside: bool) -> TreatmentDots {
    let (mut bags, mut slopes) = (Vec::new(), Vec::new());
    let mut groups = BTreeSet::new();
    for bag in sample.bags_of(name, and_set_aside) {
        let Some(summary) = &bag.summary else { continue };
        slopes.extend(summary.steepest_mm_per_min);
        groups.insert((bag.bag.period.as_str(), bag.bag.group));
        bags.push(Dot {
            bag: bag.bag.code.clone(),
            rise_mm: summary.rise_mm.value,
            set_aside: bag.set_aside.is_some(),
        });
    }
    let rises = summarize(&values(&bags)).ok();
    TreatmentDots {
        treatment: name.to_owned(),
        bags,
        groups: groups.len(),
        rises,
        slopes: summarize(&slopes).ok(),
    }
}

/// One of so many gaps.
fn gap(
    &(treatment, reference): &(&str, &str),
    gaps: usize,
    all: &[TreatmentDots],
) -> Option<LadderGap> {
    let find = |name: &str| all.iter().find(|dots| dots.treatment == name);
    let (own, other) = (find(treatment)?, find(reference)?);
    let (own_values, other_values) = (values(&own.bags), values(&other.bags));
    let doubt = ruler::usual_difference_sd_mm();
    Some(LadderGap {
        treatment: treatment.to_owned(),
        reference: reference.to_owned(),
        overlap: dots(&other_values, &own_values).ok().and_then(|dots| dots.overlap),
        gap: gap_in_mads(
            Side { values: &other_values, groups: other.groups },
            Side { values: &own_values, groups: own.groups },
            gaps,
            doubt,
        )
        .ok(),
        slope_gap: own.slopes.zip(other.slopes).map(|(own, other)| own.mean - other.mean),
    })
}

fn values(bags: &[Dot]) -> Vec<f64> {
    bags.iter().map(|dot| dot.rise_mm).collect()
}
