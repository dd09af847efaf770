//! Both ways side by side, question by question.

use super::by_spreads::{self, Said};
use super::class::Seen;
use super::{Expected, Outcome, Variant};
use crate::plan::{Plan, Question};

/// A variant with what its classes found.
#[derive(Debug, Clone)]
pub struct Tried {
    /// The bags.
    pub variant: Variant,
    /// One for each class.
    pub outcomes: Vec<Outcome>,
}

/// Chances of a clear verdict on one comparison with certain bags (1).
#[derive(Debug, Clone, PartialEq)]
pub struct Chances {
    /// Bags of each treatment, where they were dealt for it; nothing for the plan's own bags.
    pub each: Option<u32>,
    /// Bags of the treatment.
    pub bags: usize,
    /// Bags of what it is compared with.
    pub bags_reference: usize,
    /// From how much bags and groups will differ; nothing where no difference could be told or no forecast made.
    pub by_spreads: Option<f64>,
    /// Share of the simulated classes without a slip; only for the plan's own bags.
    pub tried: Option<f64>,
    /// Share of the simulated classes with slips.
    pub with_slips: f64,
    /// Smallest true difference that is found 4 times in 5, from the same (mm); nothing where the
    /// verdict is never clear.
    pub usually_found_mm: Option<f64>,
    /// Why the verdict is never clear with these bags, however large the difference.
    pub never: Option<String>,
}

/// One comparison of a question.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// The treatment.
    pub treatment: String,
    /// What it is compared with.
    pub reference: String,
    /// How much more it rises than its reference (mm): 10th percentile, median and 90th percentile
    /// over possible days; nothing without both forecasts.
    pub apart_mm: Option<(f64, f64, f64)>,
    /// With the plan's own bags.
    pub own: Chances,
    /// With 1, 2, 3 and more bags of each treatment.
    pub by_bags: Vec<Chances>,
}

/// One question before its day.
#[derive(Debug, Clone, PartialEq)]
pub struct QuestionPower {
    /// Id of the question.
    pub question: String,
    /// The minute at which its bags will be compared; nothing if no class could compare any.
    pub minute: Option<f64>,
    /// How much bags alike will differ (mm, standard deviation); nothing without forecasts.
    pub bag_sd_mm: Option<f64>,
    /// Chance that at least one of its comparisons is clear (1), without slips and with them.
    pub any_clear: (f64, f64),
    /// Its comparisons.
    pub pairs: Vec<Pair>,
}

/// Sets everything side by side; the first of `tried` holds the plan's own bags.
pub fn gather(plan: &Plan, expected: &[Expected], tried: &[Tried]) -> Vec<QuestionPower> {
    let Some((own, dealt)) = tried.split_first() else { return Vec::new() };
    let minute = own.usual_minute();
    let rises =
        |name: &str| Some(expected.iter().find(|one| one.treatment == name)?.at(minute?));
    let question = |(at, question): (usize, &Question)| {
        let (own_chances, bag_sd_mm) = own.chances(at, expected);
        let by_bags: Vec<Vec<Chances>> =
            dealt.iter().map(|one| one.chances(at, expected).0).collect();
        let asked = by_spreads::pairs(plan, question).into_iter().zip(own_chances).enumerate();
        let pair = |(pair, ((treatment, reference), own)): (usize, ((&str, &str), Chances))| {
            let days = rises(treatment).zip(rises(reference)).map(|(a, b)| a.less(&b));
            Pair {
                treatment: treatment.to_owned(),
                reference: reference.to_owned(),
                apart_mm: days.and_then(|days| band(&days)),
                own,
                by_bags: by_bags.iter().filter_map(|all| all.get(pair).cloned()).collect(),
            }
        };
        let any = |of: Side| {
            let clear =
                |all: &[Vec<Seen>]| all.get(at).is_some_and(|q| q.iter().any(|s| s.clear));
            own.share(|outcome| of(outcome).is_some_and(clear))
        };
        QuestionPower {
            question: question.id.clone(),
            minute,
            bag_sd_mm,
            any_clear: (any(plain), any(slips)),
            pairs: asked.map(pair).collect(),
        }
    };
    let compares =
        |(_, question): &(usize, &Question)| !by_spreads::pairs(plan, question).is_empty();
    plan.questions.iter().enumerate().filter(compares).map(question).collect()
}

/// One side of an outcome.
type Side = fn(&Outcome) -> Option<&[Vec<Seen>]>;

fn plain(outcome: &Outcome) -> Option<&[Vec<Seen>]> {
    outcome.plain.as_deref()
}

fn slips(outcome: &Outcome) -> Option<&[Vec<Seen>]> {
    Some(&outcome.slips)
}

impl Tried {
    /// The chances of every comparison of a question, and how much bags alike will differ (mm).
    fn chances(&self, at: usize, expected: &[Expected]) -> (Vec<Chances>, Option<f64>) {
        let plan = &self.variant.plan;
        let Some(question) = plan.questions.get(at) else { return (Vec::new(), None) };
        let minute = self.usual_minute().unwrap_or_default();
        let answer = by_spreads::answer(plan, question, expected, minute);
        let count = |name: &str| plan.bags.iter().filter(|bag| bag.treatment == name).count();
        let all = by_spreads::pairs(plan, question).into_iter().zip(&answer.pairs).enumerate();
        let chances = all.map(|(pair, ((treatment, reference), said))| {
            let seen = |of: Side, outcome: &Outcome| one(of(outcome)?, at, pair).cloned();
            let clear =
                |of: Side| self.share(|outcome| seen(of, outcome).is_some_and(|s| s.clear));
            let (tried, with_slips) =
                (self.variant.each.is_none().then(|| clear(plain)), clear(slips));
            let mut all = self.outcomes.iter();
            let never = (tried.unwrap_or(with_slips) <= 0.0)
                .then(|| all.find_map(|o| seen(plain, o).or_else(|| seen(slips, o))?.never))
                .flatten();
            let said: Option<&Said> = said.as_ref().ok();
            Chances {
                each: self.variant.each,
                bags: count(treatment),
                bags_reference: count(reference),
                by_spreads: said.map(|said| if never.is_some() { 0.0 } else { said.chance }),
                tried,
                with_slips,
                usually_found_mm: said
                    .filter(|_| never.is_none())
                    .and_then(|said| said.usually_found_mm),
                never,
            }
        });
        (chances.collect(), answer.sd_mm)
    }

    /// The minute at which most classes compare their bags.
    fn usual_minute(&self) -> Option<f64> {
        let minutes: Vec<f64> = self.outcomes.iter().filter_map(|o| o.minute).collect();
        let count = |minute: f64| minutes.iter().filter(|m| (*m - minute).abs() < 1e-9).count();
        minutes.iter().copied().max_by_key(|minute| count(*minute))
    }

    fn share(&self, of: impl Fn(&Outcome) -> bool) -> f64 {
        let classes = self.outcomes.len().max(1) as f64;
        self.outcomes.iter().filter(|outcome| of(outcome)).count() as f64 / classes
    }
}

fn one(seen: &[Vec<Seen>], question: usize, pair: usize) -> Option<&Seen> {
    seen.get(question)?.get(pair)
}

/// 10th percentile, median and 90th percentile of values in rising order.
fn band(sorted: &[f64]) -> Option<(f64, f64, f64)> {
    let last = sorted.len().checked_sub(1)?;
    let at = |p: f64| sorted[((p * last as f64).round() as usize).min(last)];
    Some((at(0.1), at(0.5), at(0.9)))
}
