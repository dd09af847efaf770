//! Enzymes that cut starch.

use crate::fact::Fact;

const fn share(
    name: &'static str,
    value: f64,
    range: (f64, f64),
    source: &'static str,
) -> Fact {
    Fact::memory(name, value, "1", source).within(range)
}

const CLONED: &str = "glucoamylase of an A. niger gene in E. coli: 0.34 g/L soluble starch, 606 umol/(mg.min) and \
     half-life 70 to 90 min at 60 to 70 °C (abstract, Korean index)";
const ORYZAE: &str = "A. oryzae ATCC 76080 alpha-amylase: 2.2 g/L, 0.024/min at 50 °C without \
     substrate (abstract)";
const HEITMANN: &str = "T. Heitmann, E. Wenzig, A. Mersmann, Enzyme Microb. Technol. 20 (1997)";
const RECALLED: &str = "from memory";

/// Half-saturation of glucoamylase by cooked starch and dextrin (g/L).
pub const GLUCOAMYLASE_HALF: Fact =
    Fact::sourced("enzyme.glucoamylase.half", 0.34, "g/L", CLONED).within((0.2, 1.0));

/// Half-saturation of glucoamylase by maltose (g/L).
pub const GLUCOAMYLASE_HALF_MALTOSE: Fact =
    Fact::memory("enzyme.glucoamylase.half_maltose", 0.4, "g/L", RECALLED).within((0.2, 0.8));

/// Rate of glucoamylase on dextrin over that on cooked starch (1).
pub const GLUCOAMYLASE_ON_DEXTRIN: Fact =
    share("enzyme.glucoamylase.on_dextrin", 0.8, (0.5, 1.0), RECALLED);

/// Rate of glucoamylase on maltose over that on cooked starch (1).
pub const GLUCOAMYLASE_ON_MALTOSE: Fact =
    share("enzyme.glucoamylase.on_maltose", 0.2, (0.1, 0.3), RECALLED);

/// Half-saturation of fungal alpha-amylase (g/L).
pub const FUNGAL_HALF: Fact =
    Fact::sourced("enzyme.fungal_amylase.half", 2.2, "g/L", ORYZAE).within((1.0, 4.0));

/// Half-saturation of bacterial alpha-amylase (g/L).
pub const BACTERIAL_HALF: Fact =
    Fact::sourced("enzyme.bacterial_amylase.half", 1.4, "g/L", HEITMANN).within((1.0, 6.0));

/// Share of the starch cut by fungal alpha-amylase that comes out as maltose at once (1).
pub const FUNGAL_MALTOSE: Fact =
    share("enzyme.fungal_amylase.maltose", 0.15, (0.05, 0.3), RECALLED);

/// The same for bacterial alpha-amylase (1).
pub const BACTERIAL_MALTOSE: Fact =
    share("enzyme.bacterial_amylase.maltose", 0.05, (0.02, 0.1), RECALLED);

/// Rate of fungal alpha-amylase from dextrin to maltose over that on starch (1).
pub const FUNGAL_ON_DEXTRIN: Fact =
    share("enzyme.fungal_amylase.on_dextrin", 0.02, (0.005, 0.05), RECALLED);

/// The same for bacterial alpha-amylase (1).
pub const BACTERIAL_ON_DEXTRIN: Fact =
    share("enzyme.bacterial_amylase.on_dextrin", 0.003, (0.001, 0.01), RECALLED);

/// Half-saturation of beta-amylase by cooked starch (g/L).
pub const BETA_HALF: Fact =
    Fact::memory("enzyme.beta_amylase.half", 2.0, "g/L", RECALLED).within((1.0, 6.0));

/// Share of the starch cut by beta-amylase that comes out as maltose (1), before the branches stop
/// it and leave limit dextrin.
pub const BETA_MALTOSE: Fact =
    share("enzyme.beta_amylase.maltose", 0.6, (0.53, 0.65), RECALLED);

/// Rate of beta-amylase from dextrin to maltose over that on starch (1).
pub const BETA_ON_DEXTRIN: Fact = share(
    "enzyme.beta_amylase.on_dextrin",
    0.4,
    (0.1, 0.8),
    "on what alpha-amylase has opened it works well, on its own limit dextrin not at all; one \
     number for both, from memory",
);

/// Half-saturation of alpha-amylase by dextrin (g/L).
pub const AMYLASE_HALF_DEXTRIN: Fact =
    Fact::memory("enzyme.amylase.half_dextrin", 10.0, "g/L", RECALLED).within((3.0, 30.0));

/// Rate of an amylase on raw granules of corn over that on cooked starch (1), in the first hour; other
/// plants in [`super::gelatinization`].
pub const RAW_STARCH: Fact = share(
    "enzyme.raw_starch",
    0.05,
    (0.01, 0.1),
    "raw to gelatinized corn 1:10 to 1:100 in the first hour at 30 to 40 °C, from memory; order \
     of grains in H. W. Leach, T. J. Schoch, Cereal Chem. 38, 34 (1961)",
);

/// Half-saturation by raw granules, whose surface it is that counts (g/L).
pub const HALF_RAW_STARCH: Fact =
    Fact::memory("enzyme.half_raw_starch", 10.0, "g/L", RECALLED).within((3.0, 30.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    GLUCOAMYLASE_HALF,
    GLUCOAMYLASE_HALF_MALTOSE,
    GLUCOAMYLASE_ON_DEXTRIN,
    GLUCOAMYLASE_ON_MALTOSE,
    FUNGAL_HALF,
    BACTERIAL_HALF,
    FUNGAL_MALTOSE,
    BACTERIAL_MALTOSE,
    FUNGAL_ON_DEXTRIN,
    BACTERIAL_ON_DEXTRIN,
    BETA_HALF,
    BETA_MALTOSE,
    BETA_ON_DEXTRIN,
    AMYLASE_HALF_DEXTRIN,
    RAW_STARCH,
    HALF_RAW_STARCH,
];

/// Glucose chains in the liquid (g/L).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Chains {
    /// Cooked or damaged starch.
    pub cooked: f64,
    /// Raw granules.
    pub raw: f64,
    /// Dextrin.
    pub dextrin: f64,
    /// Maltose.
    pub maltose: f64,
}

/// Shares of an enzyme's activity that fall on each kind of chain (1).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Cuts {
    /// On cooked starch.
    pub cooked: f64,
    /// On raw granules.
    pub raw: f64,
    /// On dextrin.
    pub dextrin: f64,
    /// On maltose.
    pub maltose: f64,
}

/// How enzymes differ that cut starch into dextrin and maltose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amylase {
    /// Half-saturation by cooked starch (g/L).
    pub half: f64,
    /// Share of the cut starch that comes out as maltose at once, the rest being dextrin (1).
    pub maltose: f64,
    /// Rate from dextrin to maltose over the rate on starch (1).
    pub on_dextrin: f64,
    /// Whether it bores into raw granules.
    pub bores: bool,
}

/// Fungal alpha-amylase.
pub const FUNGAL: Amylase = Amylase {
    half: FUNGAL_HALF.value,
    maltose: FUNGAL_MALTOSE.value,
    on_dextrin: FUNGAL_ON_DEXTRIN.value,
    bores: true,
};

/// Bacterial alpha-amylase, and malt's.
pub const BACTERIAL: Amylase = Amylase {
    half: BACTERIAL_HALF.value,
    maltose: BACTERIAL_MALTOSE.value,
    on_dextrin: BACTERIAL_ON_DEXTRIN.value,
    bores: true,
};

/// Beta-amylase: it works from the ends of chains and leaves granules alone.
pub const BETA: Amylase = Amylase {
    half: BETA_HALF.value,
    maltose: BETA_MALTOSE.value,
    on_dextrin: BETA_ON_DEXTRIN.value,
    bores: false,
};

/// Where the activity of glucoamylase goes.
///
/// ```text
/// θ = 1 + S/K + D/K + M/Km      cooked (S/K)/θ, dextrin 0.8 (D/K)/θ, maltose 0.2 (M/Km)/θ
/// raw = ρ · R/(Kr + R)
/// ```
///
/// `half` multiplies every half-saturation; `raw` is ρ, the rate on raw granules (1). Granules
/// are cut at their surface and do not compete with what is dissolved.
pub fn glucoamylase(chains: &Chains, half: f64, raw: f64) -> Cuts {
    let k = half * GLUCOAMYLASE_HALF.value;
    let cooked = chains.cooked.max(0.0) / k;
    let dextrin = chains.dextrin.max(0.0) / k;
    let maltose = chains.maltose.max(0.0) / (half * GLUCOAMYLASE_HALF_MALTOSE.value);
    let theta = 1.0 + cooked + dextrin + maltose;
    Cuts {
        cooked: cooked / theta,
        raw: raw * saturation(chains.raw, half * HALF_RAW_STARCH.value),
        dextrin: GLUCOAMYLASE_ON_DEXTRIN.value * dextrin / theta,
        maltose: GLUCOAMYLASE_ON_MALTOSE.value * maltose / theta,
    }
}

/// Where the activity of an amylase goes; cooked starch and dextrin compete for it, maltose is not
/// cut.
///
/// ```text
/// θ = 1 + S/K + D/Kd      cooked (S/K)/θ, dextrin d (D/Kd)/θ
/// ```
pub fn amylase(enzyme: &Amylase, chains: &Chains, half: f64, raw: f64) -> Cuts {
    let cooked = chains.cooked.max(0.0) / (half * enzyme.half);
    let dextrin = chains.dextrin.max(0.0) / (half * AMYLASE_HALF_DEXTRIN.value);
    let theta = 1.0 + cooked + dextrin;
    let on_raw = || raw * saturation(chains.raw, half * HALF_RAW_STARCH.value);
    Cuts {
        cooked: cooked / theta,
        raw: if enzyme.bores { on_raw() } else { 0.0 },
        dextrin: enzyme.on_dextrin * dextrin / theta,
        maltose: 0.0,
    }
}

/// Rate over the largest rate by the law of Michaelis and Menten (1): c/(K + c).
pub fn saturation(concentration: f64, half: f64) -> f64 {
    // Most of what an enzyme could cut is not there: no division for it.
    if concentration > 0.0 { concentration / (half + concentration) } else { 0.0 }
}
