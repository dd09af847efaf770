//! Ranges of the laws of yeast.

use super::{ACIDITY, CARRIED_ON, HELD, TEMPERATURE, Watched};
use crate::model::validity::Law;

/// Laws of this file.
pub(super) static WATCHED: &[Watched] = &[
    Watched {
        law: &Law {
            name: "yeast.response",
            quantity: TEMPERATURE,
            unit: "°C",
            holds: (0.0, 60.0),
            outside: CARRIED_ON,
            source: "the table to which it is fitted ends there",
        },
        read: |scene| scene.of_yeast(),
    },
    Watched {
        law: &Law {
            name: "yeast.slow_loss",
            quantity: TEMPERATURE,
            unit: "°C",
            // Under 20 °C, where nobody measured it, it is too slow to count.
            holds: (0.0, 50.0),
            outside: CARRIED_ON,
            source: "M. Phisalaphong et al., Biochem. Eng. J. 28, 36 (2006), up to 42 °C (from memory); \
                     beyond 50 °C quick death decides, judgement",
        },
        read: |scene| scene.of_yeast(),
    },
    Watched {
        law: &Law {
            name: "yeast.osmotic",
            quantity: "dissolved particles",
            unit: "osmol/L",
            holds: (0.0, 4.0),
            outside: CARRIED_ON,
            source: "sugar to 30 %, salt to 5 % (from memory): 1.7 osmol/L; beyond twice that yeast \
                     stands still anyway, judgement",
        },
        read: |scene| scene.of_yeast().map(|_| scene.mixture.osmol_per_l(scene.y)),
    },
    Watched {
        law: &Law {
            name: "yeast.acidity",
            quantity: ACIDITY,
            unit: "",
            holds: (2.0, 10.0),
            outside: HELD,
            source: "the table ends there, from memory",
        },
        read: |scene| scene.ph_of_yeast(),
    },
    Watched {
        law: &Law {
            name: "yeast.storage of dry yeast",
            quantity: "temperature on the shelf",
            unit: "°C",
            holds: (5.0, 37.0),
            outside: "carried on, and held under -5 and over 45 °C",
            source: "a trade page on vacuum-packed dry yeast, see its facts",
        },
        read: |scene| scene.stored(false),
    },
    Watched {
        law: &Law {
            name: "yeast.storage of compressed yeast",
            quantity: "temperature on the shelf",
            unit: "°C",
            holds: (0.0, 20.0),
            outside: "carried on, and held under -5 and over 45 °C",
            source: "from memory, see its facts",
        },
        read: |scene| scene.stored(true),
    },
    Watched {
        law: &Law {
            name: "yeast.storage by age",
            quantity: "age of the yeast",
            unit: "months",
            holds: (0.0, 24.0),
            outside: CARRIED_ON,
            source: "packs of dry yeast are sold with two years to go, from memory",
        },
        read: |scene| scene.age_of_yeast(),
    },
];
