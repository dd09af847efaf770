//! Readings that no bag gives, as they come when a column was misread or a ruler turned round.

use super::dealt::{Planned, day, deal, right};
use barm_science::fit::day::{BagSeen, fit_day};
use barm_science::prior::Prior;
use barm_science::statistics::chance::Chance;

/// Every reading of a day put through a function of its bag's place, its minute and its rise.
fn with(bags: &[BagSeen], read: impl Fn(usize, f64, f64) -> f64) -> Vec<BagSeen> {
    let mut bags = bags.to_vec();
    for (place, bag) in bags.iter_mut().enumerate() {
        for (minute, rise) in &mut bag.readings {
            *rise = read(place, *minute, *rise);
        }
    }
    bags
}

/// Whatever is read, a search ends, says finite numbers, and never that it knows a number less than it did,
/// nor anything narrower than by readings that scatter as they should.
#[test]
fn odd_readings_end_a_search_all_the_same() {
    let prior = Prior::default();
    // Half of the kinds: these searches are long.
    let planned: Vec<Planned> = day().into_iter().filter(|one| one.group <= 3).collect();
    let bags = deal(&planned, &prior, &mut Chance::from_seed(30), right).bags;
    let days = [
        ("nothing rises", with(&bags, |_, _, _| 0.0)),
        ("one height", with(&bags, |_, _, _| 12.0)),
        ("heights fall", with(&bags, |_, minute, _| 20.0 - 0.6 * minute)),
        ("below zero", with(&bags, |_, _, rise| -rise)),
        (
            "one bag ten times",
            with(&bags, |at, _, rise| if at == 9 { 10.0 * rise } else { rise }),
        ),
        ("inches", with(&bags, |_, _, rise| (rise / 25.4).round())),
    ];
    for (what, bags) in days {
        let fit = fit_day(&bags, &prior).unwrap_or_else(|error| panic!("{what}: {error}"));
        assert!(fit.off < 1e-3, "{what}: {}", fit.off);
        for (at, name) in fit.learned.names.iter().enumerate() {
            let (mean, sd) = (fit.learned.means[at], fit.learned.sd(at));
            assert!(
                mean.is_finite() && sd > 0.0 && sd < 1.0 + 1e-9,
                "{what}: {name} {mean} {sd}"
            );
            assert!(sd > 0.999 * fit.unwidened[at], "{what}: {name} {sd}");
        }
        if what == "one bag ten times" {
            assert!(fit.unlike[9] > 0.5, "{what}: {}", fit.unlike[9]);
        }
    }
}
