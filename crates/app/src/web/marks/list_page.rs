//! The list of marks as markup.

use crate::desk::room::marks::{MarksView, Standing};
use crate::desk::room::roster::{GradeFile, Offered};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, head, lead};
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(
    w: Wording,
    (view, grades): (&MarksView, &[Offered]),
    field: &Markup,
    done: Option<&str>,
) -> Markup {
    let id = view.id;
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(id), Part::Results, view.kind))
            (lead(&say!(w, "marks-lead")))
            }
            p.done role="status" { (done.unwrap_or_default()) }
            main {
                p {
                    a href={ "/i/" (id) "/claims" } { (say!(w, "results-claims")) } " · "
                    a href={ "/i/" (id) "/marks/rubric" } { (say!(w, "marks-rubric")) } " · "
                    a href={ "/i/" (id) "/standards" } { (say!(w, "standards-open")) }
                }
                @for (period, groups) in &view.periods {
                    section.sec {
                        div.mg {
                            h2 { (say!(w, "claims-period", period = period)) }
                            form method="post" action={ "/i/" (id) "/marks" } {
                                (field)
                                input type="hidden" name="period" value=(period);
                                button.btn type="submit" { (say!(w, "marks-hand-out")) }
                            }
                        }
                        div.bd {
                            div.scrolls tabindex="0" {
                                table {
                                    thead { tr {
                                        th { (say!(w, "marks-group")) }
                                        th { (say!(w, "marks-claim")) }
                                        th { (say!(w, "marks-standing")) }
                                    } }
                                    tbody { @for one in groups { (row(w, id, period, one)) } }
                                }
                            }
                        }
                    }
                }
                (gradebook(w, id, grades))
            }
        }
    }
}

/// Grades as files, period by period.
fn gradebook(w: Wording, id: i64, grades: &[Offered]) -> Markup {
    html! {
        section.sec id="grades" {
            div.mg { h2 { (say!(w, "roster-grades")) } }
            div.bd {
                p {
                    @if grades.is_empty() { (say!(w, "roster-grades-none")) " " }
                    a href={ "/i/" (id) "/roster" } {
                        @if grades.is_empty() { (say!(w, "roster-grades-open")) }
                        @else { (say!(w, "roster-grades-edit")) }
                    }
                }
                @for one in grades { (files(w, id, one)) }
            }
        }
    }
}

fn files(w: Wording, id: i64, one: &Offered) -> Markup {
    let all = one.tally;
    let [students, points, missing, excused, open] =
        [all.students, all.points, all.missing, all.excused, all.open].map(|n| n.to_string());
    let to =
        |file: GradeFile| format!("/i/{id}/grades/{}/{}", segment(&one.period), file.name());
    html! {
        h3 { (say!(w, "claims-period", period = &one.period)) }
        p { (say!(w, "roster-tally", students = students, points = points, missing = missing, excused = excused, open = open)) }
        ul.plain {
            @for (file, why) in &one.files {
                li {
                    @match (file, why) {
                        (GradeFile::Table, _) => a href=(to(*file)) { (say!(w, "roster-file-table")) },
                        (GradeFile::For(version), None) => {
                            a href=(to(*file)) { (say!(w, "roster-file-for", version = version.word())) }
                        },
                        (GradeFile::For(version), Some(why)) => {
                            (say!(w, "roster-file-not", version = version.word(), why = why.to_string()))
                        },
                    }
                }
            }
        }
        p.small.soft { (say!(w, "roster-left-out", count = all.missing + all.excused)) }
    }
}

fn row(w: Wording, id: i64, period: &str, one: &Standing) -> Markup {
    let to = format!("/i/{id}/marks/{}/{}", segment(period), one.group);
    html! {
        tr {
            td { a href=(to) { (say!(w, "approve-group", period = period, group = one.group.to_string())) } }
            td { @if one.claimed { (say!(w, "marks-claimed")) } @else { span.soft { (say!(w, "marks-no-claim")) } } }
            td {
                @match one.sum {
                    Some((sum, of)) => (say!(w, "marks-sum", sum = sum.to_string(), of = of.to_string())),
                    None => span.soft { (say!(w, "marks-open", count = one.open)) },
                }
            }
        }
    }
}
