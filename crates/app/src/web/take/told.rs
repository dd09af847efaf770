//! What is told of a colleague's package, as markup that a script puts in.

use super::answer::NotTaken;
use crate::desk::editing::sentence;
use crate::desk::shared::{StaysBehind, Taken, stays_behind};
use crate::desk::{DeskError, Wording, say};
use maud::{Markup, html};

/// What is in it, and how to keep it.
pub(super) fn offer(w: Wording, taken: &Taken) -> Markup {
    let (opened, own) = (&taken.package.opened, &taken.investigation);
    let (plan, aside) = (&own.plan, own.set_aside.len());
    let licence = match opened.licence {
        Some(licence) => say!(w, "take-license", name = licence.title(), id = licence.id()),
        None => say!(w, "take-no-license"),
    };
    html! {
        h3.addrow { (say!(w, "take-in-it")) }
        @if opened.made_up { p.warns { (say!(w, "take-made-up")) } }
        ul {
            li {
                (say!(w, "take-bags", bags = plan.bags.len().to_string(), heights = own.readings.len().to_string()))
                " " (say!(w, "take-periods", count = plan.periods.len()))
                @if aside > 0 { " " (say!(w, "take-aside", count = aside)) }
                @if !own.meter.is_empty() { " " (say!(w, "take-pushes", count = own.meter.len())) }
            }
            li { (licence) }
            @if let Some(grade) = opened.grade { li { (say!(w, "take-grade", grade = grade.to_string())) } }
            li { (say!(w, "take-no-dates")) }
        }
        (treatments(w, taken))
        h3.addrow { (say!(w, "take-left")) }
        (left(w, taken))
        h3.addrow { (say!(w, "take-keep-head")) }
        div.fields {
            div.one.wide {
                label for="title" { (say!(w, "take-name")) }
                span.fld.wide { input id="title" type="text" value=(plan.title) maxlength="120" autocomplete="off" data-part="title"; }
            }
            div.one {
                label for="day" { (say!(w, "take-day")) }
                span.fld { input id="day" type="date" value=[plan.days.first().map(|day| day.date.to_string())] data-part="day"; }
            }
        }
        p.small.soft { (say!(w, "take-keep-says")) }
        div.btns.addrow { button.btn.main type="button" id="take" { (say!(w, "take-keep")) } }
        div role="status" data-refused {}
    }
}

fn treatments(w: Wording, taken: &Taken) -> Markup {
    html! {
        div.scrolls tabindex="0" { table.shelf {
            thead { tr {
                th scope="col" { (say!(w, "take-treatment")) }
                th.r scope="col" { (say!(w, "shelf-bags")) }
                th scope="col" { (say!(w, "take-beside")) }
            } }
            tbody { @for one in taken.treatments() { tr {
                td { (one.name) }
                td.r { (one.bags) }
                td { (one.beside.unwrap_or_default()) }
            } } }
        } }
    }
}

/// What is not taken over, and why.
fn left(w: Wording, taken: &Taken) -> Markup {
    let StaysBehind { without_zero, thinned, warmths } = stays_behind(taken);
    html! {
        ul {
            @for one in &taken.investigation.left_out {
                li { (say!(w, "take-left-treatment", treatment = one.treatment.to_string(), count = one.bags, why = &one.why)) }
            }
            @if without_zero > 0 { li { (say!(w, "take-left-zero", count = without_zero)) } }
            @if thinned > 0 { li { (say!(w, "take-left-thinned", count = thinned)) } }
            @if warmths > 0 { li { (say!(w, "take-left-warmth", count = warmths)) } }
            li { (say!(w, "take-left-never")) }
        }
    }
}

/// That it is on disk, and where.
pub(super) fn kept(w: Wording, id: i64) -> Markup {
    let to = format!("/i/{id}/results");
    html! { p data-taken=(to) { b { (say!(w, "take-kept")) } " " a href=(to) { (say!(w, "take-results")) } } }
}

/// Why nothing was taken.
pub(super) fn refused(w: Wording, why: &NotTaken) -> Markup {
    let says = match why {
        // A name of a file stays as it is.
        NotTaken::Package(DeskError::Package { why, .. }) if why.file.is_some() => {
            format!("{why}.")
        }
        NotTaken::Package(DeskError::Package { why, .. }) => sentence(&why.to_string()),
        NotTaken::Package(DeskError::Rebuilt { why, .. }) => sentence(&why.to_string()),
        NotTaken::Package(DeskError::Plan(mistakes)) => {
            let mistakes = mistakes.mistakes.iter();
            let says: Vec<String> =
                mistakes.map(|one| sentence(&format!("{}; {}", one.what, one.fix))).collect();
            format!("{} {}", say!(w, "take-no-plan"), says.join(" "))
        }
        NotTaken::Package(error) => sentence(&error.to_string()),
        NotTaken::Day => say!(w, "take-no-day"),
        NotTaken::Title => say!(w, "take-no-title"),
    };
    html! { p.fault { (says) " " b { (say!(w, "roster-nothing-kept")) } } }
}
