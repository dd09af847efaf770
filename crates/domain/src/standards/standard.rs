//! One standard.

use super::Product;

/// Where a standard comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Set {
    /// Performance expectations of the Next Generation Science Standards.
    Expectation,
    /// Science and engineering practices of the same, grades 6 to 8.
    Practice,
    /// Crosscutting concepts of the same.
    Concept,
    /// Common Core State Standards, mathematics.
    Mathematics,
    /// Common Core State Standards, literacy in science.
    Literacy,
}

/// A standard with the products that show it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Standard {
    /// Where it comes from.
    pub set: Set,
    /// Its published code.
    pub code: &'static str,
    /// What it asks, in own words; the published text is longer and goes first.
    pub gist: &'static str,
    /// Products of which any one shows it.
    pub products: &'static [Product],
    /// Whether the code and its gist were not read in the standard again.
    pub from_memory: bool,
}
