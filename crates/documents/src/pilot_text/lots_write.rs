//! Writes the file of lots.

use super::lots_read::FORMAT;
use crate::plan_text::literal::text;
use crate::plan_text::words::{YEASTS, word_for};
use barm_domain::cupboard::spoken;
use barm_domain::pilot::{Lot, Lots, Numbers};
use std::fmt::Write as _;

const HEAD: &str = "\
# What pilots found of each lot of yeast, box of bags, enzyme and meter of this plan.
# `barm pilot` writes this file, and forecasts go by every lot that is in use. To go back to another
# lot, or to what is usual, change in_use. Once you have changed the file, it is yours: the program
# reads it and writes no more into it.
#
# Numbers are counted in standard deviations of what is believed before any measurement, from its best
# guess: mean 0 and variance 1 say that nothing was learned. `with` holds the covariances with the
# numbers above, its own variance last.
";

/// The whole file.
pub fn write_lots(lots: &Lots) -> String {
    let mut file = format!("{HEAD}\nformat = {FORMAT}\n");
    for lot in &lots.yeast {
        start(&mut file, "yeast", lot);
        key(&mut file, "kind", &text(word_for(Some(lot.found.kind), YEASTS)));
        if let Some(spoon) = lot.found.teaspoon {
            key(&mut file, "teaspoon", &format!("\"{} g\"", spoon.grams));
            key(&mut file, "teaspoon_doubt", &format!("\"{} g\"", spoon.grams_sd));
            key(&mut file, "teaspoon_scatter", &spoon.scatter.to_string());
        }
        numbers(&mut file, &lot.found.numbers);
    }
    for lot in &lots.bags {
        start(&mut file, "bags", lot);
        key(&mut file, "bag", &text(&lot.found.bag.written));
        key(&mut file, "card", &text(&lot.found.card.written));
        numbers(&mut file, &lot.found.numbers);
    }
    for lot in &lots.enzymes {
        start(&mut file, "enzyme", lot);
        key(&mut file, "product", &text(spoken(&lot.found.product)));
        numbers(&mut file, &lot.found.numbers);
    }
    for lot in &lots.meters {
        start(&mut file, "meter", lot);
        let found = &lot.found;
        key(&mut file, "log_gain", &found.log_gain.to_string());
        key(&mut file, "log_gain_doubt", &found.log_gain_sd.to_string());
        key(&mut file, "zero_percent", &found.zero.to_string());
        key(&mut file, "zero_doubt", &found.zero_sd.to_string());
    }
    file
}

fn start<T>(file: &mut String, table: &str, lot: &Lot<T>) {
    let _ = write!(file, "\n[[{table}]]\n");
    key(file, "lot", &text(&lot.name));
    key(file, "date", &lot.date.to_string());
    key(file, "in_use", if lot.in_use { "true" } else { "false" });
    let parts: Vec<String> = lot.parts.iter().map(|part| text(part.word())).collect();
    key(file, "measured", &format!("[{}]", parts.join(", ")));
}

fn key(file: &mut String, key: &str, value: &str) {
    let _ = writeln!(file, "{key} = {value}");
}

fn numbers(file: &mut String, numbers: &Numbers) {
    if numbers.is_empty() {
        return;
    }
    let _ = writeln!(file, "numbers = [");
    for (at, name) in numbers.names.iter().enumerate() {
        let with: Vec<String> =
            numbers.covariance[at][..=at].iter().map(|entry| exact(*entry)).collect();
        let (name, mean, with) = (text(name), exact(numbers.means[at]), with.join(", "));
        let _ = writeln!(file, "    {{ name = {name}, mean = {mean}, with = [{with}] }},");
    }
    let _ = writeln!(file, "]");
}

/// A number that is read as the same again, and as a number of TOML.
fn exact(value: f64) -> String {
    let written = value.to_string();
    if written.contains('.') { written } else { format!("{written}.0") }
}
