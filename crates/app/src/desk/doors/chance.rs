//! Random tokens and keys, and comparing without telling how much was right.

use crate::desk::DeskError;
use barm_domain::record::{Key, WordsKey};
use jiff::Timestamp;
use sha2::{Digest, Sha256};

/// 256 random bits in hexadecimal digits.
#[derive(Clone, PartialEq, Eq)]
pub(crate) struct Token(String);

impl Token {
    /// A new one.
    pub(crate) fn new() -> Result<Self, DeskError> {
        let mut bytes = [0_u8; 32];
        getrandom::fill(&mut bytes).map_err(|_| DeskError::Chance)?;
        Ok(Self(hex(&bytes)))
    }

    /// The digits.
    pub(crate) fn as_str(&self) -> &str {
        &self.0
    }
}

/// A key for an entry that is made here.
pub(crate) fn key(now: Timestamp) -> Result<Key, DeskError> {
    let milliseconds = u64::try_from(now.as_millisecond()).unwrap_or_default();
    Ok(Key::new(milliseconds, random()?))
}

/// A key for words that are written here.
pub(crate) fn words_key() -> Result<WordsKey, DeskError> {
    random().map(WordsKey)
}

fn random() -> Result<u128, DeskError> {
    let mut bytes = [0_u8; 16];
    getrandom::fill(&mut bytes).map_err(|_| DeskError::Chance)?;
    Ok(u128::from_le_bytes(bytes))
}

/// A number below `below` (1 to 255), every one as likely.
pub(super) fn below(below: u8) -> Result<u8, DeskError> {
    let most = u8::MAX - u8::MAX % below;
    loop {
        let mut byte = [0_u8];
        getrandom::fill(&mut byte).map_err(|_| DeskError::Chance)?;
        if byte[0] < most {
            return Ok(byte[0] % below);
        }
    }
}

/// The SHA-256 of a text in hexadecimal digits.
pub(super) fn hash(text: &str) -> String {
    hex(&Sha256::digest(text))
}

/// What only the holder of `secret` can make of `text`.
pub(super) fn bound(secret: &str, text: &str) -> String {
    // Both parts have a known length or stand last, so that none can be taken for the other.
    hash(&format!("{:08}{secret}{text}", secret.len()))[..32].to_owned()
}

/// Whether two texts are the same, in a time that depends only on their lengths.
pub(crate) fn same(one: &str, two: &str) -> bool {
    let (one, two) = (one.as_bytes(), two.as_bytes());
    let unlike = one.iter().zip(two).fold(0_u8, |unlike, (a, b)| unlike | (a ^ b));
    std::hint::black_box(unlike) == 0 && one.len() == two.len()
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::{Token, bound, same};

    #[test]
    fn tokens_are_long_and_unlike() {
        let (one, two) = (Token::new().expect("chance"), Token::new().expect("chance"));
        assert_eq!(one.as_str().len(), 64, "256 bits");
        assert!(one != two);
    }

    #[test]
    fn sameness_and_binding_are_what_they_say() {
        assert!(same("abc", "abc") && same("", ""));
        for (one, two) in [("abc", "abd"), ("abc", "ab"), ("ab", "abc"), ("", "a")] {
            assert!(!same(one, two), "{one} {two}");
        }
        assert_ne!(bound("a", "bc"), bound("ab", "c"));
    }
}
