//! The laws with a range that a bag could leave.

mod bag;
mod enzymes;
mod yeast;

use super::Law;
use super::scene::Scene;

const TEMPERATURE: &str = "temperature of the bag";
const ACIDITY: &str = "pH of the liquid";
const HELD: &str = "held at the end of the range";
const CARRIED_ON: &str = "carried on by its formula";

/// A law, and what it is read at in a bag; nothing where the bag does not ask it.
pub(super) struct Watched {
    pub(super) law: &'static Law,
    pub(super) read: fn(&Scene) -> Option<f64>,
}

/// All laws with a range that a bag could leave.
pub(super) fn watched() -> impl Iterator<Item = &'static Watched> {
    yeast::WATCHED.iter().chain(enzymes::WATCHED).chain(bag::WATCHED)
}
