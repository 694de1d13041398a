//! The addresses of this machine on the local network.

use std::io;
use std::net::{IpAddr, Ipv4Addr};
use thiserror::Error;

/// Why the workshop can't be reached on the network.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum AddressError {
    /// No network, or only the open one.
    #[error("this machine has no address on a local network. Join one, or leave out --network")]
    None,
    /// The address is not of a local network.
    #[error(
        "{0} is not an address of a local network, and the workshop is not for the open internet. Name another one, or leave it out"
    )]
    NotLocal(IpAddr),
    /// The system does not say.
    #[error("the addresses of this machine can't be found: {0}. Name the one to use: --network ADDRESS")]
    Unknown(#[from] io::Error),
}

/// Networks that are nobody's but the local ones', as first address and length
/// of the prefix in bits: RFC 1918, RFC 6598 (shared), RFC 3927 (link-local),
/// and this machine itself.
pub(crate) const LOCAL_V4: [([u8; 4], u8); 6] = [
    ([10, 0, 0, 0], 8),
    ([172, 16, 0, 0], 12),
    ([192, 168, 0, 0], 16),
    ([100, 64, 0, 0], 10),
    ([169, 254, 0, 0], 16),
    ([127, 0, 0, 0], 8),
];

/// Unique local addresses (RFC 4193), as bytes of the first and length of the prefix in bits.
pub(crate) const LOCAL_V6: ([u8; 16], u8) = ([0xfc, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0], 7);

/// Whether an address belongs to a local network.
pub(crate) fn is_local(address: IpAddr) -> bool {
    match address {
        IpAddr::V4(address) => LOCAL_V4.iter().any(|(first, bits)| {
            let shift = 32 - u32::from(*bits);
            address.to_bits() >> shift == Ipv4Addr::from(*first).to_bits() >> shift
        }),
        IpAddr::V6(address) => {
            let [first, ..] = address.octets();
            let [local, ..] = LOCAL_V6.0;
            first & 0xfe == local
        }
    }
}

/// The addresses to use: those named, or all that this machine has on local networks.
pub(crate) fn local(named: &[IpAddr]) -> Result<Vec<IpAddr>, AddressError> {
    if let Some(open) = named.iter().find(|address| !is_local(**address)) {
        return Err(AddressError::NotLocal(*open));
    }
    if !named.is_empty() {
        return Ok(named.to_vec());
    }
    let all = if_addrs::get_if_addrs()?.into_iter().filter(|interface| !interface.is_loopback());
    // One kind is enough, and phones type the shorter one.
    let mut found: Vec<IpAddr> =
        all.map(|interface| interface.ip()).filter(|ip| ip.is_ipv4() && is_local(*ip)).collect();
    found.sort_unstable();
    found.dedup();
    if found.is_empty() { Err(AddressError::None) } else { Ok(found) }
}

/// The name of this machine on the local network, if it has one that devices can look up.
pub(crate) fn local_name() -> Option<String> {
    /// Longest label of a name, RFC 1035.
    const LONGEST: usize = 63;
    let whole = gethostname::gethostname().into_string().ok()?.to_ascii_lowercase();
    let label = whole.split('.').next()?;
    let plain = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
    let fits = !label.is_empty() && label.len() <= LONGEST && label.bytes().all(plain) && !label.starts_with('-');
    (fits && label != "localhost").then(|| format!("{label}.local"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_local_networks_are_local() {
        for local in ["10.1.2.3", "172.31.0.1", "192.168.4.5", "169.254.1.1", "100.100.1.1", "127.0.0.2", "fd12::1"] {
            assert!(is_local(local.parse().unwrap()), "{local}");
        }
        for open in ["8.8.8.8", "172.32.0.1", "192.169.0.1", "100.128.0.1", "2001:db8::1", "0.0.0.0", "fe80::1", "::"] {
            assert!(!is_local(open.parse().unwrap()), "{open}");
        }
        assert!(matches!(local(&["8.8.8.8".parse().unwrap()]), Err(AddressError::NotLocal(_))));
    }
}
