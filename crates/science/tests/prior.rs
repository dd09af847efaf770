//! The table of what is not known.

use barm_science::model::Parameters;
use barm_science::prior::{Prior, Transform};
use barm_science::setup::YeastKind;

/// Two rows for one number would spread it twice, and the second would hide the first's best guess.
#[test]
fn every_number_has_one_row_for_a_kind_of_yeast() {
    let prior = Prior::default();
    for kind in YeastKind::ALL {
        let mut marked = Parameters::median();
        let mut names = std::collections::BTreeSet::new();
        for row in prior.rows.iter().filter(|row| row.kind.is_none_or(|only| only == kind)) {
            assert!(names.insert(row.name), "{} stands twice", row.name);
            let place = (row.place)(&mut marked);
            assert!(!place.is_nan(), "{} shares its place with another row", row.name);
            *place = f64::NAN;
            let total = row.spread.total();
            assert!(total > 0.0 && total.is_finite(), "{}: spread {total}", row.name);
        }
        let fields = format!("{:?}", Parameters::median()).matches(": ").count();
        assert_eq!(names.len(), fields, "every parameter is spread");
    }
}

#[test]
fn a_deviate_moves_a_number_on_its_scale() {
    let e = std::f64::consts::E;
    assert!((Transform::Log.moved(2.0, 0.5, 2.0) - 2.0 * e).abs() < 1e-12);
    assert!((Transform::Plain.moved(2.0, 0.5, -6.0) + 1.0).abs() < 1e-12);
    assert!((Transform::Between(0.0, 1.0).moved(0.9, 0.5, 6.0) - 1.0).abs() < 1e-12);
    assert!((Transform::Distance.moved(3.0, 2.0, -2.0) - 5.0).abs() < 1e-12);
}
