//! Hears what other programs commit to the same database.

use crate::failure::StoreError;
use crate::line::{LISTEN_FOR, Server};
use crate::notice::Notices;
use postgres::fallible_iterator::FallibleIterator as _;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::{self, JoinHandle};
use std::time::Duration;

/// How long it takes at most to notice that it is no longer wanted.
const TURN: Duration = Duration::from_millis(200);

/// A thread that listens until this is dropped.
pub(crate) struct Listening {
    enough: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
}

impl Listening {
    pub(crate) fn start(address: &str, notices: &Arc<Notices>) -> Result<Self, StoreError> {
        let enough = Arc::new(AtomicBool::new(false));
        let server = connect(address)?;
        let (address, notices) = (address.to_owned(), Arc::clone(notices));
        let stop = Arc::clone(&enough);
        let thread = thread::Builder::new()
            .name("notices".into())
            .spawn(move || listen(server, &address, &notices, &stop))
            .map_err(|source| StoreError::File {
                doing: "start a thread for",
                path: "the record".into(),
                source,
            })?;
        Ok(Self { enough, thread: Some(thread) })
    }
}

impl Drop for Listening {
    fn drop(&mut self) {
        self.enough.store(true, Ordering::Relaxed);
        if let Some(thread) = self.thread.take()
            && thread.thread().id() != thread::current().id()
        {
            let _ = thread.join();
        }
    }
}

fn connect(address: &str) -> Result<Server, StoreError> {
    let mut server = Server::open(address)?;
    server.listen()?;
    Ok(server)
}

fn listen(first: Server, address: &str, notices: &Notices, stop: &AtomicBool) {
    let mut server = Some(first);
    while !stop.load(Ordering::Relaxed) {
        let Some(open) = server.as_mut().filter(|server| !server.client.is_closed()) else {
            // The server may be away for a while. What was told meanwhile is lost, so everyone
            // is told anew.
            thread::sleep(TURN);
            server = connect(address).ok();
            if let Some(back) = server.as_mut() {
                for (investigation, seq) in back.last_places().unwrap_or_default() {
                    notices.give(investigation, seq);
                }
            }
            continue;
        };
        let mut told = open.client.notifications();
        let mut turn = told.timeout_iter(TURN);
        while let Ok(Some(notice)) = turn.next() {
            if notice.channel() == LISTEN_FOR {
                notices.heard(notice.payload());
            }
            if stop.load(Ordering::Relaxed) {
                return;
            }
        }
    }
}
