//! What is to be decided, in numbers: who can make what, and what is wanted.

use super::rule::Rule;

/// Treatments of one question that are compared with the same reference. A group works on one arm.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Arm {
    /// Its question, by place in [`Day::questions`].
    pub question: usize,
    /// Its treatments, by place in [`Day::treatments`].
    pub treatments: Vec<usize>,
    /// Bags that the plan asks for of each of them.
    pub asked: Vec<u32>,
    /// What they are compared with, by place in [`Day::treatments`].
    pub reference: Option<usize>,
    /// Whether the reference stands on the teacher's bench in every period, too.
    pub shared: bool,
}

impl Arm {
    /// Bags of its treatments that a group of so many bags makes, beside its own reference.
    pub fn slots(&self, bags: u32) -> u32 {
        if bags >= 2 && self.reference.is_some() { bags - 1 } else { bags }
    }

    /// Bags that the plan asks for of all its treatments.
    pub fn asked_in_all(&self) -> u32 {
        self.asked.iter().sum()
    }
}

/// One group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Group {
    /// Its period, by place in [`Day::periods`].
    pub period: usize,
    /// Its number within the period, from 1.
    pub number: u32,
    /// Bags that it makes, at least 1.
    pub bags: u32,
    /// Whether that is a number of its own; else it is the usual number.
    pub own_bags: bool,
    /// Questions that it ranked, the dearest first, by place in [`Day::questions`]; empty where its
    /// inquiry level gives it the question.
    pub ranks: Vec<usize>,
}

impl Group {
    /// What a question costs it: nothing for its first choice, then 1, 3, 6 …; what it did not rank
    /// comes after what it did. A third choice so counts as much as three second ones, which shares
    /// disappointment out.
    pub fn regret(&self, question: usize) -> u32 {
        let rank = self.ranks.iter().position(|ranked| *ranked == question);
        let step = u32::try_from(rank.unwrap_or(self.ranks.len())).unwrap_or(u32::MAX);
        step * (step + 1) / 2
    }
}

/// A day for which groups, questions and bags are to be brought together.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Day {
    /// Names of the periods.
    pub periods: Vec<String>,
    /// Ids of the questions.
    pub questions: Vec<String>,
    /// Names of the treatments.
    pub treatments: Vec<String>,
    /// What groups can work on.
    pub arms: Vec<Arm>,
    /// The groups, by period and number.
    pub groups: Vec<Group>,
    /// Bags on the teacher's bench in each period: how many of each treatment.
    pub bench: Vec<(usize, u32)>,
    /// What must be kept and may be taken back, each of them.
    pub rules: Vec<Rule>,
}

impl Day {
    /// Bags on the teacher's bench in each period.
    pub fn bench_bags(&self) -> u32 {
        self.bench.iter().map(|(_, bags)| bags).sum()
    }

    /// A group as people say it.
    pub fn name_of(&self, group: usize) -> String {
        let group = &self.groups[group];
        format!("group {} of period {}", group.number, self.periods[group.period])
    }
}
