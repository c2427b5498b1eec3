//! The built web app, compiled in.

use crate::app::App;
use axum::extract::{Request, State};
use axum::http::{HeaderValue, Method, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
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

/// The shop's authority, for phones that shall trust it.
const AUTHORITY: &str = "authority.crt";
/// An address that can be typed on a television; the app's own has a `#`.
const BOARD: &str = "board/";

/// A file of the web app; `/` is its first page.
pub async fn asset(State(app): State<App>, request: Request) -> Response {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        return StatusCode::METHOD_NOT_ALLOWED.into_response();
    }
    let path = request.uri().path().trim_start_matches('/');
    let path = if path.is_empty() { "index.html" } else { path };
    if let Some(code) = path.strip_prefix(BOARD).filter(|code| code.bytes().all(|b| b.is_ascii_alphanumeric())) {
        return Redirect::temporary(&format!("/#/board/{}", code.to_ascii_uppercase())).into_response();
    }
    if let Some(pem) = app.authority.as_deref().filter(|_| path == AUTHORITY) {
        return ([(header::CONTENT_TYPE, "application/x-x509-ca-cert")], pem.to_owned()).into_response();
    }
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
