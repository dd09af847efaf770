//! Several questions of one family.

/// Chances adjusted for being the several tests of one family, in the order given (1).
///
/// The smallest is multiplied by the number of tests, the next by one less, and so on; none falls
/// below the one before. Declaring what stays below 5 % errs anywhere in the family at most once in
/// twenty, whatever the tests have to do with each other. What is not a chance (NaN) counts as 1.
///
/// # Source
/// Holm (1979), *Scand. J. Statist.* 6, 65–70.
pub fn holm(chances: &[f64]) -> Vec<f64> {
    let known =
        |at: &usize| if chances[*at].is_nan() { 1.0 } else { chances[*at].clamp(0.0, 1.0) };
    let mut order: Vec<usize> = (0..chances.len()).collect();
    order.sort_by(|a, b| known(a).total_cmp(&known(b)));
    let mut adjusted = vec![1.0; chances.len()];
    let mut least = 0.0_f64;
    for (rank, at) in order.into_iter().enumerate() {
        let left = (chances.len() - rank) as f64;
        least = least.max((left * known(&at)).min(1.0));
        adjusted[at] = least;
    }
    adjusted
}
