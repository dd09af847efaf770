//! How far the words can be trusted: invented classes with a known truth, from readings to verdict.
//!
//! A [`Cell`] is a kind of class: how many bags, periods and treatments, who makes what, how much
//! groups differ, what slips happen. A [`Lesson`] is its plan; [`Lesson::class`] invents one class of
//! it and puts its heights through what judges a real day: record, slips and their mends, readings,
//! [`crate::result::analyze`]. Nothing here knows how a verdict is made. A [`Tally`] counts what many
//! classes were told, and a [`Bar`] says what is asked of such counts.
//!
//! Whoever has cores may run classes beside one another: each is drawn from the name of its cell, its
//! own number and a seed, and no class knows of another. `docs/trust.md` has the table.

mod bar;
mod bench;
mod card;
mod cell;
mod cells;
mod class;
mod foretold;
mod lesson;
mod mend;
mod rates;
mod said;
mod series;
mod tally;
mod teacher;
mod world;

pub use bar::{Bar, Held, OVER_ALL, over_all};
pub use cell::{Cell, Made, Slips};
pub use cells::{CELLS, cell};
pub use class::Truth;
pub use lesson::Lesson;
pub use rates::Rates;
pub use said::Said;
pub use tally::{Count, Tally};
pub use world::{BAG_SD_MM, CURVE_MIN, LEVEL_MM, PERIOD_SD_MM, WIDE};
