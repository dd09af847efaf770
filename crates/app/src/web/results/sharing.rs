//! Data for others, as markup.

use crate::desk::shared::Licence;
use crate::desk::{Wording, say};
use maud::{Markup, html};

/// What stays behind, under which license, and the two files.
pub(super) fn sharing(w: Wording, id: i64) -> Markup {
    html! {
        section.sec id="share" {
            div.mg { h2 { (say!(w, "results-share")) } p.note { (say!(w, "results-share-note")) } }
            div.bd {
                p { (say!(w, "results-share-says")) }
                form.editform method="get" action={ "/i/" (id) "/data.zip" } {
                    div.fields {
                        div.one.wide {
                            label for="license" { (say!(w, "results-share-license")) }
                            span.fld { select id="license" name="license" {
                                @for licence in Licence::ALL {
                                    option value=(licence.id()) { (licence.title()) }
                                }
                            } }
                        }
                    }
                    ul.ticklist { li { label {
                        input type="checkbox" name="grade" value="yes";
                        span { (say!(w, "results-share-grade")) }
                    } } }
                    div.btns.addrow {
                        button.btn.main { (say!(w, "results-share-zip")) }
                        button.btn.quiet formaction={ "/i/" (id) "/data.csv" } {
                            (say!(w, "results-share-csv"))
                        }
                    }
                }
            }
        }
    }
}
