//! Dents counted on devices add up, and count once.

mod common;

use common::{dent, new_job, now, shop};
use dentwright_job::Panel;
use dentwright_price::{Dent, Kind};
use dentwright_store::{CountError, Store, Tap};
use uuid::Uuid;

fn tap(damage: Uuid, dent: Dent, by: i32) -> Tap {
    Tap { id: Uuid::now_v7(), damage, panel: Panel::Roof, dent, by }
}

async fn counts(store: &Store, job: Uuid) -> Vec<(f64, u32)> {
    let damages = store.job(job).await.unwrap().damages;
    let mut all: Vec<_> =
        damages.iter().flat_map(|one| &one.dents).map(|entry| (entry.dent.length_mm, entry.dent.count)).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all
}

#[tokio::test]
async fn two_devices_add_up_and_what_comes_twice_counts_once() {
    let (_folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), common::YEAR).await.unwrap().id;
    let damage = Uuid::now_v7();
    let (small, large) = (dent(Kind::Hail), Dent { length_mm: 40.0, ..dent(Kind::Hail) });
    let mine: Vec<Tap> =
        (0..30).map(|k| tap(damage, if k % 3 == 0 { large.clone() } else { small.clone() }, 1)).collect();
    let theirs: Vec<Tap> = (0..12).map(|_| tap(damage, small.clone(), 1)).collect();
    for batch in [&mine[..20], &theirs[..], &mine[..], &theirs[..]] {
        store.count(job, batch, now()).await.unwrap();
    }
    assert_eq!(counts(&store, job).await, [(25.5, 20 + 12), (40.0, 10)]);
    assert_eq!(store.job(job).await.unwrap().damages.len(), 1);
}

#[tokio::test]
async fn taking_back_empties_a_line_and_never_goes_below_none() {
    let (_folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), common::YEAR).await.unwrap().id;
    let damage = Uuid::now_v7();
    let one = |by| tap(damage, dent(Kind::Hail), by);
    store.count(job, &[one(3), one(-1)], now()).await.unwrap();
    assert_eq!(counts(&store, job).await, [(25.5, 2)]);
    store.count(job, &[one(-5)], now()).await.unwrap();
    assert!(counts(&store, job).await.is_empty());
    store.count(job, &[one(1)], now()).await.unwrap();
    assert_eq!(counts(&store, job).await, [(25.5, 1)]);
}

#[tokio::test]
async fn a_batch_is_counted_whole_or_not_at_all() {
    let (_folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), common::YEAR).await.unwrap().id;
    let damage = Uuid::now_v7();
    let taps = [tap(damage, dent(Kind::Hail), 4), tap(damage, dent(Kind::Hail), 1_000_000)];
    let refused = store.count(job, &taps, now()).await.unwrap_err();
    assert!(matches!(&refused, CountError::Dent(why) if why.to_string().contains("1000004")), "{refused}");
    assert!(counts(&store, job).await.is_empty() && store.job(job).await.unwrap().damages.is_empty());
    store.count(job, &taps[..1], now()).await.unwrap();
    assert_eq!(counts(&store, job).await, [(25.5, 4)]);
}

#[tokio::test]
async fn a_damage_of_another_job_is_not_touched() {
    let (_folder, store) = shop().await;
    let (job, damage) = common::job_with_damage(&store).await;
    let other = store.take_in(&new_job(), now(), common::YEAR).await.unwrap().id;
    assert!(store.count(other, &[tap(damage, dent(Kind::Hail), 1)], now()).await.is_err());
    assert!(counts(&store, job).await.is_empty());
}

#[tokio::test]
async fn a_car_taken_in_twice_under_one_id_is_one_job() {
    let (_folder, store) = shop().await;
    let id = Uuid::now_v7();
    let first = store.take_in_as(id, &new_job(), now(), common::YEAR).await.unwrap();
    let again = store.take_in_as(id, &new_job(), now(), common::YEAR).await.unwrap();
    assert_eq!((first.number, first.id), (again.number, id));
    assert_eq!(store.jobs().await.unwrap().len(), 1);
    assert!(store.take_in(&new_job(), now(), common::YEAR).await.unwrap().number.ends_with("-002"));
}
