//! Differences that several classes measured.

use super::at_minute::AtMinute;
use super::side::Side;
use crate::shared::{Investigation, Shared};
use barm_science::statistics::meta::{Between, MetaError, Pooled, Study, Summary, pool};
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

/// A class whose data are compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Class {
    /// What the teacher calls it, such as the name of its file.
    pub name: String,
    /// Its data.
    pub shared: Shared,
    /// The same as a plan with readings.
    pub investigation: Investigation,
}

/// What one class found of a difference.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The class, by its place among those handed in.
    pub class: usize,
    /// Bags of the treatment and of what it is compared with.
    pub bags: (usize, usize),
    /// The difference in rise (mm) with its own 95 % interval, if it could be told.
    pub difference: Option<Summary>,
}

/// One difference over classes.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// The treatment, as the first class made it.
    pub treatment: Side,
    /// What it is compared with, as the first class made it.
    pub reference: Side,
    /// Numbers of the recipe in which classes differ: which, least, most, unit.
    pub uneven: Vec<(&'static str, f64, f64, &'static str)>,
    /// Minute after the zero reading at which all bags are compared.
    pub minute: f64,
    /// What each class found that asked it, in the order handed in.
    pub classes: Vec<Found>,
    /// All of them together, if any could tell a difference.
    pub together: Option<Pooled>,
    /// Where the difference that a further class would measure lies 19 times in 20 (mm), if it measures as
    /// well as the middle one of these; of three classes or more.
    pub next: Option<(f64, f64)>,
}

/// Why a class does not count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PassedOver {
    /// It is the same data as another.
    Same {
        /// The class.
        class: usize,
        /// The one that counts.
        other: usize,
    },
    /// It is invented, and others are not.
    MadeUp {
        /// The class.
        class: usize,
    },
}

/// What several classes found.
#[derive(Debug, Clone, PartialEq)]
pub struct Years {
    /// Every difference, that of most classes first.
    pub differences: Vec<Difference>,
    /// Classes that do not count.
    pub passed_over: Vec<PassedOver>,
}

/// A difference while classes are gathered.
struct Gathered {
    treatment: Side,
    reference: Side,
    /// Class, place among its comparisons, both sides.
    of: Vec<(usize, usize, Side, Side)>,
}

impl Years {
    /// Compares classes. All bags count, also those that were set aside, as in the verdict of each class.
    pub fn of(classes: &[Class]) -> Self {
        let found = |at: usize, minute: Option<f64>| {
            let class: &Class = classes.get(at)?;
            minute.map_or_else(|| class.latest(), |minute| Some(class.at(minute)))
        };
        Self::by(classes, found)
    }

    /// The same where what each class found is known already, or asked elsewhere: `found` gives it for the class at a
    /// place at a minute, or, without one, at its [`latest`](Class::latest).
    pub fn by(
        classes: &[Class],
        mut found: impl FnMut(usize, Option<f64>) -> Option<AtMinute>,
    ) -> Self {
        let passed_over = passed_over(classes);
        let out = |at: usize| {
            passed_over.iter().any(|one| match one {
                PassedOver::Same { class, .. } | PassedOver::MadeUp { class } => *class == at,
            })
        };
        let mut latest: BTreeMap<usize, f64> = BTreeMap::new();
        let mut made = Made::new();
        let mut gathered: Vec<Gathered> = Vec::new();
        for (at, class) in classes.iter().enumerate().filter(|(at, _)| !out(*at)) {
            let Some(own) = found(at, None) else { continue };
            latest.insert(at, own.minute);
            gather(at, class, &own, &mut gathered);
            made.insert((at, own.minute.to_bits()), own);
        }
        let mut differences: Vec<Difference> = gathered
            .into_iter()
            .filter_map(|one| difference(&latest, one, &mut made, &mut found))
            .collect();
        // A stable order: of as many classes, as they came.
        differences.sort_by_key(|one| std::cmp::Reverse(one.classes.len()));
        Self { differences, passed_over }
    }
}

fn passed_over(classes: &[Class]) -> Vec<PassedOver> {
    let any_real = classes.iter().any(|class| !class.investigation.plan.invented);
    let mut passed = Vec::new();
    for (at, class) in classes.iter().enumerate() {
        let same = |other: &Class| {
            !class.shared.rows().readings.is_empty() && other.shared == class.shared
        };
        if any_real && class.investigation.plan.invented {
            passed.push(PassedOver::MadeUp { class: at });
        } else if let Some(other) = classes[..at].iter().position(same) {
            passed.push(PassedOver::Same { class: at, other });
        }
    }
    passed
}

fn gather(at: usize, class: &Class, own: &AtMinute, gathered: &mut Vec<Gathered>) {
    let rows = class.shared.rows();
    let side = |name: &str| Side::of(rows, *class.investigation.names.get(name)?);
    for (place, one) in own.compared.iter().enumerate() {
        let sides = side(&one.treatment).zip(side(&one.reference));
        let Some((treatment, reference)) = sides else { continue };
        let fits = |known: &&mut Gathered| {
            known.treatment.is_like(&treatment)
                && known.reference.is_like(&reference)
                && known.of.iter().all(|(class, ..)| *class != at)
        };
        let of = (at, place, treatment.clone(), reference.clone());
        match gathered.iter_mut().find(fits) {
            Some(known) => known.of.push(of),
            None => gathered.push(Gathered { treatment, reference, of: vec![of] }),
        }
    }
}

/// What a class found at a minute, worked out once.
type Made = BTreeMap<(usize, u64), AtMinute>;

fn difference(
    latest: &BTreeMap<usize, f64>,
    gathered: Gathered,
    made: &mut Made,
    found_at: &mut impl FnMut(usize, Option<f64>) -> Option<AtMinute>,
) -> Option<Difference> {
    let own = gathered.of.iter().filter_map(|(class, ..)| latest.get(class).copied());
    let minute = own.min_by(f64::total_cmp)?;
    let mut found = Vec::new();
    let mut studies = Vec::new();
    for (class, place, ..) in &gathered.of {
        let at_own = made.get(&(*class, latest.get(class)?.to_bits()))?.compared.get(*place)?;
        let pair =
            (at_own.question.clone(), at_own.treatment.clone(), at_own.reference.clone());
        let key = (*class, minute.to_bits());
        let own = match made.entry(key) {
            Entry::Occupied(known) => known.into_mut(),
            Entry::Vacant(place) => place.insert(found_at(*class, Some(minute))?),
        };
        let told = own.compared.iter().find(|one| {
            (&one.question, &one.treatment, &one.reference) == (&pair.0, &pair.1, &pair.2)
        });
        let told = told?;
        let study = told.study();
        let alone = study.and_then(|study| pool(&[study], Between::Reml).ok());
        studies.extend(study.filter(|_| alone.is_some()));
        found.push(Found {
            class: *class,
            bags: told.bags,
            difference: alone.map(|alone| alone.mean),
        });
    }
    // Numbers that cannot be put together are told one by one.
    let together: Result<Pooled, MetaError> = pool(&studies, Between::Reml);
    let together = together.ok();
    let next = together.as_ref().and_then(|one| one.next_year(middle(&studies)?));
    Some(Difference {
        uneven: uneven(&gathered),
        treatment: gathered.treatment,
        reference: gathered.reference,
        minute,
        classes: found,
        together,
        next,
    })
}

/// The middle one of the standard errors (mm), the larger of two.
fn middle(studies: &[Study]) -> Option<f64> {
    let mut own: Vec<f64> = studies.iter().map(|study| study.se).collect();
    own.sort_by(f64::total_cmp);
    own.get(own.len() / 2).copied()
}

/// Numbers of the recipes that are not the same in all classes.
fn uneven(gathered: &Gathered) -> Vec<(&'static str, f64, f64, &'static str)> {
    let mut uneven: Vec<(&'static str, f64, f64, &'static str)> = Vec::new();
    let sides: [Vec<&Side>; 2] = [
        gathered.of.iter().map(|(.., treatment, _)| treatment).collect(),
        gathered.of.iter().map(|(.., reference)| reference).collect(),
    ];
    for of in sides {
        let Some(first) = of.first() else { continue };
        for (at, (what, value, unit)) in first.numbers().into_iter().enumerate() {
            let values = of.iter().filter_map(|side| Some(side.numbers().get(at)?.1));
            let (least, most) = values
                .fold((value, value), |(least, most), one| (least.min(one), most.max(one)));
            let known = uneven.iter().any(|one| (one.0, one.3) == (what, unit));
            // Less than a hundredth is the balance, not the recipe.
            if !known && most > least * 1.01 + 1e-9 {
                uneven.push((what, least, most, unit));
            }
        }
    }
    uneven
}
