//! The one binary.

mod change;
mod demo;
mod demo_shop;
mod export;
mod failure;
mod line;
mod plan;
mod print;
mod read;
mod rehearse;
mod serve;
mod sheet;
mod tip;

use clap::{Parser, Subcommand};
use std::io::Write;
use std::process::ExitCode;

/// Photos are large blocks that come and go in both threads: the system's allocator maps each anew.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Measuring tool of the paintless dent technician.
#[derive(Parser)]
#[command(name = "dentwright", version)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Read a capture folder: photos of mirrored patterns to a map of lows and highs.
    Read(read::ReadOptions),
    /// Compare readings of one damage: what got better and worse, and the series over the repair.
    Change(change::ChangeOptions),
    /// Write a reading for other programs: PLY, STL, X3P, CSV, PNG, SVG, or a zip for another installation.
    Export(export::ExportOptions),
    /// Look along a body line of a reading: its height, its place sideways, its sharpness.
    Line(line::LineOptions),
    /// Try moves on a patch of sheet metal: what they leave, what they cost.
    Sheet(sheet::SheetOptions),
    /// Plan the next moves from a reading: what, where, with which tool, how far, and why.
    Plan(Box<plan::PlanOptions>),
    /// Find the tip behind the panel from two photos: before, and while it is leaned on lightly.
    Tip(tip::TipOptions),
    /// Let the planner and simple masters work on panels nobody knows.
    Rehearse(rehearse::RehearseOptions),
    /// Print tags, a line board or the camera sheet at true scale, as PDF.
    Print(print::PrintOptions),
    /// Serve a shop: the app in the browser, the record in a folder.
    Serve(serve::ServeOptions),
    /// Fill a shop with three invented jobs, once, and serve it.
    Demo(demo::DemoOptions),
    /// Render the demo's captures into a folder, to try the reading with.
    DemoCaptures(demo::CapturesOptions),
    /// Print the description of the HTTP API (OpenAPI 3.1).
    Openapi,
}

fn main() -> ExitCode {
    match Arguments::parse().command {
        Command::Read(options) => read::read_command(&options),
        Command::Change(options) => change::change_command(&options),
        Command::Export(options) => export::export_command(&options),
        Command::Line(options) => line::line_command(&options),
        Command::Sheet(options) => sheet::sheet_command(&options),
        Command::Plan(options) => plan::plan_command(&options),
        Command::Tip(options) => tip::tip_command(&options),
        Command::Rehearse(options) => rehearse::rehearse_command(&options),
        Command::Print(options) => print::print_command(&options),
        Command::Serve(options) => serve::serve_command(&options),
        Command::Demo(options) => demo::demo_command(&options),
        Command::DemoCaptures(options) => demo::captures_command(&options),
        Command::Openapi => {
            // A reader that has seen enough closes the pipe, which is no failure.
            let _ = writeln!(std::io::stdout(), "{}", dentwright_server::openapi());
            ExitCode::SUCCESS
        }
    }
}
