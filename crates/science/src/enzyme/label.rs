//! Activity units on labels, carried over to µmol per minute.
//!
//! No unit converts to another without the same assay; every factor here is therefore wide.

use crate::fact::Fact;

/// A unit in which activity is printed on a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum LabelUnit {
    /// Acid lactase (FCC): 1 µmol o-nitrophenol from its galactoside per minute at 37 °C, pH 4.5.
    FccLactase,
    /// Neutral lactase (NLU): the same at 30 °C, pH 6.5.
    NeutralLactase,
    /// Glucoamylase (AGU): 1 µmol maltose split per minute.
    Amyloglucosidase,
    /// Glucoamylase (GAU): 1 g glucose from starch per hour at 60 °C.
    GlucoseGram,
    /// Alpha-amylase (SKB, also DU): 1 g soluble starch dextrinized per hour at 30 °C.
    Dextrinizing,
    /// Invertase (Sumner): 1 mg sucrose split in 5 min at 20 °C.
    Sumner,
    /// International unit: 1 µmol of product per minute.
    International,
}

const FCC: Fact = Fact::memory(
    "enzyme.label.fcc_lactase",
    0.5,
    "umol/min",
    "lactose is split at about half the rate of the assay's substrate, from memory",
)
.within((0.2, 1.0));
const NEUTRAL: Fact = Fact::memory(
    "enzyme.label.neutral_lactase",
    0.7,
    "umol/min",
    "half the assay's rate for lactose, 1.8 for 30 to 37 °C, 0.8 for a bag less than neutral; \
     from memory",
)
.within((0.2, 1.5));
const AGU: Fact = Fact::memory(
    "enzyme.label.agu",
    10.0,
    "umol/min",
    "2 glucose per maltose, 2.4 for 25 to 37 °C, starch cut a few times faster than \
     maltose; from memory",
)
.within((3.0, 30.0));
const GAU: Fact = Fact::derived(
    "enzyme.label.gau",
    21.2,
    "umol/min",
    "1 g/h = 92.5 umol/min at 60 °C (unit from memory), carried to 37 °C with 55 kJ/mol",
)
.within((12.0, 35.0));
const SKB: Fact = Fact::derived(
    "enzyme.label.skb",
    154.0,
    "umol/min",
    "1 g/h = 103 umol glucose units/min at 30 °C (unit as in encyclopedias, which \
     differ on its temperature), carried to 37 °C with 45 kJ/mol",
)
.within((80.0, 300.0));
const SUMNER: Fact = Fact::derived(
    "enzyme.label.sumner",
    1.68,
    "umol/min",
    "1 mg in 5 min = 0.584 umol/min at 20 °C (unit from memory), carried to 37 °C \
     with 47 kJ/mol",
)
.within((1.0, 3.0));
const IU: Fact = Fact::derived(
    "enzyme.label.international",
    1.0,
    "umol/min",
    "1 umol/min by definition; temperature and substrate of the assay unknown",
)
.within((0.3, 3.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[FCC, NEUTRAL, AGU, GAU, SKB, SUMNER, IU];

impl LabelUnit {
    /// Activity of one such unit (µmol/min at the reference temperature) with its range.
    pub const fn micromoles_per_min(self) -> Fact {
        match self {
            Self::FccLactase => FCC,
            Self::NeutralLactase => NEUTRAL,
            Self::Amyloglucosidase => AGU,
            Self::GlucoseGram => GAU,
            Self::Dextrinizing => SKB,
            Self::Sumner => SUMNER,
            Self::International => IU,
        }
    }

    /// Standard deviation of the logarithm of that activity (1), from its range taken as the
    /// central 90 %.
    pub fn log_sd(self) -> f64 {
        let fact = self.micromoles_per_min();
        fact.range.map_or(0.0, |(low, high)| libm::log(high / low) / 3.29)
    }

    /// The unit of that abbreviation, in any case: FCC, ALU, NLU, AGU, GAU, SKB, DU, SU, IU, U.
    pub fn named(name: &str) -> Option<Self> {
        Some(match name.trim().to_lowercase().as_str() {
            "fcc" | "alu" => Self::FccLactase,
            "nlu" => Self::NeutralLactase,
            "agu" => Self::Amyloglucosidase,
            "gau" => Self::GlucoseGram,
            "skb" | "du" => Self::Dextrinizing,
            "su" => Self::Sumner,
            "iu" | "u" => Self::International,
            _ => return None,
        })
    }
}
