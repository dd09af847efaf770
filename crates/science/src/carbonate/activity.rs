//! What the other ions of a solution do to its acids.

use crate::fact::Fact;

/// Constant of Debye and Hückel at 25 °C (kg^½/mol^½, base 10).
pub const DEBYE_HUECKEL: Fact = Fact::memory(
    "carbonate.debye_hueckel",
    0.509,
    "1",
    "water at 25 °C in (kg/mol)^(1/2), handbook value from memory; 0.50 at 15 and 0.53 at 45 °C",
);

/// Ionic strength beyond which the activities are held (mol/kg).
pub const MOST_IONIC: Fact = Fact::memory(
    "carbonate.most_ionic",
    0.5,
    "mol/kg",
    "C. W. Davies, Ion Association (1962), good to some 0.5 mol/kg, from memory",
);

/// By how much the logarithm (base 10) of a single charge's activity coefficient lies under zero, at
/// an ionic strength in mol/kg (1); a charge of z makes it z² times that.
///
/// ```text
/// −log γ = 0.509 z² (√I/(1 + √I) − 0.3 I)      held beyond 0.5 mol/kg
/// ```
///
/// # Source
/// C. W. Davies (1962), *Ion Association*, from memory.
pub fn activity_log10(ionic_mol_per_kg: f64) -> f64 {
    let ionic = ionic_mol_per_kg.clamp(0.0, MOST_IONIC.value);
    let root = ionic.sqrt();
    DEBYE_HUECKEL.value * (root / (1.0 + root) - 0.3 * ionic)
}
