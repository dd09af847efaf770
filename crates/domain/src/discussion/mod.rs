//! What a class has to talk about after its readings: questions chosen by the shape of its own data, ideas that are
//! often brought along with what today's bags say of them, and what is inside each bag.
//!
//! Nothing here puts words into a student's mouth: a prompt asks, and carries the numbers that it rests on.

mod ideas;
mod inside;
mod odd;
mod prompt;
mod prompts;

pub use ideas::{Idea, Speaks, Spoken, ideas};
pub use inside::{ByYeast, Carbohydrate, Inside, inside};
pub use odd::{Odd, odd_bags};
pub use prompt::Prompt;
pub use prompts::prompts;
