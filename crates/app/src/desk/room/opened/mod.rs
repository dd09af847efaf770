//! What a group is shown that is not its own: numbers lent to it, curves of the class, answers.
//!
//! Nothing of it exists before the teacher gives or opens it. A forecast is there only as the band behind
//! open curves, once it was opened too; a simulated run is one made-up day, and of it no minute that
//! has not come yet.

mod amounts;
mod answers;
mod curves;
mod lent;
mod seen;
#[cfg(test)]
mod tests;

pub(crate) use amounts::Amounts;
pub(crate) use answers::{Answered, Found};
pub(crate) use curves::ClassCurves;
pub(crate) use lent::LentNumbers;
pub(super) use seen::{Before, Eyes};

use super::Scene;
use barm_domain::record::{Audience, Face, Lent};
use jiff::Timestamp;

/// What is open to a group.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Opened {
    /// Numbers that stand in for its own.
    pub(crate) lent: Option<LentNumbers>,
    /// How the cards of the class rise.
    pub(crate) curves: Option<ClassCurves>,
    /// What the class found.
    pub(crate) found: Option<Found>,
}

impl Opened {
    /// Every treatment that is named in it; some more than once.
    pub(crate) fn treatments(&self) -> impl Iterator<Item = &str> {
        let lent = self.lent.iter().flat_map(|lent| &lent.kinds);
        let lent = lent.map(|kind| kind.treatment.as_str());
        let curves = self.curves.iter().flat_map(ClassCurves::names);
        let found = self.found.iter().flat_map(Found::treatments);
        lent.chain(curves).chain(found)
    }
}

/// What is open to a group now; nothing if nothing is.
pub(crate) fn opened(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
    now: Timestamp,
) -> Option<Opened> {
    let eyes = Eyes::of(scene, period, group);
    let own = scene.standing().groups.get(&(period.to_owned(), group));
    let lent = own.and_then(|own| own.stand_in);
    let opened = Opened {
        lent: lent.and_then(|stand_in| match stand_in.lent {
            Lent::ClassData => Some(lent::class_data(scene, &eyes)),
            Lent::Simulated { seed, plan } => {
                lent::simulated_run(scene, period, group, (seed, plan), now)
            }
        }),
        curves: eyes.curves().then(|| curves::of_class(scene, &eyes)),
        found: is_open(scene, Face::Results, period, group).then(|| answers::found(scene)),
    };
    let nothing = opened.lent.is_none() && opened.curves.is_none() && opened.found.is_none();
    (!nothing).then_some(opened)
}

/// Whether there is anything to lend to a group as class data yet.
pub(super) fn has_class_data(scene: &Scene<'_>, period: &str, group: u32) -> bool {
    let eyes = Eyes::for_class_data(scene, period, group);
    lent::of_the_class(scene, &eyes).next().is_some()
}

/// Whether a group may read what the class found.
pub(super) fn results_are_open(scene: &Scene<'_>, period: &str, group: u32) -> bool {
    is_open(scene, Face::Results, period, group)
}

/// What the class found, once it is open on the wall of a period.
pub(super) fn results_on_wall(scene: &Scene<'_>, period: &str) -> Option<Found> {
    let wall = Audience::Wall { period: period.to_owned() };
    scene.standing().open.contains(&(Face::Results, wall)).then(|| answers::found(scene))
}

/// Whether something is open to a group.
fn is_open(scene: &Scene<'_>, face: Face, period: &str, group: u32) -> bool {
    let period = || period.to_owned();
    let open = &scene.standing().open;
    open.contains(&(face, Audience::Groups { period: period() }))
        || open.contains(&(face, Audience::Group { period: period(), group }))
}
