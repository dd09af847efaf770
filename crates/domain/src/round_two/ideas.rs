//! Everything that a class could make next, by plain rules.

use super::amounts::{THINGS, amount_of, with_amount, written};
use super::before::counts;
use super::idea::{Idea, Pair, Reason};
use super::limits::{Held, more_of};
use crate::plan::{Plan, Question, Recipe, Treatment, Variable};
use crate::result::{Answer, ClassResult};
use barm_science::statistics::verdict::Code;

/// Bags of each treatment that are tried (own rule): two are the fewest that can be clear.
const EACH: [u32; 6] = [2, 3, 4, 5, 6, 8];

/// The same where the treatment is a new one (own rule).
const EACH_NEW: [u32; 4] = [3, 4, 6, 8];

/// Neighbors nearer together than this leave no room between them (1, own rule).
const ROOM: f64 = 1.4;

/// All ideas: what round one left open first, then what held bags back, then other amounts of what did
/// best. `held` is what held each treatment back.
pub(super) fn ideas(plan: &Plan, result: &ClassResult, held: &[Held]) -> Vec<Idea> {
    let mut all = open(result);
    let mut fresh = Vec::new();
    for question in &plan.questions {
        let Some(answer) = result.questions.iter().find(|one| one.question == question.id)
        else {
            continue;
        };
        let Some(best) = best(answer).and_then(|name| plan.treatment(name)) else { continue };
        fresh.extend(held_back(plan, question, held));
        fresh.extend(other_amounts(plan, question, best));
    }
    let mut made: Vec<(Recipe, String, String)> = Vec::new();
    for one in fresh {
        let recipe = plan.base.with(&one.treatment.difference);
        let Some(pair) = one.pair(plan) else { continue };
        let same = |known: &(Recipe, String, String)| {
            known.0 == recipe && known.1 == pair.question && known.2 == pair.reference
        };
        let taken = plan.treatment(&one.treatment.name).is_some();
        if taken || made.iter().any(same) {
            continue;
        }
        made.push((recipe, pair.question.clone(), pair.reference.clone()));
        all.extend(EACH_NEW.map(|each| Idea {
            reason: one.reason.clone(),
            pairs: vec![pair.clone()],
            fresh: Some((one.treatment.clone(), one.thing)),
            each,
        }));
    }
    all
}

/// More bags of what round one could not tell: pair by pair, question by question, and all together.
fn open(result: &ClassResult) -> Vec<Idea> {
    let mut all: Vec<(Pair, Code)> = Vec::new();
    for answer in &result.questions {
        for compared in &answer.comparisons {
            let code = counts(compared).verdict.code;
            if matches!(code, Code::Leaning | Code::Unclear | Code::NotComparable) {
                let pair = Pair {
                    question: answer.question.clone(),
                    treatment: compared.treatment.clone(),
                    reference: compared.reference.clone(),
                };
                all.push((pair, code));
            }
        }
    }
    let mut sets: Vec<Vec<&(Pair, Code)>> = all.iter().map(|one| vec![one]).collect();
    for answer in &result.questions {
        sets.push(all.iter().filter(|(pair, _)| pair.question == answer.question).collect());
    }
    sets.push(all.iter().collect());
    let mut ideas: Vec<Idea> = Vec::new();
    for set in sets.into_iter().filter(|set| !set.is_empty()) {
        let pairs: Vec<Pair> = set.iter().map(|(pair, _)| pair.clone()).collect();
        if ideas.iter().any(|idea| idea.pairs == pairs) {
            continue;
        }
        let verdicts: Vec<Code> = set.iter().map(|(_, code)| *code).collect();
        ideas.extend(EACH.map(|each| Idea {
            reason: Reason::Open { verdicts: verdicts.clone() },
            pairs: pairs.clone(),
            fresh: None,
            each,
        }));
    }
    ideas
}

/// The treatment of a question whose bags rose most.
fn best(answer: &Answer) -> Option<&str> {
    let ladder = answer.ladder_without.as_ref().unwrap_or(&answer.ladder);
    let means = ladder.dots.iter().filter_map(|dots| Some((dots, dots.rises?.mean)));
    let best = means.max_by(|a, b| a.1.total_cmp(&b.1))?;
    (best.1 > 0.0).then_some(best.0.treatment.as_str())
}

/// A treatment that nobody has made, beside one that somebody has.
struct Fresh<'p> {
    reason: Reason,
    treatment: Treatment,
    thing: Variable,
    /// The question whose variable it changes; else it is a question of its own beside `of`.
    question: Option<&'p Question>,
    of: &'p str,
}

impl Fresh<'_> {
    /// What it is compared with, in which question; nothing where it cannot be compared.
    fn pair(&self, plan: &Plan) -> Option<Pair> {
        let (question, reference) = match self.question {
            Some(question) => (question.id.clone(), question.reference.clone()?),
            None => (new_question(plan, self.of, self.thing), self.of.to_owned()),
        };
        Some(Pair { question, treatment: self.treatment.name.clone(), reference })
    }
}

/// The id of a question about another amount of something in a treatment, which no other question has.
pub(super) fn new_question(plan: &Plan, of: &str, thing: Variable) -> String {
    let plain = |text: &str| -> String {
        let letters = text.to_lowercase();
        let letters = letters.chars().map(|c| if c.is_alphanumeric() { c } else { '-' });
        letters
            .collect::<String>()
            .split('-')
            .filter(|w| !w.is_empty())
            .collect::<Vec<_>>()
            .join("-")
    };
    let id = format!("{}-{}", plain(of), plain(thing.words()));
    let taken = |id: &str| plan.questions.iter().any(|question| question.id == id);
    let numbered = (2_u32..).map(|number| format!("{id}-{number}"));
    let mut ids = std::iter::once(id.clone()).chain(numbered);
    ids.find(|id| !taken(id)).unwrap_or(id)
}

/// More of what held a question's own treatments back.
fn held_back<'p>(plan: &'p Plan, question: &'p Question, held: &[Held]) -> Vec<Fresh<'p>> {
    let mut all = Vec::new();
    for treatment in &question.treatments {
        let Some(own) = held.iter().find(|one| one.treatment == treatment.name) else {
            continue;
        };
        let recipe = plan.recipe(treatment);
        for (thing, factor) in more_of(own.by) {
            let Some(now) = amount_of(&recipe, *thing) else { continue };
            let wanted =
                if *thing == Variable::WaterTemperature { now + factor } else { now * factor };
            let Some((made, to)) = with_amount(treatment, &recipe, *thing, wanted) else {
                continue;
            };
            let reason = Reason::HeldBack {
                treatment: treatment.name.clone(),
                by: own.by,
                thing: *thing,
                from: written(&recipe, *thing),
                to,
            };
            let same = (question.variable == *thing).then_some(question);
            all.push(Fresh {
                reason,
                treatment: made,
                thing: *thing,
                question: same,
                of: &treatment.name,
            });
        }
    }
    all
}

/// Other amounts of the treatment that did best, between and beyond what was tried.
fn other_amounts<'p>(
    plan: &'p Plan,
    question: &'p Question,
    best: &'p Treatment,
) -> Vec<Fresh<'p>> {
    let recipe = plan.recipe(best);
    let mut all = Vec::new();
    for thing in THINGS {
        let Some(now) = amount_of(&recipe, thing) else { continue };
        let asked = question.variable == thing;
        let tried: Vec<f64> = if asked {
            let answering = plan.answering(question).into_iter();
            answering.filter_map(|one| amount_of(&plan.recipe(one), thing)).collect()
        } else {
            vec![now]
        };
        // Nobody asks for less yeast or warmer water than a question is about.
        if !asked && matches!(thing, Variable::YeastAmount | Variable::WaterTemperature) {
            continue;
        }
        for (wanted, between) in around(now, &tried, thing) {
            let Some((treatment, to)) = with_amount(best, &recipe, thing, wanted) else {
                continue;
            };
            let (best_name, from) = (best.name.clone(), written(&recipe, thing));
            let reason = if between {
                Reason::Between { best: best_name, thing, from, to }
            } else {
                Reason::Beyond { best: best_name, thing, from, to }
            };
            let question = asked.then_some(question);
            all.push(Fresh { reason, treatment, thing, question, of: &best.name });
        }
    }
    all
}

/// Amounts between the best and its neighbors, and beyond it where it has none; with whether it lies
/// between.
fn around(now: f64, tried: &[f64], thing: Variable) -> Vec<(f64, bool)> {
    let below = tried.iter().copied().filter(|one| *one < now * 0.99).reduce(f64::max);
    let above = tried.iter().copied().filter(|one| *one > now * 1.01).reduce(f64::min);
    if thing == Variable::WaterTemperature {
        const FAR: f64 = 5.0;
        let between =
            |other: f64| ((other - now).abs() >= FAR).then_some((0.5 * (other + now), true));
        let mut all: Vec<(f64, bool)> = below.and_then(between).into_iter().collect();
        all.extend(above.and_then(between));
        all.extend(above.is_none().then_some((now + FAR, false)));
        return all;
    }
    let between = |other: f64| {
        let ratio = (other / now).max(now / other);
        (ratio >= ROOM).then(|| (libm::sqrt(other * now), true))
    };
    let mut all: Vec<(f64, bool)> = below.and_then(between).into_iter().collect();
    all.extend(above.and_then(between));
    if above.is_none() {
        all.extend([(2.0 * now, false), (1.5 * now, false)]);
    }
    if below.is_none() {
        all.push((0.5 * now, false));
    }
    all
}
