//! What quotes are made with: the shop, what it has learned of its hours, its hail tables.

use crate::app::App;
use crate::trouble::{Answer, Trouble};
use dentwright_job::{Job, Shop, quote_input};
use dentwright_price::{
    FinishedJob, Foretold, HailTable, HoursSettings, Learned, PricedBy, Quote, QuoteError, QuoteInput, foretell, quote,
};
use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

/// What quotes are made with.
pub struct Books {
    pub shop: Shop,
    pub hours: Arc<ShopHours>,
    tables: HashMap<String, HailTable>,
}

/// What is known of the shop's hours, and what was said of every finished job before it was learned.
#[derive(Debug)]
pub struct ShopHours {
    settings: HoursSettings,
    jobs: Vec<FinishedJob>,
    pub learned: Learned,
    pub foretold: Vec<Foretold>,
}

/// The hours as they were last worked out; they change only with the settings and the finished jobs.
#[derive(Debug, Default)]
pub struct Memory(Mutex<Option<Arc<ShopHours>>>);

impl Books {
    /// As they stand.
    pub async fn open(app: &App) -> Answer<Self> {
        let tables = app.store.hail_tables().await?.into_iter().map(|stored| (stored.id.to_string(), stored.table));
        Ok(Self { shop: app.store.shop().await?, hours: shop_hours(app).await?, tables: tables.collect() })
    }

    /// What the quote of a job is made from.
    pub fn input(&self, job: &Job) -> QuoteInput {
        quote_input(job, &self.shop)
    }

    /// The quote.
    pub fn quote(&self, input: &QuoteInput) -> Result<Quote, QuoteError> {
        let table = match &input.pricing.way {
            PricedBy::HailTable { table, .. } => self.tables.get(table),
            _ => None,
        };
        quote(input, &self.hours.learned, table)
    }
}

/// What is known of the shop's hours.
pub async fn shop_hours(app: &App) -> Answer<Arc<ShopHours>> {
    let settings = app.store.hours().await?;
    let jobs: Vec<FinishedJob> = app.store.finished().await?.into_iter().map(|(_, job)| job).collect();
    let held = app.memory.0.lock().unwrap_or_else(PoisonError::into_inner).clone();
    if let Some(held) = held.filter(|held| held.settings == settings && held.jobs == jobs) {
        return Ok(held);
    }
    let made = tokio::task::spawn_blocking(move || {
        let (foretold, learned) = foretell(&settings, &jobs)?;
        Ok::<_, dentwright_price::LearnError>(Arc::new(ShopHours { settings, jobs, learned, foretold }))
    });
    let made = made.await.map_err(|why| Trouble::own("learning the hours", why))?;
    let made = made.map_err(|why| Trouble::own("learning the hours", why))?;
    *app.memory.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(made.clone());
    Ok(made)
}
