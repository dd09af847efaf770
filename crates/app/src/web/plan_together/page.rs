//! The planning page as markup.

use crate::desk::Catalog;
use crate::desk::room::Kind;
use crate::desk::room::proposals::{Answer, PlanTogetherView};
use crate::web::head::lead;
use maud::{Markup, html};

/// Lines for kinds of bag.
const KINDS: usize = 4;

/// Who types on the page.
pub(super) enum Hand<'a> {
    /// The group.
    Its,
    /// The teacher, from the group's paper, for the investigation of this number; what to say of
    /// it.
    Teacher(i64, &'a Markup),
}

/// The whole page.
pub(super) fn page(
    view: &PlanTogetherView,
    field: &Markup,
    words: &Catalog,
    hand: &Hand<'_>,
) -> Markup {
    let say = |key: &str| words.say(key);
    let group = view.group.to_string();
    let whose = words.say_with("bench-title", &[("group", &group), ("period", &view.period)]);
    html! {
        main.together lang=(words.code()) {
            header.head {
                h1 { (say("together-title")) small { (whose) } }
                @if matches!(hand, Hand::Its) {
                    nav aria-label=(say("language-choose")) {
                        @for other in Catalog::all().filter(|other| other.code() != words.code()) {
                            a lang=(other.code()) href={ "?lang=" (other.code()) } { (other.say("language-name")) }
                        }
                    }
                }
            }
            @match view.kind {
                Kind::Real => {},
                Kind::Rehearsal => p.madeup { (say("bench-rehearsal")) },
                Kind::Invented => p.madeup { (say("bench-invented")) },
            }
            @match hand {
                Hand::Its => (lead(&say("together-lead"))),
                Hand::Teacher(_, says) => (says),
            }
            p { (words.say_with("together-question", &[("question", &view.big_question)])) }
            div role="status" { (standing(view, words)) }
            @if let Hand::Its = hand {
                p { a href={ "/bench?lang=" (words.code()) } { (say("together-bench")) } }
            }
            @let to = match hand {
                Hand::Its => format!("/plan-together?lang={}#think", words.code()),
                Hand::Teacher(id, _) => format!("/i/{id}/approve/sheet"),
            };
            form method="post" action=(to) {
                (field)
                @if let Hand::Teacher(..) = hand {
                    input type="hidden" name="period" value=(view.period);
                    input type="hidden" name="group" value=(view.group);
                }
                (write(view, words))
                (think(view, words))
                div.btns {
                    button.btn type="submit" name="do" value="look" { (say("together-look")) }
                    button.btn.main type="submit" name="do" value="hand-in" { (say("together-hand-in")) }
                }
            }
        }
    }
}

fn standing(view: &PlanTogetherView, words: &Catalog) -> Markup {
    html! {
        @match (&view.answer, view.handed_in) {
            (Some(Answer::Approved), true) => p.done { (words.say("together-approved")) },
            (Some(Answer::Returned(asks)), _) => div.think {
                p { b { (words.say_with("together-returned", &[("question", asks)])) } }
                p { (words.say("together-returned-lead")) }
            },
            (_, true) => p.done { (words.say("together-handed-in")) },
            (_, false) => {},
        }
    }
}

fn step(head: &str, lead: Option<String>, body: &Markup) -> Markup {
    html! {
        section.step {
            h2 { (head) }
            @if let Some(lead) = lead { p.soft { (lead) } }
            (body)
        }
    }
}

fn line(name: &str, label: &str, value: &str) -> Markup {
    html! {
        div.one.wide {
            label for=(name) { (label) }
            span.fld.wide { input id=(name) name=(name) value=(value) autocomplete="off" maxlength="400"; }
        }
    }
}

fn write(view: &PlanTogetherView, words: &Catalog) -> Markup {
    let say = |key: &str| words.say(key);
    let wrote = &view.wrote.written;
    html! {
        section.step {
            h2 { (say("together-cupboard")) }
            ul.chips { @for food in &view.cupboard { li { (food.name(words)) } } }
        }
        div.step { (line("asks", &say("together-asks"), &wrote.asks)) p.soft { (say("together-asks-lead")) } }
        div.step {
            label for="changes" { (say("together-change")) }
            span.fld { select id="changes" name="changes" {
                option value="" { (say("together-change-none")) }
                @for variable in &view.variables {
                    option value=(variable) selected[*variable == wrote.changes] {
                        (say(&format!("together-{}", variable.replace(' ', "-"))))
                    }
                }
            } }
            p.soft { (say("together-change-lead")) }
        }
        (step(&say("together-levels"), Some(say("together-levels-lead")), &html! {
            div.fields {
                @for place in 0..KINDS {
                    @let number = (place + 1).to_string();
                    @let id = format!("level-{number}");
                    div.one {
                        label for=(id) { (words.say_with("together-level", &[("number", &number)])) }
                        span.fld { input id=(id) name="level" autocomplete="off" maxlength="80"
                            list="cupboard"
                            value=(wrote.levels.get(place).map_or_else(String::new, |level| words.own_words(level))); }
                    }
                }
            }
            datalist id="cupboard" {
                @for food in &view.cupboard { option value=(food.name(words)) {} }
            }
        }))
        div.step {
            (line("beside", &say("together-beside"), &words.own_words(&wrote.beside)))
            p.soft {
                (say("together-beside-lead")) " "
                @let controls = view.controls.iter().map(|name| words.treatment(name));
                (controls.collect::<Vec<_>>().join("; "))
            }
        }
        (step(&say("together-same"), Some(say("together-same-lead")), &html! {
            ul.chips {
                @for one in &view.same { li { (one.says(words)) } }
            }
            (line("keeps", &say("together-keeps"), &words.own_words(&wrote.keeps)))
            @if let Some((food, amount)) = &view.example {
                @let named = [("food", food.name(words)), ("amount", words.amount(amount))];
                p.soft { (words.say_with("together-keeps-lead", &named.each_ref().map(|(at, says)| (*at, says.as_str())))) }
            }
        }))
        div.step {
            label for="bags" { (say("together-bags")) }
            span.fld { select id="bags" name="bags" {
                @for count in 1..=4_u32 { option value=(count) selected[count == wrote.bags] { (count) } }
            } }
            p.soft { (say("together-bags-lead")) }
        }
        div.step {
            (line("expects", &say("together-expects"), &view.wrote.expects))
            label for="because" { (say("together-because")) }
            textarea id="because" name="because" maxlength="400" { (view.wrote.because) }
        }
    }
}

fn think(view: &PlanTogetherView, words: &Catalog) -> Markup {
    html! {
        @if !view.handed_in&& view.looked {
            div.think id="think" role="status" {
                @if view.is_blank() {
                    p { (words.say("together-think-blank")) }
                } @else if view.asks.is_empty() {
                    p { (words.say("together-think-none")) }
                } @else {
                    h2 { (words.say("together-think")) }
                    ul.plain { @for ask in &view.asks {
                        li { (words.say(&format!("together-ask-{}", ask.word()))) }
                    } }
                    input type="hidden" name="seen" value="1";
                }
            }
        }
    }
}
