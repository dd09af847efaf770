//! The aide's page: one station, its ticks.

use crate::desk::Catalog;
use crate::desk::room::Kind;
use crate::desk::room::aide::{AideView, Station};
use crate::web::head::lead;
use maud::{Markup, html};

/// The whole page; `station` is the word of the one that is open.
pub(super) fn page(
    view: &AideView,
    investigation: i64,
    station: Option<&str>,
    words: &Catalog,
) -> Markup {
    let open = view.stations.iter().find(|one| Some(one.word) == station);
    html! {
        main.aide lang=(words.code()) {
            header.head {
                h1 { (open.map_or_else(|| words.say("aide-title"), |open| open.name.clone())) }
                nav aria-label=(words.say("language-choose")) {
                    @for other in Catalog::all().filter(|other| other.code() != words.code()) {
                        a lang=(other.code()) href={ "?lang=" (other.code()) @if let Some(open) = open { "&station=" (open.word) } } {
                            (other.say("language-name"))
                        }
                    }
                }
            }
            (lead(&words.say("aide-lead")))
            @match view.kind {
                Kind::Real => {},
                Kind::Rehearsal => p.madeup { (words.say("bench-rehearsal")) },
                Kind::Invented => p.madeup { (words.say("bench-invented")) },
            }
            nav.stations aria-label=(words.say("aide-title")) {
                @for one in &view.stations {
                    a.btn.quiet aria-current=[(Some(one.word) == station).then_some("page")]
                        href={ "?lang=" (words.code()) "&station=" (one.word) } { (one.name) }
                }
            }
            @if let Some(open) = open { (list(open, investigation, words)) }
        }
    }
}

fn list(station: &Station, investigation: i64, words: &Catalog) -> Markup {
    html! {
        @if let Some(caution) = &station.caution { p.caution { b { (caution) } } }
        p.counted data-done=(words.pattern("aide-done")) {
            (words.say_with("aide-done", &[("done", "0"), ("all", &station.ticks.len().to_string())]))
        }
        ul.plain.tickrows data-ticks={ "aide-" (investigation) "-" (station.word) } {
            @for tick in &station.ticks {
                li {
                    label.tick {
                        input type="checkbox" id=(tick.key);
                        span { @if let Some(at) = &tick.at { b { (at) } " " } (tick.says) }
                    }
                }
            }
        }
        p.small.soft { (words.say("aide-stays")) }
    }
}
