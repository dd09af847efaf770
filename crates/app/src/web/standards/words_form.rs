//! The words of standards as a form.

use super::page::called;
use crate::desk::room::standards::StandardsView;
use crate::desk::{Wording, say};
use barm_domain::standards::{MOST_CHARACTERS, OwnStandard, Product, STANDARDS};
use maud::{Markup, html};

/// Every standard with its words, those that are left out among them, and an empty row for one more.
pub(super) fn form(w: Wording, view: &StandardsView, field: &Markup, open: bool) -> Markup {
    let empty = OwnStandard { code: String::new(), words: String::new(), products: Vec::new() };
    let mut own: Vec<&OwnStandard> = view.worded.own.iter().collect();
    own.push(&empty);
    html! {
        section.sec id="words" {
            div.mg { h2 { (say!(w, "standards-words-head")) } p.note { (say!(w, "standards-words-note")) } }
            div.bd { details open[open] {
                summary { span { (say!(w, "standards-change")) } }
                form method="post" {
                    (field)
                    div.fields {
                        @for standard in &STANDARDS {
                            @let name = format!("words-{}", standard.code);
                            div.one.wide.wording {
                                label for=(name) {
                                    b { (standard.code) }
                                    @if view.worded.of(standard) != standard.gist { " " span.soft { (standard.gist) } }
                                }
                                span.fld.wide { input id=(name) name=(name) maxlength=(MOST_CHARACTERS) autocomplete="off"
                                    value=(view.worded.of(standard)); }
                                label.inuse {
                                    input type="checkbox" name="use" value=(standard.code)
                                        checked[!view.worded.left_out.contains(standard.code)];
                                    span { (say!(w, "standards-use", code = standard.code)) }
                                }
                            }
                        }
                    }
                    h3 { (say!(w, "standards-own")) }
                    p.small.soft { (say!(w, "standards-own-says")) }
                    @for (at, one) in own.iter().enumerate() { (own_row(w, at, one)) }
                    div.btns {
                        button.btn.main type="submit" name="do" value="save" { (say!(w, "standards-save")) }
                        button.btn.quiet type="submit" name="do" value="again" { (say!(w, "standards-again")) }
                    }
                }
            } }
        }
    }
}

fn own_row(w: Wording, at: usize, own: &OwnStandard) -> Markup {
    let of = |part: &str| format!("own-{at}-{part}");
    html! {
        fieldset.fields {
            legend { @if own.code.is_empty() { (say!(w, "standards-one-more")) } @else { (own.code) } }
            div.one {
                label for=(of("code")) { (say!(w, "standards-code")) }
                span.fld { input id=(of("code")) name=(of("code")) value=(own.code) maxlength="30" autocomplete="off"; }
            }
            div.one.wide {
                label for=(of("words")) { (say!(w, "standards-its-words")) }
                span.fld.wide { input id=(of("words")) name=(of("words")) value=(own.words) maxlength=(MOST_CHARACTERS) autocomplete="off"; }
            }
            div.one.wide { ul.ticklist {
                @for product in Product::ALL { li { label {
                    input type="checkbox" name=(of("product")) value=(product.word()) checked[own.products.contains(&product)];
                    span { (called(w, product)) }
                } } }
            } }
        }
    }
}
