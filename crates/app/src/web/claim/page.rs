//! The claim page as markup.

use crate::desk::Catalog;
use crate::desk::room::Kind;
use crate::desk::room::claims::{About, ClaimView, Other, TypedClaim};
use crate::web::head::lead;
use barm_domain::claim::{ClaimFault, MOST_CHARACTERS, Says};
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(view: &ClaimView, field: &Markup, words: &Catalog) -> Markup {
    let say = |key: &str| words.say(key);
    html! {
        main.together lang=(words.code()) {
            (top(words, ("claim-title", "claim-lead"), (&view.period, view.group), view.kind))
            div role="status" {
                @if view.handed_in { p.done { (say("claim-handed-in")) } }
                @if !view.faults.is_empty() {
                    div.think {
                        h2 { (say("claim-mend")) }
                        ul.plain { @for fault in &view.faults { li { (mend(fault, words)) } } }
                    }
                }
            }
            p {
                a href={ "/bench?lang=" (words.code()) } { (say("together-bench")) } " · "
                a href={ "/claim/home?lang=" (words.code()) } { (say("home-title")) }
            }
            form method="post" action={ "/claim?lang=" (words.code()) } {
                (field)
                (write(view, words))
                div.btns {
                    button.btn type="submit" name="do" value="look" { (say("together-look")) }
                    button.btn.main type="submit" name="do" value="hand-in" { (say("together-hand-in")) }
                }
            }
            (marks(view, words))
            (heard(view, words))
            (others(view, field, words))
        }
    }
}

/// The top of a page of a group: what it is called, whose it is, other languages, whether anything counts, and what
/// it is for.
pub(super) fn top(
    words: &Catalog,
    (title, leads): (&str, &str),
    (period, group): (&str, u32),
    kind: Kind,
) -> Markup {
    let say = |key: &str| words.say(key);
    let group = group.to_string();
    let whose = words.say_with("bench-title", &[("group", &group), ("period", period)]);
    html! {
        header.head {
            h1 { (say(title)) small { (whose) } }
            nav aria-label=(say("language-choose")) {
                @for other in Catalog::all().filter(|other| other.code() != words.code()) {
                    a lang=(other.code()) href={ "?lang=" (other.code()) } { (other.say("language-name")) }
                }
            }
        }
        @match kind {
            Kind::Real => {},
            Kind::Rehearsal => p.madeup { (say("bench-rehearsal")) },
            Kind::Invented => p.madeup { (say("bench-invented")) },
        }
        (lead(&say(leads)))
    }
}

/// What has to be mended, for a child.
fn mend(fault: &ClaimFault, words: &Catalog) -> String {
    words.say(match fault {
        ClaimFault::NoQuestion { .. } | ClaimFault::NoTreatment { .. } => "claim-mend-about",
        ClaimFault::NoDirection => "claim-mend-says",
        ClaimFault::NoLength { .. } => "claim-mend-by",
        ClaimFault::SizeOfNothing => "claim-mend-size-of-nothing",
        ClaimFault::TooLong { .. } => "claim-mend-long",
    })
}

fn write(view: &ClaimView, words: &Catalog) -> Markup {
    let say = |key: &str| words.say(key);
    let wrote = &view.wrote;
    html! {
        div.step {
            label for="about" { (say("claim-about")) }
            span.fld.wide { select id="about" name="about" {
                @if view.about.len() != 1 { option value="" { (say("claim-about-none")) } }
                @for about in &view.about {
                    @let own = about.question == wrote.question && about.treatment == wrote.treatment;
                    option value={ (about.question) "/" (about.treatment) } selected[own] { (pair(about, words)) }
                }
            } }
        }
        fieldset.step {
            legend { (say("claim-says")) }
            @for says in Says::ALL {
                label.inline {
                    input type="radio" name="says" value=(says.word()) checked[wrote.says == says.word()];
                    " " (say(&format!("claim-says-{}", says.word())))
                }
            }
        }
        div.step {
            label for="by" { (say("claim-by")) }
            span.fld { input id="by" name="by" value=(wrote.by) maxlength="20" autocomplete="off"; }
            p.soft { (say("claim-by-lead")) }
        }
        (text("evidence", (&say("claim-evidence"), &say("claim-evidence-lead")), &wrote.evidence))
        (text("reasoning", (&say("claim-reasoning"), &say("claim-reasoning-lead")), &wrote.reasoning))
    }
}

fn text(name: &str, (label, lead): (&str, &str), value: &str) -> Markup {
    html! {
        div.step {
            label for=(name) { (label) }
            textarea id=(name) name=(name) maxlength=(MOST_CHARACTERS) { (value) }
            p.soft { (lead) }
        }
    }
}

fn pair(about: &About, words: &Catalog) -> String {
    let (treatment, beside) =
        (words.treatment(&about.treatment), words.treatment(&about.beside));
    words.say_with("claim-pair", &[("treatment", &treatment), ("beside", &beside)])
}

/// What the teacher handed out: the level of each strand as it stood that day.
fn marks(view: &ClaimView, words: &Catalog) -> Markup {
    html! {
        @if let Some(handed) = &view.marks {
            section.step {
                h2 { (words.say("claim-marks")) }
                @for strand in &handed.rubric.strands {
                    @let level = handed.given.levels.get(&strand.id).copied().unwrap_or_default();
                    @let place = usize::from(level).checked_sub(1);
                    p {
                        b { (strand.name) ": " (level) }
                        @if let Some(place) = place { " (" (handed.rubric.levels[place]) ") " (strand.looks[place]) }
                        @if let Some(remark) = handed.given.remarks.get(&strand.id) { br; (remark) }
                    }
                }
            }
        }
    }
}

/// What others wrote of the group's own claim.
fn heard(view: &ClaimView, words: &Catalog) -> Markup {
    html! {
        @if !view.heard.is_empty() {
            section.step {
                h2 { (words.say("claim-heard")) }
                p.soft { (words.say("claim-heard-lead")) }
                ul.plain {
                    @for (convinces, asks) in &view.heard {
                        li {
                            @if !convinces.is_empty() { p { b { (words.say("claim-convinces")) } " " (convinces) } }
                            @if !asks.is_empty() { p { b { (words.say("claim-asks")) } " " (asks) } }
                        }
                    }
                }
            }
        }
    }
}

/// Claims to read, each with a form of its own.
fn others(view: &ClaimView, field: &Markup, words: &Catalog) -> Markup {
    html! {
        @if !view.others.is_empty() {
            section.step id="others" {
                h2 { (words.say("claim-others")) }
                p.soft { (words.say("claim-others-lead")) }
                @for (place, other) in view.others.iter().enumerate() {
                    (one(place, other, field, words))
                }
            }
        }
    }
}

fn one(place: usize, other: &Other, field: &Markup, words: &Catalog) -> Markup {
    let id = |name: &str| format!("{name}-{place}");
    let number = (place + 1).to_string();
    html! {
        article {
            h3 { (words.say_with("claim-other", &[("number", &number)])) }
            (claimed(&other.claim, &other.beside, words))
            form method="post" action={ "/claim/read?lang=" (words.code()) } {
                (field)
                input type="hidden" name="place" value=(place);
                label for=(id("convinces")) { (words.say("claim-convinces")) }
                textarea id=(id("convinces")) name="convinces" maxlength="1000" { (other.wrote.0) }
                label for=(id("asks")) { (words.say("claim-asks")) }
                textarea id=(id("asks")) name="asks" maxlength="1000" { (other.wrote.1) }
                div.btns { button.btn type="submit" { (words.say("claim-keep")) } }
                @if !(other.wrote.0.is_empty() && other.wrote.1.is_empty()) {
                    p.soft { (words.say("claim-kept")) }
                }
            }
        }
    }
}

/// A claim as it reads.
pub(super) fn claimed(claim: &TypedClaim, beside: &str, words: &Catalog) -> Markup {
    let (treatment, beside) = (words.treatment(&claim.treatment), words.treatment(beside));
    let says = words.say(&format!("claim-says-{}", claim.says));
    html! {
        p.asks {
            (words.say_with("claim-pair", &[("treatment", &treatment), ("beside", &beside)])) ": " (says)
            @if !claim.by.is_empty() { ", " (claim.by) }
        }
        @if !claim.evidence.is_empty() { p { b { (words.say("claim-evidence")) } " " (claim.evidence) } }
        @if !claim.reasoning.is_empty() { p { b { (words.say("claim-reasoning")) } " " (claim.reasoning) } }
    }
}
