//! The rehearsal that runs beside the server: a server of its own, on another port.

use crate::desk::rehearse::Beside;
use crate::desk::{Clock, DeskError};
use crate::web::serve::{Ask, serve};
use crate::web::state::Reach;
use std::net::{Ipv4Addr, TcpListener};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;
use tokio::sync::watch;

/// The rehearsal of a server; at most one.
#[derive(Default)]
pub(in crate::web) struct Practice {
    playing: Mutex<Option<Playing>>,
}

/// A rehearsal that was set up.
#[derive(Clone)]
pub(super) struct Playing {
    /// What is rehearsed.
    pub(super) beside: Arc<Beside>,
    /// Where its pages are.
    pub(super) port: u16,
    stop: watch::Sender<bool>,
    ended: watch::Receiver<bool>,
}

/// So long its pages may take to close.
const LAST: Duration = Duration::from_secs(10);

impl Playing {
    /// Whether its pages have closed.
    pub(super) fn is_over(&self) -> bool {
        *self.ended.borrow()
    }
}

impl Practice {
    /// The one that was set up last.
    pub(super) fn playing(&self) -> Option<Playing> {
        self.playing.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Ends the one that runs, if one does, and waits until its folder is free.
    pub(super) async fn stop(&self) {
        let Some(mut playing) = self.playing() else { return };
        playing.beside.stop();
        // Nobody hears it if it has ended already.
        let _ = playing.stop.send(true);
        let ended = playing.ended.wait_for(|ended| *ended);
        let _ = tokio::time::timeout(LAST, ended).await;
    }

    /// Forgets the one that has ended, so that nothing holds its folder any more.
    pub(super) fn forget(&self) {
        *self.playing.lock().unwrap_or_else(PoisonError::into_inner) = None;
    }

    /// Lets one begin: opens its pages on this computer and sends the groups in. It ends when it
    /// is stopped or when the server stops.
    pub(super) fn begin(
        &self,
        beside: Beside,
        mut stopping: watch::Receiver<bool>,
    ) -> Result<(), DeskError> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).map_err(DeskError::Serve)?;
        let port = listener.local_addr().map_err(DeskError::Serve)?.port();
        let beside = Arc::new(beside);
        let ask = Ask {
            listener,
            shelf: Arc::clone(&beside.stage.shelf),
            reach: Reach::default(),
            clock: Arc::<Clock>::clone(&beside.stage.clock),
            certificate: None,
        };
        let (stop, mut told) = watch::channel(false);
        let (end, ended) = watch::channel(false);
        let groups = Arc::clone(&beside);
        let until = {
            let groups = Arc::clone(&beside);
            async move {
                tokio::select! {
                    _ = told.wait_for(|stop| *stop) => {}
                    _ = stopping.wait_for(|stop| *stop) => {}
                }
                groups.stop();
            }
        };
        let driving = tokio::task::spawn_blocking(move || groups.drive(port));
        tokio::spawn(async move {
            // What went wrong stands in the rehearsal's own log.
            let _ = Box::pin(serve(ask, until)).await;
            let _ = driving.await;
            let _ = end.send(true);
        });
        let playing = Playing { beside, port, stop, ended };
        *self.playing.lock().unwrap_or_else(PoisonError::into_inner) = Some(playing);
        Ok(())
    }
}
