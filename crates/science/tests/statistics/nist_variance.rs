//! Analysis of variance against NIST's certified tables.

use crate::experiments::numbered;
use crate::table::{number, rows};
use barm_science::statistics::anova::one_way;

/// A decimal text less another one, worked in whole numbers, so that no digit is lost.
fn less(text: &str, constant: &str) -> f64 {
    let places = |t: &str| t.split_once('.').map_or(0, |(_, digits)| digits.len());
    let most = places(text).max(places(constant));
    let whole = |t: &str| -> i128 {
        format!("{}{}", t.replace('.', ""), "0".repeat(most - places(t))).parse().unwrap()
    };
    (whole(text) - whole(constant)) as f64 / 10_f64.powi(i32::try_from(most).unwrap())
}

/// Digits in which two numbers agree.
fn digits(ours: f64, certified: f64) -> f64 {
    let off = (ours / certified - 1.0).abs();
    if off < 1e-15 { 15.0 } else { -off.log10() }
}

/// NIST StRD certified values, to the digits that doubles can reach: 14 from values whose common
/// constant was taken off in decimal; without that, what the doubles of the data themselves allow.
#[test]
fn nists_certified_tables_are_met() {
    let data = rows(include_str!("../rows/nist_anova.csv"));
    for certified in rows(include_str!("../rows/nist_anova_certified.csv")) {
        let set = &certified["set"];
        let ours: Vec<_> = data.iter().filter(|row| row["set"] == *set).collect();
        let constant = &ours[0]["response"];
        let grouped = |value: &dyn Fn(&str) -> f64| -> Vec<Vec<f64>> {
            let treatments = numbered(ours.iter().map(|row| row["treatment"].as_str()));
            let mut groups = vec![Vec::new(); treatments.iter().max().unwrap() + 1];
            for (row, &at) in ours.iter().zip(&treatments) {
                let count: usize = row["count"].parse().unwrap();
                groups[at].extend(std::iter::repeat_n(value(&row["response"]), count));
            }
            groups
        };
        let exact = one_way(&grouped(&|text| less(text, constant))).unwrap();
        let plain = one_way(&grouped(&number)).unwrap();
        assert_eq!(exact.terms[0].df, certified["df_between"].parse::<usize>().unwrap());
        assert_eq!(exact.rest.df, certified["df_within"].parse::<usize>().unwrap());
        let wanted = |name: &str| number(&certified[name]);
        for (what, found, wanted) in [
            ("between", exact.terms[0].ss, wanted("ss_between")),
            ("within", exact.rest.ss, wanted("ss_within")),
            ("F", exact.terms[0].f, wanted("f")),
        ] {
            let digits = digits(found, wanted);
            assert!(digits >= 14.0, "{set} {what}: {digits:.1} digits, {found} {wanted}");
        }
        let reachable = match set.as_str() {
            "SmLs01" | "SmLs03" => 14.5,
            "SiRstv" => 12.5,
            "AtmWtAg" | "SmLs04" => 8.4,
            _ => 2.7,
        };
        let found = digits(plain.terms[0].f, wanted("f"));
        assert!(found >= reachable, "{set}: {found:.2} digits of F without help");
    }
}
