//! Heights that no bag reaches, and rises that no yeast makes.

use crate::class::{Class, ZERO_MM, bag};
use barm_domain::result::Hint;

#[test]
fn a_height_far_beyond_a_full_bag_is_refused_and_says_why() {
    let mut class = Class::foods(&["1"], &["Maple"]);
    let code = class.add("Maple", "1");
    // A snack bag stands 52 mm high when it is full (own simulation); 5 inches are 127 mm.
    class.read(&code, &[(0.0, 4.0), (4.0, 9.0), (24.0, 127.0 - ZERO_MM)]);
    let result = class.result();
    assert_eq!(result.rejected.len(), 1);
    let reason = &result.rejected[0].reason;
    assert!(reason.contains(&code) && reason.contains("127 mm"), "{reason}");
    assert_eq!(bag(&result, &code).curve.readings, 2);
}

#[test]
fn a_rise_of_half_a_bag_between_two_readings_is_worth_a_look() {
    let hints = |points: &[(f64, f64)]| {
        let mut class = Class::foods(&["1"], &["Maple"]);
        let code = class.add("Maple", "1");
        class.read(&code, points);
        bag(&class.result(), &code).hints.clone()
    };
    let jumped = hints(&[(0.0, 4.0), (20.0, 19.0), (24.0, 58.0)]);
    assert!(
        jumped.iter().any(|hint| matches!(hint, Hint::Jumped { by_mm, .. } if *by_mm > 38.0)),
        "{jumped:?}"
    );
    let steady = hints(&[(0.0, 4.0), (20.0, 19.0), (24.0, 25.0)]);
    assert!(!steady.iter().any(|hint| matches!(hint, Hint::Jumped { .. })), "{steady:?}");
}
