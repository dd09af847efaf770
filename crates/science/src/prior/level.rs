//! Where an uncertain number lives: with the day, the period, the group or the bag.

/// How widely a number is spread, as standard deviations on the scale of its [`Transform`].
///
/// The four parts are independent of each other and add up as variances.
///
/// [`Transform`]: super::Transform
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spread {
    /// Of all that the bags of one day share: the yeast's lot, what a label leaves open.
    pub day: f64,
    /// Of all that the bags of one period share: a jug, the age of a solution.
    pub period: f64,
    /// Of all that the bags of one group share: the way it fills a spoon.
    pub group: f64,
    /// Of one bag.
    pub bag: f64,
}

impl Spread {
    /// The same for all bags of a day.
    pub const fn day(sd: f64) -> Self {
        Self { day: sd, period: 0.0, group: 0.0, bag: 0.0 }
    }

    /// Each bag's own.
    pub const fn bag(sd: f64) -> Self {
        Self { day: 0.0, period: 0.0, group: 0.0, bag: sd }
    }

    /// Each of them times `factor`.
    pub const fn times(&self, factor: f64) -> Self {
        Self {
            day: self.day * factor,
            period: self.period * factor,
            group: self.group * factor,
            bag: self.bag * factor,
        }
    }

    /// Standard deviation of everything together.
    pub fn total(&self) -> f64 {
        let square = |sd: f64| sd * sd;
        (square(self.day) + square(self.period) + square(self.group) + square(self.bag)).sqrt()
    }
}
