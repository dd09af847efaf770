//! Levels of two looks that hold together.

use super::error::SecondLookError;
use super::rule::Rule;
use crate::statistics::distribution::two_students::TwoStudents;
use crate::statistics::distribution::{normal, rising_root, student, two_normals};

/// Nominal two-sided levels of both looks: what a p-value must not exceed for "clear" (1).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Levels {
    /// Of round one alone.
    pub first: f64,
    /// Of both rounds together; 0 where no second look is allowed.
    pub pooled: f64,
}

/// Two looks at one question.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoLooks {
    share: f64,
    total: f64,
    comparisons: f64,
    student: Option<(f64, f64, TwoStudents)>,
}

impl TwoLooks {
    /// Looks of which the first has `share` of the information and that together may find what is not
    /// there with chance `total` (both 1, strictly between 0 and 1); one comparison, normal values.
    ///
    /// # Errors
    /// [`SecondLookError::NoShare`] outside.
    pub fn new(share: f64, total: f64) -> Result<Self, SecondLookError> {
        for (what, value) in [
            ("the share of information that round one has", share),
            ("the chance that both looks may have together", total),
        ] {
            if !(value > 0.0 && value < 1.0) {
                return Err(SecondLookError::NoShare { what, value });
            }
        }
        Ok(Self { share, total, comparisons: 1.0, student: None })
    }

    /// The same by Student's t with so many degrees of freedom of the spread at the first and at the
    /// pooled look.
    ///
    /// # Errors
    /// [`SecondLookError::NoFreedom`] where the pooled look has not at least one more.
    pub fn by_student(self, first: f64, pooled: f64) -> Result<Self, SecondLookError> {
        let looks = TwoStudents::new(self.share, first, pooled)
            .ok_or(SecondLookError::NoFreedom { first, pooled })?;
        Ok(Self { student: Some((first, pooled, looks)), ..self })
    }

    /// The same for a question with several comparisons whose intervals hold together at each look.
    ///
    /// They are taken to be independent, which errs on the strict side for comparisons that share a
    /// reference: levels are split evenly, 1 − (1 − α)^(1/k) for each.
    ///
    /// # Source
    /// Šidák (1967), *J. Am. Stat. Assoc.* 62, 626–633 (from memory).
    /// # Errors
    /// [`SecondLookError::NoComparison`] for none.
    pub fn over(self, comparisons: usize) -> Result<Self, SecondLookError> {
        if comparisons == 0 {
            return Err(SecondLookError::NoComparison);
        }
        Ok(Self { comparisons: comparisons as f64, ..self })
    }

    /// The chance that either look finds a difference where there is none (1); levels outside 0 to 1
    /// count as 0 or 1.
    pub fn false_clear(&self, levels: Levels) -> f64 {
        let alone = |level: f64| self.alone(level.clamp(0.0, 1.0));
        let (first, pooled) = (alone(levels.first), alone(levels.pooled));
        let one = match &self.student {
            None => {
                let bound = |level: f64| -normal::quantile(0.5 * level);
                two_normals::either_outside(bound(first), bound(pooled), libm::sqrt(self.share))
            }
            Some((df_first, df_pooled, looks)) => {
                let bound = |level: f64, df: f64| {
                    if level > 0.0 {
                        student::upper_quantile(0.5 * level, df)
                    } else {
                        f64::INFINITY
                    }
                };
                looks.either_outside(bound(first, *df_first), bound(pooled, *df_pooled))
            }
        };
        -libm::expm1(self.comparisons * libm::log1p(-one.min(1.0)))
    }

    /// The nominal level that the pooled look may use after a first look at level `first`, so that both
    /// together find at most as often as they may (1): 0 once nothing is left.
    ///
    /// This holds whether or not the second round is made because of what the first one showed.
    pub fn left_after(&self, first: f64) -> f64 {
        if first.is_nan() || first >= self.total {
            return 0.0;
        }
        let first = first.max(0.0);
        rising_root(0.0, self.total, |pooled| {
            self.false_clear(Levels { first, pooled }) - self.total
        })
    }

    /// Levels of both looks by a rule.
    pub fn levels(&self, rule: Rule) -> Levels {
        let total = self.total;
        let after = |first: f64| Levels { first, pooled: self.left_after(first) };
        // Either look alone may have at most the total; each with half of it, they have at most that.
        let shared = |levels: &dyn Fn(f64) -> Levels| {
            levels(rising_root(0.5 * total, total, |pooled| {
                self.false_clear(levels(pooled)) - total
            }))
        };
        match rule {
            Rule::Pocock => shared(&|level| Levels { first: level, pooled: level }),
            Rule::OBrienFleming => shared(&|pooled| {
                let alone = -normal::quantile(0.5 * self.alone(pooled));
                let first = 2.0 * normal::cdf(-alone / libm::sqrt(self.share));
                Levels { first: self.together(first), pooled }
            }),
            Rule::SpendingPocock => {
                let growth = std::f64::consts::E - 1.0;
                after(total * libm::log1p(growth * self.share))
            }
            Rule::SpendingOBrienFleming => {
                let z = -normal::quantile(0.25 * total);
                after(4.0 * normal::cdf(-z / libm::sqrt(self.share)))
            }
            Rule::FirstAt(first) => {
                let first = if first.is_nan() { total } else { first.clamp(0.0, total) };
                after(first)
            }
        }
    }

    /// The level of one comparison where all of a question have `level` together (1).
    pub fn alone(&self, level: f64) -> f64 {
        -libm::expm1(libm::log1p(-level) / self.comparisons)
    }

    fn together(&self, level: f64) -> f64 {
        -libm::expm1(self.comparisons * libm::log1p(-level))
    }
}
