//! What leaves as a table or a calendar, read back by general parsers.

use super::client::Client;
use axum::http::header;
use serde_json::json;

async fn table(client: &Client, path: &str) -> Vec<Vec<String>> {
    let sent = client.get(path).await;
    assert!(sent.headers[header::CONTENT_TYPE].to_str().unwrap().starts_with("text/csv"));
    let text = String::from_utf8(sent.bytes).unwrap();
    assert!(text.ends_with("\r\n"), "RFC 4180 2.1");
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
    let rows: Vec<Vec<String>> = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect();
    assert!(rows.iter().all(|row| row.len() == rows[0].len()), "RFC 4180 2.4");
    rows
}

fn cell<'a>(rows: &'a [Vec<String>], at: usize, column: &str) -> &'a str {
    &rows[at][rows[0].iter().position(|name| name == column).expect("a column")]
}

#[tokio::test]
async fn tables_hold_what_was_entered_whatever_it_was() {
    let client = Client::new().await;
    let (job, damage) = client.damage("bonnet").await;
    let notes = "says \"no, thanks\",\r\nthen; leaves\n老虎 =1+1";
    client
        .call(
            "PATCH",
            &format!("/api/jobs/{job}"),
            json!({ "notes": notes, "promised": "2026-11-27", "promised_time": "07:05" }),
        )
        .await;
    let dent = json!({ "kind": "crease", "length_mm": 30.25, "width_mm": 8.5, "depth_mm": 0.1, "metal": "aluminium", "access": "glue_only", "place": "body_line", "count": 3 });
    client.call("POST", &format!("/api/damages/{damage}/dents"), dent).await;
    let quote = client.get(&format!("/api/jobs/{job}/quote")).await.json();

    let jobs = table(&client, "/api/tables/jobs.csv").await;
    assert_eq!(
        (cell(&jobs, 1, "notes"), cell(&jobs, 1, "promised_time"), cell(&jobs, 1, "dents")),
        (notes, "07:05:00", "3")
    );
    assert_eq!(cell(&jobs, 1, "gross"), quote["quote"]["gross"].as_str().unwrap());
    let dents = table(&client, "/api/tables/dents.csv").await;
    assert_eq!(
        (cell(&dents, 1, "panel"), cell(&dents, 1, "length_mm"), cell(&dents, 1, "access")),
        ("bonnet", "30.25", "glue_only")
    );
    let lines = table(&client, "/api/tables/lines.csv").await;
    assert_eq!(lines.len() - 1, quote["quote"]["lines"].as_array().unwrap().len());
    assert_eq!(cell(&lines, 1, "amount"), quote["quote"]["lines"][0]["amount"].as_str().unwrap());
    assert_eq!(client.get("/api/tables/secrets.csv").await.trouble(), "unknown");
}

#[tokio::test]
async fn the_calendar_holds_promised_jobs_until_they_are_handed_over() {
    let client = Client::new().await;
    let (job, _) = client.damage("bonnet").await;
    client.damage("roof").await; // not promised
    let get = async || String::from_utf8(client.get("/api/calendar.ics").await.bytes).unwrap();
    assert!(!get().await.contains("VEVENT"));
    client.call("PATCH", &format!("/api/jobs/{job}"), json!({ "promised": "2026-11-27", "place": "Tent 3" })).await;
    let file = get().await;
    assert_eq!(file.matches("BEGIN:VEVENT").count(), 1);
    assert!(
        file.contains(&format!("UID:{job}@"))
            && file.contains("LOCATION:Tent 3")
            && file.contains("DTSTART;VALUE=DATE:20261127"),
        "{file}"
    );
    client.call("PATCH", &format!("/api/jobs/{job}"), json!({ "stage": "handed_over" })).await;
    assert!(!get().await.contains("VEVENT"));
}

#[tokio::test]
async fn the_pay_sheet_of_a_period_on_screen_and_as_a_table() {
    let client = Client::new().await;
    let (job, damage) = client.damage("bonnet").await;
    let dent = json!({ "kind": "hail", "length_mm": 9.0, "width_mm": 9.0, "depth_mm": 0.3, "metal": "steel", "access": "open", "place": "flat", "count": 40 });
    client.call("POST", &format!("/api/damages/{damage}/dents"), dent).await;
    let hour = client
        .call("POST", "/api/crew", json!({ "name": "Ilse, \"the hammer\"", "pay": { "by": "hour", "rate": "28.50" } }))
        .await
        .json();
    let share = client
        .call("POST", "/api/crew", json!({ "name": "Ole", "pay": { "by": "share", "percent": "40" } }))
        .await
        .json();
    for (who, kind, from, until) in [(&hour, "push", "08:00", "10:00"), (&share, "tap", "08:00", "14:00")] {
        let new = json!({ "technician": who["id"], "kind": kind, "started": format!("2026-11-25T{from}:00Z"), "stopped": format!("2026-11-25T{until}:00Z") });
        client.call("POST", &format!("/api/jobs/{job}/times"), new).await;
    }
    let days = "from=2026-11-24&until=2026-11-26";
    let sheet = client.get(&format!("/api/pay?{days}")).await.json();
    assert_eq!((&sheet["rows"][0]["clocked_s"], &sheet["rows"][0]["pay"]), (&json!(7200), &json!("57.00")));
    assert_eq!((&sheet["rows"][1]["pay"], &sheet["rows"][1]["jobs"]), (&json!("0"), &json!([])), "nothing is finished");

    client.call("PATCH", &format!("/api/jobs/{job}"), json!({ "stage": "finished" })).await;
    let today = jiff::Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::system()).date();
    let days = format!("from=2026-11-24&until={}", today.max(jiff::civil::date(2026, 11, 26)));
    let sheet = client.get(&format!("/api/pay?{days}")).await.json();
    let done = &sheet["rows"][1]["jobs"][0];
    let net: f64 =
        client.get(&format!("/api/jobs/{job}/quote")).await.json()["quote"]["net"].as_str().unwrap().parse().unwrap();
    assert_eq!(done["labour"].as_str().unwrap().parse::<f64>().unwrap(), net, "dents are all of it");
    let pay: f64 = done["pay"].as_str().unwrap().parse().unwrap();
    assert!((pay - net * 0.75 * 0.4).abs() <= 0.005 + 1e-9, "{pay} of {net}");
    let rows = table(&client, &format!("/api/pay.csv?{days}")).await;
    assert_eq!(
        (cell(&rows, 1, "technician"), cell(&rows, 1, "pay"), cell(&rows, 1, "clocked_h")),
        ("Ilse, \"the hammer\"", "57.00", "2.0000")
    );
    assert_eq!(client.get("/api/pay?from=2026-11-26&until=2026-11-24").await.trouble(), "value");
    assert_eq!(client.get("/api/pay?from=yesterday&until=today").await.trouble(), "request");
}
