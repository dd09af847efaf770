//! The page on which a colleague's package is taken, as markup.

use crate::desk::room::Kind;
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(w: Wording) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &say!(w, "take-title"), None, Part::Shelf, Kind::Real))
            (lead(&say!(w, "take-lead")))
            }
            main {
                section.sec {
                    div.mg { h2 { (say!(w, "take-package")) } }
                    div.bd {
                        p { (say!(w, "take-says")) }
                        div.opener data-look-first="/package" {
                            div {
                                label for="pick" { (say!(w, "take-pick")) }
                                input type="file" id="pick" accept=".zip,application/zip";
                            }
                            div.btns { button.btn type="button" id="look" { (say!(w, "take-look")) } }
                        }
                        div id="said" role="status" data-silent=(say!(w, "paper-silent")) data-nothing=(say!(w, "take-no-file")) {}
                    }
                }
            }
        }
    }
}
