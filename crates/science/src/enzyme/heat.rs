//! How enzymes take warmth: faster at first, then lost for good.

use super::arrhenius::{Arrhenius, per_kelvin};
use crate::fact::Fact;
use crate::setup::EnzymeKind;
use crate::units::Celsius;

/// Temperature to which every activity refers (°C).
pub const REFERENCE: Fact = Fact::derived(
    "enzyme.reference",
    37.0,
    "Cel",
    "chosen; units of other temperatures are carried over by the activation energy",
);

const fn energy(
    name: &'static str,
    value: f64,
    range: (f64, f64),
    source: &'static str,
) -> Fact {
    Fact::memory(name, value, "kJ/mol", source).within(range)
}

const CLONED: &str = "glucoamylase of an A. niger gene in E. coli: 0.34 g/L soluble starch, 606 umol/(mg.min) and \
     half-life 70 to 90 min at 60 to 70 °C (abstract, Korean index)";
const ORYZAE: &str = "A. oryzae ATCC 76080 alpha-amylase: 2.2 g/L, 0.024/min at 50 °C without \
     substrate (abstract)";
const LUDIKHUYZE: &str = "L. Ludikhuyze et al., Food Biotechnol. 10, 105 (1996)";
const SACCHAROMYCES: &str = "lactase of Saccharomyces lactis in milk, J. Dairy Sci. (abstract): \
     97 % lost in 1 min at 60 °C, some loss in 1 h at 40 °C";
const SIZER: &str = "I. W. Sizer, J. Gen. Physiol. 21, 695 (1938): 11.0 to 11.5 kcal/mol";
const MILEK: &str = "J. Miłek, Molecules 26, 4117 (2021): pancreatic amylase 20 to 129 kJ/mol, \
     inactivation 124 to 209 kJ/mol; value for this enzyme from memory";
const RECALLED: &str = "from memory";

/// Activation energies of the reaction (kJ/mol).
const GLUCOAMYLASE_ENERGY: Fact =
    energy("enzyme.glucoamylase.activation", 55.0, (45.0, 70.0), RECALLED);

const FUNGAL_ENERGY: Fact =
    energy("enzyme.fungal_amylase.activation", 45.0, (25.0, 70.0), MILEK);

const BACTERIAL_ENERGY: Fact =
    energy("enzyme.bacterial_amylase.activation", 50.0, (25.0, 70.0), MILEK);

const NEUTRAL_ENERGY: Fact = Fact::derived(
    "enzyme.neutral_lactase.activation",
    65.0,
    "kJ/mol",
    "80 % of milk sugar in 2 h at 31 °C as in 22 h at 5 °C (SCIRP paper 114047): \
     factor 11 over 26 K",
)
.within((50.0, 75.0));

const ACID_ENERGY: Fact =
    energy("enzyme.acid_lactase.activation", 40.0, (30.0, 55.0), RECALLED);

const INVERTASE_ENERGY: Fact =
    Fact::sourced("enzyme.invertase.activation", 47.0, "kJ/mol", SIZER).within((46.0, 48.0));

const BETA_ENERGY: Fact =
    energy("enzyme.beta_amylase.activation", 45.0, (35.0, 60.0), RECALLED);

const GALACTOSIDASE_ENERGY: Fact =
    energy("enzyme.alpha_galactosidase.activation", 50.0, (35.0, 65.0), RECALLED);

/// Loss of activity: rate (1/min) at a temperature (°C), with its activation energy (kJ/mol).
const GLUCOAMYLASE_LOSS: Fact =
    Fact::derived("enzyme.glucoamylase.loss_65c", 0.008_7, "/min", CLONED)
        .within((0.005, 0.015));

const GLUCOAMYLASE_LOSS_ENERGY: Fact =
    energy("enzyme.glucoamylase.loss_activation", 250.0, (200.0, 300.0), RECALLED);

const FUNGAL_LOSS: Fact =
    Fact::sourced("enzyme.fungal_amylase.loss_50c", 0.024, "/min", ORYZAE).within((0.01, 0.05));

const FUNGAL_LOSS_ENERGY: Fact =
    energy("enzyme.fungal_amylase.loss_activation", 200.0, (124.0, 250.0), MILEK);

const BACTERIAL_LOSS: Fact =
    Fact::sourced("enzyme.bacterial_amylase.loss_50c", 6.3e-5, "/min", LUDIKHUYZE)
        .within((3e-5, 2e-4));

const BACTERIAL_LOSS_ENERGY: Fact =
    Fact::sourced("enzyme.bacterial_amylase.loss_activation", 266.0, "kJ/mol", LUDIKHUYZE)
        .within((230.0, 300.0));

const NEUTRAL_LOSS: Fact =
    Fact::derived("enzyme.neutral_lactase.loss_60c", 3.5, "/min", SACCHAROMYCES)
        .within((2.0, 5.0));

const NEUTRAL_LOSS_ENERGY: Fact =
    Fact::derived("enzyme.neutral_lactase.loss_activation", 328.0, "kJ/mol", SACCHAROMYCES)
        .within((270.0, 380.0));

const ACID_LOSS: Fact = Fact::memory(
    "enzyme.acid_lactase.loss_60c",
    0.01,
    "/min",
    "stable to about 59 °C (Klein 2018); value from memory",
)
.within((0.003, 0.03));

const ACID_LOSS_ENERGY: Fact =
    energy("enzyme.acid_lactase.loss_activation", 250.0, (200.0, 300.0), RECALLED);

const INVERTASE_LOSS: Fact =
    Fact::memory("enzyme.invertase.loss_60c", 0.03, "/min", RECALLED).within((0.01, 0.1));

const INVERTASE_LOSS_ENERGY: Fact =
    energy("enzyme.invertase.loss_activation", 300.0, (200.0, 380.0), RECALLED);

const BETA_LOSS: Fact = Fact::memory(
    "enzyme.beta_amylase.loss_65c",
    0.03,
    "/min",
    "malt's beta-amylase is halved within 10 to 60 min at 65 °C (brewers' texts, from memory)",
)
.within((0.012, 0.07));

const BETA_LOSS_ENERGY: Fact =
    energy("enzyme.beta_amylase.loss_activation", 300.0, (200.0, 400.0), RECALLED);

const GALACTOSIDASE_LOSS: Fact = Fact::derived(
    "enzyme.alpha_galactosidase.loss_65c",
    0.11,
    "/min",
    "33 % left after 10 min at 65 °C (a mold's enzyme, as reported; not read)",
)
.within((0.04, 0.3));

const GALACTOSIDASE_LOSS_ENERGY: Fact = energy(
    "enzyme.alpha_galactosidase.loss_activation",
    330.0,
    (250.0, 400.0),
    "all of it left after 2 h at 50 °C (Othman et al., BMC Biotechnol. 23, 3 (2023), as \
     reported), with the loss at 65 °C; from memory",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    REFERENCE,
    GLUCOAMYLASE_ENERGY,
    FUNGAL_ENERGY,
    BACTERIAL_ENERGY,
    NEUTRAL_ENERGY,
    ACID_ENERGY,
    INVERTASE_ENERGY,
    GLUCOAMYLASE_LOSS,
    GLUCOAMYLASE_LOSS_ENERGY,
    FUNGAL_LOSS,
    FUNGAL_LOSS_ENERGY,
    BACTERIAL_LOSS,
    BACTERIAL_LOSS_ENERGY,
    NEUTRAL_LOSS,
    NEUTRAL_LOSS_ENERGY,
    ACID_LOSS,
    ACID_LOSS_ENERGY,
    INVERTASE_LOSS,
    INVERTASE_LOSS_ENERGY,
    BETA_ENERGY,
    GALACTOSIDASE_ENERGY,
    BETA_LOSS,
    BETA_LOSS_ENERGY,
    GALACTOSIDASE_LOSS,
    GALACTOSIDASE_LOSS_ENERGY,
];

/// What temperature does to an enzyme.
///
/// ```text
/// factor = exp( −E/R · (1/Θ − 1/Θ₀) )
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heat {
    reaction: Arrhenius,
    /// Loss of activity (1/min) where its factor is one.
    loss_per_min: f64,
    loss: Arrhenius,
}

/// What temperature does to a kind of enzyme.
pub const fn heat(kind: EnzymeKind) -> Heat {
    let (energy, loss, loss_at, loss_energy) = match kind {
        EnzymeKind::Glucoamylase => {
            (GLUCOAMYLASE_ENERGY, GLUCOAMYLASE_LOSS, 65.0, GLUCOAMYLASE_LOSS_ENERGY)
        }
        EnzymeKind::FungalAlphaAmylase => {
            (FUNGAL_ENERGY, FUNGAL_LOSS, 50.0, FUNGAL_LOSS_ENERGY)
        }
        EnzymeKind::BacterialAlphaAmylase => {
            (BACTERIAL_ENERGY, BACTERIAL_LOSS, 50.0, BACTERIAL_LOSS_ENERGY)
        }
        EnzymeKind::NeutralLactase => (NEUTRAL_ENERGY, NEUTRAL_LOSS, 60.0, NEUTRAL_LOSS_ENERGY),
        EnzymeKind::AcidLactase => (ACID_ENERGY, ACID_LOSS, 60.0, ACID_LOSS_ENERGY),
        EnzymeKind::Invertase => {
            (INVERTASE_ENERGY, INVERTASE_LOSS, 60.0, INVERTASE_LOSS_ENERGY)
        }
        EnzymeKind::BetaAmylase => (BETA_ENERGY, BETA_LOSS, 65.0, BETA_LOSS_ENERGY),
        EnzymeKind::AlphaGalactosidase => {
            (GALACTOSIDASE_ENERGY, GALACTOSIDASE_LOSS, 65.0, GALACTOSIDASE_LOSS_ENERGY)
        }
    };
    Heat {
        reaction: Arrhenius::new(energy.value, REFERENCE.value),
        loss_per_min: loss.value,
        loss: Arrhenius::new(loss_energy.value, loss_at),
    }
}

impl Heat {
    /// Rate of the reaction over its rate at [`REFERENCE`] (1), before any loss.
    pub fn rate(&self, temperature: Celsius) -> f64 {
        self.reaction.at(per_kelvin(temperature))
    }

    /// Activity lost, as a share per minute (1/min).
    pub fn loss(&self, temperature: Celsius) -> f64 {
        self.loss_per_min * self.loss.at(per_kelvin(temperature))
    }
}
