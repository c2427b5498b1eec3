//! A shop's folder: made, opened again, held by one, refused where it cannot be.

mod common;

use common::*;
use dentwright_price::Kind;
use dentwright_store::{NewReading, OpenError, Store, TaskError, TaskState};
use std::fs;

#[tokio::test]
async fn a_folder_is_made_from_nothing_and_opened_again() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a").join("new shop ü");
    let store = Store::open(&path).await.unwrap();
    let (job, damage) = job_with_damage(&store).await;
    store.add_dents(damage, &[by_hand(Kind::Hail)]).await.unwrap();
    let before = store.job(job).await.unwrap();
    store.close().await;
    drop(store);
    let again = Store::open(&path).await.unwrap();
    assert_eq!(again.job(job).await.unwrap(), before);
}

#[tokio::test]
async fn one_process_holds_a_folder() {
    let (folder, store) = shop().await;
    assert!(matches!(Store::open(folder.path()).await, Err(OpenError::InUse(_))));
    store.close().await;
    drop(store);
    assert!(Store::open(folder.path()).await.is_ok());
}

/// A process that is killed leaves its write-ahead log: a copy of the folder taken while the record is
/// open is what the disk would hold.
#[tokio::test]
async fn what_was_committed_survives_a_kill() {
    let (folder, store) = shop().await;
    let (job, damage) = job_with_damage(&store).await;
    let (_scratch, files) = uploaded(&store, &[("a.jpg", b"one")]);
    store.add_photos(damage, files, now()).await.unwrap();
    let (_scratch, files) = uploaded(&store, &[("capture.toml", b"x")]);
    let (_, task) = store.add_capture(damage, files, now()).await.unwrap();
    store.claim_task(now()).await.unwrap();
    let expected = store.job(job).await.unwrap();

    let copy = tempfile::tempdir().unwrap();
    for path in files_below(folder.path()) {
        let to = copy.path().join(path.strip_prefix(folder.path()).unwrap());
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::copy(&path, to).unwrap();
    }
    assert!(copy.path().join("record.sqlite-wal").is_file(), "the log was still open");
    let revived = Store::open(copy.path()).await.unwrap();
    assert_eq!(revived.job(job).await.unwrap(), expected);
    assert_eq!(revived.files().read(&expected.damages[0].photos[0].hash).unwrap(), b"one");

    let error = TaskError { code: "interrupted".into(), message: "was interrupted".into(), next: "again".into() };
    assert_eq!(revived.fail_interrupted(&error, now()).await.unwrap(), 1);
    let ended = revived.task(task).await.unwrap();
    assert_eq!((ended.state, ended.error), (TaskState::Failed, Some(error)));
}

#[tokio::test]
async fn folders_that_cannot_be_used_are_named() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    fs::write(&file, "not a folder").unwrap();
    let error = Store::open(&file).await.unwrap_err();
    assert!(matches!(error, OpenError::Folder { .. }) && error.to_string().contains("file"), "{error}");

    fs::write(folder.path().join("record.sqlite"), "this is no database, and long enough to be looked at").unwrap();
    let error = Store::open(folder.path()).await.unwrap_err();
    assert!(error.to_string().contains("record.sqlite"), "{error}");
}

/// A record of a later version is left alone.
#[tokio::test]
async fn a_later_version_is_refused() {
    let (folder, store) = shop().await;
    store.close().await;
    drop(store);
    let options = sqlx::sqlite::SqliteConnectOptions::new().filename(folder.path().join("record.sqlite"));
    let pool = sqlx::SqlitePool::connect_with(options).await.unwrap();
    sqlx::query("INSERT INTO _sqlx_migrations (version, description, success, checksum, execution_time) VALUES (9999, 'later', 1, x'00', 0)")
        .execute(&pool)
        .await
        .unwrap();
    pool.close().await;
    assert!(matches!(Store::open(folder.path()).await, Err(OpenError::Version { .. })));
}

#[tokio::test]
async fn a_reading_of_a_task_that_was_taken_away_is_not_kept() {
    let (_folder, store) = shop().await;
    let (job, damage) = job_with_damage(&store).await;
    let (_scratch, files) = uploaded(&store, &[("capture.toml", b"x")]);
    let (_, task) = store.add_capture(damage, files, now()).await.unwrap();
    store.claim_task(now()).await.unwrap();
    store.remove_job(job).await.unwrap();
    let new =
        NewReading { version: String::new(), settings: serde_json::Value::Null, facts: String::new(), files: vec![] };
    assert!(store.keep_reading(task, new, now()).await.is_err());
}
