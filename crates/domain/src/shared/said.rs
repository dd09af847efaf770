//! Shared treatments in words: what is in their bags.

use super::{IngredientRow, Item, Lying, Measure, Rows, TreatmentCode, TreatmentRow};
use barm_science::enzyme::PRODUCTS;
use barm_science::food;
use barm_science::setup::YeastKind;

/// A number without figures that nobody reads.
pub(crate) fn plainly(value: f64) -> String {
    ((value * 100.0).round() / 100.0).to_string()
}

impl Item {
    /// What people call it.
    pub fn name(self) -> &'static str {
        let product = || PRODUCTS.iter().find(|one| one.key == self.id()).map(|one| one.name);
        let known = food::by_id(self.id()).map(|food| food.name).or_else(product);
        known.unwrap_or("a food known by its label only")
    }
}

impl Measure {
    /// The unit as plans write it.
    pub(crate) const fn written(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Milliliter => "mL",
            Self::Drop => "drops",
            Self::Piece => "pieces",
        }
    }
}

impl IngredientRow {
    /// The ingredient in words, such as `Honey 0.5 g`.
    pub(crate) fn says(&self) -> String {
        let name = self.item.name();
        // What flows is what the teacher made of a powder or a tablet.
        let flows = matches!(self.measure, Measure::Milliliter | Measure::Drop);
        let dry = name.strip_suffix(" powder").or_else(|| name.strip_suffix(" tablet"));
        let name = match dry.filter(|_| flows) {
            Some(stem) => format!("{stem} solution"),
            None => name.to_owned(),
        };
        format!("{name} {} {}", plainly(self.amount), self.measure.written())
    }
}

impl Rows {
    /// What goes into the bags of a treatment beside water and yeast, in their order.
    pub(crate) fn ingredients_of(
        &self,
        code: TreatmentCode,
    ) -> impl Iterator<Item = &IngredientRow> {
        self.ingredients.iter().filter(move |row| row.treatment == code)
    }

    /// A treatment in words: what is in it, and in what else it differs from `usual`.
    pub(crate) fn says(&self, row: &TreatmentRow, usual: &TreatmentRow) -> String {
        let mut parts: Vec<String> =
            self.ingredients_of(row.code).map(IngredientRow::says).collect();
        if parts.is_empty() {
            parts.push("no food".into());
        }
        if row.yeast.is_none() {
            parts.push("no yeast".into());
        } else if row.yeast != usual.yeast || unlike(row.yeast_g, usual.yeast_g) {
            let kind = match row.yeast {
                Some(YeastKind::ActiveDry) => "active dry yeast",
                Some(YeastKind::Compressed) => "compressed yeast",
                Some(YeastKind::Instant) | None => "instant yeast",
            };
            parts.push(format!("{kind} {} g", plainly(row.yeast_g)));
        }
        if unlike(row.water_ml, usual.water_ml) {
            parts.push(format!("water {} mL", plainly(row.water_ml)));
        }
        if unlike(row.water_celsius, usual.water_celsius) {
            parts.push(format!("water of {} °C", plainly(row.water_celsius)));
        }
        if row.lying != usual.lying || row.tray_celsius != usual.tray_celsius {
            parts.push(match (row.lying, row.tray_celsius) {
                (Lying::Tray, Some(celsius)) => format!("tray of {} °C", plainly(celsius)),
                (lying, _) => format!("on the {}", lying.word()),
            });
        }
        if unlike(row.bag_width_mm, usual.bag_width_mm)
            || unlike(row.bag_height_mm, usual.bag_height_mm)
        {
            let (width, height) = (plainly(row.bag_width_mm), plainly(row.bag_height_mm));
            parts.push(format!("bag of {width} x {height} mm"));
        }
        if unlike(row.card_length_mm, usual.card_length_mm)
            || unlike(row.card_width_mm, usual.card_width_mm)
        {
            let (long, short) = (plainly(row.card_length_mm), plainly(row.card_width_mm));
            parts.push(format!("card of {long} x {short} mm"));
        }
        parts.join(", ")
    }
}

fn unlike(one: f64, other: f64) -> bool {
    (one - other).abs() > 0.005
}
