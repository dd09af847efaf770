//! Whose page shows something else after an entry.

use super::Scope;
use barm_domain::record::{Audience, Bag, Entry, Face, Known, Standing, Subject, What};

/// What a group sees of its own bag; the rest is the teacher's. A page must not even hear that
/// something else has changed.
fn to_its_group(bag: Option<&Bag>) -> Bag {
    let mut bag = bag.cloned().unwrap_or_default();
    bag.truth = None;
    bag.set_aside = None;
    bag.last = None;
    bag
}

/// What stands of an entry's bag before or after it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Before(Option<Bag>);

impl Before {
    /// Remembers the bag of an entry.
    pub(super) fn of(standing: &Standing, entry: &Entry) -> Self {
        match &entry.subject {
            Subject::Bag(code) => Self(standing.bags.get(code).cloned()),
            _ => Self(None),
        }
    }

    /// Whether nothing was on record of it.
    pub(super) const fn is_nothing(&self) -> bool {
        self.0.is_none()
    }
}

/// Whether a page shows something else after an entry was added.
pub(super) fn changes(
    scope: &Scope,
    entry: &Entry,
    before: &Before,
    after: &Standing,
    known: &Known,
) -> bool {
    if *scope == Scope::Teacher {
        return true;
    }
    match &entry.subject {
        Subject::Bag(code) => {
            let Some(home) = known.bags.get(code) else { return false };
            let now = after.bags.get(code);
            let seen = to_its_group(before.0.as_ref()) != to_its_group(now);
            let aside = before.0.as_ref().and_then(|bag| bag.set_aside.as_ref())
                != now.and_then(|bag| bag.set_aside.as_ref());
            match scope {
                Scope::Group { period, group } => {
                    // Curves of others, once the teacher opened them to this group.
                    let own = home.period == *period && home.group == *group;
                    seen && (own || curves_open(after, scope, *period == home.period))
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
            Scope::Wall(own) => own == period && matches!(entry.what, What::StandIn),
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
