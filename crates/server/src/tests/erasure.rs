//! A customer's data goes when it was said, and only that; papers with a number stay for their time.

use super::client::{Client, jpeg};
use crate::erasure::do_due;
use axum::http::StatusCode;
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};

const NAME: &str = "Odd Nameholder (invented)";

async fn job(client: &Client, phone: &str) -> String {
    let new = json!({ "customer": { "name": NAME, "phone": phone, "email": "", "address": "Hidden Street 5" },
        "car": { "plate": "EX 5 P", "make": "Vardo", "model": "Kombi", "vin": "1M8GDM9AXKP042788" },
        "notes": "lives behind the mill", "place": "Hidden Street 5" });
    let job = client.call("POST", "/api/jobs", new).await.json()["id"].as_str().unwrap().to_owned();
    let place = json!({ "panel": "roof", "x": 0.4, "y": 0.6, "note": "her own words" });
    let damage =
        client.call("POST", &format!("/api/jobs/{job}/damages"), place).await.json()["id"].as_str().unwrap().to_owned();
    let dent = json!({ "kind": "hail", "length_mm": 9.0, "width_mm": 9.0, "depth_mm": 0.3, "metal": "steel", "access": "open", "place": "flat", "count": 40 });
    client.call("POST", &format!("/api/damages/{damage}/dents"), dent).await;
    client.form(&format!("/api/damages/{damage}/photos"), &[("roof.jpg".into(), jpeg())]).await;
    client
        .call(
            "POST",
            &format!("/api/jobs/{job}/times"),
            json!({ "kind": "push", "started": "2026-11-25T08:00:00Z", "stopped": "2026-11-25T09:00:00Z" }),
        )
        .await;
    job
}

async fn issue(client: &Client, job: &str, kind: &str) -> Value {
    let issued = client.call("POST", &format!("/api/jobs/{job}/papers"), json!({ "kind": kind })).await;
    assert_eq!(issued.status, StatusCode::CREATED, "{}", issued.json());
    issued.json()
}

fn minutes(after: i64) -> Timestamp {
    Timestamp::now() + SignedDuration::from_mins(after)
}

#[tokio::test(flavor = "multi_thread")]
async fn it_is_said_ordered_called_off_and_done() {
    let client = Client::new().await;
    client.call("PUT", "/api/shop/billing", json!({ "country": "DE" })).await;
    let (first, second) = (job(&client, "+00 1").await, job(&client, "+00 2").await);
    let (_, other) = (issue(&client, &first, "estimate").await, issue(&client, &first, "invoice").await);
    let files = client.kept_files();

    let path = format!("/api/jobs/{first}/erasure");
    let plan = client.get(&path).await.json();
    assert_eq!((&plan["customer"]["name"], &plan["keep_years"], &plan["due"]), (&json!(NAME), &json!(8), &json!(null)));
    let mine = &plan["jobs"][0];
    assert_eq!(
        (&mine["id"], &mine["photos"], &mine["papers"], &mine["same"]),
        (&json!(first), &json!(1), &json!(1), &json!(true))
    );
    let year = Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::system()).year();
    assert_eq!(mine["kept"], json!([{ "number": other["number"], "until": format!("{}-12-31", year + 8) }]));
    assert_eq!((&plan["jobs"][1]["id"], &plan["jobs"][1]["same"]), (&json!(second), &json!(true)), "the same address");

    let ordered = client.call("POST", "/api/erasure", json!({ "jobs": [first] })).await;
    assert_eq!(ordered.status, StatusCode::ACCEPTED, "{}", ordered.json());
    do_due(&client.app, minutes(9)).await.unwrap();
    assert_eq!(client.get(&format!("/api/jobs/{first}")).await.json()["customer"]["name"], NAME, "not before its time");
    assert_eq!(client.call("DELETE", &path, json!({})).await.status, StatusCode::NO_CONTENT);
    do_due(&client.app, minutes(11)).await.unwrap();
    assert_eq!(client.get(&format!("/api/jobs/{first}")).await.json()["customer"]["name"], NAME, "it was called off");
    let strangers = client.call("POST", "/api/erasure", json!({ "jobs": [first, uuid::Uuid::nil()] })).await;
    assert_eq!(strangers.trouble(), "unknown");
    assert_eq!(client.get(&path).await.json()["due"], json!(null), "all of them or none");

    client.call("POST", "/api/erasure", json!({ "jobs": [first] })).await;
    do_due(&client.app, minutes(11)).await.unwrap();
    let left = client.get(&format!("/api/jobs/{first}")).await;
    let text = String::from_utf8(left.bytes.clone()).unwrap();
    for gone in [NAME, "Hidden", "EX 5 P", "KP042788", "mill", "+00 1", "her own words"] {
        assert!(!text.contains(gone), "{gone} is still there: {text}");
    }
    let left = left.json();
    assert_eq!((&left["car"]["make"], &left["damages"][0]["dents"][0]["dent"]["count"]), (&json!("Vardo"), &json!(40)));
    assert_eq!(left["damages"][0]["photos"], json!([]));
    assert_eq!(client.get(&format!("/api/jobs/{first}/times")).await.json()["on_dents_s"], 3600);
    let papers = client.get(&format!("/api/jobs/{first}/papers")).await.json();
    assert_eq!(
        papers.as_array().unwrap().iter().map(|one| one["kind"].as_str().unwrap()).collect::<Vec<_>>(),
        ["invoice"]
    );
    let pdf = client.get(&format!("/api/papers/{}/paper.pdf", papers[0]["id"].as_str().unwrap())).await;
    assert!(pdf.bytes.starts_with(b"%PDF-"), "the invoice can still be read");
    // The other job of the same photo keeps it; the estimate's file went.
    assert_eq!(client.kept_files(), files - 1);
    assert_eq!(client.get(&format!("/api/jobs/{second}")).await.json()["customer"]["name"], NAME);
    assert_eq!(client.call("DELETE", &path, json!({})).await.trouble(), "erased");
    assert_ne!(client.get(&path).await.json()["done"], json!(null));
}

#[tokio::test(flavor = "multi_thread")]
async fn papers_go_when_the_law_wants_them_no_longer_and_numbers_go_on() {
    let client = Client::new().await;
    let (erased, stays) = (job(&client, "+00 1").await, job(&client, "+00 2").await);
    for one in [&erased, &stays] {
        issue(&client, one, "invoice").await;
    }
    client.call("POST", "/api/erasure", json!({ "jobs": [erased] })).await;
    let of = async |job: &str| client.get(&format!("/api/jobs/{job}/papers")).await.json().as_array().unwrap().len();
    let years = |years: i64| Timestamp::now() + SignedDuration::from_hours(24 * 366 * years);
    do_due(&client.app, years(30)).await.unwrap();
    assert_eq!(of(&erased).await, 1, "nobody chose a country, so no time is known");
    client.call("PUT", "/api/shop/billing", json!({ "country": "DE" })).await;
    do_due(&client.app, years(7)).await.unwrap();
    assert_eq!(of(&erased).await, 1, "still within its time");
    do_due(&client.app, years(10)).await.unwrap();
    assert_eq!((of(&erased).await, of(&stays).await), (0, 1));
    let third = job(&client, "+00 3").await;
    assert!(issue(&client, &third, "invoice").await["number"].as_str().unwrap().ends_with("-0003"));
}
