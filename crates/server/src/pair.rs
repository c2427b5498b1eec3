//! Pairing a device with the shop.

use crate::app::App;
use crate::door::{DEVICE_DAYS, new_token};
use crate::guard::{COOKIE, is_this_machine};
use crate::trouble::{Answer, Body, Trouble};
use axum::Json;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use fast_qr::convert::{Builder, Shape, svg::SvgBuilder};
use fast_qr::qr::{QRBuilder, QRCodeError};
use jiff::SignedDuration;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A pairing code as typed or scanned.
#[derive(Debug, Deserialize, ToSchema)]
pub struct PairingCode {
    code: String,
}

/// How another device is paired.
#[derive(Debug, Serialize, ToSchema)]
pub struct PairingOffer {
    /// The code, for typing.
    code: String,
    /// The address that the picture holds.
    address: String,
    /// The address as a QR code, SVG.
    picture: String,
}

/// Pair this device. The code is valid once.
#[utoipa::path(post, path = "/api/pair", request_body = PairingCode,
    responses((status = 204), (status = 403, body = Trouble)))]
pub async fn pair(State(app): State<App>, Body(given): Body<PairingCode>) -> Answer<(StatusCode, HeaderMap)> {
    let now = app.now();
    if !app.door.take_code(&given.code, now) {
        let next = "Have a new code shown on the computer that runs Dentwright; each works once, for 15 minutes.";
        return Err(Trouble::new(StatusCode::FORBIDDEN, "pairing_code", "This pairing code does not work.", next));
    }
    let days = SignedDuration::from_hours(24 * DEVICE_DAYS);
    let (token, hash) = new_token().map_err(|why| Trouble::own("making a key for this device", why))?;
    app.store.add_device(&hash, now, now + days).await?;
    let cookie = format!("{COOKIE}={token}; Path=/; HttpOnly; SameSite=Strict; Max-Age={}", days.as_secs());
    let cookie = HeaderValue::from_str(&cookie).map_err(|why| Trouble::own("making a key for this device", why))?;
    Ok((StatusCode::NO_CONTENT, HeaderMap::from_iter([(header::SET_COOKIE, cookie)])))
}

/// Make a code for another device. Only on the computer that runs the server.
#[utoipa::path(post, path = "/api/pair/offer",
    responses((status = 200, body = PairingOffer), (status = 403, body = Trouble), (status = 409, body = Trouble)))]
pub async fn offer(State(app): State<App>, request: Request) -> Answer<Json<PairingOffer>> {
    if !is_this_machine(&request) {
        let next = "Go to the computer that runs Dentwright.";
        return Err(Trouble::new(StatusCode::FORBIDDEN, "not_here", "Codes are only shown there.", next));
    }
    let code = app.door.new_code(app.now()).map_err(|why| Trouble::own("making a pairing code", why))?;
    let Some(address) = app.door.pairing_address(&code) else {
        let next = "Start it with --lan to open it to the devices on this network.";
        return Err(Trouble::new(StatusCode::CONFLICT, "closed", "Dentwright serves this computer only.", next));
    };
    let picture = qr_svg(&address).map_err(|why| Trouble::own("drawing the QR code", why))?;
    Ok(Json(PairingOffer { code, address, picture }))
}

/// A QR code, SVG.
///
/// # Errors
/// When the text is too long for one.
pub fn qr_svg(text: &str) -> Result<String, QRCodeError> {
    let code = QRBuilder::new(text).build()?;
    Ok(SvgBuilder::default().shape(Shape::Square).to_str(&code))
}

/// A QR code for a terminal.
///
/// # Errors
/// When the text is too long for one.
pub fn qr_terminal(text: &str) -> Result<String, QRCodeError> {
    Ok(QRBuilder::new(text).build()?.to_str())
}
