//! A learner on a simulated panel, from the app's side.

use super::client::Client;
use axum::http::StatusCode;
use serde_json::{Value, json};

fn deepest(panel: &Value) -> (f64, f64, f64) {
    let values: Vec<f64> = panel["deviation_mm"].as_array().unwrap().iter().map(|v| v.as_f64().unwrap()).collect();
    let i = (0..values.len()).min_by(|a, b| values[*a].total_cmp(&values[*b])).unwrap();
    let grid = &panel["grid"];
    let (nx, step) = (grid["nx"].as_u64().unwrap() as usize, grid["step_mm"].as_f64().unwrap());
    let at = |from: &str, k: usize| grid[from].as_f64().unwrap() + step * k as f64;
    (at("x0_mm", i % nx), at("y0_mm", i / nx), values[i])
}

#[tokio::test(flavor = "multi_thread")]
async fn a_rehearsal_is_begun_read_worked_ended_and_looked_at_again() {
    let mut client = Client::new().await;
    let levels = client.get("/api/rehearsal-levels").await.json();
    assert!(levels.as_array().unwrap().len() >= 6 && levels[0]["name"] == "first_ding", "{levels}");
    for wrong in [
        json!({ "learner": "  ", "level": "first_ding" }),
        json!({ "learner": "x".repeat(400), "level": "first_ding" }),
        json!({ "learner": "Ada Invented", "level": "nowhere" }),
    ] {
        assert_eq!(client.call("POST", "/api/rehearsals", wrong).await.trouble(), "value");
    }
    let asked = json!({ "learner": "Ada Invented", "level": "first_ding", "seed": 3 });
    let begun = client.call("POST", "/api/rehearsals", asked).await;
    assert_eq!(begun.status, StatusCode::CREATED);
    let begun = begun.json();
    let path = format!("/api/rehearsals/{}", begun["id"].as_str().unwrap());
    let (x, y, low) = deepest(&begun);
    let claims = |height: &str| json!({ "claims": [{ "x_mm": x, "y_mm": y, "height": height }], "board_mm": 600.0, "eye_mm": 500.0, "across_rad": 0.0 });
    let told = client.call("PUT", &format!("{path}/claims"), claims("low")).await.json();
    assert_eq!(told[0]["right"], true, "{told}");
    assert!(told[0]["width"].as_f64().unwrap() > 0.0, "{told}");

    let ball = json!({ "shape": "sphere", "radius_mm": 16.0 });
    let lean = json!({ "kind": "push", "x_mm": x, "y_mm": y, "tip": ball, "lift_mm": 0.2 });
    let leant = client.call("POST", &format!("{path}/lean"), lean.clone()).await.json();
    assert_eq!(leant["change_mm"].as_array().unwrap().len(), begun["deviation_mm"].as_array().unwrap().len());
    let push = json!({ "kind": "push", "x_mm": x, "y_mm": y, "tip": ball, "travel_mm": 2.2 - low });
    for (wrong, with) in [("travel_mm", json!(-1.0)), ("x_mm", json!(900.0)), ("tip", json!({ "shape": "point" }))] {
        let mut bad = push.clone();
        bad[wrong] = with;
        assert_eq!(client.call("POST", &format!("{path}/moves"), bad).await.trouble(), "value", "{wrong}");
    }
    let foretold = client.call("POST", &format!("{path}/foretell"), push.clone()).await.json();
    assert!(foretold["change_mm"].is_array());
    let made = client.call("POST", &format!("{path}/moves"), push.clone()).await.json();
    assert!(made["made"]["left_mm"].as_f64().unwrap() > 0.0, "{}", made["made"]);
    assert_eq!(client.call("PUT", &format!("{path}/claims"), claims("high")).await.trouble(), "value", "read too late");

    // The program ends and begins again: the panel is made anew from its moves.
    client.app.rehearsals = Default::default();
    let again = client.get(&path).await.json();
    assert_eq!(again["deviation_mm"], made["deviation_mm"]);

    let score = client.call("POST", &format!("{path}/end"), json!({})).await.json();
    assert_eq!((&score["moves"], &score["reading"]), (&json!(1), &json!(1.0)), "{score}");
    assert_eq!(client.call("POST", &format!("{path}/moves"), push).await.trouble(), "value", "it is over");
    let sheet = client.get("/api/rehearsals").await.json();
    assert_eq!((sheet.as_array().unwrap().len(), &sheet[0]["score"]), (1, &score));
    assert_eq!(client.get(&format!("{path}/steps/1")).await.json(), made["deviation_mm"]);
    assert_eq!(client.get(&format!("{path}/steps/2")).await.trouble(), "unknown");
}
