//! Keys that are made where something is written, so that sending it twice counts once.

use std::fmt;
use std::str::FromStr;

/// The idempotency key of an entry: a UUID of version 7, made on the device where the entry was
/// typed (RFC 9562, section 5.7), so that it sorts by time and a repeated sending is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Key(pub u128);

/// Where words lie that a person wrote and that can be deleted: 128 random bits that say nothing
/// about who wrote them or when.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct WordsKey(pub u128);

/// A text that is not a key.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("“{written}” is not a key; a key is 32 hexadecimal digits with or without dashes")]
pub struct KeyError {
    /// What is written, shortened.
    pub written: String,
}

impl Key {
    /// A key from the time (ms since 1970, UTC) and 74 random bits.
    ///
    /// ```
    /// use barm_domain::record::Key;
    ///
    /// let key = Key::new(0x0190_0000_0000, 7);
    /// assert_eq!(key.to_string(), "01900000-0000-7000-8000-000000000007");
    /// ```
    #[must_use]
    pub const fn new(milliseconds: u64, random: u128) -> Self {
        let time = (milliseconds as u128 & 0xffff_ffff_ffff) << 80;
        let version = 0x7 << 76;
        let first = (random >> 62 & 0xfff) << 64;
        let variant = 0b10 << 62;
        let rest = random & 0x3fff_ffff_ffff_ffff;
        Self(time | version | first | variant | rest)
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        show(self.0, f)
    }
}

impl fmt::Display for WordsKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        show(self.0, f)
    }
}

impl FromStr for Key {
    type Err = KeyError;

    fn from_str(written: &str) -> Result<Self, KeyError> {
        read(written).map(Self)
    }
}

impl FromStr for WordsKey {
    type Err = KeyError;

    fn from_str(written: &str) -> Result<Self, KeyError> {
        read(written).map(Self)
    }
}

/// The usual five groups of hexadecimal digits.
fn show(bits: u128, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let part = |from: u32, digits: u32| bits >> from & ((1 << (4 * digits)) - 1);
    write!(
        f,
        "{:08x}-{:04x}-{:04x}-{:04x}-{:012x}",
        part(96, 8),
        part(80, 4),
        part(64, 4),
        part(48, 4),
        part(0, 12)
    )
}

fn read(written: &str) -> Result<u128, KeyError> {
    let wrong = || KeyError { written: written.chars().take(40).collect() };
    let digits: String = written.chars().filter(|c| *c != '-').collect();
    let right = digits.len() == 32 && digits.bytes().all(|b| b.is_ascii_hexdigit());
    let right = right && matches!(written.len(), 32 | 36);
    if !right {
        return Err(wrong());
    }
    u128::from_str_radix(&digits, 16).map_err(|_| wrong())
}
