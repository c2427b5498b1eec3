//! What could not be read, in words, with the next thing to do.

use crate::reading_file::UnreadFacts;

/// Every reason that a map of codes holds.
pub(crate) fn unread_facts(unread: &[u8]) -> Vec<UnreadFacts> {
    let share = |value: u8| unread.iter().filter(|&&v| v == value).count() as f64 / unread.len().max(1) as f64;
    let fact = |code: &str, value: u8, text: &str, next: &str| UnreadFacts {
        code: code.into(),
        value,
        fraction: share(value),
        text: text.into(),
        next: next.into(),
    };
    let all = [
        fact(
            "not_mirrored",
            1,
            "the board's lines are not seen there",
            "Move the board so that it is mirrored there; over a deep dent bring it closer.",
        ),
        fact("tag", 2, "a tag covers the paint", "Stick the tag farther from the damage."),
        fact(
            "inconsistent",
            3,
            "the area is cut off from the rest, so its height is not known",
            "Bring the board closer, or move it so that the lines join up.",
        ),
        fact(
            "clipped",
            4,
            "the mirror image is too bright for the camera there",
            "Expose shorter, or keep lamps out of the mirror image.",
        ),
        fact(
            "low_contrast",
            5,
            "the lines are too faint there",
            "Darken the room, expose longer, and wipe the paint clean.",
        ),
        fact(
            "folded",
            6,
            "the metal is so steep there that the mirror image turns over",
            "Bring the board closer, or measure the depth with a gauge and enter it.",
        ),
        fact(
            "not_followed",
            7,
            "one still photo does not tell how the lines go on there",
            "Slide the board for a full reading, or bring it closer.",
        ),
        fact(
            "gauged",
            8,
            "it was filled in as the smoothest shape that meets a depth measured by hand",
            "Bring the board closer to read it.",
        ),
    ];
    all.into_iter().filter(|f| f.fraction > 0.0).collect()
}
