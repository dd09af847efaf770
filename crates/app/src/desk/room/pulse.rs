//! Tells pages that what they show has changed, and nothing else.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};
use tokio::sync::watch;

/// Whose page.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Scope {
    /// The teacher's pages of this investigation.
    Teacher,
    /// Pages of a group.
    Group {
        /// Name of the period.
        period: String,
        /// Number within the period.
        group: u32,
    },
    /// The wall page of a period.
    Wall(String),
    /// The walk-round page of a period.
    Round(String),
    /// Pages of aides.
    Aide,
}

impl Scope {
    /// The period it belongs to, if it belongs to one.
    pub(crate) fn period(&self) -> Option<&str> {
        match self {
            Self::Teacher | Self::Aide => None,
            Self::Group { period, .. } | Self::Wall(period) | Self::Round(period) => {
                Some(period)
            }
        }
    }
}

/// A rising number for every page that somebody looks at.
#[derive(Debug)]
pub(crate) struct Pulse {
    first: u64,
    scopes: Mutex<BTreeMap<Scope, watch::Sender<u64>>>,
}

impl Pulse {
    /// Numbers begin at `first`, which must be higher than any that an earlier run reached; the
    /// time in milliseconds is.
    pub(crate) fn new(first: u64) -> Self {
        Self { first, scopes: Mutex::default() }
    }

    /// Hears of a page's changes, beginning with its number now.
    pub(crate) fn listen(&self, scope: Scope) -> watch::Receiver<u64> {
        let mut scopes = self.scopes.lock().unwrap_or_else(PoisonError::into_inner);
        scopes.entry(scope).or_insert_with(|| watch::Sender::new(self.first)).subscribe()
    }

    /// The number now.
    pub(crate) fn number(&self, scope: Scope) -> u64 {
        *self.listen(scope).borrow()
    }

    /// What pages of this kind show has changed.
    pub(crate) fn beat(&self, changed: impl Fn(&Scope) -> bool) {
        let scopes = self.scopes.lock().unwrap_or_else(PoisonError::into_inner);
        for (_, sender) in scopes.iter().filter(|(scope, _)| changed(scope)) {
            sender.send_modify(|number| *number += 1);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Pulse, Scope};

    #[test]
    fn only_those_who_are_meant_hear_it() {
        let pulse = Pulse::new(100);
        let group = |group| Scope::Group { period: "2".into(), group };
        let (one, two) = (pulse.listen(group(1)), pulse.listen(group(2)));
        pulse.beat(|scope| *scope == group(1));
        assert!(one.has_changed().expect("open"));
        assert!(!two.has_changed().expect("open"));
        assert_eq!(pulse.number(group(1)), 101);
        assert_eq!(pulse.number(group(2)), 100);
    }
}
