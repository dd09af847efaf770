//! The door through which the program compares treatments.

use barm_science::statistics::compare::{BagValue, NotComparable, Reference, compare};

fn bag(treatment: usize, block: usize, group: usize, value: f64) -> BagValue {
    BagValue { value, treatment, block, group }
}

#[test]
fn treatments_that_never_met_are_not_compared() {
    let bags = [bag(0, 0, 0, 10.0), bag(0, 0, 1, 12.0), bag(1, 1, 2, 20.0), bag(1, 1, 3, 21.0)];
    let answer = compare(&bags, &Reference::Treatment(0), 0.0);
    assert_eq!(answer.contrasts[0].outcome, Err(NotComparable::NoSharedBlock));
}
