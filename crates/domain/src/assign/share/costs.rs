//! What further groups, or bags, on an arm cost.

use super::build::Built;
use crate::assign::case::Case;
use crate::assign::flow::Cost;

impl Built {
    /// What each further unit of an arm in a period costs: less is missing, more is uneven.
    pub(super) fn period_steps(
        &mut self,
        case: &Case<'_>,
        (period, arm): (usize, usize),
        most: i64,
        any: bool,
    ) -> Vec<Cost> {
        if any {
            return vec![0; usize::try_from(most).unwrap_or(0)];
        }
        let kinds = case.arm(arm).treatments.len() as Cost;
        let weights = self.weights;
        if self.even {
            let missing = |bags: Cost| weights.missing * (kinds - bags).max(0);
            let each = case.bags.first().map_or(1, |_| Cost::from(case.slots(0, arm)));
            self.fixed += missing(0);
            return steps(most, |groups| {
                missing(groups * each) + (groups * each) * (groups * each)
            });
        }
        // Where a period's groups all make the same number, what lies between is on a straight line.
        let own: Vec<usize> =
            (0..case.bags.len()).filter(|g| case.day.groups[*g].period == period).collect();
        let same = own.windows(2).all(|two| case.bags[two[0]] == case.bags[two[1]]);
        let first = own.first().map_or(1, |g| self.units[*g]);
        let step = if same { Cost::from(first) } else { 1 };
        let bags = self.most_bags(case, arm, &own);
        let weight = weights.missing;
        let at_step = |units: Cost| weight * (kinds * self.scale - bags(units)).max(0);
        let at = |units: Cost| {
            let (low, beyond) = (units / step * step, units % step);
            at_step(low) + (at_step(low + step) - at_step(low)) / step * beyond
        };
        let all = steps(most, at);
        let none = at(0);
        self.fixed += none;
        all
    }

    /// What each further unit of an arm on the whole day costs: fewer bags are lacking.
    pub(super) fn day_steps(&mut self, case: &Case<'_>, arm: usize, any: bool) -> Vec<Cost> {
        let most: i64 = self.units.iter().sum();
        if any {
            return vec![0; usize::try_from(most).unwrap_or(0)];
        }
        let (weight, scale) = (self.weights.short, self.scale);
        let asked = Cost::from(case.arm(arm).asked_in_all());
        self.fixed += weight * asked * scale;
        if self.even {
            let each = case.bags.first().map_or(1, |_| Cost::from(case.slots(0, arm)));
            return steps(most, |groups| weight * (asked - groups * each).max(0));
        }
        let all: Vec<usize> = (0..case.bags.len()).collect();
        let bags = self.most_bags(case, arm, &all);
        steps(most, |units| weight * (asked * scale - bags(units)).max(0))
    }

    /// The most bags of an arm, scaled, that can stand behind so many units of these groups. Without a
    /// reference to make, a group of two bags or more makes one bag more than flows for it, so that
    /// small groups bring most for a unit.
    fn most_bags(
        &self,
        case: &Case<'_>,
        arm: usize,
        of: &[usize],
    ) -> impl Fn(Cost) -> Cost + use<> {
        let mut small: Vec<Cost> = Vec::new();
        if case.arm(arm).reference.is_none() {
            let able = of.iter().filter(|g| case.bags[**g] >= 2 && case.allowed[**g][arm]);
            small.extend(able.map(|g| Cost::from(self.units[*g])));
            small.sort_unstable();
        }
        let scale = self.scale;
        move |units| {
            let mut left = units;
            let mut more = 0;
            for each in &small {
                let taken = left.min(*each);
                more += scale / each * taken;
                left -= taken;
            }
            scale * units + more
        }
    }
}

/// How a convex function grows step by step, from 0 to `most`; what it begins with is left out.
fn steps(most: i64, of: impl Fn(Cost) -> Cost) -> Vec<Cost> {
    (0..Cost::from(most)).map(|at| of(at + 1) - of(at)).collect()
}
