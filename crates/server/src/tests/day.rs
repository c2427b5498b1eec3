//! The day: promises, places, search, the clock.

use super::client::Client;
use axum::http::StatusCode;
use serde_json::json;

#[tokio::test]
async fn a_job_has_a_promise_and_a_place_and_is_found_by_its_words() {
    let client = Client::new().await;
    let (job, damage) = client.damage("bonnet").await;
    let path = format!("/api/jobs/{job}");
    let to = json!({ "promised": "2026-11-27", "promised_time": "16:30", "place": "Halle 2, Tor",
                     "notes": "Schlüssel beim Pförtner" });
    let said = client.call("PATCH", &path, to).await.json();
    assert_eq!((&said["promised"], &said["promised_time"]), (&json!("2026-11-27"), &json!("16:30:00")));
    client.call("PATCH", &format!("/api/damages/{damage}"), json!({ "note": "neben der Leiste" })).await;
    let row = client.get("/api/jobs").await.json()[0].clone();
    assert_eq!(
        (&row["place"], &row["promised_time"], &row["running"]),
        (&json!("Halle 2, Tor"), &json!("16:30:00"), &json!(false))
    );

    let found =
        async |words: &str| client.get(&format!("/api/jobs?search={words}")).await.json().as_array().unwrap().len();
    for words in ["pf%C3%B6rtner", "SCHL%C3%9CSSEL+mara", "halle+vardo", "neben+leiste", "ex1", "2026-"] {
        assert_eq!(found(words).await, 1, "{words}");
    }
    assert_eq!(found("halle+nowhere").await, 0);

    // Without a day there is no time of it.
    let said = client.call("PATCH", &path, json!({ "promised": null })).await.json();
    assert_eq!(
        (&said["promised"], &said["promised_time"], &said["place"]),
        (&json!(null), &json!(null), &json!("Halle 2, Tor"))
    );
    assert_eq!(client.call("PATCH", &path, json!({ "promised_time": "25:00" })).await.trouble(), "request");
}

#[tokio::test]
async fn the_clock_runs_stops_and_is_set_right() {
    let client = Client::new().await;
    let (job, _) = client.damage("bonnet").await;
    let times = format!("/api/jobs/{job}/times");
    let push = client.call("POST", &times, json!({ "kind": "push", "started": "2026-11-25T08:00:00Z" })).await;
    assert_eq!(push.status, StatusCode::CREATED, "{}", push.json());
    let push = push.json()["entry"].clone();
    assert_eq!(push["state"], "left_running", "it has run since then: {push}");
    assert_eq!(client.get("/api/jobs").await.json()[0]["running"], true);

    // The next kind stops the one before it; set back, it ends before it begins, and loses nothing.
    let tap = client.call("POST", &times, json!({ "kind": "tap", "started": "2026-11-25T07:00:00Z" })).await.json();
    assert_eq!(tap["stopped"], push["id"]);
    let all = client.get(&times).await.json();
    assert_eq!((&all["in_doubt"], &all["on_dents_s"]), (&json!(2), &json!(0)));
    let back = all["entries"].as_array().unwrap().iter().find(|one| one["id"] == push["id"]).unwrap();
    assert_eq!(
        (&back["state"], &back["seconds"], &back["started"]),
        (&json!("backwards"), &json!(-3600), &json!("2026-11-25T08:00:00Z"))
    );

    // Set right by hand; nonsense is refused and changes nothing.
    let entry = format!("/api/times/{}", push["id"].as_str().unwrap());
    let nonsense = json!({ "stopped": "2026-11-25T07:30:00Z", "confirmed": true });
    assert_eq!(client.call("PATCH", &entry, nonsense).await.trouble(), "time_backwards");
    let nonsense = json!({ "stopped": "2026-11-27T07:30:00Z", "confirmed": true });
    assert_eq!(client.call("PATCH", &entry, nonsense).await.trouble(), "time_too_long");
    let right =
        client.call("PATCH", &entry, json!({ "stopped": "2026-11-25T09:30:00Z", "confirmed": true })).await.json();
    assert_eq!((&right["state"], &right["seconds"]), (&json!("counted"), &json!(5400)));
    let again = client.call("PATCH", &entry, json!({ "stopped": null, "confirmed": false })).await;
    assert_eq!((again.trouble(), again.status), ("clock_runs".into(), StatusCode::CONFLICT));

    let tap = format!("/api/times/{}", tap["entry"]["id"].as_str().unwrap());
    let stopped = client.call("POST", &format!("{tap}/stop"), json!({ "at": "2026-11-25T07:45:00Z" })).await.json();
    assert_eq!((&stopped["state"], &stopped["seconds"]), (&json!("counted"), &json!(2700)));
    let twice = client.call("POST", &format!("{tap}/stop"), json!({})).await.json();
    assert_eq!(twice["stopped"], stopped["stopped"], "a clock is stopped once");
    let trim = json!({ "kind": "trim", "started": "2026-11-25T06:00:00Z", "stopped": "2026-11-25T06:30:00Z" });
    assert_eq!(client.call("POST", &times, trim).await.json()["entry"]["confirmed"], true);
    let all = client.get(&times).await.json();
    assert_eq!((&all["in_doubt"], &all["on_dents_s"]), (&json!(0), &json!(8100)));
    let shares: f64 = all["shop_by_kind"].as_array().unwrap().iter().map(|one| one["share"].as_f64().unwrap()).sum();
    assert!((shares - 1.0).abs() < 1e-9, "{all}");
    assert_eq!(client.call("DELETE", &tap, json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.get(&times).await.json()["on_dents_s"], 5400);
    assert_eq!(
        client
            .call("POST", &format!("/api/jobs/{}/times", uuid::Uuid::nil()), json!({ "kind": "tap" }))
            .await
            .trouble(),
        "unknown"
    );
}

#[tokio::test]
async fn the_crew_is_kept_with_its_pay() {
    let client = Client::new().await;
    let ilse = client
        .call("POST", "/api/crew", json!({ "name": " Ilse (invented) ", "pay": { "by": "hour", "rate": "28.50" } }))
        .await;
    assert_eq!(ilse.status, StatusCode::CREATED, "{}", ilse.json());
    let ilse = ilse.json();
    assert_eq!((&ilse["name"], &ilse["pay"]["rate"]), (&json!("Ilse (invented)"), &json!("28.50")));
    let path = format!("/api/crew/{}", ilse["id"].as_str().unwrap());
    let bad = json!({ "name": "Ilse", "pay": { "by": "share", "percent": "140" } });
    assert_eq!(client.call("PUT", &path, bad).await.trouble(), "value");
    let good = json!({ "name": "Ilse", "pay": { "by": "share", "percent": "40" }, "gone": true });
    assert_eq!(client.call("PUT", &path, good).await.status, StatusCode::OK);
    let crew = client.get("/api/crew").await.json();
    assert_eq!((&crew[0]["pay"], &crew[0]["gone"]), (&json!({ "by": "share", "percent": "40" }), &json!(true)));
}
