//! A group's claim: what it found, what it saw, and why that answers its question; and others' claims to read.
//!
//! The page knows no verdict and no forecast.

mod answer;
mod home_page;
mod page;

pub(super) use answer::{home, post, read, show};
