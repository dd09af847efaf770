//! The bags that answer one question, as the statistics take them.

use super::bags::BagResult;
use crate::plan::Treatment;
use barm_science::statistics::compare::BagValue;
use std::collections::BTreeMap;

/// Numbers for the treatments, periods and groups of one question.
pub(super) struct Sample<'a> {
    treatments: Vec<&'a str>,
    bags: Vec<(&'a BagResult, BagValue)>,
}

impl<'a> Sample<'a> {
    /// The bags of these treatments that have a summary.
    pub(super) fn of(treatments: &[&'a Treatment], bags: &'a [BagResult]) -> Self {
        let treatments: Vec<&str> = treatments.iter().map(|t| t.name.as_str()).collect();
        let mut blocks: BTreeMap<&str, usize> = BTreeMap::new();
        let mut groups: BTreeMap<(&str, u32), usize> = BTreeMap::new();
        let value = |result: &'a BagResult| {
            let bag = &result.bag;
            let treatment = treatments.iter().position(|name| *name == bag.treatment)?;
            let summary = result.summary.as_ref()?;
            let period = bag.period.as_str();
            let next = blocks.len();
            let block = *blocks.entry(period).or_insert(next);
            let next = groups.len();
            let group = *groups.entry((period, bag.group)).or_insert(next);
            let value = summary.rise_mm.value;
            Some((result, BagValue { value, treatment, block, group }))
        };
        let bags = bags.iter().filter_map(value).collect();
        Self { treatments, bags }
    }

    /// The number of a treatment.
    pub(super) fn number(&self, treatment: &str) -> Option<usize> {
        self.treatments.iter().position(|name| *name == treatment)
    }

    /// The values, all or only those of bags that are not set aside.
    pub(super) fn values(&self, and_set_aside: bool) -> Vec<BagValue> {
        self.counted(and_set_aside).map(|(_, value)| *value).collect()
    }

    /// The bags behind the values of one treatment.
    pub(super) fn bags_of(
        &self,
        treatment: &str,
        and_set_aside: bool,
    ) -> impl Iterator<Item = &'a BagResult> {
        let number = self.number(treatment);
        self.counted(and_set_aside)
            .filter(move |(_, value)| Some(value.treatment) == number)
            .map(|(bag, _)| *bag)
    }

    /// Whether any of the bags is set aside.
    pub(super) fn has_set_aside(&self) -> bool {
        self.bags.iter().any(|(bag, _)| bag.set_aside.is_some())
    }

    fn counted(&self, and_set_aside: bool) -> impl Iterator<Item = &(&'a BagResult, BagValue)> {
        self.bags.iter().filter(move |(bag, _)| and_set_aside || bag.set_aside.is_none())
    }
}
