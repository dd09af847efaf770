//! The plan page as markup.

use super::form;
use crate::desk::editing::{Chart, Editing, Foreseen, Verdict};
use crate::desk::room::plans::{PlanView, Version};
use crate::web::head::{Part, head, lead};
use maud::{Markup, PreEscaped, html};

/// What the page needs beside the plan.
pub(super) struct Around {
    /// The hidden field of every form.
    pub(super) field: Markup,
    /// What that field says, for the script.
    pub(super) token: String,
    /// What was just done, or why not.
    pub(super) done: Option<String>,
    /// The version that this text began with.
    pub(super) from: u32,
    /// Whether the raw text is shown in place of the form.
    pub(super) raw: bool,
}

/// The whole page.
pub(super) fn page(view: &PlanView, around: &Around, foreseen: Option<&Foreseen>) -> Markup {
    let home = format!("/i/{}/plan", view.id);
    let editing = &view.editing;
    html! {
        div.sheet data-plan=(home) data-token=(around.token) {
            (head(&view.title, Some(view.id), Part::Plan, view.kind))
            (lead("Decide here what changes and what stays the same. The forecast follows what you \
                   type. Save when it shows what you want; then prepare."))
            @if view.sealed > 0 {
                p.small.soft {
                    (view.sealed) " bags are sealed. They keep the plan that they were sealed under."
                }
            }
            p.done role="status" id="done" { (around.done.as_deref().unwrap_or_default()) }
            main.plan {
                form.editform method="post" action=(home) {
                    (around.field)
                    input type="hidden" name="from" value=(around.from);
                    button.vh type="submit" name="do" value="save" tabindex="-1" { "Save" }
                    (bar(editing, around.raw))
                    div id="around" { (around_form(editing)) }
                    @if around.raw || editing.sections.is_empty() {
                        (raw(editing))
                    } @else {
                        textarea name="text" hidden aria-hidden="true" { (editing.text) }
                        (form::form(editing))
                        (swap(editing))
                        (bags(editing))
                    }
                    (versions(view))
                }
                section.fc id="fc" {
                    h2 { "What you will see before the bell" }
                    p.soft { "Line: most likely. Band: 8 of 10 bags. Only you see this page." }
                    div id="forecast" aria-live="off" {
                        @match foreseen {
                            Some(foreseen) => (self::foreseen(foreseen)),
                            None => p.soft { "The forecast is being worked out." },
                        }
                    }
                    div id="verdicts" {
                        @if let Some(verdicts) = foreseen.and_then(|f| f.verdicts.as_deref()) {
                            (self::verdicts(verdicts))
                        }
                    }
                    (cautions(editing))
                }
            }
        }
    }
}

fn bar(editing: &Editing, raw: bool) -> Markup {
    html! {
        div.bar {
            button.btn.main type="submit" name="do" value="save" { "Save this plan" }
            @if raw {
                button.btn.quiet type="submit" name="do" value="form" { "Edit as a form" }
            } @else {
                button.btn.quiet type="submit" name="do" value="raw" { "Edit as text" }
            }
            a.btn.quiet.tofc href="#fc" { "See the forecast" }
            p.tally id="tally" role="status" { (tally(editing)) }
        }
    }
}

/// How the plan stands, in a few words.
pub(super) fn tally(editing: &Editing) -> Markup {
    html! {
        @match editing.faults {
            0 => "No faults.",
            1 => b { "1 fault" },
            many => b { (many) " faults" },
        }
    }
}

/// What has no field of its own.
pub(super) fn around_form(editing: &Editing) -> Markup {
    html! {
        @if !editing.around.is_empty() {
            div.aroundform { (form::all(&editing.around)) }
        }
    }
}

fn raw(editing: &Editing) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { "The plan as text" } }
            div.bd {
                label for="text" { "Everything, with your notes" }
                textarea.rawtext id="text" name="text" rows="40" spellcheck="false" { (editing.text) }
            }
        }
    }
}

fn swap(editing: &Editing) -> Markup {
    if editing.foods.is_empty() {
        return html! {};
    }
    html! {
        section.sec {
            div.mg { h2 { "Swap a food" } }
            div.bd {
                p.soft {
                    "For the whole class, in one go: recipes, forecast, shopping, labels and cards. \
                     No reason is kept. Codes on the bags stay."
                }
                div.fields.single {
                    div.one {
                        label for="swap-from" { "In place of" }
                        span.fld { select id="swap-from" name="swap-from" {
                            @for (id, name) in &editing.foods { option value=(id) { (name) } }
                        } }
                    }
                    div.one {
                        label for="swap-to" { "take" }
                        span.fld { select id="swap-to" name="swap-to" {
                            @for (id, name) in &editing.larder { option value=(id) { (name) } }
                        } }
                    }
                    button.btn.quiet type="submit" name="do" value="swap" { "Swap it" }
                }
            }
        }
    }
}

fn bags(editing: &Editing) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { "Bags" } }
            div.bd {
                p { (editing.bags) }
                p.soft { "Saving keeps the list in step with what you changed. Codes that were \
                          given out are never given again." }
            }
        }
    }
}

fn versions(view: &PlanView) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { "Versions" } }
            div.bd {
                p.soft { "Every version you save is kept. Going back makes a new one." }
                ul.plain.versions {
                    @for version in &view.versions { li { (one_version(view, version)) } }
                }
                p.small { a href={ "/i/" (view.id) "/plan.toml" } { "Download this plan as a file" } }
            }
        }
    }
}

fn one_version(view: &PlanView, version: &Version) -> Markup {
    let newest = version.number == view.version;
    html! {
        span.num { "Version " (version.number) }
        @if let Some(at) = version.saved {
            time datetime=(at) data-day { (at.strftime("%Y-%m-%d %H:%M UTC")) }
        }
        @if newest {
            span.soft { "as it is now" }
        } @else {
            button.btn.quiet type="submit" formaction={ "/i/" (view.id) "/plan/back" }
                name="version" value=(version.number)
                aria-label={ "Go back to version " (version.number) } { "Go back to it" }
        }
    }
}

/// The charts, that of what is being edited first.
pub(super) fn foreseen(foreseen: &Foreseen) -> Markup {
    html! {
        @if let Some(trouble) = &foreseen.trouble { p.soft { (trouble) } }
        @for (place, one) in foreseen.charts.iter().enumerate() {
            @if place == 0 {
                (chart(one, foreseen.charts.len() > 1))
            } @else {
                details { summary { (one.asks) } (chart(one, false)) }
            }
        }
    }
}

/// One chart, drawn for a wide page and again for a phone.
pub(in crate::web) fn chart(chart: &Chart, named: bool) -> Markup {
    html! {
        figure.forecast {
            @if named { figcaption { (chart.asks) } }
            div.wid { (PreEscaped(&chart.wide)) }
            div.nar { (PreEscaped(&chart.narrow)) }
            details.says { summary { "In words" } p { (chart.says) } }
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

fn cautions(editing: &Editing) -> Markup {
    html! {
        @if !editing.cautions.is_empty() {
            details.cautions {
                summary { (editing.cautions.len()) " cautions for this plan" }
                ul.plain {
                    @for caution in &editing.cautions {
                        li {
                            span.code { (caution.code) } " " (caution.message) " " (caution.fix)
                            @if let Some(source) = caution.source { span.small.soft { " " (source) } }
                        }
                    }
                }
            }
        }
    }
}
