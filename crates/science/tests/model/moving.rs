//! Solvers carry only what moves in a bag; it must be as if they carried everything.

use crate::any_bag;
use crate::bench;
use barm_science::model::course::{sample, tolerance};
use barm_science::model::state::{STATES, State};
use barm_science::model::{Mixture, Parameters, nominal};
use barm_science::ode::{self, System};
use barm_science::setup::Setup;
use core::ops::ControlFlow;
use proptest::prelude::{ProptestConfig, proptest};

const LAST: u32 = 60;

/// The last states of a bag, followed by what moves and whole.
fn both(setup: &Setup) -> [State; 2] {
    let mixture = Mixture::new(setup, &Parameters::median());
    let fine = tolerance(1e-8);
    let few = sample(&mixture, 0.0, LAST, &fine, |_, _| ()).unwrap().y;
    let last = f64::from(LAST);
    let all = |_: &ode::Step<STATES>| ControlFlow::Continue(());
    let whole = ode::solve(&mixture, 0.0, mixture.start(), last, &fine, all).unwrap().y;
    [few, whole]
}

#[test]
fn a_bag_followed_by_what_moves_is_the_bag_followed_whole() {
    for (name, setup) in bench::every_food_and_enzyme() {
        let [few, whole] = both(&setup);
        for (i, (few, whole)) in few.iter().zip(&whole).enumerate() {
            let off = (few - whole).abs() / whole.abs().max(1.0);
            assert!(off < 1e-6, "{name}: state {i} is off by {off:e}");
        }
    }
}

/// What no rate hangs on may be anything.
fn unread_changes_nothing(mixture: &Mixture, minute: f64, y: &State) {
    let mut other = *y;
    for i in (0..STATES).filter(|i| !mixture.is_read(*i)) {
        other[i] += 1.0;
    }
    let bits = |y: &State| mixture.rates(minute, y).map(f64::to_bits);
    assert_eq!(bits(y), bits(&other), "minute {minute}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(any_bag::cases()))]

    #[test]
    fn what_is_left_out_has_no_part(setup in any_bag::setup()) {
        let Ok(course) = nominal(&setup, 90) else { return Ok(()) };
        let mixture = Mixture::new(&setup, &Parameters::median());
        let stands = |i: usize| {
            let start = mixture.start()[i].to_bits();
            course.moments.iter().all(|moment| moment.state[i].to_bits() == start)
        };
        for moment in &course.moments {
            unread_changes_nothing(&mixture, moment.minute, &moment.state);
        }
        for i in (0..STATES).filter(|i| stands(*i)) {
            for moment in &course.moments {
                let rate = mixture.rates(moment.minute, &moment.state)[i];
                // A rate may be too slow to show in the last bit of a state.
                let least = 1e-14 * moment.state[i].abs();
                assert!(rate.abs() <= least, "minute {}: state {i} by {rate:e}", moment.minute);
            }
        }
    }
}
