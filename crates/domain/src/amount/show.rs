//! The same amount in the units of a kitchen and of a laboratory.

use super::TEASPOON_ML;
use std::fmt;

/// A kitchen measure that comes near an amount, and how near.
#[derive(Debug, Clone, PartialEq)]
pub struct Near {
    /// The measure as one writes it, such as `1/4 tsp` or `1 3/8 in`.
    pub text: String,
    /// By how much it is more than the amount (1), such as −0.03 for 3 % less.
    pub off: f64,
}

impl fmt::Display for Near {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

/// What a set of measuring spoons and cups can measure at once: count of teaspoons, with its name.
///
/// Spoons of 1/8, 1/4, 1/2 and 1 teaspoon and 1 tablespoon, and cups of 1/4, 1/3, 1/2 and 1 are
/// sold as sets (common practice, no source).
const SPOONS: &[(f64, &str)] = &[
    (0.125, "1/8 tsp"),
    (0.25, "1/4 tsp"),
    (0.375, "3/8 tsp"),
    (0.5, "1/2 tsp"),
    (0.75, "3/4 tsp"),
    (1.0, "1 tsp"),
    (1.25, "1 1/4 tsp"),
    (1.5, "1 1/2 tsp"),
    (1.75, "1 3/4 tsp"),
    (2.0, "2 tsp"),
    (2.5, "2 1/2 tsp"),
    (3.0, "1 tbsp"),
    (4.5, "1 1/2 tbsp"),
    (6.0, "2 tbsp"),
    (9.0, "3 tbsp"),
    (12.0, "1/4 cup"),
    (16.0, "1/3 cup"),
    (24.0, "1/2 cup"),
    (32.0, "2/3 cup"),
    (36.0, "3/4 cup"),
    (48.0, "1 cup"),
];

/// Teaspoons in a cup.
const CUP: f64 = 48.0;

/// The level customary spoon or cup measure nearest to a volume (mL); nothing below half of the
/// smallest spoon, an eighth of a teaspoon, and nothing above 64 cups.
///
/// Near means by ratio: between 1/8 and 1/4 teaspoon the border lies at 0.177.
pub fn spoons(ml: f64) -> Option<Near> {
    let wanted = ml / TEASPOON_ML;
    if !(0.0625..=64.0 * CUP).contains(&wanted) {
        return None;
    }
    let near = |teaspoons: f64, text: String| Near { text, off: teaspoons / wanted - 1.0 };
    if wanted > CUP {
        let quarters = (wanted / CUP * 4.0).round();
        let cups = if quarters > 4.0 { "cups" } else { "cup" };
        return Some(near(quarters * CUP / 4.0, format!("{} {cups}", mixed(quarters, 4))));
    }
    let ratio = |teaspoons: f64| (teaspoons / wanted).max(wanted / teaspoons);
    let nearest = SPOONS.iter().min_by(|a, b| ratio(a.0).total_cmp(&ratio(b.0)))?;
    Some(near(nearest.0, nearest.1.to_owned()))
}

/// An amount in level customary cups and spoons, to the nearest quarter of a teaspoon: what several
/// measures make together, where [`spoons`] gives the one measure that is nearest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Kitchen {
    /// Quarters of a teaspoon on the whole.
    pub quarter_teaspoons: u64,
}

impl Kitchen {
    /// A volume (mL) in cups and spoons; nothing below the least that rounds to a quarter of a
    /// teaspoon: such an amount is weighed.
    pub fn of_milliliters(ml: f64) -> Option<Self> {
        Self::of_teaspoons(ml / TEASPOON_ML)
    }

    /// So many level teaspoons; nothing below an eighth of one.
    pub fn of_teaspoons(teaspoons: f64) -> Option<Self> {
        let whole = (4.0 * teaspoons).round();
        (whole >= 1.0 && whole.is_finite()).then_some(Self { quarter_teaspoons: whole as u64 })
    }

    /// Level teaspoons on the whole (1).
    pub fn teaspoons(self) -> f64 {
        self.quarter_teaspoons as f64 / 4.0
    }
}

impl fmt::Display for Kitchen {
    /// Quarter cups, then whole tablespoons, then quarters of a teaspoon, such as
    /// `2 1/4 cups + 1 tbsp + 1 1/4 tsp`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        const QUARTER_CUP: u64 = CUP as u64;
        const TABLESPOON: u64 = 12;
        let (cups, rest) =
            (self.quarter_teaspoons / QUARTER_CUP, self.quarter_teaspoons % QUARTER_CUP);
        let name = if cups > 4 { "cups" } else { "cup" };
        let parts =
            [(cups, 4, name), (rest / TABLESPOON, 1, "tbsp"), (rest % TABLESPOON, 4, "tsp")];
        let said: Vec<String> = parts
            .into_iter()
            .filter(|(count, ..)| *count > 0)
            .map(|(count, of, name)| format!("{} {name}", mixed(count as f64, of)))
            .collect();
        f.write_str(&said.join(" + "))
    }
}

/// A length (mm) in inches to the nearest sixteenth, such as `1 3/8 in`; nothing below 1/32 in.
pub fn inches(mm: f64) -> Option<Near> {
    let wanted = mm / 25.4;
    if !(0.03125..=1000.0).contains(&wanted) {
        return None;
    }
    let sixteenths = (wanted * 16.0).round().max(1.0);
    let text = format!("{} in", mixed(sixteenths, 16));
    Some(Near { text, off: sixteenths / 16.0 / wanted - 1.0 })
}

/// A mass (g) in pounds and ounces to the nearest quarter ounce, such as `1 lb 4 1/2 oz`; nothing
/// below 1/8 oz.
pub fn ounces(grams: f64) -> Option<Near> {
    const OUNCE_G: f64 = 28.349523125;
    let wanted = grams / OUNCE_G;
    if !(0.125..=16_000.0).contains(&wanted) {
        return None;
    }
    let quarters = (wanted * 4.0).round().max(1.0);
    let pounds = (quarters / 64.0).floor();
    let rest = quarters - pounds * 64.0;
    let text = match (pounds > 0.0, rest > 0.0) {
        (true, true) => format!("{pounds} lb {} oz", mixed(rest, 4)),
        (true, false) => format!("{pounds} lb"),
        (false, _) => format!("{} oz", mixed(rest, 4)),
    };
    Some(Near { text, off: quarters / 4.0 / wanted - 1.0 })
}

/// A temperature in both units, to whole degrees: `40 °C (104 °F)`.
pub fn both_degrees(celsius: f64) -> String {
    // Adding nothing turns −0 into 0.
    let (celsius, fahrenheit) = (celsius.round() + 0.0, (celsius * 1.8 + 32.0).round() + 0.0);
    format!("{celsius} °C ({fahrenheit} °F)")
}

/// A count of fractions as a mixed number in lowest terms: 22 sixteenths are `1 3/8`.
fn mixed(count: f64, of: u32) -> String {
    let count = count as u64;
    let of = u64::from(of);
    let (whole, mut part, mut denominator) = (count / of, count % of, of);
    while part > 0 && part.is_multiple_of(2) && denominator.is_multiple_of(2) {
        part /= 2;
        denominator /= 2;
    }
    match (whole, part) {
        (whole, 0) => whole.to_string(),
        (0, part) => format!("{part}/{denominator}"),
        (whole, part) => format!("{whole} {part}/{denominator}"),
    }
}
