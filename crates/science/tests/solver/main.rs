//! The solvers against published test problems, closed forms and their own theory.

mod chains;
mod closed_form;
mod lockstep;
mod order;
mod stiff;

use barm_science::ode::{OdeError, Step, System, Tolerance, dopri5, rodas4};
use std::ops::ControlFlow;

fn go_on<const N: usize>(_: &Step<N>) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn rows<const N: usize>(text: &str) -> Vec<[f64; N]> {
    let parse = |line: &str| {
        let values: Vec<f64> = line.split(',').map(|v| v.parse().unwrap()).collect();
        values.try_into().unwrap()
    };
    text.lines().skip(1).map(parse).collect()
}

/// y' = −y/0 is nobody's bag, and must be said rather than looped over.
struct Broken;

impl System<1> for Broken {
    fn rates(&self, t: f64, _: &[f64; 1]) -> [f64; 1] {
        [if t < 0.5 { 1.0 } else { f64::NAN }]
    }
}

#[test]
fn rates_that_are_not_numbers_are_refused() {
    let tolerance = Tolerance::uniform(1e-6, 1e-9);
    for result in [
        dopri5::solve(&Broken, 0.0, &[0.0], 1.0, &tolerance, go_on),
        rodas4::solve(&Broken, 0.0, &[0.0], 1.0, &tolerance, go_on),
    ] {
        let error = result.unwrap_err();
        assert!(
            matches!(error, OdeError::NotFinite { .. } | OdeError::StepTooSmall { .. }),
            "{error}"
        );
    }
}
