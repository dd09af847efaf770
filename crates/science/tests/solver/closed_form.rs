//! Michaelis-Menten decay in closed form.
//!
//! # Source
//! Rows `ode_mm_closed_form.csv`: S = K W(S0/K exp((S0 − V t)/K)) with Lambert's W (R. M. Corless and
//! others, Adv. Comput. Math. 5, 329 (1996)), 20 digits.

use crate::{go_on, rows};
use barm_science::ode::{self, System, Tolerance};

struct MichaelisMenten {
    v: f64,
    k: f64,
}

impl System<1> for MichaelisMenten {
    fn rates(&self, _: f64, y: &[f64; 1]) -> [f64; 1] {
        [-self.v * y[0] / (self.k + y[0])]
    }
}

/// Every row within 1e-8 of what there was at first; while more than a millionth of it is left, within
/// 1e-8 of what is left.
#[test]
fn michaelis_menten_decay_follows_its_closed_form() {
    for [start, v, k, t, expected] in rows::<5>(include_str!("../rows/ode_mm_closed_form.csv"))
    {
        let law = MichaelisMenten { v, k };
        let tight = Tolerance::uniform(1e-11, 1e-18);
        let end = ode::solve(&law, 0.0, &[start], t, &tight, go_on).unwrap();
        let off = (end.y[0] - expected).abs();
        let size = if expected > 1e-6 * start { expected } else { start };
        assert!(off < 1e-8 * size, "S0 {start}, V {v}, K {k}, {t} min: off by {off:e}");
    }
}
