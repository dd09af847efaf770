//! What every handler can reach.

use super::caller::Caller;
use super::cookies;
use super::log::Log;
use super::network::Network;
use super::rehearse::Practice;
use super::trouble::Trouble;
use crate::desk::doors::Part;
use crate::desk::room::{Room, Scope, Shelf};
use crate::desk::{Clock, DeskError};
use axum::http::HeaderMap;
use jiff::Timestamp;
use std::net::IpAddr;
use std::sync::Arc;
use tokio::sync::watch;

/// The running server.
#[derive(Clone)]
pub(super) struct Web(Arc<Running>);

/// What there is once for the whole server.
pub(super) struct Running {
    /// The data folder.
    pub(super) shelf: Arc<Shelf>,
    /// Who may reach what from where.
    pub(super) reach: Reach,
    /// Where it is written down what was refused and what went wrong.
    pub(super) log: Log,
    /// The time; tests set their own.
    pub(super) clock: Arc<Clock>,
    /// Where it listens since it was told to let others in.
    pub(super) network: Network,
    /// The port it listens on.
    pub(super) port: u16,
    /// The rehearsal that runs beside it.
    pub(super) practice: Practice,
    /// Becomes true when the server is told to stop.
    pub(super) stopping: watch::Receiver<bool>,
}

/// Who may reach what from where.
#[derive(Debug, Clone, Default)]
pub(crate) struct Reach {
    /// Whether pages for groups answer from the network.
    pub(crate) lan: bool,
    /// Whether connections are encrypted.
    pub(crate) tls: bool,
    /// Whether the teacher's pages answer from the network although nothing is encrypted.
    pub(crate) teacher_from_network: bool,
    /// Names under which this computer may be called, beside `localhost`.
    pub(crate) names: Vec<String>,
    /// Its addresses.
    pub(crate) addresses: Vec<IpAddr>,
}

impl Web {
    pub(super) fn new(running: Running) -> Self {
        Self(Arc::new(running))
    }

    /// The time now.
    pub(super) fn now(&self) -> Timestamp {
        self.clock.now()
    }

    /// Does something that waits for the disk, away from what must not wait.
    pub(super) async fn wait<T, E>(
        &self,
        work: impl FnOnce(&Shelf, Timestamp) -> Result<T, E> + Send + 'static,
    ) -> Result<T, E>
    where
        T: Send + 'static,
        E: From<DeskError> + Send + 'static,
    {
        let web = self.clone();
        let done = tokio::task::spawn_blocking(move || work(&web.shelf, web.now())).await;
        done.unwrap_or_else(|_| Err(DeskError::Stopped.into()))
    }

    /// An investigation by its number.
    pub(super) async fn room(&self, id: i64) -> Result<Arc<Room>, Trouble> {
        if let Some(room) = self.shelf.open_room(id) {
            return Ok(room);
        }
        Ok(self.wait(move |shelf, now| shelf.room(id, now)).await?)
    }

    /// The investigation that a caller belongs to, and what the caller's pages show of it.
    pub(super) async fn room_of(&self, caller: &Caller) -> Result<(Arc<Room>, Scope), Trouble> {
        let (id, scope) = match caller.clone() {
            Caller::Group { investigation, period, group } => {
                (investigation, Scope::Group { period, group })
            }
            Caller::Wall { investigation, period } => (investigation, Scope::Wall(period)),
            Caller::Round { investigation, period } => (investigation, Scope::Round(period)),
            Caller::Aide { investigation } => (investigation, Scope::Aide),
            Caller::Anyone | Caller::Teacher => return Err(Trouble::NotYours),
        };
        Ok((self.room(id).await?, scope))
    }

    /// Counts what the session of a group writes; refuses once it is more than anybody types.
    pub(super) fn may_write(&self, headers: &HeaderMap, much: usize) -> Result<(), Trouble> {
        let token = cookies::read(headers, cookies::name(Part::Group)).unwrap_or_default();
        self.shelf.doors.may_write(token, much.max(1), self.now()).map_err(Trouble::TooMuch)
    }

    /// Who a caller is, from the cookie of a part.
    pub(super) fn caller(&self, part: Part, token: &str) -> Option<Caller> {
        let seat = self.shelf.doors.who(part, token, self.now())?;
        Some(match part {
            Part::Teacher => Caller::Teacher,
            Part::Group => Caller::Group {
                investigation: seat.investigation?,
                period: seat.period?,
                group: seat.group?,
            },
            Part::Wall => {
                Caller::Wall { investigation: seat.investigation?, period: seat.period? }
            }
            Part::Round => {
                Caller::Round { investigation: seat.investigation?, period: seat.period? }
            }
            Part::Aide => Caller::Aide { investigation: seat.investigation? },
        })
    }
}

impl std::ops::Deref for Web {
    type Target = Running;

    fn deref(&self) -> &Running {
        &self.0
    }
}
