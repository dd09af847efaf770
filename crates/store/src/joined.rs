//! Sessions seen from the side of the one who lets people in: all of them, and ending them without
//! their tokens.

use crate::doors::{Session, session};
use crate::failure::StoreError;
use crate::store::Store;
use jiff::Timestamp;

const ALL: &str = "select role, investigation, period, grp, made, seen, ends, token_hash \
     from session where ends > $1 order by token_hash";

impl Store {
    /// All sessions that have not ended, each with the SHA-256 of its token.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub fn sessions(&self, now: Timestamp) -> Result<Vec<(String, Session)>, StoreError> {
        self.read(|line| {
            line.rows(ALL, &[now.as_microsecond().into()], |mut row| {
                let session = session(&mut row)?;
                Ok((row.text()?, session))
            })
        })
    }

    /// Ends the session whose token has this SHA-256.
    ///
    /// # Errors
    /// Why it could not be ended.
    pub fn end_session_of(&self, token_hash: &str) -> Result<(), StoreError> {
        let hash = token_hash.to_owned();
        self.write(move |line| {
            line.run("delete from session where token_hash = $1", &[(&hash).into()])?;
            Ok(())
        })
    }

    /// Ends all sessions of a role, in every investigation.
    ///
    /// # Errors
    /// Why they could not be ended.
    pub fn end_sessions_of_role(&self, role: &str) -> Result<(), StoreError> {
        let role = role.to_owned();
        self.write(move |line| {
            line.run("delete from session where role = $1", &[(&role).into()])?;
            Ok(())
        })
    }
}
