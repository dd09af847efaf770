//! Chains from substrate to gas, followed minute by minute.
//!
//! # Source
//! Rows `ode_chain_*.csv`: invented parameters, worked outside this repository by
//! Gragg-Bulirsch-Stoer extrapolation in 40 digits (`stiff_gas`: SciPy 1.17.1 Radau, rtol 1e-12, 9
//! digits).

use crate::rows;
use barm_science::ode::{self, Step, System, Tolerance};
use std::ops::ControlFlow;

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

#[test]
fn enzyme_chains_follow_the_high_precision_rows() {
    let base = Chain { k1: 2.0, v2: 0.9, ks: 900.0, kd: 0.001, kla: 0.8, sat: 30.0, kz: 0.01 };
    let warm = Chain { k1: 3.4, v2: 1.7, kd: 0.01, sat: 24.0, kz: 0.05, ..base };
    let direct = Chain { k1: 0.0, ks: 300.0, ..base };
    let stiff = Chain { kla: 20_000.0, ..base };
    let cases = [
        ("base", &base, include_str!("../rows/ode_chain_base.csv"), 1e-8),
        ("warm", &warm, include_str!("../rows/ode_chain_warm.csv"), 1e-8),
        ("direct", &direct, include_str!("../rows/ode_chain_sugar_direct.csv"), 1e-8),
        ("stiff gas", &stiff, include_str!("../rows/ode_chain_stiff_gas.csv"), 1e-6),
    ];
    for (name, chain, text, within) in cases {
        let rows = rows::<8>(text);
        let start: [f64; 7] = std::array::from_fn(|i| rows[0][i + 1]);
        let tight = Tolerance::uniform(1e-11, 1e-15);
        let mut next = 1;
        let mut check = |t: f64, y: &[f64; 7]| {
            for i in 0..7 {
                let expected = rows[next][i + 1];
                // Relative, but for what is exactly nothing.
                let size = if expected == 0.0 { 1.0 } else { expected.abs() };
                let off = (y[i] - expected) / size;
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
