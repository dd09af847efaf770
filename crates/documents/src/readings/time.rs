//! The time in one cell or heading: minutes after the zero reading, or a time of day.

use super::number::decimal;
use barm_domain::amount::minutes;

/// How the plain numbers and the colons of a column of times are to be understood.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum TimeColumn {
    /// Minutes; `12:30` is 12 minutes 30 seconds.
    Minutes,
    /// Seconds.
    Seconds,
    /// Plain numbers are minutes, `8:31` is a time of day.
    Either,
    /// Times of day only.
    Clock,
}

/// A time of day, as far as it was written.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ClockTime {
    /// Seconds after midnight; after midnight or noon if `half_known` is false.
    pub(super) seconds: f64,
    /// Whether morning and afternoon are told apart.
    pub(super) half_known: bool,
    /// The date as written, if there is one.
    pub(super) date: Option<String>,
}

/// When a height was read.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum When {
    /// Minutes after the bag's zero reading.
    Minute(f64),
    /// A time of day.
    Clock(ClockTime),
}

/// Reads a time; `None` for anything else.
pub(super) fn time(cell: &str, column: TimeColumn) -> Option<When> {
    let words = plain_words(cell);
    let text = words.as_str();
    if matches!(text, "zero" | "cero" | "start" | "inicio" | "zero reading") {
        return (column != TimeColumn::Clock).then_some(When::Minute(0.0));
    }
    let counts = matches!(column, TimeColumn::Minutes | TimeColumn::Seconds);
    if counts && text.contains(':') && half_of_day(text).is_none() {
        return stopwatch(text).map(When::Minute);
    }
    if text.contains(':') {
        return clock(text).map(When::Clock);
    }
    if column == TimeColumn::Clock {
        return None;
    }
    if let Ok(value) = decimal(text) {
        let per_minute = if column == TimeColumn::Seconds { 60.0 } else { 1.0 };
        return Some(When::Minute(value / per_minute));
    }
    spelled_out(text).map(When::Minute)
}

/// Whether a cell such as `0:00` or `0:45` can only be minutes and seconds: no class meets in
/// the hour after midnight, and every stopwatch starts there.
pub(super) fn is_stopwatch_start(cell: &str) -> bool {
    let words = plain_words(cell);
    match words.split_once(':') {
        Some(("0" | "00", seconds)) => two_digits(seconds).is_some(),
        _ => false,
    }
}

/// Small letters, single blanks, no `t =` in front.
fn plain_words(cell: &str) -> String {
    let words = cell.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ");
    let bare = words.strip_prefix('t').map(str::trim_start);
    match bare.and_then(|rest| rest.strip_prefix('=')) {
        Some(rest) => rest.trim().to_owned(),
        None => words,
    }
}

/// What stands before `am` or `pm`, and whether it is `pm`.
fn half_of_day(text: &str) -> Option<(&str, bool)> {
    const MORNING: [&str; 6] = ["a. m.", "a.m.", "am.", "a.m", "am", "a"];
    const AFTERNOON: [&str; 6] = ["p. m.", "p.m.", "pm.", "p.m", "pm", "p"];
    let before = |endings: [&str; 6]| {
        endings.into_iter().find_map(|ending| text.strip_suffix(ending)).map(str::trim_end)
    };
    before(MORNING)
        .map(|body| (body, false))
        .or_else(|| before(AFTERNOON).map(|body| (body, true)))
}

/// `8:31`, `08:31:20`, `8:31 am`, `2027-03-09 08:31`.
fn clock(text: &str) -> Option<ClockTime> {
    let (body, half) = match half_of_day(text) {
        Some((body, afternoon)) => (body, Some(afternoon)),
        None => (text, None),
    };
    let (date, body) = match body.rsplit_once([' ', 't']) {
        Some((date, body)) if is_date(date) => (Some(date.to_owned()), body),
        Some(_) => return None,
        None => (None, body),
    };
    let mut parts = body.split(':');
    let written = parts.next().filter(|part| (1..=2).contains(&part.len()))?;
    let hour = decimal(written).ok()?;
    let minute = two_digits(parts.next()?)?;
    let second = parts.next().map_or(Some(0.0), two_digits)?;
    if parts.next().is_some() || hour > 23.0 {
        return None;
    }
    let shift = match half {
        Some(_) if !(1.0..=12.0).contains(&hour) => return None,
        Some(afternoon) => {
            let twelve = hour > 11.5;
            match (afternoon, twelve) {
                (true, false) => 12.0,
                (false, true) => -12.0,
                _ => 0.0,
            }
        }
        None => 0.0,
    };
    let half_known = half.is_some() || !(0.5..=12.5).contains(&hour);
    let seconds = (hour + shift) * 3600.0 + minute * 60.0 + second;
    Some(ClockTime { seconds, half_known, date })
}

fn is_date(text: &str) -> bool {
    text.contains(['-', '/', '.'])
        && text.chars().all(|c| c.is_ascii_digit() || "-/. ".contains(c))
        && text.len() <= 12
}

/// A two-digit count below 60.
fn two_digits(part: &str) -> Option<f64> {
    (part.len() == 2).then(|| decimal(part).ok()).flatten().filter(|&count| count < 60.0)
}

/// `12:30` as minutes and seconds, `1:02:30` as hours, minutes and seconds; in minutes.
fn stopwatch(text: &str) -> Option<f64> {
    let (rest, seconds) = text.rsplit_once(':')?;
    let seconds = two_digits(seconds)?;
    let whole = |part: &str| {
        let digits = (1..=4).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
        digits.then(|| decimal(part).ok()).flatten()
    };
    let minutes = match rest.split_once(':') {
        Some((hours, minutes)) => whole(hours)? * 60.0 + two_digits(minutes)?,
        None => whole(rest)?,
    };
    Some(minutes + seconds / 60.0)
}

/// `12 min 30 s`, `12m30s`, `12'30"`, `min 12`; in minutes.
fn spelled_out(text: &str) -> Option<f64> {
    let first_digit = text.find(|c: char| c.is_ascii_digit())?;
    let (before, rest) = text.split_at(first_digit);
    if !before.is_empty() {
        return (unit_of_time(before.trim())?.trim() == "min")
            .then(|| decimal(rest).ok())
            .flatten();
    }
    let (mut told, mut left) = (String::new(), rest);
    while let Some(next) = left.chars().next() {
        let of_number = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | ' ');
        let run =
            left.find(|c: char| {
                if of_number(next) { !of_number(c) } else { c.is_ascii_digit() || c == ' ' }
            })
            .unwrap_or(left.len());
        let (run, after) = left.split_at(run);
        told.push_str(if of_number(next) { run } else { unit_of_time(run)? });
        left = after;
    }
    minutes(&told).ok()
}

/// The unit of time that a word or sign names, in English or Spanish.
fn unit_of_time(word: &str) -> Option<&'static str> {
    match word.trim_end_matches(['.', ',']) {
        "h" | "hr" | "hrs" | "hour" | "hours" | "hora" | "horas" => Some(" h "),
        "m" | "min" | "mins" | "minute" | "minutes" | "minuto" | "minutos" | "'" | "′"
        | "’" => Some(" min "),
        "s" | "sec" | "secs" | "second" | "seconds" | "seg" | "segundo" | "segundos" | "\""
        | "″" | "”" | "''" => Some(" s "),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{ClockTime, TimeColumn, When, is_stopwatch_start, time};

    fn minutes(cell: &str, column: TimeColumn) -> Option<f64> {
        match time(cell, column) {
            Some(When::Minute(minute)) => Some(minute),
            _ => None,
        }
    }

    fn clock(cell: &str) -> Option<ClockTime> {
        match time(cell, TimeColumn::Clock) {
            Some(When::Clock(clock)) => Some(clock),
            _ => None,
        }
    }

    #[test]
    fn minutes_are_read_in_every_usual_form() {
        let rows = [
            ("12", 12.0),
            ("12.5", 12.5),
            ("12,5", 12.5),
            ("12:30", 12.5),
            ("1:02:30", 62.5),
            ("12 min", 12.0),
            ("12 min 30 s", 12.5),
            ("12m30s", 12.5),
            ("12'30\"", 12.5),
            ("min 12", 12.0),
            ("t=8", 8.0),
            ("T = 8 min", 8.0),
            ("30 s", 0.5),
            ("1 h 5 min", 65.0),
            ("zero", 0.0),
            ("Cero", 0.0),
        ];
        for (cell, expected) in rows {
            let read = minutes(cell, TimeColumn::Minutes);
            assert!(
                read.is_some_and(|read| (read - expected).abs() < 1e-9),
                "{cell}: {read:?}"
            );
        }
        for cell in ["", "x", "12 lb", "1:2", "12:61", "5 min 5 min", "-4", "=4", "4 5", "t"] {
            assert_eq!(minutes(cell, TimeColumn::Minutes), None, "{cell}");
        }
        assert_eq!(minutes("90", TimeColumn::Seconds), Some(1.5));
    }

    #[test]
    fn times_of_day_are_read_in_every_usual_form() {
        let hours = |cell| clock(cell).map(|clock| clock.seconds / 3600.0);
        let rows = [
            ("8:31", 8.0 + 31.0 / 60.0),
            ("08:31:20", 8.0 + 31.0 / 60.0 + 20.0 / 3600.0),
            ("8:31 am", 8.0 + 31.0 / 60.0),
            ("8:31AM", 8.0 + 31.0 / 60.0),
            ("1:05 p.m.", 13.0 + 5.0 / 60.0),
            ("1:05 p. m.", 13.0 + 5.0 / 60.0),
            ("12:05 pm", 12.0 + 5.0 / 60.0),
            ("12:05 am", 5.0 / 60.0),
            ("13:05", 13.0 + 5.0 / 60.0),
            ("2027-03-09 08:31", 8.0 + 31.0 / 60.0),
            ("2027-03-09T08:31:00", 8.0 + 31.0 / 60.0),
            ("3/9/2027 8:31 AM", 8.0 + 31.0 / 60.0),
        ];
        for (cell, expected) in rows {
            let read = hours(cell);
            assert!(
                read.is_some_and(|read| (read - expected).abs() < 1e-9),
                "{cell}: {read:?}"
            );
        }
        for cell in
            ["8", "8:3", "24:00", "13:05 pm", "0:05 am", "8:31 xx", "x 8:31", "8:31:20:1"]
        {
            assert_eq!(clock(cell), None, "{cell}");
        }
        assert_eq!(clock("8:31").map(|clock| clock.half_known), Some(false));
        assert_eq!(clock("13:31").map(|clock| clock.half_known), Some(true));
    }

    #[test]
    fn only_a_stopwatch_starts_at_nought() {
        assert!(is_stopwatch_start("0:00") && is_stopwatch_start("00:45"));
        assert!(!is_stopwatch_start("8:31") && !is_stopwatch_start("0:00:00"));
        assert!(!is_stopwatch_start("0") && !is_stopwatch_start("0:60"));
    }
}
