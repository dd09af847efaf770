//! Values as they are written in a plan file, such that reading gives the same value again.

use barm_domain::amount::dollars;
use barm_domain::cupboard::{Cupboard, spoken};
use barm_domain::plan::{Lies, Place};
use barm_science::food::label::Declared;
use jiff::civil::Time;

/// A text between quotes.
pub(crate) fn text(value: &str) -> String {
    toml_edit::Value::from(value).to_string()
}

/// A list of texts.
pub(crate) fn texts<'t>(values: impl IntoIterator<Item = &'t str>) -> String {
    let values: Vec<String> = values.into_iter().map(text).collect();
    format!("[{}]", values.join(", "))
}

/// A number with its unit, between quotes.
pub(crate) fn quantity(value: f64, unit: &str) -> String {
    format!("\"{value} {unit}\"")
}

pub(crate) fn share(value: f64) -> String {
    format!("\"{} %\"", shifted(value, 2))
}

pub(crate) fn place(place: Place) -> (&'static str, String) {
    match place {
        Place::Altitude(meters) => ("altitude", quantity(meters, "m")),
        Place::Pressure(pascals) => ("pressure", format!("\"{} kPa\"", shifted(pascals, -3))),
    }
}

pub(crate) fn price(value: f64) -> String {
    let cents = format!("${value:.2}");
    let exact = dollars(&cents).is_ok_and(|read| read.total_cmp(&value).is_eq());
    if exact { text(&cents) } else { format!("\"${value}\"") }
}

pub(crate) fn time(time: Time) -> String {
    let (hour, minute, second) = (time.hour(), time.minute(), time.second());
    match second {
        0 => format!("\"{hour:02}:{minute:02}\""),
        _ => format!("\"{hour:02}:{minute:02}:{second:02}\""),
    }
}

pub(crate) fn lies(lies: Lies) -> String {
    match lies {
        Lies::Bench => text("bench"),
        Lies::Towel => text("towel"),
        Lies::WarmTray(celsius) => format!("\"warm tray {celsius} °C\""),
    }
}

/// The name of a built-in food as one says it; ids and all other names as they are.
pub(crate) fn food(cupboard: &Cupboard<'_>, id: &str) -> String {
    let name = spoken(id);
    let found = cupboard.food(name).is_ok_and(|found| found == id);
    text(if found { name } else { id })
}

pub(crate) fn enzyme(key: &str) -> String {
    let name = spoken(key);
    let found = Cupboard::enzyme(name).is_ok_and(|found| found == key);
    text(if found { name } else { key })
}

pub(crate) fn material(cupboard: &Cupboard<'_>, item: &str) -> String {
    let name = spoken(item);
    let found = cupboard.material(name).is_ok_and(|found| found == item);
    text(if found { name } else { item })
}

pub(crate) fn declared(line: Declared) -> String {
    match line {
        Declared::Grams(grams) => quantity(grams, "g"),
        Declared::LessThanOne => text("less than 1 g"),
    }
}

/// A number times a power of ten, by moving the point in its shortest decimal form: exact.
fn shifted(value: f64, tens: i32) -> String {
    let written = format!("{}", value.abs());
    let (whole, decimals) = written.split_once('.').unwrap_or((&written, ""));
    let mut digits = format!("{whole}{decimals}");
    let mut point = whole.len() as i32 + tens;
    while point <= 0 {
        digits.insert(0, '0');
        point += 1;
    }
    while point as usize > digits.len() {
        digits.push('0');
    }
    let (whole, decimals) = digits.split_at(point as usize);
    let whole = whole.trim_start_matches('0');
    let decimals = decimals.trim_end_matches('0');
    let sign = if value < 0.0 { "-" } else { "" };
    let whole = if whole.is_empty() { "0" } else { whole };
    if decimals.is_empty() {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{decimals}")
    }
}

#[cfg(test)]
mod tests {
    use super::shifted;

    #[test]
    fn moving_the_point_is_exact() {
        for (value, tens, written) in [
            (0.1, 2, "10"),
            (0.125, 2, "12.5"),
            (1.0, 2, "100"),
            (0.0, 2, "0"),
            (85_600.0, -3, "85.6"),
            (101_325.0, -3, "101.325"),
            (5.0, -3, "0.005"),
            (-0.5, 2, "-50"),
            (0.1 + 0.2, 2, "30.000000000000004"),
        ] {
            assert_eq!(shifted(value, tens), written);
            let back: f64 = format!("{written}e{}", -tens).parse().unwrap();
            assert_eq!(back.to_bits(), value.to_bits(), "{written}");
        }
    }
}
