//! No bytes make the plan reader panic, and what it took it can write and read again.
#![no_main]

use barm_documents::plan_text;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let first = plan_text::read(bytes);
    if first.mistakes.is_empty()
        && let Some(plan) = first.plan
    {
        let text = plan_text::write_new(&plan);
        let again = plan_text::read(text.as_bytes());
        assert!(again.mistakes.is_empty(), "{:?}\n{text}", again.mistakes);
    }
});
