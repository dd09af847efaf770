//! Letting other devices in while the program runs: it listens on this computer's addresses in the
//! network too, at the same port. What may be reached from there stays as it is for each address.

use super::routes;
use super::serve::{LAST, PATIENCE};
use super::state::{Reach, Web};
use super::trouble::Trouble;
use super::words::Words;
use crate::desk::say;
use crate::system;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use std::net::{IpAddr, SocketAddr, TcpListener};
use std::sync::{PoisonError, RwLock};

/// Where else than on this computer it listens since it was told to let others in.
#[derive(Debug, Default)]
pub(super) struct Network {
    open: RwLock<Vec<IpAddr>>,
}

impl Network {
    /// Whether it listens on this address.
    pub(super) fn has(&self, address: IpAddr) -> bool {
        self.open.read().unwrap_or_else(PoisonError::into_inner).contains(&address)
    }
}

impl Web {
    /// Who may reach what from where, now.
    pub(super) fn reach_now(&self) -> Reach {
        let open = self.network.open.read().unwrap_or_else(PoisonError::into_inner);
        let lan = self.reach.lan || !open.is_empty();
        let addresses = self.reach.addresses.iter().chain(&*open).copied().collect();
        Reach { lan, addresses, ..self.reach.clone() }
    }

    /// Whether pages for groups answer from the network, now.
    pub(super) fn lan(&self) -> bool {
        let open = self.network.open.read().unwrap_or_else(PoisonError::into_inner);
        self.reach.lan || !open.is_empty()
    }

    /// Listens on every address of this computer that it does not listen on yet; gives how many
    /// there are now.
    fn let_in(&self) -> usize {
        let own = system::addresses().into_iter().filter(IpAddr::is_ipv4);
        for address in own.filter(|address| !self.network.has(*address)) {
            let bound = TcpListener::bind((address, self.port));
            let Ok(listener) = bound.and_then(|it| it.set_nonblocking(true).map(|()| it))
            else {
                continue;
            };
            let Ok(server) = axum_server::from_tcp(listener) else { continue };
            let handle = axum_server::Handle::new();
            let service =
                routes::router(self).into_make_service_with_connect_info::<SocketAddr>();
            let server =
                server.http1_only().first_request_timeout(PATIENCE).handle(handle.clone());
            tokio::spawn(server.serve(service));
            let mut stopping = self.stopping.clone();
            tokio::spawn(async move {
                // It ends with the server, whichever way that goes.
                let _ = stopping.wait_for(|stop| *stop).await;
                handle.graceful_shutdown(Some(LAST));
            });
            let mut open = self.network.open.write().unwrap_or_else(PoisonError::into_inner);
            open.push(address);
            self.log.write(self.now(), "other devices may come in");
        }
        self.network.open.read().unwrap_or_else(PoisonError::into_inner).len()
    }
}

/// Lets other devices in, as the teacher asked on the page of a period's codes.
pub(super) async fn let_in(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    // Encrypted connections are asked for at the start, with a certificate that names addresses.
    if web.reach.tls || (!web.lan() && web.let_in() == 0) {
        return Err(Trouble::Wrong(say!(w, "codes-in-no-network")));
    }
    let period = super::address::segment(&period);
    Ok(Redirect::to(&format!("/i/{id}/run/{period}/codes")).into_response())
}
