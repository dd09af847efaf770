//! Curves that teachers and their books fit, against fits worked with 50 digits.

use crate::rows::{agrees, each};
use barm_science::fit::{Problem, least_squares};
use libm::{exp, pow};
use std::collections::BTreeMap;

/// A curve with its data.
pub(crate) struct Curve<'a, M: Fn(&[f64], &[f64]) -> f64 + ?Sized> {
    pub(crate) model: &'a M,
    pub(crate) x: &'a [Vec<f64>],
    pub(crate) y: &'a [f64],
}

impl<M: Fn(&[f64], &[f64]) -> f64 + ?Sized> Problem for Curve<'_, M> {
    fn count(&self) -> usize {
        self.y.len()
    }

    fn residuals(&self, parameters: &[f64], out: &mut [f64]) {
        for ((out, y), x) in out.iter_mut().zip(self.y).zip(self.x) {
            *out = y - (self.model)(parameters, x);
        }
    }
}

type Model = fn(&[f64], &[f64]) -> f64;

/// Case, names of its parameters in order, its curve, and a start read off the data by eye.
const CASES: [(&str, &[&str], Model, &[f64]); 9] = [
    (
        "nls_Puromycin_treated_MM",
        &["Vm", "K"],
        |b, x| b[0] * x[0] / (b[1] + x[0]),
        &[200.0, 0.1],
    ),
    ("nls_DNase1_logistic", &["Asym", "xmid", "scal"], logistic, &[2.0, 1.0, 1.0]),
    (
        "nls_DNase1_gompertz",
        &["Asym", "b2", "b3"],
        |b, x| b[0] * exp(-b[1] * pow(b[2], x[0])),
        &[4.0, 2.0, 0.7],
    ),
    (
        "nls_BOD_firstorder",
        &["Asym", "lrc"],
        |b, x| b[0] * (1.0 - exp(-exp(b[1]) * x[0])),
        &[20.0, -0.5],
    ),
    ("nls_Orange3_logistic", &["Asym", "xmid", "scal"], logistic, &[150.0, 700.0, 300.0]),
    (
        "nls_CO2_Qn1",
        &["Asym", "lrc", "c0"],
        |b, x| b[0] * (1.0 - exp(-exp(b[1]) * (x[0] - b[2]))),
        &[40.0, -4.5, 50.0],
    ),
    (
        "nls_Indometh1",
        &["A1", "lrc1", "A2", "lrc2"],
        |b, x| b[0] * exp(-exp(b[1]) * x[0]) + b[2] * exp(-exp(b[3]) * x[0]),
        &[2.0, 0.5, 0.5, -1.5],
    ),
    (
        "nls_Lob329",
        &["Asym", "R0", "lrc"],
        |b, x| b[0] + (b[1] - b[0]) * exp(-exp(b[2]) * x[0]),
        &[90.0, -5.0, -3.0],
    ),
    (
        "nls_Chick1_fpl",
        &["A", "B", "xmid", "scal"],
        |b, x| b[0] + (b[1] - b[0]) / (1.0 + exp((b[2] - x[0]) / b[3])),
        &[30.0, 300.0, 15.0, 6.0],
    ),
];

fn logistic(b: &[f64], x: &[f64]) -> f64 {
    b[0] / (1.0 + exp((b[1] - x[0]) / b[2]))
}

#[test]
fn estimates_and_their_errors_are_those_of_fifty_digits() {
    let mut values: BTreeMap<[String; 3], f64> = BTreeMap::new();
    each(include_str!("../rows/curves.csv"), |row| {
        let key = ["case", "parameter", "quantity"].map(|column| row.text(column).to_owned());
        values.insert(key, row.number("value"));
    });
    let mut seen = 0;
    for (case, names, model, start) in CASES {
        let (mut x, mut y) = (Vec::new(), Vec::new());
        each(include_str!("../rows/curves_data.csv"), |row| {
            if row.text("case") == case {
                x.push(vec![row.number("x")]);
                y.push(row.number("y"));
            }
        });
        let fit = least_squares(&Curve { model: &model, x: &x, y: &y }, start).expect("a fit");
        assert!(fit.converged, "{case}: {:.1e}", fit.relative_offset);
        let errors = fit.standard_errors().expect("the data tell them apart");
        let near = |what: &str, ours: f64, key: [&str; 3], within: f64| {
            let theirs = values
                .get(&key.map(str::to_owned))
                .unwrap_or_else(|| panic!("{key:?} is not in the table"));
            agrees(&format!("{case} {what}"), ours, *theirs, within);
        };
        for (at, name) in names.iter().enumerate() {
            near(name, fit.parameters[at], [case, name, "estimate"], 1e-9);
            near(name, errors[at], [case, name, "std_error"], 1e-7);
            seen += 2;
        }
        near("rss", fit.residual_ss, [case, "", "RSS"], 1e-9);
        let variance = fit.residual_variance().expect("degrees of freedom");
        near("sigma", variance.sqrt(), [case, "", "sigma"], 1e-9);
        seen += 2;
    }
    assert_eq!(seen, values.len(), "every value of the table is looked at");
}
