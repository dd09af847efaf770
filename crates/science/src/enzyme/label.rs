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
    /// Alpha-amylase (SKB): 1 g soluble starch dextrinized per hour at 30 °C, in excess of
    /// beta-amylase.
    Dextrinizing,
    /// Alpha-amylase of malt (DU): the same at 20 °C.
    MaltDextrinizing,
    /// Bacterial alpha-amylase (BAU): 1 mg starch dextrinized per minute under the maker's
    /// conditions.
    BacterialAmylase,
    /// Diastatic power of malt (°WK, a gram): 1 g maltose from starch by 100 g malt in 30 min at
    /// 20 °C.
    WindischKolbach,
    /// Diastatic power of malt (°L, a gram): °WK = 3.5 °L − 16.
    Lintner,
    /// Alpha-galactosidase (GalU): 1 µmol p-nitrophenol from its galactoside per minute at 37 °C,
    /// pH 5.5.
    Galactosidase,
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
const DU: Fact = Fact::derived(
    "enzyme.label.du",
    283.0,
    "umol/min",
    "1 g/h = 102.8 umol glucose units/min at 20 °C (unit of malt analysis, from memory), carried \
     to 37 °C with 45 kJ/mol",
)
.within((140.0, 570.0));
const BAU: Fact = Fact::derived(
    "enzyme.label.bau",
    6.17,
    "umol/min",
    "1 mg/min = 6.17 umol glucose units/min; the maker's temperature is not known",
)
.within((2.0, 12.0));
const WK: Fact = Fact::derived(
    "enzyme.label.windisch_kolbach",
    5.36,
    "umol/min",
    "1 g maltose by 100 g in 30 min = 1.947 umol glucose units/min by 1 g at 20 °C (unit from \
     memory), carried to 37 °C with 45 kJ/mol",
)
.within((3.0, 9.0));
const LINTNER: Fact = Fact::derived(
    "enzyme.label.lintner",
    18.8,
    "umol/min",
    "3.5 °WK for each, less 16 °WK (trade tables, from memory)",
)
.within((10.5, 31.5));
const GALU: Fact = Fact::memory(
    "enzyme.label.galu",
    0.2,
    "umol/min",
    "raffinose and stachyose are split at a fifth of the rate of the assay's substrate or so, from \
     memory",
)
.within((0.05, 0.6));
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
pub const FACTS: &[Fact] =
    &[FCC, NEUTRAL, AGU, GAU, SKB, DU, BAU, WK, LINTNER, GALU, SUMNER, IU];

/// Diastatic power in °WK of one in °L: 3.5 °L − 16, never below none (trade tables, from memory).
pub const fn windisch_kolbach(lintner: f64) -> f64 {
    let degrees = 3.5 * lintner - 16.0;
    if degrees > 0.0 { degrees } else { 0.0 }
}

impl LabelUnit {
    /// Activity of one such unit (µmol/min at the reference temperature) with its range.
    pub const fn micromoles_per_min(self) -> Fact {
        match self {
            Self::FccLactase => FCC,
            Self::NeutralLactase => NEUTRAL,
            Self::Amyloglucosidase => AGU,
            Self::GlucoseGram => GAU,
            Self::Dextrinizing => SKB,
            Self::MaltDextrinizing => DU,
            Self::BacterialAmylase => BAU,
            Self::WindischKolbach => WK,
            Self::Lintner => LINTNER,
            Self::Galactosidase => GALU,
            Self::Sumner => SUMNER,
            Self::International => IU,
        }
    }

    /// Activity (µmol/min at the reference temperature) of so many units, as a label says them.
    ///
    /// For most units that is a plain product; the degrees of Lintner do not begin at zero.
    pub const fn activity(self, units: f64) -> f64 {
        match self {
            Self::Lintner => windisch_kolbach(units) * WK.value,
            _ => units * self.micromoles_per_min().value,
        }
    }

    /// Standard deviation of the logarithm of that activity (1), from its range taken as the
    /// central 90 %.
    pub fn log_sd(self) -> f64 {
        self.micromoles_per_min().log_sd()
    }

    /// The unit of that abbreviation, in any case: FCC, ALU, NLU, AGU, GAU, SKB, DU, BAU, °WK, °L,
    /// GalU, SU, IU, U; the sign of a degree may be left out.
    pub fn named(name: &str) -> Option<Self> {
        Some(match name.trim().trim_start_matches('°').to_lowercase().as_str() {
            "fcc" | "alu" => Self::FccLactase,
            "nlu" => Self::NeutralLactase,
            "agu" => Self::Amyloglucosidase,
            "gau" => Self::GlucoseGram,
            "skb" => Self::Dextrinizing,
            "du" => Self::MaltDextrinizing,
            "bau" => Self::BacterialAmylase,
            "wk" => Self::WindischKolbach,
            "l" | "lintner" => Self::Lintner,
            "galu" => Self::Galactosidase,
            "su" => Self::Sumner,
            "iu" | "u" => Self::International,
            _ => return None,
        })
    }
}
