//! What a group takes home, as markup.

use super::page::claimed;
use crate::desk::Catalog;
use crate::desk::room::Kind;
use crate::desk::room::claims::HomeView;
use crate::web::head::lead;
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(view: &HomeView, words: &Catalog) -> Markup {
    let say = |key: &str| words.say(key);
    let group = view.group.to_string();
    let whose = words.say_with("bench-title", &[("group", &group), ("period", &view.period)]);
    html! {
        main.together lang=(words.code()) {
            header.head {
                h1 { (say("home-title")) small { (whose) } }
                nav aria-label=(say("language-choose")) {
                    @for other in Catalog::all().filter(|other| other.code() != words.code()) {
                        a lang=(other.code()) href={ "?lang=" (other.code()) } { (other.say("language-name")) }
                    }
                }
            }
            @match view.kind {
                Kind::Real => {},
                Kind::Rehearsal => p.madeup { (say("bench-rehearsal")) },
                Kind::Invented => p.madeup { (say("bench-invented")) },
            }
            (lead(&say("home-lead")))
            h2 { (words.plan_words(&view.question)) }
            @if let Some(curves) = &view.curves { div.chartbox { (PreEscaped(curves)) } }
            @else { p { (say("home-none")) } }
            ul.plain {
                @for bag in view.bags.iter().filter(|bag| bag.rises.len() > 1) {
                    li { b { (words.treatment(&bag.treatment)) ": " } (rises(&bag.rises, words)) }
                }
            }
            section.step {
                h2 { (say("claim-title")) }
                @match &view.claim {
                    Some((claim, beside)) => (claimed(claim, beside, words)),
                    None => p { (say("home-no-claim")) },
                }
            }
            p.soft { (say("home-ask")) }
            p { a href={ "/claim?lang=" (words.code()) } { (say("home-back")) } }
        }
    }
}

fn rises(rises: &[(f64, f64)], words: &Catalog) -> String {
    let one = |(minute, rise): &(f64, f64)| {
        let (minute, rise) = (format!("{minute:.0}"), format!("{:.0}", rise.round() + 0.0));
        words.say_with("home-rise", &[("minute", &minute), ("rise", &rise)])
    };
    rises.iter().skip(1).map(one).collect::<Vec<_>>().join(", ")
}
