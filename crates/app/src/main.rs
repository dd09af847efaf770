//! Barm: one teacher, one yeast-bag investigation, one program.

mod cli;
mod desk;
mod json;
mod system;
mod web;

fn main() -> std::process::ExitCode {
    cli::run()
}
