//! A Chromium for the browser tests: found, or installed by apt-get where that needs no password.

use crate::run::Call;
use crate::tools::{find, install_line};
use anyhow::{Result, bail};
use std::path::{Path, PathBuf};

/// Names under which systems install it; the browser tests look for the same.
const NAMES: [&str; 4] = ["chromium", "chromium-browser", "google-chrome", "chrome"];

/// Path of the browser. Installs one where it may, else fails with the one command.
pub fn ensure_browser(root: &Path) -> Result<PathBuf> {
    if let Some(path) = found() {
        return Ok(path);
    }
    if let Some(prefix) = may_install(root) {
        println!("no Chromium found: installing it with apt-get");
        let install = |line: &str| {
            Call::new(root, &format!("{prefix}{line}")).variable("DEBIAN_FRONTEND", "noninteractive").run()
        };
        install("apt-get update")?;
        install("apt-get install --yes --no-install-recommends chromium")?;
    }
    match found() {
        Some(path) => Ok(path),
        None => bail!(
            "the browser tests need a Chromium: {}\n(or name one: CHROMIUM=/path/to/chromium cargo xtask check)",
            install_line(&["chromium"])
        ),
    }
}

fn found() -> Option<PathBuf> {
    let named = std::env::var_os("CHROMIUM").map(PathBuf::from);
    named.filter(|path| path.is_file()).or_else(|| NAMES.iter().find_map(|name| find(name)))
}

/// What to put before apt-get so that it runs unasked; `None` where it would ask or is not there.
fn may_install(root: &Path) -> Option<&'static str> {
    find("apt-get")?;
    let is_root = Call::new(root, "id -u").output().is_some_and(|id| id.trim() == "0");
    let is_free_sudo = || Call::new(root, "sudo -n true").output().is_some();
    if is_root { Some("") } else { is_free_sudo().then_some("sudo -n ") }
}
