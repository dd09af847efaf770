//! Ranges of the laws of enzymes and starch.

use super::{ACIDITY, CARRIED_ON, TEMPERATURE, Watched};
use crate::model::validity::Law;
use crate::setup::EnzymeKind;

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

/// Laws of this file.
pub(super) static WATCHED: &[Watched] = &[
    Watched {
        law: &Law {
            name: "enzyme.heat of starch's enzymes",
            quantity: TEMPERATURE,
            unit: "°C",
            holds: (5.0, 70.0),
            outside: CARRIED_ON,
            source: "activities and losses were published for 25 to 70 °C, see their facts; the cold end \
                     is judgement",
        },
        read: |scene| scene.of_enzyme(STARCH),
    },
    Watched {
        law: &Law {
            name: "enzyme.heat of lactase and invertase",
            quantity: TEMPERATURE,
            unit: "°C",
            holds: (0.0, 60.0),
            outside: CARRIED_ON,
            source: "lactase at 5 to 60 °C, invertase at 0 to 50 °C (I. W. Sizer, J. Gen. Physiol. 21, \
                     695 (1938), range from memory), see their facts",
        },
        read: |scene| scene.of_enzyme(SUGARS),
    },
    Watched {
        law: &Law {
            name: "enzyme.acidity",
            quantity: ACIDITY,
            unit: "",
            holds: (3.0, 9.0),
            outside: CARRIED_ON,
            source: "suppliers' sheets of enzymes end there, from memory",
        },
        read: |scene| scene.ph_of_enzyme(),
    },
    Watched {
        law: &Law {
            name: "enzyme.stock",
            quantity: "age of an enzyme solution",
            unit: "min",
            holds: (0.0, 480.0),
            outside: CARRIED_ON,
            source: "a school day; nothing is known of older ones without stabilizer, judgement",
        },
        read: |scene| scene.oldest_solution(),
    },
    Watched {
        law: &Law {
            name: "starch.cooking",
            quantity: "raw starch as a share of starch and water",
            unit: "",
            holds: (0.0, 0.4),
            outside: CARRIED_ON,
            source: "with less than about 1.5 g of water for a gram, granules melt later and over a \
                     wider range; from memory",
        },
        read: |scene| scene.starch_that_cooks(),
    },
];
