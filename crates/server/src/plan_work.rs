//! The plan of a reading worked out: what was planned and made before it, the hand, the tools, what is behind.

use crate::app::App;
use crate::changes::opened;
use crate::plan_json::{PlanAskedJson, of_stored};
use crate::trouble::{Answer, Trouble};
use crate::under_way::UnderWay;
use axum::http::StatusCode;
use dentwright_flow::{CameOf, KeptReading, PlanError, PlanMade, PlannedSheet, Worked, lay, plan_repair};
use dentwright_plan::{Drawn, Hand, InnerSide, MadeMove, NotPlanned, Placing, Rack, Tried, starter_rack};
use dentwright_sheet::NotWorked;
use dentwright_store::{NewPlan, StoredPlan};
use serde::de::DeserializeOwned;
use serde_json::Value;
use uuid::Uuid;

/// What was done since an earlier reading.
struct Before {
    reading: KeptReading,
    sheet: PlannedSheet,
    made: Vec<MadeMove>,
}

/// Works the plan of a reading out and keeps it.
pub async fn work(app: &App, id: Uuid, asked: PlanAskedJson, under_way: UnderWay) -> Answer<()> {
    let reading = opened(app, id).await?;
    let damage = app.store.reading(id).await?.damage;
    let mut settings = asked.settings();
    settings.rack = rack(app).await?;
    settings.hand = hand(app, damage, id, asked.technician).await?;
    settings.behind = drawn(app, damage, &reading).await?;
    let before = before(app, damage, id).await?;
    let worked = move || {
        let go_on = |share| {
            under_way.is_at(share);
            !under_way.stopped()
        };
        match before {
            Some(Before { reading: earlier, sheet, made }) => {
                let worked = Worked { reading: &earlier, sheet, made: &made };
                plan_repair(&reading, &settings, Some(worked), &go_on)
            }
            None => plan_repair(&reading, &settings, None, &go_on),
        }
    };
    let made = tokio::task::spawn_blocking(worked).await.map_err(|why| Trouble::own("planning", why))?;
    let PlanMade { file, sheet, came_of } = made.map_err(told)?;
    let new = NewPlan {
        asked: value(&asked)?,
        file: value(&file)?,
        came_of: came_of.as_ref().map(value).transpose()?,
        sheet: sheet.map(|sheet| sheet.pack()),
    };
    app.store.keep_plan(id, &new, app.now()).await?;
    Ok(())
}

/// The damage's last plan before this reading that knows its sheet, with the moves made since.
async fn before(app: &App, damage: Uuid, reading: Uuid) -> Answer<Option<Before>> {
    let (_, whole) = app.store.damage(damage).await?;
    let mut all: Vec<_> = whole.captures.iter().flat_map(|capture| capture.readings.iter().copied()).collect();
    all.sort_by_key(|one| (one.created, one.id));
    let Some(now) = all.iter().position(|one| one.id == reading) else { return Ok(None) };
    for (k, earlier) in all[..now].iter().enumerate().rev() {
        let Some(bytes) = app.store.planned_sheet(earlier.id).await? else { continue };
        let Ok(sheet) = PlannedSheet::unpack(&bytes) else { continue };
        // moves noted after readings between the two were made on the same sheet, but their places are in other frames
        let moves = app.store.made_moves(damage).await?;
        if moves.iter().any(|m| all[k + 1..now].iter().any(|r| r.id == m.reading)) {
            return Ok(None);
        }
        let moves = moves.into_iter().filter(|m| m.reading == earlier.id);
        let made = moves.map(|m| of_stored(m).map(|m| m.made.told())).collect::<Answer<Vec<_>>>()?;
        return Ok(Some(Before { reading: opened(app, earlier.id).await?, sheet, made }));
    }
    Ok(None)
}

/// What is known of a technician's hand: gain from all that was read, the sheet's share from this damage alone.
pub async fn hand(app: &App, damage: Uuid, but: Uuid, technician: Option<Uuid>) -> Answer<Hand> {
    let (_, whole) = app.store.damage(damage).await?;
    let here = |plan: &StoredPlan| {
        whole.captures.iter().flat_map(|capture| &capture.readings).any(|reading| reading.id == plan.reading)
    };
    let plans = app.store.plans().await?;
    let (own, others): (Vec<&StoredPlan>, Vec<&StoredPlan>) =
        plans.iter().filter(|plan| plan.reading != but).partition(|plan| here(plan));
    let mut hand = Hand::default();
    for plan in others {
        hand.learn(&tried(plan, technician)?);
        hand = hand.at_another_sheet();
    }
    for plan in own {
        hand.learn(&tried(plan, technician)?);
    }
    Ok(hand)
}

/// Moves that a plan learned from, where the same technician made them.
pub fn tried(plan: &StoredPlan, technician: Option<Uuid>) -> Answer<Vec<Tried>> {
    let asked: PlanAskedJson = of_value(plan.asked.clone())?;
    match &plan.came_of {
        Some(came) if asked.technician == technician => {
            Ok(worked_out::<CameOf>(came.clone()).map(|came| came.tried).unwrap_or_default())
        }
        _ => Ok(Vec::new()),
    }
}

/// The shop's tools.
pub async fn rack(app: &App) -> Answer<Rack> {
    app.store.rack().await?.map_or_else(|| Ok(starter_rack()), of_value)
}

/// What is behind a damage, seen from a reading's frame; none where it was not drawn or does not lie on the reading.
pub async fn drawn(app: &App, damage: Uuid, reading: &KeptReading) -> Answer<Option<Drawn>> {
    let Some(behind) = app.store.behind(damage).await? else { return Ok(None) };
    let over = opened(app, behind.reading).await?;
    let side: InnerSide = of_value(behind.side)?;
    Ok(lay(reading, &over).ok().map(|laying| Drawn { side, lies: Placing::of(&laying) }))
}

/// A value of the record.
pub fn of_value<T: DeserializeOwned>(value: Value) -> Answer<T> {
    serde_json::from_value(value).map_err(|why| Trouble::own("understanding the record", why))
}

/// What an earlier version worked out; none where this one reads it otherwise: it can be worked out anew.
pub fn worked_out<T: DeserializeOwned>(value: Value) -> Option<T> {
    let read = serde_json::from_value(value);
    read.inspect_err(|why| tracing::warn!("a plan of another version is left aside: {why}")).ok()
}

/// As the record keeps it.
pub fn value<T: serde::Serialize>(of: &T) -> Answer<Value> {
    serde_json::to_value(of).map_err(|why| Trouble::own("writing a plan down", why))
}

/// As the app shows it.
pub fn told(error: PlanError) -> Trouble {
    let next = match &error {
        PlanError::NotPlanned(NotPlanned::Sheet(NotWorked::Cancelled)) => "Start it again when wanted.",
        other => other.next(),
    };
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, error.code(), format!("{error}."), next)
}
