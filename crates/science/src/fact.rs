//! What a number of the program rests on.

/// How a number came to us.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Status {
    /// Read in the source that is named beside it.
    Sourced,
    /// Worked out from sourced numbers by the formula that is named beside it.
    Derived,
    /// Recalled and not read again: a prior to be replaced by a trial in the room.
    Memory,
}

impl Status {
    /// The one word used in tables and JSON.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sourced => "sourced",
            Self::Derived => "derived",
            Self::Memory => "memory",
        }
    }
}

/// Width of the central 90 % of a normal distribution in its standard deviations (1).
const RANGE_SDS: f64 = 3.29;

/// One constant or parameter with its unit, range and source.
///
/// Each module keeps its numbers as `Fact` constants and reads them through [`Fact::value`],
/// so that the table shown to a reader and the number used by the model cannot differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fact {
    /// Dotted name, such as `yeast.rate_30c`.
    pub name: &'static str,
    /// The value used, in `unit`.
    pub value: f64,
    /// Unit as a UCUM code, such as `mmol/(g.h)` or `1`.
    pub unit: &'static str,
    /// Plausible range (about the central 90 %) in `unit`, where one is known.
    pub range: Option<(f64, f64)>,
    /// How the number came to us.
    pub status: Status,
    /// Where the number comes from: author, year, title or journal, table or equation.
    pub source: &'static str,
}

impl Fact {
    /// A number read in `source`, in `unit`, without a range.
    pub const fn sourced(
        name: &'static str,
        value: f64,
        unit: &'static str,
        source: &'static str,
    ) -> Self {
        Self { name, value, unit, range: None, status: Status::Sourced, source }
    }

    /// A number worked out as `source` says, in `unit`, without a range.
    pub const fn derived(
        name: &'static str,
        value: f64,
        unit: &'static str,
        source: &'static str,
    ) -> Self {
        Self { status: Status::Derived, ..Self::sourced(name, value, unit, source) }
    }

    /// A number recalled and not read again, in `unit`, without a range.
    pub const fn memory(
        name: &'static str,
        value: f64,
        unit: &'static str,
        source: &'static str,
    ) -> Self {
        Self { status: Status::Memory, ..Self::sourced(name, value, unit, source) }
    }

    /// The same number with its plausible range (about the central 90 %) in its own unit.
    pub const fn within(self, range: (f64, f64)) -> Self {
        Self { range: Some(range), ..self }
    }

    /// Standard deviation of a normal number whose central 90 % is the range (in the fact's unit); 0 without a
    /// range.
    pub fn sd(&self) -> f64 {
        self.range.map_or(0.0, |(low, high)| (high - low) / RANGE_SDS)
    }

    /// Standard deviation of the logarithm of a number whose central 90 % is the range (1); 0 without a
    /// range.
    pub fn log_sd(&self) -> f64 {
        self.range.map_or(0.0, |(low, high)| libm::log(high / low) / RANGE_SDS)
    }
}
