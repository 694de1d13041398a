//! Making the authority and the certificates that it gives.

use super::CertificateError;
use crate::address::{LOCAL_V4, LOCAL_V6};
use crate::random::{hex, hex_128};
use rcgen::{
    BasicConstraints, CertificateParams, CidrSubnet, DnType, ExtendedKeyUsagePurpose, GeneralSubtree, IsCa, Issuer,
    KeyPair, KeyUsagePurpose, NameConstraints, SanType, SerialNumber,
};
use rustls::pki_types::CertificateDer;
use std::net::IpAddr;
use time::{Duration, OffsetDateTime};

/// How long the authority holds: as long as anybody keeps a phone.
const AUTHORITY_DAYS: i64 = 3653;
/// How long a certificate holds: phones refuse those of over 398 days. A new one is made at every start.
const LEAF_DAYS: i64 = 397;
/// Certificates start this long before they are made, for clocks of phones that are slow.
const SLOW_CLOCK: Duration = Duration::days(2);

fn unmade(error: rcgen::Error) -> CertificateError {
    CertificateError::Unmade(error.to_string())
}

fn no_random() -> CertificateError {
    CertificateError::Unmade("the system gives no random bits".to_owned())
}

fn lasting(days: i64) -> CertificateParams {
    let mut params = CertificateParams::default();
    let now = OffsetDateTime::now_utc();
    params.not_before = now - SLOW_CLOCK;
    params.not_after = params.not_before + Duration::days(days);
    params
}

/// A new authority: its certificate and its key as PEM. It can vouch for local
/// names and addresses only, so that a stolen key opens no site of the internet.
pub(super) fn authority() -> Result<(String, String), CertificateError> {
    let mut params = lasting(AUTHORITY_DAYS);
    let mut bytes = [0; 4];
    getrandom::fill(&mut bytes).map_err(|_| no_random())?;
    // Two workshops on one phone are told apart by it.
    params.distinguished_name.remove(DnType::CommonName);
    params.distinguished_name.push(DnType::CommonName, format!("Seatcut workshop {}", hex(&bytes)));
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
    let mut permitted: Vec<GeneralSubtree> = LOCAL_V4
        .iter()
        .map(|(first, bits)| GeneralSubtree::IpAddress(CidrSubnet::from_v4_prefix(*first, *bits)))
        .collect();
    permitted.push(GeneralSubtree::IpAddress(CidrSubnet::from_v6_prefix(LOCAL_V6.0, LOCAL_V6.1)));
    permitted.push(GeneralSubtree::DnsName("local".to_owned()));
    params.name_constraints = Some(NameConstraints { permitted_subtrees: permitted, excluded_subtrees: Vec::new() });
    let key = KeyPair::generate().map_err(unmade)?;
    let certificate = params.self_signed(&key).map_err(unmade)?;
    Ok((certificate.pem(), key.serialize_pem()))
}

/// A certificate for the workshop at these addresses, and its key.
pub(super) fn leaf(
    issuer: &Issuer<'_, KeyPair>,
    addresses: &[IpAddr],
    name: Option<&str>,
) -> Result<(CertificateDer<'static>, Vec<u8>), CertificateError> {
    let mut params = lasting(LEAF_DAYS);
    params.distinguished_name.remove(DnType::CommonName);
    params.distinguished_name.push(DnType::CommonName, "Seatcut workshop");
    params.subject_alt_names = addresses.iter().map(|address| SanType::IpAddress(*address)).collect();
    if let Some(name) = name {
        params.subject_alt_names.push(SanType::DnsName(name.try_into().map_err(unmade)?));
    }
    params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
    params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    params.use_authority_key_identifier_extension = true;
    let serial = hex_128().ok_or_else(no_random)?;
    params.serial_number = Some(SerialNumber::from_slice(serial.as_bytes().get(..16).unwrap_or_default()));
    let key = KeyPair::generate().map_err(unmade)?;
    let certificate = params.signed_by(&key, issuer).map_err(unmade)?;
    Ok((certificate.der().clone(), key.serialize_der()))
}
