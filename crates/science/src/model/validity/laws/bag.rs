//! Ranges of the laws of gas, liquid, film and card.

use super::{CARRIED_ON, HELD, TEMPERATURE, Watched};
use crate::bag::SIMULATION;
use crate::model::validity::Law;
use crate::units::Celsius;
use crate::{carbonate, card_height, gas, water};

/// Laws of this file.
pub(super) static WATCHED: &[Watched] = &[
    Watched {
        law: &Law {
            name: "carbon_dioxide.salting by temperature",
            quantity: TEMPERATURE,
            unit: "°C",
            holds: (25.0, 60.0),
            outside: HELD,
            source: "constants at 25, 40 and 60 °C, see their facts",
        },
        read: |scene| scene.of_salt(),
    },
    Watched {
        law: &Law {
            name: "carbon_dioxide.salting by salt",
            quantity: "salt in the water",
            unit: "mol/kg",
            holds: (0.0, 4.0),
            outside: CARRIED_ON,
            source: "B. Rumpf et al., J. Solution Chem. 23, 431 (1994): 4 and 6 mol/kg (from memory); \
                     the lower is taken",
        },
        read: |scene| Some(scene.mixture.salt_mol_per_kg),
    },
    Watched {
        law: &Law {
            name: "carbonate.activity",
            quantity: "ionic strength, where acidity is followed",
            unit: "mol/kg",
            holds: (0.0, carbonate::MOST_IONIC.value),
            outside: HELD,
            source: "C. W. Davies, Ion Association (1962), from memory",
        },
        read: |scene| {
            let acidity = &scene.mixture.acidity;
            acidity.followed.then_some(acidity.solutes.ionic)
        },
    },
    Watched {
        law: &Law {
            name: "carbonate.constants",
            quantity: "temperature of the bag, where acidity is followed",
            unit: "°C",
            holds: (0.0, 90.0),
            outside: CARRIED_ON,
            source: "L. N. Plummer, E. Busenberg, Geochim. Cosmochim. Acta 46, 1011 (1982): 0 to 90 °C, \
                     range from memory",
        },
        read: |scene| scene.of_acidity(),
    },
    Watched {
        law: &Law {
            name: "gas.most_steam",
            quantity: "steam's share of the pressure",
            unit: "",
            holds: (0.0, gas::MOST_STEAM.value),
            outside: HELD,
            source: "near boiling the volume of wet gas has no bound",
        },
        read: |scene| {
            let steam = water::vapour_pressure(Celsius(scene.celsius()));
            Some(steam.0 / scene.mixture.pressure.0)
        },
    },
    Watched {
        law: &Law {
            name: "permeation.activation",
            quantity: "temperature of the bag, where gas leaks",
            unit: "°C",
            holds: (0.0, 60.0),
            outside: CARRIED_ON,
            source: "measured from 0 to 23 °C; polyethylene does not change its kind up to 60 °C, \
                     judgement",
        },
        read: |scene| scene.of_leak(),
    },
    Watched {
        law: &card_height::FAMILY,
        read: |scene| {
            let gas = scene.mixture.gas_with_air_ml(scene.y);
            Some(gas / scene.card.curve.room_ml())
        },
    },
    Watched {
        law: &Law {
            name: "card_height.family by size",
            quantity: "short side of the bag",
            unit: "mm",
            holds: (79.0, 275.0),
            outside: CARRIED_ON,
            source: SIMULATION,
        },
        read: |scene| Some(scene.sides().0),
    },
    Watched {
        law: &Law {
            name: "card_height.family by shape",
            quantity: "long side of the bag over its short side",
            unit: "",
            holds: (1.0, 2.2),
            outside: CARRIED_ON,
            source: SIMULATION,
        },
        read: |scene| Some(scene.sides().1),
    },
    Watched {
        law: &Law {
            name: "card_height.family by card",
            quantity: "mass of the card over its area",
            unit: "kg/m²",
            holds: (0.1, 0.5),
            outside: CARRIED_ON,
            source: SIMULATION,
        },
        read: |scene| Some(scene.card_kg_per_m2()),
    },
];
