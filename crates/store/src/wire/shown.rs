//! An entry as a line that a person can read, for the export.

use super::Kept;
use crate::failure::StoreError;
use barm_domain::record::Entry;
use serde_json::{Value, json};

/// One line of JSON.
pub(crate) fn line(seq: i64, entry: &Entry) -> Result<String, StoreError> {
    let kept = Kept::of(entry)?;
    let body = serde_json::from_str::<Value>(&kept.body).unwrap_or_default();
    let line = json!({
        "seq": seq,
        "key": kept.key.to_string(),
        "measured": entry.measured.to_string(),
        "arrived": entry.arrived.to_string(),
        "who": { "role": kept.who, "period": kept.who_period, "group": kept.who_group },
        "about": {
            "what": kept.subject,
            "period": kept.period,
            "group": kept.group,
            "bag": kept.bag,
        },
        "kind": kept.kind,
        "shape": kept.shape,
        "body": body,
    });
    Ok(line.to_string())
}
