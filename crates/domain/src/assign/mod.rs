//! Who does what: groups, questions, treatments, controls and replicates over the periods of a day.
//!
//! What must be kept, always: every period has a control of each question that is run there; each
//! group makes its own control where its number of bags allows; a group whose inquiry level gives it
//! the question is not asked for wishes. What must be kept and can be taken back are the
//! [`rule::Rule`]s: the teacher's word, what a group must not get, and what there is of tools and
//! materials. Then four aims, each before the next ([`Worth`]): each treatment in as many periods as
//! possible, as many bags as the plan asks for, the groups' wishes, evenness over the periods.
//!
//! An answer comes with a bound that no other can be below, is checked bag by bag by code that knows
//! nothing of how it was found ([`check`]), and names the price of each wish that it does not serve.
//! If it cannot be done, the rules that clash are named ([`Clash`]). `docs/assign.md` tells a teacher
//! all of that; decision 19 why it is done so.

mod answer;
mod bench_places;
mod case;
mod checked;
mod clash;
pub mod day;
mod deal;
pub mod flow;
mod improve;
mod list;
mod of_plan;
mod price;
pub mod program;
pub mod rule;
mod share;
mod stock;
mod wishes;
mod worth;

pub use answer::{Assigned, Made, NotAssigned, STEPS, assign};
pub use checked::check;
pub use clash::{Clash, clash};
pub use list::with_bags;
pub use of_plan::{MOST_BAGS, usual_bags};
pub use price::{Broken, Price};
pub use wishes::{Bad, NotPrepared, Prepared, Row, Taken, prepare};
pub use worth::Worth;
