//! What a ruler leaves open.

use crate::fact::Fact;

/// Smallest division that is read (mm).
pub const DIVISION: Fact = Fact::memory(
    "ruler.division",
    1.0,
    "mm",
    "school ruler marked in millimetres, read to the nearest mark; common practice, no \
         source",
);

/// Half width of what a slanting look changes (mm).
pub const PARALLAX: Fact = Fact::memory(
    "ruler.parallax",
    1.0,
    "mm",
    "ruler a few millimetres behind the edge of the card, eye at bench level; common \
         practice, no source",
)
.within((0.5, 2.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[DIVISION, PARALLAX];

/// Standard uncertainty of one reading to the nearest division, in millimetres.
///
/// ```text
/// u = d / √12      a value anywhere within half a division either way is as likely
/// ```
///
/// # Source
/// JCGM 100:2008 (GUM), F.2.2.1; clause number from memory.
pub fn reading_sd_mm(division_mm: f64) -> f64 {
    division_mm / 12.0_f64.sqrt()
}

/// Standard uncertainty of the difference of two readings of one card, in millimetres: 0.71 mm
/// for an ordinary ruler.
///
/// Both readings are rounded; the slant of the eye counts once, since one child reads both.
///
/// ```text
/// u² = 2 d²/12 + p²/3
/// ```
///
/// # Source
/// JCGM 100:2008 (GUM), 4.3.7 (limits ±p give u = p/√3) and F.2.2.1; clause numbers from memory.
pub fn difference_sd_mm(division_mm: f64, parallax_mm: f64) -> f64 {
    libm::hypot(reading_sd_mm(division_mm) * 2.0_f64.sqrt(), parallax_mm / 3.0_f64.sqrt())
}

/// [`difference_sd_mm`] of an ordinary ruler in ordinary hands, in millimetres.
pub fn usual_difference_sd_mm() -> f64 {
    difference_sd_mm(DIVISION.value, PARALLAX.value)
}

/// A ruler in somebody's hands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ruler {
    /// Smallest division that is read (mm).
    pub division_mm: f64,
    /// Half width of what a slanting look changes (mm).
    pub parallax_mm: f64,
}

impl Ruler {
    /// An ordinary ruler in ordinary hands.
    pub const USUAL: Self = Self { division_mm: DIVISION.value, parallax_mm: PARALLAX.value };

    /// [`difference_sd_mm`] of two readings, in millimetres.
    pub fn difference_sd_mm(&self) -> f64 {
        difference_sd_mm(self.division_mm, self.parallax_mm)
    }

    /// [`reading_sd_mm`] of one reading, in millimetres: what all rises above one zero have in common.
    pub fn reading_sd_mm(&self) -> f64 {
        reading_sd_mm(self.division_mm)
    }
}
