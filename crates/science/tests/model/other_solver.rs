//! The same rates through a library's solver of the other kind: backward differentiation, a
//! multistep method, against our one-step ones.

use crate::bench;
use barm_science::model::state::{CELSIUS, DISSOLVED, ETHANOL, GAS, GLUCOSE, State};
use barm_science::model::{Mixture, Parameters};
use barm_science::ode::System;
use barm_science::setup::{Lying, Setup};
use differential_equations::prelude::{BackwardDifferentiationFormula, IVP, ODE};

struct Rates<'a>(&'a Mixture);

impl ODE<f64, State> for Rates<'_> {
    fn diff(&self, t: f64, y: &State, change: &mut State) {
        *change = self.0.rates(t, y);
    }
}

fn both_agree(name: &str, setup: &Setup) {
    let mixture = Mixture::new(setup, &Parameters::median());
    let ours = barm_science::model::course::follow(setup, &mixture, 60).unwrap();
    let rates = Rates(&mixture);
    for minute in [10.0, 20.0, 30.0, 60.0] {
        let theirs = IVP::ode(&rates, 0.0, minute, *mixture.start())
            .method(BackwardDifferentiationFormula::adaptive().rtol(1e-8).atol(1e-9))
            .solve()
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let y = theirs.y.last().unwrap();
        let moment = &ours.moments[minute as usize];
        for i in [CELSIUS, DISSOLVED, GAS, ETHANOL, GLUCOSE] {
            let off = (moment.state[i] - y[i]).abs() / y[i].abs().max(1.0);
            assert!(off < 2e-5, "{name}, {minute} min: state {i} differs by {off:e}");
        }
    }
}

#[test]
fn a_library_of_the_other_kind_finds_the_same_bags() {
    both_agree("sugar at 40 °C", &bench::plain(40.0));
    both_agree("sugar at 25 °C", &bench::plain(25.0));
    let mut tray = bench::plain(38.0);
    tray.lying = Lying::WarmTray { celsius: 40.0 };
    tray.foods = vec![bench::grams("sugar_white", 1.0)];
    both_agree("sugar that runs out in a tray", &tray);
    let mut flakes = bench::plain(40.0);
    flakes.foods = vec![bench::grams("potato_flakes", 2.5)];
    flakes.enzymes = vec![bench::served("glucoamylase-powder")];
    both_agree("potato flakes with glucoamylase", &flakes);
    let mut milk = bench::plain(35.0);
    milk.foods = vec![bench::grams("milk_powder_nonfat", 3.0)];
    milk.enzymes = vec![bench::served("lactase-drops")];
    both_agree("milk with lactase", &milk);
    let mut soda = bench::plain(35.0);
    soda.foods.push(bench::grams("baking_soda", 0.5));
    soda.foods.push(bench::grams("vinegar", 5.0));
    both_agree("sugar with soda and vinegar", &soda);
}
