//! Data of an investigation as they are given to strangers: numbers and codes, no words of people.
//!
//! No type here can hold a name: bags and treatments have codes, foods and enzymes are those of the
//! program's own tables, rules are known by what they look at. There is no text anywhere.

mod check;
mod code;
mod item;
mod of_plan;
mod rows;
mod rule;

pub use check::SharedError;
pub use code::{TreatmentCode, TreatmentCodeError};
pub use item::{Item, Measure, Part};
pub use of_plan::NotShared;
pub use rows::{
    AsideRow, BagRow, IngredientRow, Lying, MeterRow, ReadingRow, Rows, TreatmentRow,
};
pub use rule::Rule;

/// Rows of an investigation that hang together: every code leads somewhere, every number is one.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Shared {
    rows: Rows,
}

impl Shared {
    /// Rows in any order.
    ///
    /// # Errors
    /// [`SharedError`] names the table and the row that does not fit.
    pub fn new(mut rows: Rows) -> Result<Self, SharedError> {
        check::check(&rows)?;
        rows.sort();
        Ok(Self { rows })
    }

    /// The rows, in the order of their codes and minutes.
    pub const fn rows(&self) -> &Rows {
        &self.rows
    }
}
