//! The results page as markup.

use super::sharing::sharing;
use crate::desk::room::poured::Poured;
use crate::desk::room::results::{Answered, DayShown, ResultsView};
use crate::desk::{Metered, Wording, say};
use crate::web::every_bag::curves;
use crate::web::head::{Part, head, lead, no_printer, older_names};
use barm_domain::amount::show::both_degrees;
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &ResultsView) -> Markup {
    let id = view.id;
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(id), Part::Results, view.kind))
            (lead(&say!(w, "results-lead")))
            }
            main {
                p {
                    a href={ "/i/" (id) "/bags" } { (say!(w, "results-bags")) } " · "
                    a href={ "/i/" (id) "/talk" } { (say!(w, "results-talk")) } " · "
                    a href={ "/i/" (id) "/claims" } { (say!(w, "results-claims")) } " · "
                    a href={ "/i/" (id) "/marks" } { (say!(w, "results-marks")) } " · "
                    a href={ "/i/" (id) "/again" } { (say!(w, "results-again")) }
                }
                @if view.bags == 0 {
                    section.sec {
                        div.mg { h2 { (say!(w, "results-not-yet")) } }
                        div.bd {
                            p { (say!(w, "results-none")) }
                            div.btns.addrow { a.btn.main href={ "/i/" (id) "/run" } { (say!(w, "head-run")) } }
                        }
                    }
                } @else {
                    p.lead { (view.compared) }
                    @let verdicts = view.questions.iter().flat_map(|answered| &answered.verdicts);
                    (older_names(w, verdicts.map(|(_, treatment, _)| treatment.as_str())))
                    @for answered in &view.questions { (question(w, answered)) }
                    section.sec {
                        div.mg { h2 { (say!(w, "results-not-worked")) } }
                        div.bd {
                            @if view.left_out.is_empty() { p { (say!(w, "results-nothing-out")) } }
                            ul.plain { @for says in &view.left_out { li.fr { p { (says) } } } }
                        }
                    }
                    @if let Some(metered) = &view.meter { (meter(w, metered)) }
                    (day(w, &view.day))
                    @if !view.beyond.is_empty() {
                        section.sec {
                            div.mg { h2 { (say!(w, "results-beyond")) } }
                            div.bd {
                                p { (say!(w, "results-beyond-says")) }
                                ul.plain { @for says in &view.beyond { li.fr { p { (says) } } } }
                            }
                        }
                    }
                    @if let Some(poured) = &view.poured { (water(w, poured)) }
                    section.sec {
                        div.mg { h2 { (say!(w, "results-paper")) } }
                        div.bd {
                            p.soft { (say!(w, "results-made-now", count = view.bags)) }
                            ul.papers {
                                li { a.btn.main href={ "/i/" (id) "/results.pdf" } { (say!(w, "results-report")) } }
                                li { a.btn.quiet href={ "/i/" (id) "/results.pdf?paper=a4" } { (say!(w, "results-report-a4")) } }
                            }
                            (no_printer(w))
                        }
                    }
                    (sharing(w, id))
                }
                p.addrow { a href={ "/i/" (id) "/names" } { (say!(w, "results-names")) } }
            }
        }
    }
}

/// What the day's readings teach, and bags to look at.
fn day(w: Wording, day: &DayShown) -> Markup {
    html! {
        @if *day != DayShown::Waits {
            section.sec {
                div.mg { h2 { (say!(w, "results-day")) } p.note { (say!(w, "results-day-note")) } }
                div.bd {
                    @match day {
                        DayShown::Waits => {},
                        DayShown::Working => p.soft { (say!(w, "results-day-working")) },
                        DayShown::Lost(why) => p.soft { (say!(w, "results-day-lost", why = why)) },
                        DayShown::There(says, pictures) => {
                            p { (says.rests) }
                            @if let Some(pictures) = pictures {
                                div.chartbox {
                                    div.wid { (PreEscaped(&pictures[0])) }
                                    div.nar { (PreEscaped(&pictures[1])) }
                                }
                            }
                            details {
                                summary { (say!(w, "plan-in-words")) }
                                @if pictures.is_some() { p { (says.in_words()) } }
                                @if let Some(untold) = &says.untold { p.soft { (untold) } }
                            }
                            @if let Some(scatters) = &says.scatters { p.soft { (scatters) } }
                            @if !says.look_at.is_empty() {
                                h3 { (say!(w, "results-day-look")) }
                                ul.plain {
                                    @for (code, treatment, asks) in &says.look_at {
                                        li.fr { p { b { (code) } " (" (treatment) ") " (asks) } }
                                    }
                                }
                            }
                        },
                    }
                }
            }
        }
    }
}

/// Bags against bags on the breath meter, beside the words that have to stand there.
fn meter(w: Wording, metered: &Metered) -> Markup {
    let heads = [
        say!(w, "results-meter-bag"),
        say!(w, "results-meter-treatment"),
        say!(w, "results-meter-shown"),
        say!(w, "results-meter-zero"),
        say!(w, "results-meter-warm"),
        say!(w, "results-meter-ethanol"),
        say!(w, "results-meter-remark"),
    ];
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "results-meter")) } p.note { (metered.note) } }
            div.bd {
                @if !metered.compared.is_empty() { ul.plain {
                    @for one in &metered.compared {
                        li.fr {
                            p { (one.says) " " span.soft { (one.rests) } }
                            @if let Some(warning) = &one.warning {
                                p { b { (say!(w, "results-meter-careful")) } " " (warning) }
                            }
                        }
                    }
                } }
                @if !metered.bags.is_empty() { details {
                    summary { (say!(w, "results-meter-bags", count = metered.bags.len())) }
                    div.scrolls tabindex="0" {
                        table {
                            thead { tr { @for head in &heads { th { (head) } } } }
                            tbody {
                                @for bag in &metered.bags {
                                    tr {
                                        // Codes and temperatures are not broken.
                                        @for (at, cell) in bag.cells().iter().enumerate() {
                                            td.nowrap[at == 0 || at == 4] { (cell) }
                                        }
                                    }
                                }
                            }
                        }
                    }
                } }
                @for says in &metered.not_used { p.soft { (say!(w, "results-meter-not-used", says = says)) } }
            }
        }
    }
}

/// How warm the water really was. Nothing above is worked out from it.
fn water(w: Wording, poured: &Poured) -> Markup {
    let (from, to) = poured.from_to;
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "results-water")) } }
            div.bd {
                p {
                    (say!(w, "results-water-measured", count = poured.bags, from = both_degrees(from), to = both_degrees(to)))
                    " " (say!(w, "results-water-only"))
                }
                ul.plain {
                    @for (code, is, plan) in &poured.far {
                        li.fr { p { (say!(w, "results-water-far", bag = code, is = both_degrees(*is), plan = both_degrees(*plan))) } }
                    }
                }
            }
        }
    }
}

fn question(w: Wording, answered: &Answered) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "results-found")) } }
            div.bd {
                h3 { (answered.asks) }
                @if !answered.verdicts.is_empty() {
                    div.chartbox {
                        div.wid { (PreEscaped(&answered.pictures[0])) }
                        div.nar { (PreEscaped(&answered.pictures[1])) }
                    }
                }
                ul.verd {
                    @for (verdict, treatment, why) in &answered.verdicts {
                        li { span.vd { (verdict) } p { b { (treatment) ". " } (why) } }
                    }
                }
                @if !answered.not_run.is_empty() {
                    p.soft { (say!(w, "results-not-run", treatments = answered.not_run.join(", "))) }
                }
                @for note in &answered.notes { p.soft { (note) } }
                @if let Some(shown) = &answered.curves {
                    h3 { (say!(w, "results-curves")) }
                    (curves(w, shown))
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::MeteredSays;
    use crate::desk::room::Kind;

    fn view(questions: Vec<Answered>, left_out: &[&str]) -> ResultsView {
        ResultsView {
            id: 7,
            kind: Kind::Real,
            title: "Foods".to_owned(),
            compared: "Bags are compared at minute 24.".to_owned(),
            bags: questions.len(),
            questions,
            left_out: left_out.iter().map(|&says| says.to_owned()).collect(),
            meter: None,
            day: DayShown::Waits,
            beyond: Vec::new(),
            poured: None,
        }
    }

    fn answered() -> Answered {
        Answered {
            asks: "Which food <feeds> yeast?".to_owned(),
            pictures: ["<svg id=\"wide\"/>".to_owned(), "<svg id=\"narrow\"/>".to_owned()],
            curves: None,
            verdicts: vec![("clear", "Honey".to_owned(), "Hardly ever by chance.".to_owned())],
            not_run: vec!["Oats".to_owned()],
            notes: vec!["Without the bag set aside the same.".to_owned()],
        }
    }

    #[test]
    fn before_the_first_height_it_says_what_comes_next() {
        let page = page(Wording::english(), &view(Vec::new(), &[])).into_string();
        assert!(page.contains("No bag has a height that counts"));
        assert!(page.contains("href=\"/i/7/run\"") && !page.contains("results.pdf"));
    }

    #[test]
    fn a_name_of_an_older_plan_is_explained_once() {
        let mut view = view(vec![answered(), answered()], &[]);
        let explained = |view: &ResultsView| {
            page(Wording::english(), view).into_string().matches("behind a name").count()
        };
        assert_eq!(explained(&view), 0);
        for answered in &mut view.questions {
            answered.verdicts[0].1 = "Honey (plan 2)".to_owned();
        }
        assert_eq!(explained(&view), 1);
        let said = page(Wording::english(), &view).into_string();
        assert!(said.contains("version 2 of the plan"));
    }

    #[test]
    fn what_a_meter_says_stands_beside_the_words_that_must_stand_there() {
        let mut view = view(vec![answered()], &[]);
        assert!(!page(Wording::english(), &view).into_string().contains("Breath meter"));
        view.meter = Some(Metered {
            note: "Relative reading.".to_owned(),
            compared: vec![MeteredSays {
                says: "Honey held more.".to_owned(),
                rests: "2 bags against 2.".to_owned(),
                warning: Some("Do not tell its order.".to_owned()),
            }],
            bags: Vec::new(),
            not_used: vec!["P1 is <none>".to_owned()],
        });
        let said = page(Wording::english(), &view).into_string();
        for part in [
            "Relative reading.",
            "Honey held more.",
            "Careful:</b> Do not tell its order.",
            "Not used: P1 is &lt;none&gt;.",
        ] {
            assert!(said.contains(part), "{part} in {said}");
        }
    }

    #[test]
    fn forecasts_beyond_what_is_known_are_named() {
        let mut view = view(vec![answered()], &[]);
        let head = "Beyond what is known";
        assert!(!page(Wording::english(), &view).into_string().contains(head));
        view.beyond = vec!["Hot <water>: known to 60 °C.".to_owned()];
        let said = page(Wording::english(), &view).into_string();
        assert!(said.contains(head) && said.contains("Hot &lt;water&gt;: known"), "{said}");
    }

    #[test]
    fn water_that_was_measured_stands_beside_the_plan() {
        let mut view = view(vec![answered()], &[]);
        assert!(!page(Wording::english(), &view).into_string().contains("when it was poured"));
        let far = vec![("P4-02A-Y".to_owned(), 45.0, 40.0)];
        view.poured = Some(Poured { bags: 3, from_to: (39.0, 45.0), far });
        let said = page(Wording::english(), &view).into_string();
        for part in
            ["in 3 bags", "39 °C (102 °F)", "P4-02A-Y", "45 °C (113 °F)", "40 °C (104 °F)"]
        {
            assert!(said.contains(part), "{part}");
        }
    }

    #[test]
    fn every_verdict_stands_in_words_and_what_was_left_out_is_never_missing() {
        let said = page(Wording::english(), &view(vec![answered()], &[])).into_string();
        for part in ["compared at minute 24", "clear", "Honey", "Hardly ever", "id=\"narrow\""]
        {
            assert!(said.contains(part), "{part}");
        }
        assert!(
            said.contains("Which food &lt;feeds&gt; yeast?"),
            "words of a plan are no markup"
        );
        assert!(said.contains("Nothing was left out."));
        assert!(said.contains("Not run yet: Oats."));
        // A printer that is not there gets a sentence and a way on.
        assert!(said.contains("No printer here? Save the PDF"), "{said}");
        let aside = page(Wording::english(), &view(vec![answered()], &["One bag leaked."]))
            .into_string();
        assert!(aside.contains("One bag leaked.") && !aside.contains("Nothing was left out."));
    }
}
