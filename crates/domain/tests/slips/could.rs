//! What could be told of leaks at all.

use crate::class::{Day, Failure, INTERVAL, PILOT, class};
use crate::found::LARGE_MM;
use crate::ideal::Ideal;
use crate::mishap::Mishap;
use crate::share::Share;
use crate::{KNOWN, school, seed, size};
use barm_science::statistics::chance::Chance;

/// Clean bags of which one may be called (1).
const CALLED: f64 = 0.02;

/// The detector that knows the generator, with as many clean bags called as are allowed in all, as
/// though there were no other slips: an upper end of what any can find.
#[test]
fn not_all_leaks_can_be_told_at_all() {
    let made = school::treatments(Some(KNOWN));
    let mut chance = Chance::from_seed(seed::fresh("what could be told of leaks"));
    let ideal = Ideal::new(LARGE_MM, &mut chance);
    let bags = size::counts(104, 260, 1040);
    let (mut clean, mut leaks) = (Vec::<f64>::new(), Vec::<f64>::new());
    for leaky in [0.0, 0.25] {
        let mut drawn = 0;
        while drawn < bags {
            let day = Day::of(&made, PILOT, Failure::None, &mut chance);
            let chances = |mishap| if mishap == Mishap::Leak { leaky } else { 0.0 };
            for read in class(&made, &day, &chances, &mut chance) {
                drawn += 1;
                let leak = read.spoiled.as_ref().filter(|one| one.lost_mm > LARGE_MM);
                if read.spoiled.is_some() && leak.is_none() {
                    continue;
                }
                let ratios = ideal.ratios(&read, (&day, &made[read.treatment]), &mut chance);
                match leak {
                    None => clean.push(ratios.into_iter().fold(f64::NEG_INFINITY, f64::max)),
                    // Called at the first or the second reading after it begins.
                    Some(one) if one.at + 1 < read.heights.len() => {
                        leaks.push(ratios[one.at - 1].max(ratios[one.at]));
                    }
                    Some(_) => {}
                }
            }
        }
    }
    clean.sort_by(|a, b| b.total_cmp(a));
    let from = clean[(CALLED * clean.len() as f64) as usize];
    let mut found = Share::default();
    leaks.iter().for_each(|ratio| found.count(*ratio > from));
    println!(
        "| of leaks of more than 3 times the reading doubt, found every {INTERVAL} min by a \
         detector that knows the generator, with {:.0} % of {} clean bags called | {found} |",
        100.0 * CALLED,
        clean.len()
    );
    // Were it far below what the true detector finds, it would be none that knows more.
    assert!(found.value() >= 0.9 - found.sampling(0.9), "{found}");
}
