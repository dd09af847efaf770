//! Who makes which bags in a kind of class.

use super::cell::{Cell, Made};

/// One group: its period, from 0, and the treatments of its bags, 0 being the reference.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Bench {
    pub(super) period: usize,
    pub(super) treatments: Vec<usize>,
}

/// The benches of a class. What is made several times is dealt to the periods in turn; where the
/// reference is made apart, it stands in every period.
pub(super) fn benches(cell: &Cell) -> Vec<Bench> {
    let &Cell { bags, periods, treatments, made, .. } = cell;
    let periods = periods.max(1);
    let times = |treatment: usize, often: usize| {
        if treatment == 0 { often.max(periods) } else { often }
    };
    let mut benches = Vec::new();
    let mut add = |period: usize, treatments: Vec<usize>| {
        benches.push(Bench { period: period % periods, treatments });
    };
    match made {
        Made::Whole => (0..bags).for_each(|nth| add(nth, (0..treatments).collect())),
        Made::Own => {
            for treatment in 1..treatments {
                (0..bags).for_each(|nth| add(nth + treatment, vec![0, treatment]));
            }
        }
        Made::Each => {
            for treatment in 0..treatments {
                (0..times(treatment, bags))
                    .for_each(|nth| add(nth + treatment, vec![treatment]));
            }
        }
        Made::Pairs => {
            for treatment in 0..treatments {
                let pairs = times(treatment, bags / 2);
                (0..pairs).for_each(|nth| add(nth + treatment, vec![treatment; 2]));
            }
        }
        Made::Tied => {
            (0..treatments).for_each(|treatment| add(treatment, vec![treatment; bags]));
        }
    }
    benches
}

#[cfg(test)]
mod tests {
    use super::benches;
    use crate::trust::CELLS;

    #[test]
    fn every_treatment_has_its_bags_and_every_period_a_reference() {
        for cell in &CELLS {
            let benches = benches(cell);
            for treatment in 0..cell.treatments {
                let all = benches.iter().flat_map(|bench| &bench.treatments);
                let made = all.filter(|of| **of == treatment).count();
                let enough = if treatment == 0 { made >= cell.bags } else { made == cell.bags };
                assert!(enough, "{}: {made} bags of treatment {treatment}", cell.name);
            }
            for bench in &benches {
                let mut beside = benches.iter().filter(|other| other.period == bench.period);
                assert!(beside.any(|other| other.treatments.contains(&0)), "{}", cell.name);
            }
        }
    }
}
