//! Who does what: optima published by others, brute force on small days, clashes, ready plans.

mod brute;
mod clashes;
mod days;
mod lists;
mod mixed;
mod optimum;
mod outside;
mod properties;
mod size;
mod wishes;
