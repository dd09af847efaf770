//! The list of all facts.

use barm_science::facts;
use std::collections::BTreeSet;

#[test]
fn every_fact_can_be_read() {
    let all = facts::all();
    assert!(all.len() > 300, "only {} facts", all.len());
    let mut names = BTreeSet::new();
    for fact in &all {
        let name = fact.name;
        assert!(names.insert(name), "{name} stands twice");
        assert!(name.contains('.') && !name.contains(' '), "{name:?}");
        assert!(!fact.unit.is_empty(), "{name} has no unit");
        assert!(fact.source.len() > 3, "{name} has no source");
        assert!(fact.value.is_finite(), "{name} is {}", fact.value);
        if let Some((low, high)) = fact.range {
            assert!(low < high, "{name}: range from {low} to {high}");
            assert!((low..=high).contains(&fact.value), "{name}: {} outside", fact.value);
        }
    }
}

/// What is recalled says so in its source as well, so that a reader of either column knows.
#[test]
fn what_is_from_memory_says_so() {
    use barm_science::fact::Status;
    for fact in facts::all().iter().filter(|fact| fact.status == Status::Memory) {
        let source = fact.source;
        let says = ["memory", "judgement", "common practice"];
        assert!(says.iter().any(|word| source.contains(word)), "{}: {source}", fact.name);
    }
}
