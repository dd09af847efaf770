//! A certificate of our own making, for connections that nobody can listen to.

use super::DeskError;
use crate::system;
use std::net::IpAddr;
use std::path::{Path, PathBuf};

/// A certificate chain and its key, both PEM.
pub(crate) struct Certificate {
    /// The chain.
    pub(crate) chain: Vec<u8>,
    /// The private key.
    pub(crate) key: Vec<u8>,
}

/// Where a certificate is to come from.
#[derive(Debug, Clone)]
pub(crate) enum Source {
    /// Made by us and kept in the data folder.
    Own,
    /// Files of the teacher's or the district's: certificate, key.
    Files(PathBuf, PathBuf),
}

/// Reads a certificate; makes one where there is none.
pub(crate) fn certificate(
    folder: &Path,
    source: &Source,
    names: &[String],
    addresses: &[IpAddr],
) -> Result<Certificate, DeskError> {
    let read = |path: &Path| {
        std::fs::read(path).map_err(|source| DeskError::Read { path: path.to_owned(), source })
    };
    match source {
        Source::Files(chain, key) => Ok(Certificate { chain: read(chain)?, key: read(key)? }),
        Source::Own => {
            let (chain, key) = (folder.join("certificate.pem"), folder.join("key.pem"));
            // One certificate for good: a browser that trusts it is not asked again, unless this
            // computer got another address.
            let named = folder.join("certificate.names");
            let wanted = wanted(names, addresses);
            let known = std::fs::read_to_string(&named).unwrap_or_default();
            if !(chain.is_file() && key.is_file() && known == wanted.join("\n")) {
                let made = rcgen::generate_simple_self_signed(wanted.clone());
                let made = made.map_err(|_| DeskError::Certificate)?;
                let write = |path: &Path, text: String| {
                    system::private_file(path, text.as_bytes()).map_err(|source| {
                        DeskError::Unwritten { path: path.to_owned(), source }
                    })
                };
                write(&key, made.signing_key.serialize_pem())?;
                write(&chain, made.cert.pem())?;
                write(&named, wanted.join("\n"))?;
            }
            Ok(Certificate { chain: read(&chain)?, key: read(&key)? })
        }
    }
}

fn wanted(names: &[String], addresses: &[IpAddr]) -> Vec<String> {
    let mut wanted = vec!["localhost".to_owned(), "127.0.0.1".to_owned(), "::1".to_owned()];
    wanted.extend(names.iter().cloned());
    wanted.extend(addresses.iter().map(IpAddr::to_string));
    wanted
}
