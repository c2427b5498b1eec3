//! Ways of pricing, the shop's hail tables, and hours that learn.

use super::client::Client;
use axum::http::StatusCode;
use serde_json::{Value, json};

fn dent(across_mm: f64, count: u32) -> Value {
    json!({ "kind": "hail", "length_mm": across_mm, "width_mm": across_mm, "depth_mm": 0.4, "metal": "steel",
            "access": "open", "place": "flat", "count": count })
}

/// A job with twelve dents on the bonnet: 5 up to 10 mm, 7 up to 20 mm.
async fn hail(client: &Client) -> (String, String) {
    let (job, damage) = client.damage("bonnet").await;
    for one in [dent(9.0, 5), dent(15.0, 7)] {
        let added = client.call("POST", &format!("/api/damages/{damage}/dents"), one).await;
        assert_eq!(added.status, StatusCode::CREATED, "{}", added.json());
    }
    (job, damage)
}

#[tokio::test]
async fn a_hail_table_is_imported_and_prices_by_both_rules() {
    let client = Client::new().await;
    let (job, _) = hail(&client).await;
    let bad = json!({ "name": "2026", "per": "panel", "csv": "panel;dents;10 mm;20 mm\nHaube;1-5;60;\n" });
    let refused = client.call("POST", "/api/hail-tables", bad).await;
    assert_eq!((refused.trouble(), refused.status), ("table".into(), StatusCode::UNPROCESSABLE_ENTITY));
    assert_eq!(refused.json()["message"], "line 2, column 20 mm: the price is missing");
    assert_eq!(client.get("/api/hail-tables").await.json(), json!([]));

    let good = json!({ "name": "2026", "per": "panel",
        "csv": "panel;dents;10 mm;20 mm\nMotorhaube;1-5;60;80\nHood;6+;90,50;120\n*;1+;40;50\n" });
    let added = client.call("POST", "/api/hail-tables", good).await;
    assert_eq!(added.status, StatusCode::CREATED, "{}", added.json());
    let table = added.json()["id"].as_str().unwrap().to_owned();

    let quote = format!("/api/jobs/{job}/quote");
    let mut input = client.get(&quote).await.json()["input"].clone();
    assert_eq!(input["way"], json!({ "by": "hours" }), "a quote from before is by hours");
    input["way"] = json!({ "by": "hail_table", "table": table, "size_rule": "gauge" });
    let answer = client.call("PUT", &quote, input.clone()).await.json();
    assert_eq!(answer["quote"]["net"], "180.00", "60 for five, 120 for seven: {answer}");
    let rules = &answer["quote"]["size_rules"];
    assert_eq!((&rules["gauge"], &rules["majority"]), (&json!("214.20"), &json!("142.80")));

    // A table that is no longer offered still prices the quote that was made with it.
    let path = format!("/api/hail-tables/{table}");
    assert_eq!(client.call("DELETE", &path, json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.call("DELETE", &path, json!({})).await.trouble(), "unknown");
    assert_eq!(client.get("/api/hail-tables").await.json(), json!([]));
    assert_eq!(client.get(&quote).await.json()["quote"]["net"], "180.00");
    let row = client.get("/api/jobs").await.json();
    assert_eq!(row[0]["gross"], "214.20");

    input["way"]["table"] = json!("no such table");
    assert_eq!(client.call("PUT", &quote, input).await.trouble(), "value");
}

#[tokio::test]
async fn worked_time_is_learned_and_taken_back() {
    let client = Client::new().await;
    let (job, damage) = hail(&client).await;
    let quote = format!("/api/jobs/{job}/quote");
    let hours = |answer: &Value| answer["quote"]["hours"]["likely"].as_f64().unwrap();
    let before = client.get(&quote).await.json();
    assert_eq!(before["worked"], Value::Null);
    let known = client.get("/api/shop/hours/learned").await.json();
    assert_eq!((&known["jobs"], &known["calibration"]), (&json!(0), &Value::Null));

    let worked = format!("/api/jobs/{job}/worked");
    let twice = json!({ "times": [{ "worked_s": 7200 }, { "damage": damage, "worked_s": 60 }] });
    assert_eq!(client.call("PUT", &worked, twice).await.trouble(), "value");
    let nothing = json!({ "times": [{ "worked_s": 0 }] });
    assert_eq!(client.call("PUT", &worked, nothing).await.trouble(), "value");

    let seconds = 3600.0 * 2.0 * hours(&before);
    let said = client.call("PUT", &worked, json!({ "times": [{ "damage": damage, "worked_s": seconds }] })).await;
    assert_eq!(said.status, StatusCode::OK, "{}", said.json());
    assert!(said.json()["rank"].as_f64().unwrap() > 0.5, "twice as long is longer than the middle");
    let after = client.get(&quote).await.json();
    assert!(hours(&after) > 1.1 * hours(&before) && hours(&after) < 2.0 * hours(&before));
    assert!((after["worked"]["worked"].as_f64().unwrap() - 2.0 * hours(&before)).abs() < 1e-9);
    let known = client.get("/api/shop/hours/learned").await.json();
    assert_eq!((&known["jobs"], &known["calibration"]["jobs"]), (&json!(1), &json!(1)));
    assert!(known["coefficients"].as_array().unwrap().iter().any(|one| one["name"] == "kind.hail"));

    assert_eq!(client.call("DELETE", &worked, json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.call("DELETE", &worked, json!({})).await.trouble(), "unknown");
    assert_eq!(hours(&client.get(&quote).await.json()), hours(&before));
}
