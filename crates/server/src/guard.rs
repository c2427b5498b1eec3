//! What every request must pass, and the headers that every answer carries.
//!
//! A page of the web that a technician happens to visit could talk to a server on the same machine:
//! by a name of its own that leads here (DNS rebinding), or by sending forms across (CSRF). So the host
//! must be this machine by name or any machine by number, and what changes something must come from
//! our own pages.

use crate::app::App;
use crate::door::hash_of;
use crate::trouble::Trouble;
use axum::extract::{ConnectInfo, Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, Uri, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use std::net::{IpAddr, SocketAddr};

/// Name of the cookie that holds a device's token.
pub const COOKIE: &str = "dentwright_device";
/// The one address of the API that strangers may call.
const PAIR: &str = "/api/pair";
/// Under it lie live sessions; each is opened by the code that follows.
const LIVE: &str = "/api/live/";

/// Marks a request that came through the encrypted door.
#[derive(Clone, Copy)]
pub struct Encrypted;

const HEADERS: [(HeaderName, HeaderValue); 5] = [
    (
        header::CONTENT_SECURITY_POLICY,
        HeaderValue::from_static(
            "default-src 'self'; img-src 'self' blob: data:; style-src 'self' 'unsafe-inline'; object-src 'none'; \
             base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
        ),
    ),
    (header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff")),
    (header::X_FRAME_OPTIONS, HeaderValue::from_static("DENY")),
    (header::REFERRER_POLICY, HeaderValue::from_static("no-referrer")),
    (HeaderName::from_static("cross-origin-resource-policy"), HeaderValue::from_static("same-origin")),
];

/// Lets a request pass or turns it away.
pub async fn guard(State(app): State<App>, request: Request, next: Next) -> Response {
    let admitted = match admit(&app, &request) {
        Ok(Admit::Yes) => Ok(()),
        Ok(Admit::IfPaired(token)) => is_paired(&app, token).await,
        Err(trouble) => Err(trouble),
    };
    let mut response = match admitted {
        Ok(()) => next.run(request).await,
        Err(trouble) => trouble.into_response(),
    };
    for (name, value) in HEADERS {
        response.headers_mut().entry(name).or_insert(value);
    }
    response
}

/// What a request needs before it may pass.
enum Admit {
    Yes,
    /// A device of the network, with the token that it holds.
    IfPaired(Option<String>),
}

fn admit(app: &App, request: &Request) -> Result<Admit, Trouble> {
    let forbidden = |message| {
        let next = "Open Dentwright under the address that it prints when it starts.";
        Trouble::new(StatusCode::FORBIDDEN, "origin", message, next)
    };
    if !host_is_known(request.headers(), request.uri()) {
        return Err(forbidden("this address does not belong to Dentwright"));
    }
    let changes = !matches!(*request.method(), Method::GET | Method::HEAD);
    let scheme = if request.extensions().get::<Encrypted>().is_some() { "https" } else { "http" };
    if changes && !origin_is_ours(request.headers(), scheme) {
        return Err(forbidden("another website tried to change something here"));
    }
    let path = request.uri().path();
    let inside = path == "/api" || path.starts_with("/api/");
    let by_code = || session_code(path).is_some_and(|code| app.live.get(code, app.now()).is_some());
    let open = !inside || path == PAIR || is_this_machine(request) || by_code();
    Ok(if open { Admit::Yes } else { Admit::IfPaired(token(request.headers())) })
}

/// The code of a live session in an address.
fn session_code(path: &str) -> Option<&str> {
    path.strip_prefix(LIVE)?.split('/').next()
}

async fn is_paired(app: &App, token: Option<String>) -> Result<(), Trouble> {
    let known = match token {
        Some(token) => app.store.knows_device(&hash_of(&token), app.now()).await?,
        None => false,
    };
    let next =
        "On the computer that runs Dentwright, open the settings, have a code shown, and scan it or type it here.";
    let stranger =
        || Trouble::new(StatusCode::UNAUTHORIZED, "not_paired", "This device is not paired with the shop.", next);
    if known { Ok(()) } else { Err(stranger()) }
}

fn host_is_known(headers: &HeaderMap, uri: &Uri) -> bool {
    let named = headers.get(header::HOST).and_then(|host| host.to_str().ok());
    let Some(host) = named.or_else(|| uri.authority().map(|authority| authority.as_str())) else { return false };
    let name = match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|b| b.is_ascii_digit()) => name,
        _ => host,
    };
    let number = name.trim_start_matches('[').trim_end_matches(']');
    name.eq_ignore_ascii_case("localhost") || number.parse::<IpAddr>().is_ok()
}

/// No `Origin` comes from programs that are no browser; a browser always sends it with a change.
fn origin_is_ours(headers: &HeaderMap, scheme: &str) -> bool {
    let Some(origin) = headers.get(header::ORIGIN) else { return true };
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    origin.to_str().is_ok_and(|origin| origin == format!("{scheme}://{host}"))
}

/// Whether the request comes from the machine that the server runs on.
pub fn is_this_machine(request: &Request) -> bool {
    let peer = request.extensions().get::<ConnectInfo<SocketAddr>>();
    peer.is_some_and(|ConnectInfo(peer)| peer.ip().to_canonical().is_loopback())
}

/// The token in a device's cookie.
fn token(headers: &HeaderMap) -> Option<String> {
    let cookies = headers.get_all(header::COOKIE).iter().filter_map(|value| value.to_str().ok());
    let mut pairs = cookies.flat_map(|value| value.split(';')).filter_map(|pair| pair.trim().split_once('='));
    pairs.find(|(name, _)| *name == COOKIE).map(|(_, token)| token.to_owned())
}
