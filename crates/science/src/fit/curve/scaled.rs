//! Points in units near 1, so that a search need not care for units.

use super::shape::Shape;

/// Points over powers of two, which takes no digit from them.
pub(super) struct Scaled {
    pub(super) x: Vec<f64>,
    pub(super) y: Vec<f64>,
    x_unit: f64,
    pub(super) y_unit: f64,
}

impl Scaled {
    pub(super) fn of(x: &[f64], y: &[f64]) -> Self {
        let (x_unit, y_unit) = (unit(x), unit(y));
        let over = |values: &[f64], unit: f64| values.iter().map(|v| v / unit).collect();
        Self { x: over(x, x_unit), y: over(y, y_unit), x_unit, y_unit }
    }

    /// What each parameter of the scaled points is multiplied with.
    pub(super) fn units(&self, shape: Shape) -> Vec<f64> {
        let Self { x_unit: x, y_unit: y, .. } = *self;
        match shape {
            Shape::Line => vec![y, y / x],
            Shape::Saturating => vec![y, 1.0 / x],
            Shape::MichaelisMenten => vec![y, x],
            Shape::Logistic => vec![y, 1.0, 1.0 / x],
            Shape::Gompertz => vec![y, y / x, x],
            Shape::Richards => vec![y, 1.0, 1.0 / x, 1.0],
        }
    }
}

/// The power of two at or below the largest size; 1 where all are 0.
fn unit(values: &[f64]) -> f64 {
    let largest = values.iter().fold(0.0_f64, |most, v| most.max(v.abs()));
    if largest < f64::MIN_POSITIVE {
        return 1.0;
    }
    let (_, exponent) = libm::frexp(largest);
    libm::ldexp(1.0, exponent - 1)
}
