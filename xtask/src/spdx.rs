//! Licence expressions (SPDX specification 2.3, annex D) against a list of allowed licences.
//!
//! Old manifests write `MIT/Apache-2.0` for `MIT OR Apache-2.0`; that is understood too.

/// Whether the licences in `allowed` satisfy an expression.
pub fn satisfied(expression: &str, allowed: &[String]) -> bool {
    let spaced = expression.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut parser = Parser { words: &words, at: 0, allowed };
    let answer = parser.any();
    answer.unwrap_or(false) && parser.at == words.len()
}

struct Parser<'a> {
    words: &'a [&'a str],
    at: usize,
    allowed: &'a [String],
}

impl Parser<'_> {
    /// `all (OR all)*`; `None` where the expression cannot be understood.
    fn any(&mut self) -> Option<bool> {
        let mut answer = self.all()?;
        while self.take("OR") {
            answer |= self.all()?;
        }
        Some(answer)
    }

    /// `one (AND one)*`
    fn all(&mut self) -> Option<bool> {
        let mut answer = self.one()?;
        while self.take("AND") {
            answer &= self.one()?;
        }
        Some(answer)
    }

    /// A licence, with its exception if it has one, or an expression in brackets.
    fn one(&mut self) -> Option<bool> {
        if self.take("(") {
            let answer = self.any()?;
            return self.take(")").then_some(answer);
        }
        let mut name = self.next()?.to_owned();
        if self.take("WITH") {
            name = format!("{name} WITH {}", self.next()?);
        }
        Some(self.allowed.contains(&name))
    }

    fn take(&mut self, word: &str) -> bool {
        let found = self.words.get(self.at) == Some(&word);
        self.at += usize::from(found);
        found
    }

    fn next(&mut self) -> Option<&str> {
        let word = self.words.get(self.at)?;
        self.at += 1;
        Some(word)
    }
}

#[cfg(test)]
mod tests {
    use super::satisfied;

    fn with(expression: &str) -> bool {
        satisfied(expression, &["MIT".into(), "Apache-2.0".into(), "Apache-2.0 WITH LLVM-exception".into()])
    }

    #[test]
    fn one_allowed_choice_is_enough() {
        assert!(with("MIT"));
        assert!(with("GPL-3.0-only OR MIT"));
        assert!(with("MIT/Apache-2.0"));
        assert!(with("GPL-2.0-only WITH GCC-exception-2.0 OR Apache-2.0 WITH LLVM-exception"));
    }

    #[test]
    fn all_duties_of_an_and_must_be_allowed() {
        assert!(with("(GPL-3.0-only OR MIT) AND Apache-2.0"));
        assert!(!with("MIT AND LGPL-2.1-only"));
        assert!(!with("MIT AND (LGPL-2.1-only OR GPL-3.0-only)"));
    }

    #[test]
    fn what_cannot_be_understood_is_not_allowed() {
        for broken in ["", "MIT OR", "(MIT", "MIT )", "MIT MIT", "AND MIT"] {
            assert!(!with(broken), "{broken:?}");
        }
    }
}
