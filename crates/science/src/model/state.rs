//! The state of a bag: which number stands where.

use crate::setup::EnzymeKind;

/// Number of kinds of enzyme that are followed.
pub const ENZYME_PLACES: usize = 8;

/// Number of states.
pub const STATES: usize = ENZYMES + ENZYME_PLACES;

/// State of one bag. Amounts of carbohydrate are mmol of hexose units, whatever they are bound in,
/// so that splitting a sugar moves an amount from one place to another.
pub type State = [f64; STATES];

/// Temperature (°C).
pub const CELSIUS: usize = 0;
/// Awake share of the yeast (1).
pub const AWAKE: usize = 1;
/// What heat has left of the yeast, alive and unworn (1).
pub const ALIVE: usize = 2;
/// Induction of maltose uptake (1).
pub const INDUCED: usize = 3;
/// Induction of galactose uptake (1).
pub const GALACTOSE_INDUCED: usize = 4;
/// Yeast's reserves, as trehalose (mmol hexose units).
pub const RESERVE: usize = 5;
/// Starch in raw granules (mmol hexose units).
pub const RAW: usize = 6;
/// Cooked or damaged starch (mmol hexose units).
pub const COOKED: usize = 7;
/// Dextrin (mmol hexose units).
pub const DEXTRIN: usize = 8;
/// Maltotriose (mmol hexose units).
pub const MALTOTRIOSE: usize = 9;
/// Raffinose and its like (mmol hexose units).
pub const GALACTOSIDES: usize = 10;
/// Melibiose, which is raffinose without its fructose (mmol hexose units).
pub const MELIBIOSE: usize = 11;
/// Maltose (mmol hexose units).
pub const MALTOSE: usize = 12;
/// Sucrose (mmol hexose units).
pub const SUCROSE: usize = 13;
/// Lactose (mmol hexose units).
pub const LACTOSE: usize = 14;
/// Galactose (mmol).
pub const GALACTOSE: usize = 15;
/// Glucose (mmol).
pub const GLUCOSE: usize = 16;
/// Fructose (mmol).
pub const FRUCTOSE: usize = 17;
/// Inorganic carbon in the liquid, in all forms (mmol).
pub const DISSOLVED: usize = 18;
/// Carbon dioxide in the gas (mmol).
pub const GAS: usize = 19;
/// Carbon dioxide that went through the film (mmol).
pub const PERMEATED: usize = 20;
/// Ethanol (mmol).
pub const ETHANOL: usize = 21;
/// Carbon in glycerol, acids and cells made on the side (mmol of carbon).
pub const BYPRODUCT: usize = 22;
/// Water used up by splitting (mmol).
pub const WATER_USED: usize = 23;
/// First of the activities left (mmol/min at the enzymes' reference temperature).
pub const ENZYMES: usize = 24;

/// Kinds of enzyme in the order of their states.
pub const ENZYME_ORDER: [EnzymeKind; ENZYME_PLACES] = [
    EnzymeKind::Glucoamylase,
    EnzymeKind::FungalAlphaAmylase,
    EnzymeKind::BacterialAlphaAmylase,
    EnzymeKind::NeutralLactase,
    EnzymeKind::AcidLactase,
    EnzymeKind::Invertase,
    EnzymeKind::BetaAmylase,
    EnzymeKind::AlphaGalactosidase,
];

/// Place of a kind of enzyme in [`ENZYME_ORDER`].
pub const fn enzyme_place(kind: EnzymeKind) -> usize {
    match kind {
        EnzymeKind::Glucoamylase => 0,
        EnzymeKind::FungalAlphaAmylase => 1,
        EnzymeKind::BacterialAlphaAmylase => 2,
        EnzymeKind::NeutralLactase => 3,
        EnzymeKind::AcidLactase => 4,
        EnzymeKind::Invertase => 5,
        EnzymeKind::BetaAmylase => 6,
        EnzymeKind::AlphaGalactosidase => 7,
    }
}

/// All states that are hexose units.
pub const CARBOHYDRATES: [usize; 13] = [
    RESERVE,
    RAW,
    COOKED,
    DEXTRIN,
    MALTOTRIOSE,
    GALACTOSIDES,
    MELIBIOSE,
    MALTOSE,
    SUCROSE,
    LACTOSE,
    GALACTOSE,
    GLUCOSE,
    FRUCTOSE,
];
