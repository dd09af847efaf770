//! How an entry lies in a row: columns for what is asked for, JSON for the rest.
//!
//! The layouts here are frozen. A record that was written years ago must open, so a change of
//! `What` gets a new layout with a new number beside the old one, never in its place.

mod opened;
mod parts;
mod shown;
mod what;

use crate::failure::StoreError;
use crate::line::{Row, Value};
use barm_domain::record::{Entry, Key, Subject, Who};

pub(crate) use shown::line as shown;
pub(crate) use what::KINDS;

/// An entry in the form in which it is kept.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Kept {
    pub(crate) key: Key,
    subject: &'static str,
    period: Option<String>,
    group: Option<u32>,
    bag: Option<String>,
    kind: &'static str,
    measured: i64,
    arrived: i64,
    who: &'static str,
    who_period: Option<String>,
    who_group: Option<u32>,
    shape: i64,
    body: String,
}

/// Clocks of devices are set right anew with each sending, so that the same entry may come again
/// with another time. Up to this far (µs) it is the same.
const SAME_TIME: u64 = 60_000_000;

impl Kept {
    /// Writes an entry down.
    ///
    /// # Errors
    /// [`StoreError::Unwritable`] if a number in it is no number.
    pub(crate) fn of(entry: &Entry) -> Result<Self, StoreError> {
        let Entry { key, subject, what, measured, arrived, who } = entry;
        let (kind, body) = what::body(what)
            .map_err(|error| StoreError::Unwritable { key: *key, what: error.to_string() })?;
        let newest = KINDS.iter().find(|(known, _)| *known == kind);
        let (subject, period, group, bag) = match subject {
            Subject::Investigation => ("investigation", None, None, None),
            Subject::Period(period) => ("period", Some(period.clone()), None, None),
            Subject::Group { period, group } => {
                ("group", Some(period.clone()), Some(*group), None)
            }
            Subject::Bag(code) => ("bag", None, None, Some(code.to_string())),
        };
        let (who, who_period, who_group) = match who {
            Who::Teacher => ("teacher", None, None),
            Who::Group { period, group } => ("group", Some(period.clone()), Some(*group)),
            Who::Aide => ("aide", None, None),
            Who::Import => ("import", None, None),
            Who::Program => ("program", None, None),
        };
        Ok(Self {
            key: *key,
            subject,
            period,
            group,
            bag,
            kind,
            measured: measured.as_microsecond(),
            arrived: arrived.as_microsecond(),
            who,
            who_period: who_period.map(|period| period.to_string()),
            who_group,
            shape: newest.map_or(1, |(_, shape)| *shape),
            body,
        })
    }

    /// The cells, after the entry's place in the record and its investigation.
    pub(crate) fn cells(&self, seq: i64, investigation: i64) -> [Value<'_>; 15] {
        [
            seq.into(),
            investigation.into(),
            self.key.to_string().into(),
            self.subject.into(),
            self.period.as_ref().into(),
            self.group.into(),
            self.bag.as_ref().into(),
            self.kind.into(),
            self.measured.into(),
            self.arrived.into(),
            self.who.into(),
            self.who_period.as_ref().into(),
            self.who_group.into(),
            self.shape.into(),
            self.body.as_str().into(),
        ]
    }

    /// Whether an entry on record says the same. When it arrived does not matter.
    pub(crate) fn says_the_same_as(&self, there: &Entry) -> bool {
        let Ok(mut there) = Self::of(there) else { return false };
        if self.measured.abs_diff(there.measured) > SAME_TIME {
            return false;
        }
        there.measured = self.measured;
        there.arrived = self.arrived;
        *self == there
    }
}

/// Why a row is not an entry.
pub(crate) enum Unread {
    /// The kind or its layout is not known here: it is newer.
    Newer { seq: i64, kind: String, shape: i64 },
    /// Something else.
    Failed(StoreError),
}

impl From<StoreError> for Unread {
    fn from(error: StoreError) -> Self {
        Self::Failed(error)
    }
}

/// Reads an entry from its place in the record and the columns from `key` on.
pub(crate) fn read(mut row: Row) -> Result<(i64, Entry), Unread> {
    let seq = row.int()?;
    let key = row.text()?;
    let subject = row.text()?;
    let (period, group, bag) = (row.maybe_text()?, row.maybe_u32()?, row.maybe_text()?);
    let kind = row.text()?;
    let (measured, arrived) = (row.moment()?, row.moment()?);
    let who = row.text()?;
    let (who_period, who_group) = (row.maybe_text()?, row.maybe_u32()?);
    let (shape, body) = (row.int()?, row.text()?);
    let unreadable =
        |what: String| Unread::Failed(StoreError::Unreadable { seq, kind: kind.clone(), what });
    let Some(what) = what::read(&kind, shape, &body) else {
        return Err(Unread::Newer { seq, kind, shape });
    };
    let what = what.map_err(unreadable)?;
    let subject = match (subject.as_str(), period, group, bag) {
        ("investigation", ..) => Subject::Investigation,
        ("period", Some(period), ..) => Subject::Period(period),
        ("group", Some(period), Some(group), _) => Subject::Group { period, group },
        ("bag", _, _, Some(code)) => {
            Subject::Bag(code.parse().map_err(|e| unreadable(format!("{e}")))?)
        }
        _ => return Err(unreadable("it is about nothing".into())),
    };
    let who = match (who.as_str(), who_period, who_group) {
        ("teacher", ..) => Who::Teacher,
        ("group", Some(period), Some(group)) => Who::Group { period: period.into(), group },
        ("aide", ..) => Who::Aide,
        ("import", ..) => Who::Import,
        ("program", ..) => Who::Program,
        _ => return Err(unreadable("nobody says so".into())),
    };
    let key = key.parse().map_err(|e| unreadable(format!("{e}")))?;
    Ok((seq, Entry { key, subject, what, measured, arrived, who }))
}
