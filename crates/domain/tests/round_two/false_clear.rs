//! How often two rounds together say "clear" of nothing.

use crate::class::{handed, scattered, sugar};
use crate::levels::again;
use barm_domain::plan::Round;
use barm_domain::round_two::pool;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::verdict::Code;

/// 99 % sampling error of a share found in that many classes (two-sided normal).
fn sampling_error(share: f64, classes: usize) -> f64 {
    2.576 * (share * (1.0 - share) / classes as f64).sqrt()
}

/// Without any difference a class hears "clear" of any of its treatments, on the first day or of both days
/// together, in at most 1 case of 20; the second round is made whatever the first one said.
#[test]
fn both_rounds_together_are_falsely_clear_at_most_once_in_twenty() {
    let first = sugar(Round::First, 4);
    let second = again(&first);
    let mut chance = Chance::from_seed(1977);
    let classes = crate::size::counts(40, 120, 2_000);
    let mut wrong = [0; 2];
    for _ in 0..classes {
        // Days differ, and so do bags alike, by as much.
        let [one, two] = [&first, &second].map(|plan| {
            let day = 10.0 + 2.0 * chance.normal();
            scattered(plan, |_| day, 2.0, &mut chance)
        });
        let told = pool(&handed(&first, &one), &handed(&second, &two)).expect("two rounds");
        let clear = |result: &barm_domain::result::ClassResult| {
            let all = result.questions.iter().flat_map(|answer| &answer.comparisons);
            all.clone().any(|compared| compared.with.verdict.code == Code::Clear)
        };
        wrong[0] += usize::from(clear(&told.first));
        wrong[1] += usize::from(clear(&told.first) || clear(&told.both));
    }
    println!("{wrong:?} of {classes} classes were told something false, first and in all");
    for (wrong, level) in wrong.into_iter().zip([0.02, 0.05]) {
        let share = wrong as f64 / classes as f64;
        let bar = level + sampling_error(level, classes);
        assert!(share <= bar, "{wrong} of {classes} classes, {bar:.4} allowed");
    }
}
