//! The approval queue as markup.

use crate::desk::queue::{Queue, Queued};
use crate::desk::room::proposals::{Answer, ApproveView};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, head, lead};
use crate::web::plan::{chart, verdicts};
use crate::web::words::lay;
use barm_domain::finding::Severity;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(
    w: Wording,
    view: &ApproveView,
    field: &Markup,
    done: Option<&str>,
) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Approve, view.kind))
            (lead(&say!(w, "approve-lead")))
            }
            p.done role="status" { (done.unwrap_or_default()) }
            main.queue data-queue {
                div {
                    p.small.soft.keys {
                        (lay!(
                            w,
                            "approve-keys",
                            next = html! { kbd { "j" } },
                            before = html! { kbd { "k" } },
                            approve = html! { kbd { "a" } },
                            change = html! { kbd { "c" } },
                            back = html! { kbd { "r" } },
                        ))
                        " "
                        label.inline {
                            input type="checkbox" id="keys-on" checked;
                            " " (say!(w, "approve-use-keys"))
                        }
                    }
                    @if view.queue.lines.is_empty() { (nothing(w, view)) }
                    @for (place, line) in view.queue.lines.iter().enumerate() {
                        (one(w, view, line, place == 0, field))
                    }
                    (answered(w, view))
                }
                aside.board { (board(w, view)) }
            }
        }
    }
}

fn nothing(w: Wording, view: &ApproveView) -> Markup {
    html! {
        section.sec { div.mg { h2 { (say!(w, "approve-waiting")) } } div.bd {
            @if view.answered.is_empty() {
                p { (say!(w, "approve-none-yet")) }
            } @else {
                p { (say!(w, "approve-all-answered")) }
            }
        } }
    }
}

fn one(w: Wording, view: &ApproveView, line: &Queued, first: bool, field: &Markup) -> Markup {
    let written = &line.row.written;
    let keep = view.keep.get(&(written.period.clone(), written.group));
    let faults = line.judged.faults();
    let key = format!("p{}-{}", written.period, written.group);
    let name: String = key.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').collect();
    let grave = line.judged.found.iter().filter(|found| found.severity <= Severity::Warning);
    let cautions = line.judged.found.iter().filter(|f| f.severity == Severity::Caution);
    let cautions: Vec<_> = cautions.collect();
    let who = named(w, &written.period, written.group);
    html! {
        article.prop id=(name) tabindex="-1" data-proposal aria-label=(who) {
            header {
                h2 { (who) }
                @match faults {
                    0 => span.st.saved { (say!(w, "approve-faults", count = faults)) },
                    many => span.st.doubt { (say!(w, "approve-faults", count = many)) },
                }
            }
            p.asks {
                @if written.asks.is_empty() { (say!(w, "approve-no-asks")) } @else { (written.asks) }
            }
            dl.what {
                dt { (say!(w, "approve-changes")) } dd { (written.changes) }
                dt { (say!(w, "approve-makes")) }
                dd {
                    (written.levels.join(", "))
                    span.soft { ", " (say!(w, "approve-bags-of-each", count = written.bags)) }
                }
                dt { (say!(w, "approve-beside")) }
                dd {
                    @if written.beside.is_empty() { (say!(w, "approve-beside-nothing")) }
                    @else { (written.beside) }
                }
                @if !written.keeps.is_empty() { dt { (say!(w, "approve-all-have")) } dd { (written.keeps) } }
                @if !line.row.expects.is_empty() {
                    dt { (say!(w, "approve-expects")) }
                    dd {
                        (line.row.expects)
                        @if !line.row.because.is_empty() {
                            span.soft { (say!(w, "approve-because", why = &line.row.because)) }
                        }
                    }
                }
                @if !line.partners.is_empty() { dt { (say!(w, "approve-same-question")) } dd { (groups(w, &line.partners)) } }
                @if !line.allergens.is_empty() { dt { (say!(w, "approve-allergens")) } dd { (line.allergens.join(", ")) } }
                @if let Some(cost) = line.cost.filter(|cost| *cost > 0.005) {
                    dt { (say!(w, "approve-adds")) }
                    dd { (say!(w, "approve-adds-cost", dollars = format!("${cost:.2}"))) }
                }
            }
            @for found in grave {
                div class=(if found.severity == Severity::Fault { "fault" } else { "warns" }) {
                    p { b { (found.message) } " " (found.fix) }
                }
            }
            @if let Some(keep) = keep {
                div.warns { p { (say!(w, "approve-keep", count = *keep)) } }
            }
            @if !line.verdicts.is_empty() { (verdicts(&line.verdicts)) }
            @if let Some(drawn) = &line.chart {
                details { summary { (say!(w, "approve-forecast")) } (chart(w, drawn, false)) }
            }
            @if !cautions.is_empty() {
                details { summary { (say!(w, "approve-cautions", count = cautions.len())) } ul.plain.cautions {
                    @for one in cautions { li { span.code { (one.code) } " " (one.message) " " (one.fix) } }
                } }
            }
            form.deal method="post" action={ "/i/" (view.id) "/approve" } {
                (field)
                input type="hidden" name="period" value=(written.period);
                input type="hidden" name="group" value=(written.group);
                div.btns {
                    button.btn.main[first && faults == 0] type="submit" name="do" value="approve"
                        data-key="a" disabled[faults > 0] { (say!(w, "approve-go")) }
                    details.act { summary data-key="c" { (say!(w, "approve-change")) } (change(w, &name, line)) }
                    details.act { summary data-key="r" { (say!(w, "approve-back")) } (question(w, &name, line)) }
                }
            }
        }
    }
}

fn change(w: Wording, name: &str, line: &Queued) -> Markup {
    let written = &line.row.written;
    let of = |part: &str| format!("{name}-{part}");
    html! {
        div.fields {
            div.one.wide {
                label for=(of("levels")) { (say!(w, "approve-kinds")) }
                span.fld.wide { input id=(of("levels")) name="levels" value=(written.levels.join("; ")) autocomplete="off"; }
            }
            div.one {
                label for=(of("beside")) { (say!(w, "approve-beside")) }
                span.fld { input id=(of("beside")) name="beside" value=(written.beside) autocomplete="off"; }
            }
            div.one {
                label for=(of("bags")) { (say!(w, "approve-each")) }
                span.fld { input id=(of("bags")) name="bags" value=(written.bags) inputmode="numeric" autocomplete="off"; }
            }
            @if let Some(proposal) = &line.judged.proposal {
                div.one.wide {
                    label for=(of("worded")) { (say!(w, "approve-worded")) }
                    span.fld.wide { input id=(of("worded")) name="worded" value=(proposal.asks) maxlength="200" autocomplete="off"; }
                    p.soft.small { (say!(w, "approve-worded-says")) }
                }
            }
            button.btn type="submit" name="do" value="change" { (say!(w, "approve-with-change")) }
        }
    }
}

/// The question that goes back: offered from what the checks say, to be put in one's own words.
fn question(w: Wording, name: &str, line: &Queued) -> Markup {
    let id = format!("{name}-asks");
    let offered = barm_domain::proposal::asks(&line.judged);
    let offered = offered.first().map_or_else(String::new, |ask| teacher_asks(w, *ask));
    html! {
        div.fields {
            div.one.wide {
                label for=(id) { (say!(w, "approve-one-question")) }
                span.fld.wide { input id=(id) name="asks" value=(offered) autocomplete="off"; }
            }
            button.btn type="submit" name="do" value="return" { (say!(w, "approve-back-go")) }
        }
    }
}

/// What a teacher might ask.
fn teacher_asks(w: Wording, ask: barm_domain::proposal::Ask) -> String {
    use barm_domain::proposal::Ask;
    match ask {
        Ask::Unsaid => say!(w, "ask-unsaid"),
        Ask::Cupboard => say!(w, "ask-cupboard"),
        Ask::TwoThings => say!(w, "ask-two-things"),
        Ask::Change => say!(w, "ask-change"),
        Ask::Alike => say!(w, "ask-alike"),
        Ask::Compare => say!(w, "ask-compare"),
        Ask::Luck => say!(w, "ask-luck"),
        Ask::Gas => say!(w, "ask-gas"),
        Ask::Hot => say!(w, "ask-hot"),
        Ask::Make => say!(w, "ask-make"),
    }
}

fn groups(w: Wording, groups: &[(String, u32)]) -> String {
    let one = |(period, group): &(String, u32)| {
        say!(w, "approve-partner", period = period, group = group.to_string())
    };
    groups.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// A group at the start of a line.
fn named(w: Wording, period: &str, group: u32) -> String {
    say!(w, "approve-group", period = period, group = group.to_string())
}

/// Periods with the numbers of their groups.
fn by_period(groups: &[(String, u32)]) -> Vec<(&str, Vec<u32>)> {
    let mut found: Vec<(&str, Vec<u32>)> = Vec::new();
    for (period, group) in groups {
        match found.last_mut().filter(|(last, _)| last == period) {
            Some((_, numbers)) => numbers.push(*group),
            None => found.push((period, vec![*group])),
        }
    }
    found
}

/// Where the paper sheet of a group is typed in.
fn sheet_of(id: i64, period: &str, group: u32) -> String {
    format!("/i/{id}/approve/sheet?period={}&group={group}", segment(period))
}

fn board(w: Wording, view: &ApproveView) -> Markup {
    let queue: &Queue = &view.queue;
    html! {
        h2 { (say!(w, "approve-cover")) }
        @if queue.covered.is_empty() { p.soft { (say!(w, "approve-cover-none")) } }
        ul.plain {
            @for covered in &queue.covered {
                li {
                    b { (covered.variable.words()) } ": " (covered.levels.join(", "))
                    span.soft {
                        (say!(w, "approve-covered", groups = covered.groups.len(), bags = covered.bags))
                    }
                }
            }
        }
        @if let Some(most) = queue.all_picked() {
            p.warns {
                b { (say!(w, "approve-alike", count = most.groups.len())) }
                " " (say!(w, "approve-alike-ask"))
            }
        }
        @if !view.missing.is_empty() {
            h2 { (say!(w, "approve-missing")) }
            p.soft { (say!(w, "approve-missing-count", count = view.missing.len())) }
            ul.plain { @for (period, numbers) in by_period(&view.missing) {
                li {
                    (lay!(w, "approve-missing-of", period = period, groups = html! {
                        @for (place, number) in numbers.iter().enumerate() {
                            @if place > 0 { " " }
                            a.sheet-of href=(sheet_of(view.id, period, *number))
                                aria-label=(say!(w, "approve-type-in", who = named(w, period, *number))) {
                                (number)
                            }
                        }
                    }))
                }
            } }
            p.small.soft { (say!(w, "approve-missing-paper")) }
        }
        p.small { a href={ "/i/" (view.id) "/proposals.csv" } { (say!(w, "approve-download")) } }
    }
}

fn answered(w: Wording, view: &ApproveView) -> Markup {
    html! {
        @if !view.answered.is_empty() {
            details {
                summary { (say!(w, "approve-answered", count = view.answered.len())) }
                ul.plain.cautions {
                    @for (row, answer) in &view.answered {
                        li {
                            b { (named(w, &row.written.period, row.written.group)) ": " }
                            @match answer {
                                Answer::Approved => (say!(w, "approve-was-approved")),
                                Answer::Returned(asks) => {
                                    (say!(w, "approve-was-returned", question = asks))
                                }
                            }
                            " "
                            span.soft { (row.written.asks) }
                        }
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::page;
    use crate::desk::Wording;
    use crate::desk::queue::{Queue, queue};
    use crate::desk::room::Kind;
    use crate::desk::room::proposals::ApproveView;
    use crate::desk::start;
    use barm_domain::finding::Severity;
    use barm_domain::ready::Ready;
    use maud::html;
    use std::sync::LazyLock;

    fn of(queue: Queue) -> ApproveView {
        ApproveView {
            id: 7,
            kind: Kind::Real,
            title: "A lesson".into(),
            queue,
            keep: std::collections::BTreeMap::new(),
            answered: Vec::new(),
            missing: Vec::new(),
        }
    }

    /// Forty proposals of five periods, every eighth with a fault.
    static FORTY: LazyLock<ApproveView> = LazyLock::new(|| {
        let typed = start::Typed {
            date: "2027-03-09".into(),
            periods: "5".into(),
            ..start::Typed::default()
        };
        let text =
            start::written(Wording::english(), Ready::OwnQuestion, &typed).expect("a plan");
        let lines: String = (0..40)
            .map(|n| {
                let warm = if n % 8 == 0 { " + 45 °C" } else { "" };
                let (period, group) = (n / 8 + 1, n % 8 + 1);
                format!(
                    "{period},{group},Is honey better?,food,honey{warm}; white sugar,No food\n"
                )
            })
            .collect();
        let table = format!("period,group,question,changes,levels,compared with\n{lines}");
        let (plan, rows) = crate::desk::queue::both(&text, &table);
        of(queue(Wording::english(), &plan, &rows))
    });

    #[test]
    fn forty_proposals_take_less_than_two_keys_each() {
        let view = &*FORTY;
        let shown = page(Wording::english(), view, &html! {}, None).into_string();
        let mut keys = 0;
        // After each answer the next one waits at the top with the focus on it.
        for article in shown.split("<article").skip(1) {
            let sound = !article.contains("disabled");
            assert!(article.contains("data-key=\"a\"") && article.contains("data-key=\"r\""));
            // `a`; or `r` and Enter, with the question that is offered.
            keys += if sound { 1 } else { 2 };
            assert!(sound || article.contains("which of the two things did it?"));
        }
        assert_eq!(view.queue.lines.len(), 40);
        assert_eq!(keys, 45);
    }

    #[test]
    fn faults_stand_on_top_and_the_board_says_what_all_picked() {
        let view = &*FORTY;
        let faults: Vec<usize> = view.queue.lines.iter().map(|l| l.judged.faults()).collect();
        assert!(faults.is_sorted_by(|a, b| a >= b), "{faults:?}");
        let shown = page(Wording::english(), view, &html! {}, None).into_string();
        assert!(shown.contains("35 groups picked the same."), "the board says so");
        assert_eq!(
            shown.matches("btn main").count(),
            0,
            "the first has a fault: no next step in ink"
        );
    }

    #[test]
    fn each_proposal_stands_with_forecast_cautions_allergens_and_cost() {
        let typed = start::Typed { date: "2027-03-09".into(), ..start::Typed::default() };
        let text =
            start::written(Wording::english(), Ready::OwnQuestion, &typed).expect("a plan");
        let table = "period,group,question,changes,levels,compared with\n\
                     1,1,Which flour?,food,white wheat flour; white sugar,No food\n";
        let (plan, rows) = crate::desk::queue::both(&text, table);
        let queue = queue(Wording::english(), &plan, &rows);
        let line = &queue.lines[0];
        // Wheat is one of the nine major allergens of US law.
        assert_eq!(line.allergens, ["wheat"]);
        assert!(line.chart.is_some() && !line.verdicts.is_empty());
        let cautions = line.judged.found.iter().filter(|f| f.severity == Severity::Caution);
        let cautions: Vec<String> = cautions.map(|one| one.code.to_string()).collect();
        assert!(!cautions.is_empty(), "{:?}", line.judged.found);
        let cost = line.cost.expect("prices are known");
        let mut view = of(queue);
        let draw =
            |view: &ApproveView| page(Wording::english(), view, &html! {}, None).into_string();
        let shown = draw(&view);
        assert!(shown.contains("wheat"));
        assert!(shown.contains("<svg") && shown.contains("class=\"verd"), "the forecast");
        for code in cautions {
            assert!(shown.contains(&code), "{code}");
        }
        assert_eq!(shown.contains(&format!("${cost:.2}")), cost > 0.005, "{cost}");
        // What adds something says what; what adds nothing says nothing.
        view.queue.lines[0].cost = Some(3.4);
        assert!(draw(&view).contains("$3.40"));
        view.queue.lines[0].cost = Some(0.0);
        assert!(!draw(&view).contains("$0.00"));
    }
}
