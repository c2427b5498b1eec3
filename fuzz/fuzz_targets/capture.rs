//! Any bytes as a capture folder: a reading or an error in words, never a panic, a hang or endless memory.
//!
//! The bytes are two lengths (little endian, 32 bits), then `capture.toml`, then the photo `a.jpg`, then `b.png`.
//! Every file that the description names otherwise is missing.
#![no_main]

use dentwright_flow::{ReadSettings, read, write_reading};
use libfuzzer_sys::fuzz_target;
use std::sync::atomic::AtomicBool;

fn taken<'a>(bytes: &mut &'a [u8], length: usize) -> &'a [u8] {
    let (first, rest) = bytes.split_at(length.min(bytes.len()));
    *bytes = rest;
    first
}

fuzz_target!(|data: &[u8]| {
    let mut rest = data;
    let mut length = || u32::from_le_bytes(taken(&mut rest, 4).try_into().unwrap_or_default()) as usize;
    let lengths = [length(), length()];
    let [toml, first] = lengths.map(|n| taken(&mut rest, n));
    let folder = tempfile::tempdir().unwrap();
    for (name, bytes) in [("capture.toml", toml), ("a.jpg", first), ("b.png", rest)] {
        std::fs::write(folder.path().join(name), bytes).unwrap();
    }
    match read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)) {
        Ok(reading) => write_reading(&reading, &folder.path().join("reading")).unwrap(),
        Err(error) => assert!(!error.to_string().is_empty() && !error.next().is_empty()),
    }
});
