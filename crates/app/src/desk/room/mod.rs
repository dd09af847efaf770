//! The live room: the record of an investigation while pages look at it.
//!
//! A [`Shelf`] holds the data folder; a [`Room`] is one investigation of it; a [`Scene`] is what
//! a page's view is made from, at one moment. What is entered is on disk before anybody sees it.

#[cfg(test)]
pub(crate) mod acted;
pub(crate) mod again;
pub(crate) mod aide;
mod all_words;
pub(crate) mod backups;
pub(crate) mod bench;
pub(crate) mod benches;
pub(crate) mod claims;
mod day;
mod doubts;
mod entered;
pub(crate) mod every_bag;
pub(crate) mod foretold;
pub(crate) mod hour;
pub(crate) mod kept_words;
pub(crate) mod library;
mod live;
pub(crate) mod marks;
mod moment;
pub(crate) mod on_shelf;
pub(crate) mod opened;
mod own;
pub(crate) mod people;
pub(crate) mod pilot;
pub(crate) mod plans;
pub(crate) mod poured;
pub(crate) mod prepare;
pub(crate) mod print;
pub(crate) mod proposals;
mod pulse;
pub(crate) mod results;
pub(crate) mod roster;
pub(crate) mod round;
pub(crate) mod run;
mod scene;
pub(crate) mod shared;
pub(crate) mod sheets;
mod shelf;
mod shown;
pub(crate) mod standards;
pub(crate) mod talk;
pub(crate) mod traces;
pub(crate) mod wall;
pub(crate) mod whole_check;

pub(crate) use barm_store::{Investigation, Kind, Receipt};
pub(crate) use live::Room;
pub(crate) use moment::{Said, on_our_clock};
pub(crate) use pulse::{Pulse, Scope};
pub(crate) use scene::Scene;
pub(crate) use shelf::Shelf;
