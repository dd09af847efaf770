//! What a class talks about in front of its own dots and curves.
//!
//! [`prompts()`] is the one way in. Behind it lies a plain rule: the same few questions for every
//! class, of which those drop out that its data cannot feed.

use barm_documents::catalog::Catalog;
use barm_domain::result::ClassResult;

/// Questions to talk about, in the order in which they are asked.
pub(super) fn prompts(result: &ClassResult, words: &Catalog) -> Vec<String> {
    let read = result.bags.iter().filter(|bag| bag.summary.is_some()).count();
    let aside = result.bags.iter().any(|bag| bag.set_aside.is_some());
    let mut keys = Vec::new();
    if read > 0 {
        keys.extend(["slides-prompt-see", "slides-prompt-spread"]);
    }
    if aside {
        keys.push("slides-prompt-aside");
    }
    keys.extend(["slides-prompt-control", "slides-prompt-claim", "slides-prompt-next"]);
    keys.into_iter().map(|key| words.say(key)).collect()
}
