//! One function for each thing that is not put into a bag: temperatures, sizes, times, prices.

use super::dimension::{Dimension, Wanted};
use super::error::AmountError;
use super::number::scan;
use super::quantity::{Quantity, number};

/// Reads a temperature, such as `40 °C`, `41 C` or `105 °F`; gives °C.
///
/// # Errors
/// [`AmountError`] if it is not a temperature.
pub fn celsius(text: &str) -> Result<f64, AmountError> {
    Quantity::parse_signed(text, Dimension::Temperature, Wanted::TEMPERATURE)
}

/// Reads a length of 0 or more, such as `3 mm`, `1 in` or `1 3/8 in`; gives mm.
///
/// # Errors
/// [`AmountError`] if it is not a length.
pub fn millimeters(text: &str) -> Result<f64, AmountError> {
    Quantity::parse_as(text, Dimension::Length, Wanted::LENGTH)
}

/// Reads a length of time, such as `45 min`, `3 min 30 s` or `1 h 15 min`; gives min.
///
/// # Errors
/// [`AmountError`] if it is not a length of time.
pub fn minutes(text: &str) -> Result<f64, AmountError> {
    Quantity::parse_as(text, Dimension::Duration, Wanted::DURATION)
}

/// Reads a pressure, such as `85.6 kPa` or `25.3 inHg`; gives Pa.
///
/// # Errors
/// [`AmountError`] if it is not a pressure.
pub fn pascals(text: &str) -> Result<f64, AmountError> {
    Quantity::parse_as(text, Dimension::Pressure, Wanted::PRESSURE)
}

/// Reads an altitude, such as `1400 m`, `4600 ft` or `-60 m`; gives m.
///
/// # Errors
/// [`AmountError`] if it is not an altitude.
pub fn altitude_meters(text: &str) -> Result<f64, AmountError> {
    let wanted = Wanted::ALTITUDE;
    let text = text.trim();
    let mm = Quantity::parse_signed(text, Dimension::Length, wanted)?;
    // Meters are what is written as a rule, and 1400.1 m must not come back as 1400.1000000000001.
    if let Some((written, rest)) = scan(text)?
        && ["m", "meters", "meter"].contains(&rest.trim())
    {
        return Ok(written.times_ten_to(0));
    }
    Ok(mm / 1000.0)
}

/// Reads a share such as `10 %`; gives 0.1.
///
/// # Errors
/// [`AmountError`] if it is not a share. A number without `%` is refused, because nobody can know
/// whether `1` means 1 % or all of it.
pub fn share(text: &str) -> Result<f64, AmountError> {
    Quantity::parse_as(text, Dimension::Share, Wanted::SHARE)
}

/// Reads a price such as `$5.49`, `5.49` or `5.49 USD`; gives dollars.
///
/// # Errors
/// [`AmountError`] if it is not a price of 0 or more.
pub fn dollars(text: &str) -> Result<f64, AmountError> {
    let wanted = Wanted::PRICE;
    let text = text.trim();
    if let Some(sign) = text.chars().find(|c| "€£¥".contains(*c)) {
        return Err(AmountError::UnknownUnit { unit: sign.into(), meant: None, wanted });
    }
    let bare = text.strip_prefix('$').or_else(|| text.strip_suffix('$'));
    let value = match bare {
        Some(bare) => number(bare),
        None => {
            number(text).or_else(|_| Quantity::parse_signed(text, Dimension::Money, wanted))
        }
    };
    let value = value.map_err(|error| match error {
        AmountError::Empty { .. } => AmountError::Empty { wanted },
        AmountError::TooLong { .. } => AmountError::TooLong { wanted },
        AmountError::NoNumber { text, .. } => AmountError::NoNumber { text, wanted },
        other => other,
    })?;
    if value < 0.0 { Err(AmountError::Negative { text: text.into() }) } else { Ok(value) }
}

/// A size, one length by another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// The length that was written first (mm).
    pub first_mm: f64,
    /// The length that was written second (mm).
    pub second_mm: f64,
}

/// Reads a size such as `165 x 83 mm`, `3 x 5 in`, `6 1/2 in by 3 1/4 in` or `165 mm × 83 mm`.
///
/// # Errors
/// [`AmountError`] if it is not two lengths; a unit after the second holds for both.
pub fn size(text: &str) -> Result<Size, AmountError> {
    let wanted = Wanted::SIZE;
    let text = text.trim();
    if text.is_empty() {
        return Err(AmountError::Empty { wanted });
    }
    if text.len() > 120 {
        return Err(AmountError::TooLong { wanted });
    }
    let Some((first, second)) =
        text.split_once(['x', 'X', '×', '*']).or_else(|| text.split_once(" by "))
    else {
        let is = match Quantity::parse(text, wanted) {
            Ok(quantity) => quantity.dimension.name(),
            Err(error) => return Err(error),
        };
        return Err(AmountError::WrongKind { text: text.into(), is, wanted });
    };
    let second_mm = Quantity::parse_as(second, Dimension::Length, wanted)?;
    let first_mm = match Quantity::parse_as(first, Dimension::Length, wanted) {
        Err(AmountError::NoUnit { .. }) => {
            let unit = scan(second)?.map_or("", |(_, unit)| unit);
            Quantity::parse_as(&format!("{} {unit}", first.trim()), Dimension::Length, wanted)?
        }
        other => other?,
    };
    Ok(Size { first_mm, second_mm })
}
