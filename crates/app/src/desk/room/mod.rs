//! The live room: the record of an investigation while pages look at it.
//!
//! A [`Shelf`] holds the data folder; a [`Room`] is one investigation of it; a [`Scene`] is what
//! a page's view is made from, at one moment. What is entered is on disk before anybody sees it.

mod entered;
mod live;
mod moment;
mod pulse;
mod scene;
mod shelf;
mod shown;

pub(crate) use barm_store::{Investigation, Kind, Receipt};
pub(crate) use live::Room;
pub(crate) use moment::{Said, on_our_clock};
pub(crate) use pulse::{Pulse, Scope};
pub(crate) use scene::Scene;
pub(crate) use shelf::Shelf;
