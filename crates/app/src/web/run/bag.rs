//! The page of one bag: its whole record, and everything that can be done with it.

use super::lists::{curve, mark};
use super::page::{Around, done, head};
use crate::desk::room::benches::{group_name, millimeters};
use crate::desk::room::run::{BagPage, part_word};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, lead, made_up, older_names, parts};
use crate::web::plan::beyond;
use crate::web::words::lay;
use barm_domain::record::Odd;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &BagPage, around: &Around) -> Markup {
    let run = format!("/i/{}/run/{}", view.investigation, segment(&view.hour.period));
    let home = format!("{run}/bag/{}", view.bag.bag.code);
    let bag = &view.bag.bag;
    html! {
        div.sheet.run.onebag data-live={ "/i/" (view.investigation) "/events" }
            data-version={ "/i/" (view.investigation) "/version" }
            data-now=(view.hour.now.as_millisecond()) {
            header {
            div.head {
                h1 { (say!(w, "bag-title", bag = &bag.name)) " " small.code { (bag.code) } }
                (parts(w, Some(view.investigation), Part::Run))
            }
            (lead(&say!(w, "bag-lead")))
            }
            main {
                (made_up(w, view.kind))
                p { a href=(run) { (say!(w, "run-back", period = &view.hour.period)) } }
                div.runhead data-part="clock" { (head(w, &view.hour)) }
                div.doneline data-part="done" role="status" {
                    (done(w, view.done.as_ref(), around.fault.as_deref()))
                }
                form id="act" method="post" action=(home) data-act {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                }
                div.sec {
                    div.mg { h2 { (say!(w, "bag-head")) } }
                    div.bd data-part="bag" { (stands(w, view)) }
                }
                div.sec id="heights" {
                    div.mg { h2 { (say!(w, "bag-heights")) } p.note { (say!(w, "bag-heights-note")) } }
                    div.bd data-part="heights" { (heights(w, view, around, &home)) }
                }
                div.sec id="made" {
                    div.mg { h2 { (say!(w, "bag-made")) } p.note { (say!(w, "bag-made-note")) } }
                    div.bd { (made(w, view, around, &home)) }
                }
                div.sec {
                    div.mg { h2 { (say!(w, "bag-odd")) } }
                    div.bd data-part="odd" { (odd(w, view)) }
                }
                div.sec {
                    div.mg { h2 { (say!(w, "bag-aside")) } p.note { (say!(w, "bag-aside-note")) } }
                    div.bd data-part="aside" { (aside(w, view)) }
                }
                div.sec {
                    div.mg { h2 { (say!(w, "bag-right")) } p.note { (say!(w, "bag-right-note")) } }
                    div.bd { (truth(w, view, around, &home)) }
                }
                div.sec {
                    div.mg { h2 { (say!(w, "bag-record")) } p.note { (say!(w, "bag-record-note")) } }
                    div.bd data-part="record" { (ledger(w, view)) }
                }
            }
        }
    }
}

fn stands(w: Wording, view: &BagPage) -> Markup {
    html! {
        div.bagface {
            p.bagline {
                (mark(&view.bag)) " " b { (view.bag.bag.treatment) }
                @if let Some(label) = &view.label { " " span.soft { (say!(w, "bag-label-says", treatment = label)) } }
            }
            @if !view.bag.bag.rises.is_empty() || !view.bag.band.is_empty() {
                div.chartbox {
                    div.wid { (curve(w, &view.bag, 720.0)) }
                    div.nar { (curve(w, &view.bag, 340.0)) }
                }
            }
            p {
                @match view.bag.bag.height_mm {
                    Some(mm) => {
                        (lay!(w, "bag-last-height", mm = html! { b { (millimeters(mm)) } }))
                    },
                    None => (say!(w, "bag-no-zero")),
                }
                @if !view.stands.is_empty() { " " (say!(w, "bag-it-is", how = &view.stands)) }
            }
            (older_names(w, view.treatments.iter().chain(&view.label).map(String::as_str)))
            @if !view.bag.band.is_empty() {
                p.soft {
                    (say!(w, "bag-band"))
                    @if view.went_in.iter().any(|part| !part.is.is_empty()) { " " (say!(w, "bag-band-plan")) }
                }
                (beyond(w, &view.beyond))
            }
        }
    }
}

fn heights(w: Wording, view: &BagPage, around: &Around, home: &str) -> Markup {
    html! {
        @if view.heights.is_empty() { p.soft { (say!(w, "bag-none-yet")) } }
        @for (key, which, mm) in &view.heights {
            form.line method="post" action=(home) data-act {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value={ "correct " (view.bag.bag.code) " " (key) };
                label for={ "h-" (key) } { (which) }
                input id={ "h-" (key) } name="mm" size="5" required inputmode="decimal" value=(millimeters(*mm));
                span { "mm" }
                button.btn.quiet { (say!(w, "bag-correct")) }
            }
        }
        @if !view.lost && !view.vented {
            form.line method="post" action=(home) data-act data-clear {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value="write";
                input type="hidden" name="bag" value=(view.bag.bag.code);
                label for="h-new" { @if view.heights.is_empty() { (say!(w, "bag-zero")) } @else { (say!(w, "bag-next")) } }
                input id="h-new" name="mm" size="5" required inputmode="decimal";
                span { "mm" }
                button.btn { (say!(w, "bag-write")) }
            }
        }
    }
}

fn made(w: Wording, view: &BagPage, around: &Around, home: &str) -> Markup {
    html! {
        form.went method="post" action=(home) data-act {
            (around.field)
            input type="hidden" name="key" value=(around.key);
            input type="hidden" name="do" value={ "made " (view.bag.bag.code) };
            @for part in &view.went_in {
                @let id = format!("made-{}", part.part.field());
                p.line {
                    label for=(id) { (part_word(w, part.part)) }
                    input id=(id) name=(part.part.field()) size="9" maxlength="24" autocomplete="off"
                        value=(part.is) aria-describedby={ (id) "-plan" };
                    span.soft id={ (id) "-plan" } { (say!(w, "bag-made-plan", plan = &part.plan)) }
                }
            }
            p.line { button.btn.quiet { (say!(w, "bag-write")) } }
        }
    }
}

fn odd(w: Wording, view: &BagPage) -> Markup {
    let code = view.bag.bag.code;
    html! {
        @if !view.odd.is_empty() {
            ul.plain.rules {
                @for (key, says) in &view.odd {
                    li {
                        span { (says) }
                        button.btn.quiet form="act" name="do" value={ "odd-back " (code) " " (key) }
                            id={ "back-" (key) } { (say!(w, "bag-odd-back")) }
                    }
                }
            }
        }
        div.btns {
            @for odd in Odd::ALL {
                button.btn.quiet form="act" name="do" value={ "odd " (code) " " (odd.word()) }
                    id={ "odd-" (odd.word()) } {
                    (match odd {
                        Odd::Leak => say!(w, "bag-odd-leak"),
                        Odd::Spill => say!(w, "bag-odd-spill"),
                        Odd::Foam => say!(w, "bag-odd-foam"),
                        Odd::Late => say!(w, "bag-odd-late"),
                        Odd::Bumped => say!(w, "bag-odd-bumped"),
                        Odd::NotRead => say!(w, "bag-odd-not-read"),
                    })
                }
            }
            @if !view.vented {
                button.btn.quiet form="act" name="do" value={ "vented " (code) } id="vented" { (say!(w, "bag-vented")) }
            }
            @if !view.lost {
                button.btn.quiet form="act" name="do" value={ "lost " (code) } id="lost" { (say!(w, "bag-lost")) }
            }
        }
    }
}

fn aside(w: Wording, view: &BagPage) -> Markup {
    let code = view.bag.bag.code;
    html! {
        @if view.lost || view.set_aside.is_some() {
            div.btns {
                button.btn form="act" name="do" value={ "take-back " (code) } id="take-back" {
                    @if view.lost { (say!(w, "bag-not-lost")) } @else { (say!(w, "bag-counts")) }
                }
            }
        } @else if view.rules.is_empty() {
            p.soft { (say!(w, "bag-no-rules")) }
        } @else {
            ul.plain.rules {
                @for (rule, says) in &view.rules {
                    li {
                        span { (says) }
                        button.btn.quiet form="act" name="do" value={ "set-aside " (code) " " (rule) }
                            id={ "aside-" (rule) } { (say!(w, "bag-set-aside", rule = rule.replace('-', " "))) }
                    }
                }
            }
        }
    }
}

fn truth(w: Wording, view: &BagPage, around: &Around, home: &str) -> Markup {
    let label = view.label.as_deref().unwrap_or(&view.bag.bag.treatment);
    html! {
        form.line method="post" action=(home) data-act {
            (around.field)
            input type="hidden" name="key" value=(around.key);
            input type="hidden" name="do" value={ "set-right " (view.bag.bag.code) };
            label for="t-what" { (say!(w, "bag-in-truth")) }
            select id="t-what" name="treatment" {
                option value="" { (say!(w, "bag-as-labeled", what = label)) }
                @for treatment in &view.treatments {
                    option value=(treatment) selected[*treatment == view.bag.bag.treatment && view.label.is_some()] {
                        (treatment)
                    }
                }
            }
            label for="t-who" { (say!(w, "bag-made-by")) }
            select id="t-who" name="group" {
                option value="" {
                    (say!(w, "bag-as-labeled", what = group_name(view.bag.bag.group)))
                }
                @for group in 1..=view.groups { option value=(group) { (group) } }
            }
            button.btn.quiet { (say!(w, "bag-set-right")) }
        }
    }
}

fn ledger(w: Wording, view: &BagPage) -> Markup {
    html! {
        @if view.ledger.is_empty() { p.soft { (say!(w, "bag-nothing")) } }
        @else {
            table.record {
                thead { tr { th { (say!(w, "bag-time")) } th { (say!(w, "bag-what")) } th { (say!(w, "bag-who")) } } }
                tbody {
                    @for row in &view.ledger {
                        tr {
                            td.nowrap {
                                (row.at)
                                @if let Some(arrived) = &row.arrived { br; span.soft { (say!(w, "bag-came", time = arrived)) } }
                            }
                            td {
                                (row.says)
                                @if let Some(reason) = &row.refused { br; span.soft { (say!(w, "bag-refused", reason = reason)) } }
                            }
                            td { (row.who) }
                        }
                    }
                }
            }
        }
    }
}
