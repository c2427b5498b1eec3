//! Licences, bans and sources of everything the program and its web app are made of.
//!
//! The list and its reasons stand in `deny.toml`. cargo-deny reads it where it is installed; else what
//! cargo itself knows of every crate is held against it here. The web app's packages are held against
//! the same list by their lock file.

use crate::run::Call;
use crate::spdx::satisfied;
use anyhow::{Context, Result, bail};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;

/// Allowed beyond the list for tools of the web build, none of which is in the built app:
/// MPL-2.0 (lightningcss, axe-core: used unchanged) and Python-2.0 (argparse).
const WEB_TOOLS_ONLY: [&str; 2] = ["MPL-2.0", "Python-2.0"];
/// Allowed in the web app: the licence of its typeface, free to embed (ISC is MIT in other words).
const WEB_APP: [&str; 2] = ["OFL-1.1", "ISC"];
const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";

#[derive(Deserialize)]
struct Deny {
    licenses: Licenses,
    bans: Bans,
}

#[derive(Deserialize)]
struct Licenses {
    allow: Vec<String>,
}

#[derive(Deserialize)]
struct Bans {
    deny: Vec<Ban>,
}

#[derive(Deserialize)]
struct Ban {
    #[serde(rename = "crate")]
    name: String,
    reason: String,
}

#[derive(Deserialize)]
struct Metadata {
    packages: Vec<Package>,
}

#[derive(Deserialize)]
struct Package {
    name: String,
    version: String,
    license: Option<String>,
    source: Option<String>,
}

#[derive(Deserialize)]
struct WebLock {
    packages: BTreeMap<String, WebPackage>,
}

#[derive(Deserialize)]
struct WebPackage {
    license: Option<String>,
    #[serde(default)]
    dev: bool,
}

/// Fails with one line per crate or package that is not allowed.
pub fn check(root: &Path) -> Result<()> {
    let deny: Deny = toml::from_str(&std::fs::read_to_string(root.join("deny.toml"))?).context("deny.toml")?;
    let mut complaints = web_complaints(root, &deny)?;
    if Call::new(root, "cargo deny --version").output().is_some() {
        Call::new(root, "cargo deny check licenses bans sources").run()?;
    } else {
        complaints.extend(crate_complaints(root, &deny)?);
    }
    if complaints.is_empty() {
        return Ok(());
    }
    bail!("{}\nReplace it, or allow it in deny.toml with a reason.", complaints.join("\n"))
}

fn crate_complaints(root: &Path, deny: &Deny) -> Result<Vec<String>> {
    let text = Call::new(root, "cargo metadata --format-version 1").output().context("cargo metadata failed")?;
    let metadata: Metadata = serde_json::from_str(&text)?;
    println!("{} crates, {} licences allowed", metadata.packages.len(), deny.licenses.allow.len());
    Ok(metadata.packages.iter().filter_map(|package| complaint(package, deny)).collect())
}

fn complaint(package: &Package, deny: &Deny) -> Option<String> {
    let what = format!("{} {}", package.name, package.version);
    if let Some(ban) = deny.bans.deny.iter().find(|ban| ban.name == package.name) {
        return Some(format!("{what} is banned: {}", ban.reason));
    }
    if package.source.as_deref().is_some_and(|source| source != REGISTRY) {
        return Some(format!("{what} does not come from crates.io"));
    }
    let license = package.license.as_deref().unwrap_or("none");
    (!satisfied(license, &deny.licenses.allow)).then(|| format!("{what} has the licence {license}"))
}

fn web_complaints(root: &Path, deny: &Deny) -> Result<Vec<String>> {
    let lock: WebLock = serde_json::from_str(&std::fs::read_to_string(root.join("web/package-lock.json"))?)?;
    let mut app = deny.licenses.allow.clone();
    app.extend(WEB_APP.map(String::from));
    let tools: Vec<String> = app.iter().cloned().chain(WEB_TOOLS_ONLY.map(String::from)).collect();
    println!("{} packages of the web app and its build", lock.packages.len());
    let is_bad = |package: &WebPackage| {
        let license = package.license.as_deref().unwrap_or("none");
        !satisfied(license, if package.dev { &tools } else { &app })
    };
    let bad = lock.packages.iter().filter(|(_, package)| is_bad(package));
    Ok(bad.map(|(name, package)| format!("{name} has the licence {:?}", package.license)).collect())
}
