//! Opens the door: listens, answers, and stops when told.

use super::log::Log;
use super::routes;
use super::state::{Reach, Running, Web};
use crate::desk::room::Shelf;
use jiff::Timestamp;
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
}

/// Answers that are under way when the server stops may still take so long.
const LAST: Duration = Duration::from_secs(5);

/// Serves until the process is told to stop.
pub(crate) async fn serve(ask: Ask) -> std::io::Result<()> {
    let (stop, stopping) = watch::channel(false);
    let log = Log::in_folder(&ask.shelf.folder);
    let running =
        Running { shelf: ask.shelf, reach: ask.reach, log, clock: Timestamp::now, stopping };
    let web = Web::new(running);
    web.log.write(web.now(), "started");
    let service = routes::router(&web).into_make_service_with_connect_info::<SocketAddr>();
    ask.listener.set_nonblocking(true)?;
    let handle = axum_server::Handle::new();
    let server = axum_server::from_tcp(ask.listener)?.handle(handle.clone());
    let told = web.clone();
    tokio::spawn(async move {
        told_to_stop().await;
        told.log.write(told.now(), "told to stop");
        // Streams end by themselves; then nothing keeps the connections open.
        let _ = stop.send(true);
        handle.graceful_shutdown(Some(LAST));
    });
    server.serve(service).await?;
    web.log.write(web.now(), "stopped");
    Ok(())
}

/// Returns on Ctrl-C, and on Unix when the system asks the process to end.
async fn told_to_stop() {
    let interrupted = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminated) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = interrupted => {}
                _ = terminated.recv() => {}
            }
            return;
        }
    }
    let _ = interrupted.await;
}
