//! Forecasts from what was learned.

use super::bench;
use barm_science::bag::StandardBag;
use barm_science::forecast::{Forecast, Span, Streams, forecast, forecast_from};
use barm_science::model::Parameters;
use barm_science::prior::{Key, Learned, LearnedError, Of, Prior};
use barm_science::setup::{EnzymeKind, YeastKind};

/// Everything that one can name, as the table has it.
fn nothing_new() -> Learned {
    let mut keys: Vec<Key> = YeastKind::ALL.map(|of| Key::new("vigor", Of::Yeast(of))).into();
    keys.extend(["wake", "heat", "release", "co2-yield"].map(|name| Key::new(name, Of::All)));
    keys.push(Key::activity(EnzymeKind::Glucoamylase));
    keys.push(Key::content(&bench::plain(40.0).foods[0].composition));
    let count = keys.len();
    let row = |at: usize| (0..count).map(|to| f64::from(u8::from(to == at))).collect();
    Learned {
        names: keys.iter().map(Key::to_string).collect(),
        means: vec![0.0; count],
        covariance: (0..count).map(row).collect(),
    }
}

fn from(learned: &Learned) -> Forecast {
    let prior = Prior::default().knowing(learned).expect("numbers that can be");
    let span = Span { draws: 64, ..Span::to(30) };
    forecast_from(&bench::plain(40.0), &span, &Streams::alone(1, 2), &prior).expect("a bag")
}

#[test]
fn what_says_nothing_new_changes_no_bit() {
    let span = Span { draws: 64, ..Span::to(30) };
    let plain = forecast(&bench::plain(40.0), &span, &Streams::alone(1, 2)).expect("a bag");
    assert_eq!(plain, from(&nothing_new()));
    assert_eq!(plain, from(&Learned::default()));
}

#[test]
fn a_number_that_is_known_is_known_in_every_draw() {
    let mut learned = nothing_new();
    let before = from(&learned);
    let at = learned.place("vigor of active dry yeast").expect("a number");
    learned.means[at] = 1.0;
    learned.covariance[at][at] = 0.01;
    let after = from(&learned);
    let width = |forecast: &Forecast| {
        let band = forecast.gas_ml().band();
        band.high[30] - band.low[30]
    };
    assert!(width(&after) < 0.9 * width(&before), "{} {}", width(&after), width(&before));
    assert!(after.gas_ml().band().median[30] > before.gas_ml().band().median[30]);
}

#[test]
fn names_come_back_from_text_and_unknown_ones_are_passed_over() {
    let prior = Prior::default();
    let learned = nothing_new();
    for name in &learned.names {
        let key = Key::read(name, &prior.rows).unwrap_or_else(|| panic!("{name}"));
        assert_eq!(key.to_string(), *name);
    }
    assert_eq!(prior.knowing(&learned).expect("numbers").learned(), learned);
    let mut stranger = learned.clone();
    stranger.names[0] = "vigor of wild yeast".to_owned();
    let known = prior.knowing(&stranger).expect("numbers").learned();
    assert_eq!(known, learned.only(|name| *name != learned.names[0]));
}

/// What is known after a pilot decides which laws a bag goes beyond and what is most likely: here yeast so
/// quick that it blows up a bag which the usual lot does not.
#[test]
fn marks_of_range_go_by_what_was_learned() {
    let mut setup = bench::plain(40.0);
    setup.bag = StandardBag::Snack.bag();
    let marked = |mean: f64| {
        let learned = Learned {
            names: vec!["vigor of active dry yeast".into()],
            means: vec![mean],
            covariance: vec![vec![0.01]],
        };
        let prior = Prior::default().knowing(&learned).expect("numbers that can be");
        let span = Span { draws: 8, ..Span::to(25) };
        let drawn = forecast_from(&setup, &span, &Streams::alone(1, 2), &prior).expect("a bag");
        drawn.beyond().iter().any(|beyond| beyond.law.name == "card_height.family")
    };
    assert!(!marked(-2.0), "slow yeast");
    assert!(marked(2.0), "quick yeast");
}

/// The best guess is the middle of what is drawn.
#[test]
fn a_typical_bag_is_the_middle_of_the_draws() {
    let mut setup = bench::plain(40.0);
    setup.enzymes = vec![bench::served("glucoamylase-powder")];
    let learned = Learned {
        names: [
            "vigor of active dry yeast".to_owned(),
            Key::activity(EnzymeKind::Glucoamylase).to_string(),
            Key::content(&setup.foods[0].composition).to_string(),
        ]
        .into(),
        means: vec![1.5, -2.0, -1.0],
        covariance: vec![vec![0.2, 0.0, 0.0], vec![0.0, 0.1, 0.0], vec![0.0, 0.0, 0.3]],
    };
    let prior = Prior::default().knowing(&learned).expect("numbers that can be");
    assert_eq!(Prior::default().typical(&setup).setup, setup);
    assert_eq!(Prior::default().typical(&setup).parameters, Parameters::median());
    let typical = prior.typical(&setup);
    // e to the power of the mean times the standard deviation, as the table and the dose have them.
    let vigor = prior.value("vigor of active dry yeast", 1.5).expect("a number of the model");
    assert!((typical.parameters.vigor - vigor).abs() < 1e-12);
    let dose = &setup.enzymes[0];
    let less = typical.setup.enzymes[0].units / dose.units;
    assert!((less.ln() + 2.0 * dose.activity_sd).abs() < 1e-12, "{less}");
    let food = &setup.foods[0];
    let poorer =
        typical.setup.foods[0].composition.sucrose / setup.foods[0].composition.sucrose;
    assert!((poorer.ln() + food.content_sd).abs() < 1e-12, "{poorer}");
}

/// By hand: e to the power of two of the log standard deviations in the table of facts.
#[test]
fn a_deviate_is_told_as_a_value() {
    let prior = Prior::default();
    let facts = barm_science::facts::all();
    let sd =
        facts.iter().find(|fact| fact.name == "cooling.loss_log_sd").expect("a fact").value;
    let value = prior.value("heat", 2.0).expect("a number of the model");
    assert!((value - libm::exp(2.0 * sd)).abs() < 1e-12);
    assert_eq!(prior.value("activity of glucoamylase", 1.0), None);
}

#[test]
fn what_nobody_can_have_learned_is_refused() {
    let refused = |change: fn(&mut Learned)| {
        let mut learned = nothing_new();
        change(&mut learned);
        Prior::default().knowing(&learned).expect_err("cannot be")
    };
    let short = refused(|all| all.means.truncate(1));
    assert!(matches!(short, LearnedError::Shape { means: 1, .. }), "{short}");
    let short = refused(|all| all.covariance[2].truncate(1));
    assert!(matches!(short, LearnedError::Shape { .. }), "{short}");
    let twice = refused(|all| all.names[3] = all.names[4].clone());
    assert!(matches!(twice, LearnedError::Twice { .. }), "{twice}");
    let nan = refused(|all| all.covariance[1][1] = f64::NAN);
    assert!(matches!(nan, LearnedError::NotFinite { .. }), "{nan}");
    let skew = refused(|all| all.covariance[2][1] = 0.5);
    assert!(matches!(skew, LearnedError::NotACovariance { .. }), "{skew}");
    let beyond = refused(|all| {
        all.covariance[2][1] = 1.5;
        all.covariance[1][2] = 1.5;
    });
    assert!(matches!(beyond, LearnedError::NotACovariance { .. }), "{beyond}");
    let negative = refused(|all| all.covariance[5][5] = -0.1);
    assert!(matches!(negative, LearnedError::NotACovariance { .. }), "{negative}");
}
