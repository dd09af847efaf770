//! A whole school day through the real server, over real connections.

// What the simulated groups of a rehearsal use; it names nothing else of the program.
#[path = "../../src/desk/rehearse/line.rs"]
mod line;
#[path = "../program/mod.rs"]
mod program;
#[path = "../../src/desk/rehearse/typed.rs"]
mod typed;

mod bench;
mod beside;
mod full;
mod killed;
mod let_in;
mod rehearsed;
mod school;
mod traced;
mod whole;
