//! The files of the authority.

use super::CertificateError;
use rustls::pki_types::CertificateDer;
use rustls::pki_types::pem::PemObject;
use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::Path;

fn cannot(file: &Path) -> impl FnOnce(io::Error) -> CertificateError + use<> {
    let file = file.to_owned();
    move |why| CertificateError::File { file, why }
}

pub(super) fn read(file: &Path) -> Result<String, CertificateError> {
    fs::read_to_string(file).map_err(cannot(file))
}

pub(super) fn write(file: &Path, bytes: &[u8]) -> Result<(), CertificateError> {
    fs::write(file, bytes).map_err(cannot(file))
}

/// Writes a file that nobody else may read, from its first byte on.
pub(super) fn write_private(file: &Path, bytes: &[u8]) -> Result<(), CertificateError> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let written = options.open(file).and_then(|mut opened| opened.write_all(bytes).and_then(|()| opened.sync_all()));
    written.map_err(cannot(file))
}

/// The certificate in a PEM text.
pub(super) fn certificate(file: &Path, text: &str) -> Result<CertificateDer<'static>, CertificateError> {
    let unreadable = |why: String| CertificateError::Unreadable { file: file.to_owned(), why };
    CertificateDer::from_pem_slice(text.as_bytes()).map_err(|error| unreadable(error.to_string()))
}
