//! A shop goes out as one file and comes in, once and whole, or not at all.

use super::client::{Client, Part, door_capture, jpeg};
use axum::http::{StatusCode, header};
use serde_json::{Value, json};
use std::io::{Cursor, Read, Write};
use zip::write::SimpleFileOptions;
use zip::{ZipArchive, ZipWriter};

/// A shop with two jobs, photos, a reading, worked time and an invoice.
async fn full() -> (Client, String, String) {
    let client = Client::new().await;
    client.work().await;
    let (job, damage) = client.damage("front_door_left").await;
    client.form(&format!("/api/damages/{damage}/photos"), &[("door.jpg".into(), jpeg())]).await;
    let taken = client.form(&format!("/api/damages/{damage}/captures"), &door_capture()).await.json();
    let end = client.end_of(taken["task_id"].as_str().unwrap()).await;
    let reading = end["reading_id"].as_str().expect("a reading").to_owned();
    client.call("POST", &format!("/api/readings/{reading}/take"), json!({})).await;
    let times = format!("/api/jobs/{job}/times");
    client
        .call(
            "POST",
            &times,
            json!({ "kind": "push", "started": "2026-11-25T08:00:00Z", "stopped": "2026-11-25T09:00:00Z" }),
        )
        .await;
    client.call("PUT", &format!("/api/jobs/{job}/worked"), json!({ "times": [{ "worked_s": 3600 }] })).await;
    let mut shop = client.get("/api/shop").await.json();
    shop["name"] = json!("Line & Light (invented)");
    client.call("PUT", "/api/shop", shop).await;
    let papers = format!("/api/jobs/{job}/papers");
    for kind in ["estimate", "invoice"] {
        let issued = client.call("POST", &papers, json!({ "kind": kind })).await;
        assert_eq!(issued.status, StatusCode::CREATED, "{}", issued.json());
    }
    client.damage("roof").await;
    (client, job, reading)
}

async fn archive(client: &Client) -> Vec<u8> {
    let sent = client.get("/api/archive.zip").await;
    assert_eq!(
        (sent.status, sent.headers[header::CONTENT_TYPE].to_str().unwrap()),
        (StatusCode::OK, "application/zip")
    );
    sent.bytes
}

async fn take(client: &Client, zip: Vec<u8>) -> super::client::Reply {
    client.form("/api/archive", &[("shop.zip".into(), zip)] as &[Part]).await
}

fn entries(zip: &[u8]) -> Vec<(String, Vec<u8>)> {
    let mut packed = ZipArchive::new(Cursor::new(zip)).unwrap();
    let mut all = Vec::new();
    for at in 0..packed.len() {
        let mut entry = packed.by_index(at).unwrap();
        let mut bytes = Vec::new();
        entry.read_to_end(&mut bytes).unwrap();
        all.push((entry.name().unwrap().to_string(), bytes));
    }
    all
}

fn packed(entries: &[(String, Vec<u8>)]) -> Vec<u8> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in entries {
        zip.start_file(name.as_str(), SimpleFileOptions::default()).unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

/// The record of an archive, changed.
fn with_record(zip: &[u8], change: impl FnOnce(&mut Value)) -> Vec<u8> {
    let mut all = entries(zip);
    let record = all.iter_mut().find(|(name, _)| name == "dentwright.json").unwrap();
    let mut value: Value = serde_json::from_slice(&record.1).unwrap();
    change(&mut value);
    record.1 = value.to_string().into_bytes();
    packed(&all)
}

#[tokio::test(flavor = "multi_thread")]
async fn a_shop_comes_into_an_empty_one_as_it_was_and_only_once() {
    let (from, job, reading) = full().await;
    let zip = archive(&from).await;
    let names: Vec<String> = entries(&zip).into_iter().map(|(name, _)| name).collect();
    assert!(names.iter().any(|name| name.starts_with("papers/I-") && name.ends_with("paper.pdf")), "{names:?}");
    assert!(names.iter().any(|name| name.starts_with("photo/") && name.ends_with(".jpg")), "{names:?}");

    let to = Client::new().await;
    let said = take(&to, zip.clone()).await;
    assert_eq!(said.json(), json!({ "jobs": 2, "jobs_there": 0, "renumbered": [] }));
    for path in [
        "/api/jobs".to_owned(),
        format!("/api/jobs/{job}/quote"),
        format!("/api/jobs/{job}/papers"),
        format!("/api/readings/{reading}"),
        "/api/shop".to_owned(),
        "/api/crew".to_owned(),
        "/api/shop/hours/learned".to_owned(),
    ] {
        assert_eq!(to.get(&path).await.json(), from.get(&path).await.json(), "{path}");
    }
    // The task that read it stays behind; all else of the job is the same.
    let mut here = from.get(&format!("/api/jobs/{job}")).await.json();
    here["damages"][0]["captures"][0]["task_id"] = Value::Null;
    assert_eq!(to.get(&format!("/api/jobs/{job}")).await.json(), here);
    let map = format!("/api/readings/{reading}/files/deviation.npy");
    assert!(to.get(&map).await.bytes == from.get(&map).await.bytes, "the map is the same to the last bit");
    assert_eq!(to.kept_files(), from.kept_files());

    let again = take(&to, zip.clone()).await;
    assert_eq!(again.json(), json!({ "jobs": 0, "jobs_there": 2, "renumbered": [] }));
    assert_eq!(archive_tables(&archive(&to).await), archive_tables(&zip), "nothing came twice");

    // Numbers go on where they were.
    let (next, _) = to.damage("bonnet").await;
    assert!(to.get(&format!("/api/jobs/{next}")).await.json()["number"].as_str().unwrap().ends_with("-003"));
}

fn archive_tables(zip: &[u8]) -> Value {
    let all = entries(zip);
    let (_, text) = all.iter().find(|(name, _)| name == "dentwright.json").unwrap();
    serde_json::from_slice::<Value>(text).unwrap()["tables"].clone()
}

#[tokio::test(flavor = "multi_thread")]
async fn a_browser_gets_it_packed_once_more() {
    let mut client = Client::new().await;
    client.damage("bonnet").await;
    client.headers.insert(header::ACCEPT_ENCODING, "gzip".parse().unwrap());
    let sent = client.get("/api/archive.zip").await;
    assert_eq!((sent.status, sent.headers[header::CONTENT_ENCODING].to_str().unwrap()), (StatusCode::OK, "gzip"));
    assert!(sent.bytes.starts_with(&[0x1f, 0x8b]), "RFC 1952");
}

#[tokio::test(flavor = "multi_thread")]
async fn another_shop_takes_the_jobs_under_new_numbers_but_never_an_invoice() {
    let (from, job, _) = full().await;
    let zip = archive(&from).await;
    let to = Client::new().await;
    to.damage("bonnet").await;
    let here = to.get("/api/jobs").await.json()[0]["number"].clone();
    let said = take(&to, zip.clone()).await.json();
    assert_eq!((&said["jobs"], &said["renumbered"][0]["was"]), (&json!(2), &here), "{said}");
    let is = &said["renumbered"][0]["is"];
    assert!(is.as_str().unwrap().ends_with("-003"), "{said}");
    assert_eq!(&to.get(&format!("/api/jobs/{job}")).await.json()["number"], is);
    // What was learned from it goes along under the new number.
    assert!(to.get(&format!("/api/jobs/{job}/quote")).await.json()["worked"]["worked"].is_number());

    let other = Client::new().await;
    let (own, damage) = other.damage("bonnet").await;
    let dent = json!({ "kind": "hail", "length_mm": 9.0, "width_mm": 9.0, "depth_mm": 0.3, "metal": "steel", "access": "open", "place": "flat", "count": 2 });
    other.call("POST", &format!("/api/damages/{damage}/dents"), dent).await;
    let billed = other.call("POST", &format!("/api/jobs/{own}/papers"), json!({ "kind": "invoice" })).await;
    assert_eq!(billed.status, StatusCode::CREATED, "{}", billed.json());
    let (before, files) = (other.get("/api/jobs").await.json(), other.kept_files());
    let refused = take(&other, zip).await;
    assert_eq!((refused.trouble(), refused.status), ("archive_number".into(), StatusCode::CONFLICT));
    assert_eq!((other.get("/api/jobs").await.json(), other.kept_files()), (before, files), "nothing was taken in");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_spoiled_archive_leaves_nothing_behind() {
    let (from, _, _) = full().await;
    let zip = archive(&from).await;
    let to = Client::new().await;
    to.damage("bonnet").await;
    let before = to.get("/api/jobs").await.json();
    let row = |table: &str, column: &str, value: Value| {
        with_record(&zip, |record| record["tables"][table][0][column] = value)
    };
    let mut cut = zip.clone();
    cut.truncate(zip.len() / 2);
    let mut flipped = entries(&zip);
    let photo = flipped.iter().position(|(name, _)| name.starts_with("photo/")).unwrap();
    flipped[photo].1[20] ^= 1;
    let mut missing = entries(&zip);
    missing.retain(|(name, _)| !name.starts_with("papers/"));
    let mut outside = entries(&zip);
    outside.push(("../outside.txt".into(), b"x".to_vec()));
    let spoiled: Vec<(&str, Vec<u8>, &str)> = vec![
        ("cut short", cut, "archive"),
        ("no zip", b"no zip at all".to_vec(), "archive"),
        ("a photo that changed", packed(&flipped), "archive"),
        ("without its papers", packed(&missing), "archive"),
        ("reaching out", packed(&outside), "bad_zip"),
        ("no record", packed(&entries(&zip)[1..]), "archive"),
        ("a stage nobody knows", row("job", "stage", json!("parked")), "archive"),
        ("a number where a text is", row("job", "notes", json!(7)), "archive"),
        ("a place off the panel", row("damage", "x", json!("7.5")), "archive"),
        ("a length that is none", row("dent", "length_mm", json!("NaN")), "archive"),
        ("a column nobody knows", row("job", "colour", json!("blue")), "archive"),
        ("a damage of no job", row("damage", "job_id", json!("gone")), "archive"),
        ("a row without its key", row("technician", "pay", Value::Null), "archive"),
        (
            "a table nobody knows",
            with_record(&zip, |record| record["tables"]["secrets"] = json!([{ "a": 1 }])),
            "archive",
        ),
        (
            "an hourly rate below zero",
            with_record(&zip, |record| {
                for one in record["tables"]["setting"].as_array_mut().unwrap() {
                    if one["name"] == "shop" {
                        let mut shop: Value = serde_json::from_str(one["value"].as_str().unwrap()).unwrap();
                        shop["hourly_rate"] = json!("-5");
                        one["value"] = shop.to_string().into();
                    }
                }
            }),
            "archive",
        ),
        ("a later version", with_record(&zip, |record| record["schema"] = json!(9999)), "archive_later"),
        ("a later form", with_record(&zip, |record| record["form"] = json!(2)), "archive_later"),
    ];
    for (what, bytes, code) in spoiled {
        let refused = take(&to, bytes).await;
        assert_eq!(refused.trouble(), code, "{what}: {}", refused.json());
        assert_eq!(to.get("/api/jobs").await.json(), before, "{what}");
        assert_eq!(to.kept_files(), 0, "{what}: no file was left behind");
    }
    assert_eq!(take(&to, zip).await.json()["jobs"], 2, "and the sound one still comes in");
}
