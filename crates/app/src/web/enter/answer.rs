//! What the addresses of the grid answer.

use super::page::{self, Around};
use super::said;
use crate::desk::room::benches::group_name;
use crate::desk::room::sheets::{
    State as Cell, Typed, TypedCell, TypedZero, first_sheet, judge, sheet_named, sheet_view,
};
use crate::desk::say;
use crate::web::address::segment;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::Json;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use serde::{Deserialize, Serialize};

/// The address of a sheet.
pub(super) fn home(id: i64, period: &str, group: u32) -> String {
    format!("/i/{id}/enter/{}/{group}", segment(period))
}

/// The sheet to begin with, or the one whose code was typed; an unknown code says so there.
pub(in crate::web) async fn first(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(named): Query<Named>,
    Words(w): Words,
) -> Result<Redirect, Trouble> {
    let room = web.room(id).await?;
    let said = named.sheet.as_deref().map(str::trim).filter(|said| !said.is_empty());
    let found = said.and_then(|said| room.read(|scene| sheet_named(scene, said)));
    let unknown = if said.is_some() && found.is_none() { "?unknown=1" } else { "" };
    let first = found.or_else(|| room.read(first_sheet));
    let (period, group) = first.ok_or_else(|| Trouble::Wrong(say!(w, "paper-no-bags")))?;
    Ok(Redirect::to(&(home(id, &period, group) + unknown)))
}

/// A sheet as it is named on paper.
#[derive(Deserialize)]
pub(in crate::web) struct Named {
    sheet: Option<String>,
}

/// What the address may bring: how many heights were saved just now, or that no sheet has the code
/// that was typed.
#[derive(Deserialize)]
pub(in crate::web) struct Asked {
    saved: Option<usize>,
    corrected: Option<usize>,
    unknown: Option<u8>,
}

/// The page of a sheet.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path((id, period, group)): Path<(i64, String, u32)>,
    Query(asked): Query<Asked>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    room.foresee();
    let now = web.now();
    let nothing = Typed::default();
    let view = room.read(|scene| {
        let view = sheet_view(scene, &period, group)?;
        Some((view, judge(scene, w, &period, group, &nothing, now)?))
    });
    let (view, judged) = view.ok_or(Trouble::NotFound)?;
    let done = asked.saved.map(|saved| {
        let corrected = asked.corrected.unwrap_or_default();
        say!(w, "paper-saved", count = saved, corrected = corrected)
    });
    let unknown = asked.unknown.is_some();
    let around = Around { said: said::said(w, &judged), done, unknown };
    let body = page::page(w, &view, &around);
    let title = say!(w, "paper-title", period = &view.period, group = group_name(group));
    let page = sheet_with(w.code(), &title, &["plan.css", "enter.css"], &["enter.js"], &body);
    Ok(page.into_response())
}

/// What the page sends.
#[derive(Deserialize)]
pub(in crate::web) struct Sent {
    #[serde(default)]
    cells: Vec<SentCell>,
    #[serde(default)]
    zeros: Vec<SentZero>,
}

#[derive(Deserialize)]
struct SentCell {
    key: String,
    bag: String,
    minute: u32,
    text: String,
}

#[derive(Deserialize)]
struct SentZero {
    bag: String,
    text: String,
}

impl Sent {
    fn typed(self) -> Typed {
        let cell = |cell: SentCell| {
            let SentCell { key, bag, minute, text } = cell;
            TypedCell { key, bag, minute, text }
        };
        let zero = |SentZero { bag, text }: SentZero| TypedZero { bag, text };
        Typed {
            cells: self.cells.into_iter().map(cell).collect(),
            zeros: self.zeros.into_iter().map(zero).collect(),
        }
    }
}

/// What is said of typed cells.
#[derive(Serialize)]
pub(in crate::web) struct Looked {
    cells: Vec<LookedCell>,
    /// What is said beneath the grid, as markup.
    said: String,
}

#[derive(Serialize)]
struct LookedCell {
    bag: String,
    minute: u32,
    mm: Option<f64>,
    /// A word for the style: blank, new, there, fix, bad.
    state: &'static str,
    /// Whether it looks odd.
    odd: bool,
}

const fn word(state: &Cell) -> &'static str {
    match state {
        Cell::Blank => "blank",
        Cell::New => "new",
        Cell::There => "there",
        Cell::Corrects(_) | Cell::Chooses => "fix",
        Cell::NotCounted(_) | Cell::Wrong(_) => "bad",
    }
}

/// Says what typed cells mean, and keeps nothing.
pub(in crate::web) async fn look(
    State(web): State<Web>,
    Path((id, period, group)): Path<(i64, String, u32)>,
    Words(w): Words,
    Json(sent): Json<Sent>,
) -> Result<Json<Looked>, Trouble> {
    let typed = sent.typed();
    let judged = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            Ok::<_, Trouble>(room.read(|scene| judge(scene, w, &period, group, &typed, now)))
        })
        .await?;
    let judged = judged.ok_or(Trouble::NotFound)?;
    let is_odd = |bag: &str, minute: u32| {
        judged.odd.iter().any(|(code, at, ..)| code.to_string() == bag && *at == Some(minute))
    };
    let cells = judged.cells.iter().map(|cell| LookedCell {
        odd: is_odd(&cell.bag, cell.minute),
        bag: cell.bag.clone(),
        minute: cell.minute,
        mm: cell.mm,
        state: word(&cell.state),
    });
    Ok(Json(Looked { cells: cells.collect(), said: said::said(w, &judged).into_string() }))
}

/// What became of saving.
#[derive(Serialize)]
pub(in crate::web) struct Saved {
    /// Heights that are on record now.
    saved: usize,
    /// How many of them are corrections.
    corrected: usize,
    /// Bag and minute of every cell that nothing is left to do with.
    done: Vec<(String, u32)>,
    /// The next sheet that is not full.
    next: Option<String>,
    /// What is said beneath the grid, as markup.
    said: String,
}

/// Puts typed cells on record; answers when they are on disk.
pub(in crate::web) async fn save(
    State(web): State<Web>,
    Path((id, period, group)): Path<(i64, String, u32)>,
    Words(w): Words,
    Json(sent): Json<Sent>,
) -> Result<Json<Saved>, Trouble> {
    let room = web.room(id).await?;
    let typed = sent.typed();
    let now = web.now();
    let judged = room.read(|scene| judge(scene, w, &period, group, &typed, now));
    let mut judged = judged.ok_or(Trouble::NotFound)?;
    let entries = std::mem::take(&mut judged.entries);
    if !entries.is_empty() {
        room.enter(entries).await?;
    }
    let count = |of: fn(&Cell) -> bool| judged.cells.iter().filter(|c| of(&c.state)).count();
    let corrected = count(|state| matches!(state, Cell::Corrects(_) | Cell::Chooses));
    let fresh = count(|state| matches!(state, Cell::New | Cell::NotCounted(_)));
    let done = judged.cells.iter().filter(|cell| !matches!(cell.state, Cell::Wrong(_)));
    let next = room.read(|scene| sheet_view(scene, &period, group)?.next);
    Ok(Json(Saved {
        saved: fresh + corrected,
        corrected,
        done: done.map(|cell| (cell.bag.clone(), cell.minute)).collect(),
        next: next.map(|(period, group)| home(id, &period, group)),
        said: said::said(w, &judged).into_string(),
    }))
}
