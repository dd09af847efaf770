//! Opens the door: listens, answers, and stops when told.

use super::routes;
use super::state::{Running, Web};
use std::net::SocketAddr;
use tokio::net::TcpListener;

/// How the server is asked to run.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ask {
    /// Where it listens.
    pub(crate) address: SocketAddr,
    /// Whether pages for groups answer from the network.
    pub(crate) lan: bool,
}

/// Serves until the process is told to stop.
pub(crate) async fn serve(ask: Ask) -> std::io::Result<()> {
    let web = Web::new(Running { lan: ask.lan });
    let listener = TcpListener::bind(ask.address).await?;
    axum::serve(listener, routes::router(&web)).await
}
