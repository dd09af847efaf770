//! Codes of sheets of paper: short, sayable aloud, and sure to notice a slip, as bag codes are.
//!
//! `P3-05-B` is the paper of group 05 in period 3; group 00 is the teacher's bench. It is a bag code
//! without its letter: the period is the number that the group's bag codes carry, and the check
//! character is that of ISO/IEC 7064, MOD 37-2, over `P305`.

use crate::code::{BagCode, MOST, check_character};
use crate::plan::Plan;
use std::fmt;

/// The code on a group's sheets of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct SheetCode {
    period: u8,
    group: u8,
}

impl SheetCode {
    /// The code of a group (0 is the teacher's bench) in a period; nothing if the plan has no such
    /// period, or more of them than codes count.
    pub fn of(plan: &Plan, period: &str, group: u32) -> Option<Self> {
        let place = plan.periods.iter().position(|one| one.name == period)?;
        let number = number_of(plan, period).or_else(|| u8::try_from(place + 1).ok())?;
        let group = u8::try_from(group).ok()?;
        (number <= MOST && group <= MOST).then_some(Self { period: number, group })
    }

    /// Whose sheet a code is, however it is written: name of the period and number of the group.
    /// Nothing if no group of the plan has that code.
    pub fn whose(plan: &Plan, written: &str) -> Option<(String, u32)> {
        let typed = plain(written);
        let periods = plan.periods.iter();
        let groups = periods.flat_map(|one| (0..=one.groups).map(move |group| (one, group)));
        let mut found = groups.filter(|(period, group)| {
            let code = Self::of(plan, &period.name, *group);
            code.is_some_and(|code| plain(&code.to_string()) == typed)
        });
        found.next().map(|(period, group)| (period.name.clone(), group))
    }

    /// The number of the period, as bag codes carry it, from 1.
    pub const fn period(self) -> u8 {
        self.period
    }
}

impl fmt::Display for SheetCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let body = format!("P{}{:02}", self.period, self.group);
        let check = check_character(&body).unwrap_or('?');
        write!(f, "P{}-{:02}-{check}", self.period, self.group)
    }
}

/// The number of a period in the codes of its bags, if it has any.
fn number_of(plan: &Plan, period: &str) -> Option<u8> {
    let own = plan.bags.iter().filter(|bag| bag.period == period);
    own.filter_map(|bag| bag.code.parse::<BagCode>().ok()).map(BagCode::period).next()
}

/// Capitals without dashes; letters that look like digits are those digits.
fn plain(written: &str) -> String {
    let kept = written.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '*');
    kept.map(|c| match c.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        other => other,
    })
    .collect()
}
