//! How finely a classroom measures.

use barm_science::fact::Fact;

/// Relative scatter of a mass from a 0.1 g balance in students' hands (1).
pub const BALANCE_SD: Fact = Fact::memory(
    "bench.balance_sd",
    0.02,
    "1",
    "0.1 g display on about 2 g: 0.029 g (JCGM 100:2008, F.2.2.1, clause from memory) and some \
     spilling",
)
.within((0.01, 0.05));
/// Relative scatter of a volume from a syringe, pipette or cylinder (1).
pub const SYRINGE_SD: Fact = Fact::memory(
    "bench.syringe_sd",
    0.03,
    "1",
    "common practice, no source: half a mark on a school syringe",
)
.within((0.01, 0.05));
/// Relative scatter of a level spoon of a dry thing (1).
pub const SPOON_SD: Fact = Fact::memory(
    "bench.spoon_sd",
    0.10,
    "1",
    "common practice, no source: weigh ten level teaspoons of your own",
)
.within((0.05, 0.20));
/// Relative scatter of a number of drops (1).
pub const DROP_SD: Fact =
    Fact::memory("bench.drop_sd", 0.10, "1", "common practice, no source").within((0.05, 0.20));
/// Relative scatter of a packet or tablet (1).
pub const PIECE_SD: Fact =
    Fact::memory("bench.piece_sd", 0.03, "1", "common practice, no source")
        .within((0.01, 0.06));
/// Relative scatter of water from a cylinder (1).
pub const WATER_SD: Fact =
    Fact::memory("bench.water_sd", 0.02, "1", "common practice, no source: 1 mL in 50 mL")
        .within((0.01, 0.05));
/// Scatter of the water temperature from bag to bag (K).
pub const POURING_SD: Fact = Fact::memory(
    "bench.pouring_sd",
    1.0,
    "K",
    "common practice, no source: thermometer and the seconds between jug and bag",
)
.within((0.5, 2.0));
/// Volume of a drop (mL).
pub const DROP_ML: Fact = Fact::memory(
    "bench.drop",
    0.05,
    "mL",
    "20 drops to a milliliter, from memory; count the drops in 1 mL of your own dropper",
)
.within((0.03, 0.06));
/// Air left in a bag after pressing it out (mL).
pub const TRAPPED_AIR: Fact = Fact::memory(
    "bench.trapped_air",
    8.0,
    "mL",
    "common practice, no source: seal the last corner while pressing",
)
.within((2.0, 20.0));
/// Mass of a level customary teaspoon of dry yeast (g).
pub const YEAST_SPOON: Fact = Fact::derived(
    "bench.yeast_teaspoon",
    3.11,
    "g/[tsp_us]",
    "7 g packet = 2 1/4 tsp (retail guides); USDA SR28 NDB 18375 says 4.0 g: weigh yours",
)
.within((2.8, 4.0));
/// Mass of a packet of dry yeast (g).
pub const YEAST_PACKET: Fact = Fact::sourced(
    "bench.yeast_packet",
    7.0,
    "g",
    "1/4 oz on the packet; USDA SR28 NDB 18375 gives 7.2 g",
)
.within((7.0, 7.2));
/// Mass of a cake of compressed yeast (g).
pub const YEAST_CAKE: Fact =
    Fact::sourced("bench.yeast_cake", 17.0, "g", "USDA SR28 NDB 18374: 1 cake (0.6 oz) 17 g");
/// Strength of a stock solution made from enzyme powder (g per 100 mL).
pub const STOCK_STRENGTH: Fact =
    Fact::memory("bench.stock_strength", 1.0, "g/dL", "common practice, no source")
        .within((0.5, 2.0));
/// Strength of an infusion of malt (g per 100 mL).
pub const MALT_STRENGTH: Fact = Fact::memory(
    "bench.malt_strength",
    5.0,
    "g/dL",
    "the infusion by which malt itself is tested, from memory",
)
.within((2.0, 10.0));
/// Age of a stock solution when it goes into bags (min): the middle of the time that one is in use.
pub const STOCK_AGE: Fact = Fact::memory(
    "bench.stock_age",
    120.0,
    "min",
    "made half an hour before the first period and used for four hours, common practice, no source",
)
.within((30.0, 240.0));

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
    MALT_STRENGTH,
    STOCK_AGE,
];
