//! The written pages: every relative link must lead to a file, every anchor to a heading, and no merge may be left
//! unfinished.

use anyhow::{Result, bail};
use std::path::{Path, PathBuf};

/// Folders that hold pages of ours.
const FOLDERS: [&str; 6] = [".", "docs", "examples", "benches", "tests", "web"];

/// Fails with one line per dead link or mark of an unfinished merge.
pub fn check(root: &Path) -> Result<()> {
    let pages: Vec<PathBuf> = FOLDERS.iter().flat_map(|folder| pages_in(&root.join(folder))).collect();
    let mut links = 0;
    let mut dead = Vec::new();
    for page in &pages {
        let text = std::fs::read_to_string(page)?;
        if text.lines().any(|line| line.starts_with("<<<<<<< ") || line.starts_with(">>>>>>> ")) {
            dead.push(format!("{}: an unfinished merge", page.strip_prefix(root).unwrap_or(page).display()));
        }
        for link in relative_links(&text) {
            links += 1;
            if !leads_somewhere(page, &text, &link) {
                dead.push(format!("{}: {link}", page.strip_prefix(root).unwrap_or(page).display()));
            }
        }
    }
    println!("{} pages, {links} links", pages.len());
    if dead.is_empty() {
        return Ok(());
    }
    bail!("dead links and unfinished merges:\n{}", dead.join("\n"))
}

fn pages_in(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path());
    let mut pages: Vec<PathBuf> = entries.filter(|path| path.extension().is_some_and(|e| e == "md")).collect();
    pages.sort();
    pages
}

/// Targets of `[text](target)` outside code, without those of the network.
fn relative_links(text: &str) -> Vec<String> {
    let mut in_code = false;
    let mut links = Vec::new();
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            in_code = !in_code;
        }
        if in_code {
            continue;
        }
        let targets = line.split("](").skip(1).filter_map(|rest| rest.split(')').next());
        links.extend(
            targets.filter(|target| !target.contains("://") && !target.starts_with("mailto:")).map(String::from),
        );
    }
    links
}

fn leads_somewhere(page: &Path, text: &str, link: &str) -> bool {
    let (file, anchor) = link.split_once('#').unwrap_or((link, ""));
    let target = if file.is_empty() { page.to_owned() } else { page.parent().unwrap_or(page).join(file) };
    if !target.exists() {
        return false;
    }
    let target_text = if file.is_empty() { Some(text.to_owned()) } else { std::fs::read_to_string(&target).ok() };
    anchor.is_empty() || target_text.is_some_and(|text| anchors(&text).iter().any(|known| known == anchor))
}

/// Anchors of a page's headings, made as GitHub makes them.
fn anchors(text: &str) -> Vec<String> {
    let headings = text.lines().filter(|line| line.starts_with('#')).map(|line| line.trim_start_matches('#').trim());
    headings
        .map(|heading| {
            let kept = heading.chars().filter(|c| c.is_alphanumeric() || matches!(c, ' ' | '-' | '_'));
            kept.collect::<String>().to_lowercase().replace(' ', "-")
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{anchors, relative_links};

    #[test]
    fn links_in_code_and_to_the_network_are_left_alone() {
        let text = "see [a](a.md) and [b](https://b.example)\n```\n[c](c.md)\n```\n[d](d.md#the-part)";
        assert_eq!(relative_links(text), ["a.md", "d.md#the-part"]);
    }

    #[test]
    fn headings_become_anchors() {
        assert_eq!(anchors("# One page\n## What comes out, in mm\n"), ["one-page", "what-comes-out-in-mm"]);
    }
}
