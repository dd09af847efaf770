//! One row after the other.

use super::{Bad, Row};
use crate::assign::day::Day;
use crate::assign::of_plan::MOST_BAGS;
use crate::assign::rule::Rule;
use crate::nearest::{nearest, plain};
use crate::plan::{Inquiry, Plan};

/// Takes rows into a day.
pub(super) struct Reader<'p> {
    plan: &'p Plan,
    pub(super) day: Day,
    pub(super) bad: Vec<Bad>,
    pub(super) notes: Vec<String>,
    /// Lines of the groups seen so far.
    seen: Vec<Option<u64>>,
}

impl<'p> Reader<'p> {
    pub(super) fn new(plan: &'p Plan, day: Day) -> Self {
        let seen = vec![None; day.groups.len()];
        Self { plan, day, bad: Vec::new(), notes: Vec::new(), seen }
    }

    pub(super) fn bad(&mut self, line: u64, what: impl Into<String>, fix: impl Into<String>) {
        self.bad.push(Bad { line, what: what.into(), fix: fix.into() });
    }

    pub(super) fn row(&mut self, row: &Row) {
        if row.group.is_empty() {
            self.limit(row);
        } else {
            self.group(row);
        }
    }

    /// A period by its name; nothing if there is none, which is said.
    fn period(&mut self, row: &Row) -> Option<usize> {
        let names = &self.day.periods;
        let same = |name: &String| plain(name) == plain(&row.period);
        if let Some(found) = names.iter().position(same) {
            return Some(found);
        }
        let (what, fix) = if row.period.is_empty() {
            ("the period is blank".to_owned(), format!("write one of {}", names.join(", ")))
        } else {
            let what = format!("the plan has no period “{}”", row.period);
            (what, format!("write one of {}", names.join(", ")))
        };
        self.bad(row.line, what, fix);
        None
    }

    /// A question by its id or its words; nothing if there is none, which is said.
    fn question(&mut self, line: u64, written: &str) -> Option<usize> {
        let word = plain(written);
        let asked = self.plan.questions.iter();
        let asked = asked.filter(|q| plain(&q.id) == word || plain(&q.asks) == word);
        let id = asked.map(|question| question.id.clone()).next();
        let ids = &self.day.questions;
        if let Some(found) = id.as_ref().and_then(|id| ids.iter().position(|known| known == id))
        {
            return Some(found);
        }
        let all = ids.join(", ");
        let (what, fix) = match id {
            Some(id) => (
                format!("question “{id}” has no treatment to make"),
                format!("write one of {all}"),
            ),
            None => {
                let near = nearest(written, ids.iter().map(String::as_str));
                let fix = near.map_or_else(
                    || format!("write one of {all}"),
                    |near| format!("did you mean “{near}”?"),
                );
                (format!("the plan has no question “{written}”"), fix)
            }
        };
        self.bad(line, what, fix);
        None
    }

    /// A whole number in a range; nothing if it is none, which is said.
    fn number(
        &mut self,
        line: u64,
        head: &str,
        written: &str,
        range: std::ops::RangeInclusive<u32>,
    ) -> Option<u32> {
        match written.parse::<u32>() {
            Ok(number) if range.contains(&number) => Some(number),
            _ => {
                let what = format!("“{written}” is no number for {head}");
                let fix =
                    format!("write a whole number from {} to {}", range.start(), range.end());
                self.bad(line, what, fix);
                None
            }
        }
    }

    fn group(&mut self, row: &Row) {
        let line = row.line;
        for (head, cell) in
            [("question", &row.question), ("least", &row.least), ("most", &row.most)]
        {
            if !cell.is_empty() {
                let what = format!("“{head}” is filled in on the row of a group");
                self.bad(line, what, "leave it blank, or leave the group blank to set a limit");
            }
        }
        let Some(period) = self.period(row) else { return };
        let most = self.plan.periods.get(period).map_or(0, |period| period.groups);
        if most == 0 {
            let what = format!("period {} has no groups", self.day.periods[period]);
            self.bad(line, what, "give it groups in the plan, or take the row out");
            return;
        }
        let Some(number) = self.number(line, "group", &row.group, 1..=most) else { return };
        let own = |group: &crate::assign::day::Group| {
            group.period == period && group.number == number
        };
        let Some(group) = self.day.groups.iter().position(own) else { return };
        if let Some(first) = self.seen[group].replace(line) {
            let what = format!("{} stands on line {first} already", self.day.name_of(group));
            self.bad(line, what, "keep one of the two rows");
            return;
        }
        let ranks = self.ranks(row, group);
        self.set(row, group);
        self.never(row, group, &ranks);
        if !row.bags.is_empty() {
            let bags = self.number(line, "bags", &row.bags, 1..=MOST_BAGS);
            let Some(bags) = bags else { return };
            self.day.groups[group].bags = bags;
            self.day.groups[group].own_bags = true;
            self.day.rules.push(Rule::Bags { group });
        }
        self.wish(group, ranks);
    }

    fn ranks(&mut self, row: &Row, group: usize) -> Vec<usize> {
        let mut ranks = Vec::new();
        for written in row.choices.iter().filter(|written| !written.is_empty()) {
            let Some(question) = self.question(row.line, written) else { continue };
            if ranks.contains(&question) {
                let what = format!("{} ranks “{written}” twice", self.day.name_of(group));
                self.bad(row.line, what, "name each question once");
                continue;
            }
            ranks.push(question);
        }
        ranks
    }

    fn set(&mut self, row: &Row, group: usize) {
        if row.set.is_empty() {
            return;
        }
        if let Some(question) = self.question(row.line, &row.set) {
            self.day.rules.push(Rule::Set { group, question });
        }
    }

    fn never(&mut self, row: &Row, group: usize, ranks: &[usize]) {
        for written in row.never.iter().filter(|written| !written.is_empty()) {
            let Some(question) = self.question(row.line, written) else { continue };
            if ranks.contains(&question) {
                let what = format!(
                    "{} ranks “{written}” and must not get it",
                    self.day.name_of(group)
                );
                self.bad(row.line, what, "take it out of one of the two");
                continue;
            }
            let rule = Rule::Never { group, question };
            if !self.day.rules.contains(&rule) {
                self.day.rules.push(rule);
            }
        }
    }

    /// Takes ranks where the group's level leaves it the choice.
    fn wish(&mut self, group: usize, ranks: Vec<usize>) {
        if ranks.is_empty() {
            return;
        }
        let own = &self.day.groups[group];
        let level = self
            .plan
            .periods
            .get(own.period)
            .map_or(self.plan.inquiry, |period| self.plan.inquiry_of(period, own.number));
        let set = |rule: &Rule| matches!(rule, Rule::Set { group: of, .. } if *of == group);
        let name = self.day.name_of(group);
        if matches!(level, Inquiry::Confirmation | Inquiry::Structured) {
            self.notes.push(format!(
                "The wishes of {name} do not count: at level {} the question is given. Set one, or \
                 raise its level in the plan.",
                level.word()
            ));
        } else if self.day.rules.iter().any(set) {
            self.notes.push(format!("The wishes of {name} do not count: its question is set."));
        } else {
            self.day.groups[group].ranks = ranks;
        }
    }

    fn limit(&mut self, row: &Row) {
        let line = row.line;
        let more = row.choices.iter().chain(&row.never).chain([&row.set, &row.bags]);
        if more.filter(|cell| !cell.is_empty()).count() > 0 {
            self.bad(line, "wishes stand on a row without a group", "write the group's number");
            return;
        }
        if row.question.is_empty() {
            self.bad(
                line,
                "the row names neither a group nor a question",
                "write a group with its wishes, or a question with least or most",
            );
            return;
        }
        let question = self.question(line, &row.question);
        let period = if row.period.is_empty() {
            None
        } else {
            self.period(row).map(Some).unwrap_or_default()
        };
        if row.least.is_empty() && row.most.is_empty() {
            self.bad(line, "the limit has no number", "fill in least or most");
        }
        let all = u32::try_from(self.day.groups.len()).unwrap_or(u32::MAX);
        let least = (!row.least.is_empty())
            .then(|| self.number(line, "least", &row.least, 0..=all))
            .flatten();
        let most = (!row.most.is_empty())
            .then(|| self.number(line, "most", &row.most, 0..=all))
            .flatten();
        let Some(question) = question else { return };
        if let Some(groups) = least {
            self.day.rules.push(Rule::Least { period, question, groups });
        }
        if let Some(groups) = most {
            self.day.rules.push(Rule::Most { period, question, groups });
        }
    }
}
