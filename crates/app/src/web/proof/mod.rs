//! Proofs of the web face: the router itself is called, without a port.

mod bench;
mod cards;
mod changes;
mod claims;
mod class;
mod doors;
mod escaped;
mod forgetting;
mod found;
mod gradebook;
mod levels;
mod marked;
mod opened;
mod print;
mod printer;
mod rehearsal;
mod sealed;
mod secrets;
mod shared;
mod sheet;
mod standards;
mod streams;
mod students;
mod unforeseen;
mod whole;
