//! Published experiments with a random effect, and their design as columns.

use crate::experiments::numbered;
use crate::table::{number, rows};
use barm_science::statistics::mixed::{Method, Mixed, Policy, Records};

/// A published experiment as a model takes it.
pub(crate) struct Experiment {
    pub(crate) values: Vec<f64>,
    pub(crate) groups: Vec<usize>,
    pub(crate) blocks: Vec<usize>,
    /// Names of the columns, as in `mixed_reference.csv`.
    pub(crate) names: Vec<String>,
    pub(crate) columns: Vec<Vec<f64>>,
}

impl Experiment {
    /// The model without blocks.
    pub(crate) fn fit(&self, method: Method) -> Mixed {
        let records = Records::new(&self.values, &self.columns, None, &self.groups).unwrap();
        Mixed::fit(&records, 0.0, Policy::DegreesFromGroups, method).unwrap()
    }

    /// The model with blocks taken out.
    pub(crate) fn fit_in_blocks(&self, method: Method) -> Mixed {
        let blocks = Some(self.blocks.as_slice());
        let records = Records::new(&self.values, &self.columns, blocks, &self.groups).unwrap();
        Mixed::fit(&records, 0.0, Policy::DegreesFromGroups, method).unwrap()
    }

    /// Weights that pick one column.
    pub(crate) fn only(&self, name: &str) -> Vec<f64> {
        self.names.iter().map(|n| f64::from(u8::from(n == name))).collect()
    }
}

/// Reads one experiment and builds the columns of its published model.
pub(crate) fn mixed_experiment(set: &str) -> Experiment {
    let found: Vec<_> = rows(include_str!("../rows/mixed_experiments.csv"))
        .into_iter()
        .filter(|row| row["set"] == set)
        .collect();
    let text =
        |column: &str| -> Vec<&str> { found.iter().map(|row| row[column].as_str()).collect() };
    let numbers = |column: &str| -> Vec<f64> { text(column).into_iter().map(number).collect() };
    let values = numbers("value");
    let mut named: Vec<(String, Vec<f64>)> = Vec::new();
    let main: &[&str] = match set {
        "wind tunnel" => &["a", "b", "c", "d"],
        "pastry dough" => &["a", "b", "c"],
        "sleepstudy" => &["a"],
        _ => &[],
    };
    if set != "oats" {
        named.push(("(Intercept)".to_owned(), vec![1.0; values.len()]));
    }
    for name in main {
        named.push(((*name).to_owned(), numbers(name)));
    }
    if main.len() > 1 {
        for (i, a) in main.iter().enumerate() {
            for b in &main[i..] {
                let product = numbers(a).iter().zip(numbers(b)).map(|(a, b)| a * b).collect();
                named.push((format!("{a}:{b}"), product));
            }
        }
    }
    if set == "oats" {
        let marks = |column: &str, level: &str| -> Vec<f64> {
            text(column).iter().map(|t| f64::from(u8::from(*t == level))).collect()
        };
        for level in ["0.2", "0.4", "0.6"] {
            named.push((format!("nitrof{level}"), marks("a", level)));
        }
        for level in ["Marvellous", "Victory"] {
            named.push((format!("Variety{level}"), marks("b", level)));
        }
    }
    if set == "class" {
        named.clear();
        for level in ["0", "1", "2", "3", "4"] {
            let mark = |t: &&str| f64::from(u8::from(*t == level));
            named.push((level.to_owned(), text("a").iter().map(mark).collect()));
        }
    }
    let (names, columns) = named.into_iter().unzip();
    Experiment {
        groups: numbered(text("group").into_iter()),
        blocks: numbered(text("block").into_iter()),
        values,
        names,
        columns,
    }
}
