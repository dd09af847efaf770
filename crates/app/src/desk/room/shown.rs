//! Whose page shows something else after an entry.

use super::opened::{self, Eyes};
use super::{Scene, Scope};
use barm_domain::code::BagCode;
use barm_domain::record::{
    Audience, Bag, Entry, Face, Home, Replaced, Standing, Subject, What,
};

/// Whether a group sees the same of its own bag; the rest is the teacher's. A page must not even
/// hear that something else has changed.
fn same_to_its_group(was: Option<&Bag>, now: Option<&Bag>) -> bool {
    let nothing = Bag::default();
    let [was, now] = [was, now].map(|bag| {
        let Bag {
            made,
            sealed,
            zero,
            other_zeros,
            readings,
            meter,
            odd,
            vented,
            lost,
            truth: _,
            set_aside: _,
            last: _,
        } = bag.unwrap_or(&nothing);
        ((made, sealed, zero, other_zeros, readings), (meter, odd, vented, lost))
    });
    was == now
}

/// What an entry has changed, worked out once for all pages.
pub(super) struct Change<'a> {
    entry: &'a Entry,
    /// After the entry.
    scene: &'a Scene<'a>,
    bag: Option<BagChange<'a>>,
}

/// What an entry has changed of a bag that a plan knows.
struct BagChange<'a> {
    home: &'a Home,
    code: BagCode,
    /// Whether its group sees something else of it.
    seen: bool,
    /// Whether it was set aside or taken back.
    aside: bool,
    /// What others may be shown of it, before and now.
    others: Option<(opened::Before, opened::Before)>,
}

impl<'a> Change<'a> {
    /// What is not as it was in this scene, after an entry was added; `seen` is what others could be
    /// shown of its bag before.
    pub(super) fn of(
        entry: &'a Entry,
        replaced: &Replaced,
        seen: Option<opened::Before>,
        scene: &'a Scene<'a>,
    ) -> Self {
        let Subject::Bag(code) = &entry.subject else {
            return Self { entry, scene, bag: None };
        };
        let home = scene.ledger.known().bags.get(code);
        let bag = home.map(|home| {
            let was = replaced.bag.as_ref();
            let now = scene.standing().bags.get(code);
            let others = seen.map(|seen| (seen, opened::Before::of(scene, *code)));
            BagChange {
                home,
                code: *code,
                seen: !same_to_its_group(was, now),
                aside: was.and_then(|bag| bag.set_aside.as_ref())
                    != now.and_then(|bag| bag.set_aside.as_ref()),
                others: others.filter(|(was, now)| was != now),
            }
        });
        Self { entry, scene, bag }
    }

    /// Whether a page shows something else.
    pub(super) fn shows_on(&self, scope: &Scope) -> bool {
        if *scope == Scope::Teacher {
            return true;
        }
        match &self.entry.subject {
            Subject::Bag(_) => {
                self.bag.as_ref().is_some_and(|bag| bag.shows_on(scope, self.scene))
            }
            Subject::Group { period, group } => match scope {
                Scope::Group { period: own, group: number } => own == period && number == group,
                Scope::Wall(own) => {
                    own == period
                        && matches!(self.entry.what, What::StandIn(_) | What::TakenBack)
                }
                Scope::Round(own) => own == period,
                Scope::Aide | Scope::Teacher => false,
            },
            Subject::Period(period) => match scope {
                Scope::Aide => true,
                Scope::Round(own) => own == period,
                Scope::Wall(own) | Scope::Group { period: own, .. } => {
                    let unseen =
                        matches!(self.entry.what, What::Jug { .. } | What::Blank { .. });
                    own == period && !unseen
                }
                Scope::Teacher => true,
            },
            Subject::Investigation => match &self.entry.what {
                What::Opened { to, .. } | What::Closed { to, .. } => meant(to, scope),
                _ => true,
            },
        }
    }
}

impl BagChange<'_> {
    fn shows_on(&self, scope: &Scope, scene: &Scene<'_>) -> bool {
        let home = self.home;
        match scope {
            Scope::Group { period, group } => {
                let own = home.period == *period && home.group == *group;
                own && self.seen
                    || self.others.as_ref().is_some_and(|(was, now)| {
                        Eyes::of(scene, period, *group).notice(scene, self.code, was, now)
                    })
            }
            Scope::Wall(period) => {
                let own = home.period == *period;
                let open = || curves_open(scene.standing(), scope, own);
                let results = || open_to(scene.standing(), Face::Results, scope);
                self.seen && (own || open()) || self.aside && open() || results()
            }
            Scope::Round(period) => (self.seen || self.aside) && home.period == *period,
            Scope::Aide | Scope::Teacher => false,
        }
    }
}

/// Whether something is open to a page.
pub(super) fn open_to(standing: &Standing, face: Face, scope: &Scope) -> bool {
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
