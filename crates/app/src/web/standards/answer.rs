//! What the page of standards answers.

use super::page;
use crate::desk::room::standards::{StandardsView, keep_wording, standards_view, wording};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use barm_domain::standards::{OwnStandard, Product, STANDARDS, Worded, WordedFault};

fn shown(
    w: Wording,
    device: &Device,
    view: &StandardsView,
    done: Option<&str>,
    faults: &[WordedFault],
) -> Response {
    let body = page::page(w, view, &device.form_field(), done, faults);
    let title = say!(w, "standards-title", title = &view.title);
    let styles = ["plan.css", "standards.css"];
    let status =
        if faults.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    (status, sheet_with(w.code(), &title, &styles, &[], &body)).into_response()
}

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| standards_view(&*shelf.room(id, now)?, None)).await?;
    Ok(shown(w, &device, &view, None, &[]))
}

/// Keeps the words as they were typed, or goes back to the gists; with faults nothing is kept and they are said.
pub(in crate::web) async fn save(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let again = fields.iter().any(|(name, value)| name == "do" && value == "again");
    let (view, faults) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            if again {
                keep_wording(&room, None)?;
                return Ok((standards_view(&room, None)?, Vec::new()));
            }
            let typed = typed(&wording(&room)?, &fields);
            let faults = typed.faults();
            if faults.is_empty() {
                keep_wording(&room, Some(&typed))?;
            }
            Ok::<_, DeskError>((standards_view(&room, Some(typed))?, faults))
        })
        .await?;
    let said = faults.is_empty().then(|| say!(w, "standards-saved"));
    Ok(shown(w, &device, &view, said.as_deref(), &faults))
}

/// What the form says. Words that are blank or the gist itself are no words of the teacher's; a standard of the teacher's
/// own whose code is blank is taken out.
fn typed(before: &Worded, fields: &[(String, String)]) -> Worded {
    let of = |name: &str| {
        let found = fields.iter().find(|(field, _)| field == name);
        found.map(|(_, value)| value.trim().to_owned()).unwrap_or_default()
    };
    let mut worded = Worded::default();
    for standard in &STANDARDS {
        let words = of(&format!("words-{}", standard.code));
        if !words.is_empty() && words != standard.gist {
            worded.words.insert(standard.code.to_owned(), words);
        }
        if !fields.iter().any(|(name, value)| name == "use" && value == standard.code) {
            worded.left_out.insert(standard.code.to_owned());
        }
    }
    // One more than there were: the empty row of the page.
    for at in 0..=before.own.len() {
        let products = Product::ALL.into_iter().filter(|product| {
            let name = format!("own-{at}-product");
            fields.iter().any(|(field, value)| *field == name && value == product.word())
        });
        let (code, words) = (of(&format!("own-{at}-code")), of(&format!("own-{at}-words")));
        let products: Vec<Product> = products.collect();
        let is_new = at == before.own.len();
        if code.is_empty() && (!is_new || words.is_empty()) {
            continue;
        }
        worded.own.push(OwnStandard { code, words, products });
    }
    worded
}
