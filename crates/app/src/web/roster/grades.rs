//! Grades of a period as a file, made now.

use crate::desk::room::roster::{GradeFile, gradebook};
use crate::web::head::file_name;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};

/// The file of that name.
pub(in crate::web) async fn grades(
    State(web): State<Web>,
    Path((id, period, file)): Path<(i64, String, String)>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let file = GradeFile::of(&file).ok_or(Trouble::NotFound)?;
    let made = web.wait(move |shelf, now| {
        let room = shelf.room(id, now)?;
        let book = gradebook(&room, w, &period, now)?.ok_or(Trouble::NotFound)?;
        let bytes = book.file(file).map_err(|why| Trouble::Wrong(why.to_string()))?;
        Ok::<_, Trouble>((room.kind, book.name(file), bytes))
    });
    let (kind, name, bytes) = made.await?;
    let name = file_name(kind, &name);
    let headers = [
        (header::CONTENT_TYPE, file.kind().to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((headers, bytes).into_response())
}
