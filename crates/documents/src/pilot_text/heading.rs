//! Which rows follow, and what their columns hold.

use super::cell::Kind;
use crate::readings::table::Row;
use barm_domain::amount::{minutes, number};
use barm_domain::nearest::plain;

/// A section of the file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Section {
    /// Weighed teaspoons.
    Spoons,
    /// The bag of plain water.
    Cooling,
    /// Air from the syringe.
    Syringe,
    /// What went into bags.
    Made,
    /// Heights of bags.
    Bags,
    /// The meter over ethanol.
    Ethanol,
}

/// First cells of headings.
const WORDS: &[(&str, Section)] = &[
    ("spoon", Section::Spoons),
    ("spoons", Section::Spoons),
    ("teaspoon", Section::Spoons),
    ("teaspoons", Section::Spoons),
    ("cooling", Section::Cooling),
    ("plain water", Section::Cooling),
    ("syringe", Section::Syringe),
    ("air", Section::Syringe),
    ("made", Section::Made),
    ("bag", Section::Bags),
    ("bags", Section::Bags),
    ("ethanol", Section::Ethanol),
];

/// Headings of further columns: the word they hold, and what they mean.
const COLUMNS: &[(Section, &str, Kind, &str)] = &[
    (Section::Spoons, "mass", Kind::Mass, "mass"),
    (Section::Spoons, "weight", Kind::Mass, "mass"),
    (Section::Cooling, "temperature", Kind::Celsius, "temperature"),
    (Section::Syringe, "height", Kind::Height, "height"),
    (Section::Bags, "minute", Kind::Minute, "minute"),
    (Section::Bags, "time", Kind::Minute, "minute"),
    (Section::Bags, "height", Kind::Height, "height"),
    (Section::Made, "yeast", Kind::Amount, "yeast"),
    (Section::Made, "food", Kind::Amount, "food"),
    (Section::Made, "sugar", Kind::Amount, "food"),
    (Section::Made, "tray", Kind::Celsius, "tray"),
    (Section::Made, "temperature", Kind::Celsius, "temperature"),
    (Section::Made, "water", Kind::Water, "water"),
    (Section::Ethanol, "temperature", Kind::Celsius, "temperature"),
    (Section::Ethanol, "meter", Kind::Meter, "meter"),
];

/// A column of a section.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Column {
    /// What it holds.
    pub(super) kind: Kind,
    /// Which of the section's columns it is, such as `height`.
    pub(super) role: &'static str,
    /// The unit of the heading, as written.
    pub(super) unit: Option<String>,
    /// The minute of a column of heights, in a table with a row a bag.
    pub(super) minute: Option<f64>,
}

/// A heading with its columns.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Heading {
    pub(super) section: Section,
    /// One for each cell; nothing for a column that is not known.
    pub(super) columns: Vec<Option<Column>>,
}

impl Section {
    /// What its first column holds.
    const fn first(self) -> Kind {
        match self {
            Self::Spoons | Self::Made | Self::Bags => Kind::Label,
            Self::Cooling => Kind::Minute,
            Self::Syringe => Kind::Air,
            Self::Ethanol => Kind::Strength,
        }
    }

    /// A heading of it.
    pub(super) const fn example(self) -> &'static str {
        match self {
            Self::Spoons => "spoon, mass (g)",
            Self::Cooling => "cooling, temperature (°C)",
            Self::Syringe => "syringe (mL), height (mm)",
            Self::Made => "made, yeast, food, water, temperature, tray",
            Self::Bags => "bag, 0, 5, 10, 15, 20, 25, 30",
            Self::Ethanol => "ethanol (%), meter (%)",
        }
    }
}

impl Heading {
    /// The heading that stands in a row, if it is one.
    pub(super) fn of(row: &Row) -> Option<Self> {
        let (first, unit) = parted(row.cell(0));
        let section = WORDS.iter().find(|(word, _)| plain(word) == plain(first))?.1;
        let rest = row.cells.iter().skip(1).map(|cell| column(section, cell));
        // A row of data has no other heading.
        let first = Column {
            kind: section.first(),
            role: "first",
            unit: unit.map(str::to_owned),
            minute: None,
        };
        Some(Self { section, columns: std::iter::once(Some(first)).chain(rest).collect() })
    }

    /// The place of a column.
    pub(super) fn place(&self, role: &str) -> Option<usize> {
        let is = |column: &Option<Column>| column.as_ref().is_some_and(|own| own.role == role);
        self.columns.iter().position(is)
    }
}

/// A heading and the unit in brackets after it.
fn parted(cell: &str) -> (&str, Option<&str>) {
    match cell.split_once('(') {
        Some((word, rest)) => (word.trim(), Some(rest.trim_end_matches(')').trim())),
        None => (cell.trim(), None),
    }
}

fn column(section: Section, cell: &str) -> Option<Column> {
    let (word, unit) = parted(cell);
    let unit = unit.map(str::to_owned);
    if section == Section::Bags
        && let Some(minute) = number(word).ok().or_else(|| minutes(word).ok())
    {
        return Some(Column { kind: Kind::Height, role: "at", unit, minute: Some(minute) });
    }
    let word = word.to_lowercase();
    let found = COLUMNS
        .iter()
        .find(|(of, part, ..)| *of == section && word.split_whitespace().any(|w| w == *part))?;
    Some(Column { kind: found.2, role: found.3, unit, minute: None })
}
