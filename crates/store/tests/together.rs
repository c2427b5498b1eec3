//! Many at once: nothing is lost, nothing is done twice.

mod common;

use common::*;
use dentwright_price::Kind;
use dentwright_store::TaskState;
use std::collections::BTreeSet;
use tokio::task::JoinSet;

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn writers_wait_for_one_another() {
    let (_folder, store) = shop().await;
    let (job, damage) = job_with_damage(&store).await;
    let mut work = JoinSet::new();
    for k in 0..40 {
        let store = store.clone();
        work.spawn(async move {
            store.add_dents(damage, &[by_hand(Kind::Hail), by_hand(Kind::Round)]).await.unwrap();
            store.change_job(job, |head| head.notes.push('x'), now()).await.unwrap();
            let (_scratch, files) = uploaded(&store, &[("a.jpg", format!("{}", k % 10).as_bytes())]);
            store.add_photos(damage, files, now()).await.unwrap();
            store.take_in(&new_job(), now(), YEAR).await.unwrap().number
        });
    }
    let numbers: BTreeSet<String> = work.join_all().await.into_iter().collect();
    assert_eq!(numbers.len(), 40, "a number was given twice");
    let job = store.job(job).await.unwrap();
    assert_eq!(job.damages[0].dents.len(), 80);
    assert_eq!(job.damages[0].photos.len(), 10);
    assert_eq!(job.notes.chars().filter(|c| *c == 'x').count(), 40, "a change was lost");
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn a_task_is_claimed_once_and_in_order() {
    let (_folder, store) = shop().await;
    let (_, damage) = job_with_damage(&store).await;
    let (_scratch, files) = uploaded(&store, &[("capture.toml", b"x")]);
    let (capture, first) = store.add_capture(damage, files, now()).await.unwrap();
    let mut queued = vec![first];
    for _ in 0..19 {
        queued.push(store.add_task(capture, now()).await.unwrap());
    }
    assert!(store.cancel_task(queued[3], TaskState::Queued, now()).await.unwrap());
    assert!(!store.cancel_task(queued[3], TaskState::Queued, now()).await.unwrap());
    let mut work = JoinSet::new();
    for _ in 0..30 {
        let store = store.clone();
        work.spawn(async move { store.claim_task(now()).await.unwrap().map(|claimed| claimed.task) });
    }
    let mut claimed: Vec<_> = work.join_all().await.into_iter().flatten().collect();
    claimed.sort();
    queued.remove(3);
    assert_eq!(claimed, queued);
}

/// While files of a removed damage are taken away, the same photo is filed again elsewhere.
#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn a_photo_that_is_filed_while_its_twin_goes_is_kept() {
    let (_folder, store) = shop().await;
    let (_, keeper) = job_with_damage(&store).await;
    for round in 0..20 {
        let (_, goer) = job_with_damage(&store).await;
        let bytes = format!("photo {round}");
        let (_scratch, files) = uploaded(&store, &[("a.jpg", bytes.as_bytes())]);
        store.add_photos(goer, files, now()).await.unwrap();
        let (_scratch, files) = uploaded(&store, &[("a.jpg", bytes.as_bytes())]);
        let (gone, kept) = tokio::join!(store.remove_damage(goer), store.add_photos(keeper, files, now()));
        gone.unwrap();
        assert!(store.files().has(&kept.unwrap()[0].hash), "round {round}");
    }
}
