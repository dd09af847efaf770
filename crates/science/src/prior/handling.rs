//! How the scatter of what hands do divides over periods, groups and bags.
//!
//! How large it is comes with the bag's setup: a spoon, a jug, a cylinder each bring their own.

use super::Spread;
use crate::fact::Fact;

const JUG_PERIOD_SHARE: Fact = Fact::memory(
    "forecast.jug_period_share",
    0.8,
    "1",
    "one jug and one thermometer serve a period: share of the variance of the poured temperature \
     that its bags have in common; judgement",
)
.within((0.5, 0.95));

const HABIT_SHARE: Fact = Fact::memory(
    "forecast.habit_share",
    0.5,
    "1",
    "who fills spoons high once does it again: share of the variance of a dose, or of the air left \
     in a bag, that the bags of one group have in common; judgement",
)
.within((0.2, 0.8));

pub(super) const CARD_DAY_SHARE: Fact = Fact::memory(
    "forecast.card_day_share",
    0.8,
    "1",
    "bags and cards of one box are alike: share of the variance that a day has in common; \
     judgement",
);

/// Facts of this module.
pub(super) const FACTS: [Fact; 3] = [JUG_PERIOD_SHARE, HABIT_SHARE, CARD_DAY_SHARE];

/// A dose of anything, or the air pressed out: a standard deviation of one in all.
pub(crate) fn habit() -> Spread {
    let share = HABIT_SHARE.value;
    Spread { group: share.sqrt(), bag: (1.0 - share).sqrt(), ..Spread::default() }
}

/// The temperature of what is poured out of a jug: a standard deviation of one in all.
pub(crate) fn jug() -> Spread {
    let share = JUG_PERIOD_SHARE.value;
    Spread { period: share.sqrt(), bag: (1.0 - share).sqrt(), ..Spread::default() }
}

/// Bags and cards out of one box: a standard deviation of one in all.
pub(super) fn of_one_box() -> Spread {
    let share = CARD_DAY_SHARE.value;
    Spread { day: share.sqrt(), bag: (1.0 - share).sqrt(), ..Spread::default() }
}
