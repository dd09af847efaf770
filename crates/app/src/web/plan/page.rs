//! The plan page as markup.

use super::form;
use crate::desk::editing::{Caution, Chart, Editing, Foreseen, LONGEST, Verdict};
use crate::desk::room::plans::{PlanView, Version};
use crate::desk::{Wording, say};
use crate::web::head::{Part, by_pilot, head, lead};
use maud::{Markup, PreEscaped, html};

/// What the page needs beside the plan.
pub(super) struct Around {
    /// The hidden field of every form.
    pub(super) field: Markup,
    /// What that field says, for the script.
    pub(super) token: String,
    /// What was just done, or why not.
    pub(super) done: Option<String>,
    /// Whether what stands here is kept: only then is there something to prepare.
    pub(super) kept: bool,
    /// The version that this text began with.
    pub(super) from: u32,
    /// Whether the raw text is shown in place of the form.
    pub(super) raw: bool,
}

/// The whole page.
pub(super) fn page(
    w: Wording,
    view: &PlanView,
    around: &Around,
    foreseen: Option<&Foreseen>,
) -> Markup {
    let home = format!("/i/{}/plan", view.id);
    let editing = &view.editing;
    html! {
        div.sheet data-plan=(home) data-token=(around.token) {
            header {
            (head(w, &view.title, Some(view.id), Part::Plan, view.kind))
            (lead(&say!(w, "plan-lead")))
            }
            @if view.sealed > 0 {
                p.small.soft { (say!(w, "plan-sealed", count = view.sealed)) }
            }
            p.done role="status" id="done" {
                @if let Some(done) = &around.done {
                    (done) " "
                    @if around.kept && editing.faults == 0 {
                        a href={ "/i/" (view.id) "/prepare" } { (say!(w, "plan-next")) }
                    }
                }
            }
            main.plan {
                form.editform id="edit" method="post" action=(home) {
                    (around.field)
                    input type="hidden" name="from" value=(around.from);
                    button.vh type="submit" name="do" value="save" tabindex="-1" { (say!(w, "plan-save-short")) }
                    (bar(w, view, around.raw))
                    div id="around" { (around_form(w, editing)) }
                    @if around.raw || editing.sections.is_empty() {
                        (raw(w, editing))
                    } @else {
                        textarea name="text" hidden { (editing.text) }
                        (form::form(w, editing))
                        (swap(w, editing))
                        (bags(w, editing))
                    }
                    (versions(w, view))
                }
                section.fc id="fc" {
                    h2 { (say!(w, "plan-foresee")) }
                    p.soft { (say!(w, "plan-band")) }
                    (by_pilot(w, view.id, view.by_pilot.as_deref()))
                    div id="forecast" aria-live="off" {
                        @match foreseen {
                            Some(foreseen) => (self::foreseen(w, foreseen)),
                            None => p.soft { (say!(w, "plan-working")) },
                        }
                    }
                    div id="verdicts" {
                        @if let Some(foreseen) = foreseen { (comes_to(w, foreseen)) }
                    }
                    (cautions(w, editing, around))
                }
            }
        }
    }
}

fn bar(w: Wording, view: &PlanView, raw: bool) -> Markup {
    html! {
        div.bar {
            button.btn.main type="submit" name="do" value="save" { (say!(w, "plan-save")) }
            @if raw {
                button.btn.quiet type="submit" name="do" value="form" { (say!(w, "plan-as-form")) }
            } @else {
                button.btn.quiet type="submit" name="do" value="raw" { (say!(w, "plan-as-text")) }
            }
            a.btn.quiet.tofc href="#fc" { (say!(w, "plan-see-forecast")) }
            p.tally id="tally" role="status" { (tally(w, view.editing.faults, view.keep)) }
        }
    }
}

/// How the plan stands, in a few words: its faults, and how many sealed bags would keep an older one.
pub(super) fn tally(w: Wording, faults: usize, keep: usize) -> Markup {
    let says = say!(w, "plan-faults", count = faults);
    html! {
        @if faults == 0 { (says) } @else { b { (says) } }
        @if keep > 0 { " " span.keep { (say!(w, "plan-keep", count = keep)) } }
    }
}

/// What has no field of its own.
pub(super) fn around_form(w: Wording, editing: &Editing) -> Markup {
    html! {
        @if !editing.around.is_empty() {
            div.aroundform { (form::all(w, &editing.around)) }
        }
    }
}

fn raw(w: Wording, editing: &Editing) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "plan-text")) } }
            div.bd {
                label for="text" { (say!(w, "plan-text-all")) }
                textarea.rawtext id="text" name="text" rows="40" spellcheck="false" { (editing.text) }
            }
        }
    }
}

fn swap(w: Wording, editing: &Editing) -> Markup {
    if editing.foods.is_empty() {
        return html! {};
    }
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "plan-swap")) } }
            div.bd {
                p.soft { (say!(w, "plan-swap-says")) }
                div.fields.single {
                    div.one {
                        label for="swap-from" { (say!(w, "plan-swap-from")) }
                        span.fld { select id="swap-from" name="swap-from" {
                            @for (id, name) in &editing.foods { option value=(id) { (name) } }
                        } }
                    }
                    div.one {
                        label for="swap-to" { (say!(w, "plan-swap-to")) }
                        span.fld { select id="swap-to" name="swap-to" {
                            @for (id, name) in &editing.larder { option value=(id) { (name) } }
                        } }
                    }
                    button.btn.quiet type="submit" name="do" value="swap" { (say!(w, "plan-swap-go")) }
                }
            }
        }
    }
}

fn bags(w: Wording, editing: &Editing) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "plan-bags")) } }
            div.bd {
                p { (editing.bags) }
                p.soft { (say!(w, "plan-bags-says")) }
            }
        }
    }
}

fn versions(w: Wording, view: &PlanView) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "plan-versions")) } }
            div.bd {
                p.soft { (say!(w, "plan-versions-says")) }
                ul.plain.versions {
                    @for version in &view.versions { li { (one_version(w, view, version)) } }
                }
                p.small { a href={ "/i/" (view.id) "/plan.toml" } { (say!(w, "plan-download")) } }
            }
        }
    }
}

fn one_version(w: Wording, view: &PlanView, version: &Version) -> Markup {
    let newest = version.number == view.version;
    html! {
        span.num { (say!(w, "plan-version", number = version.number.to_string())) }
        @if let Some(at) = version.saved {
            time datetime=(at) data-day { (at.strftime("%Y-%m-%d %H:%M UTC")) }
        }
        @if version.pilot { span.soft { (say!(w, "plan-version-pilot")) } }
        @if newest {
            span.soft { (say!(w, "plan-version-now")) }
        } @else {
            button.btn.quiet type="submit" formaction={ "/i/" (view.id) "/plan/back" }
                name="version" value=(version.number)
                aria-label=(say!(w, "plan-back-to", number = version.number.to_string())) {
                    (say!(w, "plan-back"))
                }
        }
    }
}

/// The charts, that of what is being edited first.
pub(super) fn foreseen(w: Wording, foreseen: &Foreseen) -> Markup {
    html! {
        @if let Some(trouble) = &foreseen.trouble { p.soft { (trouble) } }
        @for (place, one) in foreseen.charts.iter().enumerate() {
            @if place == 0 {
                (chart(w, one, foreseen.charts.len() > 1))
            } @else {
                details { summary { (one.asks) } (chart(w, one, false)) }
            }
        }
    }
}

/// One chart, drawn for a wide page and again for a phone.
pub(in crate::web) fn chart(w: Wording, chart: &Chart, named: bool) -> Markup {
    html! {
        figure.forecast {
            @if named { figcaption { (chart.asks) } }
            div.wid { (PreEscaped(&chart.wide)) }
            div.nar { (PreEscaped(&chart.narrow)) }
            details.says { summary { (say!(w, "plan-in-words")) } p { (chart.says) } }
        }
    }
}

/// What the forecast comes to, and where it goes beyond what is known.
pub(super) fn comes_to(w: Wording, foreseen: &Foreseen) -> Markup {
    html! {
        @if let Some(all) = foreseen.verdicts.as_deref() { (verdicts(all)) }
        (beyond(w, &foreseen.beyond))
    }
}

/// Where forecasts go beyond what is known, a line a law; nothing if they nowhere do.
pub(in crate::web) fn beyond(w: Wording, lines: &[String]) -> Markup {
    html! {
        @if !lines.is_empty() {
            div.notes {
                p { b { (say!(w, "plan-beyond")) } }
                @for line in lines { p { (line) } }
            }
        }
    }
}

/// Shows, may not show, bag holds.
pub(in crate::web) fn verdicts(verdicts: &[Verdict]) -> Markup {
    html! {
        ul.verd {
            @for verdict in verdicts {
                li { span.vd { (verdict.word) } span { (verdict.says) } }
            }
        }
    }
}

/// The cautions, each with a line for what was done about it. While the plan is edited as text,
/// the answers stand there.
fn cautions(w: Wording, editing: &Editing, around: &Around) -> Markup {
    let answered = editing.cautions.iter().filter(|one| !one.answer.is_empty()).count();
    html! {
        @if !editing.cautions.is_empty() {
            details.cautions id="cautions" open[answered > 0 && around.done.is_some()] {
                summary {
                    (say!(w, "plan-cautions", count = editing.cautions.len()))
                    @if answered > 0 { ", " (say!(w, "plan-answered", count = answered)) }
                }
                @if !around.raw { p.soft.small { (say!(w, "plan-answer-lead")) } }
                ul.plain {
                    @for caution in &editing.cautions { li { (one_caution(w, caution, around.raw)) } }
                }
                @if !around.raw {
                    div.btns {
                        button.btn form="edit" type="submit" name="do" value="save" { (say!(w, "plan-answer-save")) }
                    }
                }
            }
        }
    }
}

fn one_caution(w: Wording, caution: &Caution, raw: bool) -> Markup {
    let said = &caution.said;
    let field = format!("a:{}", said.code);
    html! {
        span.code { (said.code) } " " (said.message) " " (said.fix)
        @if let Some(source) = said.source { span.small.soft { " " (source) } }
        @if !raw {
            div.answer {
                label for=(field) { (say!(w, "plan-answer", code = said.code)) }
                span.fld {
                    input id=(field) name=(field) form="edit" value=(caution.answer)
                        maxlength=(LONGEST) autocomplete="off" data-answer;
                }
            }
        } @else if !caution.answer.is_empty() {
            p { b { (caution.answer) } }
        }
    }
}
