//! Edits of several devices, laid together.

use dentwright_job::{Edit, merge};
use proptest::prelude::*;
use serde_json::{Value, json};

fn record() -> Value {
    json!({ "customer": { "name": "Ada", "phone": "" }, "car": { "plate": "EX 1", "metals": {} }, "promised": null })
}

fn edit(field: &str, base: Value, to: Value) -> Edit {
    Edit { field: field.into(), base, to }
}

#[test]
fn one_field_edited_twice_is_for_a_person_to_choose() {
    let mut record = record();
    let mine = edit("/customer/phone", json!(""), json!("030 1"));
    let theirs = edit("/customer/phone", json!(""), json!("030 2"));
    assert!(merge(&mut record, std::slice::from_ref(&theirs), &[]).unwrap().is_empty());
    let clashes = merge(&mut record, std::slice::from_ref(&mine), &[]).unwrap();
    assert_eq!((clashes.len(), &clashes[0].mine, &clashes[0].theirs), (1, &json!("030 1"), &json!("030 2")));
    assert_eq!(record["customer"]["phone"], "030 2");
    // Chosen: mine, knowing theirs.
    let chosen = edit("/customer/phone", clashes[0].theirs.clone(), clashes[0].mine.clone());
    assert!(merge(&mut record, &[chosen], &[]).unwrap().is_empty());
    assert_eq!(record["customer"]["phone"], "030 1");
}

#[test]
fn the_same_edit_on_both_or_sent_twice_is_no_clash() {
    let mut record = record();
    let same = edit("/promised", Value::Null, json!("2026-12-01"));
    for _ in 0..3 {
        assert!(merge(&mut record, std::slice::from_ref(&same), &[]).unwrap().is_empty());
    }
}

#[test]
fn a_field_that_is_none_is_named() {
    for field in ["/custommer/name", "/customer/nam", "customer", "", "/car/metals/roof", "/customer/name/first"] {
        let refused = merge(&mut record(), &[edit(field, json!(""), json!("x"))], &[]).unwrap_err();
        assert_eq!(refused.0, field);
    }
    let metal = edit("/car/metals/roof", Value::Null, json!("aluminium"));
    let mut record = record();
    assert!(merge(&mut record, &[metal], &["/car/metals"]).unwrap().is_empty());
    assert_eq!(record["car"]["metals"]["roof"], "aluminium");
}

proptest! {
    /// Two devices without network: fields that only one of them edited are both kept, whichever comes first, and
    /// no value that was entered is gone: it is in the record or in a clash.
    #[test]
    fn nothing_entered_is_lost(mine in values(), theirs in values(), mine_first: bool) {
        let names = ["/customer/name", "/customer/phone", "/car/plate", "/promised"];
        let start = record();
        let edits = |values: &[Option<String>]| -> Vec<Edit> {
            let one = |(name, to): (&&str, &Option<String>)| Some(edit(name, start.pointer(name)?.clone(), json!(to.as_ref()?)));
            names.iter().zip(values).filter_map(one).collect()
        };
        let (mine, theirs) = (edits(&mine), edits(&theirs));
        let (first, second) = if mine_first { (&mine, &theirs) } else { (&theirs, &mine) };
        let mut laid = start.clone();
        prop_assert!(merge(&mut laid, first, &[]).unwrap().is_empty());
        let clashes = merge(&mut laid, second, &[]).unwrap();
        for one in mine.iter().chain(&theirs) {
            let held = laid.pointer(&one.field) == Some(&one.to) || clashes.iter().any(|clash| clash.mine == one.to);
            prop_assert!(held, "{one:?} is gone");
        }
        let both = |clash: &dentwright_job::Clash| {
            let has = |edits: &[Edit]| edits.iter().any(|one| one.field == clash.field);
            has(&mine) && has(&theirs)
        };
        prop_assert!(clashes.iter().all(both), "a clash of a field that one device left alone");
    }
}

fn values() -> impl Strategy<Value = Vec<Option<String>>> {
    prop::collection::vec(prop::option::of("[a-c]{1,2}"), 4)
}
