//! Opening a shop and serving it.

use crate::app::App;
use crate::door::{Door, with_port};
use crate::erasure;
use crate::guard::Encrypted;
use crate::pair::qr_terminal;
use crate::router::router;
use crate::tls::Authority;
use axum::Extension;
use axum_server::tls_rustls::RustlsConfig;
use dentwright_store::{OpenError, Store, StoreError};
use jiff::Timestamp;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};
use std::path::{Path, PathBuf};
use tokio::net::TcpListener;

/// How a shop is served.
#[derive(Debug, Clone)]
pub struct ServeSettings {
    /// Folder of the shop; made where there is none.
    pub shop: PathBuf,
    /// Port; 0 takes any free one.
    pub port: u16,
    /// Whether other devices on the network may be paired.
    pub lan: bool,
}

/// Why a shop cannot be served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// The folder cannot be opened.
    #[error(transparent)]
    Open(#[from] OpenError),
    /// The record cannot be used.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The port cannot be had.
    #[error("the port {port} cannot be used: {why}")]
    Port {
        /// Which.
        port: u16,
        /// Why.
        why: std::io::Error,
    },
    /// The connection broke down.
    #[error("serving ended: {0}")]
    Ended(std::io::Error),
}

impl ServeError {
    /// What to do.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::Open(OpenError::InUse(_)) => "Close the other Dentwright, or name another folder with --shop.",
            Self::Open(OpenError::Version { .. }) => "Open this folder with the newer Dentwright that wrote it.",
            Self::Open(_) => "Choose a folder that can be written to, with --shop.",
            Self::Port { .. } => "Choose another port with --port, or 0 for any free one.",
            Self::Store(_) | Self::Ended(_) => "Start it again.",
        }
    }
}

/// A shop that is open and listening, and not yet served.
pub struct Server {
    app: App,
    listener: TcpListener,
    address: SocketAddr,
    secure: Option<Secure>,
}

/// The encrypted door.
struct Secure {
    listener: std::net::TcpListener,
    config: RustlsConfig,
}

impl Server {
    /// Opens the shop's folder and the port.
    ///
    /// # Errors
    /// When the folder is in use or unusable, or the port is taken.
    pub async fn open(settings: &ServeSettings) -> Result<Self, ServeError> {
        let store = Store::open(&settings.shop).await?;
        Self::of_store(store, settings).await
    }

    /// Listens for a shop that is open already.
    ///
    /// # Errors
    /// When the port is taken.
    pub async fn of_store(store: Store, settings: &ServeSettings) -> Result<Self, ServeError> {
        let on = IpAddr::from(if settings.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST });
        let listener = TcpListener::bind((on, settings.port))
            .await
            .map_err(|why| ServeError::Port { port: settings.port, why })?;
        let address = listener.local_addr().map_err(ServeError::Ended)?;
        let outside = settings.lan.then(own_address).flatten();
        let secure = match outside {
            Some(outside) => secure(&settings.shop, outside, address.port()).await,
            None => None,
        };
        let secure_port = secure.as_ref().and_then(|(door, _)| door.listener.local_addr().ok()).map(|a| a.port());
        let door = Door::new(outside, address.port(), secure_port);
        let (secure, authority) = secure.map_or((None, None), |(door, pem)| (Some(door), Some(pem.into())));
        let app = App::of(store, door, authority);
        Ok(Self { app, listener, address, secure })
    }

    /// Where the app is on this machine.
    #[must_use]
    pub fn address(&self) -> String {
        format!("http://{}", with_port(Ipv4Addr::LOCALHOST.into(), self.address.port()))
    }

    /// A new pairing code: its address and the QR code for a terminal. None where the server is closed to
    /// other devices or knows no address of its own.
    #[must_use]
    pub fn pairing(&self) -> Option<(String, String)> {
        let code = self.app.door.new_code(Timestamp::now()).ok()?;
        let address = self.app.door.pairing_address(&code)?;
        let picture = qr_terminal(&address).ok()?;
        Some((address, picture))
    }

    /// Serves until `until` comes; a read that runs then is stopped and said to be so.
    ///
    /// # Errors
    /// When the record or the network fails.
    pub async fn run(self, until: impl Future<Output = ()> + Send + 'static) -> Result<(), ServeError> {
        let worker = self.app.reads.clone().start(self.app.store.clone()).await?;
        let erasing = tokio::spawn(erasure::keep_at_it(self.app.clone()));
        let handle = axum_server::Handle::new();
        if let Some(secure) = self.secure {
            let app = router(self.app.clone()).layer(Extension(Encrypted));
            let service = app.into_make_service_with_connect_info::<SocketAddr>();
            let server = axum_server::from_tcp_rustls(secure.listener, secure.config).map_err(ServeError::Ended)?;
            tokio::spawn(server.handle(handle.clone()).serve(service));
        }
        let service = router(self.app.clone()).into_make_service_with_connect_info::<SocketAddr>();
        let served = axum::serve(self.listener, service).with_graceful_shutdown(until).await;
        handle.shutdown();
        erasing.abort();
        self.app.reads.stop();
        let _ = worker.await;
        served.map_err(ServeError::Ended)
    }
}

/// The encrypted door, and the authority that vouches for it. Only the live camera needs it, so that nothing
/// fails where it cannot be had; the log says why.
async fn secure(shop: &Path, outside: IpAddr, beside: u16) -> Option<(Secure, String)> {
    let open = async || -> Result<(Secure, String), Box<dyn std::error::Error>> {
        let authority = Authority::of(shop)?;
        let config = authority.vouch(&[outside, Ipv4Addr::LOCALHOST.into()]).await?;
        let bind = |port| std::net::TcpListener::bind((Ipv4Addr::UNSPECIFIED, port));
        let listener = bind(beside.wrapping_add(1)).or_else(|_| bind(0))?;
        listener.set_nonblocking(true)?;
        Ok((Secure { listener, config }, authority.pem))
    };
    open().await.inspect_err(|why| tracing::warn!("no encrypted door, so no live camera on phones: {why}")).ok()
}

/// This machine's address on the way out: the system chooses it, and nothing is sent.
fn own_address() -> Option<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).ok()?; // TEST-NET-1, RFC 5737
    let address = socket.local_addr().ok()?.ip();
    (!address.is_loopback() && !address.is_unspecified()).then_some(address)
}
