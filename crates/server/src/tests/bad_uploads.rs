//! What is wrong is said plainly, and nothing of it is kept.

use super::client::{Client, Part, door_capture, jpeg};
use std::io::{Cursor, Write};
use zip::ZipWriter;
use zip::write::SimpleFileOptions;

const DESCRIPTION: &str = r#"
[panel]
tag_family = "tag36h11"
tag_size_mm = 14.0
tag_ids = [0, 1, 2, 3]
[board]
kind = "screen"
width_mm = 500.0
height_mm = 300.0
tags = []
[[frames]]
file = "setup.jpg"
role = "setup"
[[frames]]
file = "panel.jpg"
role = "panel"
"#;

fn zip(files: &[(&str, Vec<u8>)]) -> Part {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in files {
        zip.start_file(*name, SimpleFileOptions::default()).unwrap();
        zip.write_all(bytes).unwrap();
    }
    ("capture.zip".to_owned(), zip.finish().unwrap().into_inner())
}

/// Sends files to a fresh damage, which must not take them: code and message.
async fn refused(files: &[Part]) -> (String, String) {
    let client = Client::new().await;
    let (job, damage) = client.damage("roof").await;
    let reply = client.form(&format!("/api/damages/{damage}/captures"), files).await;
    let code = reply.trouble();
    assert_eq!(client.kept_files(), 0, "something of {code} was kept");
    let job = client.get(&format!("/api/jobs/{job}")).await.json();
    assert_eq!(job["damages"][0]["captures"].as_array().unwrap().len(), 0);
    let left = std::fs::read_dir(client.folder.path().join("shop/tmp")).unwrap().count();
    assert_eq!(left, 0, "something of {code} lies about");
    (code, reply.json()["message"].as_str().unwrap().to_owned())
}

#[tokio::test(flavor = "multi_thread")]
async fn photos_without_a_description() {
    let (code, message) = refused(&[("holiday.jpg".into(), jpeg())]).await;
    assert_eq!(code, "no_capture_toml");
    assert!(message.contains("holiday.jpg"), "{message}");
    assert_eq!(refused(&[zip(&[("trip/beach.jpg", jpeg())])]).await.0, "no_capture_toml");
    assert_eq!(refused(&[]).await.0, "no_files");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_description_that_does_not_fit() {
    let (code, message) = refused(&[("capture.toml".into(), DESCRIPTION.into()), ("panel.jpg".into(), jpeg())]).await;
    assert_eq!(code, "missing_photo");
    assert!(message.contains("setup.jpg"), "{message}");
    let (code, message) = refused(&[("capture.toml".into(), b"[panel".to_vec())]).await;
    assert_eq!((code.as_str(), message.contains("capture.toml")), ("capture", true));
    let other = DESCRIPTION.replace("tag36h11", "tag16h5");
    let (_, message) = refused(&[("capture.toml".into(), other.into_bytes())]).await;
    assert!(message.contains("tag16h5"), "{message}");
    let reaching = DESCRIPTION.replace("setup.jpg", "../setup.jpg");
    let (_, message) = refused(&[("capture.toml".into(), reaching.into_bytes())]).await;
    assert!(message.contains("../setup.jpg"), "{message}");
}

#[tokio::test(flavor = "multi_thread")]
async fn zips_that_cannot_be_trusted() {
    for name in ["../escape.jpg", "/etc/escape.jpg", "a/../../escape.jpg", r"..\escape.jpg", "C:/escape.jpg"] {
        let (code, message) = refused(&[zip(&[(name, jpeg()), ("capture.toml", DESCRIPTION.into())])]).await;
        assert_eq!(code, "bad_zip");
        assert!(message.contains("escape.jpg"), "{message}");
    }
    let mut link = ZipWriter::new(Cursor::new(Vec::new()));
    link.add_symlink("panel.jpg", "/etc/passwd", SimpleFileOptions::default()).unwrap();
    let link = ("link.zip".to_owned(), link.finish().unwrap().into_inner());
    assert_eq!(refused(&[link]).await.0, "bad_zip");
    let mut cut = zip(&[("panel.jpg", jpeg())]);
    cut.1.truncate(60);
    assert_eq!(refused(&[cut]).await.0, "bad_zip");
    // 61 MB of nothing pack into a few kilobytes.
    let (code, message) =
        refused(&[zip(&[("bomb.jpg", vec![0; 61 << 20]), ("capture.toml", DESCRIPTION.into())])]).await;
    assert_eq!(code, "photo_too_large");
    assert!(message.contains("bomb.jpg"), "{message}");
}

#[tokio::test(flavor = "multi_thread")]
async fn files_that_are_too_large_or_come_twice() {
    let (code, message) = refused(&[("film.jpg".into(), vec![0; 200 << 20])]).await;
    assert_eq!((code.as_str(), message.contains("film.jpg")), ("photo_too_large", true));
    assert_eq!(refused(&[("a.jpg".into(), jpeg()), ("a.jpg".into(), jpeg())]).await.0, "twice");
    assert_eq!(refused(&[("..".into(), jpeg())]).await.0, "file_name");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_photo_that_is_cut_short_is_named() {
    let client = Client::new().await;
    client.work().await;
    let (_, damage) = client.damage("front_door_left").await;
    let mut files = door_capture();
    let panel = files.iter_mut().find(|(name, _)| name == "panel.jpg").unwrap();
    panel.1.truncate(panel.1.len() / 2);
    let taken = client.form(&format!("/api/damages/{damage}/captures"), &files).await.json();
    let end = client.end_of(taken["task_id"].as_str().unwrap()).await;
    assert_eq!(end["state"], "failed");
    assert!(end["error"]["message"].as_str().unwrap().contains("panel.jpg"), "{end}");
    assert!(!end["error"]["next"].as_str().unwrap().is_empty());
}

#[tokio::test(flavor = "multi_thread")]
async fn what_is_no_photo_is_not_shown_as_one() {
    let client = Client::new().await;
    let (_, damage) = client.damage("roof").await;
    let files = [("good.jpg".to_owned(), jpeg()), ("letter.jpg".to_owned(), b"not a photo".to_vec())];
    let reply = client.form(&format!("/api/damages/{damage}/photos"), &files).await;
    assert_eq!(reply.trouble(), "photo");
    assert!(reply.json()["message"].as_str().unwrap().contains("letter.jpg"));
    assert_eq!(client.kept_files(), 0);
    assert_eq!(client.get("/api/photos/..%2F..%2Frecord.sqlite").await.trouble(), "unknown");
}
