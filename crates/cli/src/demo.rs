//! The demo: a shop filled with invented jobs.

use crate::demo_shop::fill;
use crate::failure::fail;
use crate::serve::{ServeOptions, in_runtime, serve};
use clap::Args;
use dentwright_scene::{demo, sheet};
use dentwright_server::{ServeError, Server};
use dentwright_store::Store;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Which shop is filled, and whether it is served.
#[derive(Args)]
pub struct DemoOptions {
    #[command(flatten)]
    serve: ServeOptions,
    /// Fill the shop and end.
    #[arg(long)]
    fill_only: bool,
}

/// Where captures go.
#[derive(Args)]
pub struct CapturesOptions {
    /// Folder that gets one folder a capture.
    folder: PathBuf,
    /// Photos of the camera sheet instead.
    #[arg(long)]
    camera: bool,
}

/// Fills the shop where it has no job yet, then serves it.
pub fn demo_command(options: &DemoOptions) -> ExitCode {
    let settings = options.serve.settings();
    in_runtime(async {
        let store = Store::open(&settings.shop).await?;
        if store.jobs().await?.is_empty()
            && let Err(why) = fill(&store).await
        {
            return Err(ServeError::Ended(std::io::Error::other(format!("the demo cannot be filled: {why:#}"))));
        }
        if options.fill_only {
            return Ok(());
        }
        serve(Server::of_store(store, &settings).await?).await
    })
}

/// Renders the demo captures.
pub fn captures_command(options: &CapturesOptions) -> ExitCode {
    if options.camera {
        return match render_sheet(&options.folder) {
            Ok(()) => ExitCode::SUCCESS,
            Err(why) => fail("Not rendered", &format!("{why:#}"), "Choose a folder that can be written to."),
        };
    }
    for one in demo::ALL {
        let folder = options.folder.join(one.recipe);
        if let Err(why) = render(&one, &folder) {
            return fail("Not rendered", &format!("{why:#}"), "Choose a folder that can be written to.");
        }
        println!("{}", folder.display());
    }
    ExitCode::SUCCESS
}

/// Renders one capture into a folder.
pub fn render(one: &demo::Demo, folder: &Path) -> anyhow::Result<()> {
    one.render()?.write(folder)?;
    Ok(())
}

/// Renders photos of the camera sheet into a folder.
fn render_sheet(folder: &Path) -> anyhow::Result<()> {
    std::fs::create_dir_all(folder)?;
    for photo in sheet::photos()? {
        std::fs::write(folder.join(&photo.file), &photo.jpeg)?;
    }
    println!("{}", folder.display());
    Ok(())
}
