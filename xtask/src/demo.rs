//! `cargo xtask demo`: from a fresh clone to panels read and an app one can click through.
//!
//! Limits: the program has no server yet. The app is served with the stand-in of `web/dev`, whose shop is
//! invented; what is read here is written to the demo folder, beside its photos, and is not in the app.

use crate::run::{Call, closing, heading};
use crate::{root, tools, web};
use anyhow::Result;
use clap::Args;
use std::path::Path;
use std::process::ExitCode;

/// Rendered captures that are read: recipes of the `scene` crate.
const CAPTURES: [&str; 3] = ["demo_door_before", "demo_bonnet_hail", "demo_wing_crown"];

/// How the demo is made.
#[derive(Args)]
pub struct DemoOptions {
    /// Port to serve the app on.
    #[arg(long, default_value_t = 8765)]
    port: u16,
    /// Folder of the demo's captures and readings; filled on the first run, kept afterwards.
    #[arg(long, default_value = "demo-shop")]
    shop: String,
    /// Stop before serving the app.
    #[arg(long)]
    no_app: bool,
}

/// Builds the web app and the program, renders three captures, reads them, serves the app.
pub fn demo(options: &DemoOptions) -> Result<ExitCode> {
    let root = root()?;
    tools::need_for_building(&root)?;
    let whole = heading("web app");
    web::install(&root)?;
    web::build(&root)?;
    closing("web app", whole, "built");
    let program = heading("program");
    Call::new(&root, "cargo build --release --package dentwright-cli").run()?;
    Call::new(&root, "cargo build --release --package dentwright-scene --example render").run()?;
    closing("program", program, "built");
    read_captures(&root, &root.join(&options.shop))?;
    println!("\nready after {:.0} s", whole.elapsed().as_secs_f64());
    if !options.no_app {
        serve(&root, options.port)?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Renders what is not there yet and reads it.
fn read_captures(root: &Path, shop: &Path) -> Result<()> {
    let since = heading("readings");
    let programs = target_folder(root).join("release");
    let call = |program: &str| Call::new(root, &programs.join(program).to_string_lossy());
    std::fs::create_dir_all(shop.join("readings"))?;
    for name in CAPTURES {
        let (photos, reading) = (shop.join("captures").join(name), shop.join("readings").join(name));
        if !photos.join("capture.toml").is_file() {
            std::fs::create_dir_all(&photos)?;
            call("examples/render").argument(name).argument(photos.to_string_lossy()).run()?;
        }
        println!("\n{name}");
        let read = call("dentwright").argument("read").argument(photos.to_string_lossy());
        read.argument("--out").argument(reading.to_string_lossy()).run()?;
    }
    closing("readings", since, "made");
    Ok(())
}

fn serve(root: &Path, port: u16) -> Result<()> {
    heading("app");
    println!("The shop in it is invented and comes from a stand-in, until the program has a server of its own.");
    println!("End with Ctrl-C.");
    let serve = Call::new(&root.join("web"), "npm run dev -- --host 127.0.0.1 --strictPort --port");
    serve.argument(port.to_string()).run()
}

/// Where cargo puts what it builds.
pub fn target_folder(root: &Path) -> std::path::PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |folder| root.join(folder))
}
