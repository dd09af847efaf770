//! The name that a person probably meant.

/// The candidate closest to `word`, if it is close enough to be worth asking "did you mean".
///
/// Close means at most one slip (a wrong, missing, doubled or swapped letter) in words of two to
/// four letters and about one slip in three letters beyond that, or that one starts with the
/// other. Letter case, spaces, dashes and underscores do not count.
pub fn nearest<'a>(
    word: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let wanted = plain(word);
    let length = wanted.chars().count();
    // Nobody misspells a whole page, and the comparison takes time with the square of the length.
    if length == 0 || length > 80 {
        return None;
    }
    let slips = match length {
        1 => 0,
        2..=4 => 1,
        _ => length / 3,
    };
    candidates
        .into_iter()
        .filter_map(|candidate| {
            let plain = plain(candidate);
            let starts = length >= 3
                && plain.chars().count() >= 3
                && (plain.starts_with(&wanted) || wanted.starts_with(&plain));
            let distance = strsim::damerau_levenshtein(&wanted, &plain);
            (distance <= slips || starts).then_some((distance, candidate))
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}

/// Lowercase letters and digits only: what is left of a name when spelling habits are taken off.
pub fn plain(name: &str) -> String {
    name.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::nearest;

    #[test]
    fn finds_what_was_meant_and_nothing_else() {
        let keys = ["water", "water_temperature", "yeast", "yeast_amount", "food", "lies"];
        for (written, meant) in [
            ("watre", Some("water")),
            ("Water Temperature", Some("water_temperature")),
            ("yeast-amount", Some("yeast_amount")),
            ("fodo", Some("food")),
            ("liez", Some("lies")),
            ("enzyme", None),
            ("x", None),
            ("", None),
        ] {
            assert_eq!(nearest(written, keys), meant, "{written}");
        }
        assert_eq!(nearest(&"water".repeat(100_000), keys), None);
    }
}
