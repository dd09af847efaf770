//! The kinds of classes.

use barm_domain::trust::{CELLS, Lesson, Made, Slips, cell};
use std::collections::BTreeSet;

#[test]
fn a_name_says_what_a_kind_of_class_is() {
    for cell in &CELLS {
        let mut name = format!(
            "b{}-p{}-t{}-{}-g{}",
            cell.bags,
            cell.periods,
            cell.treatments,
            cell.made.word(),
            cell.group_sd
        );
        if cell.wide {
            name.push_str("-wide");
        }
        if cell.twice {
            name.push_str("-twice");
        }
        if cell.slips != Slips::None {
            name.push('-');
            name.push_str(cell.slips.word());
        }
        assert_eq!(cell.name, name);
    }
    let names: BTreeSet<&str> = CELLS.iter().map(|cell| cell.name).collect();
    assert_eq!(names.len(), CELLS.len());
    assert_eq!(cell("b4-p1-t2-pairs-g1"), Some(&CELLS[8]));
    assert_eq!(cell("b4"), None);
}

/// Every level is in several kinds of classes, and each number of bags meets each of periods.
#[test]
fn all_levels_are_there() {
    let with = |is: &dyn Fn(&barm_domain::trust::Cell) -> bool| {
        CELLS.iter().filter(|cell| cell.slips == Slips::None && is(cell)).count()
    };
    for bags in [2, 3, 4, 6] {
        for periods in [1, 3, 5] {
            assert!(with(&|cell| cell.bags == bags && cell.periods == periods) > 0);
        }
    }
    for treatments in 2..=6 {
        assert!(with(&|cell| cell.treatments == treatments) > 1, "{treatments}");
    }
    for sd in [0.0, 0.5, 1.0] {
        for wide in [false, true] {
            let same = |found: f64| (found - sd).abs() < 1e-9;
            assert!(with(&|cell| same(cell.group_sd) && cell.wide == wide) > 0, "{sd} {wide}");
        }
    }
    for made in [Made::Whole, Made::Own, Made::Each, Made::Pairs] {
        assert!(with(&|cell| cell.made == made) > 1, "{made:?}");
    }
    for slips in [Slips::Ignored, Slips::Mended] {
        assert_eq!(CELLS.iter().filter(|cell| cell.slips == slips).count(), 3);
    }
    assert_eq!(CELLS.iter().filter(|cell| !cell.can_be_clear()).count(), 2);
    assert_eq!(CELLS.iter().filter(|cell| cell.twice).count(), 2);
}

#[test]
fn slips_stand_beside_the_same_without() {
    for cell in &CELLS {
        let bare = cell.without_slips();
        assert_eq!(bare.is_some(), cell.slips != Slips::None, "{}", cell.name);
        if let Some(bare) = bare {
            let same = barm_domain::trust::Cell { name: cell.name, slips: cell.slips, ..*bare };
            assert_eq!(same, *cell);
        }
    }
}

#[test]
fn every_kind_of_class_has_a_plan() {
    for cell in &CELLS {
        let lesson = Lesson::of(cell).unwrap();
        assert_eq!(lesson.cell(), cell);
    }
}
