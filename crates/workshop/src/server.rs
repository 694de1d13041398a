//! Opening the workshop, and closing it.

use crate::address::{self, AddressError};
use crate::assets::Assets;
use crate::certificates::{Authority, CertificateError};
use crate::door::{Door, Inside};
use crate::said::{NetworkSaid, Said};
use crate::store::{Save, Store, StoreError};
use crate::{api, listen, pages, random};
use std::io;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;
use thiserror::Error;
use tokio::net::TcpListener;
use tokio::sync::watch;
use tokio::task::JoinHandle;
use tokio_rustls::TlsAcceptor;

/// How the workshop is opened.
#[derive(Clone, Debug)]
pub struct Options {
    /// The folder of jobs and certificates.
    pub data: PathBuf,
    /// The port; the page on which phones start has the next one. 0 takes any that are free.
    pub port: u16,
    /// Whether the workshop is on the network: at these addresses, or at all that are local.
    pub network: Option<Vec<IpAddr>>,
    /// The first job on the shelf of a store that never had one.
    pub first_job: String,
}

/// Why the workshop did not open. Each text says what to do.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum ServeError {
    /// The store can't be used.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The certificates can't be used.
    #[error(transparent)]
    Certificate(#[from] CertificateError),
    /// There is no address on the network.
    #[error(transparent)]
    Address(#[from] AddressError),
    /// The port can't be had.
    #[error("{address} can't be used: {why}. Is the workshop open already? Close it, or take another port with --port")]
    Port {
        /// Which.
        address: SocketAddr,
        /// What the system says.
        why: io::Error,
    },
    /// The system refuses something else.
    #[error("the workshop can't be opened: {0}. Close other programs and try again")]
    System(#[from] io::Error),
    /// No random bits.
    #[error("the system gives no random bits, without which nothing can be named or protected. Try again")]
    NoRandom,
}

/// A workshop that is open.
#[derive(Debug)]
pub struct Running {
    /// Where this machine's door is.
    pub here: SocketAddr,
    /// Where the doors to the network are.
    pub network: Vec<SocketAddr>,
    /// Where the pages on which phones start are.
    pub start: Vec<SocketAddr>,
    stop: watch::Sender<bool>,
    doors: Vec<JoinHandle<()>>,
}

impl Running {
    /// Closes the workshop: what is in work ends, what was answered is on the disk.
    pub async fn close(self) {
        self.stop.send_replace(true);
        for door in self.doors {
            // A door that fell over is closed too.
            let _ = door.await;
        }
    }
}

async fn bind(ip: IpAddr, port: u16) -> Result<(TcpListener, SocketAddr), ServeError> {
    let address = SocketAddr::new(ip, port);
    let listener = TcpListener::bind(address).await.map_err(|why| ServeError::Port { address, why })?;
    let address = listener.local_addr()?;
    Ok((listener, address))
}

/// The doors to the network, bound but not open yet.
struct Network {
    authority: Authority,
    tls: TlsAcceptor,
    doors: Vec<(TcpListener, SocketAddr)>,
    starts: Vec<(TcpListener, SocketAddr)>,
    name: Option<String>,
}

impl Network {
    async fn bind(options: &Options, named: &[IpAddr]) -> Result<Self, ServeError> {
        let addresses = address::local(named)?;
        let name = address::local_name();
        let authority = Authority::of(&options.data)?;
        let tls = TlsAcceptor::from(authority.tls(&addresses, name.as_deref())?);
        let next = if options.port == 0 { 0 } else { options.port.saturating_add(1) };
        let (mut doors, mut starts) = (Vec::new(), Vec::new());
        for ip in addresses {
            doors.push(bind(ip, options.port).await?);
            starts.push(bind(ip, next).await?);
        }
        Ok(Self { authority, tls, doors, starts, name })
    }

    /// Hosts that requests may name.
    fn hosts(&self) -> Vec<String> {
        let addresses = self.doors.iter().map(|(_, address)| address.to_string());
        let named = self
            .doors
            .iter()
            .filter_map(|(_, address)| self.name.as_ref().map(|name| format!("{name}:{}", address.port())));
        addresses.chain(named).collect()
    }

    fn said(&self) -> NetworkSaid {
        let mut addresses: Vec<String> = self.hosts().iter().map(|host| format!("https://{host}/")).collect();
        addresses.dedup();
        let start = self.starts.first().map(|(_, address)| format!("http://{address}/")).unwrap_or_default();
        let square = pages::square_in_letters(&start);
        NetworkSaid { addresses, start, fingerprint: self.authority.fingerprint(), square }
    }
}

/// Opens the workshop. It is open when this returns.
///
/// # Errors
/// When the store, the port or the certificates can't be used.
pub async fn start(
    options: Options,
    assets: Assets,
    tell: Box<dyn Fn(&Said) + Send + Sync>,
) -> Result<Running, ServeError> {
    let store = Store::open(&options.data)?;
    let first = Save {
        job: random::hex_128().ok_or(ServeError::NoRandom)?,
        base: 0,
        text: options.first_job.clone(),
        device: "Seatcut".to_owned(),
        save: random::hex_128().ok_or(ServeError::NoRandom)?,
    };
    store.start_with(first).await?;
    let (listener, here) = bind(IpAddr::V4(Ipv4Addr::LOCALHOST), options.port).await?;
    let network = match &options.network {
        Some(named) => Some(Network::bind(&options, named).await?),
        None => None,
    };
    let said = network.as_ref().map(Network::said);
    let inside = Arc::new(Inside::new(store, assets, said.clone(), tell));
    inside.renew_tokens()?;

    let (stop, stopped) = watch::channel(false);
    let here_hosts = ["localhost", "127.0.0.1", "[::1]"].map(|host| format!("{host}:{}", here.port()));
    let door = Door { inside: inside.clone(), network: false, hosts: here_hosts.into_iter().collect() };
    let mut running = Running { here, network: Vec::new(), start: Vec::new(), stop, doors: Vec::new() };
    running.doors.push(tokio::spawn(listen::serve(listener, None, api::router(door), stopped.clone())));
    if let Some(network) = network {
        let door = Door { inside: inside.clone(), network: true, hosts: network.hosts().into() };
        let router = api::router(door);
        let start_page = pages::start_router(&network.authority, said.as_ref());
        for (listener, address) in network.doors {
            running.network.push(address);
            let serve = listen::serve(listener, Some(network.tls.clone()), router.clone(), stopped.clone());
            running.doors.push(tokio::spawn(serve));
        }
        for (listener, address) in network.starts {
            running.start.push(address);
            running.doors.push(tokio::spawn(listen::serve(listener, None, start_page.clone(), stopped.clone())));
        }
    }
    inside.tell(&Said::Open { address: format!("http://localhost:{}/", here.port()) });
    if let Some(said) = said {
        inside.tell(&Said::Network(Box::new(said)));
        inside.tell_code();
    }
    Ok(running)
}

/// Opens the workshop and keeps it open until the system asks it to close.
///
/// # Errors
/// As [`start`].
pub fn serve(options: Options, assets: Assets, tell: Box<dyn Fn(&Said) + Send + Sync>) -> Result<(), ServeError> {
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build()?;
    runtime.block_on(async {
        let running = start(options, assets, tell).await?;
        asked_to_close().await;
        running.close().await;
        Ok(())
    })
}

/// Waits for Ctrl-C, or for the system's request to end.
async fn asked_to_close() {
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut term) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = term.recv() => {}
                _ = tokio::signal::ctrl_c() => {}
            }
            return;
        }
    }
    // Without a handler the system ends the program by itself.
    if tokio::signal::ctrl_c().await.is_err() {
        std::future::pending::<()>().await;
    }
}
