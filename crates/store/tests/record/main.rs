//! The record on disk: the same stories on both engines, and what can go wrong with a folder.

mod backup;
mod disk_full;
mod every_kind;
mod folder;
mod forgetting;
mod killed;
mod made;
mod many;
mod old;
mod order;
mod places;
mod server;
mod size;
mod story;
mod two_programs;
