//! The record on disk: the same stories on both engines, and what can go wrong with a folder.

mod every_kind;
mod folder;
mod made;
mod places;
mod server;
mod size;
mod story;
