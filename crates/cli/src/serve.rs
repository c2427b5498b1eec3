//! A shop served to browsers.

use crate::failure::fail;
use clap::Args;
use dentwright_server::{ServeError, ServeSettings, Server};
use std::path::PathBuf;
use std::process::ExitCode;
use tokio::runtime::Runtime;

/// Which shop, and to whom.
#[derive(Args)]
pub struct ServeOptions {
    /// Folder of the shop; made where there is none.
    #[arg(long, default_value = "dentwright-shop")]
    pub shop: PathBuf,
    /// Port; 0 takes any free one.
    #[arg(long, default_value_t = 8765)]
    pub port: u16,
    /// Let devices on this network in, once they are paired by a code.
    #[arg(long)]
    pub lan: bool,
}

impl ServeOptions {
    /// The same for the server.
    pub fn settings(&self) -> ServeSettings {
        ServeSettings { shop: self.shop.clone(), port: self.port, lan: self.lan }
    }
}

/// Opens the shop and serves it until it is stopped.
pub fn serve_command(options: &ServeOptions) -> ExitCode {
    tracing_subscriber::fmt().with_writer(std::io::stderr).with_max_level(tracing_level()).init();
    let settings = options.settings();
    in_runtime(async move { serve(Server::open(&settings).await?).await })
}

/// Says where the shop is and serves it.
pub async fn serve(server: Server) -> Result<(), ServeError> {
    println!("Dentwright is at {} (stop it with Ctrl-C)", server.address());
    if let Some((address, picture)) = server.pairing() {
        println!(
            "\nOn a phone in this network, scan the code or open {address}\nIt works once, for 15 minutes.\n{picture}"
        );
    }
    server.run(stopped()).await
}

/// Runs a command to its end.
pub fn in_runtime(work: impl Future<Output = Result<(), ServeError>>) -> ExitCode {
    let runtime = match Runtime::new() {
        Ok(runtime) => runtime,
        Err(why) => return fail("Not served", &why.to_string(), "Close other programs and try again."),
    };
    match runtime.block_on(work) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => fail("Not served", &error.to_string(), error.next()),
    }
}

/// Errors of our own go to the terminal; what each request did does not.
fn tracing_level() -> tracing_subscriber::filter::LevelFilter {
    tracing_subscriber::filter::LevelFilter::WARN
}

/// Ctrl-C, or being asked to end.
async fn stopped() {
    let ctrl_c = async {
        if tokio::signal::ctrl_c().await.is_err() {
            std::future::pending::<()>().await;
        }
    };
    #[cfg(unix)]
    let asked = async {
        match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
            Ok(mut signal) => drop(signal.recv().await),
            Err(_) => std::future::pending().await,
        }
    };
    #[cfg(not(unix))]
    let asked = std::future::pending::<()>();
    tokio::select! {
        () = ctrl_c => {}
        () = asked => {}
    }
}
