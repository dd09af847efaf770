//! `barm assign --json`.

use super::{FORMAT, real};
use crate::desk::Assignment;
use barm_domain::assign::day::Day;
use barm_domain::assign::{Assigned, Broken, Price, STEPS, Worth};
use barm_domain::plan::Plan;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Answer {
    format: u32,
    done: bool,
    seed: u64,
    bags_each: u32,
    groups: Vec<Group>,
    broken: Vec<Wish>,
    treatments: Vec<Treatment>,
    questions: Vec<Question>,
    proof: Option<Proof>,
    clash: Option<Clash>,
    notes: Vec<String>,
}

#[derive(Serialize)]
struct Group {
    period: String,
    group: u32,
    question: String,
    wished: Vec<String>,
    choice: Option<usize>,
    bags: Vec<Bag>,
    bench: u32,
    turn: u32,
}

#[derive(Serialize)]
struct Bag {
    code: String,
    treatment: String,
    control: bool,
}

#[derive(Serialize)]
struct Wish {
    period: String,
    group: u32,
    wanted: String,
    gets: String,
    price: Option<Paid>,
    clashes_with: Vec<String>,
}

#[derive(Serialize)]
struct Paid {
    missing: i64,
    short: i64,
    others: i64,
    proven: bool,
}

#[derive(Serialize)]
struct Treatment {
    question: String,
    treatment: String,
    bags: usize,
    asked: u32,
    periods: usize,
}

#[derive(Serialize)]
struct Question {
    question: String,
    groups: usize,
    connected: bool,
}

#[derive(Serialize)]
struct Amiss {
    missing: u64,
    short: u64,
    regret: u64,
    uneven: u64,
}

#[derive(Serialize)]
struct Proof {
    worth: Amiss,
    bound: Amiss,
    proven: bool,
    dealt: bool,
    gap: Option<f64>,
    flows: u32,
    most_flows: u32,
}

#[derive(Serialize)]
struct Clash {
    rules: Vec<String>,
    minimal: bool,
    smallest: bool,
}

/// The answer as JSON.
pub(crate) fn assigned(assignment: &Assignment, seed: u64) -> Answer {
    let day = &assignment.day;
    let mut answer = Answer {
        format: FORMAT,
        done: false,
        seed,
        bags_each: assignment.bags,
        groups: Vec::new(),
        broken: Vec::new(),
        treatments: Vec::new(),
        questions: Vec::new(),
        proof: None,
        clash: None,
        notes: assignment.notes.clone(),
    };
    match &assignment.outcome {
        Ok((found, with)) => {
            answer.done = true;
            answer.groups = groups(day, found, with);
            answer.broken = found.broken.iter().map(|broken| wish(day, broken)).collect();
            answer.treatments = treatments(day, found);
            answer.questions = questions(day, found);
            answer.proof = Some(Proof {
                worth: amiss(found.worth),
                bound: amiss(found.bound),
                proven: found.proven,
                dealt: found.dealt,
                gap: real(found.gap(day)),
                flows: found.steps,
                most_flows: STEPS,
            });
        }
        Err(clash) => {
            let words = clash.rules.iter().map(|rule| day.rules[*rule].words(day));
            answer.clash = Some(Clash {
                rules: words.collect(),
                minimal: clash.minimal,
                smallest: clash.smallest,
            });
        }
    }
    answer
}

fn groups(day: &Day, found: &Assigned, with: &Plan) -> Vec<Group> {
    let both = day.groups.iter().zip(&found.groups);
    both.map(|(group, made)| {
        let arm = &day.arms[made.arm];
        let period = &day.periods[group.period];
        let reference = arm.reference.map(|t| day.treatments[t].as_str());
        let own =
            with.bags.iter().filter(|bag| bag.period == *period && bag.group == group.number);
        Group {
            period: period.clone(),
            group: group.number,
            question: day.questions[arm.question].clone(),
            wished: group.ranks.iter().map(|q| day.questions[*q].clone()).collect(),
            choice: group.ranks.iter().position(|q| *q == arm.question).map(|rank| rank + 1),
            bags: own
                .map(|bag| Bag {
                    code: bag.code.clone(),
                    treatment: bag.treatment.clone(),
                    control: reference == Some(bag.treatment.as_str()),
                })
                .collect(),
            bench: made.place,
            turn: made.turn,
        }
    })
    .collect()
}

fn wish(day: &Day, broken: &Broken) -> Wish {
    let group = &day.groups[broken.group];
    let (price, clashes_with) = match &broken.price {
        Price::Costs { missing, short, others, proven } => (
            Some(Paid { missing: *missing, short: *short, others: *others, proven: *proven }),
            Vec::new(),
        ),
        Price::Clashes(clash) => {
            (None, clash.rules.iter().map(|rule| day.rules[*rule].words(day)).collect())
        }
        Price::NotFound => (None, Vec::new()),
    };
    Wish {
        period: day.periods[group.period].clone(),
        group: group.number,
        wanted: day.questions[broken.wanted].clone(),
        gets: day.questions[broken.gets].clone(),
        price,
        clashes_with,
    }
}

fn treatments(day: &Day, found: &Assigned) -> Vec<Treatment> {
    let mut all = Vec::new();
    for (a, arm) in day.arms.iter().enumerate() {
        for (treatment, asked) in arm.treatments.iter().zip(&arm.asked) {
            let spread = found.spread(day, a, *treatment);
            all.push(Treatment {
                question: day.questions[arm.question].clone(),
                treatment: day.treatments[*treatment].clone(),
                bags: spread.iter().sum(),
                asked: *asked,
                periods: spread.iter().filter(|bags| **bags > 0).count(),
            });
        }
    }
    all
}

fn questions(day: &Day, found: &Assigned) -> Vec<Question> {
    let all = day.questions.iter().enumerate();
    all.map(|(question, id)| Question {
        question: id.clone(),
        groups: found
            .groups
            .iter()
            .filter(|made| day.arms[made.arm].question == question)
            .count(),
        connected: found.connected(day, question),
    })
    .collect()
}

fn amiss(worth: Worth) -> Amiss {
    let Worth { missing, short, regret, uneven } = worth;
    Amiss { missing, short, regret, uneven }
}
