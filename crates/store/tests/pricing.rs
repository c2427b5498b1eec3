//! Hail tables and finished jobs survive, in order.

mod common;

use common::{dent, now, shop};
use dentwright_price::{Conditions, FinishedJob, HailTable, Kind, PricePer, Timed};
use uuid::Uuid;

#[tokio::test]
async fn a_table_stays_for_the_quotes_made_with_it() {
    let (_folder, store) = shop().await;
    let table = HailTable::from_csv("p;d;20 mm;over 20 mm\n*;1+;40,50;60\n", PricePer::Dent, |_| None).unwrap();
    let id = store.add_hail_table("2026", &table, now()).await.unwrap();
    let kept = store.hail_tables().await.unwrap();
    assert_eq!((kept[0].id, &kept[0].table, kept[0].removed), (id, &table, false));
    store.remove_hail_table(id).await.unwrap();
    assert!(store.hail_tables().await.unwrap()[0].removed);
    assert!(store.remove_hail_table(id).await.is_err());
}

#[tokio::test]
async fn finished_jobs_come_in_the_order_they_were_finished_and_once() {
    let (_folder, store) = shop().await;
    let job = |what: &str, worked_h| FinishedJob {
        what: what.into(),
        conditions: Conditions::default(),
        timed: vec![Timed { dents: vec![dent(Kind::Round)], worked_h }],
    };
    let (one, two) = (Uuid::from_u128(2), Uuid::from_u128(1));
    store.save_finished(one, &job("a", 0.5), now()).await.unwrap();
    store.save_finished(two, &job("b", 1.5), now()).await.unwrap();
    store.save_finished(one, &job("a", 0.7), now()).await.unwrap();
    let mut kept = store.finished().await.unwrap();
    kept.sort_by_key(|(_, job)| job.what.clone());
    assert_eq!(kept, [(one, job("a", 0.7)), (two, job("b", 1.5))]);
    store.remove_finished(one).await.unwrap();
    assert!(store.remove_finished(one).await.is_err());
    assert_eq!(store.finished().await.unwrap().len(), 1);
}
