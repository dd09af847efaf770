//! Twins that follow the steps of another.

use barm_science::ode::lockstep::Track;
use barm_science::ode::{System, Tolerance};

/// y' = −k (y − cos t) − sin t: y = cos t + (y0 − 1) exp(−k t), so ∂y/∂k = −t (y0 − 1) exp(−k t).
/// A. Prothero, A. Robinson (1974), *Math. Comput.* 28, 145-162: stiff for a large k.
struct Drawn {
    k: f64,
}

impl System<1> for Drawn {
    fn rates(&self, t: f64, y: &[f64; 1]) -> [f64; 1] {
        [-self.k * (y[0] - libm::cos(t)) - libm::sin(t)]
    }
}

/// The last value of a twin, and the greatest error of its derivative by k against the closed form.
fn slope_error(k: f64, end: f64) -> f64 {
    let start = [3.0];
    let tolerance = Tolerance::uniform(1e-6, 1e-8);
    let track = Track::of(&Drawn { k }, 0.0, &start, end, &tolerance, |_| ()).unwrap();
    let nudge = 1e-4 * k;
    let follow = |k: f64| {
        let mut seen = Vec::new();
        track.follow(&Drawn { k }, &start, |step| seen.push((step.t1, step.end()[0]))).unwrap();
        seen
    };
    let (less, more) = (follow(k - nudge), follow(k + nudge));
    assert!(less.last().is_some_and(|(t, _)| (t - end).abs() < 1e-12), "to the end");
    let errors = less.iter().zip(&more).map(|((t, less), (_, more))| {
        let slope = (more - less) / (2.0 * nudge);
        let exact = -t * (start[0] - 1.0) * libm::exp(-k * t);
        (slope - exact).abs() * k
    });
    errors.fold(0.0, f64::max)
}

#[test]
fn the_difference_of_twins_is_the_derivative() {
    // In units of ∂y/∂ ln k, which is at most 2/e: some ten times the tolerance.
    let error = slope_error(1.5, 5.0);
    assert!(error < 1e-5, "{error:e}");
}

#[test]
fn twins_follow_the_implicit_method_too() {
    let error = slope_error(2000.0, 20.0);
    assert!(error < 1e-3, "{error:e}");
}

#[test]
fn the_first_itself_follows_its_own_steps() {
    for k in [1.5, 2000.0] {
        let tolerance = Tolerance::uniform(1e-6, 1e-8);
        let mut ends = Vec::new();
        let system = Drawn { k };
        let track =
            Track::of(&system, 0.0, &[3.0], 20.0, &tolerance, |step| ends.push(step.end()[0]))
                .unwrap();
        let mut again = Vec::new();
        track.follow(&system, &[3.0], |step| again.push(step.end()[0])).unwrap();
        assert_eq!(ends.len(), again.len());
        for (one, other) in ends.iter().zip(&again) {
            assert!((one - other).abs() < 1e-9, "{one} and {other}");
        }
    }
}
