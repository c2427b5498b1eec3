//! Writes every paper of the sample job in every language.
//!
//! `cargo run --release -p dentwright-report --example sample_papers -- FOLDER`

mod sample;

use dentwright_report::{Language, PaperKind, paper};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::path::PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "target/papers".into()));
    std::fs::create_dir_all(&folder)?;
    let countries = ["GB", "DE", "FR", "IT", "ES", "PL"];
    for (language, pack) in Language::ALL.into_iter().zip(countries) {
        for kind in PaperKind::ALL {
            let made = paper(&sample::papers::sample_paper(kind, language, pack))?;
            let name = format!("{}-{}.pdf", kind.code(), language.code());
            std::fs::write(folder.join(&name), &made.pdf)?;
            println!("{name}: {} pages, {} kB", made.pages, made.pdf.len() / 1000);
        }
    }
    let hard = paper(&sample::papers::hard_paper())?;
    std::fs::write(folder.join("hard.pdf"), &hard.pdf)?;
    println!("hard.pdf: {} pages", hard.pages);
    Ok(())
}
