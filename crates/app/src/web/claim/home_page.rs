//! What a group takes home, as markup.

use super::page::{claimed, top};
use crate::desk::Catalog;
use crate::desk::room::claims::HomeView;
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(view: &HomeView, words: &Catalog) -> Markup {
    let say = |key: &str| words.say(key);
    html! {
        main.together lang=(words.code()) {
            (top(words, ("home-title", "home-lead"), (&view.period, view.group), view.kind))
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
