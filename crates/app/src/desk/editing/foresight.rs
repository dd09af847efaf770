//! Forecasts that are known already, so that only what was edited is worked out again.

use barm_domain::outlook::{self, Look, OutlookError, Treated};
use barm_domain::plan::{Plan, Treatment};
use std::collections::HashMap;
use std::sync::{Arc, LazyLock, Mutex, PoisonError};

/// So many forecasts are kept: some plans with all that was tried on them.
const MOST: usize = 400;

/// Everything that a forecast rests on, written out.
type Key = String;

static KNOWN: LazyLock<Mutex<HashMap<Key, Arc<Treated>>>> = LazyLock::new(Mutex::default);

fn key(plan: &Plan, treatment: &Treatment, look: Look) -> Result<Key, OutlookError> {
    let setup = outlook::setup(plan, treatment)?;
    let last = plan.common_last_reading_min();
    let known = &plan.known;
    Ok(format!("{}\u{0}{look:?}\u{0}{last}\u{0}{setup:?}\u{0}{known:?}", treatment.name))
}

/// The forecast of a treatment if it was worked out before.
pub(super) fn known(plan: &Plan, treatment: &Treatment, look: Look) -> Option<Arc<Treated>> {
    let key = key(plan, treatment, look).ok()?;
    KNOWN.lock().unwrap_or_else(PoisonError::into_inner).get(&key).cloned()
}

/// The forecast of a treatment. What was worked out before is not worked out again.
pub(in crate::desk) fn forecast(
    plan: &Plan,
    treatment: &Treatment,
    look: Look,
) -> Result<Arc<Treated>, OutlookError> {
    let key = key(plan, treatment, look)?;
    if let Some(known) = KNOWN.lock().unwrap_or_else(PoisonError::into_inner).get(&key) {
        return Ok(known.clone());
    }
    let fresh = Arc::new(crate::desk::outlook::forecast(plan, treatment, look)?);
    let mut known = KNOWN.lock().unwrap_or_else(PoisonError::into_inner);
    if known.len() >= MOST {
        known.clear();
    }
    known.insert(key, fresh.clone());
    Ok(fresh)
}
