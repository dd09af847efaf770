//! What an amount measures.

/// What an amount measures, and with it the unit its value is kept in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Dimension {
    /// Mass, in g.
    Mass,
    /// Volume in a jug, cylinder, syringe or pipette, in mL.
    Volume,
    /// Volume in level spoons or cups, in mL.
    Spoon,
    /// Drops, counted.
    Drops,
    /// Packets, tablets, bags and other pieces, counted.
    Pieces,
    /// Temperature, in °C.
    Temperature,
    /// Length, in mm.
    Length,
    /// Duration, in min.
    Duration,
    /// Pressure, in Pa.
    Pressure,
    /// A share of a whole (1).
    Share,
    /// Money, in dollars.
    Money,
}

impl Dimension {
    /// What it is called in a sentence, such as `a temperature`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Mass => "a mass",
            Self::Volume => "a volume",
            Self::Spoon => "a spoon or cup measure",
            Self::Drops => "a number of drops",
            Self::Pieces => "a number of pieces",
            Self::Temperature => "a temperature",
            Self::Length => "a length",
            Self::Duration => "a length of time",
            Self::Pressure => "a pressure",
            Self::Share => "a share of the whole",
            Self::Money => "a price",
        }
    }
}

/// What is wanted in one place: how to say it, and how to write it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    /// What it is called in a sentence, such as `a temperature`.
    pub name: &'static str,
    /// Examples, such as `40 °C or 104 °F`.
    pub example: &'static str,
    /// What may be measured there.
    pub dimensions: &'static [Dimension],
}

impl Wanted {
    /// An amount of something that goes into a bag or a pack.
    pub const AMOUNT: Self = Self {
        name: "an amount",
        example: "1/4 tsp, 2.5 g or 60 mL",
        dimensions: &[
            Dimension::Mass,
            Dimension::Volume,
            Dimension::Spoon,
            Dimension::Drops,
            Dimension::Pieces,
        ],
    };
    /// A temperature.
    pub const TEMPERATURE: Self =
        Self::one("a temperature", "40 °C or 104 °F", &[Dimension::Temperature]);
    /// A length.
    pub const LENGTH: Self = Self::one("a length", "3 mm or 1 3/8 in", &[Dimension::Length]);
    /// A size, one length by another.
    pub const SIZE: Self = Self::one("a size", "165 x 83 mm or 3 x 5 in", &[Dimension::Length]);
    /// A length of time.
    pub const DURATION: Self =
        Self::one("a length of time", "4 min or 3 min 30 s", &[Dimension::Duration]);
    /// Air pressure.
    pub const PRESSURE: Self =
        Self::one("a pressure", "85.6 kPa or 25.3 inHg", &[Dimension::Pressure]);
    /// Height above the sea.
    pub const ALTITUDE: Self =
        Self::one("an altitude", "1400 m or 4600 ft", &[Dimension::Length]);
    /// A share of a whole.
    pub const SHARE: Self = Self::one("a share", "10 %", &[Dimension::Share]);
    /// A price.
    pub const PRICE: Self = Self::one("a price", "$5.49", &[Dimension::Money]);
    /// A number without a unit.
    pub const NUMBER: Self = Self::one("a number", "12, 2.5 or 1 3/8", &[]);

    const fn one(
        name: &'static str,
        example: &'static str,
        dimensions: &'static [Dimension],
    ) -> Self {
        Self { name, example, dimensions }
    }
}
