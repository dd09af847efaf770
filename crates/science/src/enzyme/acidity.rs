//! How enzymes take acid and lye.
//!
//! # Law
//! ```text
//! b(pH) = 1 / (1 + 10^(a − pH) + 10^(pH − l))        factor = b(pH) / b(usual)
//! ```
//! A bell between two groups of the enzyme that must be charged so and so (L. Michaelis, H.
//! Davidsohn, Biochem. Z. 35, 386 (1911), from memory). *a* and *l* are the pH at which acid and lye
//! leave half; at the *usual* pH of the liquid in which an enzyme is used the factor is one, since
//! what is known of its activity in a bag holds there. All pairs are from memory; range pH 3 to 9.
//! Where neither soda nor acid move the liquid's pH, the usual one stands.
//!
//! A mold's alpha-amylase is also lost for good under pH 4.

use crate::fact::Fact;
use crate::setup::EnzymeKind;

const fn side(name: &'static str, value: f64, range: (f64, f64)) -> Fact {
    Fact::memory(name, value, "1", "optimum and width as in suppliers' sheets, from memory")
        .within(range)
}

const GLUCOAMYLASE: [Fact; 2] = [
    side("enzyme.glucoamylase.acid_half", 2.8, (2.3, 3.3)),
    side("enzyme.glucoamylase.lye_half", 6.4, (6.0, 7.0)),
];
const FUNGAL: [Fact; 2] = [
    side("enzyme.fungal_amylase.acid_half", 3.8, (3.5, 4.2)),
    side("enzyme.fungal_amylase.lye_half", 7.5, (6.8, 8.2)),
];
const BACTERIAL: [Fact; 2] = [
    side("enzyme.bacterial_amylase.acid_half", 4.4, (4.0, 4.8)),
    side("enzyme.bacterial_amylase.lye_half", 8.5, (7.8, 9.5)),
];
const NEUTRAL: [Fact; 2] = [
    side("enzyme.neutral_lactase.acid_half", 5.7, (5.3, 6.1)),
    side("enzyme.neutral_lactase.lye_half", 8.0, (7.5, 8.6)),
];
const ACID: [Fact; 2] = [
    side("enzyme.acid_lactase.acid_half", 3.0, (2.5, 3.5)),
    side("enzyme.acid_lactase.lye_half", 6.8, (6.2, 7.4)),
];
const INVERTASE: [Fact; 2] = [
    side("enzyme.invertase.acid_half", 2.8, (2.3, 3.2)),
    side("enzyme.invertase.lye_half", 6.6, (6.2, 7.2)),
];
const BETA: [Fact; 2] = [
    side("enzyme.beta_amylase.acid_half", 3.6, (3.2, 4.0)),
    side("enzyme.beta_amylase.lye_half", 7.3, (6.8, 8.0)),
];
const GALACTOSIDASE: [Fact; 2] = [
    side("enzyme.alpha_galactosidase.acid_half", 3.2, (2.8, 3.6)),
    side("enzyme.alpha_galactosidase.lye_half", 6.8, (6.2, 7.4)),
];

/// pH of a bag of yeast and flour or sugar, where starch's enzymes and invertase are known.
const IN_A_BAG: Fact = Fact::memory(
    "enzyme.usual_ph",
    5.0,
    "1",
    "yeast in water with flour or sugar, from memory",
)
.within((4.0, 5.8));

/// pH of a bag of milk.
const IN_MILK: Fact = Fact::memory(
    "enzyme.usual_ph_milk",
    6.3,
    "1",
    "milk is at 6.6, yeast brings it down a little, from memory",
)
.within((5.8, 6.6));

const ACID_LIMIT: &str = "A. oryzae alpha-amylase under pH 4: 1.19e7 [H+]^1.99 per hour (Chem. Eng. \
     Sci. 51, 37 (1996), abstract)";

/// Loss of fungal alpha-amylase by acid, at 1 mol/L of H⁺ (1/h).
const ACID_LOSS: Fact =
    Fact::sourced("enzyme.fungal_amylase.acid_loss", 1.19e7, "/h", ACID_LIMIT);

/// Order of that loss in H⁺ (1).
const ACID_LOSS_ORDER: Fact =
    Fact::sourced("enzyme.fungal_amylase.acid_loss_order", 1.99, "1", ACID_LIMIT);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    GLUCOAMYLASE[0],
    GLUCOAMYLASE[1],
    FUNGAL[0],
    FUNGAL[1],
    BACTERIAL[0],
    BACTERIAL[1],
    NEUTRAL[0],
    NEUTRAL[1],
    ACID[0],
    ACID[1],
    INVERTASE[0],
    INVERTASE[1],
    BETA[0],
    BETA[1],
    GALACTOSIDASE[0],
    GALACTOSIDASE[1],
    IN_A_BAG,
    IN_MILK,
    ACID_LOSS,
    ACID_LOSS_ORDER,
];

/// How one kind of enzyme takes acid and lye.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bell {
    /// 10^a and 10^(−l).
    acid: f64,
    lye: f64,
    at_usual: f64,
}

/// How a kind of enzyme takes acid and lye.
pub fn bell(kind: EnzymeKind) -> Bell {
    let (sides, usual) = match kind {
        EnzymeKind::Glucoamylase => (GLUCOAMYLASE, IN_A_BAG),
        EnzymeKind::FungalAlphaAmylase => (FUNGAL, IN_A_BAG),
        EnzymeKind::BacterialAlphaAmylase => (BACTERIAL, IN_A_BAG),
        EnzymeKind::NeutralLactase => (NEUTRAL, IN_MILK),
        EnzymeKind::AcidLactase => (ACID, IN_MILK),
        EnzymeKind::Invertase => (INVERTASE, IN_A_BAG),
        EnzymeKind::BetaAmylase => (BETA, IN_A_BAG),
        EnzymeKind::AlphaGalactosidase => (GALACTOSIDASE, IN_A_BAG),
    };
    let [acid, lye] = [sides[0].value, -sides[1].value].map(libm::exp10);
    let mut bell = Bell { acid, lye, at_usual: 1.0 };
    bell.at_usual = bell.at_work(usual.value);
    bell
}

impl Bell {
    /// Rate at a pH over the rate at the usual one (1).
    pub fn at_work(&self, ph: f64) -> f64 {
        let hydrogen = libm::exp10(-ph);
        1.0 / (self.at_usual * (1.0 + self.acid * hydrogen + self.lye / hydrogen))
    }
}

/// Activity lost to acid, as a share per minute (1/min).
pub fn loss_per_min(kind: EnzymeKind, ph: f64) -> f64 {
    match kind {
        EnzymeKind::FungalAlphaAmylase => {
            ACID_LOSS.value * libm::exp10(-ACID_LOSS_ORDER.value * ph) / 60.0
        }
        _ => 0.0,
    }
}
