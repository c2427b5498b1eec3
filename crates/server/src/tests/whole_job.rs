//! Taken in, measured, priced, printed, removed.

use super::client::{Client, door_capture, jpeg};
use axum::http::{StatusCode, header};
use serde_json::json;

#[tokio::test(flavor = "multi_thread")]
async fn from_photos_to_a_report() {
    let client = Client::new().await;
    client.work().await;
    let (job, damage) = client.damage("front_door_left").await;
    let photo = client.form(&format!("/api/damages/{damage}/photos"), &[("door.jpg".into(), jpeg())]).await;
    assert_eq!(photo.status, StatusCode::CREATED, "{}", photo.json());
    let small = client.get(&format!("/api/photos/{}?width=100", photo.json()[0].as_str().unwrap())).await;
    assert_eq!(image::load_from_memory(&small.bytes).unwrap().width(), 100);

    let taken = client.form(&format!("/api/damages/{damage}/captures"), &door_capture()).await;
    assert_eq!(taken.status, StatusCode::CREATED, "{}", taken.json());
    let end = client.end_of(taken.json()["task_id"].as_str().unwrap()).await;
    assert_eq!(end["state"], "done", "{end}");
    let reading = end["reading_id"].as_str().unwrap().to_owned();
    let facts = client.get(&format!("/api/readings/{reading}")).await.json();
    assert!(facts["read_fraction"].as_f64().unwrap() > 0.5 && !facts["spots"].as_array().unwrap().is_empty());
    let map = client.get(&format!("/api/readings/{reading}/files/deviation.npy")).await;
    let map = dentwright_surface::read_npy(&map.bytes).unwrap();
    assert_eq!(map.shape[0] as u64, facts["grid"]["ny"].as_u64().unwrap());
    let shown = client.get(&format!("/api/readings/{reading}/files/photo")).await;
    assert_eq!(
        u64::from(image::load_from_memory(&shown.bytes).unwrap().width()),
        facts["photo"]["width_px"].as_u64().unwrap()
    );

    let entries = client.call("POST", &format!("/api/readings/{reading}/take"), json!({})).await.json();
    assert!(!entries.as_array().unwrap().is_empty() && entries[0]["source"] == "reading", "{entries}");
    let again = client.call("POST", &format!("/api/readings/{reading}/take"), json!({})).await.json();
    assert_eq!(again, json!([]), "a spot becomes a dent once");

    let mut answer = client.get(&format!("/api/jobs/{job}/quote")).await.json();
    let before: f64 = answer["quote"]["gross"].as_str().unwrap().parse().unwrap();
    assert!(before > 0.0);
    assert_eq!(answer["dent_hours"].as_array().unwrap().len(), entries.as_array().unwrap().len());
    answer["input"]["ri_lines"] = json!([{ "what": "Door card", "amount": "100.00" }]);
    let after = client.call("PUT", &format!("/api/jobs/{job}/quote"), answer["input"].clone()).await.json();
    let after: f64 = after["quote"]["gross"].as_str().unwrap().parse().unwrap();
    assert!((after - before - 119.0).abs() < 0.005, "100 and 19 % tax: {before} and {after}");

    let cautions = client.get(&format!("/api/cautions?job={job}")).await.json();
    assert!(cautions.as_array().unwrap().iter().any(|one| one["code"] == "airbag_seat_pillar"), "{cautions}");
    let report = client.get(&format!("/api/jobs/{job}/report.pdf")).await;
    assert_eq!(report.headers[header::CONTENT_TYPE], "application/pdf");
    assert!(report.bytes.starts_with(b"%PDF-") && report.bytes.len() > 50_000, "{} bytes", report.bytes.len());
    let row = client.get("/api/jobs?search=vardo+mara&stage=taken_in").await.json();
    assert_eq!((row[0]["damage_count"].as_u64(), row[0]["currency"].as_str()), (Some(1), Some("EUR")));

    assert!(client.kept_files() > 20);
    assert_eq!(client.call("DELETE", &format!("/api/jobs/{job}"), json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.kept_files(), 0, "files that nothing names any more are gone");
    assert_eq!(client.get(&format!("/api/readings/{reading}")).await.trouble(), "unknown");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_read_is_stopped_and_made_again() {
    let client = Client::new().await;
    let (_, damage) = client.damage("front_door_left").await;
    let taken = client.form(&format!("/api/damages/{damage}/captures"), &door_capture()).await.json();
    let task = taken["task_id"].as_str().unwrap();
    assert_eq!(client.get(&format!("/api/tasks/{task}")).await.json()["state"], "queued");
    assert_eq!(client.call("DELETE", &format!("/api/tasks/{task}"), json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.get(&format!("/api/tasks/{task}")).await.json()["state"], "cancelled");
    let capture = taken["capture_id"].as_str().unwrap();
    let again = client.call("POST", &format!("/api/captures/{capture}/read"), json!({})).await.json();
    let again = again["task_id"].as_str().unwrap();
    client.work().await;
    while client.get(&format!("/api/tasks/{again}")).await.json()["state"] == "queued" {
        tokio::task::yield_now().await;
    }
    client.call("DELETE", &format!("/api/tasks/{again}"), json!({})).await;
    let end = client.end_of(again).await;
    assert_eq!(end["state"], "cancelled", "{end}");
    assert!(client.kept_files() > 20, "the photos are kept");
}
