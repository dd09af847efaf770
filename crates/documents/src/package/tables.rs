//! A flat table of the tables of a package: every column with its kind, unit and range.

use barm_domain::shared::{Item, Lying, Measure, Part, Rule};

/// What the cells of a column are.
#[derive(Debug, Clone, Copy)]
pub enum Kind {
    /// Text of that pattern (regular expression).
    Code(&'static str),
    /// One of these words.
    OneOf(fn() -> Vec<&'static str>),
    /// A whole number in that range.
    Integer(u32, u32),
    /// A number in that range.
    Number(f64, f64),
    /// `true` or `false`.
    Boolean,
}

/// A column.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Its head.
    pub name: &'static str,
    /// What its cells are.
    pub kind: Kind,
    /// Their unit in UCUM, if they have one.
    pub unit: Option<&'static str>,
    /// Whether no cell may be blank.
    pub required: bool,
    /// What it holds.
    pub says: &'static str,
}

/// A table.
#[derive(Debug, Clone, Copy)]
pub struct Table {
    /// Its name; the file is called so, with `.csv` behind it.
    pub name: &'static str,
    /// What a row is.
    pub says: &'static str,
    /// Its columns, in order.
    pub fields: &'static [Field],
    /// The columns by which a row is known; none if rows may be alike.
    pub key: &'static [&'static str],
    /// Columns whose cells stand in another table: column, table, column there.
    pub links: &'static [(&'static str, &'static str, &'static str)],
}

/// Codes of bags.
const BAG: Kind = Kind::Code("^P[1-9][0-9]?-[0-9]{2}[A-Z]-[0-9A-Z]$");
/// Codes of treatments.
const TREATMENT: Kind = Kind::Code("^T[0-9]{2,3}$");
const SIZE: Kind = Kind::Number(20.0, 1000.0);
const LIQUID: Kind = Kind::Number(0.0, 5000.0);
const WARMTH: Kind = Kind::Number(0.0, 100.0);
const MINUTES: Kind = Kind::Number(0.0, 10_000.0);

const fn field(name: &'static str, kind: Kind, says: &'static str) -> Field {
    Field { name, kind, unit: None, required: true, says }
}

impl Field {
    const fn in_unit(self, unit: &'static str) -> Self {
        Self { unit: Some(unit), ..self }
    }

    const fn or_blank(self) -> Self {
        Self { required: false, ..self }
    }
}

/// The one column that may be missing: others than us may not know it.
pub(super) const QUESTION: &str = "question";

/// Words for kinds of yeast, and for none.
pub(super) const YEASTS: [&str; 4] = ["none", "active-dry", "instant", "compressed"];

/// All tables, in the order in which they are written.
pub const TABLES: [Table; 6] = [
    Table {
        name: "treatments",
        says: "One way of making a bag, but for its ingredients",
        fields: &[
            field("treatment", TREATMENT, "code of the treatment"),
            field(QUESTION, Kind::Integer(1, 999), "number of the class's question it answers")
                .or_blank(),
            field("compared_with", TREATMENT, "the treatment it is compared with").or_blank(),
            field("control", Kind::Boolean, "whether it is a shared control bag"),
            field("bag_width_mm", SIZE, "inner width of the zip bag").in_unit("mm"),
            field("bag_height_mm", SIZE, "inner height of the zip bag up to the zip")
                .in_unit("mm"),
            field("card_length_mm", SIZE, "long side of the card on the bag").in_unit("mm"),
            field("card_width_mm", SIZE, "short side of the card on the bag").in_unit("mm"),
            field("water_mL", LIQUID, "water in the bag").in_unit("mL"),
            field("water_Cel", WARMTH, "temperature of the water as poured").in_unit("Cel"),
            field("yeast", Kind::OneOf(|| YEASTS.to_vec()), "kind of baker's yeast"),
            field("yeast_g", Kind::Number(0.0, 1000.0), "yeast in the bag").in_unit("g"),
            field(
                "lying",
                Kind::OneOf(|| Lying::ALL.map(Lying::word).to_vec()),
                "where the bag lies",
            ),
            field("tray_Cel", WARMTH, "temperature of the tray of water, if it lies in one")
                .in_unit("Cel")
                .or_blank(),
        ],
        key: &["treatment"],
        links: &[("compared_with", "", "treatment")],
    },
    Table {
        name: "ingredients",
        says: "Something that goes into the bags of a treatment beside water and yeast",
        fields: &[
            field("treatment", TREATMENT, "code of the treatment"),
            field(
                "part",
                Kind::OneOf(|| Part::ALL.map(Part::word).to_vec()),
                "as what it goes in",
            ),
            field(
                "item",
                Kind::OneOf(|| Item::all().map(Item::id).collect()),
                "food or enzyme product; own-label is a food known by its nutrition label only",
            ),
            field("amount", LIQUID, "how much, in the unit of the next column"),
            field(
                "measure",
                Kind::OneOf(|| Measure::ALL.map(Measure::ucum).to_vec()),
                "unit of the amount (UCUM): gram, milliliter, drop, or pieces such as tablets",
            ),
        ],
        key: &[],
        links: &[("treatment", "treatments", "treatment")],
    },
    Table {
        name: "bags",
        says: "One bag: the experimental unit",
        fields: &[
            field("bag", BAG, "code of the bag: period, group, letter, check character"),
            field("period", Kind::Integer(1, 99), "class period, from the code"),
            field(
                "group",
                Kind::Integer(0, 99),
                "group that made it, from the code; 0 is the teacher",
            ),
            field("treatment", TREATMENT, "how it was made"),
            field("replicate", Kind::Integer(1, 999), "which bag of that treatment it is"),
            field("room_Cel", Kind::Number(0.0, 50.0), "temperature of the room")
                .in_unit("Cel"),
            field(
                "pressure_hPa",
                Kind::Number(400.0, 1100.0),
                "air pressure, to the nearest 10",
            )
            .in_unit("hPa"),
        ],
        key: &["bag"],
        links: &[("treatment", "treatments", "treatment")],
    },
    Table {
        name: "readings",
        says: "One height of a bag's card, read with a ruler",
        fields: &[
            field("bag", BAG, "code of the bag"),
            field("minute", MINUTES, "time after the bag's own zero reading").in_unit("min"),
            field("height_mm", Kind::Number(0.0, 1000.0), "height of the card above the bench")
                .in_unit("mm"),
        ],
        key: &["bag", "minute"],
        links: &[("bag", "bags", "bag")],
    },
    Table {
        name: "set-aside",
        says: "A bag that the class left out of its comparisons by a rule agreed before the day",
        fields: &[
            field("bag", BAG, "code of the bag"),
            field("rule", Kind::OneOf(|| Rule::ALL.map(Rule::word).to_vec()), "the rule"),
        ],
        key: &["bag"],
        links: &[("bag", "bags", "bag")],
    },
    Table {
        name: "meter",
        says: "What a hand-held breath meter showed of a bag's gas; it compares bags, no more",
        fields: &[
            field("bag", BAG, "code of the bag"),
            field("turn", Kind::Integer(1, 9999), "which push of the period it was").or_blank(),
            field("minute", MINUTES, "time after the bag's own zero reading")
                .in_unit("min")
                .or_blank(),
            field("percent", WARMTH, "as the display showed it, made for breath").in_unit("%"),
            field("liquid_Cel", WARMTH, "temperature of the bag's liquid")
                .in_unit("Cel")
                .or_blank(),
            field("gas_mL", LIQUID, "gas of the bag in the syringe").in_unit("mL"),
            field("air_mL", LIQUID, "clean air added to it").in_unit("mL"),
        ],
        key: &[],
        links: &[("bag", "bags", "bag")],
    },
];
