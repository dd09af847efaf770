//! How warm the water was at pouring, over all bags in which it was measured.

use super::Scene;

/// What was measured, beside what was planned.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Poured {
    /// Bags in which it was measured.
    pub(crate) bags: usize,
    /// The coldest and the warmest (°C).
    pub(crate) from_to: (f64, f64),
    /// Bags farther from their plan than [`FAR_CELSIUS`]: code, measured and planned (°C).
    pub(crate) far: Vec<(String, f64, f64)>,
}

/// So far from the plan (°C) the yeast works noticeably faster or slower: by about a fifth, at
/// two to three times the speed for ten degrees (common practice, no source).
pub(crate) const FAR_CELSIUS: f64 = 3.0;

/// What the record says of it; nothing if nobody measured.
pub(crate) fn poured(scene: &Scene<'_>) -> Option<Poured> {
    let mut all = Poured { from_to: (f64::INFINITY, f64::NEG_INFINITY), ..Poured::default() };
    for (code, bag) in &scene.standing().bags {
        let Some(celsius) = bag.made.as_ref().and_then(|made| made.water_celsius) else {
            continue;
        };
        all.bags += 1;
        all.from_to = (all.from_to.0.min(celsius), all.from_to.1.max(celsius));
        let treatment = scene.treatment_of(*code).and_then(|name| scene.plan.treatment(name));
        let planned = treatment.map(|treatment| scene.plan.recipe(treatment).water_celsius);
        if let Some(planned) = planned.filter(|planned| (celsius - planned).abs() > FAR_CELSIUS)
        {
            all.far.push((code.to_string(), celsius, planned));
        }
    }
    (all.bags > 0).then_some(all)
}
