//! No bytes make the plan reader panic, and what it took it can write and read again: as a new
//! file, and into the very file it came from.
#![no_main]

use barm_documents::plan_text;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let first = plan_text::read(bytes);
    assert_eq!(first.plan.is_some(), first.mistakes.is_empty());
    let (Some(plan), Ok(text)) = (first.plan, std::str::from_utf8(bytes)) else { return };
    for written in [plan_text::write_new(&plan), plan_text::write(&plan, text)] {
        let again = plan_text::read(written.as_bytes());
        assert!(again.mistakes.is_empty(), "{:?}\n{written}", again.mistakes);
        assert_eq!(again.plan.as_ref(), Some(&plan), "{written}");
    }
});
