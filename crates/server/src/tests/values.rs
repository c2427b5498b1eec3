//! What is entered is checked, and what is not there is said to be so.

use super::client::Client;
use axum::http::StatusCode;
use serde_json::{Value, json};

#[tokio::test]
async fn odd_values_are_refused_in_words() {
    let client = Client::new().await;
    let (job, damage) = client.damage("bonnet").await;
    let dent = json!({ "kind": "round", "length_mm": 20.0, "width_mm": 20.0, "depth_mm": 1.0, "metal": "steel",
        "access": "open", "place": "flat", "count": 1 });
    let with = |field: &str, value: Value| {
        let mut dent = dent.clone();
        dent[field] = value;
        dent
    };
    let dents = format!("/api/damages/{damage}/dents");
    assert_eq!(client.call("POST", &dents, dent.clone()).await.status, StatusCode::CREATED);
    for (field, value) in [("length_mm", json!(-1)), ("count", json!(0)), ("depth_mm", json!(1e9))] {
        let reply = client.call("POST", &dents, with(field, value.clone())).await;
        assert_eq!(reply.trouble(), "value", "{field} {value}");
    }
    for body in [with("kind", json!("bump")).to_string(), "{".to_owned(), "[]".to_owned(), String::new()] {
        assert_eq!(client.text("POST", &dents, &body).await.trouble(), "request", "{body}");
    }
    let off =
        client.call("POST", &format!("/api/jobs/{job}/damages"), json!({ "panel": "roof", "x": 1.2, "y": 0.5 })).await;
    assert_eq!(off.trouble(), "value");
    let mut shop = client.get("/api/shop").await.json();
    shop["tax_percent"] = json!("120");
    assert_eq!(client.call("PUT", "/api/shop", shop).await.trouble(), "value");
    let mut hours = client.get("/api/shop/hours").await.json();
    hours["base_hours"] = json!(0);
    assert_eq!(client.call("PUT", "/api/shop/hours", hours.clone()).await.trouble(), "value");
    let mut input = client.get(&format!("/api/jobs/{job}/quote")).await.json()["input"].clone();
    input["discount"] = json!({ "percent": "400" });
    assert_eq!(client.call("PUT", &format!("/api/jobs/{job}/quote"), input).await.trouble(), "value");
    assert_eq!(client.get("/api/jobs?stage=lost").await.trouble(), "value");
}

#[tokio::test]
async fn what_is_not_there_is_unknown() {
    let client = Client::new().await;
    let none = "01890a5d-ac96-774b-bcce-b302099a8057";
    for path in ["jobs", "tasks", "readings"] {
        assert_eq!(client.get(&format!("/api/{path}/{none}")).await.trouble(), "unknown", "{path}");
        assert_eq!(client.get(&format!("/api/{path}/none")).await.trouble(), "unknown", "{path}");
    }
    for path in ["jobs", "damages", "dents", "tasks"] {
        assert_eq!(
            client.call("DELETE", &format!("/api/{path}/{none}"), json!({})).await.trouble(),
            "unknown",
            "{path}"
        );
    }
    let files = [("a.jpg".to_owned(), vec![1])];
    assert_eq!(client.form(&format!("/api/damages/{none}/captures"), &files).await.trouble(), "unknown");
}

#[tokio::test]
async fn a_change_leaves_the_rest_alone() {
    let client = Client::new().await;
    let (job, _) = client.damage("bonnet").await;
    let path = format!("/api/jobs/{job}");
    let change = json!({ "promised": "2026-12-01", "stage": "in_work" });
    let changed = client.call("PATCH", &path, change).await.json();
    assert_eq!((changed["promised"].as_str(), changed["car"]["make"].as_str()), (Some("2026-12-01"), Some("Vardo")));
    let same = client.call("PATCH", &path, json!({ "notes": "rings first" })).await.json();
    assert_eq!((same["promised"].as_str(), same["stage"].as_str()), (Some("2026-12-01"), Some("in_work")));
    let taken_back = client.call("PATCH", &path, json!({ "promised": null })).await.json();
    assert_eq!((taken_back["promised"].as_str(), taken_back["notes"].as_str()), (None, Some("rings first")));
}

#[tokio::test]
async fn the_description_names_every_path_of_the_app() {
    let description: Value = serde_json::from_str(&crate::openapi()).unwrap();
    let paths = description["paths"].as_object().unwrap();
    for path in ["/api/jobs/{id}/quote", "/api/damages/{id}/captures", "/api/readings/{id}/files/{name}", "/api/pair"] {
        assert!(paths.contains_key(path), "{path}");
    }
    assert_eq!(description["openapi"], "3.1.0");
}
