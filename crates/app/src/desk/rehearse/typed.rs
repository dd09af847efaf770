//! Entries as the bench page sends them.

use barm_domain::rehearsal::{Does, Step};
use serde_json::{Value, json};

/// One entry: its key, the device's clock (ms), how far the program's is ahead of it (ms), what is
/// typed, and the version of the plan.
pub(crate) fn entry(key: &str, at: i64, skew: i64, step: &Step, plan: u32) -> Value {
    let bag = step.bag.map(|bag| bag.to_string());
    let mut entry = json!({ "key": key, "bag": bag, "at": at, "offset": skew });
    let mut set = |name: &str, value: Value| entry[name] = value;
    match &step.does {
        Does::Guess(expects) => {
            set("what", "guess".into());
            let pairs = expects.iter().map(|(bag, mm)| json!([bag.to_string(), mm]));
            set("expects", pairs.collect());
        }
        Does::Sealed => {
            set("what", "sealed".into());
            set("plan", plan.into());
        }
        Does::Zero(mm) => {
            set("what", "zero".into());
            set("mm", json!(mm));
        }
        Does::Reading(planned, mm) => {
            set("what", "reading".into());
            set("planned", json!(planned));
            set("mm", json!(mm));
        }
        Does::Odd(odd) => {
            set("what", "odd".into());
            set("odd", odd.word().into());
        }
        Does::Vented => set("what", "vented".into()),
    }
    entry
}
