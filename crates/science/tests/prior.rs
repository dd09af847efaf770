//! The table of what is not known.

use barm_science::facts;
use barm_science::model::Parameters;
use barm_science::prior::{Prior, Row, TAKEN_FOR_KNOWN, Transform, Whose};
use barm_science::setup::YeastKind;

fn row_of(row: &Row, kind: YeastKind) -> bool {
    match row.whose {
        Whose::Yeast(only) => only == kind,
        Whose::All | Whose::Bags => true,
    }
}

/// Two rows for one number would spread it twice, and the second would hide the first's best guess.
#[test]
fn every_number_has_one_row_for_a_kind_of_yeast() {
    let prior = Prior::default();
    for kind in YeastKind::ALL {
        let mut marked = Parameters::median();
        let mut names = std::collections::BTreeSet::new();
        for row in prior.rows.iter().filter(|row| row_of(row, kind)) {
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

/// A fact of the bag model that has a range either is spread by a row or stands among those taken
/// for known, with the reason; and neither list names a fact that there is none of.
#[test]
fn every_range_is_used_or_left_out_for_a_reason() {
    let all = facts::all();
    let prior = Prior::default();
    let spread: Vec<&str> = prior.rows.iter().map(|row| row.from).collect();
    let known: Vec<&str> =
        TAKEN_FOR_KNOWN.iter().flat_map(|(_, names)| *names).copied().collect();
    for name in &known {
        assert!(!spread.contains(name), "{name} is spread and taken for known");
        assert_eq!(
            known.iter().filter(|other| *other == name).count(),
            1,
            "{name} stands twice"
        );
    }
    for name in spread.iter().chain(&known) {
        let fact = all.iter().find(|fact| fact.name == *name);
        let fact = fact.unwrap_or_else(|| panic!("no fact {name}"));
        let judged = name.starts_with("forecast.") || name.ends_with("_sd");
        assert!(judged || fact.range.is_some(), "{name} has no range to go by");
    }
    let of_the_model = [
        "yeast.",
        "enzyme.",
        "starch.",
        "model.",
        "cooling.",
        "permeation.",
        "stoichiometry.",
        "carbonate.",
        "carbon_dioxide.",
    ];
    // Read by the dose that a product gives, and by what is worked out beside the bag model.
    let elsewhere =
        ["enzyme.label.", "enzyme.product.", "permeation.over_", "permeation.oxygen_"];
    let forgotten: Vec<&str> = all
        .iter()
        .filter(|fact| fact.range.is_some())
        .map(|fact| fact.name)
        .filter(|name| of_the_model.iter().any(|start| name.starts_with(start)))
        .filter(|name| !elsewhere.iter().any(|start| name.starts_with(start)))
        .filter(|name| !spread.contains(name) && !known.contains(name))
        .collect();
    assert!(forgotten.is_empty(), "neither spread nor taken for known: {forgotten:?}");
}
