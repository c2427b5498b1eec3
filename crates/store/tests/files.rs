//! Files by content hash: whole or not there, and never changed.

mod common;

use common::files_below;
use dentwright_store::{FileError, Files};
use std::fs;

/// BLAKE3 of nothing, from the algorithm's published test vectors.
const OF_NOTHING: &str = "af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262";

#[test]
fn content_comes_back_and_equal_content_is_one_file() {
    let folder = tempfile::tempdir().unwrap();
    let files = Files::open(folder.path()).unwrap();
    let one = files.put(b"a photo").unwrap();
    assert_eq!((one.bytes, files.read(&one.hash).unwrap().as_slice()), (7, b"a photo".as_slice()));
    assert_eq!(files.put(b"a photo").unwrap(), one);
    assert_eq!(files.put(b"").unwrap().hash, OF_NOTHING);
    assert_eq!(files_below(&folder.path().join("files")).len(), 2);
    assert!(folder.path().join("files").join(&one.hash[..2]).join(&one.hash).is_file());
}

/// A process that is killed before the rename leaves bytes in `tmp` and nothing under any name.
#[test]
fn what_was_not_renamed_is_not_there() {
    let folder = tempfile::tempdir().unwrap();
    let files = Files::open(folder.path()).unwrap();
    let scratch = files.scratch().unwrap();
    fs::write(scratch.path().join("half"), b"half a pho").unwrap();
    std::mem::forget(scratch); // the process ends here
    assert_eq!(files_below(&folder.path().join("tmp")).len(), 1);

    let again = Files::open(folder.path()).unwrap();
    assert_eq!(files_below(folder.path()), [] as [std::path::PathBuf; 0]);
    let hash = blake3::hash(b"half a pho").to_hex().to_string();
    assert!(matches!(again.read(&hash), Err(FileError::Unknown(_))));
}

#[test]
fn a_file_that_rotted_is_noticed_and_mended_by_its_photo() {
    let folder = tempfile::tempdir().unwrap();
    let files = Files::open(folder.path()).unwrap();
    let filed = files.put(b"a photo").unwrap();
    let path = folder.path().join("files").join(&filed.hash[..2]).join(&filed.hash);
    fs::write(&path, b"a phot0").unwrap();
    assert!(matches!(files.read(&filed.hash), Err(FileError::Damaged(_))));
    assert!(matches!(files.copy(&filed.hash, &folder.path().join("out")), Err(FileError::Damaged(_))));
    assert!(!folder.path().join("out").exists());
    files.put(b"a photo").unwrap();
    assert_eq!(files.read(&filed.hash).unwrap(), b"a photo");
}

#[test]
fn no_hash_leads_out_of_the_folder() {
    let folder = tempfile::tempdir().unwrap();
    let files = Files::open(folder.path()).unwrap();
    let long = format!("../{}", "a".repeat(61));
    for hash in ["", "..", "../../etc/passwd", "é", long.as_str(), &"A".repeat(64), &"g".repeat(64)] {
        assert!(matches!(files.read(hash), Err(FileError::Unknown(_))), "{hash}");
        assert!(!files.has(hash));
        files.remove(hash).unwrap();
    }
}
