//! `barm serve`.

use super::failure::Failure;
use crate::desk::room::Shelf;
use crate::desk::{self, CertificateSource, Clock, DeskError};
use crate::system;
use crate::web::{Ask, Reach, must_be_usable, serve};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use std::io::{self, Write};
use std::net::{IpAddr, Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::Arc;

/// Port to listen on, unless another is given.
const PORT: u16 = 8420;
/// So many ports are tried if the first is taken.
const PORTS: u16 = 20;

/// Serve the pages of the class day from this computer
///
/// Without --lan, the pages answer on this computer only. With it, groups, the wall page, the
/// walk-round page and aides can come in from the school's network with the codes that the
/// teacher gives; the teacher's own pages still answer on this computer only.
#[derive(clap::Args, Debug, Default)]
pub(super) struct Arguments {
    /// Let the pages for groups, wall, walk-round and aides answer from the network
    #[arg(long)]
    lan: bool,
    /// Open the teacher's page in the browser of this computer
    #[arg(long)]
    browser: bool,
    /// Folder that holds the record [default: a folder of your own, shown at the start]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Keep the record in a PostgreSQL database, such as postgresql://barm@db.example/barm, instead
    /// of a file; the folder then holds only what belongs to this computer. One running program a
    /// database
    #[arg(long, value_name = "URL")]
    postgres: Option<String>,
    /// Port to listen on; 0 takes a free one [default: 8420, or the next that is free]
    #[arg(long)]
    port: Option<u16>,
    /// Another name under which this computer is called; may be given several times
    #[arg(long = "name", value_name = "NAME")]
    names: Vec<String>,
    /// Encrypt all connections. Without --certificate, Barm makes a certificate of its own, and
    /// every browser warns once
    #[arg(long)]
    tls: bool,
    /// Certificate file (PEM), with --key
    #[arg(long, value_name = "FILE", requires = "key", requires = "tls")]
    certificate: Option<PathBuf>,
    /// Private key file (PEM)
    #[arg(long, value_name = "FILE", requires = "certificate")]
    key: Option<PathBuf>,
    /// Let the teacher's pages answer from the network without encryption. Anyone on that network
    /// can then read the passphrase and the forecasts as they pass by; --tls is the safe way
    #[arg(long, requires = "lan")]
    teacher_from_network: bool,
}

/// Runs `serve`.
pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    start(arguments, arguments.browser, out)
}

/// Runs `barm` without a command: on this computer, in the browser, in the person's own folder.
pub(super) fn here(out: &mut impl Write) -> Result<ExitCode, Failure> {
    start(&Arguments::default(), true, out)
}

fn start(
    arguments: &Arguments,
    browser: bool,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    let folder = arguments.data.clone().unwrap_or_else(system::data_folder);
    // If it cannot be made, opening it says why.
    let _ = system::private_folder(&folder);
    let opened = match &arguments.postgres {
        None => Shelf::open(&folder, Timestamp::now()),
        Some(address) => Shelf::open_on_server(&folder, address, Timestamp::now()),
    };
    let shelf = match opened {
        Ok(shelf) => Arc::new(shelf),
        Err(error) => return elsewhere(error, &folder, browser, out),
    };
    let ip = if arguments.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    let (listener, port) = listen(ip, arguments.port, out)?;
    let scheme = if arguments.tls { "https" } else { "http" };
    let address = format!("{scheme}://localhost:{port}");
    let addresses = system::addresses();
    let reach = Reach {
        lan: arguments.lan,
        tls: arguments.tls,
        teacher_from_network: arguments.teacher_from_network,
        names: arguments.names.clone(),
        addresses: addresses.clone(),
    };
    let certificate = arguments.tls.then(|| {
        let source = match (&arguments.certificate, &arguments.key) {
            (Some(chain), Some(key)) => CertificateSource::Files(chain.clone(), key.clone()),
            _ => CertificateSource::Own,
        };
        let today = Timestamp::now().to_zoned_datetime(TimeZone::UTC).date();
        desk::certificate(&folder, &source, &arguments.names, &addresses, today)
    });
    let certificate = certificate.transpose()?;
    certificate.as_ref().map(must_be_usable).transpose()?;
    writeln!(out, "Barm answers at {address}")?;
    match &arguments.postgres {
        None => writeln!(out, "The record lies in {}", folder.display())?,
        // Without the address: it may hold a password.
        Some(_) => writeln!(out, "The record lies in the database that was named")?,
    }
    if arguments.lan {
        tell_the_class(scheme, port, &addresses, arguments, out)?;
    }
    writeln!(out, "Stop it with {}; what was entered is kept.", system::how_to_stop())?;
    out.flush()?;
    desk::own_copy::note(&folder, &address);
    if browser {
        show(&address, out)?;
    }
    let runtime = tokio::runtime::Runtime::new()?;
    let clock = Arc::new(Clock::Real);
    let ask = Ask { listener, shelf, reach, clock, certificate };
    let served = runtime.block_on(serve(ask, system::told_to_stop()));
    desk::own_copy::forget(&folder);
    served?;
    writeln!(out, "Stopped. Everything that was entered is on disk.")?;
    Ok(ExitCode::SUCCESS)
}

/// Shows an address in the browser, or says how to get there by hand.
fn show(address: &str, out: &mut impl Write) -> Result<(), Failure> {
    match system::open_in_browser(address) {
        // What was started may still find no browser.
        Ok(()) => writeln!(out, "If no window opens, type that address into a browser.")?,
        Err(_) => writeln!(out, "No browser was found; type that address into one.")?,
    }
    Ok(out.flush()?)
}

/// If another copy has the folder open, a person who wants to see it is led there.
fn elsewhere(
    error: DeskError,
    folder: &Path,
    browser: bool,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    if !error.is_in_use() {
        return Err(error.into());
    }
    let Some(address) = desk::own_copy::noted(folder) else { return Err(error.into()) };
    if browser {
        writeln!(out, "Barm runs already, at {address}")?;
        show(&address, out)?;
        return Ok(ExitCode::SUCCESS);
    }
    writeln!(out, "It answers at {address}")?;
    Err(error.into())
}

/// Listens at the port that was asked for, or at the next that is free.
pub(super) fn listen(
    ip: Ipv4Addr,
    port: Option<u16>,
    out: &mut impl Write,
) -> Result<(TcpListener, u16), Failure> {
    let first = port.unwrap_or(PORT);
    let mut refused = io::Error::from(io::ErrorKind::AddrInUse);
    for port in (0..PORTS).map_while(|more| first.checked_add(more)) {
        match TcpListener::bind((IpAddr::V4(ip), port)) {
            Ok(listener) => {
                let port = listener.local_addr()?.port();
                if first != 0 && port != first {
                    let whose = if desk::own_copy::answers_at(first) {
                        "another copy of Barm, on another folder"
                    } else {
                        "another program"
                    };
                    writeln!(out, "Port {first} is taken by {whose}; this is port {port}.")?;
                }
                return Ok((listener, port));
            }
            Err(error) if error.kind() == io::ErrorKind::AddrInUse => refused = error,
            Err(error) => return Err(DeskError::Port { port, source: error }.into()),
        }
    }
    Err(DeskError::Port { port: first, source: refused }.into())
}

/// Says where groups find it.
fn tell_the_class(
    scheme: &str,
    port: u16,
    addresses: &[IpAddr],
    arguments: &Arguments,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let hosts = arguments.names.iter().cloned();
    // It listens on addresses of the older kind only, which are the ones that people type.
    let typed = addresses.iter().filter(|address| address.is_ipv4());
    let hosts = hosts.chain(typed.map(IpAddr::to_string));
    let joins: Vec<String> =
        hosts.map(|host| format!("{scheme}://{host}:{port}/join")).take(4).collect();
    let Some(first) = joins.first() else {
        writeln!(out, "This computer is in no network; groups cannot reach it.")?;
        return Ok(());
    };
    writeln!(out, "Groups join at {first}")?;
    for other in &joins[1..] {
        writeln!(out, "            or {other}")?;
    }
    if let Some(code) = desk::code_for_cameras(first) {
        writeln!(out, "{code}")?;
    }
    writeln!(out, "{TRY_IT}")?;
    Ok(())
}

/// How to find out before the class whether devices get here, and what to do if they do not.
const TRY_IT: &str = "\
Try it before the class: open that address on one phone in the same network. If “Join your group”
does not come, the network keeps devices apart or a firewall stands between. Then use a hotspot or
a router of your own, hand one device round, or write on paper and type it in on the run page.";
