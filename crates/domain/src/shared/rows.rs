//! The rows of shared data, table by table.

use super::{Item, Measure, Part, Rule, TreatmentCode};
use crate::code::BagCode;
use barm_science::setup::YeastKind;

/// How a bag lies while it works.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Lying {
    /// Flat on the bench.
    Bench,
    /// Between dry towels.
    Towel,
    /// In a tray of warm water.
    Tray,
}

impl Lying {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Bench, Self::Towel, Self::Tray];

    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Bench => "bench",
            Self::Towel => "towel",
            Self::Tray => "tray",
        }
    }
}

/// One way of making a bag, but for its [ingredients](IngredientRow).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TreatmentRow {
    /// Its code.
    pub code: TreatmentCode,
    /// Which question of the class it answers, 1 to 999; none for a shared control, and where it is
    /// not known.
    pub question: Option<u16>,
    /// The treatment it is compared with.
    pub beside: Option<TreatmentCode>,
    /// Whether it is a shared control.
    pub control: bool,
    /// Inner width of the bag (mm), 20 to 1000.
    pub bag_width_mm: f64,
    /// Inner height of the bag up to the zip (mm), 20 to 1000.
    pub bag_height_mm: f64,
    /// Long side of the card (mm), 20 to 1000.
    pub card_length_mm: f64,
    /// Short side of the card (mm), 20 to 1000.
    pub card_width_mm: f64,
    /// Water (mL), 0 to 5000.
    pub water_ml: f64,
    /// Temperature of the water as poured (°C), 0 to 100.
    pub water_celsius: f64,
    /// Kind of yeast; none without yeast.
    pub yeast: Option<YeastKind>,
    /// Yeast (g), 0 to 1000.
    pub yeast_g: f64,
    /// How the bag lies.
    pub lying: Lying,
    /// Temperature of the tray at the zero reading (°C), 0 to 100, if it lies in one.
    pub tray_celsius: Option<f64>,
}

/// Something that goes into the bags of a treatment beside water and yeast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IngredientRow {
    /// The treatment.
    pub treatment: TreatmentCode,
    /// As what it goes in.
    pub part: Part,
    /// What it is.
    pub item: Item,
    /// How much, 0 to 5000, in `measure`.
    pub amount: f64,
    /// In what that is measured.
    pub measure: Measure,
}

/// One bag. Its period and its group stand in its code.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BagRow {
    /// Its code.
    pub code: BagCode,
    /// How it was made.
    pub treatment: TreatmentCode,
    /// Which bag of that treatment it is, 1 to 999.
    pub replicate: u32,
    /// Temperature of the room (°C), 0 to 50.
    pub room_celsius: f64,
    /// Air pressure at the bench (hPa), 400 to 1100, to the nearest 10, which names no place.
    pub pressure_hpa: f64,
}

/// One ruler reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingRow {
    /// The bag.
    pub bag: BagCode,
    /// Minutes after the bag's own zero reading, 0 to 10000.
    pub minute: f64,
    /// Height of the card above the bench (mm), 0 to 1000; the zero reading is not taken off.
    pub height_mm: f64,
}

/// A bag that was set aside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AsideRow {
    /// The bag.
    pub bag: BagCode,
    /// The rule.
    pub rule: Rule,
}

/// What a breath meter showed of a bag's gas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterRow {
    /// The bag.
    pub bag: BagCode,
    /// Which push of the period it was, 1 to 9999, if that was noted.
    pub turn: Option<u32>,
    /// Minutes after the bag's own zero reading, 0 to 10000, if that was noted.
    pub minute: Option<f64>,
    /// As shown (%), 0 to 100; the display is made for breath.
    pub percent: f64,
    /// Temperature of the liquid (°C), 0 to 100, if it was read.
    pub celsius: Option<f64>,
    /// Gas of the bag in the syringe (mL), above 0 to 5000.
    pub gas_ml: f64,
    /// Clean air added to it (mL), 0 to 5000.
    pub air_ml: f64,
}

/// All rows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rows {
    /// Treatments.
    pub treatments: Vec<TreatmentRow>,
    /// What goes into their bags.
    pub ingredients: Vec<IngredientRow>,
    /// Bags.
    pub bags: Vec<BagRow>,
    /// Readings.
    pub readings: Vec<ReadingRow>,
    /// Bags set aside.
    pub set_aside: Vec<AsideRow>,
    /// Readings of the meter.
    pub meter: Vec<MeterRow>,
}

impl Rows {
    /// Puts every table into the order of its codes and minutes.
    pub(super) fn sort(&mut self) {
        self.treatments.sort_by_key(|row| row.code);
        self.ingredients.sort_by(|a, b| {
            let key = |row: &IngredientRow| (row.treatment, row.part, row.item, row.measure);
            key(a).cmp(&key(b)).then(a.amount.total_cmp(&b.amount))
        });
        self.bags.sort_by_key(|row| row.code);
        self.readings.sort_by(|a, b| a.bag.cmp(&b.bag).then(a.minute.total_cmp(&b.minute)));
        self.set_aside.sort_by_key(|row| row.bag);
        // Whatever order they came in, the same rows make the same table.
        self.meter.sort_by(|a, b| {
            let minute = |row: &MeterRow| row.minute.unwrap_or(f64::INFINITY);
            let celsius = |row: &MeterRow| row.celsius.unwrap_or(f64::INFINITY);
            (a.bag.cmp(&b.bag))
                .then(a.turn.cmp(&b.turn))
                .then(minute(a).total_cmp(&minute(b)))
                .then(a.percent.total_cmp(&b.percent))
                .then(celsius(a).total_cmp(&celsius(b)))
                .then(a.gas_ml.total_cmp(&b.gas_ml))
                .then(a.air_ml.total_cmp(&b.air_ml))
        });
    }
}
