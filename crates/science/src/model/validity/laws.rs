//! The laws with a range that a bag could leave, a row each.

use super::Law;
use crate::bag::SIMULATION;
use crate::setup::EnzymeKind;
use crate::units::Celsius;
use crate::{carbonate, gas, water};

/// Kinds of enzyme that cut starch.
const STARCH: &[EnzymeKind] = &[
    EnzymeKind::Glucoamylase,
    EnzymeKind::FungalAlphaAmylase,
    EnzymeKind::BacterialAlphaAmylase,
    EnzymeKind::BetaAmylase,
];
/// Kinds of enzyme that split sugars in two.
const SUGARS: &[EnzymeKind] = &[
    EnzymeKind::NeutralLactase,
    EnzymeKind::AcidLactase,
    EnzymeKind::Invertase,
    EnzymeKind::AlphaGalactosidase,
];

const TEMPERATURE: &str = "temperature of the bag";
const HELD: &str = "held at the end of the range";
const CARRIED_ON: &str = "carried on by its formula";

/// All laws with a range that a bag could leave.
pub const LAWS: &[Law] = &[
    Law {
        name: "yeast.response",
        quantity: TEMPERATURE,
        unit: "°C",
        holds: (0.0, 60.0),
        outside: CARRIED_ON,
        source: "the table to which it is fitted ends there",
        read: |scene| scene.of_yeast(),
    },
    Law {
        name: "yeast.slow_loss",
        quantity: TEMPERATURE,
        unit: "°C",
        // Under 20 °C, where nobody measured it, it is too slow to count.
        holds: (0.0, 50.0),
        outside: CARRIED_ON,
        source: "M. Phisalaphong et al., Biochem. Eng. J. 28, 36 (2006), up to 42 °C (from memory); \
                 beyond 50 °C quick death decides, judgement",
        read: |scene| scene.of_yeast(),
    },
    Law {
        name: "yeast.osmotic",
        quantity: "dissolved particles",
        unit: "osmol/L",
        holds: (0.0, 4.0),
        outside: CARRIED_ON,
        source: "sugar to 30 %, salt to 5 % (from memory): 1.7 osmol/L; beyond twice that yeast \
                 stands still anyway, judgement",
        read: |scene| scene.of_yeast().map(|_| scene.mixture.osmol_per_l(scene.y)),
    },
    Law {
        name: "yeast.storage of dry yeast",
        quantity: "temperature on the shelf",
        unit: "°C",
        holds: (5.0, 37.0),
        outside: "carried on, and held under -5 and over 45 °C",
        source: "a trade page on vacuum-packed dry yeast, see its facts",
        read: |scene| scene.stored(false),
    },
    Law {
        name: "yeast.storage of compressed yeast",
        quantity: "temperature on the shelf",
        unit: "°C",
        holds: (0.0, 20.0),
        outside: "carried on, and held under -5 and over 45 °C",
        source: "from memory, see its facts",
        read: |scene| scene.stored(true),
    },
    Law {
        name: "enzyme.heat of starch's enzymes",
        quantity: TEMPERATURE,
        unit: "°C",
        holds: (5.0, 70.0),
        outside: CARRIED_ON,
        source: "activities and losses were published for 25 to 70 °C, see their facts; the cold end \
                 is judgement",
        read: |scene| scene.of_enzyme(STARCH),
    },
    Law {
        name: "enzyme.heat of lactase and invertase",
        quantity: TEMPERATURE,
        unit: "°C",
        holds: (0.0, 60.0),
        outside: CARRIED_ON,
        source: "lactase at 5 to 60 °C, invertase at 0 to 50 °C (I. W. Sizer, J. Gen. Physiol. 21, \
                 695 (1938), range from memory), see their facts",
        read: |scene| scene.of_enzyme(SUGARS),
    },
    Law {
        name: "enzyme.acidity",
        quantity: "pH of the liquid",
        unit: "",
        holds: (3.0, 9.0),
        outside: CARRIED_ON,
        source: "suppliers' sheets of enzymes end there, from memory",
        read: |scene| scene.ph_of_enzyme(),
    },
    Law {
        name: "carbon_dioxide.salting by temperature",
        quantity: TEMPERATURE,
        unit: "°C",
        holds: (25.0, 60.0),
        outside: HELD,
        source: "constants at 25, 40 and 60 °C, see their facts",
        read: |scene| scene.of_salt(),
    },
    Law {
        name: "carbon_dioxide.salting by salt",
        quantity: "salt in the water",
        unit: "mol/kg",
        holds: (0.0, 4.0),
        outside: CARRIED_ON,
        source: "B. Rumpf et al., J. Solution Chem. 23, 431 (1994): 4 and 6 mol/kg (from memory); \
                 the lower is taken",
        read: |scene| Some(scene.mixture.salt_mol_per_kg),
    },
    Law {
        name: "carbonate.activity",
        quantity: "ionic strength, where acidity is followed",
        unit: "mol/kg",
        holds: (0.0, carbonate::MOST_IONIC.value),
        outside: HELD,
        source: "C. W. Davies, Ion Association (1962), from memory",
        read: |scene| {
            let acidity = &scene.mixture.acidity;
            acidity.followed.then_some(acidity.solutes.ionic)
        },
    },
    Law {
        name: "gas.most_steam",
        quantity: "steam's share of the pressure",
        unit: "",
        holds: (0.0, gas::MOST_STEAM.value),
        outside: HELD,
        source: "near boiling the volume of wet gas has no bound",
        read: |scene| {
            let steam = water::vapour_pressure(Celsius(scene.celsius()));
            Some(steam.0 / scene.mixture.pressure.0)
        },
    },
    Law {
        name: "card_height.family",
        quantity: "gas as a share of the room for it",
        unit: "",
        holds: (0.0, 0.93),
        outside: "carried on, and held where the bag is drum-tight",
        source: SIMULATION,
        read: |scene| {
            let gas = scene.mixture.gas_with_air_ml(scene.y);
            Some(gas / scene.card.curve.room_ml())
        },
    },
];
