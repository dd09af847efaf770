//! Stiff problems with published end values.
//!
//! # Source
//! Test Set for IVP Solvers (CWI Amsterdam and University of Bari): ROBER (to 1e11), HIRES and VDPOL
//! (ε = 1e-6), worked there with 18 digits and more.

use crate::go_on;
use barm_science::ode::{self, End, System, Tolerance, rodas4};

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

/// The largest relative error of all components.
fn worst<const N: usize>(end: &End<N>, expected: &[f64; N]) -> f64 {
    let off = end.y.iter().zip(expected).map(|(ours, theirs)| (ours / theirs - 1.0).abs());
    off.fold(0.0, f64::max)
}

/// Both ways to the end, at several tolerances: every component within a hundred times the tolerance
/// asked for, and within 1e-8 at the tightest.
fn ends_there<const N: usize, S: System<N>>(
    name: &str,
    system: &S,
    start: &[f64; N],
    until: f64,
    sizes: [f64; N],
    expected: &[f64; N],
) {
    for (relative, within) in [(1e-4, 1e-2), (1e-6, 1e-4), (1e-7, 1e-5), (1e-9, 1e-8)] {
        let tolerance =
            Tolerance { relative, absolute: sizes.map(|size| 1e-4 * relative * size) };
        let implicit = rodas4::solve(system, 0.0, start, until, &tolerance, go_on).unwrap();
        let chosen = ode::solve(system, 0.0, start, until, &tolerance, go_on).unwrap();
        for (way, end) in [("implicit", &implicit), ("own choice", &chosen)] {
            let off = worst(end, expected);
            assert!(off <= within, "{name}, {way}, tolerance {relative:e}: off by {off:.1e}");
        }
    }
}

#[test]
fn rober_ends_where_the_test_set_says() {
    let expected =
        [0.208_334_014_970_125_5e-7, 0.833_336_077_033_471_3e-13, 0.999_999_979_166_505];
    let sizes = [1e-4, 1e-10, 1.0];
    ends_there("ROBER", &Rober, &[1.0, 0.0, 0.0], 1e11, sizes, &expected);
}

#[test]
fn hires_ends_where_the_test_set_says() {
    let start = [1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0057];
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
    ends_there("HIRES", &Hires, &start, 321.8122, [1.0; 8], &expected);
}

#[test]
fn vdpol_ends_where_the_test_set_says() {
    let expected = [0.170_616_773_217_048_3e1, -0.892_809_701_024_797_5];
    ends_there("VDPOL", &VanDerPol, &[2.0, 0.0], 2.0, [1.0; 2], &expected);
}
