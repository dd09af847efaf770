//! What people wrote of an investigation, read once for a page, and of each kind what stands now.
//!
//! Words lie apart from the record, where they can be deleted, and are never changed: what is written anew is kept
//! beside what was written before, and of the same thing the newest counts.

use super::Room;
use super::proposals::Group;
use crate::desk::{DeskError, doors};
use barm_domain::record::WordsKey;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;

/// All words of an investigation, as they lay on disk at one moment.
pub(crate) struct AllWords(Vec<(WordsKey, String, String)>);

/// Words that take the place of earlier ones of the same thing.
pub(super) trait Dated: DeserializeOwned {
    /// What they are of, such as a group.
    type Of: Ord;

    /// When they were written (ms).
    fn at(&self) -> i64;

    /// What they are of.
    fn of(&self) -> Self::Of;
}

/// Words of one group, whose parts of that name are when and whose.
macro_rules! of_a_group {
    ($kept:ty) => {
        impl $crate::desk::room::all_words::Dated for $kept {
            type Of = $crate::desk::room::proposals::Group;

            fn at(&self) -> i64 {
                self.at
            }

            fn of(&self) -> Self::Of {
                (self.period.clone(), self.group)
            }
        }
    };
}
pub(super) use of_a_group;

impl AllWords {
    /// Those of a kind that this program can read, with their keys.
    pub(super) fn of_kind<K: DeserializeOwned>(
        &self,
        kind: &str,
    ) -> impl Iterator<Item = (WordsKey, K)> {
        let own = self.0.iter().filter(move |(_, known, _)| known == kind);
        own.filter_map(|(key, _, text)| Some((*key, serde_json::from_str(text).ok()?)))
    }

    /// Of a kind, the newest of each thing; of two of one moment the later in the order of their keys.
    pub(super) fn newest<K: Dated>(&self, kind: &str) -> BTreeMap<K::Of, K> {
        let mut newest: BTreeMap<K::Of, K> = BTreeMap::new();
        for (_, kept) in self.of_kind::<K>(kind) {
            let of = kept.of();
            if newest.get(&of).is_none_or(|known| known.at() <= kept.at()) {
                newest.insert(of, kept);
            }
        }
        newest
    }
}

impl Room {
    /// All words of the investigation now. Waits for the disk.
    pub(crate) fn all_words(&self) -> Result<AllWords, DeskError> {
        Ok(AllWords(self.store.all_words(self.id)?))
    }

    /// Keeps words of a kind. Waits for the disk.
    pub(super) fn keep_written(
        &self,
        kind: &str,
        what: &impl Serialize,
    ) -> Result<(), DeskError> {
        let text = serde_json::to_string(what).map_err(|_| DeskError::Stopped)?;
        self.store.keep_words(self.id, doors::words_key()?, kind, &text)?;
        Ok(())
    }

    /// Lets the teacher's pages and those of a group know that something was written.
    pub(super) fn tell_of(&self, group: &Group) {
        let own = super::Scope::Group { period: group.0.clone(), group: group.1 };
        self.pulse.beat(|scope| *scope == super::Scope::Teacher || *scope == own);
    }
}
