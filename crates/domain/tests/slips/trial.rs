//! Many classes, and what was said of each bag after each reading.

use crate::class::{Day, Failure, INTERVAL, Read, Width, class};
use crate::mishap::{Mishap, Spoiled};
use crate::school::{LAST, Made};
use crate::share::Share;
use crate::watch::{look, place};
use barm_domain::record::Odd;
use barm_domain::slip::{ClassCall, Mend, Slip, SlipKind, TOLD_FROM};
use barm_science::statistics::chance::Chance;
use std::collections::BTreeMap;

/// A bag with what was said of it after each reading, by planned minute.
pub(crate) struct Followed {
    pub(crate) read: Read,
    pub(crate) said: Vec<(u32, Vec<Slip>)>,
    /// Whether the bag that it is said to be a copy of is one of it.
    pub(crate) copied_by: bool,
}

/// One class.
pub(crate) struct Class {
    pub(crate) bags: Vec<Followed>,
    /// After each reading: the call, if there was one.
    pub(crate) calls: Vec<(u32, Option<ClassCall>)>,
}

/// What is tried.
#[derive(Clone, Copy)]
pub(crate) struct Trial<'a> {
    pub(crate) made: &'a [Made],
    pub(crate) width: Width,
    pub(crate) failure: Failure,
    pub(crate) chances: &'a dyn Fn(Mishap) -> f64,
    /// Whether only the class is asked about.
    pub(crate) class_only: bool,
}

impl Trial<'_> {
    /// So many bags at least, in whole classes.
    pub(crate) fn run(&self, bags: usize, chance: &mut Chance) -> Vec<Class> {
        let mut classes = Vec::new();
        let mut made = 0;
        while made < bags {
            let one = self.one(chance);
            made += one.bags.len();
            classes.push(one);
        }
        classes
    }

    fn one(&self, chance: &mut Chance) -> Class {
        let day = Day::of(self.made, self.width, self.failure, chance);
        let bags = class(self.made, &day, self.chances, chance);
        let mut said: Vec<Vec<(u32, Vec<Slip>)>> = vec![Vec::new(); bags.len()];
        let mut calls = Vec::new();
        for minute in (INTERVAL..=LAST).step_by(INTERVAL as usize) {
            let (slips, call) = look(&bags, self.made, minute, self.class_only);
            for (said, slips) in said.iter_mut().zip(slips) {
                // Late readings are only said, and true here.
                let asked =
                    slips.into_iter().filter(|s| !matches!(s.kind, SlipKind::Late { .. }));
                said.push((minute, asked.collect()));
            }
            calls.push((minute, call));
        }
        let copiers: Vec<Vec<(u32, f64)>> = bags
            .iter()
            .filter(|bag| mishap(bag) == Some(Mishap::Copied))
            .map(|bag| bag.heights.iter().map(|(planned, _, mm)| (*planned, *mm)).collect())
            .collect();
        let bags = bags.into_iter().zip(said).map(|(read, said)| {
            let own: BTreeMap<u32, f64> =
                read.heights.iter().map(|(planned, _, mm)| (*planned, *mm)).collect();
            let same = |copy: &Vec<(u32, f64)>| {
                copy.iter().all(|(planned, mm)| {
                    own.get(planned).is_some_and(|own| (own - mm).abs() < 1e-9)
                })
            };
            let copied_by = copiers.iter().any(same);
            Followed { read, said, copied_by }
        });
        Class { bags: bags.collect(), calls }
    }
}

pub(crate) fn mishap(read: &Read) -> Option<Mishap> {
    read.spoiled.as_ref().map(|spoiled| spoiled.mishap)
}

impl Followed {
    /// What was said by the so manyth height after one place, or at last.
    pub(crate) fn by(&self, at: usize, later: usize) -> &[Slip] {
        let place = (at + later).min(self.read.heights.len() - 1);
        let planned = self.read.heights[place].0;
        let said = self.said.iter().find(|(minute, _)| *minute == planned);
        said.map_or(&[], |(_, slips)| slips)
    }

    /// Whether a slip that was said is what happened.
    pub(crate) fn is_real(&self, slip: &Slip) -> bool {
        let Some(spoiled) = &self.read.spoiled else {
            return self.copied_by && matches!(slip.kind, SlipKind::Copied { .. });
        };
        let here = place(slip);
        let reading = matches!(
            spoiled.mishap,
            Mishap::Unit | Mishap::Transposed | Mishap::Misread | Mishap::Tilt
        );
        let last = spoiled.to.max(spoiled.at);
        let spoils = here.is_some_and(|at| (spoiled.at..=last).contains(&at));
        match (&slip.kind, spoiled.mishap) {
            (SlipKind::Unit { written_in, .. }, Mishap::Unit) => {
                spoils && spoiled.unit == Some(*written_in)
            }
            (SlipKind::Transposed { .. }, Mishap::Transposed) => spoils,
            (
                SlipKind::Misread { .. }
                | SlipKind::Tilted { .. }
                | SlipKind::Jumped { .. }
                | SlipKind::TooHigh { .. }
                | SlipKind::HighZero { .. },
                _,
            ) if reading => spoils,
            (SlipKind::Leaks { .. } | SlipKind::Fell { .. }, Mishap::Leak)
            | (SlipKind::Lifted { .. } | SlipKind::Jumped { .. }, Mishap::Foam)
            | (SlipKind::WrongStart, Mishap::Start)
            | (SlipKind::NoYeast, Mishap::Dead)
            | (SlipKind::HotWater, Mishap::Hot)
            | (SlipKind::Unshaken, Mishap::Unshaken)
            | (SlipKind::Heaped, Mishap::Heaped)
            | (SlipKind::Swapped { .. }, Mishap::Swapped)
            | (SlipKind::Fives, Mishap::Fives)
            | (SlipKind::Copied { .. }, Mishap::Copied)
            | (SlipKind::FarFromBand { .. }, _) => true,
            (SlipKind::Copied { .. }, _) => self.copied_by,
            _ => false,
        }
    }
}

/// Whether the teacher is told of it because it is likely; what a group is asked about its own bag
/// is told at any probability.
pub(crate) fn is_called(slip: &Slip) -> bool {
    use SlipKind::{Fell, HighZero, Jumped, Rivals, TooHigh, Unit};
    match slip.kind {
        Unit { .. }
        | Fell { .. }
        | Jumped { .. }
        | HighZero { .. }
        | TooHigh { .. }
        | Rivals { .. } => slip.probability.is_some_and(|p| p >= TOLD_FROM),
        _ => true,
    }
}

/// Slips that were called about so likely: how many are real.
pub(crate) struct Bin {
    pub(crate) real: Share,
    /// By kind: called, real.
    pub(crate) kinds: BTreeMap<String, Share>,
}

impl Bin {
    /// Each bag counts once for each kind of slip: the first time that it was called so likely.
    pub(crate) fn of(classes: &[Class], from: f64, to: f64) -> Self {
        let mut bin = Self { real: Share::default(), kinds: BTreeMap::new() };
        for bag in classes.iter().flat_map(|class| &class.bags) {
            let mut seen: Vec<String> = Vec::new();
            for (_, slips) in &bag.said {
                for slip in slips {
                    let called = slip.probability.is_some_and(|p| (from..to).contains(&p));
                    let kind = name(&slip.kind);
                    if !called || seen.contains(&kind) {
                        continue;
                    }
                    let real = bag.is_real(slip);
                    bin.real.count(real);
                    bin.kinds.entry(kind.clone()).or_default().count(real);
                    seen.push(kind);
                }
            }
        }
        bin
    }
}

/// Name of a kind of slip.
pub(crate) fn name(kind: &SlipKind) -> String {
    let text = format!("{kind:?}");
    text.split([' ', '{']).next().unwrap_or_default().to_owned()
}

/// Whether a unit slip was found as one, with its unit.
pub(crate) fn unit_found(bag: &Followed, spoiled: &Spoiled) -> bool {
    bag.by(spoiled.at, 1).iter().any(|slip| {
        place(slip).is_some_and(|at| (spoiled.at..=spoiled.to).contains(&at))
            && matches!(&slip.kind, SlipKind::Unit { written_in, .. }
                if Some(*written_in) == spoiled.unit)
    })
}

/// Whether a leak was offered as what it may be by the second reading after it began.
pub(crate) fn leak_found(bag: &Followed, spoiled: &Spoiled) -> bool {
    bag.by(spoiled.at, 1).iter().any(|slip| slip.mends.contains(&Mend::Tap(Odd::Leak)))
}
