//! A live session as screen and camera see it.

use super::client::Client;
use axum::http::{HeaderValue, StatusCode, header};
use dentwright_scene::demo;
use serde_json::{Value, json};
use std::net::Ipv4Addr;
use std::path::Path;

fn screen() -> Value {
    let tag = |id: u32, x_px: f64, y_px: f64| json!({ "id": id, "x_px": x_px, "y_px": y_px, "size_px": 120.0 });
    json!({ "width_px": 1416.0, "height_px": 796.0, "mm_per_px": 0.5,
        "tags": [tag(20, 90.0, 90.0), tag(21, 1326.0, 90.0), tag(22, 1326.0, 706.0), tag(23, 90.0, 706.0)] })
}

/// A client somewhere in the network that was never paired.
fn stranger(client: &mut Client) {
    client.from = Ipv4Addr::new(192, 168, 7, 20).into();
    client.headers.insert(header::HOST, HeaderValue::from_static("192.168.7.1:8765"));
}

#[tokio::test]
async fn a_code_opens_its_session_and_nothing_else() {
    let mut client = Client::new().await;
    let (_, damage) = client.damage("bonnet").await;
    let offer = client.call("POST", &format!("/api/damages/{damage}/live"), json!({ "tag_mm": 22.0 })).await;
    assert_eq!(offer.status, StatusCode::CREATED, "{}", offer.json());
    let offer = offer.json();
    let code = offer["code"].as_str().unwrap().to_owned();
    assert_eq!(offer["board_address"], format!("http://192.168.7.1:8765/board/{code}"));
    assert_eq!(offer["camera_address"], format!("https://192.168.7.1:8766/#/camera/{code}"));
    assert!(offer["camera_picture"].as_str().unwrap().starts_with("<svg"));

    stranger(&mut client);
    let state = client.get(&format!("/api/live/{code}")).await;
    assert_eq!((state.status, state.json()["board"].as_bool()), (StatusCode::OK, Some(false)));
    assert_eq!(client.get("/api/jobs").await.trouble(), "not_paired");
    assert_eq!(client.get("/api/live/AAAAAAAA").await.trouble(), "not_paired");
    assert_eq!(client.get(&format!("/api/live/{code}x")).await.trouble(), "not_paired");
    let board = client.get(&format!("/board/{}", code.to_lowercase())).await;
    assert_eq!(board.headers[header::LOCATION], format!("/#/board/{code}"));
    assert_eq!(client.get("/authority.crt").await.bytes, b"an authority");

    let mut odd = screen();
    odd["mm_per_px"] = json!(0.001);
    assert_eq!(client.call("PUT", &format!("/api/live/{code}/board"), odd).await.trouble(), "live_screen");
    let laid = client.call("PUT", &format!("/api/live/{code}/board"), screen()).await.json();
    assert_eq!((laid["turns"].as_u64(), laid["shot"]["role"].as_str()), (Some(26), Some("setup")));
    assert_eq!(laid["tags"][0]["rows"][0], "00000000");
    assert_eq!(client.call("DELETE", &format!("/api/live/{code}"), json!({})).await.status, StatusCode::NO_CONTENT);
    assert_eq!(client.get(&format!("/api/live/{code}")).await.trouble(), "not_paired");
}

#[tokio::test]
async fn a_tag_size_that_cannot_be_begins_nothing() {
    let client = Client::new().await;
    let (_, damage) = client.damage("bonnet").await;
    let path = format!("/api/damages/{damage}/live");
    assert_eq!(client.call("POST", &path, json!({ "tag_mm": 0.0 })).await.trouble(), "value");
    assert_eq!(client.call("GET", "/api/live/AAAAAAAA", json!({})).await.trouble(), "live_over");
}

/// Screen and camera in step, over HTTP: one refused photo, then a capture whose read gives a reading.
#[tokio::test]
async fn a_finished_session_is_read() {
    let client = Client::new().await;
    client.work().await;
    let (_, damage) = client.damage("front_door_left").await;
    let begun = client.call("POST", &format!("/api/damages/{damage}/live"), json!({ "tag_mm": 22.0 })).await.json();
    let live = format!("/api/live/{}", begun["code"].as_str().unwrap());
    client.call("PUT", &format!("{live}/board"), screen()).await;
    let photos = demo::ALL[0].render().unwrap().photos;
    let jpeg = |name: &str| photos.iter().find(|p| p.file == name).unwrap().jpeg.clone();
    let shoot = async |turn: usize, name: &str| {
        client.call("POST", &format!("{live}/shown/{turn}"), json!({})).await;
        client.send("POST", &format!("{live}/photos/{turn}"), "image/jpeg", jpeg(name)).await
    };
    assert_eq!(shoot(0, "panel.jpg").await.trouble(), "live_board_tags");
    let mut state = client.get(&live).await.json();
    assert_eq!(state["again"]["code"], "live_board_tags");
    while state["turn"] != state["turns"] {
        let turn = state["turn"].as_u64().unwrap() as usize;
        let name = match &state["shot"] {
            shot if shot["wave"].is_null() => format!("{}.jpg", shot["role"].as_str().unwrap()),
            shot => {
                let wave = &shot["wave"];
                let step = (4.0 * wave["shift"].as_f64().unwrap()) as u32;
                format!("screen_{}{}_{step}.jpg", wave["axis"].as_str().unwrap(), wave["periods"])
            }
        };
        let said = shoot(turn, &name).await;
        assert_eq!(said.status, StatusCode::OK, "{name}: {}", said.json());
        state = said.json();
    }
    let end = client.end_of(state["task_id"].as_str().unwrap()).await;
    assert_eq!(end["state"], "done", "{end}");
    let reading = client.get(&format!("/api/readings/{}", end["reading_id"].as_str().unwrap())).await.json();
    assert_eq!(reading["frames"].as_array().unwrap().len(), 26);
    assert!(reading["frames"].as_array().unwrap().iter().all(|frame| frame["ok"] == true));
    let scratch = std::fs::read_dir(Path::new(client.folder.path()).join("shop/tmp")).unwrap().count();
    assert!(scratch <= 1, "only the session's own folder is left");
}
