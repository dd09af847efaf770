//! Data of an investigation as they are given to strangers: numbers and codes, no words of people.
//!
//! No type here can hold a name: bags and treatments have codes, foods and enzymes are those of the
//! program's own tables, rules are known by what they look at. There is no text anywhere.

mod check;
mod code;
mod item;
mod of_plan;
mod rebuilt;
mod rows;
mod rule;
mod said;

pub use check::SharedError;
pub use code::{TreatmentCode, TreatmentCodeError};
pub use item::{Item, Measure, Part};
pub use of_plan::NotShared;
pub use rebuilt::{Investigation, LeftOut, NotRebuilt, Unsaid};
pub use rows::{
    AsideRow, BagRow, IngredientRow, Lying, MeterRow, ReadingRow, Rows, TreatmentRow,
};
pub use rule::Rule;
pub(crate) use said::plainly;

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

#[cfg(test)]
mod tests {
    use super::{
        AsideRow, BagRow, IngredientRow, MeterRow, ReadingRow, Rows, Shared, SharedError,
        TreatmentCode, TreatmentRow,
    };

    /// What can be copied bit by bit owns no text; the only text lent is that of [`super::Item`],
    /// which comes from the program's own tables.
    #[test]
    fn no_row_can_hold_words_of_people() {
        const fn owns_no_text<T: Copy>() {}
        owns_no_text::<TreatmentRow>();
        owns_no_text::<super::Item>();
        owns_no_text::<IngredientRow>();
        owns_no_text::<BagRow>();
        owns_no_text::<ReadingRow>();
        owns_no_text::<AsideRow>();
        owns_no_text::<MeterRow>();
    }

    #[test]
    fn rows_that_lead_nowhere_are_refused() {
        let bag = "P1-02B-6".parse().unwrap();
        let row = ReadingRow { bag, minute: 0.0, height_mm: 4.0 };
        let refused = Shared::new(Rows { readings: vec![row], ..Rows::default() }).unwrap_err();
        assert!(matches!(refused, SharedError::Nowhere { missing: "bags", .. }), "{refused}");
        let treatment = TreatmentCode::of(1).unwrap();
        let row = BagRow {
            code: bag,
            treatment,
            replicate: 1,
            room_celsius: 20.0,
            pressure_hpa: 1010.0,
        };
        let refused = Shared::new(Rows { bags: vec![row], ..Rows::default() }).unwrap_err();
        assert!(refused.to_string().contains("T01 is in no row"), "{refused}");
        assert!(Shared::new(Rows::default()).is_ok());
    }
}
