//! Where a search arrived.

use super::DayError;
use super::curves::Seen;
use super::gathered::Day;
use super::learned::DayFit;
use super::place::{Local, Place};
use super::stand::{Stand, measure};
use super::unlike::Trust;
use super::way::STILL;
use crate::cholesky::lower_triangle;
use crate::householder::length;
use crate::prior::{Key, Learned, UNMOVED};

/// Another search is on its way to the same place once it is as near as this (standard deviations of what is
/// left open there, along the numbers' covariance).
const SAME: f64 = 0.7;

/// What is said of a day where a search arrived, and how much its readings speak for that.
pub(super) struct Arrived {
    pub(super) fit: DayFit,
    pub(super) stand: Stand,
    /// On a logarithmic scale ([`Place::evidence`]).
    pub(super) evidence: f64,
    /// How bags hang on what is open there.
    pub(super) seen: Vec<Seen>,
    /// Share of each number's variance beforehand that is left open (1).
    pub(super) left: Vec<f64>,
    /// The triangle of the covariance.
    root: Vec<Vec<f64>>,
}

impl Arrived {
    pub(super) fn new(
        day: &Day,
        seen: &[Seen],
        place: &Place,
        trust: Trust,
        off: f64,
    ) -> Result<Self, DayError> {
        let full = Local::new(day, seen, &Trust::full(day.bags.len()));
        let off_mm = day.off(|kind| &seen[kind].rises);
        let all_alike = Place::new(&full, place.at.clone(), off_mm)?;
        let unwidened = day.covariance(&all_alike.covariance());
        let covariance = place.covariance();
        let open = Stand::open(vec![0.0; day.keys.len()]);
        let before = day.covariance(&open.covariance);
        let fit = DayFit {
            expected_mm: day.expected(seen),
            learned: Learned {
                names: day.keys.iter().map(Key::to_string).collect(),
                means: day.deviates(&place.at),
                covariance: day.covariance(&covariance),
            },
            chi_square: place.chi_square,
            freedom: place.freedom(&trust, &day.counts()),
            noise: trust.noise,
            unlike: trust.unlike.clone(),
            unwidened: unwidened.iter().enumerate().map(|(at, row)| row[at].sqrt()).collect(),
            off,
        };
        let left = |at: usize| fit.learned.covariance[at][at] / before[at][at];
        Ok(Self {
            left: (0..before.len()).map(left).collect(),
            seen: seen.to_vec(),
            fit,
            evidence: place.evidence(&trust),
            root: lower_triangle(&covariance),
            stand: Stand { at: place.at.clone(), covariance, trust: Some(trust) },
        })
    }

    /// Which numbers the day moved.
    pub(super) fn moved(&self) -> Vec<bool> {
        self.left.iter().map(|left| *left < UNMOVED * UNMOVED).collect()
    }

    /// Whether the search came to rest.
    pub(super) fn is_settled(&self) -> bool {
        self.fit.off < STILL
    }

    /// Whether a place is this one, as far as a search that has not arrived can tell.
    pub(super) fn is_near(&self, at: &[f64]) -> bool {
        let mut way: Vec<f64> =
            at.iter().zip(&self.stand.at).map(|(to, from)| to - from).collect();
        measure(&mut way, &self.root);
        length(&way) < SAME
    }
}
