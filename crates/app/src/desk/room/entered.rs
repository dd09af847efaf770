//! From the writer's acknowledgement to the pages that hear of it.

use super::Receipt;
use super::live::{Room, State};
use super::opened;
use super::own;
use super::shown::Change;
use crate::desk::DeskError;
use barm_domain::record::{Entry, Subject};
use std::sync::Arc;
use tokio::sync::oneshot;

impl Room {
    /// Puts entries on record, all or none. Returns when they are on disk; only then do pages
    /// show them. An entry whose key is known and that says the same is acknowledged again.
    ///
    /// If whoever waits goes away, the entries are kept all the same.
    pub(crate) async fn enter(
        self: &Arc<Self>,
        entries: Vec<Entry>,
    ) -> Result<Vec<Receipt>, DeskError> {
        self.must_be_theirs(&entries)?;
        let (tell, told) = oneshot::channel();
        let room = Arc::clone(self);
        let store = self.store.clone();
        let id = self.id;
        // Handing over waits for nothing; `then` runs on the writing thread after the commit.
        let handed = Arc::new(entries);
        let kept = Arc::clone(&handed);
        store.append_then(id, handed.as_slice(), move |result| {
            if let Ok(receipts) = &result {
                room.learn(&kept, receipts);
            }
            // Nobody may be waiting any more.
            let _ = tell.send(result);
        });
        match told.await {
            Ok(result) => Ok(result?),
            Err(_) => Err(barm_store::StoreError::Closed.into()),
        }
    }

    /// The same for those who may wait, such as a command.
    pub(crate) fn enter_and_wait(&self, entries: &[Entry]) -> Result<Vec<Receipt>, DeskError> {
        Self::about_to_wait();
        self.must_be_theirs(entries)?;
        let receipts = self.store.append(self.id, entries)?;
        self.learn(entries, &receipts);
        Ok(receipts)
    }

    /// Refuses all of them if somebody says what is not theirs to say.
    fn must_be_theirs(&self, entries: &[Entry]) -> Result<(), DeskError> {
        self.read(|scene| {
            let known = scene.ledger.known();
            let theirs = entries.iter().all(|entry| own::may_enter(entry, known));
            if theirs { Ok(()) } else { Err(DeskError::NotTheirs) }
        })
    }

    /// Takes what is on disk into the live record and tells the pages that show it.
    fn learn(&self, entries: &[Entry], receipts: &[Receipt]) {
        let mut state = self.state_mut();
        for (entry, receipt) in entries.iter().zip(receipts) {
            if !receipt.known {
                self.learn_one(&mut state, entry);
            }
        }
    }

    fn learn_one(&self, state: &mut State, entry: &Entry) {
        let seen = match &entry.subject {
            Subject::Bag(code) => Some(opened::Before::of(&self.scene(state), *code)),
            _ => None,
        };
        let Some(replaced) = state.ledger.add_and_recall(entry.clone()) else { return };
        if state.must_bind(entry, replaced.bag.is_none()) {
            state.bind();
        }
        let after = self.scene(state);
        let change = Change::of(entry, &replaced, seen, &after);
        self.pulse.beat(|scope| change.shows_on(scope));
    }
}
