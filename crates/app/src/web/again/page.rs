//! The page of another round as markup.

use super::answer::{BY, word};
use crate::desk::room::Kind;
use crate::desk::room::again::NextLook;
use crate::desk::{Next, Wording, say, voice, why_stricter};
use crate::web::head::{Part, head, lead};
use barm_domain::plan::Plan;
use barm_domain::result::{ClassResult, Compared};
use barm_domain::round_two::{By, Pair, Pooled, Proposal};
use maud::{Markup, html};
use std::sync::Arc;

/// The page of another round.
pub(super) struct AgainView {
    /// Number of the investigation.
    pub(super) id: i64,
    /// What it is.
    pub(super) kind: Kind,
    /// Its plan.
    pub(super) plan: Arc<Plan>,
    /// What proposals are ranked by.
    pub(super) by: By,
    /// How far proposing has come.
    pub(super) look: NextLook,
    /// The other investigations on the shelf.
    pub(super) others: Vec<(i64, String)>,
    /// The one that is judged together with this one, if it is asked for.
    pub(super) both: Option<(i64, Both)>,
}

/// Two rounds.
pub(super) enum Both {
    /// What they say together.
    There(Box<Pooled>),
    /// Why they cannot be put together.
    Not(String),
}

/// Proposals that are shown.
const SHOWN: usize = 8;

/// The whole page.
pub(super) fn page(
    w: Wording,
    view: &AgainView,
    now: i64,
    field: &Markup,
    said: Option<&str>,
) -> Markup {
    let id = view.id;
    html! {
        div.sheet data-live={ "/i/" (id) "/events" } data-version={ "/i/" (id) "/version" } data-now=(now) {
            header {
            (head(w, &view.plan.title, Some(id), Part::Results, view.kind))
            (lead(&say!(w, "again-lead")))
            }
            div role="status" { @if let Some(said) = said { p.fault { (said) } } }
            main {
                section.sec {
                    div.mg { h2 { (say!(w, "again-head")) } }
                    div.bd {
                        p.soft { (voice(&view.plan).second_look(view.plan.round)) }
                        div data-part="next" { (look(w, view, field)) }
                    }
                }
                section.sec {
                    div.mg { h2 { (say!(w, "again-both")) } }
                    div.bd { (together(w, view)) }
                }
                section.sec {
                    div.mg { h2 { (say!(w, "again-students")) } }
                    div.bd { @for says in why_stricter() { p { (says) } } }
                }
            }
            p.linkline id="link" role="status" {}
        }
    }
}

fn look(w: Wording, view: &AgainView, field: &Markup) -> Markup {
    html! {
        @match &view.look {
            NextLook::Waits => p { (say!(w, "again-wait")) },
            NextLook::NotAsked => (ask(w, view.by, field)),
            NextLook::Working(done, of) => p { (say!(w, "again-working", done = *done, of = *of)) },
            NextLook::Lost(why) => {
                p { (say!(w, "again-lost", why = why)) }
                (ask(w, view.by, field))
            },
            NextLook::There(next) => {
                (proposals(w, view, next, field))
                (ask(w, view.by, field))
            },
        }
    }
}

/// The form that begins it.
fn ask(w: Wording, by: By, field: &Markup) -> Markup {
    let called = |one: By| match one {
        By::ClearPerDollar => say!(w, "again-clear-dollar"),
        By::ShrinksPerBag => say!(w, "again-narrower-bag"),
        _ => say!(w, "again-clear-bag"),
    };
    html! {
        form method="post" {
            (field)
            div.fields { div.one {
                label for="by" { (say!(w, "again-by")) }
                span.fld { select id="by" name="by" {
                    @for (word, one) in BY { option value=(word) selected[one == by] { (called(one)) } }
                } }
            } }
            div.btns { button.btn type="submit" { (say!(w, "again-propose")) } }
            p.small.soft { (say!(w, "again-takes")) }
        }
    }
}

fn proposals(w: Wording, view: &AgainView, next: &Next, field: &Markup) -> Markup {
    let ranked = &next.proposals.ranked;
    let shown = &ranked[..ranked.len().min(SHOWN)];
    html! {
        @for note in &next.notes { p.soft { (note) } }
        @if shown.is_empty() { p { (say!(w, "again-none")) } }
        @else { p { (say!(w, "again-of", shown = shown.len().to_string(), all = ranked.len().to_string())) " " (say!(w, "again-take-says")) } }
        ol.plain {
            @for (at, one) in shown.iter().enumerate() { (proposal(w, view, (at + 1, one), field)) }
        }
    }
}

fn proposal(
    w: Wording,
    view: &AgainView,
    (rank, one): (usize, &Proposal),
    field: &Markup,
) -> Markup {
    let voice = voice(&view.plan);
    html! {
        li.prop {
            h3 { (rank) ". " (voice.proposal(one)) }
            p { (voice.proposal_why(one)) }
            ul { @for told in &one.told { li { (voice.proposal_expects(told)) } } }
            p.soft {
                (say!(w, "again-bags", count = one.plan.bags.len())) ". "
                (voice.proposal_shares(&one.shared)) " " (voice.proposal_costs(one))
            }
            form method="post" {
                (field)
                input type="hidden" name="by" value=(word(view.by));
                button.btn.quiet type="submit" name="take" value=(rank) { (say!(w, "again-take")) }
            }
        }
    }
}

fn together(w: Wording, view: &AgainView) -> Markup {
    let with = view.both.as_ref().map(|(id, _)| *id);
    html! {
        @if view.others.is_empty() { p.soft { (say!(w, "again-no-other")) } }
        @else {
            form method="get" {
                div.fields { div.one {
                    label for="with" { (say!(w, "again-second")) }
                    span.fld { select id="with" name="with" {
                        @for (id, title) in &view.others { option value=(id) selected[with == Some(*id)] { (title) } }
                    } }
                } }
                div.btns { button.btn type="submit" { (say!(w, "again-judge")) } }
            }
        }
        @match &view.both {
            None => {},
            Some((_, Both::Not(why))) => p.fault { (say!(w, "again-not", why = why)) },
            Some((_, Both::There(pooled))) => (pooled_said(w, view, pooled)),
        }
    }
}

fn pooled_said(w: Wording, view: &AgainView, pooled: &Pooled) -> Markup {
    let voice = voice(&view.plan);
    let say_of =
        |result: &ClassResult, pair: &Pair| found(result, pair).map(|c| voice.comparison(c));
    html! {
        @for looks in &pooled.looks {
            @let asked = pooled.plan.questions.iter().find(|one| one.id == looks.question);
            h3 { (asked.map_or(looks.question.as_str(), |one| one.asks.as_str())) }
            p.soft { (voice.looked(looks)) }
            dl.what {
                @for pair in &looks.again {
                    @if let Some(says) = say_of(&pooled.first, pair) { dt { (say!(w, "again-round-one")) } dd { (says) } }
                    @if looks.pooled.is_some() {
                        @if let Some(compared) = found(&pooled.both, pair) {
                            dt { (say!(w, "again-rounds")) }
                            dd { (voice.comparison(compared)) " " span.soft { (voice.why(compared)) } }
                        }
                    } @else if let Some(says) = say_of(&pooled.second, pair) {
                        dt { (say!(w, "again-round-two")) } dd { (says) }
                    }
                }
            }
        }
    }
}

fn found<'a>(result: &'a ClassResult, pair: &Pair) -> Option<&'a Compared> {
    let answer = result.questions.iter().find(|one| one.question == pair.question)?;
    let same = |c: &&Compared| c.treatment == pair.treatment && c.reference == pair.reference;
    answer.comparisons.iter().find(same)
}
