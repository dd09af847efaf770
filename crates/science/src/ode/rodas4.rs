//! Linearly implicit Runge-Kutta (Rosenbrock) method of order 4(3), stiffly accurate and L-stable,
//! with dense output of order 3.
//!
//! # Source
//! E. Hairer, G. Wanner, *Solving Ordinary Differential Equations II*, 2nd ed. (1996),
//! section IV.7 and code RODAS, first set of coefficients. Coefficients from memory;
//! `tests/solver/order.rs` measures the orders that only the right ones give.

use super::control::{MOST_STEPS, first_step, stands_still};
use super::matrix::Factored;
use super::{Effort, End, OdeError, Step, System, Tolerance};
use core::ops::ControlFlow;

const GAMMA: f64 = 0.25;
/// Times of stages 2 to 4 as shares of the step; stages 5 and 6 are at its end.
const T: [f64; 3] = [0.386, 0.21, 0.63];
/// Shares of ∂f/∂t in stages 1 to 4.
const DT: [f64; 4] = [0.25, -0.1043, 0.1035, -0.036_200_000_000_000_23];
const A2: [f64; 1] = [1.544];
const A3: [f64; 2] = [0.946_678_528_081_582_6, 0.255_701_169_898_328_4];
const A4: [f64; 3] = [3.314_825_187_068_521, 2.896_124_015_972_201, 0.998_641_913_997_781_7];
const A5: [f64; 4] = [
    1.221_224_509_226_641,
    6.019_134_481_288_629,
    12.537_083_329_320_87,
    -0.687_886_036_105_895,
];
const C2: [f64; 1] = [-5.6688];
const C3: [f64; 2] = [-2.430_093_356_833_875, -0.206_359_915_709_191_5];
const C4: [f64; 3] = [-0.107_352_905_815_137_5, -9.594_562_251_023_355, -20.470_286_148_096_16];
const C5: [f64; 4] = [
    7.496_443_313_967_647,
    -10.246_804_314_643_52,
    -33.999_903_528_199_05,
    11.708_908_932_061_6,
];
const C6: [f64; 5] = [
    8.083_246_795_921_522,
    -7.981_132_988_064_893,
    -31.521_594_328_743_71,
    16.319_305_431_231_36,
    -6.058_818_238_834_054,
];
const D2: [f64; 5] = [
    10.126_235_083_445_86,
    -7.487_995_877_610_167,
    -34.800_918_615_557_47,
    -7.992_771_707_568_823,
    1.025_137_723_295_662,
];
const D3: [f64; 5] = [
    -0.676_280_339_280_689_8,
    6.087_714_651_680_015,
    16.430_843_208_924_78,
    24.767_225_114_183_86,
    -6.594_389_125_716_872,
];

const SAFETY: f64 = 0.9;
const LEAST_FACTOR: f64 = 0.2;
const MOST_FACTOR: f64 = 6.0;

/// Derivatives of the rates at one point, by forward differences.
#[derive(Debug, Clone)]
pub struct Slopes<const N: usize> {
    jacobian: [[f64; N]; N],
    in_time: [f64; N],
    evaluations: usize,
}

/// Takes the derivatives of the rates at (`t`, `y`), where they are `rates`, for a step of about
/// `h`. One evaluation for each state that is read, and one more.
pub fn slopes<const N: usize, S: System<N>>(
    system: &S,
    t: f64,
    y: &[f64; N],
    rates: &[f64; N],
    h: f64,
) -> Slopes<N> {
    let mut jacobian = [[0.0; N]; N];
    let mut evaluations = 1;
    let mut at = *y;
    for j in (0..N).filter(|j| system.is_read(*j)) {
        // A share of the state itself: a share of its root would move a small state by more than its
        // own bend allows, and the derivative would be no derivative.
        let nudge = f64::EPSILON.sqrt() * y[j].abs().max(system.smallest(j));
        at[j] = y[j] + nudge;
        // What was really added, after rounding.
        let nudge = at[j] - y[j];
        let there = system.rates(t, &at);
        evaluations += 1;
        at[j] = y[j];
        for i in 0..N {
            jacobian[i][j] = (there[i] - rates[i]) / nudge;
        }
    }
    let nudge = (f64::EPSILON * t.abs().max(1e-5)).sqrt().min(h.abs());
    let later = t + nudge;
    let nudge = later - t;
    let there = system.rates(later, y);
    let in_time = core::array::from_fn(|i| (there[i] - rates[i]) / nudge);
    Slopes { jacobian, in_time, evaluations }
}

fn mix<const N: usize, const S: usize>(
    start: [f64; N],
    factor: f64,
    weights: [f64; S],
    stages: [&[f64; N]; S],
) -> [f64; N] {
    let mut sum = start;
    for (weight, stage) in weights.iter().zip(stages) {
        for i in 0..N {
            sum[i] += factor * weight * stage[i];
        }
    }
    sum
}

/// A tried step and its error estimate.
#[derive(Debug, Clone, Copy)]
pub struct Trial<const N: usize> {
    /// The step.
    pub step: Step<N>,
    /// Estimate of the local error (unit of the state).
    pub error: [f64; N],
}

/// Tries one step of size `h` from `y`, whose rates and derivatives are given. Five evaluations
/// and one factorization; nothing when the matrix is singular.
pub fn step<const N: usize, S: System<N>>(
    system: &S,
    t: f64,
    y: &[f64; N],
    rates: &[f64; N],
    slopes: &Slopes<N>,
    h: f64,
) -> Option<Trial<N>> {
    let matrix = core::array::from_fn(|i| {
        core::array::from_fn(|j| {
            let own = if i == j { 1.0 / (h * GAMMA) } else { 0.0 };
            own - slopes.jacobian[i][j]
        })
    });
    let matrix = Factored::new(matrix)?;
    let f = &slopes.in_time;
    let over = 1.0 / h;

    let u1 = matrix.solve(&core::array::from_fn(|i| rates[i] + h * DT[0] * f[i]));
    let k = system.rates(t + T[0] * h, &mix(*y, 1.0, A2, [&u1]));
    let right = core::array::from_fn(|i| k[i] + h * DT[1] * f[i]);
    let u2 = matrix.solve(&mix(right, over, C2, [&u1]));
    let k = system.rates(t + T[1] * h, &mix(*y, 1.0, A3, [&u1, &u2]));
    let right = core::array::from_fn(|i| k[i] + h * DT[2] * f[i]);
    let u3 = matrix.solve(&mix(right, over, C3, [&u1, &u2]));
    let k = system.rates(t + T[2] * h, &mix(*y, 1.0, A4, [&u1, &u2, &u3]));
    let right = core::array::from_fn(|i| k[i] + h * DT[3] * f[i]);
    let u4 = matrix.solve(&mix(right, over, C4, [&u1, &u2, &u3]));

    let fifth = mix(*y, 1.0, A5, [&u1, &u2, &u3, &u4]);
    let k = system.rates(t + h, &fifth);
    let u5 = matrix.solve(&mix(k, over, C5, [&u1, &u2, &u3, &u4]));
    let sixth: [f64; N] = core::array::from_fn(|i| fifth[i] + u5[i]);
    let k = system.rates(t + h, &sixth);
    let error = matrix.solve(&mix(k, over, C6, [&u1, &u2, &u3, &u4, &u5]));
    let y1 = core::array::from_fn(|i| sixth[i] + error[i]);

    let c2 = mix([0.0; N], 1.0, D2, [&u1, &u2, &u3, &u4, &u5]);
    let c3 = mix([0.0; N], 1.0, D3, [&u1, &u2, &u3, &u4, &u5]);
    Some(Trial { step: Step { t0: t, t1: t + h, y0: *y, y1, c2, c3, c4: [0.0; N] }, error })
}

/// Integrates from `t0` to `t1`, showing each accepted step to `observe`.
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
    let mut h = first_step(system, t, &y, &rates, t1 - t0, 4.0, tolerance);
    let mut effort = Effort { evaluations: 2, ..Effort::default() };
    let mut known: Option<Slopes<N>> = None;
    let mut just_rejected = false;
    // Size and error of the accepted step before, for Gustafsson's predictive control.
    let mut before: Option<(f64, f64)> = None;
    while t < t1 {
        if effort.steps + effort.rejected > MOST_STEPS {
            return Err(OdeError::TooManySteps { t, steps: effort.steps });
        }
        let last = t + 1.01 * h >= t1;
        if last {
            h = t1 - t;
        }
        if stands_still(t, h) {
            if last {
                break;
            }
            return Err(OdeError::StepTooSmall { t, step: h });
        }
        if rates.iter().any(|r| !r.is_finite()) {
            return Err(OdeError::NotFinite { t });
        }
        let at = known.get_or_insert_with(|| {
            let slopes = slopes(system, t, &y, &rates, h);
            effort.evaluations += slopes.evaluations;
            slopes
        });
        let trial = step(system, t, &y, &rates, at, h);
        effort.evaluations += 5;
        let error = trial
            .as_ref()
            .map_or(f64::NAN, |trial| tolerance.norm(&trial.error, &trial.step.y1));
        let Some(mut trial) = trial.filter(|_| error <= 1.0) else {
            effort.rejected += 1;
            just_rejected = true;
            let factor = if error.is_finite() {
                (SAFETY / error.sqrt().sqrt()).clamp(LEAST_FACTOR, 0.9)
            } else {
                LEAST_FACTOR
            };
            h *= factor;
            continue;
        };
        let floored = error.max(1e-4);
        let mut factor = SAFETY / floored.sqrt().sqrt();
        if let Some((size, error)) = before {
            let predicted = (h / size) * (error / (floored * floored)).sqrt().sqrt() * SAFETY;
            factor = factor.min(predicted);
        }
        before = Some((h, floored.max(1e-2)));
        let most = if just_rejected { 1.0 } else { MOST_FACTOR };
        just_rejected = false;
        effort.steps += 1;
        if last {
            trial.step.t1 = t1;
        }
        t = trial.step.t1;
        y = trial.step.y1;
        known = None;
        h *= factor.clamp(LEAST_FACTOR, most);
        if observe(&trial.step).is_break() {
            return Ok(End { t, y, effort, stiff: false, stopped: true });
        }
        if t < t1 {
            rates = system.rates(t, &y);
            effort.evaluations += 1;
        }
    }
    Ok(End { t, y, effort, stiff: false, stopped: false })
}
