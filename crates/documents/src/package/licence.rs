//! Licences for data.

/// A licence under which data can be given away.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Licence {
    /// Use with credit.
    #[default]
    CcBy,
    /// Use with credit, and pass on alike.
    CcBySa,
    /// No condition at all.
    Cc0,
    /// For databases: use with credit.
    OdcBy,
}

impl Licence {
    /// All that can be chosen.
    pub const ALL: [Self; 4] = [Self::CcBy, Self::CcBySa, Self::Cc0, Self::OdcBy];

    /// Its identifier in the SPDX License List (from memory).
    pub const fn id(self) -> &'static str {
        match self {
            Self::CcBy => "CC-BY-4.0",
            Self::CcBySa => "CC-BY-SA-4.0",
            Self::Cc0 => "CC0-1.0",
            Self::OdcBy => "ODC-By-1.0",
        }
    }

    /// Its name.
    pub const fn title(self) -> &'static str {
        match self {
            Self::CcBy => "Creative Commons Attribution 4.0 International",
            Self::CcBySa => "Creative Commons Attribution Share Alike 4.0 International",
            Self::Cc0 => "Creative Commons Zero 1.0 Universal",
            Self::OdcBy => "Open Data Commons Attribution License 1.0",
        }
    }

    /// Where its text stands.
    pub const fn address(self) -> &'static str {
        match self {
            Self::CcBy => "https://creativecommons.org/licenses/by/4.0/",
            Self::CcBySa => "https://creativecommons.org/licenses/by-sa/4.0/",
            Self::Cc0 => "https://creativecommons.org/publicdomain/zero/1.0/",
            Self::OdcBy => "https://opendatacommons.org/licenses/by/1-0/",
        }
    }

    /// The licence of that identifier.
    pub fn of(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|licence| licence.id().eq_ignore_ascii_case(id))
    }
}
