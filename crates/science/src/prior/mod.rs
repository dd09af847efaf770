//! What is not known before anything is measured: every uncertain number of the model with its
//! best guess, how widely it is spread, and over what.

mod facts;
mod handling;
mod known;
mod level;
mod table;
mod transform;

pub(crate) use facts::AIR_LOG_SD;
pub use facts::FACTS;
pub(crate) use handling::{habit, jug};
pub use known::TAKEN_FOR_KNOWN;
pub use level::Spread;
pub use table::standard;
pub use transform::Transform;

use crate::model::Parameters;
use crate::setup::YeastKind;

/// One uncertain number of the model.
#[derive(Debug, Clone, Copy)]
pub struct Row {
    /// Its name, such as `vigor`; also the name of its stream of chance.
    pub name: &'static str,
    /// The only kind of yeast that it is for, if it is not for all: each kind has a lot of its own.
    pub kind: Option<YeastKind>,
    /// Its place among the parameters.
    pub place: fn(&mut Parameters) -> &mut f64,
    /// The scale on which it is spread.
    pub transform: Transform,
    /// How widely.
    pub spread: Spread,
    /// Name of the fact on which that rests: the one whose range it carries, or a judgement.
    pub from: &'static str,
}

/// The uncertain numbers of the model: their best guesses and their rows.
#[derive(Debug, Clone)]
pub struct Prior {
    /// Best guess of each number.
    pub center: Parameters,
    /// How widely each is spread. A number without a row is taken for known ([`TAKEN_FOR_KNOWN`]).
    pub rows: Vec<Row>,
}

impl Default for Prior {
    /// What is known before anything was measured.
    fn default() -> Self {
        Self { center: Parameters::median(), rows: standard() }
    }
}
