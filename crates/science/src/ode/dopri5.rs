//! Explicit Runge-Kutta method of order 5(4) with dense output of order 4.
//!
//! # Source
//! J. R. Dormand, P. J. Prince (1980), "A family of embedded Runge-Kutta formulae", *J. Comput.
//! Appl. Math.* 6, 19-26; step control, stiffness test and dense output as in E. Hairer,
//! S. P. Nørsett, G. Wanner, *Solving Ordinary Differential Equations I*, 2nd ed. (1993),
//! sections II.4 to II.6 and IV.2, code DOPRI5. Coefficients from memory; `tests/solver/order.rs`
//! measures the orders that only the right ones give.

use super::control::{MOST_STEPS, first_step, stands_still};
use super::{Effort, End, OdeError, Step, System, Tolerance};
use core::ops::ControlFlow;

const C: [f64; 4] = [0.2, 0.3, 0.8, 8.0 / 9.0];
const A2: [f64; 1] = [0.2];
const A3: [f64; 2] = [3.0 / 40.0, 9.0 / 40.0];
const A4: [f64; 3] = [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0];
const A5: [f64; 4] = [19372.0 / 6561.0, -25360.0 / 2187.0, 64448.0 / 6561.0, -212.0 / 729.0];
const A6: [f64; 5] =
    [9017.0 / 3168.0, -355.0 / 33.0, 46732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18656.0];
/// Weights of the solution, here and below without that of the second stage, which is zero.
const B: [f64; 5] =
    [35.0 / 384.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0];
/// Solution of order 5 less solution of order 4.
const E: [f64; 6] = [
    71.0 / 57600.0,
    -71.0 / 16695.0,
    71.0 / 1920.0,
    -17253.0 / 339200.0,
    22.0 / 525.0,
    -1.0 / 40.0,
];
/// Dense output.
const D: [f64; 6] = [
    -12715105075.0 / 11282082432.0,
    87487479700.0 / 32700410799.0,
    -10690763975.0 / 1880347072.0,
    701980252875.0 / 199316789632.0,
    -1453857185.0 / 822651844.0,
    69997945.0 / 29380423.0,
];

/// Damping of the step control by the error before (Gustafsson's proportional-integral rule).
const BETA: f64 = 0.04;
/// Power of the error itself.
const ALPHA: f64 = 0.2 - 0.75 * BETA;
/// Least error before that counts.
const LEAST_ERROR: f64 = 1e-4;
const SAFETY: f64 = 0.9;
const LEAST_FACTOR: f64 = 0.2;
const MOST_FACTOR: f64 = 10.0;
/// h·|λ| from which a step counts as held down by stability. The region ends at 3.3 along the
/// negative axis; the control of the error keeps a stiff problem's steps somewhat inside it.
const STABILITY_BORDER: f64 = 2.6;
/// Steps at the border after which a problem counts as stiff.
const PATIENCE: u32 = 15;

/// Σ weight · slope, added up in the order of the stages.
fn mix<const N: usize, const S: usize>(weights: [f64; S], slopes: [&[f64; N]; S]) -> [f64; N] {
    let mut sum = [0.0; N];
    for (weight, slope) in weights.iter().zip(slopes) {
        for i in 0..N {
            sum[i] += weight * slope[i];
        }
    }
    sum
}

fn moved<const N: usize>(y: &[f64; N], h: f64, slope: &[f64; N]) -> [f64; N] {
    core::array::from_fn(|i| y[i] + h * slope[i])
}

/// A tried step: its polynomial, its error estimate, the rates at its end and the spectral radius
/// that it felt.
#[derive(Debug, Clone, Copy)]
pub struct Trial<const N: usize> {
    /// The step.
    pub step: Step<N>,
    /// Estimate of the local error (unit of the state).
    pub error: [f64; N],
    /// Rates at the step's end, the first stage of the next step.
    pub rates: [f64; N],
    /// Estimate of the largest |λ| of the Jacobian (1 / unit of time).
    pub stiffness: f64,
}

/// Tries one step of size `h` from `y`, whose rates are `k1`. Six evaluations.
pub fn step<const N: usize, S: System<N>>(
    system: &S,
    t: f64,
    y: &[f64; N],
    k1: &[f64; N],
    h: f64,
) -> Trial<N> {
    let k2 = system.rates(t + C[0] * h, &moved(y, h, &mix(A2, [k1])));
    let k3 = system.rates(t + C[1] * h, &moved(y, h, &mix(A3, [k1, &k2])));
    let k4 = system.rates(t + C[2] * h, &moved(y, h, &mix(A4, [k1, &k2, &k3])));
    let k5 = system.rates(t + C[3] * h, &moved(y, h, &mix(A5, [k1, &k2, &k3, &k4])));
    let y6 = moved(y, h, &mix(A6, [k1, &k2, &k3, &k4, &k5]));
    let k6 = system.rates(t + h, &y6);
    let y1 = moved(y, h, &mix(B, [k1, &k3, &k4, &k5, &k6]));
    let k7 = system.rates(t + h, &y1);
    let error = mix(E, [k1, &k3, &k4, &k5, &k6, &k7]).map(|e| h * e);

    let c2: [f64; N] = core::array::from_fn(|i| h * k1[i] - (y1[i] - y[i]));
    let c3: [f64; N] = core::array::from_fn(|i| (y1[i] - y[i]) - h * k7[i] - c2[i]);
    let c4 = mix(D, [k1, &k3, &k4, &k5, &k6, &k7]).map(|d| h * d);

    let mut over = 0.0;
    let mut under = 0.0;
    for i in 0..N {
        over += (k7[i] - k6[i]) * (k7[i] - k6[i]);
        under += (y1[i] - y6[i]) * (y1[i] - y6[i]);
    }
    let stiffness = if under > 0.0 { (over / under).sqrt() } else { 0.0 };
    Trial {
        step: Step { t0: t, t1: t + h, y0: *y, y1, c2, c3, c4 },
        error,
        rates: k7,
        stiffness,
    }
}

/// Integrates from `t0` to `t1`, showing each accepted step to `observe`; stops early, with
/// `stiff` set, when the step is held down by stability and not by accuracy.
///
/// # Errors
/// [`OdeError`] when the rates are not finite or the step shrinks to nothing.
pub fn solve<const N: usize, S: System<N>>(
    system: &S,
    t0: f64,
    y0: &[f64; N],
    t1: f64,
    tolerance: &Tolerance<N>,
    mut observe: impl FnMut(&Step<N>) -> ControlFlow<()>,
) -> Result<End<N>, OdeError> {
    let (mut t, mut y) = (t0, *y0);
    let mut rates = system.rates(t, &y);
    let mut h = first_step(system, t, &y, &rates, t1 - t0, 5.0, tolerance);
    let mut effort = Effort { evaluations: 2, ..Effort::default() };
    // Logarithms of errors, since powers of them cost more.
    let least = libm::log(LEAST_ERROR);
    let mut last = least;
    let mut just_rejected = false;
    let (mut at_border, mut off_border) = (0_u32, 0_u32);
    while t < t1 {
        if effort.steps + effort.rejected > MOST_STEPS {
            return Err(OdeError::TooManySteps { t, steps: effort.steps });
        }
        // A last step that would leave a crumb is stretched over it.
        let to_end = t + 1.01 * h >= t1;
        if to_end {
            h = t1 - t;
        }
        if stands_still(t, h) {
            if to_end {
                break;
            }
            return Err(OdeError::StepTooSmall { t, step: h });
        }
        let mut trial = step(system, t, &y, &rates, h);
        effort.evaluations += 6;
        let error = tolerance.norm(&trial.error, &trial.step.y1);
        if !error.is_finite() {
            if rates.iter().any(|r| !r.is_finite()) {
                return Err(OdeError::NotFinite { t });
            }
            effort.rejected += 1;
            just_rejected = true;
            h *= LEAST_FACTOR;
            continue;
        }
        let now = libm::log(error.max(1e-10));
        if error > 1.0 {
            effort.rejected += 1;
            just_rejected = true;
            h *= (SAFETY * libm::exp(-ALPHA * now)).max(LEAST_FACTOR);
            continue;
        }
        let factor = SAFETY * libm::exp(BETA * last - ALPHA * now);
        let most = if just_rejected { 1.0 } else { MOST_FACTOR };
        just_rejected = false;
        last = now.max(least);
        effort.steps += 1;
        if to_end {
            trial.step.t1 = t1;
        }
        let border = h * trial.stiffness > STABILITY_BORDER;
        t = trial.step.t1;
        y = trial.step.y1;
        rates = trial.rates;
        h *= factor.clamp(LEAST_FACTOR, most);
        if observe(&trial.step).is_break() {
            return Ok(End { t, y, effort, stiff: false, stopped: true });
        }
        if border {
            off_border = 0;
            at_border += 1;
            if at_border == PATIENCE && t < t1 {
                return Ok(End { t, y, effort, stiff: true, stopped: false });
            }
        } else {
            off_border += 1;
            if off_border == 6 {
                at_border = 0;
            }
        }
    }
    Ok(End { t, y, effort, stiff: false, stopped: false })
}
