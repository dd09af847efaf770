//! What each shape is, and how its height changes with each parameter.

use std::f64::consts::E;

/// A shape of curve; x and y in any units. Sources from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// b0 + b1 x.
    Line,
    /// b1 (1 − exp(−b2 x)): rises ever more slowly to b1.
    Saturating,
    /// Vm x/(K + x): rate of an enzyme over its food (Michaelis & Menten 1913, *Biochem. Z.* 49, 333–369).
    MichaelisMenten,
    /// b1/(1 + exp(b2 − b3 x)): an even S up to b1 (Verhulst 1838).
    Logistic,
    /// A exp(−exp(mu e/A (lambda − x) + 1)): an S that turns early, with its greatest slope mu and its
    /// lag lambda (Zwietering, Jongenburger, Rombouts & van 't Riet 1990, *Appl. Environ. Microbiol.*
    /// 56, 1875–1881).
    Gompertz,
    /// b1/(1 + exp(b2 − b3 x))^(1/b4): an S that turns where b4 says (Richards 1959, *J. Exp. Bot.* 10,
    /// 290–300).
    Richards,
}

impl Shape {
    /// Every shape.
    pub const ALL: [Self; 6] = [
        Self::Line,
        Self::Saturating,
        Self::MichaelisMenten,
        Self::Logistic,
        Self::Gompertz,
        Self::Richards,
    ];

    /// Its name.
    pub fn word(self) -> &'static str {
        match self {
            Self::Line => "line",
            Self::Saturating => "saturating",
            Self::MichaelisMenten => "michaelis-menten",
            Self::Logistic => "logistic",
            Self::Gompertz => "gompertz",
            Self::Richards => "richards",
        }
    }

    /// Its parameters, in order.
    pub fn names(self) -> &'static [&'static str] {
        match self {
            Self::Line => &["b0", "b1"],
            Self::Saturating => &["b1", "b2"],
            Self::MichaelisMenten => &["Vm", "K"],
            Self::Logistic => &["b1", "b2", "b3"],
            Self::Gompertz => &["A", "mu", "lambda"],
            Self::Richards => &["b1", "b2", "b3", "b4"],
        }
    }

    /// Its formula, as people write it.
    pub fn formula(self) -> &'static str {
        match self {
            Self::Line => "y = b0 + b1 x",
            Self::Saturating => "y = b1 (1 − exp(−b2 x))",
            Self::MichaelisMenten => "y = Vm x/(K + x)",
            Self::Logistic => "y = b1/(1 + exp(b2 − b3 x))",
            Self::Gompertz => "y = A exp(−exp(mu e/A (lambda − x) + 1))",
            Self::Richards => "y = b1/(1 + exp(b2 − b3 x))^(1/b4)",
        }
    }

    /// Height at `x` (unit of y); not finite where the formula gives no number.
    pub fn at(self, b: &[f64], x: f64) -> f64 {
        match self {
            Self::Line => b[0] + b[1] * x,
            Self::Saturating => -b[0] * libm::expm1(-b[1] * x),
            Self::MichaelisMenten => b[0] * x / (b[1] + x),
            Self::Logistic => b[0] / (1.0 + libm::exp(b[1] - b[2] * x)),
            Self::Gompertz => b[0] * libm::exp(-libm::exp(waiting(b, x))),
            Self::Richards => b[0] * libm::exp(ln_share(b[1] - b[2] * x) / b[3]),
        }
    }

    /// How the height at `x` changes with each parameter.
    pub(super) fn slopes(self, b: &[f64], x: f64) -> Vec<f64> {
        match self {
            Self::Line => vec![1.0, x],
            Self::Saturating => {
                let left = libm::exp(-b[1] * x);
                vec![-libm::expm1(-b[1] * x), b[0] * x * left]
            }
            Self::MichaelisMenten => {
                let over = b[1] + x;
                vec![x / over, -b[0] * x / (over * over)]
            }
            Self::Logistic => {
                let u = b[1] - b[2] * x;
                let (share, steep) = (share(u), share(u) * share(-u));
                vec![share, -b[0] * steep, b[0] * x * steep]
            }
            Self::Gompertz => {
                let out = libm::exp(waiting(b, x));
                // Where this is 0, the product with `out` is 0 too.
                let share = libm::exp(-out);
                let steep = if share > 0.0 { share * out } else { 0.0 };
                let ahead = E * (b[2] - x);
                vec![share + steep * b[1] * ahead / b[0], -steep * ahead, -steep * E * b[1]]
            }
            Self::Richards => {
                let u = b[1] - b[2] * x;
                let ln = ln_share(u);
                let high = libm::exp(ln / b[3]);
                let steep = b[0] * high * share(-u) / b[3];
                vec![high, -steep, steep * x, -b[0] * high * ln / (b[3] * b[3])]
            }
        }
    }
}

/// mu e/A (lambda − x) + 1.
fn waiting(b: &[f64], x: f64) -> f64 {
    b[1] * E / b[0] * (b[2] - x) + 1.0
}

/// 1/(1 + exp(u)).
fn share(u: f64) -> f64 {
    1.0 / (1.0 + libm::exp(u))
}

/// ln(1/(1 + exp(u))), also where exp(u) would overflow.
fn ln_share(u: f64) -> f64 {
    if u > 0.0 { -u - libm::log1p(libm::exp(-u)) } else { -libm::log1p(libm::exp(u)) }
}
