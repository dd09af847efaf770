//! The page to talk from as markup.

use crate::desk::room::talk::{Talk, TalkView, idea_says, inside_says};
use crate::desk::{Catalog, Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, head, lead};
use maud::{Markup, html};

/// The whole page; prompts are in the students' words.
pub(super) fn page(
    w: Wording,
    words: &Catalog,
    view: &TalkView,
    field: &Markup,
    done: Option<&str>,
) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Results, view.kind))
            (lead(&say!(w, "talk-lead")))
            }
            p.done role="status" { (done.unwrap_or_default()) }
            main {
                (ways(w, words, view))
                section.sec {
                    div.mg {
                        h2 { (say!(w, "talk-period", period = &view.period)) }
                        p.note { (say!(w, "talk-period-note", read = view.read)) }
                    }
                    div.bd { (prompts(w, words, &view.of_period, field)) }
                }
                @if !view.of_day.is_empty() {
                    section.sec {
                        div.mg {
                            h2 { (say!(w, "talk-day")) }
                            p.note { (say!(w, "talk-day-note")) }
                        }
                        div.bd { (prompts(w, words, &view.of_day, field)) }
                    }
                }
                section.sec {
                    div.mg {
                        h2 { (say!(w, "talk-ideas")) }
                        p.note { (say!(w, "talk-ideas-note")) }
                    }
                    div.bd {
                        @if view.ideas.is_empty() { p.soft { (say!(w, "talk-no-ideas")) } }
                        @for spoken in &view.ideas {
                            @let [idea, numbers, speaks, tell] = idea_says(w, spoken);
                            article.prop {
                                h3 { (idea) }
                                p { (numbers) " " b { (speaks) } }
                                p.soft { (tell) }
                            }
                        }
                    }
                }
                section.sec {
                    div.mg {
                        h2 { (say!(w, "talk-inside")) }
                        p.note { (say!(w, "talk-inside-note")) }
                    }
                    div.bd {
                        @for inside in &view.inside {
                            article.prop {
                                h3 { (inside.treatment) }
                                ul.plain { @for says in inside_says(w, inside) { li { (says) } } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// To other periods, other words, and the slides.
fn ways(w: Wording, words: &Catalog, view: &TalkView) -> Markup {
    let to = |period: &str, code: &str| {
        format!("/i/{}/talk/{}?students={code}", view.id, segment(period))
    };
    html! {
        nav.ways {
            p {
                @for (at, period) in view.periods.iter().enumerate() {
                    @if at > 0 { " · " }
                    @if *period == view.period { b aria-current="page" { (say!(w, "talk-period", period = period)) } }
                    @else { a href=(to(period, words.code())) { (say!(w, "talk-period", period = period)) } }
                }
            }
            p {
                (say!(w, "talk-language")) " "
                @for (at, other) in Catalog::all().enumerate() {
                    @if at > 0 { " · " }
                    @if other.code() == words.code() { b { (other.say("language-name")) } }
                    @else { a href=(to(&view.period, other.code())) lang=(other.code()) { (other.say("language-name")) } }
                }
            }
            p {
                a href={ "/i/" (view.id) "/print/slides.pdf?period=" (segment(&view.period)) "&language=" (words.code()) } { (say!(w, "talk-slides")) }
            }
        }
    }
}

fn prompts(w: Wording, words: &Catalog, all: &[Talk], field: &Markup) -> Markup {
    html! {
        ol.plain.talk {
            @for one in all {
                li.prop.hangs[one.hangs] {
                    p.asks lang=(words.code()) { (one.asked.asks) }
                    @if !one.asked.rests_on.is_empty() { p.soft lang=(words.code()) { (one.asked.rests_on) } }
                    form method="post" {
                        (field)
                        @if one.hangs {
                            b { (say!(w, "talk-hangs")) } " "
                            button.btn.quiet type="submit" { (say!(w, "talk-take-down")) }
                        } @else {
                            button.btn.quiet type="submit" name="key" value=(one.key) { (say!(w, "talk-hang")) }
                        }
                    }
                }
            }
        }
    }
}
