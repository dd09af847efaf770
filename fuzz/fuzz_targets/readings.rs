//! No bytes make the readings reader panic.
#![no_main]

use barm_documents::{plan_text, readings};
use barm_domain::plan::Plan;
use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;

static PLAN: LazyLock<Plan> = LazyLock::new(|| {
    plan_text::read(include_bytes!("../../crates/app/src/demo/plan.toml"))
        .plan
        .expect("the demo plan is sound")
});

fuzz_target!(|bytes: &[u8]| {
    readings::read(bytes, &PLAN);
});
