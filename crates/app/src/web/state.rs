//! What every handler can reach.

use std::sync::Arc;

/// The running server.
#[derive(Clone)]
pub(super) struct Web(Arc<Running>);

/// What there is once for the whole server.
pub(super) struct Running {
    /// Whether pages for groups answer from the network.
    pub(super) lan: bool,
}

impl Web {
    pub(super) fn new(running: Running) -> Self {
        Self(Arc::new(running))
    }
}

impl std::ops::Deref for Web {
    type Target = Running;

    fn deref(&self) -> &Running {
        &self.0
    }
}
