//! `barm serve`.

use super::failure::Failure;
use crate::web::{Ask, serve};
use std::io::Write;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::process::ExitCode;

/// Serve the pages of the class day
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Let the pages for groups answer from the network
    #[arg(long)]
    lan: bool,
    /// Port to listen on
    #[arg(long, default_value_t = 8420)]
    port: u16,
}

/// Runs `serve`.
pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let ip = if arguments.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    let address = SocketAddr::new(IpAddr::V4(ip), arguments.port);
    writeln!(out, "Barm answers at http://localhost:{}", arguments.port)?;
    out.flush()?;
    let runtime = tokio::runtime::Runtime::new()?;
    runtime.block_on(serve(Ask { address, lan: arguments.lan }))?;
    Ok(ExitCode::SUCCESS)
}
