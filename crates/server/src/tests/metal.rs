//! What the metal of a reading holds, from the app's side.

use super::client::{Client, demo_capture};
use axum::http::StatusCode;
use serde_json::{Value, json};
use std::time::Duration;

async fn end_of(client: &Client, path: &str) -> Value {
    for _ in 0..3000 {
        let answer = client.get(path).await.json();
        if answer["state"] != "running" {
            return answer;
        }
        tokio::time::sleep(Duration::from_millis(200)).await;
    }
    panic!("the metal is never known");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_reading_knows_its_metal_and_moves_are_tried() {
    let client = Client::new().await;
    client.work().await;
    let (_, damage) = client.damage("bonnet").await;
    let taken = client.form(&format!("/api/damages/{damage}/captures"), &demo_capture(1)).await;
    let end = client.end_of(taken.json()["task_id"].as_str().unwrap()).await;
    let reading = end["reading_id"].as_str().unwrap().to_owned();
    let path = format!("/api/readings/{reading}/metal");

    assert_eq!(client.get(&path).await.json()["state"], "none");
    let try_path = format!("{path}/try");
    let spot = client.get(&format!("/api/readings/{reading}")).await.json()["spots"][0].clone();
    let push = json!({ "kind": "push", "x_mm": spot["x_mm"], "y_mm": spot["y_mm"], "travel_mm": 1.5,
        "tip": { "shape": "sphere", "radius_mm": 8.0 }, "temperature_c": 25.0, "paint": "factory", "aged": false });
    assert_eq!(client.call("POST", &try_path, push.clone()).await.trouble(), "unknown");
    for wrong in [
        json!({ "metal": "wood", "spot": 0 }),
        json!({ "metal": "steel_dc04", "spot": 99 }),
        json!({ "metal": "steel_dc04", "spot": 0, "thickness_mm": 12.0 }),
    ] {
        assert_eq!(client.call("POST", &path, wrong).await.trouble(), "value");
    }
    let asked = json!({ "metal": "steel_bh180_panel", "spot": 0, "thickness_mm": 0.7 });
    assert_eq!(client.call("POST", &path, asked.clone()).await.status, StatusCode::ACCEPTED);
    assert_eq!(client.call("DELETE", &path, json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.get(&path).await.json()["state"], "none", "what was stopped leaves nothing");

    assert_eq!(client.call("POST", &path, asked).await.status, StatusCode::ACCEPTED);
    let done = end_of(&client, &path).await;
    assert_eq!(done["state"], "done", "{done}");
    let facts = &done["facts"];
    println!("{facts:#}");
    let stretch = facts["stretch"]["value"]["value"].as_f64().unwrap();
    // At least the mean stretch of a cap of this depth and width, (8/3)(h/D)² along its middle line; the press that left
    // it went far deeper, but a hail dent stretches less than two percent (common practice, no published source).
    let number = |of: &Value| of.as_f64().unwrap();
    let cap = 8.0 / 3.0 * (number(&spot["height_mm"]) / number(&spot["length_mm"])).powi(2);
    assert!(stretch > cap && stretch < 0.02 && facts["word"] == "estimate", "{facts}");
    let doubt = number(&facts["stretch"]["value"]["doubt"]) / stretch;
    assert!((0.05..1.0).contains(&doubt), "{facts}");
    assert!(number(&facts["misfit_mm"]) < 0.15 * number(&facts["depth_mm"]), "{facts}");
    let map = client.get(&format!("{path}/maps/tension")).await;
    let map = dentwright_surface::read_npy(&map.bytes).unwrap();
    assert_eq!(map.shape[0] as u64, facts["grid"]["ny"].as_u64().unwrap());

    let tried = client.call("POST", &try_path, push.clone()).await.json();
    println!("{tried:#}");
    let answer = &tried["answer"];
    assert!(answer["held_mm"].as_f64().unwrap() > 1.0 && answer["force_n"].as_f64().unwrap() > 1.0, "{tried}");
    assert!(answer["left_mm"].as_f64().unwrap() < answer["held_mm"].as_f64().unwrap(), "{tried}");
    assert!(tried["paint"]["risk"].is_string() && tried["lever"].is_null(), "{tried}");
    let mut far = push;
    far["travel_mm"] = json!(90.0);
    assert_eq!(client.call("POST", &try_path, far).await.trouble(), "value");
}
