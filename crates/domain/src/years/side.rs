//! What one side of a difference is made of, and when two are the same.

use crate::shared::{IngredientRow, Rows, TreatmentCode, TreatmentRow};

/// A treatment of one class.
#[derive(Debug, Clone, PartialEq)]
pub struct Side {
    pub(super) row: TreatmentRow,
    pub(super) ingredients: Vec<IngredientRow>,
}

/// Amounts are the same if the larger is at most so many times the smaller (1; own rule: what spoons and
/// kitchen balances of two schools do to one recipe).
const AMOUNT: f64 = 1.25;
/// Temperatures are the same within so much (°C; own rule).
const WARMTH: f64 = 3.0;
/// Bags and cards are the same if no side differs by more than this factor (1; own rule).
const SIZE: f64 = 1.1;

impl Side {
    pub(super) fn of(rows: &Rows, code: TreatmentCode) -> Option<Self> {
        let row = *rows.treatments.iter().find(|row| row.code == code)?;
        Some(Self { row, ingredients: rows.ingredients_of(code).copied().collect() })
    }

    /// Whether the bags of two classes were made alike: the same foods, enzymes, extras and yeast,
    /// amounts within a quarter, temperatures within 3 °C, bags and cards within a tenth.
    pub fn is_like(&self, other: &Self) -> bool {
        let (one, two) = (&self.row, &other.row);
        let sizes = |row: &TreatmentRow| {
            [row.bag_width_mm, row.bag_height_mm, row.card_length_mm, row.card_width_mm]
        };
        let tray = |row: &TreatmentRow| row.tray_celsius.unwrap_or(0.0);
        one.yeast == two.yeast
            && one.lying == two.lying
            && within(one.yeast_g, two.yeast_g, AMOUNT)
            && within(one.water_ml, two.water_ml, AMOUNT)
            && (one.water_celsius - two.water_celsius).abs() <= WARMTH
            && (tray(one) - tray(two)).abs() <= WARMTH
            && sizes(one).into_iter().zip(sizes(two)).all(|(a, b)| within(a, b, SIZE))
            && self.ingredients.len() == other.ingredients.len()
            && self.ingredients.iter().zip(&other.ingredients).all(|(a, b)| {
                (a.part, a.item, a.measure) == (b.part, b.item, b.measure)
                    && within(a.amount, b.amount, AMOUNT)
            })
    }

    /// The numbers in which recipes of one kind may differ: what, value, unit.
    pub(super) fn numbers(&self) -> Vec<(&'static str, f64, &'static str)> {
        let row = &self.row;
        let mut numbers = vec![
            ("water", row.water_ml, "mL"),
            ("water", row.water_celsius, "°C"),
            ("yeast", row.yeast_g, "g"),
        ];
        numbers.extend(row.tray_celsius.map(|celsius| ("tray", celsius, "°C")));
        let own = self.ingredients.iter();
        numbers.extend(own.map(|one| (one.item.name(), one.amount, one.measure.written())));
        numbers
    }
}

fn within(one: f64, other: f64, factor: f64) -> bool {
    one.max(other) <= one.min(other) * factor
}
