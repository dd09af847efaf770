//! The page of one bag: its whole record, and everything that can be done with it.

use super::lists::{mark, spark};
use super::page::{Around, done, head, made_up, parts};
use crate::desk::room::benches::{group_name, millimeters};
use crate::desk::room::run::BagPage;
use crate::web::address::segment;
use barm_domain::record::Odd;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(view: &BagPage, around: &Around) -> Markup {
    let run = format!("/i/{}/run/{}", view.investigation, segment(&view.hour.period));
    let home = format!("{run}/bag/{}", view.bag.bag.code);
    let bag = &view.bag.bag;
    html! {
        div.sheet.run.onebag data-live={ "/i/" (view.investigation) "/events" }
            data-version={ "/i/" (view.investigation) "/version" }
            data-now=(view.hour.now.as_millisecond()) {
            header.head {
                h1 { "Bag " (bag.name) " " small.code { (bag.code) } }
                (parts(view.investigation))
            }
            main {
                (made_up(view.kind))
                p { a href=(run) { "Back to period " (view.hour.period) } }
                div.runhead data-part="clock" { (head(&view.hour)) }
                div.doneline data-part="done" role="status" {
                    (done(view.done.as_ref(), around.fault.as_deref()))
                }
                form id="act" method="post" action=(home) data-act {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                }
                div.sec {
                    div.mg { h2 { "The bag" } }
                    div.bd data-part="bag" { (stands(view)) }
                }
                div.sec id="heights" {
                    div.mg { h2 { "Heights" } p.note { "A correction is a new entry. The first stays." } }
                    div.bd data-part="heights" { (heights(view, around, &home)) }
                }
                div.sec {
                    div.mg { h2 { "Something odd" } }
                    div.bd data-part="odd" { (odd(view)) }
                }
                div.sec {
                    div.mg { h2 { "Set aside" } p.note { "By the rules that the class agreed on." } }
                    div.bd data-part="aside" { (aside(view)) }
                }
                div.sec {
                    div.mg { h2 { "Set right" } p.note { "If it is not what its label says." } }
                    div.bd { (truth(view, around, &home)) }
                }
                div.sec {
                    div.mg { h2 { "Record" } p.note { "Everything, in order. Nothing is hidden." } }
                    div.bd data-part="record" { (ledger(view)) }
                }
            }
        }
    }
}

fn stands(view: &BagPage) -> Markup {
    html! {
        div.bagface {
            p.bagline {
                (mark(&view.bag)) " " b { (view.bag.bag.treatment) }
                @if let Some(label) = &view.label { " " span.soft { "(its label says " (label) ")" } }
            }
            (spark(&view.bag, 320.0, false))
            p {
                @match view.bag.bag.height_mm {
                    Some(mm) => { "Last height " b { (millimeters(mm)) } " mm. " },
                    None => "No zero reading yet. ",
                }
                @if !view.stands.is_empty() { "It is " (view.stands) "." }
            }
            @if !view.bag.band.is_empty() { p.soft { "The band is the forecast: 8 of 10 bags. Only you see it." } }
        }
    }
}

fn heights(view: &BagPage, around: &Around, home: &str) -> Markup {
    html! {
        @if view.heights.is_empty() { p.soft { "None yet. Write the zero reading below or on the run page." } }
        @for (key, which, mm) in &view.heights {
            form.line method="post" action=(home) data-act {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value={ "correct " (view.bag.bag.code) " " (key) };
                label for={ "h-" (key) } { (which) }
                input id={ "h-" (key) } name="mm" size="5" required inputmode="decimal" value=(millimeters(*mm));
                span { "mm" }
                button.btn.quiet { "Correct" }
            }
        }
        @if !view.lost && !view.vented {
            form.line method="post" action=(home) data-act data-clear {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value="write";
                input type="hidden" name="bag" value=(view.bag.bag.code);
                label for="h-new" { @if view.heights.is_empty() { "zero reading" } @else { "next" } }
                input id="h-new" name="mm" size="5" required inputmode="decimal";
                span { "mm" }
                button.btn { "Write" }
            }
        }
    }
}

fn odd(view: &BagPage) -> Markup {
    let code = view.bag.bag.code;
    html! {
        div.btns {
            @for odd in Odd::ALL {
                button.btn.quiet form="act" name="do" value={ "odd " (code) " " (odd.word()) }
                    id={ "odd-" (odd.word()) } {
                    (match odd {
                        Odd::Leak => "Leak",
                        Odd::Spill => "Spill",
                        Odd::Foam => "Foam",
                        Odd::Late => "Late",
                        Odd::Bumped => "Bumped",
                        Odd::NotRead => "Not read",
                    })
                }
            }
            @if !view.vented {
                button.btn.quiet form="act" name="do" value={ "vented " (code) } id="vented" { "Vented" }
            }
            @if !view.lost {
                button.btn.quiet form="act" name="do" value={ "lost " (code) } id="lost" { "Lost: burst or thrown away" }
            }
        }
    }
}

fn aside(view: &BagPage) -> Markup {
    let code = view.bag.bag.code;
    html! {
        @if view.lost || view.set_aside.is_some() {
            div.btns {
                button.btn form="act" name="do" value={ "take-back " (code) } id="take-back" {
                    @if view.lost { "It is not lost" } @else { "Take it back: it counts" }
                }
            }
        } @else if view.rules.is_empty() {
            p.soft { "The plan has no rule by which a bag is set aside." }
        } @else {
            ul.plain.rules {
                @for (rule, says) in &view.rules {
                    li {
                        span { (says) }
                        button.btn.quiet form="act" name="do" value={ "set-aside " (code) " " (rule) }
                            id={ "aside-" (rule) } { "Set aside: " (rule) }
                    }
                }
            }
        }
    }
}

fn truth(view: &BagPage, around: &Around, home: &str) -> Markup {
    let label = view.label.as_deref().unwrap_or(&view.bag.bag.treatment);
    html! {
        form.line method="post" action=(home) data-act {
            (around.field)
            input type="hidden" name="key" value=(around.key);
            input type="hidden" name="do" value={ "set-right " (view.bag.bag.code) };
            label for="t-what" { "In truth it is" }
            select id="t-what" name="treatment" {
                option value="" { "as labeled: " (label) }
                @for treatment in &view.treatments {
                    option value=(treatment) selected[*treatment == view.bag.bag.treatment && view.label.is_some()] {
                        (treatment)
                    }
                }
            }
            label for="t-who" { "made by group" }
            select id="t-who" name="group" {
                option value="" { "as labeled: " (group_name(view.bag.bag.group)) }
                @for group in 1..=view.groups { option value=(group) { (group) } }
            }
            button.btn.quiet { "Set right" }
        }
    }
}

fn ledger(view: &BagPage) -> Markup {
    html! {
        @if view.ledger.is_empty() { p.soft { "Nothing was written yet." } }
        @else {
            table.record {
                thead { tr { th { "Time" } th { "What" } th { "Who" } } }
                tbody {
                    @for row in &view.ledger {
                        tr {
                            td.nowrap {
                                (row.at)
                                @if let Some(arrived) = &row.arrived { br; span.soft { "came " (arrived) } }
                            }
                            td {
                                (row.says)
                                @if let Some(reason) = &row.refused { br; span.soft { "does not count: " (reason) } }
                            }
                            td { (row.who) }
                        }
                    }
                }
            }
        }
    }
}
