//! Who comes in: passphrase, sessions, codes, and how often somebody may be wrong.

mod chance;
mod codes;
mod join;
mod open;
mod passphrase;
mod seats;
mod tries;

pub(crate) use chance::{Token, key, same, words_key};
pub(crate) use codes::{CodeRow, PeriodCodes};
pub(crate) use join::{From, Key as JoinKey, NotJoined, bucket};
pub(crate) use open::{bells, open_until};
pub(crate) use passphrase::{NotSignedIn, TooWeak, suggest};
pub(crate) use seats::{Joined, Part, Seat};

use super::DeskError;
use barm_store::Store;
use jiff::Timestamp;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use tokio::sync::watch;

/// Who may come in and who is in. Everything is held in memory and written through to the store.
pub(crate) struct Doors {
    store: Store,
    inside: Mutex<Inside>,
    tries: Mutex<tries::Tries>,
    /// One pair of codes is judged at a time.
    turn: Arc<tokio::sync::Mutex<()>>,
    /// One passphrase is tried at a time: each try takes memory and time on purpose.
    hashing: Mutex<()>,
    /// Rises when sessions end, so that event streams look whether they still may.
    ended: watch::Sender<u64>,
}

struct Inside {
    /// Sessions by the SHA-256 of their token.
    seats: BTreeMap<String, barm_store::Session>,
    codes: Vec<barm_store::Code>,
    /// Until when the teacher opened a period outside its hours.
    opened: BTreeMap<(i64, String), Timestamp>,
    /// The secret that form tokens are made with.
    form_key: String,
}

impl Doors {
    /// Reads who may come in. Waits for the disk.
    pub(crate) fn open(store: &Store, now: Timestamp) -> Result<Self, DeskError> {
        store.sweep_sessions(now)?;
        let seats = store.sessions(now)?.into_iter().collect();
        let mut codes = Vec::new();
        for investigation in store.investigations()? {
            codes.extend(store.codes(investigation.id)?);
        }
        let form_key = match store.secret(FORM_KEY)? {
            Some(key) => key,
            None => {
                let key = Token::new()?.as_str().to_owned();
                store.keep_secret(FORM_KEY, &key)?;
                key
            }
        };
        Ok(Self {
            store: store.clone(),
            inside: Mutex::new(Inside { seats, codes, opened: BTreeMap::new(), form_key }),
            tries: Mutex::default(),
            turn: Arc::default(),
            hashing: Mutex::default(),
            ended: watch::Sender::new(0),
        })
    }

    /// The token that a form must bring, for a device that carries this cookie.
    pub(crate) fn form_token(&self, device: &str) -> String {
        chance::bound(&self.inside().form_key, device)
    }

    /// Hears when sessions end.
    pub(crate) fn ended(&self) -> watch::Receiver<u64> {
        self.ended.subscribe()
    }

    /// Waits until codes may be judged. Whoever has the turn and brings wrong codes in a flood of
    /// wrong ones keeps it for [`FLOOD_PAUSE`].
    pub(crate) async fn turn(&self) -> tokio::sync::OwnedMutexGuard<()> {
        Arc::clone(&self.turn).lock_owned().await
    }

    /// Counts what the holder of a session writes; refuses, with the seconds to wait, once it is
    /// more than anybody types.
    pub(crate) fn may_write(
        &self,
        token: &str,
        much: usize,
        now: Timestamp,
    ) -> Result<(), u32> {
        let who = tries::Counted::Writing(chance::hash(token));
        self.tries().spend(who, much, now)
    }

    /// Forgets all wrong tries.
    #[cfg(test)]
    pub(crate) fn forget_tries(&self) {
        *self.tries() = tries::Tries::default();
    }

    fn inside(&self) -> MutexGuard<'_, Inside> {
        self.inside.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn tries(&self) -> MutexGuard<'_, tries::Tries> {
        self.tries.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// How long nobody else's codes are judged after wrong ones in a flood: ten guesses a second, of
/// however many devices. Our choice; docs/security.md says what it comes to.
pub(crate) const FLOOD_PAUSE: Duration = Duration::from_millis(100);

const FORM_KEY: &str = "form-key";
