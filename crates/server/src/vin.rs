//! Checking a vehicle identification number while it is typed.

use crate::trouble::{Answer, At};
use axum::Json;
use dentwright_job::{CheckDigit, Vin};
use serde::Serialize;
use utoipa::ToSchema;

/// What there is to say about a number. It warns and never blocks.
#[derive(Debug, Serialize, ToSchema)]
pub struct VinAnswer {
    /// Whether it has the form of a VIN.
    valid: bool,
    /// Whether the check digit fits; none where no rule asks for one.
    #[schema(required)]
    check_digit_ok: Option<bool>,
    /// What is wrong or odd, in words.
    #[schema(required)]
    warning: Option<String>,
}

impl VinAnswer {
    fn of(text: &str) -> Self {
        let vin = match Vin::parse(text) {
            Ok(vin) => vin,
            Err(why) => return Self { valid: false, check_digit_ok: None, warning: Some(why.to_string()) },
        };
        let check_digit_ok = match vin.check_digit() {
            CheckDigit::Fits => Some(true),
            CheckDigit::Differs { .. } => Some(false),
            CheckDigit::NotDue => None,
        };
        let warning = Some(check_digit_warning(&vin)).filter(|text| !text.is_empty());
        Self { valid: true, check_digit_ok, warning }
    }
}

/// Words for a check digit that is due and does not fit; empty where there is nothing to say.
pub fn check_digit_warning(vin: &Vin) -> String {
    match vin.check_digit() {
        CheckDigit::Differs { due } => {
            format!("the check digit in place 9 should be {due} (49 CFR 565): a slip of the pen?")
        }
        CheckDigit::Fits | CheckDigit::NotDue => String::new(),
    }
}

/// Check a VIN.
#[utoipa::path(get, path = "/api/vin/{vin}", operation_id = "vin", params(("vin" = String, Path)),
    responses((status = 200, body = VinAnswer)))]
pub async fn check(At(vin): At<String>) -> Answer<Json<VinAnswer>> {
    Ok(Json(VinAnswer::of(&vin)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The number that 49 CFR 565 prints as its worked example, and one slip in it.
    #[test]
    fn the_published_example_fits_and_a_slip_does_not() {
        let right = VinAnswer::of("1M8GDM9AXKP042788");
        assert_eq!((right.valid, right.check_digit_ok, right.warning), (true, Some(true), None));
        let slip = VinAnswer::of("1M8GDM9AXKP042789");
        assert_eq!(slip.check_digit_ok, Some(false));
        assert!(slip.warning.unwrap().contains("place 9"));
        assert!(!VinAnswer::of("1M8GDM9AXKP04278O").valid);
    }
}
