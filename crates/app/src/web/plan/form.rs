//! The form, section by section.

use crate::desk::editing::{Editing, FormField, Input, Said, Section, Table};
use crate::desk::{Wording, say};
use barm_domain::finding::Severity;
use maud::{Markup, html};

/// Everything that the teacher edits.
pub(super) fn form(w: Wording, editing: &Editing) -> Markup {
    html! {
        @for section in &editing.sections { (one(w, section)) }
    }
}

fn one(w: Wording, section: &Section) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (section.head) } }
            div.bd {
                @for table in &section.tables { (group(w, table, &section.head)) }
                @if !section.add.is_empty() {
                    div.btns.addrow {
                        @for (list, says) in &section.add {
                            button.btn.quiet type="submit" name="do" value={ "add " (list) } { (says) }
                        }
                    }
                }
            }
        }
    }
}

fn group(w: Wording, table: &Table, section: &str) -> Markup {
    let single = table.out.is_none();
    html! {
        div.fields.single[single] role="group" aria-label=(label(table, section)) {
            @if !table.head.is_empty() { h3 { (table.head) } }
            @for field in &table.fields { (line(field)) }
            @if let Some((place, says)) = &table.out {
                button.btn.quiet.out type="submit" name="do" value={ "out " (place) }
                    aria-label=(says) title=(says) { (say!(w, "plan-out")) }
            }
            @for field in &table.fields {
                div.saying id=(format!("said-{}", id_of(&field.name))) data-said=(field.name)
                    data-for=(id_of(&field.name)) { (all(w, &field.said)) }
            }
        }
    }
}

fn label<'t>(table: &'t Table, section: &'t str) -> &'t str {
    let name = table.fields.iter().find(|field| field.name.ends_with(".name"));
    match name {
        Some(field) if !field.value.is_empty() => &field.value,
        _ if !table.head.is_empty() => &table.head,
        _ => section,
    }
}

/// An id made of a field's name: letters, digits and dashes.
pub(super) fn id_of(field: &str) -> String {
    let dashed = field.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' });
    dashed.collect()
}

fn line(field: &FormField) -> Markup {
    let id = id_of(&field.name);
    let name = format!("f:{}", field.name);
    let said = format!("said-{id}");
    let bad = field.said.iter().any(|said| said.severity == Severity::Fault);
    let invalid = bad.then_some("true");
    let wide = field.input == Input::Line;
    html! {
        div.one.wide[wide] {
            label for=(id) { (field.label) }
            span.fld.wide[wide].bad[bad] {
                @match &field.input {
                    Input::Choice(choices) => {
                        select id=(id) name=(name) aria-describedby=(said) aria-invalid=[invalid] {
                            @for (value, word) in choices {
                                option value=(value) selected[*value == field.value] { (word) }
                            }
                        }
                    }
                    input => {
                        input id=(id) name=(name) value=(field.value) autocomplete="off"
                            type=(if *input == Input::Date { "date" } else { "text" })
                            spellcheck=(if wide { "true" } else { "false" })
                            size=[(!wide).then_some(12)]
                            aria-describedby=(said) aria-invalid=[invalid];
                    }
                }
            }
        }
    }
}

/// Everything that is said beside one field.
pub(super) fn all(w: Wording, said: &[Said]) -> Markup {
    html! { @for one in said { (said_here(w, one)) } }
}

/// One thing that is said: a fault, a warning or a note, as a sentence with what to do.
pub(super) fn said_here(w: Wording, said: &Said) -> Markup {
    let (class, word) = match said.severity {
        Severity::Fault => ("fault", say!(w, "plan-fault")),
        Severity::Warning => ("warns", say!(w, "plan-warning")),
        Severity::Note => ("notes", say!(w, "plan-note")),
        Severity::Caution => ("notes", say!(w, "plan-caution")),
    };
    html! {
        div class=(class) {
            p {
                b { (word) } " " (said.message) " " (said.fix)
                @if let (Some(line), None) = (said.line, &said.at) { span.soft { " " (say!(w, "plan-line", line = line.to_string())) } }
            }
        }
    }
}
