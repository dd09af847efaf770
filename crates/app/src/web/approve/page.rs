//! The approval queue as markup.

use crate::desk::queue::{Queue, Queued};
use crate::desk::room::proposals::{Answer, ApproveView};
use crate::web::head::{Part, head, lead};
use crate::web::plan::{chart, verdicts};
use barm_domain::finding::Severity;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(view: &ApproveView, field: &Markup, done: Option<&str>) -> Markup {
    html! {
        div.sheet {
            (head(&view.title, Some(view.id), Part::Approve, view.kind))
            (lead("What the groups propose, the ones with a fault first. Approve, change one thing, \
                   or send it back with one question. Approved ones are in the plan at once; then \
                   prepare."))
            p.done role="status" { (done.unwrap_or_default()) }
            main.queue data-queue {
                div {
                    p.small.soft.keys {
                        "Keys: " kbd { "j" } " next, " kbd { "k" } " the one before, " kbd { "a" }
                        " approve, " kbd { "c" } " change one thing, " kbd { "r" }
                        " send back with one question. "
                        label.inline { input type="checkbox" id="keys-on" checked; " Use these keys" }
                    }
                    @if view.queue.lines.is_empty() { (nothing(view)) }
                    @for (place, line) in view.queue.lines.iter().enumerate() {
                        (one(view.id, line, place == 0, field))
                    }
                    (answered(view))
                }
                aside.board { (board(view)) }
            }
        }
    }
}

fn nothing(view: &ApproveView) -> Markup {
    html! {
        section.sec { div.mg { h2 { "Waiting" } } div.bd {
            @if view.answered.is_empty() {
                p { "Nothing yet. Groups write their plan on their own page, with the codes of their \
                     period; it comes here as soon as they hand it in." }
            } @else {
                p { "Nothing waits. Every proposal has its answer." }
            }
        } }
    }
}

fn one(id: i64, line: &Queued, first: bool, field: &Markup) -> Markup {
    let written = &line.row.written;
    let faults = line.judged.faults();
    let key = format!("p{}-{}", written.period, written.group);
    let name: String = key.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').collect();
    let grave = line.judged.found.iter().filter(|found| found.severity <= Severity::Warning);
    let cautions = line.judged.found.iter().filter(|f| f.severity == Severity::Caution);
    let cautions: Vec<_> = cautions.collect();
    html! {
        article.prop id=(name) tabindex="-1" data-proposal aria-label={ "Period " (written.period) ", group " (written.group) } {
            header {
                h2 { "Period " (written.period) ", group " (written.group) }
                @match faults {
                    0 => span.st.saved { "No fault" },
                    1 => span.st.doubt { "1 fault" },
                    many => span.st.doubt { (many) " faults" },
                }
            }
            p.asks { (if written.asks.is_empty() { "No question written." } else { &written.asks }) }
            dl.what {
                dt { "Changes" } dd { (written.changes) }
                dt { "Makes" } dd { (written.levels.join(", ")) span.soft { ", " (written.bags) " bags of each" } }
                dt { "Beside" } dd { (if written.beside.is_empty() { "nothing" } else { &written.beside }) }
                @if !written.keeps.is_empty() { dt { "All have" } dd { (written.keeps) } }
                @if !line.row.expects.is_empty() {
                    dt { "Expects" } dd { (line.row.expects)
                        @if !line.row.because.is_empty() { span.soft { ", because " (line.row.because) } } }
                }
                @if !line.partners.is_empty() { dt { "Same question" } dd { (groups(&line.partners)) } }
                @if !line.allergens.is_empty() { dt { "Allergens" } dd { (line.allergens.join(", ")) } }
                @if let Some(cost) = line.cost.filter(|cost| *cost > 0.005) {
                    dt { "Adds" } dd { "$" (format!("{cost:.2}")) " to the shopping" }
                }
            }
            @for found in grave {
                div class=(if found.severity == Severity::Fault { "fault" } else { "warns" }) {
                    p { b { (found.message) } " " (found.fix) }
                }
            }
            @if !line.verdicts.is_empty() { (verdicts(&line.verdicts)) }
            @if let Some(drawn) = &line.chart {
                details { summary { "Forecast" } (chart(drawn, false)) }
            }
            @if !cautions.is_empty() {
                details { summary { (cautions.len()) " cautions it brings" } ul.plain.cautions {
                    @for one in cautions { li { span.code { (one.code) } " " (one.message) " " (one.fix) } }
                } }
            }
            form.deal method="post" action={ "/i/" (id) "/approve" } {
                (field)
                input type="hidden" name="period" value=(written.period);
                input type="hidden" name="group" value=(written.group);
                div.btns {
                    button.btn.main[first && faults == 0] type="submit" name="do" value="approve"
                        data-key="a" disabled[faults > 0] { "Approve" }
                    details.act { summary data-key="c" { "Change one thing" } (change(&name, line)) }
                    details.act { summary data-key="r" { "Send back" } (question(&name, line)) }
                }
            }
        }
    }
}

fn change(name: &str, line: &Queued) -> Markup {
    let written = &line.row.written;
    let of = |part: &str| format!("{name}-{part}");
    html! {
        div.fields {
            div.one.wide {
                label for=(of("levels")) { "Kinds of bag, parted by ;" }
                span.fld.wide { input id=(of("levels")) name="levels" value=(written.levels.join("; ")) autocomplete="off"; }
            }
            div.one {
                label for=(of("beside")) { "Beside" }
                span.fld { input id=(of("beside")) name="beside" value=(written.beside) autocomplete="off"; }
            }
            div.one {
                label for=(of("bags")) { "Bags of each" }
                span.fld { input id=(of("bags")) name="bags" value=(written.bags) inputmode="numeric" autocomplete="off"; }
            }
            button.btn type="submit" name="do" value="change" { "Approve with this change" }
        }
    }
}

/// The question that goes back: offered from what the checks say, to be put in one's own words.
fn question(name: &str, line: &Queued) -> Markup {
    let id = format!("{name}-asks");
    let offered = barm_domain::proposal::asks(&line.judged);
    let offered = offered.first().map_or("", |ask| teacher_asks(*ask));
    html! {
        div.fields {
            div.one.wide {
                label for=(id) { "One question, not a correction" }
                span.fld.wide { input id=(id) name="asks" value=(offered) autocomplete="off"; }
            }
            button.btn type="submit" name="do" value="return" { "Send it back" }
        }
    }
}

/// What a teacher might ask.
fn teacher_asks(ask: barm_domain::proposal::Ask) -> &'static str {
    use barm_domain::proposal::Ask;
    match ask {
        Ask::Unsaid => "What exactly goes into each bag?",
        Ask::Cupboard => "What from our cupboard could you take?",
        Ask::TwoThings => "If one bag wins, how will you know which of the two things did it?",
        Ask::Change => "What is different between your bags?",
        Ask::Alike => "Which two of your bags are made alike?",
        Ask::Compare => "What will you compare your bags with?",
        Ask::Luck => "With one bag of a kind, how will you know that it was not luck?",
        Ask::Gas => "What in your bags makes the gas?",
        Ask::Hot => "What could water that hot do to you, and to yeast?",
        Ask::Make => "How will you measure that out?",
    }
}

fn groups(groups: &[(String, u32)]) -> String {
    let all: Vec<String> =
        groups.iter().map(|(period, group)| format!("period {period} group {group}")).collect();
    all.join(", ")
}

fn counted(groups: usize) -> String {
    if groups == 1 { "1 group".to_owned() } else { format!("{groups} groups") }
}

/// Periods with the numbers of their groups.
fn by_period(groups: &[(String, u32)]) -> Vec<(&str, String)> {
    let mut found: Vec<(&str, String)> = Vec::new();
    for (period, group) in groups {
        match found.last_mut().filter(|(last, _)| last == period) {
            Some((_, numbers)) => numbers.push_str(&format!(", {group}")),
            None => found.push((period, group.to_string())),
        }
    }
    found
}

fn board(view: &ApproveView) -> Markup {
    let queue: &Queue = &view.queue;
    html! {
        h2 { "What they cover" }
        @if queue.covered.is_empty() { p.soft { "Nothing waits." } }
        ul.plain {
            @for covered in &queue.covered {
                li {
                    b { (covered.variable.words()) } ": " (covered.levels.join(", "))
                    span.soft { (counted(covered.groups.len())) ", " (covered.bags) " bags of each" }
                }
            }
        }
        @if let Some(most) = queue.all_picked() {
            p.warns { b { (most.groups.len()) " groups picked the same. " }
                "Ask some of them what else could matter." }
        }
        @if !view.missing.is_empty() {
            h2 { "Not handed in" }
            p.soft { (counted(view.missing.len())) ":" }
            ul.plain { @for (period, numbers) in by_period(&view.missing) {
                li { "Period " (period) ": " (numbers) }
            } }
        }
        p.small { a href={ "/i/" (view.id) "/proposals.csv" } { "Download all as a table" } }
    }
}

fn answered(view: &ApproveView) -> Markup {
    html! {
        @if !view.answered.is_empty() {
            details {
                summary { (view.answered.len()) " answered" }
                ul.plain.cautions {
                    @for (row, answer) in &view.answered {
                        li {
                            b { "Period " (row.written.period) ", group " (row.written.group) ": " }
                            @match answer {
                                Answer::Approved => "approved. ",
                                Answer::Returned(asks) => { "sent back: " (asks) " " }
                            }
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
    use crate::desk::queue::queue;
    use crate::desk::room::Kind;
    use crate::desk::room::proposals::ApproveView;
    use crate::desk::start;
    use barm_domain::ready::Ready;
    use maud::html;

    /// Forty proposals of five periods, every eighth with a fault.
    fn forty() -> ApproveView {
        let typed = start::Typed {
            date: "2027-03-09".into(),
            periods: "5".into(),
            ..start::Typed::default()
        };
        let text = start::written(Ready::OwnQuestion, &typed).expect("a plan");
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
        ApproveView {
            id: 7,
            kind: Kind::Real,
            title: "A lesson".into(),
            queue: queue(&plan, &rows),
            answered: Vec::new(),
            missing: Vec::new(),
        }
    }

    #[test]
    fn forty_proposals_take_less_than_two_keys_each() {
        let view = forty();
        let shown = page(&view, &html! {}, None).into_string();
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
        let view = forty();
        let faults: Vec<usize> = view.queue.lines.iter().map(|l| l.judged.faults()).collect();
        assert!(faults.is_sorted_by(|a, b| a >= b), "{faults:?}");
        let shown = page(&view, &html! {}, None).into_string();
        assert!(shown.contains("35 groups picked the same."), "the board says so");
        assert_eq!(
            shown.matches("btn main").count(),
            0,
            "the first has a fault: no next step in ink"
        );
    }
}
