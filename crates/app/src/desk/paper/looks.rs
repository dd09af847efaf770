//! Which hue and mark a treatment wears, the same on every page of a plan.

use barm_documents::chart::Look;
use barm_domain::plan::Plan;

/// The look of a treatment: a control without food and enzyme is ink and hollow, the others are
/// dealt in the order of the plan.
pub(crate) fn look(plan: &Plan, treatment: &str) -> Look {
    let plain = |name: &str| {
        plan.treatment(name).is_some_and(|treatment| {
            let recipe = plan.recipe(treatment);
            plan.is_control(name) && recipe.food.is_none() && recipe.enzyme.is_none()
        })
    };
    if plain(treatment) {
        return Look::NO_FOOD;
    }
    let dealt = plan
        .treatments()
        .map(|(_, treatment)| treatment.name.as_str())
        .filter(|name| !plain(name))
        .position(|name| name == treatment);
    // Hue, mark and dash come round again after sixteen.
    dealt.map_or(Look::NO_FOOD, |at| Look(u8::try_from(at % 16 + 1).unwrap_or(1)))
}
