//! Who is let in, and what every answer carries.

use super::client::Client;
use axum::http::{HeaderValue, StatusCode, header};
use serde_json::json;
use std::net::Ipv4Addr;

#[tokio::test]
async fn a_stranger_sees_nothing_until_paired() {
    let mut client = Client::new().await;
    let offer = client.call("POST", "/api/pair/offer", json!({})).await.json();
    let code = offer["code"].as_str().unwrap().to_owned();
    assert_eq!(offer["address"], format!("http://192.168.7.1:8765/#pair={code}"));
    assert!(offer["picture"].as_str().unwrap().starts_with("<svg"));

    client.from = Ipv4Addr::new(192, 168, 7, 20).into();
    client.headers.insert(header::HOST, HeaderValue::from_static("192.168.7.1:8765"));
    for path in ["/api/jobs", "/api/shop", "/api/photos/abc", "/api/anything"] {
        let reply = client.get(path).await;
        assert_eq!((reply.status, reply.trouble().as_str()), (StatusCode::UNAUTHORIZED, "not_paired"), "{path}");
    }
    assert_eq!(client.call("POST", "/api/pair/offer", json!({})).await.trouble(), "not_paired");
    assert_eq!(client.call("POST", "/api/pair", json!({ "code": "22222222" })).await.trouble(), "pairing_code");

    let paired = client.call("POST", "/api/pair", json!({ "code": code.to_lowercase() })).await;
    assert_eq!(paired.status, StatusCode::NO_CONTENT);
    let cookie = paired.headers[header::SET_COOKIE].to_str().unwrap();
    assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "{cookie}");
    let kept = HeaderValue::from_str(cookie.split(';').next().unwrap()).unwrap();
    client.headers.insert(header::COOKIE, kept);
    assert_eq!(client.get("/api/jobs").await.status, StatusCode::OK);
    assert_eq!(client.call("POST", "/api/pair/offer", json!({})).await.trouble(), "not_here");

    client.headers.insert(header::COOKIE, HeaderValue::from_static("dentwright_device=0000"));
    assert_eq!(client.get("/api/jobs").await.trouble(), "not_paired");
    assert_eq!(client.call("POST", "/api/pair", json!({ "code": code })).await.trouble(), "pairing_code");
}

#[tokio::test]
async fn other_websites_reach_nothing() {
    let mut client = Client::new().await;
    client.headers.insert(header::HOST, HeaderValue::from_static("rebound.example:8765"));
    assert_eq!(client.get("/api/jobs").await.trouble(), "origin");
    assert_eq!(client.get("/").await.status, StatusCode::FORBIDDEN);
    for host in ["localhost:8765", "127.0.0.1:8765", "[::1]:8765", "192.168.7.1:8765"] {
        client.headers.insert(header::HOST, HeaderValue::from_static(host));
        assert_eq!(client.get("/api/jobs").await.status, StatusCode::OK, "{host}");
    }
    client.headers.insert(header::HOST, HeaderValue::from_static("127.0.0.1:8765"));
    client.headers.insert(header::ORIGIN, HeaderValue::from_static("https://elsewhere.example"));
    assert_eq!(client.call("POST", "/api/jobs", json!({})).await.trouble(), "origin");
    client.headers.insert(header::ORIGIN, HeaderValue::from_static("http://127.0.0.1:8765"));
    assert_eq!(client.call("POST", "/api/jobs", json!({})).await.status, StatusCode::CREATED);
}

#[tokio::test]
async fn every_answer_is_fenced_in() {
    let client = Client::new().await;
    for path in ["/", "/api/jobs", "/nowhere", "/api/jobs/none"] {
        let headers = client.get(path).await.headers;
        assert_eq!(headers[header::X_CONTENT_TYPE_OPTIONS], "nosniff", "{path}");
        let policy = headers[header::CONTENT_SECURITY_POLICY].to_str().unwrap();
        assert!(policy.contains("default-src 'self'") && policy.contains("frame-ancestors 'none'"), "{path}");
    }
}
