//! `cargo xtask demo`: from a fresh clone to a filled shop and an app one can click through.

use crate::run::{Call, closing, heading};
use crate::{root, tools, web};
use anyhow::Result;
use clap::Args;
use std::path::Path;
use std::process::ExitCode;

/// How the demo is made.
#[derive(Args)]
pub struct DemoOptions {
    /// Port to serve the app on.
    #[arg(long, default_value_t = 8765)]
    port: u16,
    /// Folder of the demo shop; filled on the first run, kept afterwards.
    #[arg(long, default_value = "demo-shop")]
    shop: String,
    /// Let phones in this network in, once they are paired by a code.
    #[arg(long)]
    lan: bool,
    /// Stop before serving the app.
    #[arg(long)]
    no_app: bool,
}

/// Builds the web app and the program that carries it, fills the shop, serves it.
pub fn demo(options: &DemoOptions) -> Result<ExitCode> {
    let root = root()?;
    tools::need_for_building(&root)?;
    let whole = heading("web app");
    web::install(&root)?;
    web::build(&root)?;
    closing("web app", whole, "built");
    let program = heading("program");
    Call::new(&root, "cargo build --release --package dentwright-cli").run()?;
    closing("program", program, "built");
    let shop = heading("shop");
    call(&root, options).argument("--fill-only").run()?;
    closing("shop", shop, "filled");
    println!("\nready after {:.0} s", whole.elapsed().as_secs_f64());
    if !options.no_app {
        let port = call(&root, options).argument("--port").argument(options.port.to_string());
        if options.lan { port.argument("--lan") } else { port }.run()?;
    }
    Ok(ExitCode::SUCCESS)
}

fn call(root: &Path, options: &DemoOptions) -> Call {
    let program = target_folder(root).join("release/dentwright");
    let shop = root.join(&options.shop);
    Call::new(root, &program.to_string_lossy()).argument("demo").argument("--shop").argument(shop.to_string_lossy())
}

/// Where cargo puts what it builds.
pub fn target_folder(root: &Path) -> std::path::PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |folder| root.join(folder))
}
