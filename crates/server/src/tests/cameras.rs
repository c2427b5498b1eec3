//! A phone's camera, calibrated through the API.

use super::client::{Client, Part};
use axum::http::StatusCode;
use dentwright_scene::sheet;
use serde_json::json;

#[tokio::test]
async fn a_phone_is_calibrated_and_forgotten() {
    let client = Client::new().await;
    let photos: Vec<Part> = sheet::photos().unwrap().into_iter().map(|p| (p.file, p.jpeg)).collect();
    let made = client.form("/api/cameras", &photos).await;
    assert_eq!(made.status, StatusCode::CREATED, "{}", made.json());
    let made = made.json();
    assert_eq!((made["phone"].as_str(), made["focal_35mm"].as_u64()), (Some("Example Phone"), Some(26)));
    let (focal, _) = sheet::truth();
    let doubt = made["focal_doubt"].as_f64().unwrap();
    assert!((made["focal_px"].as_f64().unwrap() / focal - 1.0).abs() < 4.0 * doubt && doubt < 1e-3, "{made}");
    assert_eq!(client.get("/api/cameras").await.json()[0]["id"], made["id"]);

    assert_eq!(client.form("/api/cameras", &photos[..2]).await.trouble(), "calibration");
    let plain = vec![("plain.jpg".to_owned(), super::client::jpeg())];
    assert_eq!(client.form("/api/cameras", &plain).await.trouble(), "camera_unnamed");
    let door = super::client::door_capture().into_iter().find(|p| p.0 == "panel.jpg").unwrap();
    let mixed = [photos[0].clone(), door];
    assert_eq!(client.form("/api/cameras", &mixed).await.trouble(), "camera_mixed");
    assert_eq!(client.get("/api/cameras").await.json().as_array().unwrap().len(), 1, "what is refused leaves nothing");

    let path = format!("/api/cameras/{}", made["id"].as_str().unwrap());
    assert_eq!(client.call("DELETE", &path, json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.call("DELETE", &path, json!({})).await.trouble(), "unknown");
}
