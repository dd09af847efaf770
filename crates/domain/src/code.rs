//! Bag codes: short, printable, sayable aloud, and sure to notice a slip.
//!
//! `P1-02B-6` is period 1, group 02, bag B, check character 6. Group 00 is the teacher's bench.
//! The check character is that of ISO/IEC 7064, MOD 37-2, over `P102B`: it notices every single
//! wrong character and every swap of two neighbors.
//!
//! Characters that are easily taken for others never stand in a code: I and L (1), O and Q (0),
//! S (5), Z (2), V (U). A bag letter whose check character would be one of them, or `*`, is
//! skipped. At least twelve letters remain for every group of every period. (Choice of our own;
//! letters that only sound alike, such as B and D, stay, for the check character notices them.)

use std::fmt;
use std::str::FromStr;

/// Characters of MOD 37-2 in the order of their values.
const ALPHABET: &[u8; 37] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

/// Letters that a bag can have, in the order in which they are given out.
const LETTERS: &str = "ABCDEFGHJKMNPRTUWXY";

/// Highest period and group number.
pub const MOST: u8 = 99;

/// The check character of ISO/IEC 7064, MOD 37-2, for a text of digits and capital letters;
/// `None` if it holds anything else.
///
/// ```text
/// Σ value(i) · 2^(n − i) ≡ 1 (mod 37)      i = 1 … n, the check character last
/// ```
///
/// # Source
/// ISO/IEC 7064:2003, pure system MOD 37-2. The procedure and a worked example are printed in
/// annex 2 of the UK guidelines for blood transfusion services (ISBT 128 donation numbers).
pub fn check_character(text: &str) -> Option<char> {
    let mut sum = 0;
    for byte in text.bytes() {
        let value = ALPHABET[..36].iter().position(|known| *known == byte)?;
        sum = (sum + value) * 2 % 37;
    }
    Some(char::from(ALPHABET[(38 - sum) % 37]))
}

/// The code of one bag.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct BagCode {
    period: u8,
    group: u8,
    letter: char,
}

/// Why a text is not a bag code.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CodeError {
    /// It has not the shape of a code.
    #[error("“{written}” does not look like a bag code; write it like P1-02B-6")]
    Shape {
        /// What is written.
        written: String,
    },
    /// It has the shape, but the check character does not fit.
    #[error(
        "“{written}” is not a bag code: a character is wrong or two are swapped; read the label again"
    )]
    Check {
        /// What is written.
        written: String,
    },
}

impl BagCode {
    /// Every code of a group (0 is the teacher's bench) in a period, in the order of the letters.
    pub fn all_of(period: u8, group: u8) -> impl Iterator<Item = Self> {
        let right = (1..=MOST).contains(&period) && group <= MOST;
        let codes = LETTERS.chars().map(move |letter| Self { period, group, letter });
        codes.filter(move |code| right && code.check().is_some())
    }

    /// The period: its number, or its position in the plan when the code was made, from 1.
    pub const fn period(self) -> u8 {
        self.period
    }

    /// The group's number; 0 for the teacher's bench.
    pub const fn group(self) -> u8 {
        self.group
    }

    /// The bag's letter within its group.
    pub const fn letter(self) -> char {
        self.letter
    }

    /// The check character, if it is one that can stand in a code.
    fn check(self) -> Option<char> {
        check_character(&format!("P{}{:02}{}", self.period, self.group, self.letter))
            .filter(|check| check.is_ascii_digit() || LETTERS.contains(*check))
    }
}

impl fmt::Display for BagCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Every code comes from `all_of` or from a text whose check character was compared.
        let check = self.check().unwrap_or('?');
        write!(f, "P{}-{:02}{}-{check}", self.period, self.group, self.letter)
    }
}

impl FromStr for BagCode {
    type Err = CodeError;

    /// Reads a code in any letter case, with or without dashes (or single spaces in their place);
    /// O is read as 0 and I or L as 1, since those letters stand in no code.
    fn from_str(written: &str) -> Result<Self, CodeError> {
        let written = written.trim();
        let short: String = written.chars().take(40).collect();
        let shape = || CodeError::Shape { written: short.clone() };
        let plain = without_dashes(written).ok_or_else(shape)?;
        let (head, tail) =
            plain.split_at_checked(plain.len().wrapping_sub(4)).ok_or_else(shape)?;
        let (&[tens, ones, letter, check], Some(('P', period))) =
            (tail, head.split_first().map(|(p, period)| (*p, period)))
        else {
            return Err(shape());
        };
        // "P01" would be a second way to write "P1", with another check character.
        if !LETTERS.contains(letter) || period.first() == Some(&'0') {
            return Err(shape());
        }
        let period = number(period).ok_or_else(shape)?;
        let group = number(&[tens, ones]).ok_or_else(shape)?;
        let code = Self { period, group, letter };
        if code.check() == Some(check) {
            Ok(code)
        } else {
            Err(CodeError::Check { written: short })
        }
    }
}

/// The characters of a code in capitals, without the dashes between its parts.
///
/// A dash within a part, or two in a row, may stand for a character that was lost; so nothing is
/// given then.
fn without_dashes(written: &str) -> Option<Vec<char>> {
    let mut plain = Vec::new();
    let mut dashes = Vec::new();
    for c in written.chars() {
        if c == ' ' || ['-', '–', '—', '‐', '‑', '−', '_', '.'].contains(&c) {
            if dashes.last() == Some(&plain.len()) {
                return None;
            }
            dashes.push(plain.len());
            continue;
        }
        plain.push(match c.to_ascii_uppercase() {
            'O' => '0',
            'I' | 'L' => '1',
            other => other,
        });
        if plain.len() > 7 {
            return None;
        }
    }
    // Before the group's two digits, before the letter, before the check character.
    let between =
        dashes.iter().all(|at| matches!(plain.len().checked_sub(*at), Some(4 | 2 | 1)));
    between.then_some(plain)
}

fn number(digits: &[char]) -> Option<u8> {
    let fits = matches!(digits.len(), 1 | 2) && digits.iter().all(char::is_ascii_digit);
    fits.then(|| digits.iter().collect::<String>().parse().ok()).flatten()
}
