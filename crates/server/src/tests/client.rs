//! A client of a server in a folder of its own.

use crate::app::App;
use crate::door::Door;
use crate::router::router;
use axum::body::Body;
use axum::extract::ConnectInfo;
use axum::http::{HeaderMap, Request, StatusCode, header};
use dentwright_scene::demo;
use dentwright_store::Store;
use http_body_util::BodyExt;
use serde_json::{Value, json};
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::time::Duration;
use tempfile::TempDir;
use tower::ServiceExt;

/// A file of a form.
pub type Part = (String, Vec<u8>);

pub struct Client {
    pub app: App,
    pub folder: TempDir,
    /// Where requests come from.
    pub from: IpAddr,
    pub headers: HeaderMap,
}

pub struct Reply {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub bytes: Vec<u8>,
}

impl Reply {
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.bytes).unwrap_or(Value::Null)
    }

    /// The error's code; the words must say what to do.
    pub fn trouble(&self) -> String {
        let said = self.json();
        assert!(self.status.as_u16() >= 400, "no error: {said}");
        for field in ["message", "next"] {
            assert!(said[field].as_str().is_some_and(|text| !text.is_empty()), "no {field}: {said}");
        }
        said["code"].as_str().unwrap_or_default().to_owned()
    }
}

impl Client {
    pub async fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let store = Store::open(&folder.path().join("shop")).await.expect("a shop");
        let door = Door::new(Some(Ipv4Addr::new(192, 168, 7, 1).into()), 8765, Some(8766));
        let app = App::of(store, door, Some("an authority".into()));
        Self { app, folder, from: Ipv4Addr::LOCALHOST.into(), headers: HeaderMap::new() }
    }

    pub async fn work(&self) {
        self.app.reads.clone().start(self.app.store.clone()).await.expect("reads begin");
    }

    pub async fn send(&self, method: &str, path: &str, kind: &str, body: Vec<u8>) -> Reply {
        let mut request = Request::builder().method(method).uri(path).header(header::CONTENT_TYPE, kind);
        if !self.headers.contains_key(header::HOST) {
            request = request.header(header::HOST, "127.0.0.1:8765");
        }
        let mut request = request.body(Body::from(body)).expect("a request");
        request.headers_mut().extend(self.headers.clone());
        request.extensions_mut().insert(ConnectInfo(SocketAddr::new(self.from, 40_000)));
        let response = router(self.app.clone()).oneshot(request).await.expect("an answer");
        let (status, headers) = (response.status(), response.headers().clone());
        let bytes = response.into_body().collect().await.expect("a body").to_bytes().to_vec();
        Reply { status, headers, bytes }
    }

    pub async fn get(&self, path: &str) -> Reply {
        self.send("GET", path, "application/json", Vec::new()).await
    }

    pub async fn call(&self, method: &str, path: &str, body: Value) -> Reply {
        self.send(method, path, "application/json", body.to_string().into_bytes()).await
    }

    pub async fn text(&self, method: &str, path: &str, body: &str) -> Reply {
        self.send(method, path, "application/json", body.as_bytes().to_vec()).await
    }

    /// Sends files as a form (RFC 7578).
    pub async fn form(&self, path: &str, files: &[Part]) -> Reply {
        let mut body = Vec::new();
        for (name, bytes) in files {
            let head = format!(
                "--edge\r\nContent-Disposition: form-data; name=\"files\"; filename=\"{name}\"\r\n\
                 Content-Type: application/octet-stream\r\n\r\n"
            );
            body.extend(head.as_bytes());
            body.extend(bytes);
            body.extend(b"\r\n");
        }
        body.extend(b"--edge--\r\n");
        self.send("POST", path, "multipart/form-data; boundary=edge", body).await
    }

    /// A job with one damage; their ids.
    pub async fn damage(&self, panel: &str) -> (String, String) {
        let new = json!({ "customer": { "name": "Mara Invented", "phone": "", "email": "", "address": "" },
            "car": { "plate": "EX 1", "make": "Vardo", "model": "Kombi" } });
        let job = self.call("POST", "/api/jobs", new).await;
        assert_eq!(job.status, StatusCode::CREATED, "{}", job.json());
        let job = job.json()["id"].as_str().expect("an id").to_owned();
        let place = json!({ "panel": panel, "x": 0.4, "y": 0.6, "note": "" });
        let damage = self.call("POST", &format!("/api/jobs/{job}/damages"), place).await;
        assert_eq!(damage.status, StatusCode::CREATED, "{}", damage.json());
        (job, damage.json()["id"].as_str().expect("an id").to_owned())
    }

    /// Waits for the end of a read.
    pub async fn end_of(&self, task: &str) -> Value {
        for _ in 0..1200 {
            let answer = self.get(&format!("/api/tasks/{task}")).await.json();
            if !matches!(answer["state"].as_str(), Some("queued" | "running")) {
                return answer;
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
        panic!("the read {task} does not end");
    }

    /// How many files the shop keeps.
    pub fn kept_files(&self) -> usize {
        let shelves = std::fs::read_dir(self.folder.path().join("shop/files")).expect("shelves").flatten();
        shelves.map(|shelf| std::fs::read_dir(shelf.path()).expect("a shelf").count()).sum()
    }
}

/// Files of the first demo capture.
pub fn door_capture() -> Vec<Part> {
    demo_capture(0)
}

/// Photos of one of the demo's captures.
pub fn demo_capture(which: usize) -> Vec<Part> {
    let folder = tempfile::tempdir().expect("a folder");
    demo::ALL[which].render().expect("a capture").write_photos(folder.path()).expect("photos");
    let mut files: Vec<Part> = std::fs::read_dir(folder.path())
        .expect("photos")
        .flatten()
        .map(|entry| (entry.file_name().to_string_lossy().into_owned(), std::fs::read(entry.path()).expect("a photo")))
        .collect();
    files.sort();
    files
}

/// A small JPEG.
pub fn jpeg() -> Vec<u8> {
    let mut bytes = Vec::new();
    let encoder = image::codecs::jpeg::JpegEncoder::new(&mut bytes);
    image::DynamicImage::new_rgb8(320, 200).write_with_encoder(encoder).expect("a photo");
    bytes
}
