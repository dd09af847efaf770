//! What is kept about whom, on one page, and one action that deletes what people wrote.

use super::page::{section, traces, when};
use crate::desk::room::Kind;
use crate::desk::room::kept_words::Deleted;
use crate::desk::room::people::{KeptOf, PeopleView, about_whom, look_for, people_view};
use crate::desk::room::traces::Looked;
use crate::desk::{DeskError, Wording, room, say};
use crate::web::caller::Device;
use crate::web::head::{Part, head, lead};
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::Form;
use axum::extract::{Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;

/// What the address may bring: what was done.
#[derive(Deserialize)]
pub(in crate::web) struct Did {
    did: Option<String>,
}

/// The page.
pub(in crate::web) async fn people(
    State(web): State<Web>,
    Query(did): Query<Did>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let said = match did.did.as_deref() {
        Some("unsure") => Some(say!(w, "people-unsure")),
        Some("deleted") => Some(say!(w, "people-deleted")),
        _ => None,
    };
    shown(&web, w, &device, said, None).await
}

/// What is to be done: delete, or look for a name.
#[derive(Deserialize)]
pub(in crate::web) struct Wish {
    sure: Option<String>,
    name: Option<String>,
}

/// Deletes all words of all investigations, or looks for a name. The name is kept nowhere.
pub(in crate::web) async fn delete_all(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    Form(wish): Form<Wish>,
) -> Result<Response, Trouble> {
    if let Some(name) = wish.name {
        let looked =
            web.wait(move |shelf, _| Ok::<_, DeskError>(look_for(shelf, &name))).await?;
        return shown(&web, w, &device, None, Some(looked)).await;
    }
    if wish.sure.is_none() {
        return Ok(Redirect::to("/kept?did=unsure#delete").into_response());
    }
    let deleted = web.wait(room::people::delete_all).await?;
    for (id, one) in &deleted {
        web.log.write(web.now(), &one.in_the_log(*id));
    }
    Ok(Redirect::to("/kept?did=deleted#proof").into_response())
}

async fn shown(
    web: &Web,
    w: Wording,
    device: &Device,
    said: Option<String>,
    looked: Option<Looked>,
) -> Result<Response, Trouble> {
    let view = web.wait(people_view).await?;
    let field = device.form_field();
    let body = page(w, &view, said.as_deref(), looked.as_ref(), &field);
    let title = say!(w, "people-title");
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}

fn page(
    w: Wording,
    view: &PeopleView,
    said: Option<&str>,
    looked: Option<&Looked>,
    field: &Markup,
) -> Markup {
    let proofs: Vec<(&KeptOf, &Deleted)> =
        view.of.iter().filter_map(|one| Some((one, one.deleted.as_ref()?))).collect();
    html! {
        div.sheet {
            header {
            (head(w, &say!(w, "people-title"), None, Part::Shelf, Kind::Real))
            (lead(&say!(w, "people-lead")))
            }
            main {
                p.done role="status" { (said.unwrap_or_default()) }
                (section("whom", &say!(w, "people-whom-head"), &whom(w)))
                (section("words", &say!(w, "people-words-head"), &words(w, view)))
                @if view.words() > 0 {
                    (section("delete", &say!(w, "kept-delete-head"), &html! {
                        p { (say!(w, "people-delete-says", backups = view.backups)) }
                        form.opener method="post" action="/kept" {
                            (field)
                            ul.ticklist { li { label {
                                input type="checkbox" name="sure" value="yes" required;
                                span { (say!(w, "kept-delete-check")) }
                            } } }
                            div.btns { button.btn.main { (say!(w, "people-delete-go")) } }
                        }
                    }))
                }
                (section("look", &say!(w, "people-look-head"), &html! {
                    p { (say!(w, "people-look-says")) }
                    form method="post" action="/kept#look" {
                        (field)
                        div.fields { div.one.wide {
                            label for="name" { (say!(w, "people-look-name")) }
                            div.fld { input type="text" id="name" name="name" autocomplete="off" required minlength="6" maxlength="100"; }
                        } }
                        div.btns.addrow { button.btn { (say!(w, "people-look-go")) } }
                    }
                    @if let Some(looked) = looked { (traces(w, looked)) }
                }))
                @if !proofs.is_empty() {
                    (section("proof", &say!(w, "kept-done-head"), &html! {
                        @for (of, deleted) in proofs {
                            h3 { (of.title) }
                            p { (say!(w, "kept-done", at = when(deleted.at()), words = count(deleted.words))) }
                            p { (say!(w, "kept-done-left", left = count(deleted.left))) }
                            @if let Some(looked) = &deleted.looked { (traces(w, looked)) }
                            p { a href={ "/i/" (of.id) "/names#proof" } { (say!(w, "people-more")) } }
                        }
                    }))
                }
                p.small.soft { (say!(w, "people-where", folder = &view.folder)) }
            }
        }
    }
}

fn count(number: u64) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}

/// Who, what, and until when.
fn whom(w: Wording) -> Markup {
    html! {
        div.scrolls tabindex="0" { table {
            thead { tr {
                th scope="col" { (say!(w, "people-who")) }
                th scope="col" { (say!(w, "people-what")) }
                th scope="col" { (say!(w, "people-until")) }
            } }
            tbody { @for [who, what, until] in &about_whom(w) { tr {
                th scope="row" { (who) }
                td { (what) }
                td { (until) }
            } } }
        } }
    }
}

fn words(w: Wording, view: &PeopleView) -> Markup {
    html! {
        @if view.of.is_empty() { p { (say!(w, "people-none")) } } @else {
            ul.plain { @for one in &view.of { li {
                a href={ "/i/" (one.id) "/names" } { (one.title) } ": "
                (say!(w, "people-texts", count = count(one.words)))
                @if let (true, Some(due)) = (one.words > 0, one.due) {
                    " " (say!(w, "people-due", day = due.to_string()))
                }
            } } }
        }
    }
}
