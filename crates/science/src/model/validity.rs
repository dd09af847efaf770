//! Where the laws of the bag model hold, and which of them a bag goes beyond.
//!
//! A law is used outside its range rather than refused, held at its end or carried on; but never in
//! silence. A range counts where it is known and where a bag could leave it; a law that decides
//! next to nothing there, such as salt's in a bag without salt, is not asked.

use super::card::CardOnBag;
use super::course::{sample, tolerance};
use super::mixture::Mixture;
use super::parameters::Parameters;
use super::state::{CELSIUS, ENZYME_ORDER, State};
use crate::bag::SIMULATION;
use crate::forecast::SetupError;
use crate::setup::{EnzymeKind, Setup, YeastKind};
use crate::units::Celsius;
use crate::{carbon_dioxide, carbonate, gas, water};
use core::fmt;

/// A law, with the range in which it is known.
#[derive(Debug, Clone, Copy)]
pub struct Law {
    /// Its name, such as `yeast.slow_loss`.
    pub name: &'static str,
    /// What it is read at, in words.
    pub quantity: &'static str,
    /// The unit of that, as people write it; empty for a share.
    pub unit: &'static str,
    /// From where to where it holds, in that unit.
    pub holds: (f64, f64),
    /// What the model does outside.
    pub outside: &'static str,
    /// Who says so.
    pub source: &'static str,
    read: fn(&Scene) -> Option<f64>,
}

/// A bag at one moment.
struct Scene<'a> {
    setup: &'a Setup,
    mixture: &'a Mixture,
    card: &'a CardOnBag,
    y: &'a State,
}

impl Scene<'_> {
    fn celsius(&self) -> f64 {
        self.y[CELSIUS]
    }

    /// The temperature, where there is yeast.
    fn of_yeast(&self) -> Option<f64> {
        self.mixture.crowd.as_ref().map(|_| self.celsius())
    }

    /// The temperature, where there is an enzyme of those kinds.
    fn of_enzyme(&self, kinds: &[EnzymeKind]) -> Option<f64> {
        let there = |kind| self.setup.enzymes.iter().any(|e| e.kind == kind && e.units > 0.0);
        kinds.iter().any(|kind| there(*kind)).then(|| self.celsius())
    }

    /// The pH, where there is an enzyme and it is worked out.
    fn ph_of_enzyme(&self) -> Option<f64> {
        self.of_enzyme(&ENZYME_ORDER)?;
        self.mixture.acidity.minded.then(|| self.mixture.ph(self.y))
    }

    /// The temperature, where salt takes a hundredth of the solubility or more.
    fn of_salt(&self) -> Option<f64> {
        let left =
            carbon_dioxide::salt_factor(self.mixture.salt_mol_per_kg, Celsius(self.celsius()));
        (left < 0.99).then(|| self.celsius())
    }

    /// The temperature at which yeast of some kinds was stored, if it was.
    fn stored(&self, compressed: bool) -> Option<f64> {
        let yeast = self.setup.yeast.filter(|y| y.grams > 0.0 && y.age_months > 0.0)?;
        ((yeast.kind == YeastKind::Compressed) == compressed).then_some(yeast.stored_celsius)
    }
}

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

/// A law that a bag goes beyond.
#[derive(Debug, Clone, PartialEq)]
pub struct Beyond {
    /// Name of the law.
    pub law: &'static str,
    /// What it is read at, in words.
    pub quantity: &'static str,
    /// The unit of that; empty for a share.
    pub unit: &'static str,
    /// From where to where the law holds.
    pub holds: (f64, f64),
    /// What the model does outside.
    pub outside: &'static str,
    /// The farthest outside that the bag gets.
    pub value: f64,
    /// Minute, counted from the zero reading, at which it is outside first; negative before it.
    pub from_min: f64,
}

impl Law {
    /// How far outside a value lies; nothing inside.
    fn outside_by(&self, value: f64) -> Option<f64> {
        let (low, high) = self.holds;
        let off = (low - value).max(value - high);
        (off > 0.0 || off.is_nan()).then_some(off)
    }

    fn note(&self, seen: &mut Option<Beyond>, scene: &Scene, minute: f64) {
        let Some(value) = (self.read)(scene) else { return };
        let Some(off) = self.outside_by(value) else { return };
        match seen {
            None => {
                *seen = Some(Beyond {
                    law: self.name,
                    quantity: self.quantity,
                    unit: self.unit,
                    holds: self.holds,
                    outside: self.outside,
                    value,
                    from_min: minute,
                });
            }
            Some(beyond) if self.outside_by(beyond.value).is_some_and(|known| off > known) => {
                beyond.value = value;
            }
            Some(_) => {}
        }
    }
}

impl fmt::Display for Beyond {
    /// One sentence, as in "temperature of the bag reaches 55 °C, from minute -3 on outside of 0 to
    /// 50 °C, where yeast.slow_loss is known; carried on by its formula".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { law, quantity, unit, holds, outside, value, from_min } = self;
        let space = if unit.is_empty() { "" } else { " " };
        write!(
            f,
            "{quantity} reaches {value:.3}{space}{unit}, from minute {from_min:.0} on outside of \
             {} to {}{space}{unit}, where {law} is known; {outside}",
            holds.0, holds.1
        )
    }
}

/// Laws that the best guess of a bag goes beyond, from wetting to its last minute.
///
/// # Errors
/// [`SetupError`] when the solver finds no solution. The setup must have passed
/// [`possible`](crate::forecast::possible).
pub fn beyond(
    setup: &Setup,
    parameters: &Parameters,
    last_minute: u32,
) -> Result<Vec<Beyond>, SetupError> {
    let mixture = Mixture::new(setup, parameters);
    let card = CardOnBag::new(setup, &mixture, parameters);
    let mut seen: Vec<Option<Beyond>> = vec![None; LAWS.len()];
    let mut note = |minute: f64, y: &State| {
        let scene = Scene { setup, mixture: &mixture, card: &card, y };
        for (law, seen) in LAWS.iter().zip(&mut seen) {
            law.note(seen, &scene, minute);
        }
    };
    let wet_min = setup.wet_before_zero_min;
    note(-wet_min, mixture.start());
    sample(&mixture, wet_min, last_minute, &tolerance(1e-4), |minute, y| {
        note(f64::from(minute), y);
    })?;
    Ok(seen.into_iter().flatten().collect())
}
