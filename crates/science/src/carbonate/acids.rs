//! The acids of foods, by kind.

use super::power_of_ten;
use crate::fact::Fact;
use crate::setup::Acids;

const fn pka(name: &'static str, value: f64) -> Fact {
    Fact::memory(name, value, "1", "handbook value at 25 °C, from memory")
}

/// pKa of acetic acid (1).
pub const ACETIC_PKA: Fact = pka("carbonate.acetic_pka", 4.756);
/// Both pKa of malic acid (1).
pub const MALIC_PKA: [Fact; 2] =
    [pka("carbonate.malic_pka.1", 3.40), pka("carbonate.malic_pka.2", 5.11)];
/// The three pKa of citric acid (1).
pub const CITRIC_PKA: [Fact; 3] = [
    pka("carbonate.citric_pka.1", 3.128),
    pka("carbonate.citric_pka.2", 4.761),
    pka("carbonate.citric_pka.3", 6.396),
];
/// pKa of lactic acid (1).
pub const LACTIC_PKA: Fact = pka("carbonate.lactic_pka", 3.86);

/// pH to which acid is titrated where its amount is told (1).
pub const TITRATION_END: Fact = Fact::memory(
    "carbonate.titration_end",
    8.2,
    "1",
    "titratable acidity of juices, to pH 8.1 to 8.3 (phenolphthalein), from memory",
)
.within((8.0, 8.4));

/// An acid of one to three steps: how much of it there is, and the products of its constants.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Acid {
    /// All forms together (mol/kg).
    pub total: f64,
    /// K1, K1 K2 and K1 K2 K3, zero beyond its last step (1 to 3 powers of an activity).
    pub(super) products: [f64; 3],
}

impl Acid {
    /// An acid of up to three pKa; `less` is [`activity_log10`](super::activity_log10) of its solution.
    ///
    /// ```text
    /// pK_i' = pK_i − (2 i − 1) less      a proton's activity, all else by concentration
    /// ```
    pub fn new(total: f64, pka: &[f64], less: f64) -> Self {
        let mut products = [0.0; 3];
        let mut sum = 0.0;
        for (step, (product, pka)) in products.iter_mut().zip(pka).enumerate() {
            sum += pka - (2.0 * step as f64 + 1.0) * less;
            *product = power_of_ten(-sum);
        }
        Self { total, products }
    }

    /// Mean charge that a molecule has given up, and its variance, where 1/h is `inverse` (1). The
    /// variance is the slope of the mean with ln(1/h).
    pub(super) fn charge(&self, inverse: f64) -> (f64, f64) {
        let [b1, b2, b3] = self.products;
        let one = b1 * inverse;
        let two = b2 * inverse * inverse;
        let three = b3 * inverse * inverse * inverse;
        let all = 1.0 / (1.0 + one + two + three);
        let mean = (one + 2.0 * two + 3.0 * three) * all;
        (mean, (one + 4.0 * two + 9.0 * three) * all - mean * mean)
    }
}

/// Acetic, malic, citric and lactic acid in this order (mol/kg) in a solution whose
/// [`activity_log10`](super::activity_log10) is `less`.
pub(super) fn all_four(total: [f64; 4], less: f64) -> [Acid; 4] {
    let [acetic, malic, citric, lactic] = total;
    let (m, c) = (MALIC_PKA.map(|pka| pka.value), CITRIC_PKA.map(|pka| pka.value));
    [
        Acid::new(acetic, &[ACETIC_PKA.value], less),
        Acid::new(malic, &m, less),
        Acid::new(citric, &c, less),
        Acid::new(lactic, &[LACTIC_PKA.value], less),
    ]
}

/// Metal ions that hold part of a food's acids, and each acid in all its forms, from what can be
/// titrated of them and the food's own pH; in the unit of the acids.
///
/// ```text
/// total = titratable/(z(8.2) − z(pH))      metal = total z(pH)      z mean charge of the acid
/// ```
///
/// # Source
/// Charge balance. Potassium in food tables is near what it gives, see `docs/science/liquid.md`.
pub fn cations_and_total(acids: &Acids) -> (f64, [f64; 4]) {
    let titratable = [acids.acetic, acids.malic, acids.citric, acids.lactic];
    if acids.ph <= 0.0 || acids.sum() <= 0.0 {
        // Of a free acid, all is titrated: steps as many as it has.
        let [acetic, malic, citric, lactic] = titratable;
        return (0.0, [acetic, malic / 2.0, citric / 3.0, lactic]);
    }
    let (own, end) = (power_of_ten(acids.ph), power_of_ten(TITRATION_END.value));
    let mut cations = 0.0;
    let mut total = [0.0; 4];
    for ((total, acid), titratable) in
        total.iter_mut().zip(all_four([0.0; 4], 0.0)).zip(titratable)
    {
        let bound = acid.charge(own).0;
        *total = titratable / (acid.charge(end).0 - bound);
        cations += *total * bound;
    }
    (cations, total)
}
