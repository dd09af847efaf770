//! What must be kept: by the teacher's word, by a group's, or because there is no more.

use super::day::Day;

/// A rule that can be taken back. What makes a comparison fair cannot: see [`super::Assigned`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Rule {
    /// The teacher sets a group's question.
    Set {
        /// The group, by place.
        group: usize,
        /// The question, by place.
        question: usize,
    },
    /// A group must not get a question.
    Never {
        /// The group, by place.
        group: usize,
        /// The question, by place.
        question: usize,
    },
    /// At least so many groups work on a question.
    Least {
        /// In this period, or on the whole day.
        period: Option<usize>,
        /// The question, by place.
        question: usize,
        /// How many.
        groups: u32,
    },
    /// At most so many groups work on a question.
    Most {
        /// In this period, or on the whole day.
        period: Option<usize>,
        /// The question, by place.
        question: usize,
        /// How many.
        groups: u32,
    },
    /// A group makes its own number of bags.
    Bags {
        /// The group, by place.
        group: usize,
    },
    /// All other groups make the usual number of bags.
    UsualBags {
        /// How many.
        bags: u32,
    },
    /// The rulers, or the meters, get round so many bags of one period in time.
    Tools {
        /// The period, by place.
        period: usize,
        /// What there is, such as `8 rulers`.
        tools: String,
        /// Bags that they get round.
        bags: u32,
    },
    /// There is no more of a material than lies in the cupboard.
    Stock(Stock),
}

/// What there is of a material.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stock {
    /// What it is called.
    pub name: String,
    /// What there is, in words.
    pub in_words: String,
    /// What one bag of each treatment takes, spare included (millionths of a gram, mL or piece).
    pub takes: Vec<i64>,
    /// What there is (millionths).
    pub most: i64,
}

impl Rule {
    /// The rule as a sentence without a full stop.
    pub fn words(&self, day: &Day) -> String {
        let question = |question: &usize| &day.questions[*question];
        let when = |period: &Option<usize>| match period {
            Some(period) => format!("in period {}", day.periods[*period]),
            None => "on the whole day".to_owned(),
        };
        let groups = |count: &u32| match count {
            1 => "1 group works".to_owned(),
            count => format!("{count} groups work"),
        };
        match self {
            Self::Set { group, question: of } => {
                format!("{} is set to “{}”", day.name_of(*group), question(of))
            }
            Self::Never { group, question: of } => {
                format!("{} must not get “{}”", day.name_of(*group), question(of))
            }
            Self::Least { period, question: of, groups: count } => {
                format!("at least {} on “{}” {}", groups(count), question(of), when(period))
            }
            Self::Most { period, question: of, groups: 0 } => {
                format!("no group works on “{}” {}", question(of), when(period))
            }
            Self::Most { period, question: of, groups: count } => {
                format!("at most {} on “{}” {}", groups(count), question(of), when(period))
            }
            Self::Bags { group } => {
                let bags = day.groups[*group].bags;
                format!("{} makes {bags} bags", day.name_of(*group))
            }
            Self::UsualBags { bags } => {
                format!("every group without a number of its own makes {bags} bags")
            }
            Self::Tools { period, tools, bags } => {
                format!("{tools} get round {bags} bags in period {}", day.periods[*period])
            }
            Self::Stock(stock) => format!("there is {} of {}", stock.in_words, stock.name),
        }
    }
}
