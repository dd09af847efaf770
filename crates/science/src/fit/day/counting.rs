//! Which readings of a bag count.

/// Readings of a bag by minute, up to the first at which it has to be vented. A rule that looks at
/// nothing but what was read before takes no side (D. B. Rubin (1976), *Biometrika* 63, 581-592, from
/// memory).
pub(super) fn counting(readings: &[(f64, f64)], full_rise_mm: f64) -> Vec<(f64, f64)> {
    let mut all = readings.to_vec();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let full = all.iter().position(|(_, rise)| *rise >= full_rise_mm);
    all.truncate(full.map_or(all.len(), |at| at + 1));
    all
}
