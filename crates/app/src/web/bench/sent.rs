//! What a device sends, as JSON.

use crate::desk::room::bench::Typed;
use serde::Deserialize;

/// Entries, in the order in which they were typed.
#[derive(Deserialize)]
pub(in crate::web) struct Sent {
    entries: Vec<SentEntry>,
}

#[derive(Deserialize)]
struct SentEntry {
    key: String,
    #[serde(default)]
    bag: Option<String>,
    what: String,
    at: f64,
    #[serde(default)]
    offset: Option<f64>,
    #[serde(default)]
    mm: Option<f64>,
    #[serde(default)]
    planned: Option<u32>,
    #[serde(default)]
    of: Option<String>,
    #[serde(default)]
    odd: Option<String>,
    #[serde(default)]
    celsius: Option<f64>,
    #[serde(default)]
    plan: Option<u32>,
    #[serde(default)]
    expects: Option<Vec<(String, f64)>>,
    #[serde(default)]
    because: Option<String>,
    #[serde(default)]
    words: Option<String>,
}

impl Sent {
    /// How many entries there are.
    pub(super) const fn len(&self) -> usize {
        self.entries.len()
    }

    pub(super) fn typed(self) -> Vec<Typed> {
        self.entries.into_iter().map(SentEntry::typed).collect()
    }
}

impl SentEntry {
    fn typed(self) -> Typed {
        Typed {
            key: self.key,
            bag: self.bag,
            what: self.what,
            // Scripts know no whole numbers.
            at: self.at.round() as i64,
            offset: self.offset.unwrap_or_default().round() as i64,
            mm: self.mm,
            planned: self.planned,
            of: self.of,
            odd: self.odd,
            celsius: self.celsius,
            plan: self.plan,
            expects: self.expects,
            because: self.because,
            words: self.words,
        }
    }
}
