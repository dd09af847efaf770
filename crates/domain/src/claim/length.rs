//! Lengths in a group's own words: "it rose 12 mm", "about 1.5 cm", "3/8 inch"; "half an inch" is not one.

/// A number with a unit of length, as it stands in a text.
#[derive(Debug, Clone, PartialEq)]
pub struct Length {
    /// As it was written.
    pub written: String,
    /// What it says (mm).
    pub mm: f64,
    /// Half of its last digit (mm): as far as it may have been rounded.
    pub half_mm: f64,
}

/// Units by their words, longest first where one begins like another (mm).
const UNITS: [(&str, f64); 16] = [
    ("millimeters", 1.0),
    ("millimetres", 1.0),
    ("millimeter", 1.0),
    ("millimetre", 1.0),
    ("milímetros", 1.0),
    ("milímetro", 1.0),
    ("mm", 1.0),
    ("centimeters", 10.0),
    ("centimetres", 10.0),
    ("centimeter", 10.0),
    ("centímetros", 10.0),
    ("centímetro", 10.0),
    ("cm", 10.0),
    ("inches", 25.4),
    ("inch", 25.4),
    ("pulgadas", 25.4),
];

/// All lengths of a text, in their order. "in" alone is no unit: "3 in 10" and "5 in the morning" are none.
pub fn lengths(text: &str) -> Vec<Length> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some(start) = rest.find(|c: char| c.is_ascii_digit()) {
        let number = number_at(&rest[start..]);
        let after = &rest[start + number.len()..];
        let gap = after.len() - after.trim_start_matches([' ', '\u{a0}', '-']).len();
        if let (Some((value, half)), Some((unit, mm))) =
            (value_of(number), unit_at(&after[gap..]))
        {
            found.push(Length {
                written: rest[start..start + number.len() + gap + unit].to_owned(),
                mm: value * mm,
                half_mm: half * mm,
            });
        }
        rest = after;
    }
    found
}

/// Digits with one point, comma or slash among them.
fn number_at(text: &str) -> &str {
    let mut end = 0;
    let mut pointed = false;
    let mut characters = text.char_indices().peekable();
    while let Some((at, c)) = characters.next() {
        let digit_follows = characters.peek().is_some_and(|(_, next)| next.is_ascii_digit());
        if c.is_ascii_digit() {
            end = at + 1;
        } else if matches!(c, '.' | ',' | '/') && digit_follows && !pointed {
            pointed = true;
        } else {
            break;
        }
    }
    &text[..end]
}

/// What a number says, and half of its last digit.
fn value_of(number: &str) -> Option<(f64, f64)> {
    /// Nobody measures a bag to more.
    const MOST: usize = 9;
    if number.len() > MOST {
        return None;
    }
    if let Some((above, below)) = number.split_once('/') {
        let (above, below): (f64, f64) = (above.parse().ok()?, below.parse().ok()?);
        return (below > 0.0).then_some((above / below, 0.5 / below));
    }
    let value: f64 = number.replace(',', ".").parse().ok()?;
    let decimals = number.split(['.', ',']).nth(1).map_or(0, str::len);
    Some((value, 0.5 / 10_f64.powi(i32::try_from(decimals).ok()?)))
}

/// How long the unit is that a text begins with, and what it is in mm.
fn unit_at(text: &str) -> Option<(usize, f64)> {
    UNITS.iter().find_map(|(word, mm)| {
        let own = text.get(..word.len())?;
        let ends = !text[word.len()..].starts_with(char::is_alphanumeric);
        (own.to_lowercase() == *word && ends).then_some((word.len(), *mm))
    })
}
