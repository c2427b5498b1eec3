//! The built web app, compiled in.

use axum::extract::Request;
use axum::http::{HeaderValue, Method, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use rust_embed::Embed;

/// `web/dist`, as it was when the program was built; empty where the app was not built then.
#[derive(Embed)]
#[folder = "../../web/dist"]
#[allow_missing = true]
struct WebApp;

const NOT_BUILT: &str = "<!doctype html><title>Dentwright</title><p>The web app was not built into this program. \
    Run <code>cargo xtask demo</code>, which builds both.</p>";

/// Names with a hash in them never change their content.
const FOREVER: HeaderValue = HeaderValue::from_static("public, max-age=31536000, immutable");
const ASK_AGAIN: HeaderValue = HeaderValue::from_static("no-cache");

/// A file of the web app; `/` is its first page.
pub async fn asset(request: Request) -> Response {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        return StatusCode::METHOD_NOT_ALLOWED.into_response();
    }
    let path = request.uri().path().trim_start_matches('/');
    let path = if path.is_empty() { "index.html" } else { path };
    match WebApp::get(path) {
        Some(file) => {
            let kind = HeaderValue::from_str(file.metadata.mimetype());
            let kind = kind.unwrap_or(HeaderValue::from_static("application/octet-stream"));
            let keep = if path.starts_with("assets/") { FOREVER } else { ASK_AGAIN };
            ([(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, keep)], file.data).into_response()
        }
        None if path == "index.html" => Html(NOT_BUILT).into_response(),
        None => StatusCode::NOT_FOUND.into_response(),
    }
}
