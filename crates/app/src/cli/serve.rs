//! `barm serve`.

use super::failure::Failure;
use crate::desk::room::Shelf;
use crate::web::{Ask, Reach, serve};
use jiff::Timestamp;
use std::io::Write;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener};
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

/// Serve the pages of the class day
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Let the pages for groups answer from the network
    #[arg(long)]
    lan: bool,
    /// Folder that holds the record
    #[arg(long, value_name = "DIR", default_value = "barm-data")]
    data: PathBuf,
    /// Port to listen on
    #[arg(long, default_value_t = 8420)]
    port: u16,
    /// Another name under which this computer is called; may be given several times
    #[arg(long = "name", value_name = "NAME")]
    names: Vec<String>,
}

/// Runs `serve`.
pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let shelf = Arc::new(Shelf::open(&arguments.data, Timestamp::now())?);
    let ip = if arguments.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    let listener = TcpListener::bind(SocketAddr::new(IpAddr::V4(ip), arguments.port))?;
    let port = listener.local_addr()?.port();
    writeln!(out, "Barm answers at http://localhost:{port}")?;
    out.flush()?;
    let reach =
        Reach { lan: arguments.lan, names: arguments.names.clone(), ..Reach::default() };
    let runtime = tokio::runtime::Runtime::new()?;
    runtime.block_on(serve(Ask { listener, shelf, reach }))?;
    Ok(ExitCode::SUCCESS)
}
