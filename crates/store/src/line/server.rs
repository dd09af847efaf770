//! The PostgreSQL side of a connection.

use super::{Row, Value};
use crate::failure::StoreError;
use crate::system;
use postgres::types::private::BytesMut;
use postgres::types::{IsNull, ToSql, Type, to_sql_checked};
use postgres::{Client, NoTls, Statement};
use std::collections::HashMap;
use std::error::Error;
use std::time::Duration;

/// The channel on which every process that uses the database tells of its commits.
pub(crate) const LISTEN_FOR: &str = "barm_entry";

/// How long a server may take to say that it is there.
const PATIENCE: Duration = Duration::from_secs(5);

/// One at a time may write; the number is the program's own ("Barm").
const ALONE: &str = "begin; select pg_advisory_xact_lock(1113682541)";

/// A connection to a PostgreSQL server.
pub(crate) struct Server {
    pub(crate) client: Client,
    /// Where it leads, without user or password.
    pub(crate) place: String,
    prepared: HashMap<&'static str, Statement>,
}

impl Server {
    /// Connects; every commit waits for the server's disk.
    pub(crate) fn open(address: &str) -> Result<Self, StoreError> {
        let place = place(address);
        let explain = |error: postgres::Error| explain(&place, &error);
        let mut client = Client::connect(address, NoTls).map_err(explain)?;
        client.batch_execute("set synchronous_commit to on").map_err(explain)?;
        Ok(Self { client, place, prepared: HashMap::new() })
    }

    /// Hears of all commits from now on.
    pub(crate) fn listen(&mut self) -> Result<(), StoreError> {
        self.script(&format!("listen {LISTEN_FOR}"))
    }

    /// Every investigation with the last place of its record.
    pub(crate) fn last_places(&mut self) -> Result<Vec<(i64, i64)>, StoreError> {
        let sql = "select investigation, max(seq) from entry group by investigation";
        self.rows(sql, &[], |mut row| Ok((row.int()?, row.int()?)))
    }

    pub(super) fn begin_alone(&mut self) -> Result<(), StoreError> {
        self.script(ALONE)
    }

    pub(super) fn is_alive(&mut self) -> bool {
        self.client.is_valid(PATIENCE).is_ok()
    }

    pub(super) fn run(
        &mut self,
        sql: &'static str,
        with: &[Value<'_>],
    ) -> Result<u64, StoreError> {
        let statement = self.statement(sql)?;
        let with: Vec<&(dyn ToSql + Sync)> = with.iter().map(|v| v as _).collect();
        self.client.execute(&statement, &with).map_err(|error| explain(&self.place, &error))
    }

    pub(super) fn rows<T>(
        &mut self,
        sql: &'static str,
        with: &[Value<'_>],
        mut each: impl FnMut(Row) -> Result<T, StoreError>,
    ) -> Result<Vec<T>, StoreError> {
        let statement = self.statement(sql)?;
        let with: Vec<&(dyn ToSql + Sync)> = with.iter().map(|v| v as _).collect();
        let explain = |error: postgres::Error| explain(&self.place, &error);
        let rows = self.client.query(&statement, &with).map_err(explain)?;
        let mut made = Vec::with_capacity(rows.len());
        for row in rows {
            let cells = row.columns().iter().enumerate().map(|(at, column)| {
                Ok(if *column.type_() == Type::INT8 {
                    row.try_get::<_, Option<i64>>(at).map_err(explain)?.into()
                } else {
                    row.try_get::<_, Option<String>>(at).map_err(explain)?.into()
                })
            });
            made.push(each(Row::new(cells.collect::<Result<_, StoreError>>()?))?);
        }
        Ok(made)
    }

    pub(super) fn script(&mut self, sql: &str) -> Result<(), StoreError> {
        self.client.batch_execute(sql).map_err(|error| explain(&self.place, &error))
    }

    pub(super) fn tell(&mut self, what: &str) -> Result<(), StoreError> {
        self.run("select pg_notify('barm_entry', $1)", &[what.into()]).map(|_| ())
    }

    fn statement(&mut self, sql: &'static str) -> Result<Statement, StoreError> {
        if let Some(known) = self.prepared.get(sql) {
            return Ok(known.clone());
        }
        let made = self.client.prepare(sql).map_err(|error| explain(&self.place, &error))?;
        self.prepared.insert(sql, made.clone());
        Ok(made)
    }
}

impl ToSql for Value<'_> {
    fn to_sql(
        &self,
        kind: &Type,
        out: &mut BytesMut,
    ) -> Result<IsNull, Box<dyn Error + Sync + Send>> {
        match self {
            Value::Int(number) => number.to_sql(kind, out),
            Value::Text(text) => text.as_ref().to_sql(kind, out),
            Value::Null => Ok(IsNull::Yes),
        }
    }

    fn accepts(kind: &Type) -> bool {
        <i64 as ToSql>::accepts(kind) || <&str as ToSql>::accepts(kind)
    }

    to_sql_checked!();
}

/// The address as it can be shown: no user, no password.
fn place(address: &str) -> String {
    let shown = address.parse::<postgres::Config>().ok().map(|config| {
        let hosts: Vec<String> = config.get_hosts().iter().map(system::host).collect();
        format!("{} on {}", config.get_dbname().unwrap_or("the database"), hosts.join(", "))
    });
    shown.unwrap_or_else(|| "the database".into())
}

fn explain(place: &str, error: &postgres::Error) -> StoreError {
    let place = place.to_owned();
    let Some(server) = error.as_db_error() else {
        // The library's own words leave out what the system said.
        let said =
            error.source().map_or_else(|| error.to_string(), |s| format!("{error}: {s}"));
        return StoreError::Engine { place, said };
    };
    match server.code() {
        code if *code == postgres::error::SqlState::DISK_FULL => StoreError::DiskFull { place },
        _ => StoreError::Engine { place, said: server.message().to_owned() },
    }
}
