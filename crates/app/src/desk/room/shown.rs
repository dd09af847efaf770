//! Whose page shows something else after an entry.

use super::opened::{self, Eyes};
use super::{Scene, Scope};
use barm_domain::record::{Audience, Bag, Entry, Face, Standing, Subject, What};

/// What a group sees of its own bag; the rest is the teacher's. A page must not even hear that
/// something else has changed.
fn to_its_group(bag: Option<&Bag>) -> Bag {
    let mut bag = bag.cloned().unwrap_or_default();
    bag.truth = None;
    bag.set_aside = None;
    bag.last = None;
    bag
}

/// What stands of an entry's bag before it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Before {
    bag: Option<Bag>,
    /// What others may be shown of it.
    seen: Option<opened::Before>,
}

impl Before {
    /// Remembers the bag of an entry.
    pub(super) fn of(scene: &Scene<'_>, entry: &Entry) -> Self {
        match &entry.subject {
            Subject::Bag(code) => Self {
                bag: scene.standing().bags.get(code).cloned(),
                seen: Some(opened::Before::of(scene, *code)),
            },
            _ => Self { bag: None, seen: None },
        }
    }

    /// Whether nothing was on record of it.
    pub(super) const fn is_nothing(&self) -> bool {
        self.bag.is_none()
    }
}

/// Whether a page shows something else in this scene, after an entry was added.
pub(super) fn changes(
    scope: &Scope,
    entry: &Entry,
    before: &Before,
    scene: &Scene<'_>,
) -> bool {
    if *scope == Scope::Teacher {
        return true;
    }
    let after = scene.standing();
    match &entry.subject {
        Subject::Bag(code) => {
            let Some(home) = scene.ledger.known().bags.get(code) else { return false };
            let now = after.bags.get(code);
            let was = before.bag.as_ref();
            let seen = to_its_group(was) != to_its_group(now);
            let aside = was.and_then(|bag| bag.set_aside.as_ref())
                != now.and_then(|bag| bag.set_aside.as_ref());
            match scope {
                Scope::Group { period, group } => {
                    let own = home.period == *period && home.group == *group;
                    let others = before.seen.as_ref();
                    own && seen
                        || others.is_some_and(|before| {
                            Eyes::of(scene, period, *group).notice(scene, *code, before)
                        })
                }
                Scope::Wall(period) => {
                    let own = home.period == *period;
                    let open = curves_open(after, scope, own);
                    seen && (own || open) || aside && open
                }
                Scope::Round(period) => (seen || aside) && home.period == *period,
                Scope::Aide | Scope::Teacher => false,
            }
        }
        Subject::Group { period, group } => match scope {
            Scope::Group { period: own, group: number } => own == period && number == group,
            Scope::Wall(own) => {
                own == period && matches!(entry.what, What::StandIn(_) | What::TakenBack)
            }
            Scope::Round(own) => own == period,
            Scope::Aide | Scope::Teacher => false,
        },
        Subject::Period(period) => match scope {
            Scope::Aide => true,
            Scope::Round(own) => own == period,
            Scope::Wall(own) | Scope::Group { period: own, .. } => {
                own == period && !matches!(entry.what, What::Jug { .. })
            }
            Scope::Teacher => true,
        },
        Subject::Investigation => match &entry.what {
            What::Opened { to, .. } | What::Closed { to, .. } => meant(to, scope),
            _ => true,
        },
    }
}

/// Whether something is open to a page.
fn open_to(standing: &Standing, face: Face, scope: &Scope) -> bool {
    standing.open.iter().any(|(open, to)| *open == face && meant(to, scope))
}

fn curves_open(standing: &Standing, scope: &Scope, same_period: bool) -> bool {
    same_period && open_to(standing, Face::PeriodCurves, scope)
        || open_to(standing, Face::DayCurves, scope)
}

/// Whether an audience includes a page.
fn meant(to: &Audience, scope: &Scope) -> bool {
    match (to, scope) {
        (Audience::Wall { period }, Scope::Wall(own)) => own == period,
        (Audience::Groups { period }, Scope::Group { period: own, .. }) => own == period,
        (Audience::Group { period, group }, Scope::Group { period: own, group: number }) => {
            own == period && number == group
        }
        _ => false,
    }
}
