//! Words and backups as markup.

use crate::desk::room::Kind;
use crate::desk::room::backups::BackupLine;
use crate::desk::room::kept_words::{Deleted, WordsView};
use crate::desk::room::traces::Looked;
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use jiff::Timestamp;
use maud::{Markup, html};
use std::path::Path;

/// A moment that the page's script shows as the clock on the wall has it.
pub(super) fn when(at: Timestamp) -> String {
    at.strftime("%Y-%m-%d %H:%M UTC").to_string()
}

pub(super) fn section(id: &str, says: &str, body: &Markup) -> Markup {
    html! { section.sec id=(id) { div.mg { h2 { (says) } } div.bd { (body) } } }
}

/// What is kept in words.
pub(super) fn words(
    w: Wording,
    view: &WordsView,
    said: Option<&str>,
    field: &Markup,
) -> Markup {
    let id = view.id;
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(id), Part::Shelf, view.kind))
            (lead(&say!(w, "kept-lead")))
            }
            main {
                p.done role="status" { (said.unwrap_or_default()) }
                (section("kept", &say!(w, "kept-head"), &kept(w, view)))
                @if view.total() > 0 {
                    (section("delete", &say!(w, "kept-delete-head"), &html! {
                        p { (say!(w, "kept-delete-says")) }
                        form.opener method="post" action={ "/i/" (id) "/names/delete" } {
                            (field)
                            ul.ticklist { li { label {
                                input type="checkbox" name="sure" value="yes" required;
                                span { (say!(w, "kept-delete-check")) }
                            } } }
                            div.btns { button.btn.main { (say!(w, "kept-delete-go")) } }
                        }
                    }))
                }
                (section("day", &say!(w, "kept-day-head"), &day(w, view, field)))
                @if let Some(deleted) = &view.deleted {
                    (section("proof", &say!(w, "kept-done-head"), &proof(w, deleted)))
                }
                (section("copies", &say!(w, "kept-backups-head"), &html! {
                    @if view.backups.is_empty() { p { (say!(w, "kept-backups-none")) } }
                    ul.plain { @for (path, made) in &view.backups { li { (path.display()) ", " (when(*made)) } } }
                    p.addrow { a href="/backups" { (say!(w, "backups-title")) } }
                    p.small.soft { (say!(w, "kept-elsewhere")) }
                }))
            }
        }
    }
}

fn kept(w: Wording, view: &WordsView) -> Markup {
    let line = |kind: &str, count: u64| {
        let count = usize::try_from(count).unwrap_or(usize::MAX);
        match kind {
            "reason" | "guess" => say!(w, "kept-reasons", count = count),
            "proposal" => say!(w, "kept-proposals", count = count),
            "claim" => say!(w, "kept-claims", count = count),
            "claim-review" => say!(w, "kept-reviews", count = count),
            "mark" | "mark-copy" => say!(w, "kept-marks", count = count),
            "roster" => say!(w, "kept-rosters", count = count),
            "group-list" => say!(w, "kept-group-lists", count = count),
            "proposal-answer" => say!(w, "kept-answers", count = count),
            _ => say!(w, "kept-others", count = count),
        }
    };
    html! {
        @if view.total() == 0 {
            p { (say!(w, "kept-none")) }
        } @else {
            ul.plain { @for (kind, count) in &view.kinds { li { (line(kind, *count)) } } }
            p { (say!(w, "kept-needed")) }
        }
        p.small.soft { (say!(w, "kept-plan")) }
    }
}

fn day(w: Wording, view: &WordsView, field: &Markup) -> Markup {
    let due = view.due.map(|day| day.to_string());
    html! {
        @match &due {
            Some(day) => p { b { (say!(w, "kept-day-on", day = day)) } },
            None => p { (say!(w, "kept-day-none")) },
        }
        @if view.chosen {
            p { (say!(w, "kept-day-chosen")) }
        } @else if let Some(last) = view.last_day {
            p { (say!(w, "kept-day-rule", last = last.to_string())) }
        }
        form method="post" action={ "/i/" (view.id) "/names/day" } {
            (field)
            div.fields {
                div.one {
                    label for="other-day" { (say!(w, "kept-day-label")) }
                    div.fld { input type="date" id="other-day" name="day" value=[due.as_deref()]; }
                }
            }
            div.btns {
                button.btn { (say!(w, "kept-day-go")) }
                @if view.chosen {
                    button.btn.quiet name="do" value="rule" { (say!(w, "kept-day-back")) }
                }
            }
        }
    }
}

fn proof(w: Wording, deleted: &Deleted) -> Markup {
    let (words, left) = (deleted.words, deleted.left);
    let count = |number: u64| usize::try_from(number).unwrap_or(usize::MAX);
    let moment = |ms: i64| when(Timestamp::from_millisecond(ms).unwrap_or_default());
    html! {
        p {
            (say!(w, "kept-done", at = when(deleted.at()), words = count(words)))
            @if deleted.by_itself { " " (say!(w, "kept-done-itself")) }
        }
        p { b { (say!(w, "kept-done-left", left = count(left))) } }
        @if let Some(looked) = &deleted.looked { (traces(w, looked)) }
        p { (say!(w, "kept-done-backups", count = deleted.backups.len())) }
        ul.plain { @for path in &deleted.backups { li { (path) } } }
        @if !deleted.unreached.is_empty() {
            div.fault {
                p { b { (say!(w, "kept-done-unreached")) } }
                ul.plain { @for (path, made, why) in &deleted.unreached {
                    li { (say!(w, "kept-unreached", path = path, made = moment(*made), why = why)) }
                } }
            }
        }
    }
}

/// What a look through every byte found.
pub(super) fn traces(w: Wording, looked: &Looked) -> Markup {
    let count = |number: u64| usize::try_from(number).unwrap_or(usize::MAX);
    // Rounded up, so that a small folder is not told as empty.
    let megabytes = count(looked.bytes.div_ceil(1_000_000));
    html! {
        p { (say!(w, "kept-looked", files = count(looked.files), size = megabytes, pieces = count(looked.pieces))) }
        @if looked.found.is_empty() {
            p { b { (say!(w, "kept-looked-none")) } }
        } @else {
            div.fault {
                p { b { (say!(w, "kept-looked-found")) } }
                ul.plain { @for path in &looked.found { li { (path) } } }
            }
        }
        @if looked.short > 0 { p.small.soft { (say!(w, "kept-looked-short", count = count(looked.short))) } }
        @if !looked.unread.is_empty() {
            div.fault {
                p { b { (say!(w, "kept-looked-unread")) } }
                ul.plain { @for path in &looked.unread { li { (path) } } }
            }
        }
    }
}

/// The backups.
pub(super) fn backups(
    w: Wording,
    lines: &[BackupLine],
    folder: &Path,
    says: Option<&str>,
    field: &Markup,
) -> Markup {
    let newest = lines.iter().find(|line| line.there);
    let data = folder.display().to_string();
    let file = newest.map_or_else(|| "FILE".to_owned(), |line| line.path.display().to_string());
    html! {
        div.sheet {
            header {
            (head(w, &say!(w, "backups-title"), None, Part::Shelf, Kind::Real))
            (lead(&say!(w, "backups-lead")))
            }
            main {
                p.done role="status" { (says.unwrap_or_default()) }
                (section("make", &say!(w, "backups-make-head"), &html! {
                    @match newest {
                        Some(one) => p {
                            (say!(w, "backups-last", made = when(one.made), checked = when(one.checked)))
                        },
                        None => p { b { (say!(w, "backups-none")) } },
                    }
                    form.addrow method="post" action="/backups" {
                        (field)
                        button.btn.main name="do" value="make" { (say!(w, "backups-make")) }
                    }
                }))
                @if !lines.is_empty() {
                    (section("list", &say!(w, "backups-head"), &list(w, lines, field)))
                }
                (section("back", &say!(w, "backups-back-head"), &html! {
                    p { (say!(w, "backups-back")) }
                    p.command { code { "barm restore \"" (file) "\" --data \"" (data) "\"" } }
                    p.small.soft { (say!(w, "backups-words")) }
                }))
                (section("text", &say!(w, "backups-export-head"), &html! {
                    p { (say!(w, "backups-export")) }
                    p.command { code { "barm export barm-text --data \"" (data) "\"" } }
                }))
            }
        }
    }
}

fn list(w: Wording, lines: &[BackupLine], field: &Markup) -> Markup {
    html! {
        div.scrolls { table {
            thead { tr {
                th scope="col" { (say!(w, "backups-file")) }
                th scope="col" { (say!(w, "backups-when")) }
                th scope="col" { (say!(w, "backups-read")) }
                td {}
            } }
            tbody { @for one in lines { tr {
                th scope="row" { (one.path.display()) }
                td.nowrap { (when(one.made)) }
                td.nowrap { @if one.there { (when(one.checked)) } @else { (say!(w, "backups-gone")) } }
                td { form method="post" action="/backups" {
                    (field)
                    input type="hidden" name="path" value=(one.path.display());
                    @if one.there {
                        button.btn.quiet name="do" value="check" { (say!(w, "backups-check")) }
                    } @else {
                        button.btn.quiet name="do" value="drop" { (say!(w, "backups-drop")) }
                    }
                } }
            } } }
        } }
    }
}
