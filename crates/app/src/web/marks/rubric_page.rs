//! The rubric as a form.

use crate::desk::room::Kind;
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use barm_domain::marks::{LEVELS, Rubric, RubricFault};
use maud::{Markup, html};

/// The whole page, of the investigation of that number, title and kind.
pub(super) fn page(
    w: Wording,
    (id, title, kind): (i64, &str, Kind),
    rubric: &Rubric,
    (field, faults): (&Markup, &[RubricFault]),
) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, title, Some(id), Part::Results, kind))
            (lead(&say!(w, "marks-rubric-lead")))
            }
            div role="status" {
                @if !faults.is_empty() {
                    div.fault {
                        p { (say!(w, "marks-rubric-faults")) }
                        ul { @for fault in faults { li { (fault) } } }
                    }
                }
            }
            main {
                p { a href={ "/i/" (id) "/marks" } { (say!(w, "marks-list")) } }
                form method="post" {
                    (field)
                    section.sec {
                        div.mg { h2 { (say!(w, "marks-levels")) } }
                        div.bd { div.fields {
                            @for (at, level) in rubric.levels.iter().enumerate() {
                                (line(&format!("level-{at}"), &(at + 1).to_string(), level))
                            }
                        } }
                    }
                    @for strand in &rubric.strands {
                        (one(w, &strand.id, (&strand.name, &strand.looks)))
                    }
                    (one(w, "new", ("", &Default::default())))
                    div.btns {
                        button.btn.main type="submit" name="do" value="save" { (say!(w, "marks-rubric-save")) }
                        button.btn.quiet type="submit" name="do" value="again" { (say!(w, "marks-rubric-again")) }
                    }
                }
            }
        }
    }
}

fn one(w: Wording, id: &str, (name, looks): (&str, &[String; LEVELS])) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { @if name.is_empty() { (say!(w, "marks-rubric-new")) } @else { (name) } } }
            div.bd { div.fields {
                (line(&format!("name-{id}"), &say!(w, "marks-rubric-name"), name))
                @for (at, looks) in looks.iter().enumerate() {
                    @let label = say!(w, "marks-rubric-level", level = (at + 1).to_string());
                    (line(&format!("looks-{id}-{at}"), &label, looks))
                }
            } }
        }
    }
}

fn line(name: &str, label: &str, value: &str) -> Markup {
    html! {
        div.one.wide {
            label for=(name) { (label) }
            span.fld.wide { input id=(name) name=(name) value=(value) maxlength="300" autocomplete="off"; }
        }
    }
}
