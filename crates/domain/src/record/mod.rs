//! What happened on the class day: entries that are only ever added, and what they add up to.
//!
//! Nothing in a record is changed or taken out. A slip of the pen is mended by another entry that
//! points to the first; both stay. [`replay()`] turns any list of entries into the state of every
//! bag, period and group, and cannot fail: an entry that makes no sense where it stands is kept,
//! and listed with the reason.
//!
//! Nothing here can hold a name or a sentence that a person wrote. Such words lie elsewhere, under
//! a random [`WordsKey`], so that they can be deleted while the record stays whole.

mod bag;
mod bound;
mod counted;
mod entry;
mod fold;
mod key;
mod known;
mod ledger;
mod refused;
mod replay;
mod standing;
mod what;

pub use bag::{Bag, Height, Mended, Tapped};
pub use bound::{Bound, older_version};
pub use counted::{Counted, SAME_MM};
pub use entry::{Entry, Subject, Who};
pub use key::{Key, WordsKey};
pub use known::{Home, Known};
pub use ledger::{Ledger, Replaced};
pub use refused::Refused;
pub use replay::replay;
pub use standing::{GroupStanding, Guess, PeriodStanding, StandIn, Standing};
pub use what::{Audience, Face, Lent, Made, Odd, Truth, What};
