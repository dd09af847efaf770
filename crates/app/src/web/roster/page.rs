//! Students and groups as markup.

use super::answer::Around;
use crate::desk::room::roster::{Gets, ListRow, PeriodList, RosterView};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use barm_domain::grades::Score;
use barm_domain::marks::{MOST_OWN_CHARACTERS, Open};
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &RosterView, field: &Markup, around: &Around) -> Markup {
    let id = view.id;
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(id), Part::Results, view.kind))
            (lead(&say!(w, "roster-lead")))
            }
            p.done role="status" { (around.said.as_deref().unwrap_or_default()) }
            main {
                p { a href={ "/i/" (id) "/marks" } { (say!(w, "roster-marks")) } }
                (file(w, id, view.keeps_any))
                @for period in &view.periods { (of_period(w, view, period, field, around)) }
                @if view.keeps_any { (away(w, id, field)) }
            }
        }
    }
}

/// Where a roster is taken.
fn file(w: Wording, id: i64, any: bool) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "roster-file")) } }
            div.bd {
                p { (say!(w, "roster-file-says")) }
                @if any { p { (say!(w, "roster-file-again")) } }
                div.opener data-look-first={ "/i/" (id) "/roster" } {
                    div {
                        label for="pick" { (say!(w, "roster-pick")) }
                        input type="file" id="pick" accept=".zip,application/zip";
                    }
                    div.btns { button.btn type="button" id="look" { (say!(w, "roster-look")) } }
                }
                div id="said" role="status" data-silent=(say!(w, "paper-silent")) data-nothing=(say!(w, "roster-no-file")) {}
            }
        }
    }
}

fn of_period(
    w: Wording,
    view: &RosterView,
    period: &PeriodList,
    field: &Markup,
    around: &Around,
) -> Markup {
    let faults = around.faults.as_ref().filter(|(name, _)| *name == period.name);
    let faults = faults.map_or(&[][..], |(_, faults)| faults);
    let Some(title) = &period.section else {
        return html! {
            section.sec {
                div.mg { h2 { (say!(w, "claims-period", period = &period.name)) } }
                div.bd { p.soft { (say!(w, "roster-none")) } }
            }
        };
    };
    html! {
        section.sec {
            div.mg {
                h2 { (say!(w, "claims-period", period = &period.name)) }
                p.note {
                    (title.words()) ", " (say!(w, "roster-students", count = period.rows.len()))
                }
            }
            div.bd {
                @if !faults.is_empty() {
                    div.fault role="alert" {
                        p { (say!(w, "roster-faults")) }
                        ul { @for (at, why) in faults { li {
                            @if let Some(row) = period.rows.get(*at) { b { (row.shown.words()) ": " } }
                            (why) "."
                        } } }
                    }
                } @else if !period.saved {
                    p.warns { (say!(w, "roster-proposal")) }
                }
                form method="post" {
                    (field)
                    input type="hidden" name="period" value=(period.name);
                    input type="hidden" name="stamp" value=(period.stamp);
                    (table(w, view, period))
                    p.small.soft { (say!(w, "roster-own-says", most = view.most.to_string())) }
                    div.btns { button.btn.main type="submit" { (say!(w, "roster-save", period = &period.name)) } }
                }
            }
        }
    }
}

fn table(w: Wording, view: &RosterView, period: &PeriodList) -> Markup {
    html! {
        div.scrolls tabindex="0" {
            table.students {
                thead { tr {
                    th scope="col" { (say!(w, "roster-student")) }
                    th scope="col" { (say!(w, "roster-group")) }
                    th scope="col" { (say!(w, "roster-absent")) }
                    th scope="col" { (say!(w, "roster-gets")) }
                    th scope="col" { (say!(w, "roster-own")) }
                    th scope="col" { (say!(w, "roster-words")) }
                } }
                tbody { @for (at, row) in period.rows.iter().enumerate() {
                    (line(w, view.most, period.groups, at, row))
                } }
            }
        }
    }
}

fn line(w: Wording, most: usize, groups: u32, at: usize, row: &ListRow) -> Markup {
    let name = row.shown.words();
    html! {
        tr {
            th scope="row" { (name) }
            td { span.fld { select name={ "group-" (at) } aria-label=(say!(w, "roster-group-of", student = name)) {
                option value="" { "–" }
                @for group in 1..=groups {
                    option value=(group) selected[row.place.group == Some(group)] { (group) }
                }
            } } }
            td { label.away {
                input type="checkbox" name={ "absent-" (at) } value="1" checked[row.place.absent]
                    aria-label=(say!(w, "roster-absent-of", student = name));
            } }
            td.gets { (gets(w, most, row.gets)) }
            td { span.fld { input.own type="text" name={ "own-" (at) } value=(row.own) maxlength="20" autocomplete="off"
                aria-label=(say!(w, "roster-own-of", student = name)); } }
            td { span.fld.wide { input.words type="text" name={ "words-" (at) } value=(row.words)
                maxlength=(MOST_OWN_CHARACTERS) autocomplete="off"
                aria-label=(say!(w, "roster-words-of", student = name)); } }
        }
    }
}

fn gets(w: Wording, most: usize, gets: Gets) -> Markup {
    let soft = |says: String| html! { span.soft { (says) } };
    match gets {
        Gets::Score(Score::Points(points)) => {
            let (sum, of) = (points.to_string(), most.to_string());
            html! { (say!(w, "marks-sum", sum = sum, of = of)) }
        }
        Gets::Score(Score::Missing) => html! { (say!(w, "roster-missing")) },
        Gets::Score(Score::Excused) => html! { (say!(w, "roster-excused")) },
        Gets::Open(Open::NotMarked) => soft(say!(w, "roster-not-marked")),
        Gets::Open(Open::TooMany) => soft(say!(w, "roster-too-many")),
        Gets::NoGroups => soft(say!(w, "roster-not-saved")),
    }
}

fn away(w: Wording, id: i64, field: &Markup) -> Markup {
    html! {
        section.sec id="away" {
            div.mg { h2 { (say!(w, "roster-away")) } }
            div.bd {
                p { (say!(w, "roster-away-says")) " " a href={ "/i/" (id) "/names" } { (say!(w, "results-names")) } }
                form.opener method="post" {
                    (field)
                    ul.ticklist { li { label {
                        input type="checkbox" name="sure" value="yes" required;
                        span { (say!(w, "kept-delete-check")) }
                    } } }
                    div.btns { button.btn type="submit" name="do" value="away" { (say!(w, "roster-away-go")) } }
                }
            }
        }
    }
}
