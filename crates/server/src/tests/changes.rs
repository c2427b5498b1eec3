//! Two readings of one damage compared, the series, a reading taken along and opened by another shop.

use super::client::{Client, Part};
use axum::http::{StatusCode, header};
use dentwright_scene::{Recipe, recipes};
use dentwright_surface::read_npy;

/// Photos of a recipe, half as wide.
fn photos(recipe: &Recipe) -> Vec<Part> {
    let folder = tempfile::tempdir().expect("a folder");
    let capture = recipe.clone().shrunk(2).render().expect("a capture");
    capture.write_photos(folder.path()).expect("photos");
    let entries = std::fs::read_dir(folder.path()).expect("photos").flatten();
    let part = |e: std::fs::DirEntry| (e.file_name().to_string_lossy().into_owned(), std::fs::read(e.path()).unwrap());
    entries.map(part).collect()
}

fn named(recipe: &str) -> Recipe {
    recipes::named(recipe).expect("a recipe")
}

async fn read(client: &Client, damage: &str, recipe: &Recipe) -> String {
    let taken = client.form(&format!("/api/damages/{damage}/captures"), &photos(recipe)).await;
    assert_eq!(taken.status, StatusCode::CREATED, "{}", taken.json());
    let end = client.end_of(taken.json()["task_id"].as_str().unwrap()).await;
    assert_eq!(end["state"], "done", "{end}");
    end["reading_id"].as_str().unwrap().to_owned()
}

#[tokio::test(flavor = "multi_thread")]
async fn readings_are_compared_and_taken_along() {
    let client = Client::new().await;
    client.work().await;
    let (job, damage) = client.damage("front_door_left").await;
    let before = read(&client, &damage, &named("demo_door_before")).await;
    let after = read(&client, &damage, &named("demo_door_round_1")).await;

    let change = client.get(&format!("/api/readings/{after}/change/{before}")).await.json();
    assert_eq!(change["laying"]["by"]["tags"]["moved"], 0, "{change}");
    let worked = &change["worked"][0];
    assert_eq!(worked["way"], "better");
    assert!((worked["change_mm"].as_f64().unwrap() - 0.26).abs() < 0.02, "{worked}");
    for name in ["change.npy", "change_sigma.npy", "before.npy"] {
        let map = client.get(&format!("/api/readings/{after}/change/{before}/files/{name}")).await;
        let map = read_npy(&map.bytes).unwrap();
        assert_eq!(map.shape[1] as u64, change["grid"]["nx"].as_u64().unwrap(), "{name}");
    }
    let unknown = client.get(&format!("/api/readings/{after}/change/{before}/files/other.npy")).await;
    assert_eq!(unknown.trouble(), "unknown");

    let series = client.get(&format!("/api/damages/{damage}/series")).await.json();
    let left = |k: usize| series[k]["residual"]["volume"]["mm3"].as_f64().unwrap();
    assert!(left(1) < 0.7 * left(0) && series[1]["verdict"] == "not done", "{series}");

    let other = client.damage("bonnet").await.1;
    // Nobody sticks tags on another panel to within half a millimetre of where they were on the first.
    let mut bonnet = named("demo_bonnet_hail");
    bonnet
        .scene
        .tags
        .iter_mut()
        .for_each(|t| (t.x, t.y) = (t.x + 4.0 * (t.id as f64).sin(), t.y - 3.0 * (t.id as f64).cos()));
    let elsewhere = read(&client, &other, &bonnet).await;
    let refused = client.get(&format!("/api/readings/{elsewhere}/change/{before}")).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", refused.json());
    assert!(["not_laid", "nothing_common"].contains(&refused.trouble().as_str()));

    for form in ["ply", "stl", "x3p", "csv", "png", "svg"] {
        let file = client.get(&format!("/api/readings/{after}/export/{form}")).await;
        assert_eq!(file.status, StatusCode::OK, "{form}");
        let name = file.headers[header::CONTENT_DISPOSITION].to_str().unwrap();
        assert!(name.ends_with(&format!(".{form}\"")) && file.bytes.len() > 1000, "{form}");
    }
    assert_eq!(client.get(&format!("/api/readings/{after}/export/docx")).await.trouble(), "unknown");
    let report = client.get(&format!("/api/jobs/{job}/report.pdf")).await;
    assert!(report.bytes.starts_with(b"%PDF-"), "{}", report.json());

    let packed = client.get(&format!("/api/readings/{after}/export/zip")).await.bytes;
    let there = Client::new().await;
    let (_, damage) = there.damage("front_door_left").await;
    let path = format!("/api/damages/{damage}/readings");
    let taken = there.form(&path, &[("reading.zip".into(), packed.clone())]).await;
    assert_eq!(taken.status, StatusCode::CREATED, "{}", taken.json());
    let again = taken.json()["reading_id"].as_str().unwrap().to_owned();
    let (here, over) =
        (client.get(&format!("/api/readings/{after}")).await, there.get(&format!("/api/readings/{again}")).await);
    assert_eq!((&here.json()["spots"], &here.json()["finish"]), (&over.json()["spots"], &over.json()["finish"]));
    let file = |id: &str| format!("/api/readings/{id}/files/deviation.npy");
    assert_eq!(client.get(&file(&after)).await.bytes, there.get(&file(&again)).await.bytes);
    assert_eq!(there.get(&format!("/api/readings/{again}/files/photo")).await.status, StatusCode::OK);

    let kept = there.kept_files();
    for bad in [b"no zip".to_vec(), packed[..packed.len() / 2].to_vec()] {
        let refused = there.form(&path, &[("reading.zip".into(), bad)]).await;
        assert_eq!(refused.trouble(), "bad_zip");
    }
    let capture = there.form(&path, &[("door.jpg".into(), super::client::jpeg())]).await;
    assert_eq!(capture.trouble(), "bad_zip");
    assert_eq!(there.kept_files(), kept, "nothing of what was refused is kept");
}
