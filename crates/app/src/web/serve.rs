//! Opens the door: listens, answers, and stops when told.

use super::log::Log;
use super::state::{Reach, Running, Web};
use super::{routes, tls};
use crate::desk::Certificate;
use crate::desk::room::Shelf;
use jiff::Timestamp;
use std::io;
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
    /// With what connections are encrypted, if they are.
    pub(crate) certificate: Option<Certificate>,
}

/// Answers that are under way when the server stops may still take so long.
const LAST: Duration = Duration::from_secs(5);

/// Whoever connects and asks nothing for so long is let go.
const PATIENCE: Duration = Duration::from_secs(30);

/// Serves until it is told to stop.
pub(crate) async fn serve(
    ask: Ask,
    told_to_stop: impl Future<Output = ()> + Send + 'static,
) -> io::Result<()> {
    let (stop, stopping) = watch::channel(false);
    let log = Log::in_folder(&ask.shelf.folder);
    let clock = Box::new(Timestamp::now);
    let running = Running { shelf: ask.shelf, reach: ask.reach, log, clock, stopping };
    let web = Web::new(running);
    web.log.write(web.now(), "started");
    let service = routes::router(&web).into_make_service_with_connect_info::<SocketAddr>();
    ask.listener.set_nonblocking(true)?;
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
    match ask.certificate {
        None => {
            let server = axum_server::from_tcp(ask.listener)?.http1_only();
            let server = server.first_request_timeout(PATIENCE);
            server.handle(handle).serve(service).await?;
        }
        Some(certificate) => {
            let tls = tls::from(&certificate)?;
            let server = axum_server::from_tcp_rustls(ask.listener, tls)?.http1_only();
            let server = server.first_request_timeout(PATIENCE);
            server.handle(handle).serve(service).await?;
        }
    }
    web.log.write(web.now(), "stopped");
    Ok(())
}
