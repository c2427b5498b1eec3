//! What was under way when the program ended.

use super::client::{Client, door_capture};
use jiff::Timestamp;

#[tokio::test(flavor = "multi_thread")]
async fn an_interrupted_read_is_told_and_a_waiting_one_goes_on() {
    let client = Client::new().await;
    let (_, damage) = client.damage("front_door_left").await;
    let files = door_capture();
    let path = format!("/api/damages/{damage}/captures");
    let first = client.form(&path, &files).await.json();
    let second = client.form(&path, &files).await.json();
    // The program ends while it reads the first.
    let claimed = client.app.store.claim_task(Timestamp::now()).await.unwrap().unwrap();
    assert_eq!(claimed.task.to_string(), first["task_id"].as_str().unwrap());
    client.work().await;
    let first = client.end_of(first["task_id"].as_str().unwrap()).await;
    assert_eq!((first["state"].as_str(), first["error"]["code"].as_str()), (Some("failed"), Some("interrupted")));
    let second = client.end_of(second["task_id"].as_str().unwrap()).await;
    assert_eq!(second["state"], "done", "{second}");
}
