//! Clocks: one of a technician a job, nothing lost, hours outlive their job.

mod common;

use common::*;
use dentwright_job::{Pay, Technician, WorkKind};
use dentwright_store::{NewTime, StoreError, TimeError};
use jiff::{SignedDuration, Timestamp};
use rust_decimal::Decimal;
use uuid::Uuid;

fn minutes(after: i64) -> Timestamp {
    now() + SignedDuration::from_mins(after)
}

fn begun(kind: WorkKind, after: i64) -> NewTime {
    NewTime { id: None, technician: None, kind, started: minutes(after), stopped: None, confirmed: false }
}

#[tokio::test]
async fn a_clock_stops_the_one_before_it_and_the_crew_begins_with_one() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    assert_eq!(store.crew().await.unwrap(), []);
    let push = store.add_time(job, begun(WorkKind::Push, 0), now()).await.unwrap();
    assert_eq!(push.stopped, None);
    let tap = store.add_time(job, begun(WorkKind::Tap, 30), now()).await.unwrap();
    assert_eq!(tap.stopped, Some(push.entry.id));
    let crew = store.crew().await.unwrap();
    assert_eq!(crew.len(), 1);
    assert_eq!(tap.entry.technician, crew[0].id);
    let times = store.times(Some(job)).await.unwrap();
    assert_eq!((times[0].stopped, times[1].stopped), (Some(minutes(30)), None));

    // Another technician's clock runs beside it.
    let other = store.add_technician("Ilse (invented)", Pay::Hour { rate: Decimal::from(28) }, now()).await.unwrap();
    let glue = NewTime { technician: Some(other.id), ..begun(WorkKind::Glue, 40) };
    assert_eq!(store.add_time(job, glue, now()).await.unwrap().stopped, None);
    assert_eq!(store.running().await.unwrap().len(), 1);
    // The first entry cannot run again while the second does.
    let again = store.change_time(push.entry.id, |entry| entry.stopped = None, now()).await;
    assert!(matches!(again, Err(TimeError::Runs)), "{again:?}");
    store.remove_time(tap.entry.id).await.unwrap();
    store.change_time(push.entry.id, |entry| entry.stopped = None, now()).await.unwrap();
    assert_eq!(store.time(push.entry.id).await.unwrap(), push.entry);
}

#[tokio::test]
async fn a_clock_that_was_set_back_is_kept_as_it_was_noted() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    let push = store.add_time(job, begun(WorkKind::Push, 0), now()).await.unwrap().entry;
    store.add_time(job, begun(WorkKind::Tap, -60), now()).await.unwrap();
    assert_eq!(store.time(push.id).await.unwrap().stopped, Some(minutes(-60)));
}

#[tokio::test]
async fn an_entry_sent_twice_is_one_and_strangers_are_refused() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    let new = NewTime { id: Some(Uuid::now_v7()), stopped: Some(minutes(5)), ..begun(WorkKind::Trim, 0) };
    let first = store.add_time(job, new, now()).await.unwrap();
    assert_eq!(store.add_time(job, new, now()).await.unwrap(), first);
    assert_eq!(store.times(None).await.unwrap(), [first.entry]);
    let nobody = NewTime { technician: Some(Uuid::nil()), ..begun(WorkKind::Tap, 0) };
    let refused = store.add_time(job, nobody, now()).await;
    assert!(matches!(refused, Err(StoreError::Unknown { what: "technician", .. })), "{refused:?}");
    let refused = store.add_time(Uuid::nil(), begun(WorkKind::Tap, 0), now()).await;
    assert!(matches!(refused, Err(StoreError::Unknown { what: "job", .. })), "{refused:?}");
    assert_eq!(store.times(None).await.unwrap().len(), 1, "nothing was begun");
}

#[tokio::test]
async fn hours_outlive_their_job_and_a_technician_their_leaving() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    let entry = store.add_time(job, begun(WorkKind::Push, 0), now()).await.unwrap().entry;
    store.remove_job(job).await.unwrap();
    let kept = store.times(None).await.unwrap();
    assert_eq!((kept[0].id, kept[0].job), (entry.id, None));
    let gone = Technician { gone: true, name: "Left (invented)".into(), ..store.crew().await.unwrap().remove(0) };
    store.change_technician(&gone).await.unwrap();
    assert_eq!(store.crew().await.unwrap(), [gone]);
}

#[tokio::test]
async fn the_stage_says_when_the_work_was_done() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    let to = async |stage, at| store.change_job(job, move |head| head.stage = stage, at).await.unwrap().finished;
    use dentwright_job::Stage;
    assert_eq!(to(Stage::InWork, minutes(1)).await, None);
    assert_eq!(to(Stage::Finished, minutes(2)).await, Some(minutes(2)));
    assert_eq!(to(Stage::HandedOver, minutes(3)).await, Some(minutes(2)), "handing over finishes nothing twice");
    assert_eq!(to(Stage::InWork, minutes(4)).await, None, "the car came back");
}
