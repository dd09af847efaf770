//! The teacher's own remarks, offered again where they fit.

use super::given::Given;
use std::collections::BTreeMap;

/// A remark that was written before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Offered {
    /// Its words.
    pub words: String,
    /// How often it was written for that strand at that level.
    pub here: usize,
    /// How often for that strand at any level.
    pub in_all: usize,
}

/// Remarks that were written for a strand before, those of the same level first, then by how often, then by their
/// words; at most so many. What stands there already is not offered.
pub fn offered<'g>(
    given: impl IntoIterator<Item = &'g Given>,
    strand: &str,
    level: Option<u8>,
    (own, most): (Option<&str>, usize),
) -> Vec<Offered> {
    let mut counted: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    for one in given {
        let Some(words) = one.remarks.get(strand) else { continue };
        let (here, in_all) = counted.entry(words).or_default();
        let same = level.is_some() && one.levels.get(strand).copied() == level;
        *here += usize::from(same);
        *in_all += 1;
    }
    let mut offered: Vec<Offered> = counted
        .into_iter()
        .filter(|(words, _)| own != Some(words))
        .map(|(words, (here, in_all))| Offered { words: words.to_owned(), here, in_all })
        .collect();
    offered.sort_by_key(|one| std::cmp::Reverse((one.here, one.in_all)));
    offered.truncate(most);
    offered
}
