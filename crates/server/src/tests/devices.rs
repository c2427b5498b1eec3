//! What devices send after a time without network.

use super::client::{Client, jpeg};
use axum::http::StatusCode;
use serde_json::{Value, json};
use uuid::Uuid;

fn tap(damage: Uuid, across_mm: f64, by: i32) -> Value {
    json!({ "id": Uuid::now_v7(), "damage": damage, "panel": "roof", "by": by, "dent": { "kind": "hail",
        "length_mm": across_mm, "width_mm": across_mm, "depth_mm": 0.4, "metal": "steel", "access": "open", "place": "flat" } })
}

fn edit(field: &str, base: Value, to: Value) -> Value {
    json!({ "field": field, "base": base, "to": to })
}

#[tokio::test]
async fn a_job_made_on_a_device_arrives_once_with_its_dents() {
    let client = Client::new().await;
    let (job, damage) = (Uuid::now_v7(), Uuid::now_v7());
    let new = json!({ "id": job, "customer": { "name": "Mara Invented", "phone": "", "email": "", "address": "" } });
    let taps = json!({ "taps": (0..180).map(|k| tap(damage, 10.0 + f64::from(k % 3), 1)).collect::<Vec<_>>() });
    for _ in 0..2 {
        assert_eq!(client.call("POST", "/api/jobs", new.clone()).await.status, StatusCode::CREATED);
        let counted = client.call("POST", &format!("/api/jobs/{job}/taps"), taps.clone()).await.json();
        let lines: Vec<u64> = counted["damages"][0]["dents"]
            .as_array()
            .unwrap()
            .iter()
            .map(|one| one["dent"]["count"].as_u64().unwrap())
            .collect();
        assert_eq!(lines, [60, 60, 60]);
    }
    assert_eq!(client.get("/api/jobs").await.json().as_array().unwrap().len(), 1);
}

#[tokio::test]
async fn taps_that_cannot_be_are_refused_whole() {
    let client = Client::new().await;
    let (job, _) = client.damage("roof").await;
    let path = format!("/api/jobs/{job}/taps");
    let damage = Uuid::now_v7();
    for (across_mm, by) in [(-12.0, 1), (12.0, 1_000_000), (12.0, i32::MIN), (9e9, 1)] {
        let sent = json!({ "taps": [tap(damage, 12.0, 1), tap(damage, across_mm, by)] });
        assert_eq!(client.call("POST", &path, sent).await.trouble(), "value", "{across_mm} {by}");
    }
    let many = json!({ "taps": (0..1001).map(|_| tap(damage, 12.0, 1)).collect::<Vec<_>>() });
    assert_eq!(client.call("POST", &path, many).await.trouble(), "value");
    assert_eq!(client.get(&format!("/api/jobs/{job}")).await.json()["damages"].as_array().unwrap().len(), 1);
    let nobody = format!("/api/jobs/{}/taps", Uuid::now_v7());
    assert_eq!(client.call("POST", &nobody, json!({ "taps": [tap(damage, 12.0, 1)] })).await.trouble(), "unknown");
}

#[tokio::test]
async fn edits_of_two_devices_lose_nothing() {
    let client = Client::new().await;
    let (job, _) = client.damage("roof").await;
    let path = format!("/api/jobs/{job}/edits");
    let one = json!({ "edits": [edit("/customer/phone", json!(""), json!("030 1")), edit("/car/colour", json!(""), json!("red"))] });
    let two = json!({ "edits": [edit("/car/colour", json!(""), json!("blue")), edit("/car/metals/roof", Value::Null, json!("aluminium"))] });
    assert_eq!(client.call("POST", &path, one).await.json()["clashes"], json!([]));
    let answer = client.call("POST", &path, two).await.json();
    assert_eq!(answer["clashes"], json!([{ "field": "/car/colour", "mine": "blue", "theirs": "red" }]));
    let car = &answer["job"]["car"];
    assert_eq!((car["colour"].as_str(), car["metals"]["roof"].as_str()), (Some("red"), Some("aluminium")));
    assert_eq!(answer["job"]["customer"]["phone"], "030 1");
    let chosen = json!({ "edits": [edit("/car/colour", json!("red"), json!("blue")), edit("/car/metals/roof", json!("aluminium"), Value::Null)] });
    let after = client.call("POST", &path, chosen).await.json();
    assert_eq!((&after["clashes"], &after["job"]["car"]["colour"]), (&json!([]), &json!("blue")));
    assert_eq!(after["job"]["car"]["metals"], json!({}));
}

#[tokio::test]
async fn notes_of_a_damage_are_edited_the_same_way() {
    let client = Client::new().await;
    let (job, damage) = client.damage("roof").await;
    let path = format!("/api/jobs/{job}/edits");
    let note =
        |base: &str, to: &str| json!({ "edits": [edit(&format!("/damages/{damage}/note"), json!(base), json!(to))] });
    assert_eq!(client.call("POST", &path, note("", "sharp")).await.json()["clashes"], json!([]));
    let answer = client.call("POST", &path, note("", "soft")).await.json();
    assert_eq!(answer["clashes"][0]["theirs"], "sharp");
    assert_eq!(answer["job"]["damages"][0]["note"], "sharp");
    let other = json!({ "edits": [edit(&format!("/damages/{}/note", Uuid::now_v7()), json!(""), json!("x"))] });
    assert_eq!(client.call("POST", &path, other).await.trouble(), "value");
}

#[tokio::test]
async fn an_edit_that_cannot_be_changes_nothing() {
    let client = Client::new().await;
    let (job, _) = client.damage("roof").await;
    let path = format!("/api/jobs/{job}/edits");
    for bad in [
        edit("/car/colr", json!(""), json!("red")),
        edit("/stage", json!("taken_in"), json!("lost")),
        edit("/car/year", Value::Null, json!("old")),
        edit("/car/metals/wing", Value::Null, json!("steel")),
    ] {
        let sent = json!({ "edits": [edit("/notes", json!(""), json!("rings first")), bad.clone()] });
        assert_eq!(client.call("POST", &path, sent).await.trouble(), "value", "{bad}");
    }
    assert_eq!(client.get(&format!("/api/jobs/{job}")).await.json()["notes"], "");
}

#[tokio::test]
async fn taking_in_is_recorded_and_signed_as_it_was_shown() {
    let client = Client::new().await;
    let (job, _) = client.damage("roof").await;
    let at = |path: &str| format!("/api/jobs/{job}/{path}");
    let told = client.get("/api/consent?language=de").await.json();
    assert!(told.as_array().unwrap().len() > 6, "{told}");
    let old = json!({ "id": Uuid::now_v7(), "panel": "bonnet", "x": 0.2, "y": 0.9, "kind": "chip", "note": "stone" });
    for _ in 0..2 {
        assert_eq!(client.call("PUT", &at("old-damages"), old.clone()).await.status, StatusCode::NO_CONTENT);
    }
    for (panel, um) in [("bonnet", 262.0), ("roof", 118.0), ("front_door_left", 124.0), ("boot_lid", 112.0)] {
        let read = json!({ "id": Uuid::now_v7(), "panel": panel, "um": um });
        assert_eq!(client.call("PUT", &at("paint"), read).await.status, StatusCode::NO_CONTENT);
    }
    let off = json!({ "id": Uuid::now_v7(), "panel": "roof", "um": -3.0 });
    assert_eq!(client.call("PUT", &at("paint"), off).await.trouble(), "value");
    let photo = [("corner.jpg".to_owned(), jpeg())];
    for _ in 0..2 {
        assert_eq!(client.form(&at("photos/front_left"), &photo).await.status, StatusCode::NO_CONTENT);
    }
    assert_eq!(client.form(&at("photos/from_above"), &photo).await.trouble(), "unknown");
    let mut sign = json!({ "id": Uuid::now_v7(), "consent": told, "old": [old.clone()],
        "signature": { "name": "Mara Invented", "at": "2026-11-26T08:00:00Z", "strokes": [] } });
    assert_eq!(client.call("PUT", &at("signed"), sign.clone()).await.trouble(), "value");
    sign["signature"]["strokes"] = json!([[[0.1, 0.2], [0.8, 0.2]]]);
    assert_eq!(client.call("PUT", &at("signed"), sign).await.status, StatusCode::NO_CONTENT);

    let taken = client.get(&at("take-in")).await.json();
    assert_eq!((taken["old"].as_array().unwrap().len(), taken["photos"].as_array().unwrap().len()), (1, 1));
    assert_eq!((&taken["judged"][0]["says"], &taken["judged"][1]["says"]), (&json!("thick"), &json!("usual")));
    assert_eq!(taken["signed"]["old"], json!([old]));
    assert_eq!(
        client.get(&format!("/api/photos/{}", taken["photos"][0]["hash"].as_str().unwrap())).await.status,
        StatusCode::OK
    );
    let gone = at(&format!("old-damages/{}", old["id"].as_str().unwrap()));
    assert_eq!(client.call("DELETE", &gone, json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.get(&at("take-in")).await.json()["signed"]["old"], json!([old]), "what was signed stays");
    assert_eq!(client.kept_files(), 1);
    assert_eq!(client.call("DELETE", &format!("/api/jobs/{job}"), json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.kept_files(), 0);
}
