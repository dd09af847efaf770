//! A group's page for marking as markup: what it handed in and its data on one side, the rubric on the other.

use crate::desk::room::marks::{MarkView, OwnBag};
use crate::desk::{Wording, say};
use crate::web::claims::claim_shown;
use crate::web::head::{Part, head, lead};
use crate::web::words::lay;
use barm_domain::marks::{Basis, GivenFault, MOST_CHARACTERS, Offered, Strand};
use barm_domain::roster::Shown;
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(
    w: Wording,
    view: &MarkView,
    field: &Markup,
    fault: Option<&GivenFault>,
) -> Markup {
    let (period, group) = (&view.group.0, view.group.1.to_string());
    let (place, of) = (view.place.0.to_string(), view.place.1.to_string());
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Results, view.kind))
            (lead(&say!(w, "marks-one-lead")))
            }
            div role="status" {
                @if let Some(fault) = fault { p.fault { (fault) } }
            }
            main.marking data-marking {
                div.handed {
                    h2 {
                        (say!(w, "approve-group", period = period, group = group)) " "
                        small.soft { (say!(w, "marks-place", place = place, of = of)) }
                    }
                    @if !view.students.is_empty() {
                        p { (say!(w, "roster-in-group", students = students(w, &view.students))) }
                    }
                    @match &view.claim {
                        Some(claim) => (claim_shown(w, period, claim)),
                        None => p.soft { (say!(w, "marks-nothing-claimed")) },
                    }
                    @if let Some(curves) = &view.curves { div.chartbox { (PreEscaped(curves)) } }
                    (bags(w, &view.bags))
                }
                form.rubric method="post" {
                    (field)
                    p.small.soft.keys {
                        (lay!(
                            w,
                            "marks-keys",
                            levels = html! { kbd { "0" } " – " kbd { "4" } },
                            up = html! { kbd { "k" } },
                            down = html! { kbd { "j" } },
                            remark = html! { kbd { "r" } },
                            next = html! { kbd { "n" } },
                            before = html! { kbd { "b" } },
                        ))
                        " "
                        label.inline {
                            input type="checkbox" id="keys-on" checked;
                            " " (say!(w, "approve-use-keys"))
                        }
                    }
                    @for (place, strand) in view.rubric.strands.iter().enumerate() {
                        (one(w, view, strand, &view.offered[place]))
                    }
                    label.inline {
                        input type="checkbox" name="class-data" value="1" checked[view.given.basis == Basis::ClassData];
                        " " (say!(w, "marks-class-data"))
                    }
                    div.btns {
                        button.btn.main type="submit" name="do" value="next" data-key="n" { (say!(w, "marks-next")) }
                        button.btn type="submit" name="do" value="stay" { (say!(w, "marks-save")) }
                        @if view.beside.0.is_some() {
                            button.btn.quiet type="submit" name="do" value="before" data-key="b" { (say!(w, "marks-before")) }
                        }
                        a.btn.quiet href={ "/i/" (view.id) "/marks" } { (say!(w, "marks-list")) }
                    }
                }
            }
        }
    }
}

/// A strand with its levels, its remark, and remarks to be used again.
fn one(w: Wording, view: &MarkView, strand: &Strand, offered: &[Offered]) -> Markup {
    let given = view.given.levels.get(&strand.id).copied();
    let remark = view.given.remarks.get(&strand.id).map_or("", String::as_str);
    let name = format!("level-{}", strand.id);
    let own = format!("remark-{}", strand.id);
    html! {
        fieldset.strand data-strand tabindex="-1" {
            legend { (strand.name) }
            label.level {
                input type="radio" name=(name) value="0" checked[given == Some(0)];
                span { b { "0" } " " (say!(w, "marks-nothing")) }
            }
            @for (level, (called, looks)) in (1_u8..).zip(view.rubric.levels.iter().zip(&strand.looks)) {
                label.level {
                    input type="radio" name=(name) value=(level) checked[given == Some(level)];
                    span { b { (level) " " (called) } " " (looks) }
                }
            }
            label for=(own) { (say!(w, "marks-remark")) }
            textarea id=(own) name=(own) maxlength=(MOST_CHARACTERS) rows="2" { (remark) }
            @if !offered.is_empty() {
                div.again aria-label=(say!(w, "marks-again")) role="group" {
                    @for one in offered {
                        button.btn.quiet.small type="button" data-again=(own) { (one.words) }
                    }
                }
            }
        }
    }
}

/// Who is in the group, on one line.
fn students(w: Wording, all: &[(Shown, bool)]) -> String {
    let one = |(shown, absent): &(Shown, bool)| {
        let student = shown.words();
        if *absent {
            say!(w, "roster-in-group-absent", student = student)
        } else {
            student.to_owned()
        }
    };
    all.iter().map(one).collect::<Vec<_>>().join(", ")
}

fn bags(w: Wording, bags: &[OwnBag]) -> Markup {
    html! {
        h3 { (say!(w, "marks-bags")) }
        @if bags.is_empty() { p.soft { (say!(w, "marks-no-bags")) } }
        ul.plain {
            @for bag in bags {
                li {
                    b { (bag.code) } " " (bag.treatment) ": "
                    @if bag.rises.is_empty() { (say!(w, "marks-not-read")) }
                    @for (place, (minute, mm)) in bag.rises.iter().enumerate() {
                        @if place > 0 { ", " }
                        (say!(w, "marks-rise", minute = format!("{minute:.0}"), rise = format!("{mm:.0}")))
                    }
                    @if let Some(rule) = &bag.set_aside { " " span.soft { (say!(w, "marks-set-aside", rule = rule)) } }
                }
            }
        }
    }
}
