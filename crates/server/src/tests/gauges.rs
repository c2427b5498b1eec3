//! A depth by gauge joins a reading, stands for it, and is taken back.

use super::client::{Client, demo_capture};
use axum::http::StatusCode;
use dentwright_surface::read_npy;
use serde_json::{Value, json};

/// Place of the demo's steep door.
const STEEP: usize = 6;

fn listed(damage: &Value) -> Vec<String> {
    let captures = damage["captures"].as_array().unwrap().iter();
    let readings = captures.flat_map(|capture| capture["readings"].as_array().unwrap());
    readings.map(|one| one["id"].as_str().unwrap().to_owned()).collect()
}

#[tokio::test(flavor = "multi_thread")]
async fn a_depth_joins_a_reading_and_is_taken_back() {
    let client = Client::new().await;
    client.work().await;
    let (job, damage) = client.damage("rear_door_left").await;
    let taken = client.form(&format!("/api/damages/{damage}/captures"), &demo_capture(STEEP)).await.json();
    let end = client.end_of(taken["task_id"].as_str().unwrap()).await;
    let first = end["reading_id"].as_str().unwrap().to_owned();
    let reading = client.get(&format!("/api/readings/{first}")).await.json();
    let fold = &reading["folds"][0];
    let (x, y) = (fold["x_mm"].as_f64().unwrap(), fold["y_mm"].as_f64().unwrap());
    let bound = reading["spots"][0]["at_least_mm"].as_f64().unwrap();
    assert!(fold["kind"] == "low" && bound < -0.5 && bound > -2.0, "{bound}");

    // What is taken into the quote as a lower bound stays marked, until somebody enters the depth.
    let dents = client.call("POST", &format!("/api/readings/{first}/take"), json!({})).await.json();
    assert!(dents[0]["at_least"] == true && (dents[0]["dent"]["depth_mm"].as_f64().unwrap() + bound).abs() < 1e-9);
    let mut dent = dents[0]["dent"].clone();
    dent["depth_mm"] = json!(2.0);
    let changed = client.call("PUT", &format!("/api/dents/{}", dents[0]["id"].as_str().unwrap()), dent).await.json();
    assert_eq!(changed["at_least"], false);

    let gauge = |of: &str| format!("/api/readings/{of}/gauge");
    let depth = |x: f64, y: f64, mm: f64| json!({ "x_mm": x, "y_mm": y, "height_mm": mm });
    for (asked, code) in [
        (depth(x, y, -80.0), "gauge_wrong"),
        (depth(900.0, y, -1.0), "gauge_outside"),
        (json!({ "x_mm": x, "y_mm": y, "height_mm": -2.0, "span_mm": 900.0 }), "gauge_foot"),
    ] {
        let refused = client.call("POST", &gauge(&first), asked).await;
        assert_eq!((refused.status, refused.trouble().as_str()), (StatusCode::UNPROCESSABLE_ENTITY, code));
    }
    let made = client.call("POST", &gauge(&first), depth(x, y, -2.0)).await;
    assert_eq!(made.status, StatusCode::CREATED, "{}", made.json());
    let made = made.json();
    let second = made["id"].as_str().unwrap().to_owned();
    assert!(made["folds"].as_array().unwrap().is_empty() && made["gauges"][0]["doubt_mm"] == 0.05, "{made}");
    assert!(made["spots"][0]["height_mm"].as_f64().unwrap() < -1.8, "{}", made["spots"][0]);
    assert!(made["notes"].as_array().unwrap().iter().any(|note| note["code"] == "gauge"));
    for (of, filled) in [(&first, false), (&second, true)] {
        let map = read_npy(&client.get(&format!("/api/readings/{of}/files/deviation.npy")).await.bytes).unwrap();
        let deepest = map.values.iter().filter(|v| v.is_finite()).fold(0.0, |a: f64, b| a.min(*b));
        assert_eq!(deepest < -1.8, filled, "{deepest}");
    }

    // It stands for the one before, in the list and in the series; that one is as it was.
    let stands = |whole: Value| listed(&whole["damages"][0]);
    assert_eq!(stands(client.get(&format!("/api/jobs/{job}")).await.json()), std::slice::from_ref(&second));
    assert_eq!(client.get(&format!("/api/damages/{damage}/series")).await.json().as_array().unwrap().len(), 1);
    assert_eq!(client.get(&format!("/api/readings/{first}")).await.json(), reading);

    // A depth where the map was read is held against it, beside the first.
    let checked = client.call("POST", &gauge(&second), depth(x + 60.0, y, -0.5)).await.json();
    let third = checked["id"].as_str().unwrap().to_owned();
    assert_eq!(
        (&checked["gauges"][1]["agrees"], checked["gauges"].as_array().unwrap().len()),
        (&json!("disagrees"), 2)
    );
    assert!(checked["notes"].as_array().unwrap().iter().any(|note| note["code"] == "gauge_off"));

    // Only the last is taken back, and none after which moves were noted.
    assert_eq!(client.call("DELETE", &gauge(&second), json!({})).await.trouble(), "gauge_in_use");
    let back = client.call("DELETE", &gauge(&third), json!({})).await;
    assert_eq!((back.status, back.json()["id"].as_str().unwrap()), (StatusCode::OK, second.as_str()));
    let back = client.call("DELETE", &gauge(&second), json!({})).await;
    assert_eq!(back.json()["id"].as_str().unwrap(), first);
    assert_eq!(stands(client.get(&format!("/api/jobs/{job}")).await.json()), std::slice::from_ref(&first));
    assert_eq!(client.call("DELETE", &gauge(&first), json!({})).await.trouble(), "unknown");
}
