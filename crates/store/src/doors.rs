//! What the program needs to let people in: codes, sessions, secrets; and its settings.

use crate::failure::StoreError;
use crate::line::{Row, Value};
use crate::store::Store;
use jiff::Timestamp;
use sha2::{Digest, Sha256};

/// Who is signed in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Session {
    /// What they may do, in a word of the one who asks.
    pub role: String,
    /// The investigation that they belong to.
    pub investigation: Option<i64>,
    /// The period that they belong to.
    pub period: Option<String>,
    /// The group that they belong to.
    pub group: Option<u32>,
    /// When they came in.
    pub made: Timestamp,
    /// When they were last seen.
    pub seen: Timestamp,
    /// When they have to come in anew.
    pub ends: Timestamp,
}

/// What is typed or scanned to come in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Code {
    /// As it is typed.
    pub code: String,
    /// What it opens, in a word of the one who asks.
    pub role: String,
    /// The investigation that it belongs to.
    pub investigation: i64,
    /// The period that it belongs to.
    pub period: Option<String>,
    /// The group that it belongs to.
    pub group: Option<u32>,
    /// When it was made.
    pub made: Timestamp,
    /// When it opens nothing any more.
    pub ends: Option<Timestamp>,
}

const SESSION: &str = "select role, investigation, period, grp, made, seen, ends from session \
     where token_hash = $1 and ends > $2";
const CODE: &str =
    "select code, role, investigation, period, grp, made, ends from code where code = $1";
const CODES: &str = "select code, role, investigation, period, grp, made, ends from code \
     where investigation = $1 order by made, code";

/// Sessions.
impl Store {
    /// Keeps a session. Only the SHA-256 of its token is stored.
    ///
    /// # Errors
    /// Why it was not kept.
    pub fn keep_session(&self, token: &str, session: &Session) -> Result<(), StoreError> {
        let (hash, session) = (hash(token), session.clone());
        self.write(move |line| {
            line.run(
                "insert into session (token_hash, role, investigation, period, grp, made, seen, \
                 ends) values ($1, $2, $3, $4, $5, $6, $7, $8)",
                &[
                    hash.into(),
                    (&session.role).into(),
                    session.investigation.into(),
                    session.period.as_ref().into(),
                    session.group.into(),
                    session.made.as_microsecond().into(),
                    session.seen.as_microsecond().into(),
                    session.ends.as_microsecond().into(),
                ],
            )?;
            Ok(())
        })
    }

    /// The session of a token, if it has not ended.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn session(&self, token: &str, now: Timestamp) -> Result<Option<Session>, StoreError> {
        let with: [Value<'_>; 2] = [hash(token).into(), now.as_microsecond().into()];
        self.read(|line| line.first(SESSION, &with, |mut row| session(&mut row)))
    }

    /// Notes that a session was seen.
    ///
    /// # Errors
    /// Why it was not kept.
    pub fn see_session(&self, token: &str, now: Timestamp) -> Result<(), StoreError> {
        let hash = hash(token);
        self.write(move |line| {
            line.run(
                "update session set seen = $2 where token_hash = $1",
                &[hash.into(), now.as_microsecond().into()],
            )?;
            Ok(())
        })
    }

    /// Ends a session.
    ///
    /// # Errors
    /// Why it could not be ended.
    pub fn end_session(&self, token: &str) -> Result<(), StoreError> {
        let hash = hash(token);
        self.write(move |line| {
            line.run("delete from session where token_hash = $1", &[hash.into()])?;
            Ok(())
        })
    }

    /// Ends all sessions of a role within an investigation, or of one of its periods.
    ///
    /// # Errors
    /// Why they could not be ended.
    pub fn end_sessions(
        &self,
        investigation: i64,
        role: &str,
        period: Option<&str>,
    ) -> Result<(), StoreError> {
        let (role, period) = (role.to_owned(), period.map(str::to_owned));
        self.write(move |line| {
            let with: [Value<'_>; 2] = [investigation.into(), (&role).into()];
            match &period {
                None => line
                    .run("delete from session where investigation = $1 and role = $2", &with),
                Some(period) => {
                    let [investigation, role] = with;
                    line.run(
                        "delete from session where investigation = $1 and role = $2 \
                         and period = $3",
                        &[investigation, role, period.into()],
                    )
                }
            }?;
            Ok(())
        })
    }

    /// Takes out the sessions that have ended.
    ///
    /// # Errors
    /// Why it could not be done.
    pub fn sweep_sessions(&self, now: Timestamp) -> Result<(), StoreError> {
        self.write(move |line| {
            line.run("delete from session where ends <= $1", &[now.as_microsecond().into()])?;
            Ok(())
        })
    }
}

/// Codes.
impl Store {
    /// Keeps a code. Gives false, and keeps nothing, if it is taken.
    ///
    /// # Errors
    /// Why it was not kept.
    pub fn keep_code(&self, code: &Code) -> Result<bool, StoreError> {
        let code = code.clone();
        self.write(move |line| {
            let kept = line.run(
                "insert into code (code, role, investigation, period, grp, made, ends) \
                 values ($1, $2, $3, $4, $5, $6, $7) on conflict (code) do nothing",
                &[
                    (&code.code).into(),
                    (&code.role).into(),
                    code.investigation.into(),
                    code.period.as_ref().into(),
                    code.group.into(),
                    code.made.as_microsecond().into(),
                    code.ends.map(Timestamp::as_microsecond).into(),
                ],
            )?;
            Ok(kept == 1)
        })
    }

    /// What a code opens. Whether it has ended is for the one who asks to see.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn code(&self, code: &str) -> Result<Option<Code>, StoreError> {
        self.read(|line| line.first(CODE, &[code.into()], read_code))
    }

    /// All codes of an investigation, oldest first.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub fn codes(&self, investigation: i64) -> Result<Vec<Code>, StoreError> {
        self.read(|line| line.rows(CODES, &[investigation.into()], read_code))
    }

    /// Takes a code out, so that it opens nothing any more.
    ///
    /// # Errors
    /// Why it could not be taken out.
    pub fn drop_code(&self, code: &str) -> Result<(), StoreError> {
        self.take_out("delete from code where code = $1", code)
    }
}

/// Secrets and settings.
impl Store {
    /// Keeps a small named value, such as the hash of the passphrase, in place of what was there.
    ///
    /// # Errors
    /// Why it was not kept.
    pub fn keep_secret(&self, name: &str, value: &str) -> Result<(), StoreError> {
        self.put(
            "insert into secret (name, value) values ($1, $2) \
             on conflict (name) do update set value = excluded.value",
            name,
            value,
        )
    }

    /// A secret.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn secret(&self, name: &str) -> Result<Option<String>, StoreError> {
        self.named("select value from secret where name = $1", name)
    }

    /// Takes a secret out.
    ///
    /// # Errors
    /// Why it could not be taken out.
    pub fn drop_secret(&self, name: &str) -> Result<(), StoreError> {
        self.take_out("delete from secret where name = $1", name)
    }

    /// Keeps a setting in place of what was there.
    ///
    /// # Errors
    /// Why it was not kept.
    pub fn keep_setting(&self, name: &str, value: &str) -> Result<(), StoreError> {
        self.put(
            "insert into setting (name, value) values ($1, $2) \
             on conflict (name) do update set value = excluded.value",
            name,
            value,
        )
    }

    /// A setting.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        self.named("select value from setting where name = $1", name)
    }

    /// Takes a setting out.
    ///
    /// # Errors
    /// Why it could not be taken out.
    pub fn drop_setting(&self, name: &str) -> Result<(), StoreError> {
        self.take_out("delete from setting where name = $1", name)
    }

    fn take_out(&self, sql: &'static str, name: &str) -> Result<(), StoreError> {
        let name = name.to_owned();
        self.write(move |line| line.run(sql, &[name.into()]).map(|_| ()))
    }

    fn put(&self, sql: &'static str, name: &str, value: &str) -> Result<(), StoreError> {
        let (name, value) = (name.to_owned(), value.to_owned());
        self.write(move |line| {
            line.run(sql, &[(&name).into(), (&value).into()])?;
            Ok(())
        })
    }

    fn named(&self, sql: &'static str, name: &str) -> Result<Option<String>, StoreError> {
        self.read(|line| line.first(sql, &[name.into()], |mut row| row.text()))
    }
}

pub(crate) fn session(row: &mut Row) -> Result<Session, StoreError> {
    Ok(Session {
        role: row.text()?,
        investigation: row.maybe_int()?,
        period: row.maybe_text()?,
        group: row.maybe_u32()?,
        made: row.moment()?,
        seen: row.moment()?,
        ends: row.moment()?,
    })
}

fn read_code(mut row: Row) -> Result<Code, StoreError> {
    Ok(Code {
        code: row.text()?,
        role: row.text()?,
        investigation: row.int()?,
        period: row.maybe_text()?,
        group: row.maybe_u32()?,
        made: row.moment()?,
        ends: row.maybe_moment()?,
    })
}

fn hash(token: &str) -> String {
    Sha256::digest(token).iter().map(|byte| format!("{byte:02x}")).collect()
}
