//! Notices that something new is on record.

use crate::store::Store;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, Mutex, PoisonError};

type Listener = Arc<dyn Fn(i64, i64) + Send + Sync>;

/// Those who want to know, and the name under which this process tells others.
pub(crate) struct Notices {
    origin: String,
    listeners: Mutex<Vec<Listener>>,
}

impl Store {
    /// Calls `listener` after each commit with the investigation and the last place of its
    /// record. It runs on the writing thread, or on one that listens to the database: it must
    /// be quick and must not wait for this store.
    ///
    /// On PostgreSQL it is also called for commits of other programs.
    pub fn on_change(&self, listener: impl Fn(i64, i64) + Send + Sync + 'static) {
        self.notices().add(Arc::new(listener));
    }
}

impl Notices {
    pub(crate) fn new(origin: u64) -> Self {
        Self { origin: format!("{origin:016x}"), listeners: Mutex::default() }
    }

    fn add(&self, listener: Listener) {
        self.listeners.lock().unwrap_or_else(PoisonError::into_inner).push(listener);
    }

    /// Calls everyone. What they do must not stop the one who calls.
    pub(crate) fn give(&self, investigation: i64, seq: i64) {
        let listeners = self.listeners.lock().unwrap_or_else(PoisonError::into_inner).clone();
        for listener in listeners {
            let _ = catch_unwind(AssertUnwindSafe(|| listener(investigation, seq)));
        }
    }

    /// What other programs on the same database are told.
    pub(crate) fn message(&self, investigation: i64, seq: i64) -> String {
        format!("{} {investigation} {seq}", self.origin)
    }

    /// Passes on what another program told; what we told ourselves is known already.
    #[cfg(feature = "postgres")]
    pub(crate) fn heard(&self, message: &str) {
        let mut words = message.split(' ');
        let from = words.next();
        let mut number = || words.next().and_then(|word| word.parse().ok());
        if let (Some(investigation), Some(seq)) = (number(), number())
            && from != Some(self.origin.as_str())
        {
            self.give(investigation, seq);
        }
    }
}
