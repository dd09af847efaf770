//! A connection to either engine, seen the same way: numbered parameters, whole numbers and texts.
//!
//! All SQL outside this folder and `migrations/only_*` is understood by both engines.

#[cfg(feature = "postgres")]
mod server;
mod sqlite;
mod value;

#[cfg(feature = "postgres")]
pub(crate) use server::{LISTEN_FOR, Server};
pub(crate) use sqlite::{Lite, Whose, looks_like_a_database};
pub(crate) use value::{Row, Value};

use crate::failure::StoreError;

/// A connection.
pub(crate) enum Line {
    Sqlite(Lite),
    #[cfg(feature = "postgres")]
    Postgres(Box<Server>),
}

impl Line {
    /// Runs a statement and gives the number of rows that it touched.
    pub(crate) fn run(
        &mut self,
        sql: &'static str,
        with: &[Value<'_>],
    ) -> Result<u64, StoreError> {
        match self {
            Self::Sqlite(lite) => lite.run(sql, with),
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => server.run(sql, with),
        }
    }

    /// Every row of an answer, each turned into something.
    pub(crate) fn rows<T>(
        &mut self,
        sql: &'static str,
        with: &[Value<'_>],
        each: impl FnMut(Row) -> Result<T, StoreError>,
    ) -> Result<Vec<T>, StoreError> {
        match self {
            Self::Sqlite(lite) => lite.rows(sql, with, each),
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => server.rows(sql, with, each),
        }
    }

    /// The first row of an answer.
    pub(crate) fn first<T>(
        &mut self,
        sql: &'static str,
        with: &[Value<'_>],
        each: impl FnMut(Row) -> Result<T, StoreError>,
    ) -> Result<Option<T>, StoreError> {
        Ok(self.rows(sql, with, each)?.into_iter().next())
    }

    /// Runs several statements without parameters.
    pub(crate) fn script(&mut self, sql: &str) -> Result<(), StoreError> {
        match self {
            Self::Sqlite(lite) => lite.script(sql),
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => server.script(sql),
        }
    }

    /// Does all of `work` or nothing of it, and alone among all that write. When this returns
    /// without an error, it is on disk.
    pub(crate) fn alone<T>(
        &mut self,
        work: impl FnOnce(&mut Self) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        match self {
            // Taking the lock at once: a transaction that reads first cannot always write later.
            Self::Sqlite(lite) => lite.script("begin immediate")?,
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => server.begin_alone()?,
        }
        let done = work(self).and_then(|made| self.script("commit").map(|()| made));
        if done.is_err() {
            // The engine may have rolled back already; then there is nothing left to do.
            let _ = self.script("rollback");
        }
        done
    }

    /// Reads as if the record stood still.
    pub(crate) fn still<T>(
        &mut self,
        work: impl FnOnce(&mut Self) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        match self {
            Self::Sqlite(lite) => lite.script("begin")?,
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => {
                server.script("begin isolation level repeatable read read only")?;
            }
        }
        let done = work(self);
        let _ = self.script("rollback");
        done
    }

    /// Tells other programs on the same database of what will have been committed.
    pub(crate) fn tell(&mut self, what: &str) -> Result<(), StoreError> {
        match self {
            Self::Sqlite(_) => {
                // Nobody else has the file open.
                let _ = what;
                Ok(())
            }
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => server.tell(what),
        }
    }

    /// The file, if it is one.
    pub(crate) const fn lite(&mut self) -> Option<&mut Lite> {
        match self {
            Self::Sqlite(lite) => Some(lite),
            #[cfg(feature = "postgres")]
            Self::Postgres(_) => None,
        }
    }

    /// Whether the connection can still be used. A server is asked.
    pub(crate) fn is_alive(&mut self) -> bool {
        match self {
            Self::Sqlite(_) => true,
            #[cfg(feature = "postgres")]
            Self::Postgres(server) => server.is_alive(),
        }
    }
}
