//! Papers: numbers unbroken, bytes unchanged, kept when the job goes.

mod common;

use common::*;
use dentwright_store::{IssueError, MadePaper, NewPaper, Store, StoreError};
use serde_json::json;
use std::collections::BTreeSet;
use tokio::task::JoinSet;
use uuid::Uuid;

fn new(job: Uuid, kind: &str, series: Option<&str>) -> NewPaper {
    NewPaper { job, kind: kind.into(), series: series.map(str::to_owned), language: "de".into(), follows: None }
}

fn made(number: Option<String>) -> Result<MadePaper, String> {
    let text = format!("paper {}", number.unwrap_or_default());
    Ok(MadePaper { facts: json!({ "text": text }), files: vec![("paper.pdf".into(), text.into_bytes())] })
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn numbers_are_unbroken_though_many_issue_at_once_and_some_fail() {
    let (_folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), YEAR).await.unwrap().id;
    let mut work = JoinSet::new();
    for k in 0..60 {
        let store = store.clone();
        work.spawn(async move {
            let fails = k % 3 == 0;
            let make = move |number| if fails { Err("no paper in the printer".to_owned()) } else { made(number) };
            let issued = store.issue_paper(&new(job, "invoice", Some("I")), now(), YEAR, make).await;
            assert_eq!(issued.is_err(), fails);
            issued.ok().and_then(|paper| paper.number)
        });
    }
    let numbers: Vec<String> = work.join_all().await.into_iter().flatten().collect();
    let wanted: BTreeSet<String> = (1..=40).map(|nth| format!("I-2026-{nth:04}")).collect();
    assert_eq!(numbers.len(), 40, "a number was given twice");
    assert_eq!(numbers.into_iter().collect::<BTreeSet<_>>(), wanted, "a number is missing");
    assert_eq!(store.papers(Some(job)).await.unwrap().len(), 40);
}

#[tokio::test]
async fn a_panic_or_a_missing_job_takes_no_number() {
    let (_folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), YEAR).await.unwrap().id;
    let stops = |_: Option<String>| -> Result<MadePaper, String> { panic!("a fault of the program") };
    let failed = store.issue_paper(&new(job, "invoice", Some("I")), now(), YEAR, stops).await;
    assert!(matches!(failed, Err(IssueError::Store(StoreError::Broken { .. }))));
    let failed = store.issue_paper(&new(Uuid::nil(), "invoice", Some("I")), now(), YEAR, made).await;
    assert!(failed.is_err(), "no such job");
    let paper = store.issue_paper(&new(job, "invoice", Some("I")), now(), YEAR, made).await.unwrap();
    assert_eq!(paper.number.as_deref(), Some("I-2026-0001"));
    let other = store.issue_paper(&new(job, "credit_note", Some("C")), now(), YEAR, made).await.unwrap();
    assert_eq!(other.number.as_deref(), Some("C-2026-0001"));
    let next = store.issue_paper(&new(job, "invoice", Some("I")), now(), YEAR + 1, made).await.unwrap();
    assert_eq!(next.number.as_deref(), Some("I-2027-0001"));
}

async fn text(store: &Store, paper: Uuid) -> String {
    String::from_utf8(store.paper_file(paper, "paper.pdf").await.unwrap()).unwrap()
}

#[tokio::test]
async fn numbered_papers_outlive_their_job_and_others_do_not() {
    let (folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), YEAR).await.unwrap().id;
    let invoice = store.issue_paper(&new(job, "invoice", Some("I")), now(), YEAR, made).await.unwrap();
    let estimate = store.issue_paper(&new(job, "estimate", None), now(), YEAR, made).await.unwrap();
    assert_eq!(store.paper(invoice.id).await.unwrap(), invoice);
    assert_eq!(text(&store, estimate.id).await, "paper ");
    store.remove_job(job).await.unwrap();
    assert!(matches!(store.paper(estimate.id).await, Err(StoreError::Unknown { .. })));
    let kept = store.paper(invoice.id).await.unwrap();
    assert_eq!((kept.job, kept.number.as_deref()), (None, Some("I-2026-0001")));
    assert_eq!(text(&store, invoice.id).await, "paper I-2026-0001");
    assert_eq!(files_below(&folder.path().join("files")).len(), 1);
}

#[tokio::test]
async fn a_changed_file_is_noticed() {
    let (folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), YEAR).await.unwrap().id;
    let invoice = store.issue_paper(&new(job, "invoice", Some("I")), now(), YEAR, made).await.unwrap();
    let path = &files_below(&folder.path().join("files"))[0];
    std::fs::write(path, "paper I-2026-0001, but cheaper").unwrap();
    assert!(store.paper_file(invoice.id, "paper.pdf").await.is_err());
}
