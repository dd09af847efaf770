//! The sheet as a form: every part with its own button.

use crate::desk::room::pilot::{Field, PartForm, PartStands, Table, ToDo};
use crate::desk::{Wording, say};
use maud::{Markup, html};

/// The whole sheet.
pub(super) fn sheet(w: Wording, to_do: &ToDo, rest: &[String]) -> Markup {
    html! {
        button.vh type="submit" form="sheet" name="do" value="save" tabindex="-1" { (say!(w, "pilot-save-all")) }
        p.soft { (say!(w, "pilot-units")) }
        @if !rest.is_empty() {
            div.fault id="rest" { @for says in rest { p { (says) } } }
        }
        div.fields.single role="group" aria-label=(say!(w, "pilot-heads")) {
            @for head in &to_do.heads { (once(head)) }
        }
        p.small.soft { (say!(w, "pilot-lot-says")) }
        @for part in &to_do.parts { (one(w, part)) }
        div.btns.addrow {
            button.btn.quiet type="submit" form="sheet" name="do" value="save" { (say!(w, "pilot-save-all")) }
            @if to_do.begun {
                button.btn.quiet type="submit" form="sheet" name="do" value="away" { (say!(w, "pilot-away")) }
            }
        }
        @if to_do.begun { p.small.soft { (say!(w, "pilot-away-says")) } }
    }
}

/// What is written once.
fn once(field: &Field) -> Markup {
    let said = format!("said-{}", field.id);
    let bad = field.fault.is_some();
    html! {
        div.one {
            label for=(field.id) { (field.label) }
            span.fld.bad[bad] {
                input id=(field.id) name=(field.id) form="sheet" value=(field.value) autocomplete="off"
                    type=(if field.id == "date" { "date" } else { "text" })
                    maxlength=[(field.id != "date").then_some("60")]
                    aria-describedby=[bad.then_some(&said)] aria-invalid=[bad.then_some("true")];
            }
            @if let Some(fault) = &field.fault { div.fault id=(said) { p { (fault) } } }
        }
    }
}

fn one(w: Wording, part: &PartForm) -> Markup {
    let word = part.part.word();
    html! {
        div.part id={ "part-" (word) } {
            h3 { (part.name) }
            p { (part.how) }
            @for table in &part.tables {
                @if table.spare {
                    @let used = table.rows.iter().flat_map(|(_, fields)| fields).any(|field| !field.value.is_empty());
                    details open[used] { summary { (table.name) } (self::table(w, table)) }
                } @else {
                    (self::table(w, table))
                }
            }
            div.btns {
                button.btn type="submit" form="sheet" name="do" value={ "save " (word) }
                    aria-label=(say!(w, "pilot-save-named", part = &part.name)) { (say!(w, "pilot-save")) }
                span.small.soft {
                    @match part.stands {
                        PartStands::Empty => {},
                        PartStands::Kept => (say!(w, "pilot-is-kept")),
                        PartStands::NotKept => (say!(w, "pilot-not-kept")),
                    }
                }
            }
        }
    }
}

fn table(w: Wording, table: &Table) -> Markup {
    let wide = table.heads.len();
    html! {
        div.scrolls tabindex="0" { table.typed {
            @if !table.name.is_empty() && !table.spare { caption.vh { (table.name) } }
            thead { tr { @for head in &table.heads { th scope="col" { (head) } } } }
            tbody { @for (name, fields) in &table.rows {
                tr {
                    @if let Some(name) = name { th scope="row" { (name) } }
                    @for field in fields { td { (cell(field)) } }
                }
                @for field in fields.iter().filter(|field| field.fault.is_some()) {
                    tr { td colspan=(wide) {
                        div.fault id={ "said-" (field.id) } {
                            p { b { (say!(w, "pilot-at", label = &field.label)) } " " (field.fault.as_deref().unwrap_or_default()) }
                        }
                    } }
                }
            } }
        } }
    }
}

fn cell(field: &Field) -> Markup {
    let said = format!("said-{}", field.id);
    let bad = field.fault.is_some();
    html! {
        span.fld.bad[bad] {
            input id=(field.id) name=(field.id) form="sheet" value=(field.value) autocomplete="off" size="8"
                maxlength="60" aria-label=(field.label)
                aria-describedby=[bad.then_some(&said)] aria-invalid=[bad.then_some("true")];
        }
    }
}
