//! Numbers as people write them: `2.5`, `2,5`, `1/4`, `1 1/2`, `1½`.

use super::error::AmountError;

/// A number that was read but not yet put into a unit.
///
/// The decimal part is kept as text so that a unit that is a power of ten (mg, cm, %) only moves
/// the point: `85.6 kPa` is exactly the number that `85600` is.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Number {
    negative: bool,
    decimal: String,
    fraction: f64,
}

impl Number {
    /// The value times 10 to the power of `tens`.
    pub(super) fn times_ten_to(&self, tens: i32) -> f64 {
        let whole: f64 = format!("{}e{tens}", self.decimal).parse().unwrap_or(f64::NAN);
        let part = format!("1e{tens}").parse().unwrap_or(f64::NAN) * self.fraction;
        // Adding nothing would be harmless, but an infinite unit times nothing would not.
        let size = if self.fraction > 0.0 { whole + part } else { whole };
        if self.negative { -size } else { size }
    }
}

/// The numerator and denominator of a fraction that is one character.
fn vulgar(c: char) -> Option<(f64, f64)> {
    Some(match c {
        '½' => (1.0, 2.0),
        '⅓' => (1.0, 3.0),
        '⅔' => (2.0, 3.0),
        '¼' => (1.0, 4.0),
        '¾' => (3.0, 4.0),
        '⅕' => (1.0, 5.0),
        '⅖' => (2.0, 5.0),
        '⅗' => (3.0, 5.0),
        '⅘' => (4.0, 5.0),
        '⅙' => (1.0, 6.0),
        '⅚' => (5.0, 6.0),
        '⅛' => (1.0, 8.0),
        '⅜' => (3.0, 8.0),
        '⅝' => (5.0, 8.0),
        '⅞' => (7.0, 8.0),
        _ => return None,
    })
}

/// Whether a text can only be the start of a number.
pub(super) fn starts_number(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_digit() || vulgar(c).is_some())
}

/// Reads a number at the start of `text`; gives it and what follows, or `None` if there is no
/// number there.
///
/// # Errors
/// For a fraction over zero, and for a comma that can be read in two ways.
pub(super) fn scan(text: &str) -> Result<Option<(Number, &str)>, AmountError> {
    let mut rest = text.trim_start();
    let negative = rest.starts_with(['-', '−']);
    rest = rest.strip_prefix(['-', '−', '+']).unwrap_or(rest).trim_start();

    if let Some((fraction, after)) = vulgar_at(rest) {
        return Ok(Some((Number { negative, decimal: "0".into(), fraction }, after)));
    }
    let Some((decimal, after)) = decimal_at(rest)? else { return Ok(None) };
    let whole = decimal.chars().all(|c| c.is_ascii_digit());
    if whole {
        if let Some((den, after)) = denominator_at(after)? {
            let fraction = decimal.parse().unwrap_or(f64::NAN) / den;
            return Ok(Some((Number { negative, decimal: "0".into(), fraction }, after)));
        }
        // "1 1/2", "1-1/2" and "1 ½".
        let tail = after.strip_prefix('-').unwrap_or_else(|| after.trim_start());
        if let Some((fraction, after)) = vulgar_at(tail) {
            return Ok(Some((Number { negative, decimal, fraction }, after)));
        }
        if let Some((num, middle)) = digits_at(tail)
            && let Some((den, after)) = denominator_at(middle)?
        {
            let fraction = num.parse().unwrap_or(f64::NAN) / den;
            return Ok(Some((Number { negative, decimal, fraction }, after)));
        }
    }
    Ok(Some((Number { negative, decimal, fraction: 0.0 }, after)))
}

fn vulgar_at(text: &str) -> Option<(f64, &str)> {
    let mut chars = text.chars();
    let (num, den) = vulgar(chars.next()?)?;
    Some((num / den, chars.as_str()))
}

fn digits_at(text: &str) -> Option<(&str, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    (end > 0).then(|| text.split_at(end))
}

/// Reads `/4` (also with the fraction slash U+2044).
fn denominator_at(text: &str) -> Result<Option<(f64, &str)>, AmountError> {
    let Some(rest) = text.trim_start().strip_prefix(['/', '⁄', '∕']) else {
        return Ok(None);
    };
    let Some((digits, after)) = digits_at(rest.trim_start()) else { return Ok(None) };
    let den: f64 = digits.parse().unwrap_or(f64::NAN);
    if den > 0.0 { Ok(Some((den, after))) } else { Err(AmountError::OverZero) }
}

/// Reads digits with an optional point or comma; gives them with a point.
fn decimal_at(text: &str) -> Result<Option<(String, &str)>, AmountError> {
    let (whole, mut rest) = digits_at(text).unwrap_or(("", text));
    let mut number = whole.to_owned();
    let mut commas = 0;
    // A comma before exactly three digits separates thousands or decimals: only what follows tells.
    while !number.is_empty()
        && let Some((group, after)) = rest.strip_prefix(',').and_then(digits_at)
        && group.len() == 3
    {
        commas += 1;
        number.push_str(group);
        rest = after;
    }
    if commas == 1 && !rest.starts_with('.') && whole.len() <= 3 && !whole.starts_with('0') {
        let decimal = format!("{whole}.{}", &number[whole.len()..]);
        return Err(AmountError::Comma { thousands: number, decimal });
    }
    if commas == 1 && !rest.starts_with('.') {
        // "0,125" and "1200,125" cannot be thousands.
        number.insert(whole.len(), '.');
        return Ok(Some((number, rest)));
    }
    let point = if commas == 0 { &['.', ','][..] } else { &['.'][..] };
    if let Some((decimals, after)) = rest.strip_prefix(point).and_then(digits_at) {
        let whole = if number.is_empty() { "0" } else { &number };
        return Ok(Some((format!("{whole}.{decimals}"), after)));
    }
    if number.is_empty() { Ok(None) } else { Ok(Some((number, rest))) }
}
