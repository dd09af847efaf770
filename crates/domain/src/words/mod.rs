//! Sentences for people: what a class may say of its results, at its grade.
//!
//! One door: [`Voice`]. It speaks English; another language and other grades are other voices,
//! and nothing else in the program puts a verdict into words. Sentences are short (20 words at
//! most, for names of up to three words), name what was compared, and say the doubt with the
//! value.

mod beyond;
mod comparison;
mod crossed;
mod hint;
mod ladder;
mod meter;
mod method;
mod number;
mod power;
mod reason;
mod round_two;
mod taught;

use number::mid_sentence;
pub use number::{figure, tenths};

/// Who is spoken to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Voice {
    grade: u8,
}

impl Voice {
    /// English for a US grade: up to 6 without intervals, from 7 on with them.
    pub const fn english(grade: u8) -> Self {
        Self { grade }
    }

    /// Whether intervals are spoken of (center and spread in grade 6, overlap and
    /// doubt from 7 on; Common Core State Standards for Mathematics 6.SP and 7.SP).
    const fn speaks_of_intervals(self) -> bool {
        self.grade >= 7
    }
}
