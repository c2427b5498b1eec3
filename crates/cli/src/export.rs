//! A reading in the forms of other programs, on the command line.

use crate::failure::fail;
use clap::{Args, ValueEnum};
use dentwright_flow::{Form, KeptReading, export, pack};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Which reading, in which form, and where it goes.
#[derive(Args)]
pub struct ExportOptions {
    /// Reading folder, or a zip of it.
    reading: PathBuf,
    /// The form; told by the ending of --out where it is left out.
    #[arg(long = "as", value_enum)]
    form: Option<FormName>,
    /// File to write.
    #[arg(long)]
    out: PathBuf,
    /// Folder of the photos it was made from, packed with it (zip only).
    #[arg(long)]
    capture: Option<PathBuf>,
}

#[derive(Clone, Copy, ValueEnum)]
enum FormName {
    Ply,
    Stl,
    X3p,
    Csv,
    Png,
    Svg,
    /// The reading folder itself, for another installation.
    Zip,
}

impl FormName {
    fn form(self) -> Option<Form> {
        match self {
            Self::Ply => Some(Form::Ply),
            Self::Stl => Some(Form::Stl),
            Self::X3p => Some(Form::X3p),
            Self::Csv => Some(Form::Csv),
            Self::Png => Some(Form::Png),
            Self::Svg => Some(Form::Svg),
            Self::Zip => None,
        }
    }
}

/// Writes a reading in a form.
pub fn export_command(options: &ExportOptions) -> ExitCode {
    let ending = options.out.extension().map(|e| e.to_string_lossy().to_ascii_lowercase()).unwrap_or_default();
    let Some(name) = options.form.or_else(|| FormName::from_str(&ending, true).ok()) else {
        return fail("Not written", "the form is not known", "Name it: --as ply, stl, x3p, csv, png, svg or zip.");
    };
    let bytes = match name.form() {
        None => packed(&options.reading, options.capture.as_deref()),
        Some(form) => formed(&options.reading, form),
    };
    let written = bytes.and_then(|bytes| {
        let next = "Choose a file that can be written.";
        std::fs::write(&options.out, bytes).map_err(|e| (format!("{}: {e}", options.out.display()), next))
    });
    match written {
        Ok(()) => {
            println!("Written to {}", options.out.display());
            ExitCode::SUCCESS
        }
        Err((what, next)) => fail("Not written", &what, next),
    }
}

/// What went wrong, and what to do.
type Said = (String, &'static str);

fn formed(path: &Path, form: Form) -> Result<Vec<u8>, Said> {
    let reading = KeptReading::open(path).map_err(|e| (format!("{}: {e}", path.display()), e.next()))?;
    export(&reading, form).map_err(|e| (e.to_string(), "Take a reading that shows the panel."))
}

fn packed(reading: &Path, capture: Option<&Path>) -> Result<Vec<u8>, Said> {
    let next = "Give the folder that a reading was written to.";
    KeptReading::open(reading).map_err(|e| (format!("{}: {e}", reading.display()), e.next()))?;
    let files = files_of(reading).map_err(|e| (format!("{}: {e}", reading.display()), next))?;
    let photos = capture.map(files_of).transpose().map_err(|e| (e.to_string(), "Give the folder of its photos."))?;
    pack(&files, &photos.unwrap_or_default()).map_err(|e| (e.to_string(), next))
}

/// The files of a folder, in order, without what lies below it.
fn files_of(folder: &Path) -> std::io::Result<Vec<(String, Vec<u8>)>> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if entry.path().is_file() && !name.starts_with('.') {
            files.push((name, std::fs::read(entry.path())?));
        }
    }
    files.sort();
    Ok(files)
}
