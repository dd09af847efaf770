//! A certificate of our own making, for connections that nobody can listen to.

use super::DeskError;
use crate::system;
use jiff::ToSpan;
use jiff::civil::Date;
use rcgen::{CertificateParams, DnType, KeyPair, date_time_ymd};
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
    today: Date,
) -> Result<Certificate, DeskError> {
    let read = |path: &Path| {
        std::fs::read(path).map_err(|source| DeskError::Read { path: path.to_owned(), source })
    };
    match source {
        Source::Files(chain, key) => Ok(Certificate { chain: read(chain)?, key: read(key)? }),
        Source::Own => {
            let (chain, key) = (folder.join("certificate.pem"), folder.join("key.pem"));
            // It is kept, so that a browser that trusts it is not asked again, until this computer
            // gets another address or two years are nearly over.
            let named = folder.join("certificate.names");
            let wanted = wanted(names, addresses);
            let known = std::fs::read_to_string(&named).unwrap_or_default();
            if !(chain.is_file() && key.is_file() && still_right(&known, &wanted, today)) {
                let (certificate, private) =
                    made(&wanted, today).ok_or(DeskError::Certificate)?;
                let write = |path: &Path, text: String| {
                    system::private_file(path, text.as_bytes()).map_err(|source| {
                        DeskError::Unwritten { path: path.to_owned(), source }
                    })
                };
                write(&key, private)?;
                write(&chain, certificate)?;
                write(&named, format!("{today}\n{}", wanted.join("\n")))?;
            }
            Ok(Certificate { chain: read(&chain)?, key: read(&key)? })
        }
    }
}

/// Days for which a certificate is good. Some browsers take none that is good for longer than 825
/// (from memory, of 2019).
const GOOD_FOR: i32 = 800;
/// Days after which another is made.
const RENEWED_AFTER: i32 = 730;

/// Whether the certificate that is there names what it should and is good for a while.
fn still_right(known: &str, wanted: &[String], today: Date) -> bool {
    let Some((made, names)) = known.split_once('\n') else { return false };
    let Ok(made) = made.parse::<Date>() else { return false };
    let age = today.since(made).map_or(i32::MAX, |age| age.get_days());
    names == wanted.join("\n") && (0..RENEWED_AFTER).contains(&age)
}

/// A certificate and its key, both PEM.
fn made(names: &[String], today: Date) -> Option<(String, String)> {
    let mut params = CertificateParams::new(names.to_vec()).ok()?;
    let day = |date: Date| {
        let (month, day) = (u8::try_from(date.month()).ok()?, u8::try_from(date.day()).ok()?);
        Some(date_time_ymd(i32::from(date.year()), month, day))
    };
    // Clocks of tablets may be a day behind.
    params.not_before = day(today.yesterday().ok()?)?;
    params.not_after = day(today.checked_add(GOOD_FOR.days()).ok()?)?;
    params.distinguished_name.push(DnType::CommonName, "Barm on this computer");
    let key = KeyPair::generate().ok()?;
    let certificate = params.self_signed(&key).ok()?;
    Some((certificate.pem(), key.serialize_pem()))
}

fn wanted(names: &[String], addresses: &[IpAddr]) -> Vec<String> {
    let mut wanted = vec!["localhost".to_owned(), "127.0.0.1".to_owned(), "::1".to_owned()];
    wanted.extend(names.iter().cloned());
    wanted.extend(addresses.iter().map(IpAddr::to_string));
    wanted
}

#[cfg(test)]
mod tests {
    use super::{made, still_right};
    use jiff::civil::date;

    #[test]
    fn a_certificate_is_kept_until_something_changes() {
        let names = vec!["localhost".to_owned(), "192.168.7.20".to_owned()];
        let known = "2026-11-26\nlocalhost\n192.168.7.20";
        assert!(still_right(known, &names, date(2026, 11, 26)));
        assert!(still_right(known, &names, date(2028, 11, 1)));
        assert!(!still_right(known, &names, date(2028, 12, 1)), "two years are over");
        assert!(!still_right(known, &names, date(2026, 11, 25)), "made tomorrow");
        assert!(!still_right(known, &names[..1], date(2026, 11, 26)), "another address");
        assert!(!still_right("", &names, date(2026, 11, 26)));
        let (certificate, key) = made(&names, date(2026, 11, 26)).expect("made");
        assert!(certificate.contains("BEGIN CERTIFICATE") && key.contains("PRIVATE KEY"));
    }
}
