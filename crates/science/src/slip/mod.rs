//! What goes wrong with a reading or a bag, by likelihood: how well each slip explains what was
//! read, beside the forecast and the sister bags.
//!
//! Every slip is a hypothesis of how it changes the heights that a sound bag would show. A bag's
//! heights are one draw of a multivariate t around the curve that forecast, class and sister bags
//! give it (`Sound`); the prior rates of [`Rates`] and Bayes' rule make probabilities of that.
//! Nothing here changes a number.

mod beside;
mod class_low;
mod copied;
mod course;
mod dead;
mod fives;
mod foam;
mod followed;
mod grid;
mod heaped;
mod hot;
mod leak;
mod level;
mod logs;
mod marks;
mod matrix;
mod misread;
mod nodes;
mod on_grid;
mod pooled;
mod rates;
mod says;
mod scale;
mod sound;
mod start;
mod strange;
mod student;
mod suspect;
mod swapped;
mod tilt;
mod transposed;
mod unit;
mod unshaken;
mod weighed;
mod written;

pub use class_low::{ClassLow, class_low};
pub use course::Course;
pub use followed::{Followed, Height};
pub use rates::Rates;
pub use suspect::{Suspect, Suspected};
pub use weighed::What;
pub use written::Unit;

use beside::Beside;
use level::Level;
use sound::Sound;
use weighed::Weighed;

/// How likely each slip is, bag by bag in the order given, the likeliest first; what is under one
/// in a thousand is left out.
///
/// The bags of one call are those of one period: they share its yeast and its water. The first
/// suspicions come with the second height of a bag, its zero reading counted; bags with fewer have
/// none.
pub fn suspects(bags: &[Followed], rates: &Rates) -> Vec<Suspected> {
    let rulers = marks::variances(bags);
    let level = Level::of(bags, &rulers, rates);
    let beside = Beside::of(bags, &rulers, &level);
    let weighed: Vec<Option<(Sound, Weighed)>> = (0..bags.len())
        .map(|at| {
            let sound = Sound::of(&bags[at], beside.of_bag(at, &bags[at]), rulers[at])?;
            let mut weighed = Weighed::new(&sound);
            alone(&bags[at], &sound, rates, &mut weighed);
            Some((sound, weighed))
        })
        .collect();
    let mut with_others: Vec<Option<Weighed>> =
        weighed.iter().map(|one| one.as_ref().map(|(_, weighed)| weighed.clone())).collect();
    copied::weigh(bags, &weighed, rates, &mut with_others);
    swapped::weigh(bags, &beside, &weighed, rates, &mut with_others);
    with_others
        .into_iter()
        .map(|weighed| weighed.map_or_else(Suspected::default, |weighed| weighed.suspected()))
        .collect()
}

/// What a bag may have suffered by itself.
fn alone(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    unit::weigh(bag, sound, rates, weighed);
    transposed::weigh(bag, sound, rates, weighed);
    misread::weigh(bag, sound, rates, weighed);
    tilt::weigh(bag, sound, rates, weighed);
    leak::weigh(bag, sound, rates, weighed);
    foam::weigh(bag, sound, rates, weighed);
    start::weigh(bag, sound, rates, weighed);
    dead::weigh(sound, rates, weighed);
    hot::weigh(bag, sound, rates, weighed);
    unshaken::weigh(bag, sound, rates, weighed);
    heaped::weigh(sound, rates, weighed);
    fives::weigh(bag, sound, rates, weighed);
    strange::weigh(sound, rates, weighed);
}
