//! The workshop's own certificates, as a phone sees them.

use crate::client::{Shop, authority, request_to, send, trusting};
use rcgen::{CertificateParams, Issuer, KeyPair};
use rustls::client::danger::ServerCertVerifier;
use rustls::pki_types::{ServerName, UnixTime};
use rustls::{RootCertStore, client::WebPkiServerVerifier};
use sha2::{Digest, Sha256};
use std::net::TcpStream;
use std::sync::Arc;
use workshop::Said;

#[test]
fn who_trusts_the_authority_gets_through_and_only_to_its_address() {
    let shop = Shop::open_to_network();
    assert!(shop.tls("127.0.0.1".parse().unwrap()).is_ok());
    assert!(shop.tls("127.0.0.2".parse().unwrap()).is_err());
    // Another workshop is another authority.
    let other = Shop::open_to_network();
    let mut connection =
        rustls::ClientConnection::new(trusting(&authority(other.folder.path())), ServerName::from(shop.network().ip()))
            .unwrap();
    let mut socket = TcpStream::connect(shop.network()).unwrap();
    let refused = loop {
        match connection.complete_io(&mut socket) {
            Err(error) => break error,
            Ok(_) if !connection.is_handshaking() => panic!("a stranger was trusted"),
            Ok(_) => {}
        }
    };
    assert!(refused.to_string().contains("certificate"), "{refused}");
    // Plain HTTP is not answered there.
    let plain = send(TcpStream::connect(shop.network()).unwrap(), &request_to("/", &shop.network().to_string()));
    assert_eq!(plain.status, 0);
}

#[test]
fn the_authority_stays_and_its_key_is_private() {
    let shop = Shop::open_to_network();
    let first = authority(shop.folder.path());
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let key = std::fs::metadata(shop.folder.path().join("seatcut-workshop.key")).unwrap();
        assert_eq!(key.permissions().mode() & 0o777, 0o600);
    }
    let shop = Shop::open_in(shop.close(), Some(vec!["127.0.0.1".parse().unwrap()]));
    assert_eq!(authority(shop.folder.path()), first);
    assert!(shop.tls("127.0.0.1".parse().unwrap()).is_ok());
}

#[test]
fn the_first_page_gives_the_certificate_and_nothing_else() {
    let shop = Shop::open_to_network();
    let address = shop.start_page();
    let get = |path: &str| send(TcpStream::connect(address).unwrap(), &request_to(path, &address.to_string()));
    let digest: [u8; 32] = Sha256::digest(authority(shop.folder.path())).into();
    let fingerprint = digest.map(|byte| format!("{byte:02X}")).join(":");
    let page = get("/").expect(200);
    assert!(String::from_utf8(page.body).unwrap().contains(&fingerprint));
    let told = shop.said.lock().unwrap().iter().any(|said| match said {
        Said::Network(network) => network.fingerprint == fingerprint,
        _ => false,
    });
    assert!(told);
    let certificate = get("/seatcut-workshop.crt").expect(200);
    assert_eq!(certificate.header("content-type"), Some("application/x-x509-ca-cert"));
    assert_eq!(certificate.body, authority(shop.folder.path()).as_ref());
    get("/pages.css").expect(200);
    for path in ["/seatcut-workshop.key", "/api/1/hello", "/api/1/jobs", "/index.html", "/pair", "/workshop", "/../x"] {
        get(path).expect(404);
    }
}

#[test]
fn a_stolen_key_opens_no_site_of_the_internet() {
    let shop = Shop::open_to_network();
    let root = authority(shop.folder.path());
    let key = std::fs::read_to_string(shop.folder.path().join("seatcut-workshop.key")).unwrap();
    let issuer = Issuer::from_ca_cert_der(&root, KeyPair::from_pem(&key).unwrap()).unwrap();
    let mut roots = RootCertStore::empty();
    roots.add(root).unwrap();
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let verifier = WebPkiServerVerifier::builder_with_provider(Arc::new(roots), provider).build().unwrap();
    let is_good = |name: &str| {
        let forged = CertificateParams::new(vec![name.to_owned()]).unwrap();
        let forged = forged.signed_by(&KeyPair::generate().unwrap(), &issuer).unwrap();
        let server = ServerName::try_from(name.to_owned()).unwrap();
        verifier.verify_server_cert(forged.der(), &[], &server, &[], UnixTime::now()).is_ok()
    };
    assert!(is_good("192.168.1.7") && is_good("10.0.0.1") && is_good("laptop.local"));
    for name in ["example.com", "notlocal", "local.example.com", "8.8.8.8", "172.32.0.1"] {
        assert!(!is_good(name), "{name}");
    }
}
