//! Whatever a capture folder holds: a reading, or one error in words that names what is wrong; never a panic, and
//! nothing written beside the photos. Sound small captures are spoiled by chance; `PROPTEST_CASES` sets how often.

use dentwright_flow::{ReadError, ReadSettings, Reading, read, write_reading};
use dentwright_scene::{Capture, recipes};
use image::{DynamicImage, ImageFormat};
use jpeg_encoder::{ColorType, Encoder};
use proptest::prelude::*;
use proptest::sample::Index;
use std::io::Cursor;
use std::path::Path;
use std::sync::LazyLock;
use std::sync::atomic::AtomicBool;

/// Captures from photos as small as can be read: patterns, slides, stills.
static SOUND: LazyLock<Vec<Capture>> = LazyLock::new(|| {
    let small = |(name, width): (&str, usize)| {
        let mut recipe = recipes::named(name).unwrap().shrunk(2);
        recipe.photos.size = [width, width * 3 / 4];
        recipe.render().unwrap()
    };
    [("door", 400), ("slid_sound", 640), ("still_finish", 640)].map(small).to_vec()
});

#[derive(Debug, Clone)]
enum Harm {
    /// A line of the description leaves, comes twice, or holds another value.
    LineGone(Index),
    LineTwice(Index),
    LineValue(Index, Index),
    /// The description is cut short.
    TomlCut(Index),
    /// The last frame comes so many times.
    ManyFrames(Index),
    /// No frames at all.
    NoFrames,
    /// A photo (or all, where the first is set) becomes something else.
    Photo(bool, Index, Index),
    PhotoCut(Index, Index),
    PhotoBytes(Index, Vec<(Index, u8)>),
    /// Bytes of a photo's EXIF.
    Exif(Index, Vec<(Index, u8)>),
    PhotoGone(Index),
}

fn harm() -> impl Strategy<Value = Harm> {
    let i = any::<Index>;
    let bytes = || prop::collection::vec((i(), any::<u8>()), 1..12);
    prop_oneof![
        2 => i().prop_map(Harm::LineGone),
        1 => i().prop_map(Harm::LineTwice),
        8 => (i(), i()).prop_map(|(a, b)| Harm::LineValue(a, b)),
        1 => i().prop_map(Harm::TomlCut),
        1 => i().prop_map(Harm::ManyFrames),
        1 => Just(Harm::NoFrames),
        5 => (any::<bool>(), i(), i()).prop_map(|(a, b, c)| Harm::Photo(a, b, c)),
        2 => (i(), i()).prop_map(|(a, b)| Harm::PhotoCut(a, b)),
        2 => (i(), bytes()).prop_map(|(a, b)| Harm::PhotoBytes(a, b)),
        2 => (i(), bytes()).prop_map(|(a, b)| Harm::Exif(a, b)),
        1 => i().prop_map(Harm::PhotoGone),
    ]
}

/// Values of fields that are wrong, extreme, or of another kind.
const VALUES: &[&str] = &[
    "0",
    "-1",
    "0.0",
    "-0.25",
    "nan",
    "inf",
    "-inf",
    "1e300",
    "-1e300",
    "1e-300",
    "18446744073709551615",
    "999999999",
    "587",
    "\"\"",
    "\"../setup.jpg\"",
    "\"/etc/passwd\"",
    "\"C:\\\\x.jpg\"",
    "\".\"",
    "\"capture.toml\"",
    "\"setup.jpg\"",
    "\"panel.jpg\"",
    "\"pattern\"",
    "\"slide\"",
    "\"still\"",
    "\"setup\"",
    "\"panel\"",
    "\"u\"",
    "\"v\"",
    "\"lines\"",
    "\"screen\"",
    "\"tag16h5\"",
    "[]",
    "[0, 0, 0, 0, 0]",
    "[20, 21, 22, 23]",
    "[9999999999, 1, 2, 3]",
    "true",
    "1",
    "0.5",
    "2.5",
    "36",
    "1e6",
    "0.001",
];

/// Photos of other kinds, as their bytes.
fn other_photo(k: usize) -> Vec<u8> {
    let png = |image: DynamicImage| {
        let mut bytes = Cursor::new(Vec::new());
        image.write_to(&mut bytes, ImageFormat::Png).unwrap();
        bytes.into_inner()
    };
    let jpeg = |w: u16, h: u16, colour: ColorType, channels: usize| {
        let mut bytes = Vec::new();
        let pixels: Vec<u8> = (0..usize::from(w) * usize::from(h) * channels).map(|i| (i * 37 % 251) as u8).collect();
        Encoder::new(&mut bytes, 80).encode(&pixels, w, h, colour).unwrap();
        bytes
    };
    match k {
        0 => Vec::new(),
        1 => b"\x89PNG".to_vec(),
        2 => b"\xff\xd8\xff\xd9".to_vec(),
        3 => declared(60_000, 60_000),
        4 => declared(u32::MAX, 1),
        5 => declared(0, 0),
        6 => png(DynamicImage::new_luma8(1, 1)),
        7 => png(DynamicImage::new_luma16(400, 300)),
        8 => png(DynamicImage::new_luma_a8(400, 300)),
        9 => png(DynamicImage::new_rgba16(400, 300)),
        10 => png(DynamicImage::new_luma8(400, 2)),
        11 => png(DynamicImage::new_luma8(3, 300)),
        12 => jpeg(400, 300, ColorType::Luma, 1),
        13 => jpeg(400, 300, ColorType::Cmyk, 4),
        14 => jpeg(400, 300, ColorType::Ycck, 4),
        15 => jpeg(7, 5, ColorType::Rgb, 3),
        16 => jpeg(300, 400, ColorType::Rgb, 3),
        _ => b"no photo at all".to_vec(),
    }
}
const OTHER_PHOTOS: usize = 18;

/// A PNG whose header promises more than its one pixel of data holds (PNG, third edition, 11.2.1; its checksum by
/// annex D).
fn declared(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    DynamicImage::new_luma8(1, 1).write_to(&mut bytes, ImageFormat::Png).unwrap();
    let mut bytes = bytes.into_inner();
    bytes[16..20].copy_from_slice(&width.to_be_bytes());
    bytes[20..24].copy_from_slice(&height.to_be_bytes());
    let shift = |c: u32| if c & 1 == 1 { 0xedb8_8320 ^ (c >> 1) } else { c >> 1 };
    let sum = bytes[12..29].iter().fold(u32::MAX, |c, b| (0..8).fold(c ^ u32::from(*b), |c, _| shift(c)));
    bytes[29..33].copy_from_slice(&(!sum).to_be_bytes());
    bytes
}

struct Folder {
    toml: Vec<u8>,
    photos: Vec<(String, Vec<u8>)>,
}

impl Folder {
    fn of(capture: &Capture) -> Self {
        let photos = capture.photos.iter().map(|p| (p.file.clone(), p.jpeg.clone())).collect();
        Self { toml: capture.toml.clone().into_bytes(), photos }
    }

    fn edit_line(&mut self, at: Index, edit: impl Fn(&str) -> String) {
        let text = String::from_utf8_lossy(&self.toml).into_owned();
        let lines: Vec<&str> = text.lines().collect();
        if lines.is_empty() {
            return;
        }
        let at = at.index(lines.len());
        let edited = lines.iter().enumerate().map(|(k, l)| if k == at { edit(l) } else { format!("{l}\n") });
        self.toml = edited.collect::<String>().into_bytes();
    }

    fn photo(&mut self, at: Index) -> &mut Vec<u8> {
        let at = at.index(self.photos.len());
        &mut self.photos[at].1
    }

    fn harm(&mut self, harm: &Harm) {
        match harm {
            Harm::LineGone(at) => self.edit_line(*at, |_| String::new()),
            Harm::LineTwice(at) => self.edit_line(*at, |l| format!("{l}\n{l}\n")),
            Harm::LineValue(at, value) => self.edit_line(*at, |l| match l.split_once(" = ") {
                Some((field, _)) => format!("{field} = {}\n", VALUES[value.index(VALUES.len())]),
                None => format!("{l}\n"),
            }),
            Harm::TomlCut(at) => self.toml.truncate(at.index(self.toml.len() + 1)),
            Harm::ManyFrames(times) => {
                let text = String::from_utf8_lossy(&self.toml).into_owned();
                if let Some(last) = text.rfind("[[frames]]") {
                    self.toml.extend(format!("\n{}", &text[last..]).repeat(times.index(3000)).into_bytes());
                }
            }
            Harm::NoFrames => {
                let text = String::from_utf8_lossy(&self.toml).into_owned();
                self.toml.truncate(text.find("[[frames]]").unwrap_or(0));
            }
            Harm::Photo(true, _, kind) => {
                self.photos.iter_mut().for_each(|p| p.1 = other_photo(kind.index(OTHER_PHOTOS)))
            }
            Harm::Photo(false, at, kind) => *self.photo(*at) = other_photo(kind.index(OTHER_PHOTOS)),
            Harm::PhotoCut(at, to) => {
                let photo = self.photo(*at);
                photo.truncate(to.index(photo.len() + 1));
            }
            Harm::PhotoBytes(at, bytes) => spoil(self.photo(*at), bytes, usize::MAX),
            Harm::Exif(at, bytes) => spoil(self.photo(*at), bytes, 160),
            Harm::PhotoGone(at) => {
                let at = at.index(self.photos.len());
                self.photos[at].0 = "elsewhere.jpg".into();
            }
        }
    }

    fn write(&self, folder: &Path) {
        std::fs::write(folder.join("capture.toml"), &self.toml).unwrap();
        self.photos.iter().for_each(|(name, bytes)| std::fs::write(folder.join(name), bytes).unwrap());
    }
}

fn spoil(photo: &mut [u8], bytes: &[(Index, u8)], before: usize) {
    let end = photo.len().min(before);
    bytes.iter().filter(|_| end > 0).for_each(|(at, byte)| photo[at.index(end)] = *byte);
}

fn listing(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        std::fs::read_dir(folder).unwrap().map(|e| e.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

fn read_folder(folder: &Path, still: bool) -> Result<Reading, ReadError> {
    let settings = ReadSettings { still, ..ReadSettings::default() };
    read(folder, &settings, &|_| {}, &AtomicBool::new(false))
}

/// The error says what it is about.
fn names_something(error: &ReadError) -> bool {
    let text = error.to_string();
    match error {
        ReadError::NoCapture { .. } | ReadError::Capture(_) => text.contains("capture.toml"),
        ReadError::MissingPhoto { file }
        | ReadError::Photo { file, .. }
        | ReadError::TooLarge { file }
        | ReadError::Zoom { file, .. }
        | ReadError::Locate { file, .. }
        | ReadError::TwoReflections { file }
        | ReadError::TooFine { file, .. }
        | ReadError::TooSoft { file, .. } => !file.is_empty() && text.contains(file.as_str()),
        ReadError::Cancelled => false,
        _ => text.len() > 20,
    }
}

fn check(which: usize, harms: &[Harm]) {
    let mut folder = Folder::of(&SOUND[which]);
    harms.iter().for_each(|h| folder.harm(h));
    let place = tempfile::tempdir().unwrap();
    folder.write(place.path());
    let before = listing(place.path());
    match read_folder(place.path(), which == 2) {
        Err(error) => {
            assert!(names_something(&error) && !error.next().is_empty(), "{error:?}");
        }
        Ok(reading) => {
            let cells = reading.deviation.grid.len();
            assert!(cells > 0 && [&reading.height, &reading.sigma].iter().all(|m| m.values.len() == cells));
            assert!(reading.deviation.values.iter().all(|v| !v.is_infinite()));
            let out = tempfile::tempdir().unwrap();
            write_reading(&reading, &out.path().join("reading")).unwrap();
        }
    }
    assert_eq!(listing(place.path()), before, "reading leaves nothing beside the photos");
}

proptest! {
    // No file of failures: what is found becomes a test by name.
    #![proptest_config(ProptestConfig { failure_persistence: None, max_shrink_iters: 64, ..ProptestConfig::with_cases(
        std::env::var("PROPTEST_CASES").ok().and_then(|n| n.parse().ok()).unwrap_or(60)) })]
    #[test]
    fn any_folder_is_read_or_refused_in_words(which in 0..3usize, harms in prop::collection::vec(harm(), 1..4)) {
        check(which, &harms);
    }
}

#[test]
fn photos_of_every_other_kind_are_refused_or_read() {
    for kind in 0..OTHER_PHOTOS {
        let place = tempfile::tempdir().unwrap();
        let mut folder = Folder::of(&SOUND[0]);
        folder.photos.iter_mut().for_each(|p| p.1 = other_photo(kind));
        folder.write(place.path());
        let error = read_folder(place.path(), false).expect_err("there is nothing to be read");
        assert!(names_something(&error), "{kind}: {error}");
    }
}

#[test]
fn the_small_captures_are_sound() {
    for (which, capture) in SOUND.iter().enumerate() {
        let place = tempfile::tempdir().unwrap();
        Folder::of(capture).write(place.path());
        let reading = read_folder(place.path(), which == 2);
        assert!(reading.is_ok(), "{which}: {}", reading.unwrap_err());
    }
}
