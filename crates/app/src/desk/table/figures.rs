//! Numbers as a page shows them.

/// A number with about four figures, without an exponent where it can be helped.
pub(crate) fn figure(value: f64) -> String {
    let size = value.abs();
    if size < f64::MIN_POSITIVE {
        return "0".to_owned();
    }
    if !(1e-4..1e7).contains(&size) {
        return format!("{value:.3e}");
    }
    let decimals = match size {
        s if s >= 1_000.0 => 0,
        s if s >= 100.0 => 1,
        s if s >= 10.0 => 2,
        s if s >= 1.0 => 3,
        s if s >= 0.1 => 4,
        s if s >= 0.01 => 5,
        _ => 6,
    };
    let text = format!("{value:.decimals$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A chance, never as 0.
pub(crate) fn chance(p: f64) -> String {
    if p < 0.000_1 {
        "< 0.0001".to_owned()
    } else if p < 0.001 {
        format!("{p:.4}")
    } else if p < 0.1 {
        format!("{p:.3}")
    } else {
        format!("{p:.2}")
    }
}

#[cfg(test)]
mod tests {
    use super::{chance, figure};

    #[test]
    fn numbers_keep_four_figures() {
        for (value, shown) in [
            (0.0, "0"),
            (12.0, "12"),
            (-2.46913, "-2.469"),
            (0.000_471_2, "0.000471"),
            (123_456.7, "123457"),
            (2.5e-7, "2.500e-7"),
            (1e90, "1.000e90"),
            (9.999_96, "10"),
        ] {
            assert_eq!(figure(value), shown);
        }
        for (p, shown) in
            [(0.0, "< 0.0001"), (0.000_32, "0.0003"), (0.049_6, "0.050"), (1.0, "1.00")]
        {
            assert_eq!(chance(p), shown);
        }
    }
}
