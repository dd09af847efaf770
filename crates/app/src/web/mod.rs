//! The web face: parse, call the desk, show what it says.
//!
//! Every address stands in [`routes::table`] with who may call it; the router is made of that table
//! and of nothing else. Nothing here computes, reads the record or knows a file.

mod address;
mod again;
mod aide;
mod approve;
mod assets;
mod bench;
mod caller;
mod claim;
mod claims;
#[cfg(test)]
mod class_day;
mod cookies;
mod devices;
mod enter;
mod events;
mod every_bag;
mod group;
mod guard;
mod head;
mod headers;
mod host;
mod join;
mod join_page;
mod kept;
mod log;
mod marks;
mod network;
mod origin;
mod page;
mod pilot;
mod plan;
mod plan_together;
mod prepare;
mod print;
#[cfg(test)]
mod proof;
mod rehearse;
mod results;
mod roster;
mod round;
mod routes;
mod ruler;
mod run;
mod serve;
mod sign_in;
mod signs;
mod soft;
mod standards;
mod start;
mod state;
mod take;
mod talk;
mod time;
mod tls;
mod trouble;
mod wall;
mod words;
mod years;

pub(crate) use serve::{Ask, serve};
pub(crate) use state::Reach;
pub(crate) use tls::must_be_usable;
