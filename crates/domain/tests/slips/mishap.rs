//! What goes wrong in the simulated classes, in ways of its own.

use crate::school::Made;
use barm_domain::slip::WrittenIn;
use barm_science::statistics::chance::Chance;

/// Something that goes wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(crate) enum Mishap {
    #[default]
    Unit,
    Transposed,
    Misread,
    Tilt,
    Leak,
    Foam,
    Start,
    Dead,
    Hot,
    Unshaken,
    Heaped,
    Copied,
    Swapped,
    Fives,
}

impl Mishap {
    pub(crate) const fn says(self) -> &'static str {
        match self {
            Self::Unit => "another unit",
            Self::Transposed => "two digits swapped",
            Self::Misread => "a reading far off",
            Self::Tilt => "a tilted card",
            Self::Leak => "a leak, of any size",
            Self::Foam => "foam under the card",
            Self::Start => "a clock begun late or early",
            Self::Dead => "no living yeast in one bag",
            Self::Hot => "water too hot for one bag",
            Self::Unshaken => "an enzyme not shaken",
            Self::Heaped => "a heaped spoon",
            Self::Copied => "heights copied",
            Self::Swapped => "two bags taken for one another",
            Self::Fives => "read to 5 mm only",
        }
    }
}

/// What went wrong with a bag, and how.
#[derive(Debug, Clone, Default)]
pub(crate) struct Spoiled {
    pub(crate) mishap: Mishap,
    /// Place of the first height that it spoils.
    pub(crate) at: usize,
    /// The unit, of a unit slip.
    pub(crate) unit: Option<WrittenIn>,
    /// Last height of a run.
    pub(crate) to: usize,
    /// When it begins (min), how strong it is, and which kind.
    pub(crate) begins: f64,
    pub(crate) strength: f64,
    pub(crate) kind: usize,
    /// What a leak lost between two readings at most (mm).
    pub(crate) lost_mm: f64,
}

impl Spoiled {
    /// What happens to a bag as a whole.
    pub(crate) fn of_bag(
        made: &Made,
        minutes: &[(u32, f64)],
        sound_mm: &[f64],
        chances: &dyn Fn(Mishap) -> f64,
        chance: &mut Chance,
    ) -> Option<Self> {
        use Mishap::{Dead, Fives, Foam, Heaped, Hot, Leak, Start, Unshaken};
        if minutes.len() < 3 {
            return None;
        }
        let kinds = [Leak, Foam, Start, Dead, Hot, Unshaken, Heaped, Fives];
        let happens = |mishap: &Mishap| {
            (*mishap != Unshaken || made.enzyme) && chance.uniform() < chances(*mishap)
        };
        let mishap = kinds.into_iter().find(happens)?;
        let count = minutes.len();
        let mut one = Self { mishap, kind: chance.below(3), ..Self::default() };
        match mishap {
            Leak => {
                let at = 1 + chance.below(count - 1);
                return Some(Self::leak(at, minutes, sound_mm, chance));
            }
            Foam => {
                one.at = 1 + chance.below(count - 1);
                one.strength = 3.0 + 9.0 * chance.uniform();
            }
            Start => {
                let sign = if chance.uniform() < 0.7 { 1.0 } else { -1.0 };
                one.strength = sign * (1.5 + 4.0 * chance.uniform());
            }
            Dead => one.strength = 0.12 * chance.uniform(),
            Hot => one.strength = 1.0 + 6.0 * chance.uniform(),
            Unshaken => one.strength = 0.2 + 0.5 * chance.uniform(),
            Heaped => one.strength = 1.4 + 0.7 * chance.uniform(),
            _ => {}
        }
        Some(one)
    }

    /// A leak that begins after the reading before a place: a steady hole, some gas at once, or a
    /// hole through which the more goes the fuller the bag is, up to a seal that springs open.
    pub(crate) fn leak(
        at: usize,
        minutes: &[(u32, f64)],
        sound_mm: &[f64],
        chance: &mut Chance,
    ) -> Self {
        let (from, to) = (minutes[at - 1].1, minutes[at].1);
        let begins = from + (to - from) * chance.uniform();
        let kind = chance.uniform();
        let kind = if kind < 0.4 { 0 } else { 1 + usize::from(kind > 0.5) };
        let strength = match kind {
            0 => 0.15 * 20.0_f64.powf(chance.uniform()),
            1 => (0.1 + 0.9 * chance.uniform()) * (sound_mm[at] + 2.0),
            _ => 0.03 * 30.0_f64.powf(chance.uniform()),
        };
        let mut one =
            Self { mishap: Mishap::Leak, at, begins, kind, strength, ..Self::default() };
        let lost: Vec<f64> = (0..minutes.len())
            .map(|at| sound_mm[at] - one.leaky(at, minutes, sound_mm))
            .collect();
        // Of the interval in which it begins and the one after.
        let later = lost.windows(2).take(at + 1).map(|two| two[1] - two[0]);
        one.lost_mm = later.fold(0.0, f64::max);
        one
    }

    /// Rise at a height with what is wrong.
    pub(crate) fn rise(
        &self,
        at: usize,
        minute: f64,
        sound: &dyn Fn(f64) -> f64,
        minutes: &[(u32, f64)],
    ) -> f64 {
        match self.mishap {
            Mishap::Leak => {
                let all: Vec<f64> = minutes.iter().map(|(_, minute)| sound(*minute)).collect();
                self.leaky(at, minutes, &all)
            }
            Mishap::Foam if at >= self.at => sound(minute) + self.strength,
            // Two in three: the zero was read in time and only typed late.
            Mishap::Start if at > 0 && self.kind < 2 => {
                sound((minute + self.strength).max(0.0))
            }
            Mishap::Start if at > 0 => {
                sound((minute + self.strength).max(0.0)) - sound(self.strength.max(0.0))
            }
            Mishap::Dead | Mishap::Unshaken | Mishap::Heaped => self.strength * sound(minute),
            Mishap::Hot => {
                // Yeast that dies, in steps of a tenth of a minute, and warm air.
                let steps = (10.0 * minute) as usize;
                let made: f64 = (0..steps)
                    .map(|step| 0.1 * step as f64)
                    .map(|at| (sound(at + 0.1) - sound(at)) * (-at / self.strength).exp())
                    .sum();
                let warm = 1.2 * (1.0 - (-minute).exp()) * (-minute / 10.0).exp();
                made + warm
            }
            _ => sound(minute),
        }
    }

    /// Rise of a bag that leaks.
    pub(crate) fn leaky(&self, at: usize, minutes: &[(u32, f64)], sound_mm: &[f64]) -> f64 {
        let minute = minutes[at].1;
        let open = (minute - self.begins).max(0.0);
        if at < self.at {
            return sound_mm[at];
        }
        match self.kind {
            0 => (sound_mm[at] - self.strength * open).max(0.0),
            1 => (sound_mm[at] - self.strength).max(0.0),
            _ => {
                let mut rise = sound_mm[self.at - 1];
                let mut before = self.begins;
                for place in self.at..=at {
                    let gain = sound_mm[place] - sound_mm[place - 1];
                    let span = minutes[place].1 - before;
                    rise = (rise + 0.5 * gain) * (-self.strength * span).exp() + 0.5 * gain;
                    before = minutes[place].1;
                }
                rise
            }
        }
    }

    /// What happens to single readings; the first that does is the only one.
    pub(crate) fn of_readings(
        heights: &mut [(u32, f64, f64)],
        sound_mm: &[f64],
        chances: &dyn Fn(Mishap) -> f64,
        chance: &mut Chance,
    ) -> Option<Self> {
        for at in 0..heights.len() {
            let mm = heights[at].2;
            if chance.uniform() < chances(Mishap::Unit) {
                let share = chance.uniform();
                let unit = match share {
                    share if share < 0.5 => WrittenIn::Centimeters,
                    share if share < 0.7 => WrittenIn::Inches,
                    share if share < 0.85 => WrittenIn::Eighths,
                    _ => WrittenIn::PointLost,
                };
                let to = if chance.uniform() < 0.7 { at } else { heights.len() - 1 };
                let one =
                    Self { mishap: Mishap::Unit, at, to, unit: Some(unit), ..Self::default() };
                one.write(heights);
                return Some(one);
            }
            if let Some(other) = swapped(mm)
                && chance.uniform() < chances(Mishap::Transposed)
            {
                heights[at].2 = other;
                return Some(Self { mishap: Mishap::Transposed, at, ..Self::default() });
            }
            if chance.uniform() < chances(Mishap::Misread) {
                heights[at].2 = (60.0 * chance.uniform()).round().max(1.0);
                let strength = heights[at].2 - mm;
                return Some(Self { mishap: Mishap::Misread, at, strength, ..Self::default() });
            }
            if chance.uniform() < chances(Mishap::Tilt) && sound_mm.len() > at {
                let sign = if chance.uniform() < 0.5 { -1.0 } else { 1.0 };
                heights[at].2 = (mm + (sign * (2.0 + 6.0 * chance.uniform())).round()).max(1.0);
                let strength = heights[at].2 - mm;
                return Some(Self { mishap: Mishap::Tilt, at, strength, ..Self::default() });
            }
        }
        None
    }

    /// Writes heights in the unit.
    pub(crate) fn write(&self, heights: &mut [(u32, f64, f64)]) {
        let Some(unit) = self.unit else { return };
        let to = self.to.min(heights.len() - 1);
        for height in &mut heights[self.at..=to] {
            let value = height.2 / unit.factor();
            height.2 = match unit {
                // A ruler in inches: to sixteenths with two places, or in tenths.
                WrittenIn::Inches if self.kind == 0 => {
                    ((16.0 * value).round() / 16.0 * 100.0).round() / 100.0
                }
                WrittenIn::Inches => (10.0 * value).round() / 10.0,
                WrittenIn::Eighths => value.round(),
                WrittenIn::Centimeters | WrittenIn::PointLost => (20.0 * value).round() / 20.0,
            };
        }
    }
}

fn swapped(mm: f64) -> Option<f64> {
    let (tens, ones) = ((mm / 10.0).floor(), mm % 10.0);
    let whole = (mm - mm.round()).abs() < 1e-9;
    let fits = (1.0..10.0).contains(&tens) && ones >= 1.0 && (tens - ones).abs() >= 0.5;
    (whole && fits).then_some(10.0 * ones + tens)
}
