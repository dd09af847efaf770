//! A pilot, from what to do to what is known of each lot.

mod chosen;
mod learned;
mod protocol;
mod refused;
mod school;
