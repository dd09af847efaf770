//! What a class talks about after its readings, and the prompt that hangs on a period's wall.

mod beside;
mod view;
mod wall;

pub(crate) use beside::{idea_says, inside_says};
pub(crate) use view::{Talk, TalkView, talk_view};
pub(crate) use wall::{hang, hung, take_down};
