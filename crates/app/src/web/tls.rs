//! Encrypted connections: TLS 1.2 and 1.3.

use crate::desk::{Certificate, DeskError};
use axum_server::tls_rustls::RustlsConfig;
use rustls::ServerConfig;
use rustls::crypto::ring;
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, PrivateKeyDer};
use std::sync::Arc;

/// What the listener needs to know.
pub(super) fn from(certificate: &Certificate) -> Result<RustlsConfig, DeskError> {
    let wrong = |what: &str| DeskError::Unusable { what: what.to_owned() };
    let chain =
        CertificateDer::pem_slice_iter(&certificate.chain).collect::<Result<Vec<_>, _>>();
    let chain = chain.map_err(|_| wrong("the certificate file holds no PEM certificate"))?;
    let key = PrivateKeyDer::from_pem_slice(&certificate.key);
    let key = key.map_err(|_| wrong("the key file holds no PEM private key"))?;
    let config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
        .with_safe_default_protocol_versions()
        .map_err(|error| wrong(&error.to_string()))?
        .with_no_client_auth()
        .with_single_cert(chain, key);
    let mut config = config.map_err(|_| wrong("certificate and key do not fit together"))?;
    config.alpn_protocols = vec![b"http/1.1".to_vec()];
    Ok(RustlsConfig::from_config(Arc::new(config)))
}

/// Says what is wrong with a certificate before anybody is told that something answers.
pub(crate) fn must_be_usable(certificate: &Certificate) -> Result<(), DeskError> {
    from(certificate).map(drop)
}
