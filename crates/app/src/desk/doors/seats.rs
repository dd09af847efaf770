//! Sessions: who is in, from which moment, until when.

use super::{Doors, Token, chance};
use crate::desk::DeskError;
use barm_store::Session;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp, ToSpan};

/// The part in which somebody comes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) enum Part {
    /// The teacher.
    Teacher,
    /// A group.
    Group,
    /// The wall page of a period.
    Wall,
    /// The walk-round page of a period.
    Round,
    /// An aide.
    Aide,
}

impl Part {
    /// All of them.
    pub(crate) const ALL: [Self; 5] =
        [Self::Teacher, Self::Group, Self::Wall, Self::Round, Self::Aide];

    /// The word that stands in the store.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Teacher => "teacher",
            Self::Group => "group",
            Self::Wall => "wall",
            Self::Round => "round",
            Self::Aide => "aide",
        }
    }

    fn of(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|part| part.word() == word)
    }
}

/// Somebody who is in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Seat {
    /// As what.
    pub(crate) part: Part,
    /// In which investigation; the teacher is in all.
    pub(crate) investigation: Option<i64>,
    /// In which period.
    pub(crate) period: Option<String>,
    /// In which group.
    pub(crate) group: Option<u32>,
    /// Until when.
    pub(crate) ends: Timestamp,
}

/// A device that joined, as the teacher sees it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Joined {
    /// What to name it by when it is put out; says nothing about its token.
    pub(crate) name: String,
    /// As what, and where.
    pub(crate) seat: Seat,
    /// Since when.
    pub(crate) since: Timestamp,
    /// When it was last heard of.
    pub(crate) seen: Timestamp,
}

/// A teacher is asked again after so long.
const TEACHER: SignedDuration = SignedDuration::from_hours(12);

impl Seat {
    /// The teacher's.
    pub(super) fn teacher(now: Timestamp) -> Self {
        let ends = now.checked_add(TEACHER).unwrap_or(now);
        Self { part: Part::Teacher, investigation: None, period: None, group: None, ends }
    }

    fn of(session: &Session) -> Option<Self> {
        Some(Self {
            part: Part::of(&session.role)?,
            investigation: session.investigation,
            period: session.period.clone(),
            group: session.group,
            ends: session.ends,
        })
    }
}

/// Midnight at the end of the day, where the school is.
pub(super) fn end_of_day(zone: Option<&str>, now: Timestamp) -> Timestamp {
    let zone = zone.and_then(|zone| TimeZone::get(zone).ok()).unwrap_or(TimeZone::UTC);
    let midnight = now.to_zoned_datetime(zone).tomorrow().and_then(|next| next.start_of_day());
    let midnight = midnight.map(|midnight| midnight.timestamp());
    midnight.or_else(|_| now.checked_add(12.hours())).unwrap_or(now)
}

impl Doors {
    /// Gives somebody a seat and the token that proves it. Waits for the disk.
    pub(super) fn seat(&self, seat: &Seat, now: Timestamp) -> Result<Token, DeskError> {
        let token = Token::new()?;
        let session = Session {
            role: seat.part.word().to_owned(),
            investigation: seat.investigation,
            period: seat.period.clone(),
            group: seat.group,
            made: now,
            seen: now,
            ends: seat.ends,
        };
        self.store.keep_session(token.as_str(), &session)?;
        let mut inside = self.inside();
        inside.seats.retain(|_, session| session.ends > now);
        inside.seats.insert(chance::hash(token.as_str()), session);
        Ok(token)
    }

    /// The seat of a token in a part, if it has not ended. Waits for nothing.
    pub(crate) fn who(&self, part: Part, token: &str, now: Timestamp) -> Option<Seat> {
        let mut inside = self.inside();
        let session = inside.seats.get_mut(&chance::hash(token))?;
        let seat = Seat::of(session)?;
        let right = seat.part == part && seat.ends > now;
        if right {
            session.seen = now;
        }
        right.then_some(seat)
    }

    /// Ends the session of a token. Waits for the disk.
    pub(crate) fn leave(&self, token: &str) -> Result<(), DeskError> {
        self.inside().seats.remove(&chance::hash(token));
        self.ended.send_modify(|times| *times += 1);
        Ok(self.store.end_session(token)?)
    }

    /// Who has joined an investigation, newest first.
    pub(crate) fn joined(&self, investigation: i64, now: Timestamp) -> Vec<Joined> {
        let inside = self.inside();
        let mut joined: Vec<Joined> = inside
            .seats
            .iter()
            .filter(|(_, of)| of.investigation == Some(investigation) && of.ends > now)
            .filter_map(|(hash, session)| {
                let seat = Seat::of(session)?;
                let name = chance::hash(hash)[..16].to_owned();
                Some(Joined { name, seat, since: session.made, seen: session.seen })
            })
            .collect();
        joined.sort_by(|one, two| (two.since, &two.name).cmp(&(one.since, &one.name)));
        joined
    }

    /// Puts a device out; false if it is out already. Waits for the disk.
    pub(crate) fn put_out(&self, investigation: i64, name: &str) -> Result<bool, DeskError> {
        let hash = {
            let inside = self.inside();
            let mut own = inside.seats.iter().filter(|(hash, session)| {
                session.investigation == Some(investigation)
                    && chance::hash(hash)[..16] == *name
            });
            own.next().map(|(hash, _)| hash.clone())
        };
        let Some(hash) = hash else { return Ok(false) };
        self.inside().seats.remove(&hash);
        self.ended.send_modify(|times| *times += 1);
        self.store.end_session_of(&hash)?;
        Ok(true)
    }

    /// Ends all sessions of teachers. Waits for the disk.
    pub(super) fn put_teachers_out(&self) -> Result<(), DeskError> {
        self.inside().seats.retain(|_, session| session.role != Part::Teacher.word());
        self.ended.send_modify(|times| *times += 1);
        Ok(self.store.end_sessions_of_role(Part::Teacher.word())?)
    }

    /// Ends the sessions that a code gave. Waits for the disk.
    pub(super) fn put_out_all(
        &self,
        investigation: i64,
        part: Part,
        period: Option<&str>,
    ) -> Result<(), DeskError> {
        self.inside().seats.retain(|_, session| {
            session.role != part.word()
                || session.investigation != Some(investigation)
                || period.is_some_and(|period| session.period.as_deref() != Some(period))
        });
        self.ended.send_modify(|times| *times += 1);
        Ok(self.store.end_sessions(investigation, part.word(), period)?)
    }
}
