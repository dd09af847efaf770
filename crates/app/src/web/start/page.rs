//! Shelf and start as markup.

use crate::desk::room::Kind;
use crate::desk::start::{NotYet, OnShelf, Typed, cupboard};
use crate::web::head::{Part, head, lead};
use barm_domain::plan::Inquiry;
use barm_domain::ready::{QUESTIONS, Ready};
use maud::{Markup, html};

/// All investigations, the newest on top.
pub(super) fn shelf(lines: &[OnShelf], field: &Markup) -> Markup {
    let own = lines.iter().filter(|line| line.kind == Kind::Real).count();
    html! {
        div.sheet {
            (head("Shelf", None, Part::Shelf, Kind::Real))
            (lead("Every investigation you have, the newest on top. Open one to plan, prepare, run \
                   or look back."))
            main {
                section.sec {
                    div.mg { h2 { "Investigations" } }
                    div.bd {
                        div.scrolls { table.shelf.ghost[lines.is_empty()] {
                            thead { tr {
                                th scope="col" { "Day" }
                                th scope="col" { "Question" }
                                th.r scope="col" { "Bags" }
                                th scope="col" { "Where it stands" }
                            } }
                            tbody {
                                @if lines.is_empty() {
                                    tr { td colspan="4" { "Nothing yet. Your first plan is the first line here." } }
                                    tr { td colspan="4" {} }
                                    tr { td colspan="4" {} }
                                }
                                @for one in lines { (line(one)) }
                            }
                        } }
                        p.note {
                            "A shelf keeps plans, bags and verdicts, never names. Next year it shows \
                             what worked, what did not, and what it cost."
                        }
                        br;
                        div.btns {
                            a.btn.main href="/start" { "Start an investigation" }
                            a.btn.quiet href="/start#file" { "Open a plan file" }
                            @if lines.iter().all(|line| line.kind != Kind::Invented) {
                                (invented_button(field))
                            }
                        }
                        @if own == 0 {
                            p.small.soft { "The made-up class is invented and says so on every page." }
                        }
                    }
                }
            }
        }
    }
}

fn line(one: &OnShelf) -> Markup {
    let kind = match one.kind {
        Kind::Real => "",
        Kind::Rehearsal => "Rehearsal. ",
        Kind::Invented => "Made-up class. ",
    };
    html! {
        tr {
            td.nowrap { (one.day) }
            td { a href={ "/i/" (one.id) "/plan" } { (one.title) } }
            td.r { (one.bags) }
            td { (kind) (one.stands) }
        }
    }
}

fn invented_button(field: &Markup) -> Markup {
    html! {
        form method="post" action="/start/invented" {
            (field)
            button.btn.quiet type="submit" { "Look at the made-up class" }
        }
    }
}

/// What a level of inquiry leaves to the students.
const fn level(inquiry: Inquiry) -> &'static str {
    match inquiry {
        Inquiry::Confirmation => "Confirmation: question, method and answer are given",
        Inquiry::Structured => "Structured: question and method are given",
        Inquiry::Guided => "Guided: the question is given",
        Inquiry::Open => "Open: students ask and plan",
    }
}

/// The ways to start.
pub(super) fn lessons(field: &Markup, brought: Option<(&str, &[String])>) -> Markup {
    html! {
        div.sheet {
            (head("Start an investigation", None, Part::Shelf, Kind::Real))
            (lead("Take a ready plan and answer six questions, or open a file. You can change \
                   everything afterwards; the plan page comes next."))
            main {
                section.sec {
                    div.mg { h2 { "Ready plans" } }
                    div.bd { ul.lessons { @for ready in Ready::ALL { (ready_line(ready)) } } }
                }
                section.sec id="file" {
                    div.mg { h2 { "A plan file" } }
                    div.bd { (file(field, brought)) }
                }
                section.sec {
                    div.mg { h2 { "The made-up class" } }
                    div.bd {
                        p { "An invented school with its plan and its bags, to look at before you \
                             make your own. It says on every page that it is invented." }
                        div.btns.addrow { (invented_button(field)) }
                    }
                }
            }
        }
    }
}

fn ready_line(ready: Ready) -> Markup {
    html! {
        li {
            h3 { (ready.title()) }
            p { (ready.says()) }
            p.small.soft { (level(ready.inquiry())) ". From " (ready.good_from_min()) " minutes." }
            a.btn.act href={ "/start/ready/" (ready.name()) }
                aria-label={ "Take this plan: " (ready.title()) } { "Take this plan" }
        }
    }
}

fn file(field: &Markup, brought: Option<(&str, &[String])>) -> Markup {
    html! {
        p { "A colleague’s plan, one of last year, or one you wrote in a text editor. Up to 1 MB." }
        form.opener method="post" action="/start/file" data-opener {
            (field)
            div hidden data-pick {
                label for="pick" { "Choose the file" }
                input id="pick" type="file" accept=".toml,text/plain,application/toml";
            }
            div {
                label for="brought" { "or paste what is in it" }
                textarea.rawtext id="brought" name="text" rows="6" spellcheck="false"
                    aria-describedby="wrong" { (brought.map(|(text, _)| text).unwrap_or_default()) }
            }
            div id="wrong" role="status" {
                @if let Some((_, wrong)) = brought {
                    div.fault {
                        p { b { "This file cannot be opened yet." } " Mend this and open it again:" }
                        ul { @for one in wrong { li { (one) } } }
                    }
                }
            }
            div.btns { button.btn type="submit" { "Open it" } }
        }
    }
}

/// The six questions of a ready plan.
pub(super) fn six(ready: Ready, typed: &Typed, not: Option<&NotYet>, field: &Markup) -> Markup {
    html! {
        div.sheet.startpage {
            (head(ready.title(), None, Part::Shelf, Kind::Real))
            (lead("Six questions fit the plan to your school. What you leave as it is can be \
                   changed later."))
            main {
                form method="post" action={ "/start/ready/" (ready.name()) } {
                    (field)
                    (question(1, not, &html! {
                        (entry("date", "Day", &typed.date, "date"))
                        (entry("start", "First bell", &typed.start, "text"))
                        (entry("altitude", "Height above the sea", &typed.altitude, "text"))
                        (entry("zone", "Time zone", &typed.zone, "text"))
                    }))
                    (question(2, not, &html! {
                        (entry("periods", "Periods", &typed.periods, "text"))
                        (entry("groups", "Groups in each", &typed.groups, "text"))
                        (entry("students", "Students in each", &typed.students, "text"))
                    }))
                    (question(3, not, &ticks(typed)))
                    (question(4, not, &html! {
                        div.one {
                            label for="bag" { "Bag" }
                            span.fld { input id="bag" name="bag" value=(typed.bag) list="bags" autocomplete="off"; }
                            datalist id="bags" {
                                @for bag in ["snack", "sandwich", "quart", "gallon"] { option value=(bag) {} }
                            }
                        }
                        p.small.soft { "Snack bags show most for least. Or write the size inside, such as 165 x 83 mm." }
                    }))
                    (question(5, not, &html! {
                        (entry("water", "Water as poured", &typed.water, "text"))
                        p.small.soft { "40 °C (104 °F) is warm bath water. Above 48 °C yeast dies." }
                    }))
                    (question(6, not, &entry("length", "From bell to bell", &typed.length, "text")))
                    div.btns {
                        button.btn.main type="submit" { "Write the plan" }
                        a.btn.quiet href="/start" { "Another plan" }
                    }
                }
            }
        }
    }
}

fn question(number: usize, not: Option<&NotYet>, body: &Markup) -> Markup {
    let wrong = not.filter(|not| not.question == number);
    html! {
        div.question {
            span.n aria-hidden="true" { (number) }
            fieldset {
                legend { h2 { (QUESTIONS[number - 1]) } }
                div.fields.single { (body) }
                @if let Some(wrong) = wrong {
                    div.fault role="alert" id="wrong-answer" { p { (wrong.says) } }
                }
            }
        }
    }
}

fn entry(name: &str, label: &str, value: &str, kind: &str) -> Markup {
    let day = kind == "date";
    html! {
        div.one {
            label for=(name) { (label) }
            span.fld {
                input id=(name) name=(name) type=(kind) value=(value) required[day]
                    autocomplete="off";
            }
        }
    }
}

fn ticks(typed: &Typed) -> Markup {
    html! {
        ul.ticklist.wide.one {
            @for (id, name) in cupboard() {
                li { label {
                    input type="checkbox" name="food" value=(id)
                        checked[typed.cupboard.iter().any(|one| one == id)];
                    (name)
                } }
            }
        }
    }
}
