//! What the addresses for a file of readings answer.

use crate::desk::room::benches::millimeters;
use crate::desk::room::sheets::{FileLook, from_file, look_at_file};
use crate::desk::{Wording, say};
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::body::Bytes;
use axum::extract::{Path, Query, State};
use axum::response::Html;
use barm_domain::record::Key;
use maud::{Markup, html};
use serde::Deserialize;
use std::collections::BTreeSet;

/// What the address brings.
#[derive(Deserialize)]
pub(in crate::web) struct Asked {
    /// The first of the keys, made in the page.
    key: String,
    /// Places of contradictions in which the file is right, parted by dots.
    #[serde(default)]
    take: String,
}

impl Asked {
    fn key(&self, w: Wording) -> Result<Key, Trouble> {
        self.key.parse().map_err(|_| Trouble::Wrong(say!(w, "paper-file-key")))
    }

    fn take(&self) -> BTreeSet<usize> {
        self.take.split('.').filter_map(|place| place.parse().ok()).collect()
    }
}

/// Says what a file would add, and adds nothing.
pub(in crate::web) async fn look_file(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
    Words(w): Words,
    bytes: Bytes,
) -> Result<Html<String>, Trouble> {
    let key = asked.key(w)?;
    let look = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            Ok::<_, Trouble>(room.read(|scene| look_at_file(scene, &bytes, key, now)))
        })
        .await?;
    Ok(Html(told(w, &look).into_string()))
}

/// Adds what a file says; answers when it is on disk.
pub(in crate::web) async fn add_file(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
    Words(w): Words,
    bytes: Bytes,
) -> Result<Html<String>, Trouble> {
    let (key, take) = (asked.key(w)?, asked.take());
    let room = web.room(id).await?;
    let own = room.clone();
    let entries = web
        .wait(move |_, now| {
            Ok::<_, Trouble>(own.read(|scene| from_file(scene, &bytes, key, &take, now)))
        })
        .await?;
    let count = entries.len();
    if count > 0 {
        room.enter(entries).await?;
    }
    let says = say!(w, "paper-file-added", count = count);
    Ok(Html(html! { p data-added=(count) { b { (says) } } }.into_string()))
}

fn told(w: Wording, look: &FileLook) -> Markup {
    html! {
        @if let Some(says) = &look.above_all { p.fault { (says) } }
        @if look.adds() || look.there > 0 {
            p {
                b { (say!(w, "paper-file-new", count = look.count)) }
                " " (say!(w, "paper-file-there", count = look.there))
            }
        }
        @if !look.new.is_empty() {
            details {
                summary { span { (say!(w, "paper-file-each")) } }
                ul.plain { @for (bag, minutes) in &look.new { li { b { (bag) } ": " (minutes.join(", ")) } } }
            }
        }
        @if !look.contradictions.is_empty() {
            h3 { (say!(w, "paper-file-differ-head")) }
            p.small.soft { (say!(w, "paper-file-differ-lead")) }
            div.scrolls { table.differs {
                thead { tr {
                    th scope="col" { (say!(w, "paper-bag")) }
                    th.r scope="col" { (say!(w, "paper-minute")) }
                    th.r scope="col" { (say!(w, "paper-file-record")) }
                    th.r scope="col" { (say!(w, "paper-file-file")) }
                    th scope="col" { (say!(w, "paper-file-right")) }
                } }
                tbody { @for one in &look.contradictions {
                    tr {
                        th scope="row" { (one.bag) }
                        td.r { (one.minute) }
                        td.r { (millimeters(one.was_mm)) " mm" }
                        td.r { (millimeters(one.file_mm)) " mm" }
                        td { label.tick { input type="checkbox" data-take=(one.place); span { (say!(w, "paper-file-take")) } } }
                    }
                } }
            } }
        }
        (list(&say!(w, "paper-file-odd"), &pairs(&look.odd)))
        (list(&say!(w, "paper-file-aside"), &pairs(&look.set_aside)))
        (list(&say!(w, "paper-file-not-counted"), &pairs(&look.not_counted)))
        @if look.notes_left > 0 {
            p.small.soft { (say!(w, "paper-file-notes", count = look.notes_left)) }
        }
        @for note in &look.notes { p.small.soft { (note) } }
        @if !look.rejected.is_empty() {
            details open[look.rejected.len() <= 6] {
                summary { span { (say!(w, "paper-file-rejected", count = look.rejected.len())) } }
                ul.plain { @for (line, why) in &look.rejected {
                    li { @if *line > 0 { (say!(w, "paper-file-line", line = line.to_string())) " " } (why) "." }
                } }
            }
        }
        @if look.adds() {
            div.btns.addrow { button.btn.main type="button" id="file-add" { (say!(w, "paper-file-add")) } }
        } @else if look.above_all.is_none() {
            p { (say!(w, "paper-file-adds-nothing")) }
        }
    }
}

fn pairs<T: AsRef<str>>(all: &[(String, T)]) -> Vec<String> {
    all.iter().map(|(bag, says)| format!("{bag}: {}", says.as_ref())).collect()
}

fn list(head: &str, all: &[String]) -> Markup {
    html! {
        @if !all.is_empty() {
            h3 { (head) }
            ul.plain { @for one in all { li { (one) } } }
        }
    }
}
