//! The solvers against published test problems, closed forms and their own theory.
//!
//! # Sources
//! ROBER, HIRES and VDPOL with their end values: Test Set for IVP Solvers (CWI Amsterdam and
//! University of Bari). Rows `ode_chain_*.csv`: enzyme-to-gas chains with invented parameters,
//! worked outside this repository by Gragg-Bulirsch-Stoer extrapolation in 40 digits
//! (`stiff_gas`: SciPy 1.17.1 Radau, rtol 1e-12, 9 digits). Rows `ode_mm_closed_form.csv`:
//! Michaelis-Menten decay, S = K W(S0/K exp((S0 − V t)/K)) with Lambert's W, 20 digits.

use barm_science::ode::{self, End, OdeError, Step, System, Tolerance, dopri5, rodas4};
use std::ops::ControlFlow;

fn go_on<const N: usize>(_: &Step<N>) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

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

struct Rober;

impl System<3> for Rober {
    fn rates(&self, _: f64, y: &[f64; 3]) -> [f64; 3] {
        let slow = 0.04 * y[0] - 1e4 * y[1] * y[2];
        let fast = 3e7 * y[1] * y[1];
        [-slow, slow - fast, fast]
    }

    fn smallest(&self, _: usize) -> f64 {
        1e-14
    }
}

struct Hires;

impl System<8> for Hires {
    fn rates(&self, _: f64, y: &[f64; 8]) -> [f64; 8] {
        let meet = 280.0 * y[5] * y[7];
        let part = 1.81 * y[6];
        [
            -1.71 * y[0] + 0.43 * y[1] + 8.32 * y[2] + 0.0007,
            1.71 * y[0] - 8.75 * y[1],
            -10.03 * y[2] + 0.43 * y[3] + 0.035 * y[4],
            8.32 * y[1] + 1.71 * y[2] - 1.12 * y[3],
            -1.745 * y[4] + 0.43 * y[5] + 0.43 * y[6],
            -meet + 0.69 * y[3] + 1.71 * y[4] - 0.43 * y[5] + 0.69 * y[6],
            meet - part,
            part - meet,
        ]
    }
}

struct VanDerPol;

impl System<2> for VanDerPol {
    fn rates(&self, _: f64, y: &[f64; 2]) -> [f64; 2] {
        [y[1], ((1.0 - y[0] * y[0]) * y[1] - y[0]) / 1e-6]
    }
}

fn close<const N: usize>(name: &str, end: &End<N>, expected: &[f64; N], within: f64) {
    for (i, (ours, theirs)) in end.y.iter().zip(expected).enumerate() {
        let off = ours / theirs - 1.0;
        assert!(off.abs() < within, "{name}: state {i} off by {off:+.2e}");
    }
}

/// Test Set for IVP Solvers, problems ROBER (to 1e11), HIRES and VDPOL (ε = 1e-6).
#[test]
fn stiff_problems_end_where_the_test_set_says() {
    let tight = Tolerance { relative: 1e-8, absolute: [1e-16, 1e-20, 1e-16] };
    let end = rodas4::solve(&Rober, 0.0, &[1.0, 0.0, 0.0], 1e11, &tight, go_on).unwrap();
    let expected =
        [0.208_334_014_970_125_5e-7, 0.833_336_077_033_471_3e-13, 0.999_999_979_166_505];
    close("ROBER", &end, &expected, 1e-5);

    let start = [1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0057];
    let tight = Tolerance::uniform(1e-8, 1e-12);
    let expected = [
        0.737_131_257_332_566_8e-3,
        0.144_248_572_631_618_5e-3,
        0.588_872_974_096_757_5e-4,
        0.117_565_134_328_314_9e-2,
        0.238_635_619_883_133_1e-2,
        0.623_896_825_274_279_6e-2,
        0.284_999_839_518_576_9e-2,
        0.285_000_160_481_423_1e-2,
    ];
    let end = rodas4::solve(&Hires, 0.0, &start, 321.8122, &tight, go_on).unwrap();
    close("HIRES", &end, &expected, 1e-6);
    let end = ode::solve(&Hires, 0.0, &start, 321.8122, &tight, go_on).unwrap();
    close("HIRES, own choice", &end, &expected, 1e-6);

    let tight = Tolerance::uniform(1e-8, 1e-12);
    let end = rodas4::solve(&VanDerPol, 0.0, &[2.0, 0.0], 2.0, &tight, go_on).unwrap();
    let expected = [0.170_616_773_217_048_3e1, -0.892_809_701_024_797_5];
    close("VDPOL", &end, &expected, 1e-6);
}

/// A chain from substrate to gas, in mM and minutes.
struct Chain {
    k1: f64,
    v2: f64,
    ks: f64,
    kd: f64,
    kla: f64,
    sat: f64,
    kz: f64,
}

impl System<7> for Chain {
    fn rates(&self, _: f64, y: &[f64; 7]) -> [f64; 7] {
        let [a, g, x, e, c, _, z] = *y;
        let v1 = self.k1 * z * a / (15.0 * (1.0 + g / 80.0) + a);
        let v2 = self.v2 * x * g / (6.0 + g + g * g / self.ks) * (1.0 - e / 2000.0);
        let out = self.kla * (c - self.sat);
        [
            -v1,
            2.0 * v1 - v2,
            0.004 * v2 - self.kd * x,
            2.0 * v2,
            2.0 * v2 - out,
            out,
            -self.kz * z,
        ]
    }
}

fn rows<const N: usize>(text: &str) -> Vec<[f64; N]> {
    let parse = |line: &str| {
        let values: Vec<f64> = line.split(',').map(|v| v.parse().unwrap()).collect();
        values.try_into().unwrap()
    };
    text.lines().skip(1).map(parse).collect()
}

#[test]
fn enzyme_chains_follow_the_high_precision_rows() {
    let base = Chain { k1: 2.0, v2: 0.9, ks: 900.0, kd: 0.001, kla: 0.8, sat: 30.0, kz: 0.01 };
    let warm = Chain { k1: 3.4, v2: 1.7, kd: 0.01, sat: 24.0, kz: 0.05, ..base };
    let direct = Chain { k1: 0.0, ks: 300.0, ..base };
    let stiff = Chain { kla: 20_000.0, ..base };
    let cases = [
        ("base", &base, include_str!("rows/ode_chain_base.csv"), 1e-8),
        ("warm", &warm, include_str!("rows/ode_chain_warm.csv"), 1e-8),
        ("direct", &direct, include_str!("rows/ode_chain_sugar_direct.csv"), 1e-8),
        ("stiff gas", &stiff, include_str!("rows/ode_chain_stiff_gas.csv"), 1e-6),
    ];
    for (name, chain, text, within) in cases {
        let rows = rows::<8>(text);
        let start: [f64; 7] = std::array::from_fn(|i| rows[0][i + 1]);
        let tight = Tolerance::uniform(1e-10, 1e-12);
        let mut next = 1;
        let mut check = |t: f64, y: &[f64; 7]| {
            for i in 0..7 {
                let expected = rows[next][i + 1];
                let off = (y[i] - expected) / expected.abs().max(1e-3);
                assert!(off.abs() < within, "{name}, {t} min, state {i}: off by {off:+.2e}");
            }
            next += 1;
        };
        let minutes: Vec<f64> = rows.iter().map(|row| row[0]).collect();
        let mut wanted = minutes[1..].iter().peekable();
        let end = ode::solve(chain, 0.0, &start, 60.0, &tight, |step: &Step<7>| {
            while let Some(&&t) = wanted.peek().filter(|t| ***t <= step.t1) {
                check(t, &step.at(t));
                wanted.next();
            }
            ControlFlow::Continue(())
        })
        .unwrap();
        assert_eq!(next, rows.len(), "{name}: rows left over");
        // Carbon dioxide made equals ethanol made: C + N − E never changes.
        let made = end.y[4] + end.y[5] - end.y[3] - start[4];
        assert!(made.abs() < 1e-9 * end.y[3], "{name}: {made:e} mM appeared");
    }
}

struct MichaelisMenten {
    v: f64,
    k: f64,
}

impl System<1> for MichaelisMenten {
    fn rates(&self, _: f64, y: &[f64; 1]) -> [f64; 1] {
        [-self.v * y[0] / (self.k + y[0])]
    }
}

#[test]
fn michaelis_menten_decay_follows_its_closed_form() {
    for [start, v, k, t, expected] in rows::<5>(include_str!("rows/ode_mm_closed_form.csv")) {
        let law = MichaelisMenten { v, k };
        let tight = Tolerance::uniform(1e-9, 1e-12);
        let end = ode::solve(&law, 0.0, &[start], t, &tight, go_on).unwrap();
        let off = (end.y[0] - expected).abs();
        assert!(off < 1e-8 * start, "S0 {start}, V {v}, K {k}, {t} min: off by {off:e}");
    }
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
