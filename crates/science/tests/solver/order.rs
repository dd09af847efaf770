//! Errors shrink as the theory of each method says.

use barm_science::ode::{System, dopri5, rodas4};

/// y' = −2 t y², y(0) = 1: y = 1/(1 + t²). Bends in both time and state.
struct Bell;

impl System<1> for Bell {
    fn rates(&self, t: f64, y: &[f64; 1]) -> [f64; 1] {
        [-2.0 * t * y[0] * y[0]]
    }
}

fn bell(t: f64) -> f64 {
    1.0 / (1.0 + t * t)
}

/// Takes the Bell problem from 0 to 2 in `n` equal steps; the largest error at the end of a step,
/// and the largest inside one, at 0.37 of it, when each step starts from the exact solution.
fn march(n: u32, implicit: bool) -> (f64, f64) {
    let h = 2.0 / f64::from(n);
    let mut y = [1.0];
    let (mut at_ends, mut inside): (f64, f64) = (0.0, 0.0);
    let one = |t: f64, y: &[f64; 1]| {
        let rates = Bell.rates(t, y);
        if implicit {
            let slopes = rodas4::slopes(&Bell, t, y, &rates, h);
            rodas4::step(&Bell, t, y, &rates, &slopes, h).unwrap().step
        } else {
            dopri5::step(&Bell, t, y, &rates, h).step
        }
    };
    for i in 0..n {
        let t = h * f64::from(i);
        y = *one(t, &y).end();
        at_ends = at_ends.max((y[0] - bell(t + h)).abs());
        let within = t + 0.37 * h;
        inside = inside.max((one(t, &[bell(t)]).at(within)[0] - bell(within)).abs());
    }
    (at_ends, inside)
}

/// Theory: order 5, dense output of order 4 (local error of order 5) for Dormand and Prince
/// (1980); order 4, dense output of order 3 (local error of order 4) for RODAS (Hairer and
/// Wanner 1996, section IV.7).
#[test]
fn errors_shrink_with_the_order_of_theory() {
    for (implicit, order, dense) in [(false, 5.0, 5.0), (true, 4.0, 4.0)] {
        let (coarse, fine) = (march(80, implicit), march(160, implicit));
        let at_ends = (coarse.0 / fine.0).log2();
        let inside = (coarse.1 / fine.1).log2();
        assert!((at_ends - order).abs() < 0.2, "implicit {implicit}: order {at_ends:.3}");
        assert!((inside - dense).abs() < 0.2, "implicit {implicit}: dense {inside:.3}");
    }
}

/// The estimate of the error belongs to the lower order of the pair: 4 and 3.
#[test]
fn error_estimates_shrink_one_order_slower() {
    let (t, y) = (0.7, [bell(0.7)]);
    let rates = Bell.rates(t, &y);
    let explicit = |h: f64| dopri5::step(&Bell, t, &y, &rates, h).error[0].abs();
    let slope = (explicit(0.01) / explicit(0.005)).log2();
    assert!((slope - 5.0).abs() < 0.2, "explicit estimate {slope:.3}");
    let implicit = |h: f64| {
        let slopes = rodas4::slopes(&Bell, t, &y, &rates, h);
        rodas4::step(&Bell, t, &y, &rates, &slopes, h).unwrap().error[0].abs()
    };
    let slope = (implicit(0.02) / implicit(0.01)).log2();
    assert!((slope - 4.0).abs() < 0.2, "implicit estimate {slope:.3}");
}
