//! How finely a classroom measures.

use barm_science::fact::{Fact, Status};

const fn fact(
    name: &'static str,
    value: f64,
    unit: &'static str,
    range: (f64, f64),
    source: &'static str,
) -> Fact {
    Fact { name, value, unit, range: Some(range), status: Status::Memory, source }
}

/// Relative scatter of a mass from a 0.1 g balance in students' hands (1).
pub const BALANCE_SD: Fact = fact(
    "bench.balance_sd",
    0.02,
    "1",
    (0.01, 0.05),
    "0.1 g display on about 2 g: 0.029 g (JCGM 100:2008, F.2.2.1, clause from memory) and some \
     spilling",
);
/// Relative scatter of a volume from a syringe, pipette or cylinder (1).
pub const SYRINGE_SD: Fact = fact(
    "bench.syringe_sd",
    0.03,
    "1",
    (0.01, 0.05),
    "common practice, no source: half a mark on a school syringe",
);
/// Relative scatter of a level spoon of a dry thing (1).
pub const SPOON_SD: Fact = fact(
    "bench.spoon_sd",
    0.10,
    "1",
    (0.05, 0.20),
    "common practice, no source: weigh ten level teaspoons of your own",
);
/// Relative scatter of a number of drops (1).
pub const DROP_SD: Fact =
    fact("bench.drop_sd", 0.10, "1", (0.05, 0.20), "common practice, no source");
/// Relative scatter of a packet or tablet (1).
pub const PIECE_SD: Fact =
    fact("bench.piece_sd", 0.03, "1", (0.01, 0.06), "common practice, no source");
/// Relative scatter of water from a cylinder (1).
pub const WATER_SD: Fact = fact(
    "bench.water_sd",
    0.02,
    "1",
    (0.01, 0.05),
    "common practice, no source: 1 mL in 50 mL",
);
/// Scatter of the water temperature from bag to bag (K).
pub const POURING_SD: Fact = fact(
    "bench.pouring_sd",
    1.0,
    "K",
    (0.5, 2.0),
    "common practice, no source: thermometer and the seconds between jug and bag",
);
/// Volume of a drop (mL).
pub const DROP_ML: Fact = fact(
    "bench.drop",
    0.05,
    "mL",
    (0.03, 0.06),
    "20 drops to a milliliter, from memory; count the drops in 1 mL of your own dropper",
);
/// Air left in a bag after pressing it out (mL).
pub const TRAPPED_AIR: Fact = fact(
    "bench.trapped_air",
    8.0,
    "mL",
    (2.0, 20.0),
    "common practice, no source: seal the last corner while pressing",
);
/// Mass of a level customary teaspoon of dry yeast (g).
pub const YEAST_SPOON: Fact = Fact {
    name: "bench.yeast_teaspoon",
    value: 3.11,
    unit: "g/[tsp_us]",
    range: Some((2.8, 4.0)),
    status: Status::Derived,
    source: "7 g packet = 2 1/4 tsp (retail guides); USDA SR28 NDB 18375 says 4.0 g: weigh yours",
};
/// Mass of a packet of dry yeast (g).
pub const YEAST_PACKET: Fact = Fact {
    name: "bench.yeast_packet",
    value: 7.0,
    unit: "g",
    range: Some((7.0, 7.2)),
    status: Status::Sourced,
    source: "1/4 oz on the packet; USDA SR28 NDB 18375 gives 7.2 g",
};
/// Mass of a cake of compressed yeast (g).
pub const YEAST_CAKE: Fact = Fact {
    name: "bench.yeast_cake",
    value: 17.0,
    unit: "g",
    range: None,
    status: Status::Sourced,
    source: "USDA SR28 NDB 18374: 1 cake (0.6 oz) 17 g",
};
/// Strength of a stock solution made from enzyme powder (g per 100 mL).
pub const STOCK_STRENGTH: Fact =
    fact("bench.stock_strength", 1.0, "g/dL", (0.5, 2.0), "common practice, no source");

/// Facts of the bench.
pub const FACTS: &[Fact] = &[
    BALANCE_SD,
    SYRINGE_SD,
    SPOON_SD,
    DROP_SD,
    PIECE_SD,
    WATER_SD,
    POURING_SD,
    DROP_ML,
    TRAPPED_AIR,
    YEAST_SPOON,
    YEAST_PACKET,
    YEAST_CAKE,
    STOCK_STRENGTH,
];
