//! Numbers and names inside sentences.

/// Tenths, as `13.8` or, with a minus of its own width, `−0.4`; never a zero with one.
pub fn tenths(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0;
    let minus = if rounded < -0.05 { "−" } else { "" };
    format!("{minus}{:.1}", rounded.abs())
}

/// Whole numbers from ten on, tenths below: `128`, `9.4`; never `-0`.
pub fn figure(value: f64) -> String {
    if value.abs() < 10.0 {
        return tenths(value);
    }
    let minus = if value < 0.0 { "−" } else { "" };
    format!("{minus}{:.0}", value.abs().round())
}

/// Whole numbers where that is all there is, tenths otherwise: `12`, `12.5`.
pub(super) fn short(value: f64) -> String {
    let text = tenths(value);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

/// A share in percent, tenths where there are any: `95 %`, `98.4 %`.
pub(super) fn percent(share: f64) -> String {
    format!("{} %", short(100.0 * share))
}

/// A count with its noun: `1 bag`, `4 bags`.
pub(super) fn bags(count: usize) -> String {
    if count == 1 { "1 bag".to_owned() } else { format!("{count} bags") }
}

/// A name as it stands inside a sentence: `No food` becomes `no food`; names with capitals
/// elsewhere in their first word, such as `NaCl` or `pH`, stay as they are.
pub(super) fn mid_sentence(name: &str) -> String {
    let mut letters = name.chars();
    let first_word = name.split_whitespace().next().unwrap_or_default();
    let ordinary =
        first_word.chars().skip(1).all(char::is_lowercase) && first_word.chars().count() > 1;
    match letters.next() {
        Some(first) if ordinary => first.to_lowercase().chain(letters).collect(),
        _ => name.to_owned(),
    }
}

/// A name as it starts a sentence.
pub(super) fn sentence_start(name: &str) -> String {
    let mut letters = name.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::{bags, figure, mid_sentence, sentence_start, short, tenths};

    #[test]
    fn numbers_and_names_read_well() {
        assert_eq!((tenths(13.84).as_str(), tenths(-0.01).as_str()), ("13.8", "0.0"));
        assert_eq!((tenths(-0.36).as_str(), figure(-12.5).as_str()), ("−0.4", "−13"));
        assert_eq!((figure(9.4).as_str(), figure(128.3).as_str()), ("9.4", "128"));
        assert_eq!((short(12.0).as_str(), short(12.46).as_str()), ("12", "12.5"));
        assert_eq!((bags(1).as_str(), bags(0).as_str()), ("1 bag", "0 bags"));
        for (name, inside) in
            [("No food", "no food"), ("NaCl 1 g", "NaCl 1 g"), ("A", "A"), ("Émile", "émile")]
        {
            assert_eq!(mid_sentence(name), inside);
        }
        assert_eq!(sentence_start("maple syrup"), "Maple syrup");
        assert_eq!(sentence_start("ßa"), "SSa");
    }
}
