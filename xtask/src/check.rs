//! `cargo xtask check`: every check and test, cheap ones first, the same here and in CI.

use crate::run::{Call, closing, heading};
use crate::tally::Tally;
use crate::{browser, demo, licences, links, python, root, tools, web};
use anyhow::{Result, bail};
use std::path::Path;
use std::process::ExitCode;

/// One step: its name and what it does.
struct Step {
    name: &'static str,
    work: Work,
}

enum Work {
    /// A command; the tests it reports are counted.
    Command(Call),
    /// Work of xtask itself.
    Own(fn(&Path) -> Result<()>),
}

/// Runs the steps in order and stops at the first that fails.
pub fn check(from: Option<&str>) -> Result<ExitCode> {
    let root = root()?;
    let steps = steps(&root)?;
    let first = match from {
        None => 0,
        Some(name) => match steps.iter().position(|step| step.name == name) {
            Some(at) => at,
            None => bail!(
                "there is no step {name:?}; there are: {}",
                steps.iter().map(|s| s.name).collect::<Vec<_>>().join(", ")
            ),
        },
    };
    let mut total = Tally::default();
    for step in &steps[first..] {
        let outcome = step.run(&root)?;
        total.add(outcome);
        if outcome.failed > 0 {
            println!("\nOnly the steps up to the failed one were run.");
            println!("{} passed, {} failed", total.passed, total.failed);
            return Ok(ExitCode::FAILURE);
        }
    }
    println!("\n{} passed, {} failed", total.passed, total.failed);
    Ok(ExitCode::SUCCESS)
}

/// The contents page of the check. The web app comes before anything that compiles the server, which
/// carries it in itself.
fn steps(root: &Path) -> Result<Vec<Step>> {
    let web = root.join("web");
    let command = |name, folder: &Path, line: &str| Step { name, work: Work::Command(Call::new(folder, line)) };
    let own = |name, work| Step { name, work: Work::Own(work) };
    let strict =
        |name, line| Step { name, work: Work::Command(Call::new(root, line).variable("RUSTDOCFLAGS", "-Dwarnings")) };
    let mut steps = vec![
        own("tools", |root| tools::need_for_building(root).and_then(|()| tools::need_for_checking(root))),
        command("format", root, "cargo fmt --all --check"),
        own("licences", licences::check),
        own("links", links::check),
        own("web packages", web::install),
        own("Python packages", python::install),
        command("web types", &web, "npm run check"),
        command("web tests", &web, "npm run test"),
        own("web build", web::build),
        command("clippy", root, "cargo clippy --release --workspace --all-targets -- -D warnings"),
        command("tests", root, "cargo test --release --workspace --all-targets"),
        command("doc tests", root, "cargo test --release --workspace --doc"),
        strict("docs", "cargo doc --release --workspace --no-deps --quiet"),
        command("program", root, "cargo build --release --package dentwright-cli"),
    ];
    for name in examples(root)? {
        let call = Call::new(root, "cargo run --release --quiet --package examples --example").argument(name);
        steps.push(Step { name: "example", work: Work::Command(call) });
    }
    steps.extend(browser_steps(root, &web));
    Ok(steps)
}

/// The generated client is as new as the server, and the browser tests pass against the program.
fn browser_steps(root: &Path, web: &Path) -> Vec<Step> {
    let find = |root: &Path| browser::ensure_browser(root).map(|path| println!("{}", path.display()));
    let binary = demo::target_folder(root).join("release/dentwright");
    let with_program = |line| Work::Command(Call::new(web, line).variable("DENTWRIGHT_BIN", &binary.to_string_lossy()));
    vec![
        Step { name: "API client", work: with_program("npm run api -- --check") },
        Step { name: "browser", work: Work::Own(find) },
        Step { name: "browser tests", work: with_program("npm run e2e") },
    ]
}

/// Names of the numbered programs in `examples/`, in order.
fn examples(root: &Path) -> Result<Vec<String>> {
    let files = std::fs::read_dir(root.join("examples"))?.flatten().map(|entry| entry.path());
    let mut names: Vec<String> = files.filter_map(|path| numbered_program(&path)).collect();
    names.sort();
    Ok(names)
}

fn numbered_program(path: &Path) -> Option<String> {
    let name = path.file_stem()?.to_str()?;
    let is_program = path.extension()? == "rs" && name.starts_with(|c: char| c.is_ascii_digit());
    is_program.then(|| name.to_owned())
}

impl Step {
    /// Runs the step. One that reports no tests counts as one itself.
    fn run(&self, root: &Path) -> Result<Tally> {
        let since = heading(self.name);
        let (mut tally, succeeded, again) = match &self.work {
            Work::Command(call) => {
                println!("$ {}", call.as_typed(root));
                let counted = call.run_counted()?;
                (counted.tally, counted.succeeded, call.as_typed(root))
            }
            Work::Own(work) => {
                let outcome = work(root);
                if let Err(why) = &outcome {
                    println!("{why:#}");
                }
                (Tally::default(), outcome.is_ok(), format!("cargo xtask check --from \"{}\"", self.name))
            }
        };
        if tally.is_empty() {
            tally.passed = usize::from(succeeded);
        }
        if !succeeded {
            tally.failed = tally.failed.max(1);
            closing(self.name, since, "FAILED");
            println!("   again: {again}");
        } else {
            closing(self.name, since, "passed");
        }
        Ok(tally)
    }
}
