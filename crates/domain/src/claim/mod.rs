//! What a group claims, and what its own data and the class's say of it.
//!
//! A claim is a treatment, a direction and perhaps a size, with the group's words for evidence and reasoning. Facts
//! stand beside it for the teacher's eyes. None is a mark and none adds up to one: a claim against the class's verdict may
//! be the better reasoned one, and words are read by people.

mod fact;
mod length;
mod made;
mod peers;

pub use fact::{Agrees, Fact, Found, facts};
pub use length::{Length, lengths};
pub use made::{Claim, ClaimFault, MOST_CHARACTERS, Says, Typed};
pub use peers::{Review, deal};
