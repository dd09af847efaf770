//! What the groups that have still to choose can bring at most.

use super::layers::Choice;
use crate::assign::case::Case;

/// Least, most, and the question that they limit, in one period.
pub(super) type Limit = (u32, u32, usize);

/// Before a group chooses: sums of what it and those after it can bring.
pub(super) struct Ahead {
    /// Of all of them.
    all: u64,
    /// For each arm, of the first so many that bring most to it.
    most: Vec<Vec<u64>>,
    /// For each limit, of the first so many that bring least to its question.
    least: Vec<Vec<u64>>,
}

impl Ahead {
    pub(super) fn of(case: &Case<'_>, limits: &[Limit], choices: &[Vec<Choice>]) -> Self {
        let slots = |of: &[Choice], is: &dyn Fn(usize) -> bool| -> Vec<u64> {
            let own = of.iter().filter(|choice| is(choice.part.arm));
            own.map(|choice| u64::from(choice.slots)).collect()
        };
        let all = choices.iter().filter_map(|of| slots(of, &|_| true).into_iter().max()).sum();
        let most = (0..case.day.arms.len()).map(|arm| {
            let each =
                choices.iter().filter_map(|of| slots(of, &|a| a == arm).into_iter().max());
            let mut each: Vec<u64> = each.collect();
            each.sort_unstable_by(|one, other| other.cmp(one));
            sums(&each)
        });
        let least = limits.iter().map(|(_, _, question)| {
            let is = |arm: usize| case.arm(arm).question == *question;
            let each = choices.iter().filter_map(|of| slots(of, &is).into_iter().min());
            let mut each: Vec<u64> = each.collect();
            each.sort_unstable();
            sums(&each)
        });
        Self { all, most: most.collect(), least: least.collect() }
    }

    /// How many treatments more the period can have at most: of each arm no more than it lacks and its
    /// limit lets in; of all together no more than there are bags, without those that a limit sends
    /// where nothing is lacking.
    pub(super) fn more(
        &self,
        case: &Case<'_>,
        limits: &[Limit],
        lacking: &[u64],
        counts: &[u16],
    ) -> u64 {
        let of = |arm: usize| case.arm(arm).question;
        let mut bags = self.all;
        for ((limit, count), sums) in limits.iter().zip(counts).zip(&self.least) {
            let need = limit.0.saturating_sub(u32::from(*count)) as usize;
            let sent = sums[need.min(sums.len() - 1)];
            let arms = (0..lacking.len()).filter(|arm| of(*arm) == limit.2);
            let waste = sent.saturating_sub(arms.map(|arm| lacking[arm]).sum());
            bags = bags.min(self.all.saturating_sub(waste));
        }
        let arms = lacking.iter().zip(&self.most).enumerate().map(|(arm, (lacking, sums))| {
            let own = limits.iter().zip(counts).filter(|(limit, _)| limit.2 == of(arm));
            let left =
                own.map(|(limit, count)| limit.1.saturating_sub(u32::from(*count))).min();
            let left = left.unwrap_or(u32::MAX) as usize;
            sums[left.min(sums.len() - 1)].min(*lacking)
        });
        arms.sum::<u64>().min(bags)
    }
}

/// The sums of the first none, one, two and so on.
fn sums(each: &[u64]) -> Vec<u64> {
    let more = each.iter().scan(0, |sum, one| {
        *sum += one;
        Some(*sum)
    });
    [0].into_iter().chain(more).collect()
}
