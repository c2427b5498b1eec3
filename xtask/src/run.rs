//! One command as one step: a heading, its output as it comes, its time, what it counted.

use crate::tally::Tally;
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Instant;

/// A command of the workspace, to be run in a folder.
pub struct Call {
    program: String,
    arguments: Vec<String>,
    folder: PathBuf,
    variables: Vec<(String, String)>,
}

impl Call {
    /// `line` is split at spaces: none of our arguments holds one.
    pub fn new(folder: &Path, line: &str) -> Self {
        let mut words = line.split_whitespace().map(str::to_owned);
        let program = words.next().unwrap_or_default();
        Self { program, arguments: words.collect(), folder: folder.to_owned(), variables: Vec::new() }
    }

    /// Adds an argument that may hold spaces.
    pub fn argument(mut self, argument: impl Into<String>) -> Self {
        self.arguments.push(argument.into());
        self
    }

    /// Sets an environment variable for it.
    pub fn variable(mut self, name: &str, value: &str) -> Self {
        self.variables.push((name.into(), value.into()));
        self
    }

    /// As one would type it, from the folder of the workspace.
    pub fn as_typed(&self, root: &Path) -> String {
        let inside = self.folder.strip_prefix(root).unwrap_or(Path::new(""));
        let go = if inside.as_os_str().is_empty() { String::new() } else { format!("cd {} && ", inside.display()) };
        let set: String = self.variables.iter().map(|(name, value)| format!("{name}={value} ")).collect();
        format!("{go}{set}{} {}", self.program, self.arguments.join(" "))
    }

    fn command(&self) -> Command {
        let mut command = Command::new(&self.program);
        command.args(&self.arguments).current_dir(&self.folder);
        command.envs(self.variables.iter().map(|(name, value)| (name, value)));
        command
    }

    /// Runs it with the terminal handed through.
    pub fn run(&self) -> Result<()> {
        let status = self.command().status().with_context(|| format!("{} cannot be started", self.program))?;
        if !status.success() {
            bail!("{} ended with {status}", self.program);
        }
        Ok(())
    }

    /// Runs it, shows its output as it comes and counts the tests that it reports.
    pub fn run_counted(&self) -> Result<Counted> {
        let mut command = self.command();
        let mut child =
            command.stdout(Stdio::piped()).spawn().with_context(|| format!("{} cannot be started", self.program))?;
        let mut tally = Tally::default();
        if let Some(output) = child.stdout.take() {
            let mut reader = BufReader::new(output);
            let mut line = Vec::new();
            while reader.read_until(b'\n', &mut line)? > 0 {
                std::io::stdout().write_all(&line)?;
                tally.add_line(&String::from_utf8_lossy(&line));
                line.clear();
            }
        }
        Ok(Counted { succeeded: child.wait()?.success(), tally })
    }

    /// Runs it silently and returns what it printed; `None` when it failed or is not there.
    pub fn output(&self) -> Option<String> {
        let output = self.command().stderr(Stdio::null()).output().ok()?;
        output.status.success().then(|| String::from_utf8_lossy(&output.stdout).into_owned())
    }
}

/// How a counted run ended.
pub struct Counted {
    /// Exit status zero.
    pub succeeded: bool,
    /// Tests that it reported.
    pub tally: Tally,
}

/// Prints the heading of a step.
pub fn heading(name: &str) -> Instant {
    println!("\n== {name} {}", "=".repeat(72usize.saturating_sub(name.chars().count())));
    Instant::now()
}

/// Prints the closing line of a step.
pub fn closing(name: &str, since: Instant, what: &str) {
    println!("-- {name}: {what} ({:.1} s)", since.elapsed().as_secs_f64());
}
