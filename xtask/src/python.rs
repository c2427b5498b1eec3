//! A Python of its own for checks against other people's programs: made once in `target/check-python`, anew
//! when its list of packages has changed.

use crate::run::Call;
use crate::tools::{find, install_line};
use anyhow::{Result, bail};
use std::path::Path;

/// Lists of packages, each pinned.
const LISTS: [&str; 1] = ["tests/einvoice/requirements.txt"];

/// Makes the Python that the tests look for, or fails with the one command that is missing.
pub fn install(root: &Path) -> Result<()> {
    let folder = root.join("target/check-python");
    let mut wanted = String::new();
    for list in LISTS {
        wanted += &std::fs::read_to_string(root.join(list))?;
    }
    let done = folder.join("installed.txt");
    if std::fs::read_to_string(&done).is_ok_and(|there| there == wanted) {
        println!("packages are as the lists say");
        return Ok(());
    }
    if find("python3").is_none() {
        bail!("the checks against published rules need Python 3: {}", install_line(&["python3", "python3-venv"]));
    }
    if Call::new(root, "python3 -c").argument("import ensurepip").output().is_none() {
        bail!("python3 cannot make a folder for packages: {}", install_line(&["python3-venv"]));
    }
    Call::new(root, "python3 -m venv --clear").argument(folder.to_string_lossy()).run()?;
    for list in LISTS {
        let pip = folder.join("bin/pip");
        Call::new(root, &pip.to_string_lossy())
            .argument("install")
            .argument("--quiet")
            .argument("--no-deps")
            .argument("-r")
            .argument(list)
            .run()?;
    }
    Ok(std::fs::write(done, wanted)?)
}
