//! Single classes.

use barm_domain::trust::{CELLS, Cell, Lesson, Made, Said, Slips, Tally, Truth, cell};

fn lesson(name: &str) -> Lesson {
    Lesson::of(cell(name).unwrap()).unwrap()
}

#[test]
fn equal_seeds_give_equal_classes_and_others_give_others() {
    for cell in &CELLS {
        let lesson = Lesson::of(cell).unwrap();
        let told = |seed| -> Vec<Said> {
            (0..3).map(|number| lesson.class(number, seed, Truth::Twice)).collect()
        };
        assert_eq!(told(1), told(1), "{}", cell.name);
    }
    let lesson = lesson("b2-p1-t2-whole-g0");
    let told = |seed| -> Vec<Said> {
        (0..40).map(|number| lesson.class(number, seed, Truth::Twice)).collect()
    };
    assert_ne!(told(1), told(2));
    assert_ne!(told(1)[..20], told(1)[20..]);
}

/// A difference is told where there is one, and is never counted as found where there is none.
#[test]
fn a_difference_is_told_where_there_is_one() {
    let lesson = lesson("b6-p5-t2-whole-g0.5-wide");
    let found = (0..40).filter(|n| lesson.class(*n, 5, Truth::Twice).true_clear).count();
    let wrong = (0..40).filter(|n| lesson.class(*n, 5, Truth::Same).true_clear).count();
    assert!(found > 10 && wrong == 0, "{found} {wrong}");
}

/// One bag each, and one group to a treatment: "clear" is never said.
#[test]
fn clear_is_not_to_be_had_where_chance_cannot_be_told() {
    let classes = crate::size::counts(40, 60, 1000);
    for cell in CELLS.iter().filter(|cell| !cell.can_be_clear()) {
        let lesson = Lesson::of(cell).unwrap();
        for number in 0..classes {
            let said = lesson.class(number, 3, Truth::Twice);
            assert!(!said.true_clear && !said.false_clear, "{} {number}", cell.name);
        }
    }
}

/// Bags that differ by nothing but the ruler, and periods: no class hears "clear" where there is no
/// difference.
#[test]
fn bags_without_spread_are_never_told_apart() {
    let classes = crate::size::counts(40, 60, 1000);
    for cell in CELLS.iter().filter(|cell| cell.slips == Slips::None) {
        let lesson = Lesson::of(&Cell { bag_sd_mm: 0.0, ..*cell }).unwrap();
        for number in 0..classes {
            let said = lesson.class(number, 4, Truth::Same);
            assert!(!said.false_clear, "{} {number}", cell.name);
        }
    }
}

/// What goes wrong reaches the words, and so does what is done about it.
#[test]
fn slips_change_a_class_and_mends_change_it_again() {
    let classes = 60;
    let told = |name: &str| -> Vec<Said> {
        let lesson = lesson(name);
        (0..classes).map(|number| lesson.class(number, 1, Truth::Twice)).collect()
    };
    assert_ne!(told("b4-p3-t3-own-g1"), told("b4-p3-t3-own-g1-ignored"));
    assert_ne!(told("b4-p3-t3-own-g1-ignored"), told("b4-p3-t3-own-g1-mended"));
}

#[test]
fn tallies_add_up() {
    let lesson = lesson("b2-p1-t4-own-g0.5");
    let mut all = Tally::default();
    for number in 0..8 {
        all += Tally::of(&lesson, number, 1);
    }
    assert_eq!((all.false_clear.of, all.true_clear.of, all.held.of), (8, 8, 8));
    let found = (0..8).filter(|n| lesson.class(*n, 1, Truth::Twice).true_clear).count();
    assert_eq!(all.true_clear.found, found);
    assert!(all.held.at_least() <= all.held.share().unwrap());
    assert!(all.held.share().unwrap() <= all.held.at_most());
    assert_eq!(Tally::default().held.share(), None);
}

/// A second round adds to what a class is told: the first word stays, and another may come.
#[test]
fn a_second_round_finds_more_and_takes_nothing_back() {
    for name in ["b3-p1-t3-own-g1-twice", "b4-p3-t2-each-g0-wide-twice"] {
        let kind = cell(name).unwrap();
        let twice = Lesson::of(kind).unwrap();
        let once = Lesson::of(&Cell { twice: false, ..*kind }).unwrap();
        let told = |lesson: &Lesson| -> Vec<Said> {
            (0..60).map(|number| lesson.class(number, 11, Truth::Twice)).collect()
        };
        let found = |told: &[Said]| told.iter().filter(|said| said.true_clear).count();
        let (twice, once) = (told(&twice), told(&once));
        assert!(found(&twice) > found(&once), "{name}: {} {}", found(&twice), found(&once));
        assert!(twice.iter().all(|said| !said.intervals));
        // The school's rule has no second look.
        assert!(twice.iter().zip(&once).all(|(a, b)| a.true_large == b.true_large));
    }
}

/// A kind of class that is in no table can be tried too.
#[test]
fn any_kind_of_class_can_be_tried() {
    let odd = Cell {
        name: "odd",
        bags: 5,
        periods: 2,
        treatments: 3,
        made: Made::Each,
        bag_sd_mm: 4.0,
        group_sd: 0.25,
        wide: false,
        slips: Slips::Mended,
        twice: false,
    };
    let lesson = Lesson::of(&odd).unwrap();
    assert_eq!(Tally::of(&lesson, 0, 1).false_clear.of, 1);
}
