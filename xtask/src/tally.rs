//! Counts of tests, picked from what the test programs print.

/// Tests passed and failed.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub struct Tally {
    /// Passed.
    pub passed: usize,
    /// Failed.
    pub failed: usize,
}

impl Tally {
    /// Adds what one line of output reports: the closing lines of cargo's tests, of vitest and of the
    /// browser tests. Other lines count nothing.
    pub fn add_line(&mut self, line: &str) {
        let line = without_colours(line);
        let line = line.trim();
        let closing = line.starts_with("test result:") || line.starts_with("Tests ") || is_plain_count(line);
        if closing {
            self.passed += number_before(line, "passed");
            self.failed += number_before(line, "failed");
        }
    }

    /// Adds another count.
    pub fn add(&mut self, other: Tally) {
        self.passed += other.passed;
        self.failed += other.failed;
    }

    /// Whether anything was counted.
    pub fn is_empty(&self) -> bool {
        *self == Tally::default()
    }
}

/// The line without terminal colours (`ESC [ … m`).
fn without_colours(line: &str) -> String {
    let mut parts = line.split("\u{1b}[");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| text + part.split_once('m').map_or("", |(_, rest)| rest))
}

/// `12 passed, 0 failed` and nothing else.
fn is_plain_count(line: &str) -> bool {
    let words: Vec<&str> = line.split_whitespace().collect();
    matches!(words[..], [n, "passed,", m, "failed"] if n.parse::<usize>().is_ok() && m.parse::<usize>().is_ok())
}

fn number_before(line: &str, word: &str) -> usize {
    let words: Vec<&str> = line.split_whitespace().collect();
    let at = words.iter().position(|w| w.trim_end_matches([',', ';']) == word);
    at.and_then(|at| words.get(at.checked_sub(1)?)?.parse().ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(lines: &[&str]) -> (usize, usize) {
        let mut tally = Tally::default();
        lines.iter().for_each(|line| tally.add_line(line));
        (tally.passed, tally.failed)
    }

    #[test]
    fn cargo_vitest_and_browser_tests_are_counted() {
        let cargo = "test result: FAILED. 31 passed; 2 failed; 1 ignored; 0 measured; 0 filtered out";
        assert_eq!(count(&[cargo]), (31, 2));
        assert_eq!(count(&["      Tests  1 failed | 22 passed (23)"]), (22, 1));
        assert_eq!(count(&["14 passed, 3 failed"]), (14, 3));
        assert_eq!(count(&[cargo, cargo]), (62, 4));
    }

    #[test]
    fn colours_do_not_hide_a_count() {
        let line =
            "\u{1b}[2m      Tests \u{1b}[22m \u{1b}[1m\u{1b}[32m48 passed\u{1b}[39m\u{1b}[22m\u{1b}[90m (48)\u{1b}[39m";
        assert_eq!(count(&[line]), (48, 0));
    }

    #[test]
    fn other_lines_count_nothing() {
        assert_eq!(count(&["test heights_close ... ok", " Test Files  7 passed (7)", "3 passed, none failed"]), (0, 0));
    }
}
