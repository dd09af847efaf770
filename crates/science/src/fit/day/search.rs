//! The search for the day that its readings speak for most.

use super::arrived::Arrived;
use super::curves::{Around, COARSE, Seen};
use super::gathered::Day;
use super::learned::DayFit;
use super::stand::Stand;
use super::starts::beside;
use super::tops::together;
use super::unlike::Trust;
use super::{BagSeen, DayError};
use crate::prior::Prior;
use crate::side_by_side::each;

/// How far bags are looked at around a place, as shares of what is left open (1), one after the other.
const REACHES: [f64; 5] = [1.0, 0.7, 0.5, 0.3, 0.1];
/// By how much readings that fit no day are taken to scatter more than expected, one after the other.
const NOISES: [f64; 5] = [4.0, 16.0, 64.0, 256.0, 1024.0];
/// By how much a scout may be mistaken about how much the readings speak for where it came (logarithm of odds).
const SCOUTED: f64 = 5.0;

/// Finds what a day's readings say.
///
/// From each look at how bags hang on the numbers, Gauss and Newton's steps lead on, and bags are trusted
/// by where those end, until neither moves. Around that place bags are looked at anew, over what is left
/// open there. Where looks lead to and fro, the search goes only a part of the way: two that lead to
/// each other have a place between them that leads to itself. How large a part follows from the last two
/// ways r and shares s:
///
/// ```text
/// s' = −s rᵀ(r' − r)/|r' − r|²        at least 0.1; at most 1, once near 2
/// ```
///
/// What is left open changes with the place, and where that leads the search round in rings it is held after a
/// while: bags are looked at over that from then on, and several looks together tell where to go
/// (`remembered`).
///
/// A day whose rises bend within what is left open may find no rest: the slopes over one place lead to another,
/// and those there back. Then bags are looked at less far around a place, until the search arrives.
///
/// Readings that fit no day may lead nowhere: the numbers they ask for lie where no bag is. Then all are taken
/// for four times as noisy as they may be, and so on, until that is enough for them and a search arrives.
/// So such readings teach little, and what they teach is wide.
///
/// A day may have several tops. So once a search has arrived, scouts set out to either side of what was known
/// beforehand (`starts`), and go on until they are on their way to the same place or have nearly
/// arrived at another. What is said is the mean over all tops, by how much the readings speak for each
/// (`tops`).
///
/// # Source
/// B. M. Irons, R. C. Tuck (1969), *Int. J. Numer. Methods Eng.* 1, 275-277 (after A. C. Aitken); parts of the
/// way: W. R. Mann (1953), *Proc. Am. Math. Soc.* 4, 506-510. From memory.
///
/// # Errors
/// [`DayError`] for readings or bags that cannot be.
pub fn fit_day(bags: &[BagSeen], prior: &Prior) -> Result<DayFit, DayError> {
    let search = Search::new(Day::new(bags, prior)?)?;
    let middle = Stand::open(vec![0.0; search.day.keys.len()]);
    if let Some(found) = search.arrive(&middle)? {
        return Ok(together(search.tops(search.at_rest(found))));
    }
    let mut found = Err(DayError::Lost);
    for noise in NOISES {
        if !matches!(found, Err(DayError::Lost)) {
            break;
        }
        let trust = Some(Trust::fixed(bags.len(), noise));
        found = search.run(Stand { trust, ..middle.clone() }, 1.0, None);
    }
    found.map(|found| found.fit)
}

/// A day that is searched.
pub(super) struct Search<'a> {
    pub(super) day: Day<'a>,
    /// Which effects move each kind of bag at all: no bag without milk hangs on how fast yeast learns galactose.
    pub(super) live: Vec<Vec<bool>>,
}

impl<'a> Search<'a> {
    /// Tries each number by itself, over all that the prior leaves open.
    fn new(day: Day<'a>) -> Result<Self, DayError> {
        let middle = Stand::open(vec![0.0; day.keys.len()]);
        let around = Around {
            deviates: &day.deviates(&middle.at),
            covariance: &day.covariance(&middle.covariance),
            apart: true,
            only: None,
            fine: COARSE,
        };
        let all: Vec<Vec<bool>> =
            day.kinds.iter().map(|kind| vec![true; kind.effects.len()]).collect();
        let live = day.look(&around, &all, None)?.iter().map(moves).collect();
        Ok(Self { day, live })
    }

    /// A search that looks less and less far around a place until it arrives; `None` if it leads nowhere.
    fn arrive(&self, from: &Stand) -> Result<Option<Arrived>, DayError> {
        let mut nearest: Option<Arrived> = None;
        for reach in REACHES {
            match self.run(from.clone(), reach, None) {
                Ok(found) if found.is_settled() => return Ok(Some(found)),
                Ok(found) if nearest.as_ref().is_none_or(|one| found.fit.off < one.fit.off) => {
                    nearest = Some(found);
                }
                Ok(_) | Err(DayError::Lost) => {}
                Err(error) => return Err(error),
            }
        }
        Ok(nearest)
    }

    /// What was found, or what is found from elsewhere if the search did not come to rest there.
    fn at_rest(&self, found: Arrived) -> Arrived {
        if found.is_settled() {
            return found;
        }
        let mut elsewhere = beside(&self.day, &found).into_iter();
        elsewhere
            .find_map(|start| self.arrive(&start).ok()?.filter(Arrived::is_settled))
            .unwrap_or(found)
    }

    /// The tops that are known of a day: the one that was found, and those that scouts find beside it.
    fn tops(&self, found: Arrived) -> Vec<Arrived> {
        let scouts = beside(&self.day, &found);
        let scouted = each(scouts.len(), |at| self.run(scouts[at].clone(), 1.0, Some(&found)));
        let scouted: Vec<Arrived> = scouted.into_iter().filter_map(Result::ok).collect();
        let least = found.evidence - SCOUTED;
        let mut tops = vec![found];
        for scout in scouted.iter().filter(|scout| scout.evidence > least) {
            if tops.iter().any(|top| top.is_near(&scout.stand.at)) {
                continue;
            }
            // One that was nearly there may fall back to what is known, or come to no rest.
            let Ok(Some(there)) = self.arrive(&scout.stand) else { continue };
            if !tops.iter().any(|top| top.is_near(&there.stand.at)) {
                tops.push(there);
            }
        }
        if tops.iter().any(Arrived::is_settled) {
            tops.retain(Arrived::is_settled);
        }
        tops
    }
}

/// Which effects move a bag.
fn moves(seen: &Seen) -> Vec<bool> {
    seen.slopes.iter().map(|slope| slope.iter().any(|value| value.abs() > 1e-3)).collect()
}
