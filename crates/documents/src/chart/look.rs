//! How a treatment looks: its hue, its mark and its dash, which always travel together.
//!
//! The hues were found by annealing for the largest smallest distance in CAM02-UCS under normal sight and
//! under simulated protanopia, deuteranopia and tritanopia (Machado, Oliveira, Fernandes 2009, "A
//! Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15(6); title from
//! memory). In grey some of them meet, so no chart may ever tell treatments apart by hue alone.

/// The ink of text, axes and the treatment without food.
pub const INK: &str = "#17233B";
/// The ink of second-rank text.
pub const INK_SOFT: &str = "#4A5266";
/// Hairlines that carry no meaning of their own.
pub const RULE: &str = "#D3C9B4";
/// Axes and edges that must be seen.
pub const RULE_STRONG: &str = "#857C69";
/// The paper of the screen; print is white.
pub const PAPER: &str = "#F9F5EB";

/// The drawn shape that stands for one bag of a treatment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Mark {
    /// Hollow circle; always the bag without food, or the reference that stands for it.
    Ring,
    /// Filled circle.
    Disc,
    /// Square.
    Square,
    /// Triangle on its base.
    Triangle,
    /// Square on its corner.
    Diamond,
    /// Triangle on its tip.
    TriangleDown,
    /// Upright cross.
    Plus,
    /// Slanted cross.
    Cross,
    /// Two triangles, tip to tip.
    Hourglass,
}

/// One place in the order in which looks are dealt to treatments.
///
/// 0 is the bag without food: ink, ring, thin solid line. 1 to 8 are dealt in order; 9 to 16 repeat 1 to 8
/// with the mark inside a thin ring, and later ones start again.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default, serde::Serialize,
)]
pub struct Look(pub u8);

const HUES: [&str; 9] = [
    INK, "#9F4731", "#517EC9", "#13514D", "#9A8254", "#554491", "#6A8875", "#443808", "#7C647A",
];

const MARKS: [Mark; 9] = [
    Mark::Ring,
    Mark::Disc,
    Mark::Square,
    Mark::Triangle,
    Mark::Diamond,
    Mark::TriangleDown,
    Mark::Plus,
    Mark::Cross,
    Mark::Hourglass,
];

const DASHES: [&str; 9] =
    ["", "", "9 4", "4 3", "9 3 2 3", "1.6 3.4", "12 3 12 3 3 3", "8 3 2 3 2 3", "1 2"];

impl Look {
    /// The look of the bag without food.
    pub const NO_FOOD: Self = Self(0);

    fn place(self) -> usize {
        if self.0 == 0 { 0 } else { (usize::from(self.0) - 1) % 8 + 1 }
    }

    /// The hue as a CSS color.
    pub fn hue(self) -> &'static str {
        HUES[self.place()]
    }

    /// The mark of one bag.
    pub fn mark(self) -> Mark {
        MARKS[self.place()]
    }

    /// The dash of the line as an SVG `stroke-dasharray`; empty for a solid line.
    pub fn dash(self) -> &'static str {
        DASHES[self.place()]
    }

    /// Whether the mark stands inside a thin ring, because its plain form is taken.
    pub fn ringed(self) -> bool {
        self.0 > 8 && (self.0 - 1) / 8 % 2 == 1
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance, WCAG 2.2 (W3C 2023), from memory.
    fn luminance(hue: &str) -> f64 {
        let part = |at: usize| {
            let value = f64::from(u8::from_str_radix(&hue[at..at + 2], 16).unwrap()) / 255.0;
            if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
    }

    fn contrast(a: &str, b: &str) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// WCAG 2.2, success criteria 1.4.11 (3 : 1 for marks and lines) and 1.4.3 (4.5 : 1 for text).
    #[test]
    fn marks_and_text_stand_out_from_the_paper() {
        for ground in [PAPER, "#FFFFFF"] {
            for look in (0..=8).map(Look) {
                let contrast = contrast(look.hue(), ground);
                assert!(contrast >= 3.0, "{look:?} on {ground}: {contrast:.2}");
            }
            assert!(contrast(INK, ground) >= 4.5 && contrast(INK_SOFT, ground) >= 4.5);
            assert!(contrast(RULE_STRONG, ground) >= 3.0);
        }
    }

    #[test]
    fn sixteen_treatments_and_the_bag_without_food_all_look_different_without_color() {
        let plain = |look: u8| (Look(look).mark(), Look(look).ringed());
        let looks: std::collections::HashSet<_> = (0..=16).map(plain).collect();
        assert_eq!(looks.len(), 17);
        assert_eq!((Look(9).mark(), Look(9).ringed()), (Mark::Disc, true));
        assert_eq!((Look(17).mark(), Look(17).ringed()), (Mark::Disc, false));
    }
}
