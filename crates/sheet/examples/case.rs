//! Runs a case file: `cargo run --release -p dentwright-sheet --example case -- CASE.toml OUT`.

use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [case, out] = arguments.as_slice() else {
        eprintln!("usage: case CASE.toml OUT");
        return ExitCode::from(2);
    };
    match dentwright_sheet::run_case(Path::new(case), Path::new(out)) {
        Ok(result) => {
            println!("{}", serde_json::to_string_pretty(&result).expect("plain numbers and words"));
            ExitCode::from(u8::from(!result.converged))
        }
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}
