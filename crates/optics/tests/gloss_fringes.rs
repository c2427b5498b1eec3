//! Real fringes mirrored in glazed ceramic, five photos a quarter apart of which the last repeats the first:
//! FingerprintDeflectometry, Universidad Nacional de Colombia, commit 00ad4bf6, MIT.

mod common;

use common::published;
use dentwright_optics::{Photo, Steps, decode, linear_table, shown_steps};

#[test]
fn the_repeated_photo_shows_itself() {
    let Some(folder) = published("gloss_fringes") else { return };
    let photos: Vec<Photo> =
        (0..5).map(|k| decode(&std::fs::read(folder.join(format!("sink_{k}.png"))).unwrap()).unwrap()).collect();
    let photos: Vec<&Photo> = photos.iter().collect();
    let table = linear_table(1.0);
    // The file might say that the last goes on by a sixteenth; contrasts differ by a fifth and more here.
    let shifts = [0.0, 0.25, 0.5, 0.75, 0.0625];
    let shown = shown_steps(&Steps::new(&photos, &shifts, 30.0, &table).unwrap(), &shifts).unwrap();
    let apart = |a: usize, b: usize| {
        let off = shown[a].shift - shown[b].shift;
        (off - off.round()).abs()
    };
    assert!(apart(4, 0) < 0.015 && !shown[4].good, "{shown:?}");
    assert!([1, 2, 3].iter().all(|&k| apart(4, k) > 0.2), "{shown:?}");
}
