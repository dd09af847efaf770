//! A time of day as people write it.

use jiff::civil::Time;

/// A time of day: `08:10`, `8:10`, `8:10 am`, `1:05 pm`; nothing if it is none.
pub fn clock(text: &str) -> Option<Time> {
    let lower = text.to_lowercase().replace(['.', ' '], "");
    let (digits, half_day) = match (lower.strip_suffix("am"), lower.strip_suffix("pm")) {
        (Some(digits), _) => (digits, Some(0)),
        (_, Some(digits)) => (digits, Some(12)),
        _ => (lower.as_str(), None),
    };
    let parts: Vec<&str> = digits.split(':').collect();
    let (hour, minute, second) = match parts.as_slice() {
        [hour, minute] => (*hour, *minute, "00"),
        [hour, minute, second] => (*hour, *minute, *second),
        _ => return None,
    };
    let number = |part: &str, digits: std::ops::RangeInclusive<usize>| -> Option<i8> {
        let fits = digits.contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
        fits.then(|| part.parse().ok()).flatten()
    };
    let hour = number(hour, 1..=2)?;
    let hour = match half_day {
        None => hour,
        Some(_) if !(1..=12).contains(&hour) => return None,
        Some(noon) => hour % 12 + noon,
    };
    Time::new(hour, number(minute, 2..=2)?, number(second, 2..=2)?, 0).ok()
}
