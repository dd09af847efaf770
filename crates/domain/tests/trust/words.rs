//! The bars, cell by cell.

use crate::not_held::NOT_HELD;
use barm_domain::trust::{Bar, CELLS, Cell, Held, Lesson, OVER_ALL, Tally, over_all};
use std::collections::BTreeSet;
use std::path::Path;

/// Classes of a cell: the suite is quick, ordinary or long by an environment variable.
fn classes() -> u64 {
    crate::size::counts(40, 70, 2000)
}

/// 99 % sampling error of a share found in that many classes (two-sided normal).
fn sampling_error(share: f64, classes: usize) -> f64 {
    2.576 * (share * (1.0 - share) / classes as f64).sqrt()
}

fn counted(cell: &Cell) -> Tally {
    let lesson = Lesson::of(cell).unwrap();
    let mut all = Tally::default();
    for number in 0..classes() {
        all += Tally::of(&lesson, number, 20_270_309);
    }
    all
}

/// Each kind of class on a thread of its own: some take much longer than others.
fn all_counted() -> Vec<(&'static Cell, Tally)> {
    std::thread::scope(|scope| {
        let spawn = |cell: &'static Cell| (cell, scope.spawn(move || counted(cell)));
        let running: Vec<_> = CELLS.iter().map(spawn).collect();
        running.into_iter().map(|(cell, thread)| (cell, thread.join().unwrap())).collect()
    })
}

/// Whether so many classes show that it holds: not only that it may.
fn surely_holds(bar: Bar, cell: &Cell, tally: &Tally) -> bool {
    let count = bar.counted(tally);
    match bar {
        Bar::Together => count.at_least() >= 0.93 && count.at_most() <= 0.98,
        Bar::Clear | Bar::Large if !cell.can_be_clear() => false,
        Bar::Clear | Bar::Large => bar.holds(cell, tally) == Held::Yes,
    }
}

fn is_listed(cell: &Cell, bar: Bar) -> bool {
    NOT_HELD.iter().any(|one| one.cell == cell.name && one.bar == bar)
}

/// Every bar holds in every cell but those listed, as far as so many classes tell; and no listed cell
/// holds after all.
#[test]
fn the_words_keep_what_is_asked_of_them() {
    let tallies = all_counted();
    keep(&tallies);
    let mut wrong = Vec::new();
    for (cell, tally) in &tallies {
        for bar in Bar::ALL {
            let (listed, count) = (is_listed(cell, bar), bar.counted(tally));
            let says = format!("{} {}: {} of {}", cell.name, bar.word(), count.found, count.of);
            if listed && (surely_holds(bar, cell, tally) || !bar.is_asked(cell, tally)) {
                wrong.push(format!("{says}: holds after all; take it off the list"));
            }
            if !listed && !bar.may_hold(cell, tally, sampling_error) {
                wrong.push(format!("{says}: does not hold"));
            }
        }
    }
    wrong.extend(tallies.iter().filter_map(|(cell, tally)| as_foretold(cell, tally)));
    for (at, bar) in [Bar::Clear, Bar::Large].into_iter().enumerate() {
        let sum = over_all(tallies.iter().map(|(cell, tally)| (*cell, tally)))[at];
        let share = sum.share().unwrap();
        let may = share <= 0.05 + sampling_error(0.05, sum.of) || sum.at_most() <= OVER_ALL;
        if !may {
            wrong.push(format!("{} over all: {} of {}", bar.word(), sum.found, sum.of));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Leaves what was counted beside the builds, for whoever writes docs/trust.md.
fn keep(tallies: &[(&'static Cell, Tally)]) {
    let row = |(cell, tally): &(&Cell, Tally)| {
        let foretold = Lesson::of(cell).unwrap().foretold().ok();
        let Tally { false_clear, false_large, held, true_clear, true_large } = tally;
        format!(
            "{} {false_clear:?} {false_large:?} {held:?} {true_clear:?} {true_large:?} {foretold:?}\n",
            cell.name
        )
    };
    let rows: String = tallies.iter().map(row).collect();
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("trust.txt");
    std::fs::write(file, rows).unwrap();
}

/// How far what was found may be from what was foretold (1).
const FORETOLD: f64 = 0.05;

/// A true difference of twice the spread of bags is found as often as power says of such bags.
fn as_foretold(cell: &Cell, tally: &Tally) -> Option<String> {
    let count = tally.true_clear;
    let asked = cell.is_foretold() && cell.can_be_clear();
    let found = count.share().filter(|_| asked)?;
    let said = Lesson::of(cell).unwrap().foretold().unwrap();
    let open =
        if count.of < 2000 { sampling_error(said.clamp(0.01, 0.99), count.of) } else { 0.0 };
    ((found - said).abs() > FORETOLD + open)
        .then(|| format!("{}: foretold in {said:.3}, found in {found:.3}", cell.name))
}

#[test]
fn the_list_names_cells_that_are_there_once_each() {
    let mut seen = BTreeSet::new();
    for one in NOT_HELD {
        assert!(CELLS.iter().any(|cell| cell.name == one.cell), "{}", one.cell);
        assert!(seen.insert((one.cell, one.bar.word())), "{} twice", one.cell);
        assert!((0.0..=1.0).contains(&one.share) && one.why.starts_with("not held yet"));
    }
}
