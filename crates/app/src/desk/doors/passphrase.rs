//! The teacher's passphrase.

use super::chance;
use super::seats::Seat;
use super::tries::Counted;
use super::{Doors, Token};
use crate::desk::DeskError;
use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};
use jiff::Timestamp;
use std::sync::PoisonError;

const SECRET: &str = "passphrase";
/// Wrong tries since somebody last signed in.
const FAILED: &str = "passphrase-failed";
/// Characters that are enough, whatever they are.
const LONG: usize = 15;
/// Words that are enough, if each has three letters or more.
const WORDS: usize = 4;
/// Longer ones are not read.
const MOST: usize = 300;

/// Why a passphrase is not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub(crate) enum TooWeak {
    /// Too short.
    #[error("take at least 15 characters, or four words of three letters or more")]
    Short,
    /// One character over and over.
    #[error("take more than four different characters")]
    Same,
    /// Too long.
    #[error("take at most 300 characters")]
    Long,
}

/// Why nobody was let in.
#[derive(Debug, thiserror::Error)]
pub(crate) enum NotSignedIn {
    /// It is not the passphrase.
    #[error("that is not the passphrase")]
    Wrong,
    /// There were too many wrong ones.
    #[error("too many wrong passphrases; wait {0} seconds")]
    Wait(u32),
    /// Something is wrong with the store.
    #[error(transparent)]
    Desk(#[from] DeskError),
}

/// Whether a passphrase is good enough.
pub(crate) fn judge(passphrase: &str) -> Result<(), TooWeak> {
    if passphrase.chars().count() > MOST {
        return Err(TooWeak::Long);
    }
    let words = passphrase.split_whitespace().filter(|word| word.chars().count() >= 3);
    if passphrase.trim().chars().count() < LONG && words.count() < WORDS {
        return Err(TooWeak::Short);
    }
    let unlike: std::collections::BTreeSet<char> = passphrase.chars().collect();
    if unlike.len() <= 4 { Err(TooWeak::Same) } else { Ok(()) }
}

/// Argon2id with 19 MiB, two passes, one lane: the smallest of the settings that the OWASP
/// password storage cheat sheet names (from memory, read in 2025), so that an old school computer
/// answers within a second.
fn argon2() -> Result<Argon2<'static>, DeskError> {
    let params = Params::new(19 * 1024, 2, 1, None).map_err(|_| DeskError::Hash)?;
    Ok(Argon2::new(Algorithm::Argon2id, Version::V0x13, params))
}

impl Doors {
    /// Whether a passphrase was chosen yet. Waits for the disk.
    pub(crate) fn has_passphrase(&self) -> Result<bool, DeskError> {
        Ok(self.store.secret(SECRET)?.is_some())
    }

    /// Keeps the first passphrase; false, and keeps nothing, if there is one. Waits.
    pub(crate) fn first_passphrase(&self, passphrase: &str) -> Result<bool, DeskError> {
        judge(passphrase)?;
        let _alone = self.hashing.lock().unwrap_or_else(PoisonError::into_inner);
        if self.has_passphrase()? {
            return Ok(false);
        }
        self.keep(passphrase)?;
        Ok(true)
    }

    /// Keeps another passphrase and ends all sessions of teachers. Waits.
    pub(crate) fn new_passphrase(&self, passphrase: &str) -> Result<(), DeskError> {
        judge(passphrase)?;
        let _alone = self.hashing.lock().unwrap_or_else(PoisonError::into_inner);
        self.keep(passphrase)?;
        self.put_teachers_out()
    }

    fn keep(&self, passphrase: &str) -> Result<(), DeskError> {
        let hash = argon2()?.hash_password(passphrase.as_bytes());
        let hash = hash.map_err(|_| DeskError::Hash)?;
        Ok(self.store.keep_secret(SECRET, &hash.to_string())?)
    }

    /// Lets the teacher in; with the token comes how many wrong tries there were since the last
    /// time. Waits.
    pub(crate) fn sign_in(
        &self,
        passphrase: &str,
        address: &str,
        now: Timestamp,
    ) -> Result<(Token, u32), NotSignedIn> {
        let from = Counted::SignIn(address.to_owned());
        let anywhere = Counted::Code(SECRET.to_owned());
        let _alone = self.hashing.lock().unwrap_or_else(PoisonError::into_inner);
        let wait = [&from, &anywhere].map(|who| self.tries().wait(who, now));
        if let Some(wait) = wait.into_iter().flatten().max() {
            return Err(NotSignedIn::Wait(wait));
        }
        let kept = self.store.secret(SECRET).map_err(DeskError::from)?;
        let failed = self.store.setting(FAILED).map_err(DeskError::from)?;
        let failed: u32 = failed.and_then(|count| count.parse().ok()).unwrap_or_default();
        let right = passphrase.chars().count() <= MOST
            && kept.is_some_and(|kept| fits(passphrase, &kept));
        if !right {
            let mut tries = self.tries();
            tries.wrong(from, now);
            tries.wrong(anywhere, now);
            drop(tries);
            let more = failed.saturating_add(1).to_string();
            self.store.keep_setting(FAILED, &more).map_err(DeskError::from)?;
            return Err(NotSignedIn::Wrong);
        }
        self.tries().right(&from);
        if failed > 0 {
            self.store.keep_setting(FAILED, "0").map_err(DeskError::from)?;
        }
        Ok((self.seat(&Seat::teacher(now), now)?, failed))
    }
}

fn fits(passphrase: &str, kept: &str) -> bool {
    let (Ok(kept), Ok(argon2)) = (PasswordHash::new(kept), argon2()) else { return false };
    argon2.verify_password(passphrase.as_bytes(), &kept).is_ok()
}

/// A random passphrase of four groups of letters, to be told once.
pub(crate) fn suggest() -> Result<String, DeskError> {
    let mut groups = Vec::new();
    for _ in 0..4 {
        let mut group = String::new();
        for letters in [CONSONANTS, VOWELS, CONSONANTS, VOWELS, CONSONANTS] {
            let at = chance::below(u8::try_from(letters.len()).unwrap_or(1))?;
            group.push(char::from(letters[usize::from(at)]));
        }
        groups.push(group);
    }
    Ok(groups.join(" "))
}

const CONSONANTS: &[u8] = b"bdfghkmnprstvz";
const VOWELS: &[u8] = b"aeiou";

#[cfg(test)]
mod tests {
    use super::{TooWeak, judge, suggest};

    #[test]
    fn long_ones_and_four_words_are_taken() {
        for good in ["correct battery horse staple", "fifteen-letters", "one two ten six"] {
            assert_eq!(judge(good), Ok(()), "{good}");
        }
        for (bad, why) in [
            ("", TooWeak::Short),
            ("fourteen-lette", TooWeak::Short),
            ("a b c d", TooWeak::Short),
            ("                    ", TooWeak::Short),
            ("aaaaaaaaaaaaaaaaaaaa", TooWeak::Same),
        ] {
            assert_eq!(judge(bad), Err(why), "{bad}");
        }
        assert_eq!(judge(&"long ".repeat(100)), Err(TooWeak::Long));
    }

    #[test]
    fn what_is_suggested_is_taken_and_never_the_same() {
        let one = suggest().expect("chance");
        assert_eq!(judge(&one), Ok(()), "{one}");
        assert_ne!(one, suggest().expect("chance"));
    }
}
