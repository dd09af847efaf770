//! Raffinose: what yeast can use of it, and what its enzyme sets free.

use crate::bench;
use barm_science::enzyme::products::product;
use barm_science::model::course::follow;
use barm_science::model::state::{
    ALIVE, AWAKE, GALACTOSE, GALACTOSIDES, GLUCOSE, MELIBIOSE, SUCROSE, State,
};
use barm_science::model::{Mixture, Parameters};
use barm_science::setup::{Composition, Portion, Setup};

fn bag(composition: Composition, tablets: f64) -> Setup {
    let mut setup = bench::plain(35.0);
    setup.foods = vec![Portion { composition, grams: 1.0, ..Portion::default() }];
    if tablets > 0.0 {
        let mut dose = product("alpha-galactosidase-tablet").unwrap().dose(tablets, 0.1);
        dose.carrier = None;
        setup.enzymes = vec![dose];
    }
    setup
}

fn pure_raffinose() -> Composition {
    Composition { galactosides: 100.0, ..Composition::NONE }
}

/// Gas, with what is dissolved, that a bag makes beyond one without food (mmol).
fn made(composition: Composition, tablets: f64, minutes: u32) -> (f64, State) {
    let of = |composition, tablets| {
        let setup = bag(composition, tablets);
        let mixture = Mixture::new(&setup, &Parameters::median()).held_at(30.0);
        let last = *follow(&setup, &mixture, minutes).unwrap().moments.last().unwrap();
        (barm_science::model::balance::carbon_dioxide(&last.state), last.state)
    };
    let (gas, state) = of(composition, tablets);
    (gas - of(Composition::NONE, 0.0).0, state)
}

/// Baker's yeast ferments a third of raffinose, its fructose, and leaves melibiose (textbooks of
/// yeasts since the nineteenth century, from memory): after five hours a third of what as many hexose
/// units of glucose gave, and slower than glucose before that.
#[test]
fn yeast_ferments_a_third_of_raffinose() {
    let glucose = Composition { glucose: 100.0, ..Composition::NONE };
    // 1 g raffinose is 5.95 mmol of hexose units, 1 g glucose 5.55 (504.44/3 and 180.16 g/mol).
    let same_units = (504.44 / 3.0) / 180.16;
    let (raffinose, left) = made(pure_raffinose(), 0.0, 300);
    let (whole, _) = made(glucose, 0.0, 300);
    let share = raffinose * same_units / whole;
    assert!((share - 1.0 / 3.0).abs() < 0.03, "{share}");
    assert!(left[MELIBIOSE] > 3.0 && left[GALACTOSIDES] < 0.2, "{left:?}");
    let (early, _) = made(pure_raffinose(), 0.0, 10);
    let (fast, _) = made(glucose, 0.0, 10);
    assert!(early < 0.6 * fast, "{early} beside {fast}");
}

/// With the enzyme in plenty all but the galactose ferments: two thirds.
#[test]
fn with_its_enzyme_two_thirds_of_raffinose_ferment() {
    let (bare, _) = made(pure_raffinose(), 0.0, 60);
    let (cut, state) = made(pure_raffinose(), 20.0, 60);
    assert!(cut > 1.5 * bare, "{cut} beside {bare}");
    assert!(state[GALACTOSE] > 1.5, "{}", state[GALACTOSE]);
}

/// One water a bond: from each of its units raffinose gives a galactose and two of table sugar,
/// melibiose a galactose and a glucose; galactose crowds the enzyme out.
#[test]
fn the_enzyme_cuts_one_galactose_at_a_time() {
    let setup = bag(pure_raffinose(), 1.0);
    let mixture = Mixture::new(&setup, &Parameters::median()).held_at(37.0);
    let rates = |edit: fn(&mut State)| {
        let mut y = *mixture.start();
        (y[AWAKE], y[ALIVE]) = (0.0, 1.0);
        edit(&mut y);
        let with = barm_science::ode::System::rates(&mixture, 0.0, &y);
        y[barm_science::model::state::ENZYMES + 7] = 0.0;
        let without = barm_science::ode::System::rates(&mixture, 0.0, &y);
        move |place: usize| with[place] - without[place]
    };
    let first = rates(|_| ());
    assert!(first(GALACTOSE) > 0.0);
    assert!((first(GALACTOSIDES) + 3.0 * first(GALACTOSE)).abs() < 1e-12);
    assert!((first(SUCROSE) - 2.0 * first(GALACTOSE)).abs() < 1e-12);
    let second = rates(|y| (y[GALACTOSIDES], y[MELIBIOSE]) = (0.0, 4.0));
    assert!((second(GLUCOSE) - second(GALACTOSE)).abs() < 1e-12 && second(GLUCOSE) > 0.0);
    assert!((second(MELIBIOSE) + 2.0 * second(GALACTOSE)).abs() < 1e-12);
    let crowded = rates(|y| y[GALACTOSE] = 20.0);
    assert!(crowded(GALACTOSE) < first(GALACTOSE));
}
