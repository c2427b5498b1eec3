//! The shop's own hail tables.

use crate::app::App;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::Panel;
use dentwright_price::{HailTable, PricePer};
use dentwright_store::StoredTable;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// A hail table in the list.
#[derive(Debug, Serialize, ToSchema)]
pub struct HailTableRow {
    id: Uuid,
    name: String,
    created: String,
    per: PricePer,
    /// How many panels have rows of their own.
    panels: usize,
    rows: usize,
    /// Diameters of its gauge circles, mm; none where the last is open at the top.
    sizes_mm: Vec<Option<f64>>,
}

/// A table that is imported.
#[derive(Debug, Deserialize, ToSchema)]
pub struct NewHailTable {
    /// Its name, such as the insurer's and the year.
    name: String,
    /// The file's text.
    csv: String,
    /// What its prices are for.
    per: PricePer,
}

/// Longest name, letters.
const LONGEST_NAME: usize = 100;

/// The tables that are offered, newest first.
#[utoipa::path(get, path = "/api/hail-tables", operation_id = "hail_tables",
    responses((status = 200, body = [HailTableRow])))]
pub async fn list(State(app): State<App>) -> Answer<Json<Vec<HailTableRow>>> {
    let offered = app.store.hail_tables().await?.into_iter().filter(|stored| !stored.removed);
    Ok(Json(offered.map(told).collect()))
}

/// Import a table. One with a fault is not kept; the first fault is named by its row and column.
#[utoipa::path(post, path = "/api/hail-tables", operation_id = "add_hail_table", request_body = NewHailTable,
    responses((status = 201, body = HailTableRow), (status = 422, body = Trouble)))]
pub async fn add(State(app): State<App>, Body(new): Body<NewHailTable>) -> Answer<(StatusCode, Json<HailTableRow>)> {
    let name: String = new.name.trim().to_owned();
    if name.is_empty() || name.chars().count() > LONGEST_NAME {
        let message = format!("a table's name has 1 to {LONGEST_NAME} letters");
        return Err(Trouble::entered(message));
    }
    let table = HailTable::from_csv(&new.csv, new.per, panel).map_err(|fault| {
        let next = "Correct it in the spreadsheet, save it as CSV and import it again.";
        Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "table", fault, next)
    })?;
    let now = app.now();
    let id = app.store.add_hail_table(&name, &table, now).await?;
    Ok((StatusCode::CREATED, Json(told(StoredTable { id, name, created: now, removed: false, table }))))
}

/// Offer a table no longer. Quotes that were made with it keep it.
#[utoipa::path(delete, path = "/api/hail-tables/{id}", operation_id = "remove_hail_table", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.remove_hail_table(id).await?;
    Ok(StatusCode::NO_CONTENT)
}

fn told(stored: StoredTable) -> HailTableRow {
    let StoredTable { id, name, created, table, .. } = stored;
    let mut panels: Vec<_> = table.rows.iter().filter_map(|row| row.panel.as_deref()).collect();
    panels.sort_unstable();
    panels.dedup();
    HailTableRow {
        id,
        name,
        created: created.to_string(),
        per: table.per,
        panels: panels.len(),
        rows: table.rows.len(),
        sizes_mm: table.sizes_mm,
    }
}

/// A panel's code from what people call it in English or German; case, spaces and signs do not matter.
fn panel(name: &str) -> Option<String> {
    let plain =
        |text: &str| -> String { text.chars().filter(|c| c.is_alphabetic()).flat_map(char::to_lowercase).collect() };
    let name = plain(name);
    let of_code = Panel::ALL.into_iter().find(|panel| plain(panel.code()) == name);
    let of_name =
        || NAMES.iter().find(|(_, names)| names.iter().any(|one| plain(one) == name)).map(|(panel, _)| *panel);
    of_code.or_else(of_name).map(|panel| panel.code().to_owned())
}

/// What tables call the panels, beside their codes.
const NAMES: [(Panel, &[&str]); 19] = [
    (Panel::Bonnet, &["hood", "Motorhaube", "Haube"]),
    (Panel::Roof, &["Dach"]),
    (Panel::BootLid, &["boot", "trunk", "trunk lid", "deck lid", "Heckdeckel", "Kofferraumdeckel"]),
    (Panel::Tailgate, &["liftgate", "hatch", "Heckklappe"]),
    (Panel::FrontWingLeft, &["left front wing", "left fender", "LF fender", "Kotflügel links", "Kotflügel vorn links"]),
    (
        Panel::FrontWingRight,
        &["right front wing", "right fender", "RF fender", "Kotflügel rechts", "Kotflügel vorn rechts"],
    ),
    (
        Panel::RearWingLeft,
        &["left rear wing", "left quarter panel", "LR quarter", "Seitenwand links", "Seitenteil links"],
    ),
    (
        Panel::RearWingRight,
        &["right rear wing", "right quarter panel", "RR quarter", "Seitenwand rechts", "Seitenteil rechts"],
    ),
    (Panel::FrontDoorLeft, &["left front door", "LF door", "Tür vorn links"]),
    (Panel::FrontDoorRight, &["right front door", "RF door", "Tür vorn rechts"]),
    (Panel::RearDoorLeft, &["left rear door", "LR door", "Tür hinten links"]),
    (Panel::RearDoorRight, &["right rear door", "RR door", "Tür hinten rechts"]),
    (Panel::RoofRailLeft, &["left roof rail", "left rail", "Dachrahmen links", "Dachholm links"]),
    (Panel::RoofRailRight, &["right roof rail", "right rail", "Dachrahmen rechts", "Dachholm rechts"]),
    (Panel::FrontBumper, &["Stoßfänger vorn", "Stoßstange vorn"]),
    (Panel::RearBumper, &["Stoßfänger hinten", "Stoßstange hinten"]),
    (Panel::SillLeft, &["left sill", "left rocker", "Schweller links"]),
    (Panel::SillRight, &["right sill", "right rocker", "Schweller rechts"]),
    (Panel::FuelFlap, &["fuel door", "Tankdeckel", "Tankklappe"]),
];
