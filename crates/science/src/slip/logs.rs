//! Probabilities kept as logarithms.

/// ln of a normal density, but for its constant.
pub(super) fn normal(off: f64, sd: f64) -> f64 {
    -0.5 * (off / sd) * (off / sd)
}

/// Adds value by value.
pub(super) fn add(to: &mut [f64], other: &[f64]) {
    to.iter_mut().zip(other).for_each(|(value, other)| *value += other);
}

/// ln Σ e^x.
pub(super) fn log_sum(log: &[f64]) -> f64 {
    let most = log.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most == f64::NEG_INFINITY {
        return most;
    }
    most + libm::log(log.iter().map(|value| libm::exp(value - most)).sum::<f64>())
}

/// e^x as shares of all of them.
pub(super) fn probabilities(log: &[f64]) -> Vec<f64> {
    let mut values = weights(log).0;
    let all: f64 = values.iter().sum();
    values.iter_mut().for_each(|value| *value /= all);
    values
}

/// e^x over the largest of them, and the largest x. What is next to nothing is nothing.
pub(super) fn weights(log: &[f64]) -> (Vec<f64>, f64) {
    let most = log.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weight = |value: &f64| if value - most < -32.0 { 0.0 } else { libm::exp(value - most) };
    (log.iter().map(weight).collect(), most)
}
