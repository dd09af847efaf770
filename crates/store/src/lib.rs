//! What the program keeps on disk.
//!
//! [`Store`] is the append-only record of class days, on a SQLite file or a PostgreSQL database,
//! with the words that can be deleted and what the program needs to let people in. [`written`]
//! holds files written for a person, which are never overwritten once the person has changed
//! them.
//!
//! One thread writes: it takes what has gathered, commits it in one go, and only then tells those
//! who wait. What has been acknowledged is on disk.

mod append;
mod backup;
#[cfg(feature = "postgres")]
mod carry;
mod check;

mod clean;
mod doors;
mod export;

mod failure;
mod folder;
mod joined;
mod line;
#[cfg(feature = "postgres")]
mod listen;
mod migrate;
mod notice;
mod pilots;
mod plans;
mod pool;
mod restore;

mod store;
mod summary;
mod system;
mod wire;
mod words;
mod writer;
pub mod written;

pub use append::Receipt;
pub use backup::Backup;
pub use check::Checked;
pub use doors::{Code, Session};
pub use failure::StoreError;
pub use pilots::PilotVersion;
pub use plans::{Investigation, Kind};
pub use restore::Restored;
pub use store::{Place, Store};
pub use summary::Summary;
pub use words::{Forgotten, Unreached};
