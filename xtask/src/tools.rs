//! What must be on the machine before anything starts, and the one command that brings it.

use crate::run::Call;
use anyhow::{Result, bail};
use std::path::{Path, PathBuf};

/// Vite needs this major version of Node.
const OLDEST_NODE: u32 = 20;

/// Fails with the command to type when Node, npm or a C compiler is missing.
pub fn need_for_building(root: &Path) -> Result<()> {
    let Some(version) = Call::new(root, "node --version").output() else {
        bail!(
            "Node is not installed, and the web app is built with it.\nInstall Node {OLDEST_NODE} or newer: {}",
            install_line(&["nodejs", "npm"])
        );
    };
    let major: u32 = version.trim().trim_start_matches('v').split('.').next().and_then(|n| n.parse().ok()).unwrap_or(0);
    if major < OLDEST_NODE {
        bail!("Node {} is too old for the web app's build; Node {OLDEST_NODE} or newer is needed", version.trim());
    }
    if find("npm").is_none() {
        bail!("npm is not installed: {}", install_line(&["npm"]));
    }
    if ["cc", "gcc", "clang"].iter().all(|name| find(name).is_none()) {
        bail!("no C compiler is installed; SQLite and the tag finder are C: {}", install_line(&["gcc"]));
    }
    Ok(())
}

/// Fails with the command to type when rustfmt or clippy is missing.
pub fn need_for_checking(root: &Path) -> Result<()> {
    for (component, line) in [("rustfmt", "cargo fmt --version"), ("clippy", "cargo clippy --version")] {
        if Call::new(root, line).output().is_none() {
            bail!("{component} is not installed: rustup component add {component}");
        }
    }
    Ok(())
}

/// Where a program stands in PATH.
pub fn find(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path).map(|folder| folder.join(name)).find(|file| file.is_file())
}

/// The package manager's line that installs packages of these names.
pub fn install_line(packages: &[&str]) -> String {
    let packages = packages.join(" ");
    let known = [
        ("apt-get", "sudo apt-get install -y"),
        ("dnf", "sudo dnf install -y"),
        ("pacman", "sudo pacman -S"),
        ("brew", "brew install"),
    ];
    match known.iter().find(|(manager, _)| find(manager).is_some()) {
        Some((_, line)) => format!("{line} {packages}"),
        None => format!("install {packages} with this system's package manager"),
    }
}
