//! The six shapes, without a start being given, against certified and published fits.

use crate::outside::outside;
use crate::rows::{agrees, each};
use barm_science::fit::curve::{CurveFit, Shape, curve};
use barm_science::statistics::distribution::student;
use std::collections::BTreeMap;

fn fitted(what: &str, shape: Shape, x: &[f64], y: &[f64]) -> CurveFit {
    let fit = curve(shape, x, y).unwrap_or_else(|why| panic!("{what}: {why}"));
    assert!(fit.converged, "{what}: {fit:?}");
    for (parameter, name) in fit.parameters.iter().zip(shape.names()) {
        assert_eq!(parameter.name, *name);
        let doubt = parameter.doubt.expect("the points tell it");
        let half = student::quantile(0.975, fit.df as f64) * doubt.se;
        agrees(what, doubt.high - doubt.low, 2.0 * half, 1e-9);
        assert!(((doubt.high + doubt.low) / 2.0 - parameter.value).abs() <= 1e-9 * half);
    }
    fit
}

/// NIST's sets whose curve is one of the six: certified values, standard errors and sums of squares.
#[test]
fn nists_sets_are_met_without_a_start() {
    for (set, shape) in [
        ("Misra1a", Shape::Saturating),
        ("BoxBOD", Shape::Saturating),
        ("Rat43", Shape::Richards),
    ] {
        let (mut x, mut y) = (Vec::new(), Vec::new());
        each(include_str!("../rows/nist_curves_data.csv"), |row| {
            if row.text("set") == set {
                x.push(row.number("x1"));
                y.push(row.number("y"));
            }
        });
        let fit = fitted(set, shape, &x, &y);
        let mut at = 0;
        each(include_str!("../rows/nist_curves.csv"), |row| {
            if row.text("set") != set {
                return;
            }
            let certified = row.number("certified");
            if row.text("parameter") == "rss" {
                agrees(set, fit.rss, certified, 1e-9);
                return;
            }
            let ours = fit.parameters[at];
            agrees(set, ours.value, certified, 1e-8);
            agrees(set, ours.doubt.expect("a doubt").se, row.number("standard_error"), 1e-7);
            at += 1;
        });
        assert_eq!(at, shape.names().len(), "{set}");
    }
}

fn points(case: &str) -> (Vec<f64>, Vec<f64>) {
    let (mut x, mut y) = (Vec::new(), Vec::new());
    each(include_str!("../rows/curves_data.csv"), |row| {
        if row.text("case") == case {
            x.push(row.number("x"));
            y.push(row.number("y"));
        }
    });
    (x, y)
}

/// R's data sets, worked with 50 digits, in our own parameters: the same curve has the same sum of
/// squares, and a parameter that is only renamed or multiplied the same doubt.
#[test]
fn fits_of_fifty_digits_are_met_without_a_start() {
    let mut values: BTreeMap<[String; 3], f64> = BTreeMap::new();
    each(include_str!("../rows/curves.csv"), |row| {
        let key = ["case", "parameter", "quantity"].map(|column| row.text(column).to_owned());
        values.insert(key, row.number("value"));
    });
    for (case, shape) in [
        ("nls_Puromycin_treated_MM", Shape::MichaelisMenten),
        ("nls_BOD_firstorder", Shape::Saturating),
        ("nls_DNase1_logistic", Shape::Logistic),
        ("nls_Orange3_logistic", Shape::Logistic),
        ("nls_DNase1_gompertz", Shape::Gompertz),
    ] {
        let (x, y) = points(case);
        let fit = fitted(case, shape, &x, &y);
        let of = |parameter: &str, quantity: &str| {
            values[&[case, parameter, quantity].map(str::to_owned)]
        };
        agrees(case, fit.rss, of("", "RSS"), 1e-9);
        agrees(case, fit.residual_sd(), of("", "sigma"), 1e-9);
        let first = if shape == Shape::MichaelisMenten { "Vm" } else { "Asym" };
        let ours = |at: usize| (fit.parameters[at].value, fit.parameters[at].doubt.unwrap().se);
        agrees(case, ours(0).0, of(first, "estimate"), 1e-9);
        agrees(case, ours(0).1, of(first, "std_error"), 1e-8);
        match shape {
            Shape::MichaelisMenten => {
                agrees(case, ours(1).0, of("K", "estimate"), 1e-9);
                agrees(case, ours(1).1, of("K", "std_error"), 1e-8);
            }
            Shape::Saturating => {
                // b2 = exp(lrc), so its error is b2 times that of lrc.
                let rate = of("lrc", "estimate").exp();
                agrees(case, ours(1).0, rate, 1e-9);
                agrees(case, ours(1).1, rate * of("lrc", "std_error"), 1e-8);
            }
            Shape::Logistic => {
                // b3 = 1/scal, b2 = xmid/scal.
                let scal = of("scal", "estimate");
                agrees(case, ours(2).0, 1.0 / scal, 1e-9);
                agrees(case, ours(2).1, of("scal", "std_error") / (scal * scal), 1e-8);
                agrees(case, ours(1).0, of("xmid", "estimate") / scal, 1e-8);
            }
            _ => {
                // exp(−b2 b3^x): mu e/A = −ln b3 and mu e/A lambda + 1 = ln b2.
                let rate = -of("b3", "estimate").ln();
                let lag = (of("b2", "estimate").ln() - 1.0) / rate;
                let greatest = rate * of("Asym", "estimate") / std::f64::consts::E;
                agrees(case, ours(1).0, greatest, 1e-8);
                agrees(case, ours(2).0, lag, 1e-8);
            }
        }
    }
}

/// Treloar (1974) through Bates & Watts (1988): the untreated enzyme, K 0.0477 and Vm 160.3 printed,
/// to more digits by R 4.2.2 (its sd 9.773003), whose search stops a few parts in a million short: its
/// treated K is as far from that of fifty digits.
#[test]
fn the_untreated_enzyme_is_met() {
    let x = [0.02, 0.02, 0.06, 0.06, 0.11, 0.11, 0.22, 0.22, 0.56, 0.56, 1.1];
    let y = [67.0, 51.0, 84.0, 86.0, 98.0, 115.0, 131.0, 124.0, 144.0, 158.0, 160.0];
    let fit = fitted("untreated", Shape::MichaelisMenten, &x, &y);
    agrees("Vm", fit.parameters[0].value, 160.2801, 2e-6);
    agrees("K", fit.parameters[1].value, 0.047_708_31, 4e-6);
    agrees("sd", fit.residual_sd(), 9.773_003, 1e-7);
}

/// R 4.2.2, `lm` and `confint` on its data sets cars (Ezekiel 1930) and Orange.
#[test]
fn lines_and_their_intervals_are_those_of_r() {
    fn quoted(text: &str) -> &str {
        text.trim_matches('"')
    }
    for (set, of) in [("lm_cars", "speed"), ("lm_Orange", "age")] {
        let (mut x, mut y) = (Vec::new(), Vec::new());
        each(include_str!("../rows/experiments.csv"), |row| {
            if row.text("set") == set {
                x.push(row.number("treatment"));
                y.push(row.number("value"));
            }
        });
        let fit = fitted(set, Shape::Line, &x, &y);
        let mut seen = 0;
        each(include_str!("../rows/r_statistics.csv"), |row| {
            if quoted(row.text("case")) != set {
                return;
            }
            let theirs: f64 = quoted(row.text("value")).parse().expect("a number");
            let (what, quantity) = (quoted(row.text("quantity")), "(Intercept)");
            let at = usize::from(!what.starts_with(quantity));
            let doubt = fit.parameters[at].doubt.expect("a doubt");
            let name = if at == 0 { quantity } else { of };
            let ours = match what.strip_prefix(name).unwrap_or(what).trim() {
                "Estimate" => fit.parameters[at].value,
                "Std. Error" => doubt.se,
                "lo" => doubt.low,
                "hi" => doubt.high,
                "sigma" => fit.residual_sd(),
                _ => return,
            };
            agrees(&format!("{set} {what}"), ours, theirs, 1e-10);
            seen += 1;
        });
        assert_eq!(seen, 9, "{set}: estimates, errors, both ends, sigma");
    }
}

/// Yeast, enzyme and gas of published experiments, fits worked with 50 digits: those of the table
/// whose shape is one of the six.
#[test]
fn published_yeast_and_enzyme_curves_are_met() {
    let Some(table) = outside("05_bio/fits.csv", "reference fits of yeast and enzymes") else {
        return;
    };
    let mut cases: BTreeMap<(String, String), Vec<[f64; 3]>> = BTreeMap::new();
    each(&table, |row| {
        let key = (row.text("case").to_owned(), row.text("model").to_owned());
        let told = ["estimate", "std_error", "rss"].map(|column| row.number(column));
        cases.entry(key).or_default().push(told);
    });
    let mut seen = 0;
    for ((case, model), wanted) in cases {
        let shape = match model.as_str() {
            "MM" => Shape::MichaelisMenten,
            "logistic" => Shape::Logistic,
            "gompertz_A_mu_lambda" => Shape::Gompertz,
            "first_order" => Shape::Saturating,
            _ => continue,
        };
        let (file, part) = case.split_once(':').unwrap_or((&case, ""));
        let text = outside(&format!("05_bio/{file}.csv"), file).expect("data beside the fits");
        let (x, y) = published(&text, file, part);
        let fit = fitted(&case, shape, &x, &y);
        for (ours, [estimate, se, rss]) in fit.parameters.iter().zip(&wanted) {
            agrees(&case, ours.value, *estimate, 1e-8);
            agrees(&case, ours.doubt.expect("a doubt").se, *se, 1e-7);
            agrees(&case, fit.rss, *rss, 1e-9);
        }
        assert_eq!(fit.parameters.len(), wanted.len());
        seen += 1;
    }
    assert!(seen >= 15, "{seen} cases");
}

/// The points of one of these files that a case is about.
fn published(text: &str, file: &str, part: &str) -> (Vec<f64>, Vec<f64>) {
    let (mut x, mut y) = (Vec::new(), Vec::new());
    each(text, |row| {
        let (at, of) = match file {
            "bgal_onpg_groups_1_to_5" => ("ONPG", part),
            "nlstools_Lminor_MM" => ("conc", part),
            "nlstools_vmkm" => ("S", part),
            "gause1934_fig9_yeast_growth" => ("Time", "Volume"),
            "gause1934_fig11_yeast_alcohol_treatment2" => ("Time", "Yeast_Volume"),
            "biogas_feedVol" => {
                let bottle = part.split_whitespace().nth(1).expect("a bottle");
                ("time.d", bottle)
            }
            "agave_juice_fermentation" => {
                if row.text("replicate") != part.split_whitespace().nth(1).expect("a replicate")
                {
                    return;
                }
                ("time_h", "ethanol_g_per_L")
            }
            _ => panic!("{file} is not known here"),
        };
        x.push(row.number(at));
        y.push(row.number(of));
    });
    (x, y)
}

/// Zwietering et al. (1990): greatest slope mu, at lambda + A/(mu e), where the height is A/e; the
/// tangent there meets 0 at lambda. A = 10, mu = 0.5, lambda = 8: at 15.35759, 3.678794.
#[test]
fn the_gompertz_curve_is_zwieterings() {
    let b = [10.0, 0.5, 8.0];
    let turn = 15.357_588_823_428_847;
    let at = |x: f64| Shape::Gompertz.at(&b, x);
    agrees("height", at(turn), 10.0 / std::f64::consts::E, 1e-12);
    let slope = (at(turn + 1e-4) - at(turn - 1e-4)) / 2e-4;
    agrees("slope", slope, 0.5, 1e-8);
    agrees("lag", turn - at(turn) / slope, 8.0, 1e-7);
}
