//! Papers over the API: from estimate to receipt, and what is refused.

use super::client::{Client, Reply};
use axum::http::{StatusCode, header};
use serde_json::{Value, json};

async fn issue(client: &Client, job: &str, body: Value) -> Reply {
    client.call("POST", &format!("/api/jobs/{job}/papers"), body).await
}

/// A shop that bills in Germany, and a job with one dent at 95 an hour.
async fn priced(client: &Client) -> String {
    let mut shop = client.get("/api/shop").await.json();
    shop["name"] = "Line & Light".into();
    shop["address"] = "Hafenzeile 4\n10999 Erfundenstadt".into();
    assert_eq!(client.call("PUT", "/api/shop", shop).await.status, StatusCode::OK);
    let billing = json!({ "country": "DE", "vat_id": "DE123456789", "account": "DE02 1203 0000 0000 2020 51" });
    assert_eq!(client.call("PUT", "/api/shop/billing", billing).await.status, StatusCode::OK);
    let (job, damage) = client.damage("roof").await;
    let dent = json!({ "kind": "hail", "length_mm": 20.0, "width_mm": 20.0, "depth_mm": 0.5, "metal": "steel",
        "access": "open", "place": "flat", "count": 12 });
    assert_eq!(client.call("POST", &format!("/api/damages/{damage}/dents"), dent).await.status, StatusCode::CREATED);
    let whom = json!({ "customer": { "name": "Mara Invented", "phone": "", "email": "", "address": "Beispielweg 12\n10998 Erfundenstadt" } });
    let changed = client.call("PATCH", &format!("/api/jobs/{job}"), whom).await;
    assert_eq!(changed.status, StatusCode::OK, "{}", changed.json());
    job
}

fn strokes() -> Value {
    json!({ "name": "Mara Invented", "at": "2026-11-26T08:00:00Z", "strokes": [[[0.1, 0.2], [0.5, 0.1], [0.9, 0.3]]] })
}

#[tokio::test(flavor = "multi_thread")]
async fn from_estimate_to_receipt() {
    let client = Client::new().await;
    let job = priced(&client).await;
    let quote = client.get(&format!("/api/jobs/{job}/quote")).await.json()["quote"].clone();

    let estimate = issue(&client, &job, json!({ "kind": "estimate", "language": "fr" })).await;
    assert_eq!(estimate.status, StatusCode::CREATED, "{}", estimate.json());
    assert_eq!(client.get(&format!("/api/jobs/{job}")).await.json()["stage"], "quoted");
    assert_eq!(issue(&client, &job, json!({ "kind": "authorisation" })).await.trouble(), "unsigned");
    let dot = json!({ "name": "x", "at": "2026-11-26T08:00:00Z", "strokes": [[[0.1, 0.2]]] });
    assert_eq!(issue(&client, &job, json!({ "kind": "authorisation", "signature": dot })).await.trouble(), "value");
    let signed = issue(&client, &job, json!({ "kind": "authorisation", "signature": strokes() })).await;
    assert_eq!(signed.json()["signed_by"], "Mara Invented", "{}", signed.json());
    assert_eq!(client.get(&format!("/api/jobs/{job}")).await.json()["stage"], "authorised");
    for kind in ["supplement", "work_order", "evidence", "certificate", "warranty", "cancellation"] {
        let made = issue(&client, &job, json!({ "kind": kind, "reason": "A hidden brace" })).await;
        assert_eq!(made.status, StatusCode::CREATED, "{kind}: {}", made.json());
    }

    let invoice = issue(&client, &job, json!({ "kind": "invoice" })).await;
    assert_eq!(invoice.status, StatusCode::CREATED, "{}", invoice.json());
    let invoice = invoice.json();
    assert!(invoice["number"].as_str().unwrap().ends_with("-0001"), "{invoice}");
    assert_eq!((&invoice["gross"], &invoice["no_e_invoice"]), (&quote["gross"], &json!([])));
    let id = invoice["id"].as_str().unwrap().to_owned();
    for (file, holds) in
        [("paper.pdf", "factur-x.xml"), ("invoice.ubl.xml", "<cbc:ID>I-"), ("invoice.cii.xml", "<ram:ID>I-")]
    {
        let got = client.get(&format!("/api/papers/{id}/{file}")).await;
        assert_eq!(got.status, StatusCode::OK);
        assert!(got.bytes.windows(holds.len()).any(|part| part == holds.as_bytes()), "{file}");
        assert!(!got.headers[header::CONTENT_TYPE].is_empty());
    }
    assert_eq!(issue(&client, &job, json!({ "kind": "invoice" })).await.trouble(), "already", "billed twice");
    let part = issue(&client, &job, json!({ "kind": "receipt", "paid": "10.00", "means": "48" })).await;
    assert_eq!(part.json()["gross"], "10.00", "{}", part.json());
    let rest = issue(&client, &job, json!({ "kind": "receipt" })).await.json();
    let (gross, rest): (f64, f64) =
        (quote["gross"].as_str().unwrap().parse().unwrap(), rest["gross"].as_str().unwrap().parse().unwrap());
    assert!((gross - 10.0 - rest).abs() < 1e-9, "{gross} - 10 = {rest}");
    assert_eq!(
        issue(&client, &job, json!({ "kind": "receipt", "paid": "0.01" })).await.trouble(),
        "already",
        "all is paid"
    );
    assert_eq!(client.get(&format!("/api/jobs/{job}/papers")).await.json().as_array().unwrap().len(), 11);
}

#[tokio::test(flavor = "multi_thread")]
async fn credit_notes_give_back_no_more_than_was_billed() {
    let client = Client::new().await;
    let job = priced(&client).await;
    assert_eq!(issue(&client, &job, json!({ "kind": "credit_note" })).await.trouble(), "already", "nothing billed");
    let invoice = issue(&client, &job, json!({ "kind": "invoice" })).await.json();
    for wrong in ["0", "-5", "1000000"] {
        assert_eq!(issue(&client, &job, json!({ "kind": "credit_note", "part": wrong })).await.trouble(), "value");
    }
    let part =
        issue(&client, &job, json!({ "kind": "credit_note", "part": "10.00", "reason": "Too dear" })).await.json();
    assert_eq!((part["gross"].as_str(), &part["follows"]), (Some("11.90"), &invoice["id"]));
    assert_eq!(issue(&client, &job, json!({ "kind": "credit_note" })).await.trouble(), "already", "10 was given back");
    assert_eq!(issue(&client, &job, json!({ "kind": "invoice" })).await.trouble(), "already", "the rest is in force");
}

#[tokio::test(flavor = "multi_thread")]
async fn an_invoice_without_a_vat_number_is_paper_only_and_says_why() {
    let client = Client::new().await;
    let (job, damage) = client.damage("roof").await;
    assert_eq!(issue(&client, &job, json!({ "kind": "invoice" })).await.trouble(), "value", "no quote");
    let dent = json!({ "kind": "hail", "length_mm": 20.0, "width_mm": 20.0, "depth_mm": 0.5, "metal": "steel",
        "access": "open", "place": "flat", "count": 1 });
    client.call("POST", &format!("/api/damages/{damage}/dents"), dent).await;
    assert_eq!(issue(&client, &job, json!({ "kind": "supplement" })).await.trouble(), "already", "nothing agreed");
    let made = issue(&client, &job, json!({ "kind": "invoice" })).await.json();
    assert!(made["no_e_invoice"].to_string().contains("BR-CO-26"), "{made}");
    assert_eq!(made["files"].as_array().unwrap().len(), 1);
    assert_eq!(
        client.get(&format!("/api/papers/{}/invoice.ubl.xml", made["id"].as_str().unwrap())).await.trouble(),
        "unknown"
    );
    let packs = client.get("/api/countries").await.json();
    assert!(packs.as_array().unwrap().len() >= 9 && packs.to_string().contains("No legal advice"));
    assert_eq!(client.call("PUT", "/api/shop/billing", json!({ "country": "Germany" })).await.trouble(), "value");
}
