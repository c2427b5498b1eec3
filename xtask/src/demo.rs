//! `cargo xtask demo`: from a fresh clone to a shop one can click through.

use crate::run::{Call, closing, heading};
use crate::{root, tools, web};
use anyhow::Result;
use clap::Args;
use std::process::ExitCode;

/// How the demo is served.
#[derive(Args)]
pub struct DemoOptions {
    /// Open it to the local network; a phone then pairs with the one-time code that is shown.
    #[arg(long)]
    lan: bool,
    /// Port to serve on.
    #[arg(long, default_value_t = 8765)]
    port: u16,
    /// Folder of the demo shop; filled on the first run, kept afterwards.
    #[arg(long, default_value = "demo-shop")]
    shop: String,
}

/// Builds the web app, then the program that carries it, then fills the demo shop and serves it.
pub fn demo(options: &DemoOptions) -> Result<ExitCode> {
    let root = root()?;
    tools::need_for_building(&root)?;
    let whole = heading("web app");
    web::install(&root)?;
    web::build(&root)?;
    closing("web app", whole, "built");
    let binary = heading("program");
    Call::new(&root, "cargo build --release --package dentwright-cli").run()?;
    closing("program", binary, "built");
    println!("\nready after {:.0} s", whole.elapsed().as_secs_f64());
    serve(options)
}

fn serve(options: &DemoOptions) -> Result<ExitCode> {
    let root = root()?;
    let program = target_folder(&root).join("release/dentwright");
    let mut call = Call::new(&root, &program.to_string_lossy()).argument("demo");
    call = call.argument("--shop").argument(&options.shop).argument("--port").argument(options.port.to_string());
    if options.lan {
        call = call.argument("--lan");
    }
    call.run()?;
    Ok(ExitCode::SUCCESS)
}

/// Where cargo puts what it builds.
pub fn target_folder(root: &std::path::Path) -> std::path::PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |folder| root.join(folder))
}
