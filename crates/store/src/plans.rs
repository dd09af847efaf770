//! Investigations and the versions of their plans.

use crate::failure::StoreError;
use crate::line::{Line, Row};
use crate::store::Store;
use jiff::Timestamp;

/// What an investigation is, from the day it is made. The three never mix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Kind {
    /// A class measures.
    Real,
    /// The teacher tries out the day with simulated groups.
    Rehearsal,
    /// School and readings are made up.
    Invented,
}

impl Kind {
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Real => "real",
            Self::Rehearsal => "rehearsal",
            Self::Invented => "invented",
        }
    }
}

/// An investigation on record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Investigation {
    /// Its number, from 1.
    pub id: i64,
    /// Its title.
    pub title: String,
    /// What it is.
    pub kind: Kind,
    /// When it was put on record.
    pub made: Timestamp,
}

const ALL: &str = "select id, title, kind, made from investigation order by id";

impl Store {
    /// All investigations in the order in which they were made.
    ///
    /// # Errors
    /// Why the record cannot be read.
    pub fn investigations(&self) -> Result<Vec<Investigation>, StoreError> {
        self.read(investigations)
    }

    /// Puts a new investigation on record.
    ///
    /// # Errors
    /// Why it was not kept.
    pub fn add_investigation(
        &self,
        title: &str,
        kind: Kind,
        now: Timestamp,
    ) -> Result<Investigation, StoreError> {
        let title = title.to_owned();
        self.write(move |line| {
            let last = line
                .first("select max(id) from investigation", &[], |mut row| row.maybe_int())?;
            let id = last.flatten().unwrap_or_default() + 1;
            line.run(
                "insert into investigation (id, title, kind, made) values ($1, $2, $3, $4)",
                &[id.into(), (&title).into(), kind.word().into(), now.as_microsecond().into()],
            )?;
            let read = "select id, title, kind, made from investigation where id = $1";
            let made = line.first(read, &[id.into()], investigation)?;
            made.ok_or(StoreError::NoInvestigation { id })
        })
    }

    /// Keeps a version of a plan as the text that was saved, and gives its number, from 1. The
    /// text of the newest version again is that version. What pilots found comes along.
    ///
    /// # Errors
    /// [`StoreError::NoInvestigation`]; or why it was not kept.
    pub fn save_plan(&self, id: i64, text: &str, now: Timestamp) -> Result<u32, StoreError> {
        let text = text.to_owned();
        self.write(move |line| {
            must_be_there(line, id)?;
            let Newest { version, body, lots, readings } = newest(line, id)?;
            if version > 0 && body == text {
                return Ok(version);
            }
            add(line, id, now, &Newest { version: version + 1, body: text, lots, readings })
        })
    }

    /// The text of one version of a plan.
    ///
    /// # Errors
    /// [`StoreError::NoPlan`]; or why it cannot be read.
    pub fn plan(&self, id: i64, version: u32) -> Result<String, StoreError> {
        let sql = "select body from plan where investigation = $1 and version = $2";
        let found = self
            .read(|line| line.first(sql, &[id.into(), version.into()], |mut row| row.text()))?;
        found.ok_or(StoreError::NoPlan { id, version })
    }

    /// The newest version of a plan; nothing where none was saved.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn newest_plan(&self, id: i64) -> Result<Option<String>, StoreError> {
        let newest = self.read(|line| newest(line, id))?;
        Ok((newest.version > 0).then_some(newest.body))
    }

    /// All versions of a plan with their texts, oldest first.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub fn plans(&self, id: i64) -> Result<Vec<(u32, String)>, StoreError> {
        self.read(|line| plans(line, id))
    }
}

/// The newest version with what pilots found; the number 0 where there is none.
#[derive(Default)]
pub(crate) struct Newest {
    pub(crate) version: u32,
    pub(crate) body: String,
    pub(crate) lots: String,
    pub(crate) readings: String,
}

pub(crate) fn newest(line: &mut Line, id: i64) -> Result<Newest, StoreError> {
    let sql = "select version, body, lots, readings from plan where investigation = $1 \
               order by version desc limit 1";
    let found = line.first(sql, &[id.into()], |mut row| {
        let version = number(row.int()?)?;
        let (body, lots, readings) = (row.text()?, row.text()?, row.text()?);
        Ok(Newest { version, body, lots, readings })
    })?;
    Ok(found.unwrap_or_default())
}

/// Adds a version and gives its number.
pub(crate) fn add(
    line: &mut Line,
    id: i64,
    now: Timestamp,
    new: &Newest,
) -> Result<u32, StoreError> {
    let sql = "insert into plan (investigation, version, body, saved, lots, readings) \
               values ($1, $2, $3, $4, $5, $6)";
    let Newest { version, body, lots, readings } = new;
    let saved = now.as_microsecond();
    let with =
        [id.into(), (*version).into(), body.into(), saved.into(), lots.into(), readings.into()];
    line.run(sql, &with)?;
    Ok(*version)
}

pub(crate) fn investigations(line: &mut Line) -> Result<Vec<Investigation>, StoreError> {
    line.rows(ALL, &[], investigation)
}

pub(crate) fn plans(line: &mut Line, id: i64) -> Result<Vec<(u32, String)>, StoreError> {
    let sql = "select version, body from plan where investigation = $1 order by version";
    line.rows(sql, &[id.into()], |mut row| Ok((number(row.int()?)?, row.text()?)))
}

/// Fails if there is no such investigation.
pub(crate) fn must_be_there(line: &mut Line, id: i64) -> Result<(), StoreError> {
    let sql = "select id from investigation where id = $1";
    let found = line.first(sql, &[id.into()], |mut row| row.int())?;
    found.map(|_| ()).ok_or(StoreError::NoInvestigation { id })
}

fn investigation(mut row: Row) -> Result<Investigation, StoreError> {
    let (id, title, kind) = (row.int()?, row.text()?, row.text()?);
    let kind = [Kind::Real, Kind::Rehearsal, Kind::Invented]
        .into_iter()
        .find(|known| known.word() == kind)
        .ok_or_else(|| StoreError::Damaged {
            place: "its tables".into(),
            what: format!("investigation {id} is “{kind}”"),
        })?;
    Ok(Investigation { id, title, kind, made: row.moment()? })
}

pub(crate) fn number(version: i64) -> Result<u32, StoreError> {
    u32::try_from(version).map_err(|_| StoreError::Damaged {
        place: "its tables".into(),
        what: format!("a plan has the version {version}"),
    })
}
