//! Sheets to print at true scale.

use crate::app::App;
use crate::trouble::{Answer, Asked, At, Trouble};
use axum::extract::State;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use dentwright_report::{Language, LineBoard, Paper, PrintError, STICKER_MM, Sheet, print_sheet};
use serde::Deserialize;
use utoipa::{IntoParams, ToSchema};

/// Which sheet.
#[derive(Debug, Clone, Copy, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum SheetName {
    Stickers,
    Corners,
    Lines,
    Camera,
}

/// How it is printed.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct SheetAsked {
    /// Size of the paper.
    #[param(inline)]
    #[serde(default)]
    paper: PaperName,
    /// Side of a tag's black square, mm; 22 for stickers, 60 for a board's corners.
    tag_mm: Option<f64>,
    /// Line board: one black and one white line together, mm.
    pitch_mm: Option<f64>,
    /// Line board: sheets side by side.
    across: Option<u32>,
    /// Line board: sheets one above the other.
    down: Option<u32>,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, Default, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum PaperName {
    #[default]
    A4,
    Letter,
}

/// A sheet to print: tags for the panel, a board's corner tags, a line board, the camera sheet.
#[utoipa::path(get, path = "/api/sheets/{name}", operation_id = "sheet",
    params(("name" = inline(SheetName), Path), SheetAsked),
    responses((status = 200, content_type = "application/pdf"), (status = 422, body = Trouble)))]
pub async fn pdf(State(app): State<App>, At(name): At<SheetName>, Asked(asked): Asked<SheetAsked>) -> Answer<Response> {
    let language = match app.store.shop().await?.language {
        dentwright_job::Language::En => Language::En,
        dentwright_job::Language::De => Language::De,
    };
    let (sheet, paper) = (asked.sheet(name), asked.paper());
    let made = tokio::task::spawn_blocking(move || print_sheet(sheet, language, paper)).await;
    let made = made.map_err(|why| Trouble::own("making the sheet", why))??;
    let file = format!("inline; filename=\"dentwright-{name:?}.pdf\"").to_lowercase();
    Ok(([(header::CONTENT_TYPE, "application/pdf".to_owned()), (header::CONTENT_DISPOSITION, file)], made.pdf)
        .into_response())
}

impl SheetAsked {
    fn sheet(&self, name: SheetName) -> Sheet {
        let usual = LineBoard::default();
        match name {
            SheetName::Stickers => Sheet::Stickers { size_mm: self.tag_mm.unwrap_or(STICKER_MM) },
            SheetName::Corners => Sheet::Corners { size_mm: self.tag_mm.unwrap_or(usual.tag_mm) },
            SheetName::Camera => Sheet::Camera,
            SheetName::Lines => Sheet::Lines(LineBoard {
                pitch_mm: self.pitch_mm.unwrap_or(usual.pitch_mm),
                across: self.across.unwrap_or(usual.across),
                down: self.down.unwrap_or(usual.down),
                tag_mm: self.tag_mm.unwrap_or(usual.tag_mm),
            }),
        }
    }

    fn paper(&self) -> Paper {
        match self.paper {
            PaperName::A4 => Paper::A4,
            PaperName::Letter => Paper::Letter,
        }
    }
}

impl From<PrintError> for Trouble {
    fn from(error: PrintError) -> Self {
        match error {
            PrintError::Size { .. } => {
                Self::new(StatusCode::UNPROCESSABLE_ENTITY, "sheet_size", format!("{error}."), error.next())
            }
            PrintError::Report(why) => Self::own("making the sheet", why),
        }
    }
}
