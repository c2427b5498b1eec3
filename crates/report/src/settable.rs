//! Texts that any page can hold: long words may break, letters that no font has become boxes.

use crate::world::has_letter;
use serde_json::Value;

/// A word of more letters than this does not fit the narrowest column.
const LONG: usize = 26;
/// Such a word may break after so many letters.
const BREAK: usize = 10;
/// Where a line may break without a mark.
const BREAK_HERE: char = '\u{200b}';
/// Stands for a letter that no font has.
const BOX: char = '□';

/// Makes all texts of a view fit, but those that are names of files.
pub(crate) fn settable(view: &mut Value) {
    match view {
        Value::String(text) => {
            if let Some(other) = fitted(text) {
                *text = other;
            }
        }
        Value::Array(values) => values.iter_mut().for_each(settable),
        Value::Object(entries) => {
            entries
                .iter_mut()
                .filter(|(key, _)| !matches!(key.as_str(), "file" | "words" | "attach"))
                .for_each(|(_, one)| settable(one));
        }
        _ => {}
    }
}

/// The text as it can be set; none where that is as it is.
fn fitted(text: &str) -> Option<String> {
    let long = text.split_whitespace().any(|word| word.chars().count() > LONG);
    if !long && text.chars().all(|letter| shown(letter) == Some(letter)) {
        return None;
    }
    let mut fitted = String::new();
    for piece in text.split_inclusive(char::is_whitespace) {
        let breaks = piece.trim_end().chars().count() > LONG;
        for (index, letter) in piece.chars().enumerate() {
            if breaks && index > 0 && index % BREAK == 0 && !letter.is_whitespace() {
                fitted.push(BREAK_HERE);
            }
            fitted.extend(shown(letter));
        }
    }
    Some(fitted)
}

/// A letter as it is set: nothing for marks without a shape, a box for what no font has.
fn shown(letter: char) -> Option<char> {
    match letter {
        '\n' | '\t' | '\r' => Some(letter),
        _ if letter.is_control() => None,
        // Joiners, directions, variation selectors: without a shape of their own.
        '\u{200b}'..='\u{200f}'
        | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}'
        | '\u{fe00}'..='\u{fe0f}'
        | '\u{feff}' => None,
        _ if letter.is_whitespace() || has_letter(letter) => Some(letter),
        _ => Some(BOX),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn short_words_stay_as_they_are() {
        assert_eq!(fitted("1M8GDM9AXKP042788 Größe — עברית العربية\nзвук €"), None);
    }

    #[test]
    fn long_words_may_break_and_lose_nothing() {
        let fitted = fitted(&"x".repeat(400)).unwrap();
        assert_eq!(fitted.chars().filter(|c| *c == BREAK_HERE).count(), 39);
        assert_eq!(fitted.replace(BREAK_HERE, ""), "x".repeat(400));
    }

    #[test]
    fn letters_without_a_font_become_boxes() {
        assert_eq!(fitted("a👍b\u{0}c").unwrap(), "a□bc");
    }
}
