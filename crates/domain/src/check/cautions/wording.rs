//! How cautions write numbers and lists: never below what was forecast.

/// Joins names: `a, b and c`.
pub(super) fn list<T: AsRef<str>>(names: &[T]) -> String {
    let names: Vec<&str> = names.iter().map(AsRef::as_ref).collect();
    match names.as_slice() {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// A share as whole percent, rounded up.
pub(super) fn percent_up(share: f64) -> String {
    format!("{:.0} %", (share * 100.0 - 1e-9).ceil())
}

/// A number with one decimal, rounded up.
pub(super) fn tenths_up(value: f64) -> String {
    format!("{:.1}", (value * 10.0 - 1e-9).ceil() / 10.0)
}

/// Seconds in the words of a clock, such as `20 minutes`.
pub(super) fn span(seconds: f64) -> String {
    let (number, unit) = match seconds {
        s if s < 60.0 => (s, "second"),
        s if s < 3600.0 => (s / 60.0, "minute"),
        s => (s / 3600.0, "hour"),
    };
    let plural = if number > 1.0 { "s" } else { "" };
    format!("{number:.0} {unit}{plural}")
}

/// Minutes in the words of a clock, rounded down: `25 minutes` or `3 hours`.
pub(super) fn minutes_down(minutes: f64) -> String {
    if minutes < 120.0 {
        let whole = minutes.floor();
        let plural = if whole > 1.0 { "s" } else { "" };
        format!("{whole:.0} minute{plural}")
    } else {
        format!("{:.0} hours", (minutes / 60.0).floor())
    }
}

#[cfg(test)]
mod tests {
    use super::{list, minutes_down, percent_up, span, tenths_up};

    #[test]
    fn numbers_never_fall_below_the_forecast() {
        assert_eq!(percent_up(0.801), "81 %");
        assert_eq!(percent_up(0.8), "80 %");
        assert_eq!(tenths_up(0.91), "1.0");
        assert_eq!(tenths_up(1.4), "1.4");
        assert_eq!(minutes_down(59.9), "59 minutes");
        assert_eq!(minutes_down(200.0), "3 hours");
    }

    #[test]
    fn words_are_those_of_people() {
        assert_eq!(list(&["a"]), "a");
        assert_eq!(list(&["a", "b", "c"]), "a, b and c");
        assert_eq!(span(2.0), "2 seconds");
        assert_eq!(span(300.0), "5 minutes");
        assert_eq!(span(7200.0), "2 hours");
    }
}
