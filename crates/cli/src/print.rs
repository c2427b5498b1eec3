//! Sheets to print, on the command line.

use crate::failure::fail;
use clap::{Args, ValueEnum};
use dentwright_report::{Language, LineBoard, Paper, STICKER_MM, Sheet, print_sheet};
use std::path::PathBuf;
use std::process::ExitCode;

/// What is printed, and where it goes.
#[derive(Args)]
pub struct PrintOptions {
    /// Which sheet.
    sheet: SheetName,
    /// PDF file to write.
    #[arg(long)]
    out: PathBuf,
    /// Size of the paper.
    #[arg(long, value_enum, default_value = "a4")]
    paper: PaperName,
    /// Side of a tag's black square, mm; 22 for stickers, 60 for a board's corners.
    #[arg(long)]
    tag_mm: Option<f64>,
    /// Line board: one black and one white line together, mm.
    #[arg(long, default_value_t = LineBoard::default().pitch_mm)]
    pitch_mm: f64,
    /// Line board: sheets side by side.
    #[arg(long, default_value_t = LineBoard::default().across)]
    across: u32,
    /// Line board: sheets one above the other.
    #[arg(long, default_value_t = LineBoard::default().down)]
    down: u32,
    /// Language of the words on it.
    #[arg(long, value_enum, default_value = "en")]
    language: LanguageName,
}

#[derive(Clone, Copy, ValueEnum)]
enum SheetName {
    /// Tags to stick on the panel.
    Stickers,
    /// Tags for the corners of a board.
    Corners,
    /// A line board from several sheets.
    Lines,
    /// The sheet that a phone's camera is calibrated with.
    Camera,
}

#[derive(Clone, Copy, ValueEnum)]
enum PaperName {
    A4,
    Letter,
}

#[derive(Clone, Copy, ValueEnum)]
enum LanguageName {
    En,
    De,
}

/// Writes a sheet as PDF.
pub fn print_command(options: &PrintOptions) -> ExitCode {
    let tag_mm = |usual: f64| options.tag_mm.unwrap_or(usual);
    let board = LineBoard {
        pitch_mm: options.pitch_mm,
        across: options.across,
        down: options.down,
        tag_mm: tag_mm(LineBoard::default().tag_mm),
    };
    let sheet = match options.sheet {
        SheetName::Stickers => Sheet::Stickers { size_mm: tag_mm(STICKER_MM) },
        SheetName::Corners => Sheet::Corners { size_mm: tag_mm(LineBoard::default().tag_mm) },
        SheetName::Lines => Sheet::Lines(board),
        SheetName::Camera => Sheet::Camera,
    };
    let paper = match options.paper {
        PaperName::A4 => Paper::A4,
        PaperName::Letter => Paper::Letter,
    };
    let language = match options.language {
        LanguageName::En => Language::En,
        LanguageName::De => Language::De,
    };
    let made = match print_sheet(sheet, language, paper) {
        Ok(made) => made,
        Err(why) => return fail("Not printed", &why.to_string(), why.next()),
    };
    if let Err(why) = std::fs::write(&options.out, &made.pdf) {
        let what = format!("{} cannot be written: {why}", options.out.display());
        return fail("Not printed", &what, "Choose a folder that can be written to.");
    }
    println!("{} pages in {}. Print at 100 % and measure the rulers.", made.pages, options.out.display());
    ExitCode::SUCCESS
}
