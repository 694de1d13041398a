//! The workshop's own certificate authority: made on first use, kept in the
//! data folder, good for local names and addresses only.

mod files;
mod make;

use rcgen::{Issuer, KeyPair};
use rustls::ServerConfig;
use rustls::pki_types::{CertificateDer, PrivateKeyDer};
use sha2::{Digest, Sha256};
use std::io;
use std::net::IpAddr;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use thiserror::Error;

/// The authority's certificate in the data folder, and under which name phones get it.
pub(crate) const CERTIFICATE: &str = "seatcut-workshop.crt";
/// Its key.
const KEY: &str = "seatcut-workshop.key";

/// Why there is no certificate.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum CertificateError {
    /// A file can't be read or written.
    #[error(
        "{file} can't be used for the workshop's certificate: {why}. Make the folder yours, or name another one with --data"
    )]
    File {
        /// Which.
        file: PathBuf,
        /// What the system says.
        why: io::Error,
    },
    /// What is in the files is no authority.
    #[error(
        "{file} holds no certificate of this program ({why}). Put it and {KEY} aside to have new ones made; phones have to trust the new one then"
    )]
    Unreadable {
        /// Which.
        file: PathBuf,
        /// What is wrong.
        why: String,
    },
    /// The certificate can't be made.
    #[error("the workshop's certificate can't be made: {0}. Check the clock of this machine and try again")]
    Unmade(String),
}

/// The authority that the phones trust.
pub struct Authority {
    certificate: CertificateDer<'static>,
    issuer: Issuer<'static, KeyPair>,
}

impl std::fmt::Debug for Authority {
    /// Without the key.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Authority").field("fingerprint", &self.fingerprint()).finish_non_exhaustive()
    }
}

impl Authority {
    /// The authority of a data folder, made if there is none.
    ///
    /// # Errors
    /// When its files can't be used.
    pub fn of(folder: &Path) -> Result<Self, CertificateError> {
        let (certificate_file, key_file) = (folder.join(CERTIFICATE), folder.join(KEY));
        if !certificate_file.exists() && !key_file.exists() {
            let (certificate, key) = make::authority()?;
            files::write_private(&key_file, key.as_bytes())?;
            files::write(&certificate_file, certificate.as_bytes())?;
        }
        let (certificate, key) = (files::read(&certificate_file)?, files::read(&key_file)?);
        let unreadable = |file: &Path| {
            let file = file.to_owned();
            move |error: rcgen::Error| CertificateError::Unreadable { file, why: error.to_string() }
        };
        let key = KeyPair::from_pem(&key).map_err(unreadable(&key_file))?;
        let der = files::certificate(&certificate_file, &certificate)?;
        let issuer = Issuer::from_ca_cert_der(&der, key).map_err(unreadable(&certificate_file))?;
        Ok(Self { certificate: der, issuer })
    }

    /// The certificate, for phones.
    #[must_use]
    pub fn certificate(&self) -> &[u8] {
        &self.certificate
    }

    /// What to compare on both screens: SHA-256 of the certificate, as phones show it.
    #[must_use]
    pub fn fingerprint(&self) -> String {
        let digest: [u8; 32] = Sha256::digest(&self.certificate).into();
        let pairs: Vec<String> = digest.iter().map(|byte| format!("{byte:02X}")).collect();
        pairs.join(":")
    }

    /// A TLS set-up with a new certificate for these addresses and name.
    ///
    /// # Errors
    /// When it can't be made.
    pub fn tls(&self, addresses: &[IpAddr], name: Option<&str>) -> Result<Arc<ServerConfig>, CertificateError> {
        let unmade = |error: &dyn std::fmt::Display| CertificateError::Unmade(error.to_string());
        let (leaf, key) = make::leaf(&self.issuer, addresses, name)?;
        let key = PrivateKeyDer::try_from(key).map_err(|error| unmade(&error))?;
        let mut config = ServerConfig::builder_with_provider(Arc::new(rustls::crypto::ring::default_provider()))
            .with_safe_default_protocol_versions()
            .and_then(|builder| {
                builder.with_no_client_auth().with_single_cert(vec![leaf, self.certificate.clone()], key)
            })
            .map_err(|error| unmade(&error))?;
        config.alpn_protocols = vec![b"http/1.1".to_vec()];
        Ok(Arc::new(config))
    }
}
