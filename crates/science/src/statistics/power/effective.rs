//! How much bags of one group are worth.

use super::error::{PowerError, usable};

/// How many bags of unlike groups would tell as much of a treatment as `bags` of them do (1), where
/// every group makes `by_one_group` of them and `group_share` of the variance (1, from 0 to 1) is
/// between groups.
///
/// ```text
/// n_eff = n / (1 + (m − 1) ρ)
/// ```
///
/// One bag a group is worth a bag; many bags of a single group are never worth more than 1/ρ.
///
/// # Source
/// Kish (1965), *Survey Sampling*, 5.4, the design effect; from memory.
/// # Errors
/// [`PowerError`] for fewer than one bag, or a share that is none.
pub fn effective_bags(
    bags: f64,
    by_one_group: f64,
    group_share: f64,
) -> Result<f64, PowerError> {
    for (what, found) in [("bags", bags), ("bags a group", by_one_group)] {
        usable(what, found)?;
        if found < 1.0 {
            return Err(PowerError::TooFew { what, found, least: 1.0 });
        }
    }
    usable("the groups' share of the variance", group_share)?;
    if !(0.0..=1.0).contains(&group_share) {
        let what = "the groups' share of the variance";
        return Err(PowerError::Unusable { what, value: group_share });
    }
    Ok(bags / (1.0 + (by_one_group.min(bags) - 1.0) * group_share))
}
