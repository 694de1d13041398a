//! A workshop in a folder of its own, and a client that speaks plain HTTP/1.1
//! over a socket, so that the tests can say exactly what they send.

use rustls::pki_types::{CertificateDer, ServerName};
use rustls::{ClientConfig, ClientConnection, RootCertStore, StreamOwned};
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::{IpAddr, SocketAddr, TcpStream};
use std::path::Path;
use std::sync::{Arc, Mutex};
use tempfile::TempDir;
use workshop::{Assets, Options, Running, Said, start};

pub const JOB: &str = include_str!("../../../../examples/whole-house.toml");
pub const ID: &str = "0123456789abcdef0123456789abcdef";

/// An open workshop.
pub struct Shop {
    pub folder: TempDir,
    pub running: Option<Running>,
    pub said: Arc<Mutex<Vec<Said>>>,
    runtime: tokio::runtime::Runtime,
}

impl Shop {
    pub fn open() -> Self {
        Self::open_in(TempDir::new().unwrap(), None)
    }

    /// Open to a network that every machine has: its own.
    pub fn open_to_network() -> Self {
        Self::open_in(TempDir::new().unwrap(), Some(vec!["127.0.0.1".parse().unwrap()]))
    }

    pub fn open_in(folder: TempDir, network: Option<Vec<IpAddr>>) -> Self {
        let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().unwrap();
        let options = Options { data: folder.path().to_owned(), port: 0, network, first_job: JOB.to_owned() };
        let said = Arc::new(Mutex::new(Vec::new()));
        let hears = said.clone();
        let tell = Box::new(move |said: &Said| hears.lock().unwrap().push(said.clone()));
        let running = runtime.block_on(start(options, assets(), tell)).unwrap();
        Self { folder, running: Some(running), said, runtime }
    }

    pub fn close(mut self) -> TempDir {
        if let Some(running) = self.running.take() {
            self.runtime.block_on(running.close());
        }
        std::mem::replace(&mut self.folder, TempDir::new().unwrap())
    }

    pub fn here(&self) -> SocketAddr {
        self.running.as_ref().unwrap().here
    }

    pub fn network(&self) -> SocketAddr {
        self.running.as_ref().unwrap().network[0]
    }

    pub fn start_page(&self) -> SocketAddr {
        self.running.as_ref().unwrap().start[0]
    }

    /// The code that was told last.
    pub fn code(&self) -> String {
        let said = self.said.lock().unwrap();
        let code = said.iter().rev().find_map(|said| match said {
            Said::Code { code } => Some(code.clone()),
            _ => None,
        });
        code.expect("a code was told")
    }

    /// Asks at the door of this machine.
    pub fn ask(&self, method: &str, path: &str, body: Option<&Value>) -> Answer {
        let host = format!("127.0.0.1:{}", self.here().port());
        send(TcpStream::connect(self.here()).unwrap(), &request(method, path, &host, &[], body))
    }

    /// Asks at the door of this machine with a head of one's own.
    pub fn ask_raw(&self, request: &str) -> Answer {
        send(TcpStream::connect(self.here()).unwrap(), request)
    }

    /// Asks at the door of the network, trusting the workshop's authority.
    pub fn ask_network(&self, method: &str, path: &str, headers: &[(&str, &str)], body: Option<&Value>) -> Answer {
        let address = self.network();
        let request = request(method, path, &address.to_string(), headers, body);
        send(self.tls(address.ip()).unwrap(), &request)
    }

    /// A TLS connection, if the certificate is good for this name or address.
    pub fn tls(&self, name: IpAddr) -> Result<StreamOwned<ClientConnection, TcpStream>, std::io::Error> {
        let config = trusting(&authority(self.folder.path()));
        let mut connection = ClientConnection::new(config, ServerName::from(name)).unwrap();
        let mut socket = TcpStream::connect(self.network()).unwrap();
        while connection.is_handshaking() {
            connection.complete_io(&mut socket)?;
        }
        Ok(StreamOwned::new(connection, socket))
    }

    /// Saves a job and gives what came back.
    pub fn save(&self, base: i64, text: &str, save: u32) -> Answer {
        let body = json!({ "base": base, "text": text, "device": "Phone", "save": format!("{save:032x}") });
        self.ask("PUT", &format!("/api/1/jobs/{ID}"), Some(&body))
    }
}

impl Drop for Shop {
    fn drop(&mut self) {
        if let Some(running) = self.running.take() {
            self.runtime.block_on(running.close());
        }
    }
}

pub fn assets() -> Assets {
    let file = |path: &str, text: &'static str| (path.to_owned(), text.as_bytes().into());
    [
        file("index.html", "<!doctype html><title>Seatcut</title>"),
        file("manifest.webmanifest", "{}"),
        file("assets/core-1a2b.wasm", "\0asm"),
    ]
    .into_iter()
    .collect()
}

/// The certificate of a data folder.
pub fn authority(folder: &Path) -> CertificateDer<'static> {
    let pem = std::fs::read(folder.join("seatcut-workshop.crt")).unwrap();
    rustls::pki_types::pem::PemObject::from_pem_slice(&pem).unwrap()
}

/// A client that trusts one authority.
pub fn trusting(authority: &CertificateDer<'static>) -> Arc<ClientConfig> {
    let mut roots = RootCertStore::empty();
    roots.add(authority.clone()).unwrap();
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let builder = ClientConfig::builder_with_provider(provider).with_safe_default_protocol_versions().unwrap();
    Arc::new(builder.with_root_certificates(roots).with_no_client_auth())
}

fn request(method: &str, path: &str, host: &str, headers: &[(&str, &str)], body: Option<&Value>) -> String {
    let mut text = format!("{method} {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n");
    for (name, value) in headers {
        text.push_str(&format!("{name}: {value}\r\n"));
    }
    let body = body.map(Value::to_string).unwrap_or_default();
    if !body.is_empty() {
        text.push_str(&format!("Content-Type: application/json\r\nContent-Length: {}\r\n", body.len()));
    }
    format!("{text}\r\n{body}")
}

/// A plain request to read something.
pub fn request_to(path: &str, host: &str) -> String {
    request("GET", path, host, &[], None)
}

/// What came back.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: Vec<u8>,
}

impl Answer {
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap_or_else(|error| panic!("{error}: {self:?}"))
    }

    /// The value of a header.
    pub fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().find_map(|line| {
            let (known, value) = line.split_once(':')?;
            known.eq_ignore_ascii_case(name).then(|| value.trim())
        })
    }

    #[track_caller]
    pub fn expect(self, status: u16) -> Self {
        assert_eq!(self.status, status, "{} {}", self.head, String::from_utf8_lossy(&self.body));
        self
    }
}

pub fn send(mut stream: impl Read + Write, request: &str) -> Answer {
    // The workshop may refuse before it has read everything.
    let _ = stream.write_all(request.as_bytes()).and_then(|()| stream.flush());
    let mut bytes = Vec::new();
    let _ = stream.read_to_end(&mut bytes);
    let end = bytes.windows(4).position(|window| window == b"\r\n\r\n").unwrap_or(bytes.len());
    let head = String::from_utf8_lossy(&bytes[..end]).into_owned();
    let body = bytes.get(end + 4..).unwrap_or_default().to_vec();
    let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
    Answer { status, head, body }
}
