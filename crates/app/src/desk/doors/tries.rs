//! How often somebody may be wrong, and how much a device may send.

use jiff::{SignedDuration, Timestamp};
use std::collections::BTreeMap;

/// Who or what is counted.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Counted {
    /// A device, by its random cookie. A child mistypes now and then.
    Device(String),
    /// All devices together, whatever they try to open.
    Everybody,
    /// A code of ours that something wrong was brought to, whoever brings it.
    Code(String),
    /// Signing in from an address.
    SignIn(String),
    /// What the holder of a session writes, right or wrong.
    Writing(String),
}

impl Counted {
    /// Wrong tries that are free, and the seconds after which another one is.
    const fn allowed(&self) -> (f64, f64) {
        match self {
            Self::Device(_) => (10.0, 30.0),
            // Forty devices of a class, each of which used up its own, are no flood.
            Self::Everybody => (400.0, 2.0),
            Self::Code(_) => (60.0, 10.0),
            Self::SignIn(_) => (5.0, 60.0),
            // A device that kept a whole day sends some hundred entries at once; twenty a second
            // is far more than a bench can type.
            Self::Writing(_) => (2000.0, 0.05),
        }
    }
}

/// How many wrong tries each has left.
#[derive(Debug, Default)]
pub(super) struct Tries {
    left: BTreeMap<Counted, (f64, Timestamp)>,
}

/// More than these are not remembered: the fullest are let go first.
const REMEMBERED: usize = 20_000;

impl Tries {
    /// Seconds to wait before the next try counts; none if it may be made now.
    pub(super) fn wait(&self, who: &Counted, now: Timestamp) -> Option<u32> {
        let left = self.left(who, now);
        let (_, each_s) = who.allowed();
        (left < 1.0).then(|| ((1.0 - left) * each_s).ceil().max(1.0) as u32)
    }

    /// Counts a wrong try.
    pub(super) fn wrong(&mut self, who: Counted, now: Timestamp) {
        let left = (self.left(&who, now) - 1.0).max(0.0);
        if self.left.len() >= REMEMBERED {
            self.forget(now);
        }
        self.left.insert(who, (left, now));
    }

    /// Counts what somebody does who may do so much of it. Whoever takes more than is left waits
    /// the longer for it.
    pub(super) fn spend(
        &mut self,
        who: Counted,
        much: usize,
        now: Timestamp,
    ) -> Result<(), u32> {
        if let Some(wait) = self.wait(&who, now) {
            return Err(wait);
        }
        let left = self.left(&who, now) - much as f64;
        if self.left.len() >= REMEMBERED {
            self.forget(now);
        }
        self.left.insert(who, (left, now));
        Ok(())
    }

    /// Forgets the wrong tries of one who got it right.
    pub(super) fn right(&mut self, who: &Counted) {
        self.left.remove(who);
    }

    fn left(&self, who: &Counted, now: Timestamp) -> f64 {
        let (most, each_s) = who.allowed();
        let Some((left, at)) = self.left.get(who) else { return most };
        let gone = now.duration_since(*at).max(SignedDuration::ZERO).as_secs_f64();
        (left + gone / each_s).min(most)
    }

    fn forget(&mut self, now: Timestamp) {
        let full: Vec<Counted> = self
            .left
            .keys()
            .filter(|who| self.left(who, now) >= who.allowed().0)
            .cloned()
            .collect();
        for who in &full {
            self.left.remove(who);
        }
        if full.is_empty() {
            // Somebody fills the list on purpose; what is counted for all of them stays.
            self.left.retain(|who, _| !matches!(who, Counted::Device(_)));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Counted, REMEMBERED, Tries};
    use jiff::Timestamp;

    fn at(second: i64) -> Timestamp {
        Timestamp::from_second(second).expect("a time")
    }

    #[test]
    fn one_device_is_slowed_and_its_neighbors_are_not() {
        let mut tries = Tries::default();
        let device = |name: &str| Counted::Device(name.into());
        for _ in 0..10 {
            assert_eq!(tries.wait(&device("a"), at(0)), None);
            tries.wrong(device("a"), at(0));
        }
        assert_eq!(tries.wait(&device("a"), at(0)), Some(30));
        assert_eq!(tries.wait(&device("b"), at(0)), None);
        assert_eq!(tries.wait(&device("a"), at(30)), None);
        tries.right(&device("a"));
        assert_eq!(tries.wait(&device("a"), at(0)), None);
    }

    #[test]
    fn a_class_in_which_everybody_is_slowed_is_no_flood_yet() {
        let mut tries = Tries::default();
        for child in 0..40 {
            let device = Counted::Device(child.to_string());
            while tries.wait(&device, at(0)).is_none() {
                assert_eq!(tries.wait(&Counted::Everybody, at(0)), None);
                tries.wrong(device.clone(), at(0));
                tries.wrong(Counted::Everybody, at(0));
            }
        }
        assert!(tries.wait(&Counted::Everybody, at(0)).is_some(), "one more is a flood");
    }

    #[test]
    fn whoever_takes_more_than_is_left_waits_the_longer() {
        let mut tries = Tries::default();
        let device = || Counted::Writing("a".into());
        assert_eq!(tries.spend(device(), 1999, at(0)), Ok(()));
        assert_eq!(tries.spend(device(), 400, at(0)), Ok(()));
        assert_eq!(tries.spend(device(), 1, at(0)), Err(20), "400 at twenty a second");
        assert_eq!(tries.spend(Counted::Writing("b".into()), 1, at(0)), Ok(()));
        assert_eq!(tries.spend(device(), 1, at(20)), Ok(()));
    }

    #[test]
    fn a_clock_set_back_gives_no_more_tries() {
        let mut tries = Tries::default();
        for _ in 0..5 {
            tries.wrong(Counted::SignIn("x".into()), at(1000));
        }
        assert!(tries.wait(&Counted::SignIn("x".into()), at(10)).is_some());
    }

    #[test]
    fn the_list_does_not_grow_for_ever() {
        let mut tries = Tries::default();
        for number in 0..2 * REMEMBERED {
            tries.wrong(Counted::Device(number.to_string()), at(0));
        }
        assert!(tries.left.len() <= REMEMBERED);
    }
}
