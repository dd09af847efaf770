//! Numbers with a unit in running text.

use barm_domain::claim::lengths;
use proptest::prelude::*;

#[test]
fn lengths_are_found_as_people_write_them() {
    let found = |text: &str| -> Vec<(String, f64, f64)> {
        lengths(text).into_iter().map(|one| (one.written, one.mm, one.half_mm)).collect()
    };
    let one = |text: &str, written: &str, mm: f64, half: f64| {
        let found = found(text);
        assert_eq!(found.len(), 1, "{text}: {found:?}");
        assert_eq!(found[0].0, written);
        assert!(
            (found[0].1 - mm).abs() < 1e-9 && (found[0].2 - half).abs() < 1e-9,
            "{found:?}"
        );
    };
    one("it rose 12 mm by minute 24", "12 mm", 12.0, 0.5);
    one("about 1.5cm!", "1.5cm", 15.0, 0.5);
    one("subió 1,25 centímetros", "1,25 centímetros", 12.5, 0.05);
    one("a 3/8 inch gap", "3/8 inch", 9.525, 1.5875);
    one("a 14-mm rise", "14-mm", 14.0, 0.5);
    one("2 Inches.", "2 Inches", 50.8, 12.7);
    let two = found("12.0 mm and 3 millimeters in 20 min");
    assert_eq!(two.len(), 2);
    assert!((two[0].2 - 0.05).abs() < 1e-12 && (two[1].1 - 3.0).abs() < 1e-12);
}

#[test]
fn other_numbers_are_none() {
    for text in
        ["3 in 10", "5 in the morning", "12 mmol", "20 min", "40 ml", "1/0 inch", "", "mm"]
    {
        assert_eq!(lengths(text), [], "{text}");
    }
    let long = format!("{} mm", "9".repeat(400));
    assert_eq!(lengths(&long), []);
}

proptest! {
    #[test]
    fn any_text_is_read(text in ".{0,300}") {
        for one in lengths(&text) {
            prop_assert!(one.mm.is_finite() && one.mm >= 0.0 && one.half_mm > 0.0);
            prop_assert!(text.contains(&one.written));
        }
    }
}
