//! Bags that stand apart from all that were made alike.

use crate::result::BagResult;

/// A bag that stands apart.
#[derive(Debug, Clone, PartialEq)]
pub struct Odd {
    /// Its code.
    pub bag: String,
    /// Its period.
    pub period: String,
    /// Its treatment.
    pub treatment: String,
    /// Its rise (mm).
    pub rise_mm: f64,
    /// The lowest and the highest of the others (mm).
    pub others_mm: (f64, f64),
}

/// Others made alike that it takes to call one odd.
const OTHERS: usize = 3;

/// Bags whose rise lies outside that of all others of their treatment, by more than those differ among themselves
/// and by no less than can be read (mm). Three others at least are asked for: of two bags, neither is the odd one.
///
/// A rule to talk about, no test: it says nothing of chance and sets nothing aside.
pub fn odd_bags(bags: &[BagResult], readable_mm: f64) -> Vec<Odd> {
    let rise = |bag: &BagResult| bag.summary.as_ref().map(|summary| summary.rise_mm.value);
    let found = bags.iter().filter_map(|bag| {
        let own = rise(bag)?;
        let alike = bags.iter().filter(|other| {
            other.bag.treatment == bag.bag.treatment && other.bag.code != bag.bag.code
        });
        let others: Vec<f64> = alike.filter_map(rise).collect();
        if others.len() < OTHERS {
            return None;
        }
        let (low, high) = range(&others);
        let off = (low - own).max(own - high);
        let odd = off > (high - low) && off >= readable_mm;
        odd.then(|| Odd {
            bag: bag.bag.code.clone(),
            period: bag.bag.period.clone(),
            treatment: bag.bag.treatment.clone(),
            rise_mm: own,
            others_mm: (low, high),
        })
    });
    found.collect()
}

/// The lowest and the highest.
pub(super) fn range(values: &[f64]) -> (f64, f64) {
    let ends = (f64::INFINITY, f64::NEG_INFINITY);
    values.iter().fold(ends, |(low, high), value| (low.min(*value), high.max(*value)))
}
