//! Bag codes against ISO/IEC 7064 and against every single slip.

#[path = "../../science/tests/statistics/size.rs"]
mod size;

use barm_domain::code::{BagCode, CodeError, check_character};

/// UK guidelines for blood transfusion services ("Red Book"), annex 2, ISBT 128 check character
/// calculation: donation number G123 498 654 321, weighted sum 148354, checksum 17, character H.
#[test]
fn agrees_with_the_published_worked_example() {
    assert_eq!(check_character("G123498654321"), Some('H'));
}

/// ISO/IEC 7064 states the property itself: with the check character the weighted sum is 1 mod 37.
#[test]
fn sums_to_one() {
    const ALPHABET: &str = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
    for text in ["0", "Z", "P102B", "P9999Y", "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"] {
        let whole = format!("{text}{}", check_character(text).unwrap());
        let sum = whole.chars().rev().enumerate().fold(0, |sum, (power, c)| {
            let value = ALPHABET.find(c).unwrap();
            let weight = (0..power).fold(1, |weight, _| weight * 2 % 37);
            (sum + weight * value) % 37
        });
        assert_eq!(sum, 1, "{whole}");
    }
    assert_eq!(check_character("p1"), None);
    assert_eq!(check_character("*"), None);
}

/// A day of ten periods with groups 0 to 12, every letter: 130 groups, over 1500 codes.
fn a_whole_day() -> Vec<BagCode> {
    let periods = [1, 2, 3, 4, 5, 6, 7, 9, 10, 99];
    let codes: Vec<BagCode> = periods
        .into_iter()
        .flat_map(|period| (0..=12).flat_map(move |group| BagCode::all_of(period, group)))
        .collect();
    assert!(codes.len() > 1500, "{}", codes.len());
    codes
}

/// Codes of that day whose every slip is tried: all of them unless the suite is to be quick.
fn tried() -> impl Iterator<Item = BagCode> {
    let step = size::counts(17, 1, 1);
    a_whole_day().into_iter().step_by(step)
}

/// A slip is noticed, or reads as the very same bag (a dash moved, O for 0).
fn must_not_be_another(slipped: &str, code: BagCode) {
    if let Ok(read) = slipped.parse::<BagCode>() {
        assert_eq!(read, code, "{slipped} was taken for another bag than {code}");
    }
}

#[test]
fn notices_every_wrong_character_and_every_swap() {
    let letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz*";
    // In the printed form a lost character may leave a dash or a space.
    let alphabet = format!("{letters}- ");
    for code in tried() {
        let printed: Vec<char> = code.to_string().chars().collect();
        assert_eq!(code.to_string().parse(), Ok(code));
        let bare: Vec<char> = printed.iter().copied().filter(|c| *c != '-').collect();
        for (form, alphabet) in [(&printed, alphabet.as_str()), (&bare, letters)] {
            for at in 0..form.len() {
                for wrong in alphabet.chars() {
                    let mut slipped = form.clone();
                    slipped[at] = wrong;
                    must_not_be_another(&slipped.iter().collect::<String>(), code);
                }
                if at + 1 < form.len() {
                    let mut swapped = form.clone();
                    swapped.swap(at, at + 1);
                    must_not_be_another(&swapped.iter().collect::<String>(), code);
                }
                // Two characters on both sides of a dash are neighbors when read aloud.
                if at + 2 < form.len() && form[at + 1] == '-' {
                    let mut swapped = form.clone();
                    swapped.swap(at, at + 2);
                    must_not_be_another(&swapped.iter().collect::<String>(), code);
                }
            }
        }
        // Among capitals and digits, a slip in the bare form is not only harmless but refused.
        for at in 0..bare.len() {
            for wrong in "0123456789ABCDEFGHJKMNPQRSTUVWXYZ*".chars().filter(|c| *c != bare[at])
            {
                let mut slipped = bare.clone();
                slipped[at] = wrong;
                let slipped: String = slipped.iter().collect();
                assert!(slipped.parse::<BagCode>().is_err(), "{slipped} passed for {code}");
            }
            if at + 1 < bare.len() && bare[at] != bare[at + 1] {
                let mut swapped = bare.clone();
                swapped.swap(at, at + 1);
                let swapped: String = swapped.iter().collect();
                assert!(swapped.parse::<BagCode>().is_err(), "{swapped} passed for {code}");
            }
        }
    }
}

#[test]
fn every_group_of_every_period_has_twelve_letters_and_no_two_codes_are_alike() {
    let mut all = std::collections::BTreeSet::new();
    for period in 1..=99 {
        for group in 0..=99 {
            let codes: Vec<String> =
                BagCode::all_of(period, group).map(|code| code.to_string()).collect();
            assert!(codes.len() >= 12, "period {period}, group {group}: {}", codes.len());
            for code in codes {
                assert!(
                    !code.contains(['I', 'L', 'O', 'Q', 'S', 'V', 'Z', '*', '?']),
                    "{code}"
                );
                assert!(all.insert(code.replace('-', "")), "{code} twice");
            }
        }
    }
    assert_eq!(BagCode::all_of(0, 1).count(), 0);
    assert_eq!(BagCode::all_of(1, 100).count(), 0);
}

#[test]
fn reads_what_people_type() {
    let code = "P1-02B-6".parse::<BagCode>().unwrap();
    assert_eq!((code.period(), code.group(), code.letter()), (1, 2, 'B'));
    for written in
        ["p1-02b-6", "P102B6", "p1 02 b 6", "P1–O2B–6", "PI-02B-6", " P1-02B6\n", "p1.02b.6"]
    {
        assert_eq!(written.parse(), Ok(code), "{written}");
    }
    for (written, check) in [
        ("", false),
        ("P1-02B", false),
        ("Q1-02B-6", false),
        ("P01-02B-6", false),
        ("P100-02B-6", false),
        ("P1-02B-66", false),
        ("P1--02B-6", false),
        ("P1-0-2B-6", false),
        ("P1-02ä-6", false),
        ("👍", false),
        ("P1-02B-7", true),
        ("P2-02B-6", true),
        ("P1-20B-6", true),
    ] {
        let error = written.parse::<BagCode>().unwrap_err();
        assert_eq!(matches!(error, CodeError::Check { .. }), check, "{written}: {error}");
    }
}
