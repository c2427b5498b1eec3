//! The web app's folder: its packages and its build, each only when something changed.

use crate::run::Call;
use anyhow::Result;
use std::path::Path;
use std::time::SystemTime;

/// Installs exactly what the lock file names, unless that was done since it last changed.
pub fn install(root: &Path) -> Result<()> {
    let web = root.join("web");
    let installed = changed(&web.join("node_modules/.package-lock.json"));
    if installed.is_some() && installed >= changed(&web.join("package-lock.json")) {
        println!("packages are as the lock file says");
        return Ok(());
    }
    Call::new(&web, "npm ci --no-audit --no-fund").run()
}

/// Builds `web/dist`, which the server carries in itself, unless it is newer than everything it is made of.
/// (Writing it anew would make cargo compile the server again.)
pub fn build(root: &Path) -> Result<()> {
    let web = root.join("web");
    let parts =
        ["src", "public", "index.html", "package-lock.json", "vite.config.ts", "svelte.config.js", "tsconfig.json"];
    let newest = parts.iter().filter_map(|part| newest_change(&web.join(part))).max();
    if changed(&web.join("dist/index.html")) > newest {
        println!("web/dist is newer than its sources");
        return Ok(());
    }
    Call::new(&web, "npm run build").run()
}

fn changed(path: &Path) -> Option<SystemTime> {
    path.metadata().and_then(|about| about.modified()).ok()
}

/// The latest change of a file, or of any file below a folder.
fn newest_change(path: &Path) -> Option<SystemTime> {
    if !path.is_dir() {
        return changed(path);
    }
    let entries = std::fs::read_dir(path).ok()?;
    entries.flatten().filter_map(|entry| newest_change(&entry.path())).chain(changed(path)).max()
}
