//! Opens the door: listens, answers, and stops when told.

use super::log::Log;
use super::network::Network;
use super::rehearse::Practice;
use super::state::{Reach, Running, Web};
use super::{routes, tls};
use crate::desk::room::{Shelf, kept_words, whole_check};
use crate::desk::{Certificate, Clock, DeskError};
use std::net::{SocketAddr, TcpListener};
use std::sync::Arc;
use std::time::Duration;
use tokio::sync::watch;

/// How the server is asked to run.
pub(crate) struct Ask {
    /// Where it listens.
    pub(crate) listener: TcpListener,
    /// The data folder.
    pub(crate) shelf: Arc<Shelf>,
    /// Who may reach what from where.
    pub(crate) reach: Reach,
    /// Where the time comes from.
    pub(crate) clock: Arc<Clock>,
    /// With what connections are encrypted, if they are.
    pub(crate) certificate: Option<Certificate>,
}

/// Answers that are under way when the server stops may still take so long.
pub(super) const LAST: Duration = Duration::from_secs(5);

/// Whoever connects and asks nothing for so long is let go.
pub(super) const PATIENCE: Duration = Duration::from_secs(30);

/// So often is looked whether the day has come on which words are deleted.
const LOOK_EVERY: Duration = Duration::from_secs(3600);

/// Deletes words whose day has come, at the start and while the program runs.
async fn delete_due(web: Web) {
    let mut stopping = web.stopping.clone();
    loop {
        let done = web.wait(kept_words::delete_due).await;
        let now = web.now();
        match done {
            Ok(done) => {
                for (id, deleted) in done {
                    web.log.write(now, &deleted.in_the_log(id));
                }
            }
            Err(error) => web.log.write(now, &format!("words could not be deleted: {error}")),
        }
        tokio::select! {
            () = tokio::time::sleep(LOOK_EVERY) => {}
            _ = stopping.changed() => return,
        }
    }
}

/// So long after the start the whole record is read through: the first pages come first.
const CHECK_AFTER: Duration = Duration::from_secs(300);

/// And then so often, while the program runs.
const CHECK_EVERY: Duration = Duration::from_secs(24 * 3600);

/// Reads the whole record through, some minutes after the start and once a day; the log says what
/// was found, and the shelf page when it is bad.
async fn check_whole(web: Web) {
    let mut stopping = web.stopping.clone();
    let mut pause = CHECK_AFTER;
    loop {
        tokio::select! {
            () = tokio::time::sleep(pause) => {}
            _ = stopping.changed() => return,
        }
        pause = CHECK_EVERY;
        let now = web.now();
        match web.wait(whole_check::check_whole).await {
            Ok(found) => web.log.write(now, &found.in_the_log()),
            Err(error) => web.log.write(now, &format!("full check: not done: {error}")),
        }
    }
}

/// Serves until it is told to stop.
pub(crate) async fn serve(
    ask: Ask,
    told_to_stop: impl Future<Output = ()> + Send + 'static,
) -> Result<(), DeskError> {
    let tls = ask.certificate.as_ref().map(tls::from).transpose()?;
    let (stop, stopping) = watch::channel(false);
    let log = Log::in_folder(&ask.shelf.folder);
    let running = Running {
        shelf: ask.shelf,
        reach: ask.reach,
        log,
        clock: ask.clock,
        network: Network::default(),
        port: ask.listener.local_addr().map_err(DeskError::Serve)?.port(),
        practice: Practice::default(),
        stopping,
    };
    let web = Web::new(running);
    web.log.write(web.now(), "started");
    let service = routes::router(&web).into_make_service_with_connect_info::<SocketAddr>();
    tokio::spawn(delete_due(web.clone()));
    tokio::spawn(check_whole(web.clone()));
    ask.listener.set_nonblocking(true).map_err(DeskError::Serve)?;
    let handle = axum_server::Handle::new();
    let stopper = handle.clone();
    let told = web.clone();
    tokio::spawn(async move {
        told_to_stop.await;
        told.log.write(told.now(), "told to stop");
        // Streams end by themselves; then nothing keeps the connections open.
        let _ = stop.send(true);
        stopper.graceful_shutdown(Some(LAST));
    });
    let served = match tls {
        None => match axum_server::from_tcp(ask.listener) {
            Ok(server) => {
                let server = server.http1_only().first_request_timeout(PATIENCE);
                server.handle(handle).serve(service).await
            }
            Err(error) => Err(error),
        },
        Some(tls) => match axum_server::from_tcp_rustls(ask.listener, tls) {
            Ok(server) => {
                let server = server.http1_only().first_request_timeout(PATIENCE);
                server.handle(handle).serve(service).await
            }
            Err(error) => Err(error),
        },
    };
    served.map_err(DeskError::Serve)?;
    web.log.write(web.now(), "stopped");
    Ok(())
}
