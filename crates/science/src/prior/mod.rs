//! What is not known before anything is measured: every uncertain number of the model with its
//! best guess, how widely it is spread, and over what.

mod curve;
mod facts;
mod handling;
mod joint;
mod key;
mod known;
mod learned;
mod level;
mod table;
mod transform;
mod typical;

pub(crate) use facts::AIR_LOG_SD;
pub use facts::FACTS;
pub(crate) use handling::{habit, jug};
pub(crate) use joint::Joint;
pub(crate) use key::fingerprint;
pub use key::{ACTIVITY, CONTENT, Key, Of, made_of};
pub use known::TAKEN_FOR_KNOWN;
pub use learned::{Learned, LearnedError, UNMOVED};
pub use level::Spread;
pub use table::standard;
pub use transform::Transform;
pub use typical::Typical;

use crate::bag::StandardBag;
use crate::model::Parameters;
use crate::setup::{Setup, YeastKind};

/// One uncertain number of the model.
#[derive(Debug, Clone, Copy)]
pub struct Row {
    /// Its name, such as `vigor`; also the name of its stream of chance.
    pub name: &'static str,
    /// Of what there is one.
    pub whose: Whose,
    /// Its place among the parameters.
    pub place: fn(&mut Parameters) -> &mut f64,
    /// The scale on which it is spread.
    pub transform: Transform,
    /// How widely.
    pub spread: Spread,
    /// Name of the fact on which that rests: the one whose range it carries, or a judgement.
    pub from: &'static str,
}

/// Of what an uncertain number of the model is one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// Of the day: all bags have the same.
    All,
    /// Of one kind of yeast: each kind has a lot of its own.
    Yeast(YeastKind),
    /// Of each size of bag: bags of two sizes come out of two boxes.
    Bags,
}

impl Row {
    /// The key of this number in a bag; nothing where the bag has none of it.
    pub fn key(&self, setup: &Setup) -> Option<Key> {
        let of = match self.whose {
            Whose::All => Of::All,
            Whose::Yeast(only) => {
                let kind = setup.yeast.map_or(YeastKind::Instant, |yeast| yeast.kind);
                (only == kind).then_some(Of::Yeast(kind))?
            }
            Whose::Bags => Of::Bags(StandardBag::nearest(&setup.bag)),
        };
        Some(Key::new(self.name, of))
    }

    /// Whether this number can be one of that.
    pub(crate) fn is_of(&self, of: Of) -> bool {
        match self.whose {
            Whose::All => of == Of::All,
            Whose::Yeast(only) => of == Of::Yeast(only),
            Whose::Bags => matches!(of, Of::Bags(_)),
        }
    }
}

/// The uncertain numbers of the model: their best guesses and their rows.
#[derive(Debug, Clone)]
pub struct Prior {
    /// Best guess of each number.
    pub center: Parameters,
    /// How widely each is spread. A number without a row is taken for known ([`TAKEN_FOR_KNOWN`]).
    pub rows: Vec<Row>,
    /// What was learned of some of them together.
    pub(crate) joint: Joint,
}

impl Default for Prior {
    /// What is known before anything was measured.
    fn default() -> Self {
        Self { center: Parameters::median(), rows: standard(), joint: Joint::default() }
    }
}
