//! The plan that makes a second round.

use super::idea::{Idea, Pair};
use crate::bag_list::{self, BagListError, Given};
use crate::check::check;
use crate::finding::Severity;
use crate::plan::{CONTROLS, Control, Day, Plan, Question, Round, Treatment};
use std::collections::BTreeSet;

/// The most bags that one group makes (own rule): more do not fit into a period's mixing.
const MOST_A_GROUP: usize = 4;

/// Days after round one on which round two is put, for the teacher to change.
const LATER_DAYS: i64 = 7;

/// Why an idea makes no plan.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum NoPlan {
    /// More groups would be needed than there are.
    NoRoom,
    /// There are no bag codes left.
    Codes(BagListError),
    /// The plan would have this fault, which the first one has not.
    Fault(String),
}

impl From<BagListError> for NoPlan {
    fn from(error: BagListError) -> Self {
        Self::Codes(error)
    }
}

/// What one group makes: a reference with treatments of one question beside it.
struct Set {
    question: String,
    treatments: Vec<String>,
}

/// The plan of a second round.
///
/// Questions keep their ids and treatments their names, so that both rounds can be put together. Every
/// group that makes bags makes the reference too, so that neither its way of working nor its period is
/// mistaken for the treatment; and as few periods as will do make them, because each is a block. No code of
/// round one is given out again.
///
/// `had` are the [`faults`] of the first plan, which are nothing new.
pub(super) fn plan_of(
    first: &Plan,
    idea: &Idea,
    had: &[(&'static str, String)],
) -> Result<Plan, NoPlan> {
    let mut plan = first.clone();
    plan.title = format!("{} (round two)", first.title);
    plan.round = if first.round == Round::First { Round::Second } else { Round::Only };
    plan.retired_codes.extend(first.bags.iter().map(|bag| bag.code.clone()));
    plan.bags.clear();
    plan.questions = questions(first, idea);
    for control in &mut plan.controls {
        control.per_period = 1;
    }
    let sets = sets(&idea.pairs);
    seat(&mut plan, first, &sets, idea.each)?;
    let new = |plan: &Plan| faults(plan).into_iter().find(|fault| !had.contains(fault));
    let mut fault = new(&plan);
    if fault.is_some() {
        with_controls(&mut plan, first)?;
        fault = new(&plan);
    }
    match fault {
        Some((code, _)) => Err(NoPlan::Fault(code.to_owned())),
        None => Ok(plan),
    }
}

/// Faults of a plan by code and what they are about; places are not compared, as they move.
pub(super) fn faults(plan: &Plan) -> Vec<(&'static str, String)> {
    let found = check(plan, &[]).into_iter();
    found
        .filter(|finding| finding.severity == Severity::Fault)
        .map(|finding| (finding.code, finding.message))
        .collect()
}

/// The questions that are asked again, with what is made for them; a treatment stands in the first
/// question that needs it.
fn questions(first: &Plan, idea: &Idea) -> Vec<Question> {
    let mut home: BTreeSet<String> =
        first.controls.iter().map(|control| control.treatment.name.clone()).collect();
    let mut ids: Vec<&str> = Vec::new();
    for pair in &idea.pairs {
        if !ids.contains(&pair.question.as_str()) {
            ids.push(&pair.question);
        }
    }
    ids.into_iter().filter_map(|id| question(first, idea, id, &mut home)).collect()
}

fn question(
    first: &Plan,
    idea: &Idea,
    id: &str,
    home: &mut BTreeSet<String>,
) -> Option<Question> {
    let pairs: Vec<&Pair> = idea.pairs.iter().filter(|pair| pair.question == id).collect();
    let before = first.questions.iter().find(|question| question.id == id);
    let fresh = idea.fresh.as_ref();
    let mut question = match (before, fresh) {
        (Some(before), _) => before.clone(),
        (None, Some((_, thing))) => {
            let of = &pairs.first()?.reference;
            Question {
                id: id.to_owned(),
                asks: format!("Does {of} do better with another {}?", thing.words()),
                variable: *thing,
                crossed_with: None,
                reference: Some(of.clone()),
                treatments: Vec::new(),
                uses: Vec::new(),
                replicates: idea.each,
            }
        }
        (None, None) => return None,
    };
    let made =
        |name: &String| pairs.iter().any(|p| p.treatment == *name || p.reference == *name);
    question.replicates = idea.each;
    question.reference = question.reference.filter(made);
    // One pair alone crosses nothing.
    question.crossed_with = question.crossed_with.filter(|_| pairs.len() > 1);
    question.treatments.clear();
    question.uses.clear();
    let mut own = |name: &str| -> Option<Treatment> {
        let known = fresh.map(|(treatment, _)| treatment).filter(|one| one.name == name);
        let treatment = known.or_else(|| first.treatment(name))?;
        home.insert(name.to_owned()).then(|| treatment.clone())
    };
    for pair in &pairs {
        for name in [&pair.reference, &pair.treatment] {
            let beside = (*name == pair.treatment
                && question.reference.as_ref() != Some(&pair.reference))
            .then(|| pair.reference.clone());
            if let Some(treatment) = own(name) {
                let treatment = Treatment { replicates: None, beside, ..treatment };
                question.treatments.push(treatment);
            } else if *name == pair.treatment {
                let stands = question.treatments.iter_mut().find(|one| one.name == *name);
                match stands {
                    Some(stands) => stands.beside = beside,
                    None => question.uses.push(name.clone()),
                }
            }
        }
    }
    Some(question)
}

/// What each group makes, once over.
fn sets(pairs: &[Pair]) -> Vec<Set> {
    let mut all: Vec<(&str, &str, Vec<String>)> = Vec::new();
    for pair in pairs {
        let (question, reference) = (pair.question.as_str(), pair.reference.as_str());
        let same = all.iter_mut().find(|(q, r, made)| {
            *q == question && *r == reference && made.len() < MOST_A_GROUP
        });
        match same {
            Some((_, _, made)) => made.push(pair.treatment.clone()),
            None => all.push((
                question,
                reference,
                vec![pair.reference.clone(), pair.treatment.clone()],
            )),
        }
    }
    all.into_iter()
        .map(|(question, _, treatments)| Set { question: question.to_owned(), treatments })
        .collect()
}

/// Gives the sets to groups, replicate by replicate, and leaves out periods that make nothing.
fn seat(plan: &mut Plan, first: &Plan, sets: &[Set], each: u32) -> Result<(), NoPlan> {
    let wanted = sets.len() * each as usize;
    let mut room = 0;
    let mut periods = Vec::new();
    for period in first.periods.iter().filter(|period| period.groups > 0) {
        if room < wanted {
            room += period.groups as usize;
            periods.push(period.clone());
        }
    }
    if room < wanted || wanted == 0 {
        return Err(NoPlan::NoRoom);
    }
    let own = |name: &str| periods.iter().any(|period| period.name == name);
    plan.group_settings.retain(|setting| own(&setting.period));
    plan.days.retain(|day| periods.iter().any(|period| period.day == day.name));
    for day in &mut plan.days {
        later(day);
    }
    let mut free = vec![0_u32; periods.len()];
    let mut given = Vec::new();
    for round in 0..each as usize {
        // A whole replicate goes to one period where it has room, so that blocks are complete.
        for (at, set) in sets.iter().enumerate() {
            let turn = round * sets.len() + at;
            let usual = turn * periods.len() / wanted;
            let period = (usual..periods.len())
                .chain(0..usual)
                .find(|place| free[*place] < periods[*place].groups)
                .ok_or(NoPlan::NoRoom)?;
            free[period] += 1;
            given.extend(set.treatments.iter().map(|treatment| Given {
                period: periods[period].name.clone(),
                group: free[period],
                question: set.question.clone(),
                treatment: treatment.clone(),
                bags: 1,
            }));
        }
    }
    plan.periods = periods;
    let list = bag_list::give(plan, &given)?;
    plan.bags = list.bags;
    settle(plan)
}

/// Asks for just the bags that are listed, and lists the shared controls.
fn settle(plan: &mut Plan) -> Result<(), NoPlan> {
    let bags = plan.bags.clone();
    let listed = |name: &str, id: &str| {
        bags.iter().filter(|bag| bag.treatment == name && bag.question == id).count() as u32
    };
    for question in &mut plan.questions {
        for treatment in &mut question.treatments {
            let count = listed(&treatment.name, &question.id);
            treatment.replicates = (count != question.replicates).then_some(count);
        }
    }
    let list = bag_list::write(plan)?;
    plan.bags = list.bags;
    plan.retired_codes = list.retired;
    Ok(())
}

/// Adds whatever round one had without food, as a shared control: a bag that shows what yeast, or an enzyme,
/// does by itself may have been a treatment of a question that is not asked again.
fn with_controls(plan: &mut Plan, first: &Plan) -> Result<(), NoPlan> {
    let bare = first.treatments().filter(|(home, treatment)| {
        *home != CONTROLS && first.recipe(treatment).food.is_none()
    });
    for (_, treatment) in bare {
        if plan.treatment(&treatment.name).is_none() {
            let treatment = Treatment { beside: None, replicates: None, ..treatment.clone() };
            plan.controls.push(Control { treatment, per_period: 1 });
        }
    }
    settle(plan)
}

fn later(day: &mut Day) {
    if let Ok(date) = day.date.checked_add(jiff::Span::new().days(LATER_DAYS)) {
        day.date = date;
    }
}
