//! What a group writes down, and what becomes of it where it takes what the program offers.

use super::card::Card;
use super::lesson::Made;
use super::series::Written;
use crate::record::{Bag, Height, Key, Mended, Odd, SAME_MM, Tapped, Who};
use crate::slip::{Mend, Own, Slip, seen_by_group};
use jiff::{SignedDuration, Timestamp};

/// A group at one of its bags.
pub(super) struct Hands<'a> {
    pub(super) made: &'a Made,
    /// Place of the bag among all bags.
    pub(super) place: usize,
    /// Its card, as it truly stands.
    pub(super) card: &'a Card,
    /// Whether it looks at what it is asked.
    pub(super) mends: bool,
}

/// The rule of the plan by which a bag is set aside whose leak was tapped.
const LEAK_RULE: &str = "leak";

/// So many questions are answered about one bag after a reading, at most.
const QUESTIONS: usize = 4;

/// The record of a bag: every height in turn, each looked at as soon as it is written.
pub(super) fn write_down(hands: &Hands<'_>, series: &[Written]) -> Bag {
    let mut bag = Bag::default();
    for written in series {
        let height = hands.height(written);
        if written.planned == 0 {
            bag.zero = Some(height);
        } else {
            bag.readings.push(height);
        }
        if hands.mends {
            for _ in 0..QUESTIONS {
                let slips = seen_by_group(hands.own(&bag));
                let Some(slip) = slips.iter().find(|slip| is_question(slip)) else { break };
                hands.answer(&mut bag, slip);
            }
        }
    }
    bag
}

/// Whether there is more to do than to leave it.
pub(super) fn is_question(slip: &Slip) -> bool {
    slip.mends.first().is_some_and(|mend| *mend != Mend::Leave)
}

impl Hands<'_> {
    /// What a group may be asked by.
    pub(super) const fn own<'b>(&self, bag: &'b Bag) -> Own<'b> {
        let Made { code, full_mm, .. } = *self.made;
        Own { code, bag, full_height_mm: full_mm, stopped: &[] }
    }

    /// Answers a question with the first mend that can be taken. A height that is offered is
    /// written, whatever is true; whoever is asked to look again does, while the bag still stands as
    /// it stood; a leak is tapped if the seal leaks, and then the teacher sets the bag aside by the
    /// plan's rule for it.
    pub(super) fn answer(&self, bag: &mut Bag, slip: &Slip) {
        let latest = bag.readings.last().or(bag.zero.as_ref()).map(|height| height.key);
        let Some(key) = slip.reading.or(latest) else { return };
        let Some(height) = height_of(bag, key) else { return };
        let (wrote, measured) = (height.height_mm, height.measured);
        let minute = bag.minute_at(measured).unwrap_or_default();
        for mend in &slip.mends {
            match mend {
                Mend::Write(mm) => return correct(bag, key, *mm),
                Mend::AskAgain if latest == Some(key) => {
                    let again = self.card.height_mm(minute).round();
                    if (again - wrote).abs() > SAME_MM {
                        return correct(bag, key, again);
                    }
                }
                Mend::Tap(Odd::Leak)
                    if self.card.leaks_from.is_some_and(|from| from < minute) =>
                {
                    let who = self.who();
                    bag.odd.push(Tapped {
                        key: Key(u128::MAX),
                        at: measured,
                        odd: Odd::Leak,
                        who,
                    });
                    bag.set_aside = Some(LEAK_RULE.to_owned());
                    return;
                }
                Mend::SetAside(rule) => {
                    bag.set_aside = Some(rule.clone());
                    return correct(bag, key, wrote);
                }
                _ => {}
            }
        }
        // Left as it is: whoever says so is not asked again.
        correct(bag, key, wrote);
    }

    fn height(&self, written: &Written) -> Height {
        let key = (self.place as u128) << 32 | u128::from(written.planned);
        Height {
            key: Key(key),
            measured: at(written.minute),
            planned: (written.planned > 0).then_some(written.planned),
            height_mm: written.mm,
            who: self.who(),
            mended: Vec::new(),
            rival: false,
        }
    }

    fn who(&self) -> Who {
        let group = u32::from(self.made.code.group());
        Who::Group { period: self.made.in_period.clone(), group }
    }
}

/// The moment of that minute of a bag's clock.
fn at(minute: f64) -> Timestamp {
    let after = SignedDuration::from_millis((60_000.0 * minute).round() as i64);
    Timestamp::UNIX_EPOCH.saturating_add(after).unwrap_or(Timestamp::UNIX_EPOCH)
}

fn height_of(bag: &mut Bag, key: Key) -> Option<&mut Height> {
    bag.zero.iter_mut().chain(&mut bag.readings).find(|height| height.key == key)
}

fn correct(bag: &mut Bag, key: Key, mm: f64) {
    if let Some(height) = height_of(bag, key) {
        let (height_mm, at) = (height.height_mm, height.measured);
        height.mended.push(Mended { height_mm, by: key, at });
        height.height_mm = mm;
    }
}
