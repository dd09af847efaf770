//! Hues as people with a colour-vision deficiency see them, and as a grey printer prints them.
//!
//! Three kinds of cone, each wholly missing: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A
//! Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 1291 (2009),
//! matrices for severity 1.0 in linear RGB; from memory, and each row must add up to 1, since white
//! stays white.

use super::look::{INK, INK_SOFT, Look, PAPER, RULE_STRONG};

const SIGHTS: [(&str, [[f64; 3]; 3]); 4] = [
    ("normal", [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]),
    (
        "protanopia",
        [
            [0.152_286, 1.052_583, -0.204_868],
            [0.114_503, 0.786_281, 0.099_216],
            [-0.003_882, -0.048_116, 1.051_998],
        ],
    ),
    (
        "deuteranopia",
        [
            [0.367_322, 0.860_646, -0.227_968],
            [0.280_085, 0.672_501, 0.047_413],
            [-0.011_820, 0.042_940, 0.968_881],
        ],
    ),
    (
        "tritanopia",
        [
            [1.255_528, -0.076_749, -0.178_779],
            [-0.078_411, 0.930_809, 0.147_602],
            [0.004_733, 0.691_367, 0.303_900],
        ],
    ),
];

/// The smallest difference that an eye sees is about 2.3 (M. Mahy, L. Van Eycken, A. Oosterlinck, Color
/// Res. Appl. 19, 105 (1994), from memory); thin lines and small marks need a few times as much (own
/// rule: five).
const APART: f64 = 5.0 * 2.3;

/// Linear RGB of a hue, by the transfer function of sRGB (IEC 61966-2-1, from memory).
fn linear(hue: &str) -> [f64; 3] {
    [1, 3, 5].map(|at| {
        let value = f64::from(u8::from_str_radix(&hue[at..at + 2], 16).expect("hex")) / 255.0;
        if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
    })
}

fn times(matrix: &[[f64; 3]; 3], of: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row.iter().zip(of).map(|(a, b)| a * b).sum())
}

/// CIE L*a*b* under D65 (ISO/CIE 11664-4; sRGB primaries of IEC 61966-2-1; from memory).
fn lab(linear: [f64; 3]) -> [f64; 3] {
    let xyz = times(
        &[
            [0.412_456_4, 0.357_576_1, 0.180_437_5],
            [0.212_672_9, 0.715_152_2, 0.072_175_0],
            [0.019_333_9, 0.119_192_0, 0.950_304_1],
        ],
        linear.map(|part| part.clamp(0.0, 1.0)),
    );
    let f = |t: f64| {
        if t > 216.0 / 24389.0 { t.cbrt() } else { (24389.0 / 27.0 * t + 16.0) / 116.0 }
    };
    let [x, y, z] = [f(xyz[0] / 0.950_47), f(xyz[1]), f(xyz[2] / 1.088_83)];
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

fn distance(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| (a - b).powi(2)).sum::<f64>().sqrt()
}

/// Every two looks that are dealt before hues come round again.
fn pairs() -> impl Iterator<Item = (Look, Look)> {
    (0..9).flat_map(|a| (0..a).map(move |b| (Look(a), Look(b))))
}

#[test]
fn the_laws_of_sight_leave_white_white() {
    for (name, matrix) in &SIGHTS {
        for row in matrix {
            assert!((row.iter().sum::<f64>() - 1.0).abs() < 2e-6, "{name}: {row:?}");
        }
        let [lightness, a, b] = lab(times(matrix, [1.0; 3]));
        assert!((lightness - 100.0).abs() < 0.01 && a.hypot(b) < 0.05, "{name}");
    }
}

#[test]
fn hues_stay_apart_in_every_sight() {
    for (name, matrix) in &SIGHTS {
        for (one, other) in pairs() {
            let seen = |look: Look| lab(times(matrix, linear(look.hue())));
            let apart = distance(seen(one), seen(other));
            assert!(apart >= APART, "{name}: {one:?} and {other:?} are {apart:.1} apart");
        }
    }
}

/// Grey leaves lightness only, and there some hues meet: then both mark and dash must differ, and a
/// look of the second round must be told from its first by the ring.
#[test]
fn what_meets_in_grey_differs_in_mark_and_dash() {
    let lightness = |look: Look| lab(linear(look.hue()))[0];
    let meet: Vec<(Look, Look)> =
        pairs().filter(|(a, b)| (lightness(*a) - lightness(*b)).abs() < APART).collect();
    assert!(!meet.is_empty(), "nine hues cannot all differ in grey");
    for (one, other) in meet {
        assert_ne!(one.mark(), other.mark(), "{one:?} and {other:?}");
        // Disc and ring have whole lines; the ring's is thin, and hollow.
        let whole = one.dash().is_empty() && other.dash().is_empty();
        assert!(
            one.dash() != other.dash() || whole && other == Look::NO_FOOD,
            "{one:?}, {other:?}"
        );
    }
    for first in 1..=8 {
        assert!(Look(first + 8).ringed() && !Look(first).ringed());
    }
}

/// The accent of pages, which is set as text beside ink on paper, keeps its own hue in every sight, and in
/// grey, where it can only be light or dark, it can still be read: 4.5 : 1 on white (WCAG 2.2, 1.4.3).
#[test]
fn the_accent_of_pages_is_told_from_ink_and_paper_in_every_sight() {
    let house = include_str!("../page/house.typ");
    let (_, rest) = house.split_once("#let crust-deep = rgb(\"").expect("the accent");
    let accent = rest.get(..7).expect("a hue");
    for (name, matrix) in &SIGHTS {
        let seen = |hue| lab(times(matrix, linear(hue)));
        for other in [INK, INK_SOFT, RULE_STRONG, PAPER, "#FFFFFF"] {
            let apart = distance(seen(accent), seen(other));
            assert!(apart >= APART, "{name}: {accent} and {other} are {apart:.1} apart");
        }
        let luminance: f64 = [0.2126, 0.7152, 0.0722]
            .iter()
            .zip(times(matrix, linear(accent)))
            .map(|(a, b)| a * b)
            .sum();
        assert!(1.05 / (luminance + 0.05) >= 4.5, "{name}: {luminance:.3}");
    }
}
