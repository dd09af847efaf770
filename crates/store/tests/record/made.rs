//! Entries for tests.

use barm_domain::code::BagCode;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use jiff::Timestamp;

/// A moment on the class day, in seconds after it began.
pub(crate) fn at(seconds: i64) -> Timestamp {
    Timestamp::from_second(1_790_000_000 + seconds).expect("a moment")
}

/// The first bag of a group.
pub(crate) fn bag(group: u8) -> BagCode {
    BagCode::all_of(1, group).next().expect("every group has a bag")
}

/// A key that no other number gives.
pub(crate) fn key(number: u32) -> Key {
    Key::new(1_790_000_000_000 + u64::from(number), u128::from(number))
}

/// What a group says of its bag.
pub(crate) fn entry(number: u32, what: What) -> Entry {
    Entry {
        key: key(number),
        subject: Subject::Bag(bag(1)),
        what,
        measured: at(i64::from(number)),
        arrived: at(i64::from(number) + 1),
        who: Who::Group { period: "1".into(), group: 1 },
    }
}

/// A reading.
pub(crate) fn reading(number: u32, height_mm: f64) -> Entry {
    entry(number, What::Reading { planned: Some(4), height_mm })
}
