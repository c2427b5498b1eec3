//! Whole papers: what stands on them, what they carry, what they bear.

use crate::render::papers_text;
use crate::sample::papers::{hard_paper, sample_paper, signature};
use crate::*;
use dentwright_invoice::{Category, Exemption, Tax, Totals, check, cii, ubl};
use rust_decimal::Decimal;

fn packed(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace() && *letter != '\u{200b}').collect()
}

fn assert_says(text: &str, wanted: &[&str]) {
    for wanted in wanted {
        assert!(packed(text).contains(&packed(wanted)), "not on the paper: {wanted}\n{text}");
    }
}

#[test]
fn every_paper_is_set_in_every_language_and_names_itself() {
    for language in Language::ALL {
        let words = words::Words::new(language).unwrap();
        for kind in PaperKind::ALL {
            let data = sample_paper(kind, language, "DE");
            let text = papers_text(&data);
            assert_says(&text, &[&words.say(&format!("paper-{}", kind.code())).unwrap(), "Line & Light Dent Repair"]);
            assert_says(&text, &[&words.say("no-legal-advice").unwrap()]);
        }
    }
}

#[test]
fn authorisation_carries_consent_and_strokes() {
    let data = sample_paper(PaperKind::Authorisation, Language::En, "GB");
    let text = papers_text(&data);
    assert_says(
        &text,
        &[
            "Paint can crack",
            "25 November 2026 at 14:03:22 UTC",
            "Mara Invented",
            "Old scratch on the rear",
            "stone chip (by the plate)",
        ],
    );
    let format = format::Format { language: Language::En, unit: LengthUnit::Mm };
    let gross = format.money(data.job.quote.as_ref().unwrap().gross, "EUR");
    assert_says(&text, &[&format!("likely total of {gross}")]);
    let unsigned = PaperData { signature: None, ..data };
    assert!(!packed(&papers_text(&unsigned)).contains("14:03:22"));
    assert_eq!(signature().check(), Ok(()));
}

#[test]
fn a_certificate_names_what_is_not_shown_to_be_finished() {
    let mut data = sample_paper(PaperKind::Certificate, Language::En, "GB");
    let verdict = |data: &mut PaperData, to: Verdict| {
        data.job.damages.iter_mut().filter_map(|d| d.readings.last_mut()).for_each(|r| r.finish.verdict = to);
    };
    assert!(data.job.damages.iter().any(|damage| !damage.readings.is_empty()));
    verdict(&mut data, Verdict::Done);
    let text = papers_text(&data);
    assert_says(&text, &["The work on this car is finished."]);
    verdict(&mut data, Verdict::CannotTell);
    let text = papers_text(&data);
    assert_says(&text, &["has ended", "not shown to be within the finish limit: "]);
    assert!(!packed(&text).contains("Theworkonthiscarisfinished."), "{text}");
}

#[test]
fn a_supplement_shows_what_changed_and_adds_up() {
    let data = sample_paper(PaperKind::Supplement, Language::En, "GB");
    let (before, after) = (data.before.clone().unwrap(), data.job.quote.clone().unwrap());
    let changed = changes(&before, &after);
    assert_eq!(changed.len(), 2);
    let sum: Decimal = changed.iter().map(LineChange::more).sum();
    assert_eq!(sum, after.net - before.net);
    assert_eq!(changes(&after, &after), []);
    assert_says(&papers_text(&data), &["a hidden brace came to light", "new", "Total, now"]);
}

#[test]
fn evidence_names_each_photo_with_its_hash() {
    let text = papers_text(&sample_paper(PaperKind::Evidence, Language::En, "GB"));
    assert_says(&text, &["0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef", "BLAKE3", "All panels"]);
}

/// VAT Directive 2006/112/EC, Article 226, as far as a repair can meet its points; each on the paper and in both files.
#[test]
fn every_field_of_article_226_is_there() {
    let mut data = sample_paper(PaperKind::Invoice, Language::En, "DE");
    let invoice = data.invoice.as_mut().unwrap();
    invoice.lines.truncate(1);
    invoice.adjustments.clear();
    invoice.lines[0].tax = Tax::none(Category::ReverseCharge);
    invoice.buyer.vat_id = "ATU12345678".into();
    let reason = "Reverse charge: the customer owes the tax, Article 196 of Directive 2006/112/EC";
    let (category, code) = (Category::ReverseCharge, "VATEX-EU-AE".to_owned());
    invoice.exemptions = vec![Exemption { category, reason: reason.into(), code }];
    let reversed = invoice.clone();
    let paper_reversed = papers_text(&data);
    let taxed_data = sample_paper(PaperKind::Invoice, Language::En, "DE");
    let taxed = taxed_data.invoice.clone().unwrap();
    let paper_taxed = papers_text(&taxed_data);
    let totals = Totals::of(&taxed);
    let quantity = taxed.lines[0].quantity.normalize();
    let xml = |invoice| [ubl(invoice), cii(invoice)].map(|bytes| String::from_utf8(bytes).unwrap());
    let fields: [(&str, &str, &str, &str); 15] = [
        ("1 date of issue", "26 November 2026", "2026-11-26", "20261126"),
        ("2 number", "R-2026-0042", "R-2026-0042", "R-2026-0042"),
        ("3 supplier's VAT number", "DE123456789", "DE123456789", "DE123456789"),
        (
            "5 supplier's name",
            "Line & Light Dent Repair",
            "Line &amp; Light Dent Repair",
            "Line &amp; Light Dent Repair",
        ),
        ("5 supplier's address", "Unit 4, Harbour Row", "Unit 4, Harbour Row", "Unit 4, Harbour Row"),
        ("5 customer's name", "Mara Invented", "Mara Invented", "Mara Invented"),
        ("5 customer's address", "12 Example Street", "12 Example Street", "12 Example Street"),
        ("6 quantity", &format!("{quantity} h"), &format!(">{quantity}<"), &format!(">{quantity}<")),
        ("6 nature", "Front door, left: 31 × 27 mm", "Front door, left: 31 × 27 mm", "Front door, left: 31 × 27 mm"),
        ("7 day of supply", "25 November 2026", "2026-11-25", "20261125"),
        ("8 unit price", "€95.00", "PriceAmount currencyID=\"EUR\">95<", "ChargeAmount>95<"),
        ("8 discount", "Discount", "Discount", "Discount"),
        ("9 rate", "19 %", "Percent>19<", "RateApplicablePercent>19<"),
        ("8 amount taxed", &totals.net.to_string(), &totals.net.to_string(), &totals.net.to_string()),
        ("10 tax", &totals.tax.to_string(), &totals.tax.to_string(), &totals.tax.to_string()),
    ];
    let [of_ubl, of_cii] = xml(&taxed);
    for (name, on_paper, in_ubl, in_cii) in fields {
        assert!(packed(&paper_taxed).contains(&packed(on_paper)), "{name} is not on the paper");
        assert!(of_ubl.contains(in_ubl) && of_cii.contains(in_cii), "{name} is not in the files");
    }
    let [of_ubl, of_cii] = xml(&reversed);
    for (name, text) in [("4 customer's VAT number", "ATU12345678"), ("11, 11a why there is no tax", reason)] {
        assert!(packed(&paper_reversed).contains(&packed(text)), "{name} is not on the paper");
        assert!(of_ubl.contains(text) && of_cii.contains(text), "{name} is not in the files");
    }
}

#[test]
fn an_invoice_makes_its_quote_to_the_cent() {
    let data = sample_paper(PaperKind::Invoice, Language::En, "DE");
    let (quote, totals) = (data.job.quote.as_ref().unwrap(), Totals::of(data.invoice.as_ref().unwrap()));
    assert_eq!((totals.net, totals.tax, totals.gross), (quote.net, quote.tax, quote.gross));
}

#[test]
fn an_invoice_carries_itself_and_a_broken_one_does_not() {
    let data = sample_paper(PaperKind::Invoice, Language::De, "DE");
    assert_eq!(check(data.invoice.as_ref().unwrap()), []);
    let made = paper(&data).unwrap();
    let holds = |pdf: &[u8], text: &str| pdf.windows(text.len()).any(|window| window == text.as_bytes());
    for text in ["<pdfaid:part>3<", "/AFRelationship/Alternative", "factur-x.xml", "<fx:ConformanceLevel>EN 16931<"] {
        assert!(holds(&made.pdf, text), "{text}");
    }
    assert_eq!(made, paper(&data).unwrap(), "the same values make the same bytes");
    let mut bare = data;
    bare.invoice.as_mut().unwrap().seller.vat_id.clear();
    let made = paper(&bare).unwrap();
    assert!(!holds(&made.pdf, "factur-x.xml"));
    assert!(!packed(&papers_text(&bare)).contains("factur-x"));
}

#[test]
fn long_names_other_scripts_and_many_lines_stay_on_the_page() {
    let data = hard_paper();
    let long = data.job.customer.name.clone();
    assert_eq!(long.len(), 400);
    let text = papers_text(&data);
    assert_says(&text, &[&long, "רחוב", "90"]);
    let pages = paper(&data).unwrap().pages;
    assert!((3..8).contains(&pages), "{pages}");
    assert_eq!(packed(&text).matches("Unitprice").count(), pages, "every page of the table repeats its head, {pages}");
}

#[test]
fn packs_are_whole_and_say_what_they_are() {
    assert_eq!(countries().len(), 9);
    for pack in countries() {
        assert!(pack.notice.contains("No legal advice"), "{}", pack.code);
        assert!(pack.lines.contains_key("en") && pack.tax.name.contains_key("en"), "{}", pack.code);
        for text in [&pack.coins_source, &pack.cancellation.source, &pack.warranty.source] {
            assert!(!text.is_empty(), "{}", pack.code);
        }
        assert!(
            !pack.tax.rates.is_empty() && pack.tax.rates.iter().all(|rate| !rate.source.is_empty()),
            "{}",
            pack.code
        );
        assert!(pack.coins.windows(2).all(|two| two[0].mm < two[1].mm), "{}", pack.code);
        assert!(pack.lines.keys().all(|code| Language::of(code).is_some()), "{}", pack.code);
        assert!(dentwright_invoice::is_country(&pack.code));
    }
}

/// US Mint; Council Regulation (EC) 975/98.
#[test]
fn coins_are_those_of_the_published_lists() {
    let mm = |code: &str, name: &str| {
        let pack = country(code).unwrap();
        pack.coins.iter().find(|coin| coin.name == name).unwrap().mm.to_string()
    };
    for (name, published) in [("dime", "17.91"), ("nickel", "21.21"), ("quarter", "24.26"), ("half dollar", "30.61")] {
        assert_eq!(mm("US", name), published);
    }
    let euro = [
        ("1 cent", "16.25"),
        ("2 cent", "18.75"),
        ("5 cent", "21.25"),
        ("10 cent", "19.75"),
        ("20 cent", "22.25"),
        ("50 cent", "24.25"),
        ("1 €", "23.25"),
        ("2 €", "25.75"),
    ];
    for code in ["DE", "AT", "FR", "IT", "ES"] {
        for (name, published) in euro {
            assert_eq!(mm(code, name), published, "{code}");
        }
    }
}

/// Another program opens the file, follows its references and reads what is attached.
#[test]
fn another_reader_finds_the_data_inside() {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/../..");
    let named = std::env::var("DENTWRIGHT_PYTHON").unwrap_or(format!("{root}/target/check-python/bin/python"));
    let data = sample_paper(PaperKind::Invoice, Language::De, "DE");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("invoice.pdf");
    std::fs::write(&path, paper(&data).unwrap().pdf).unwrap();
    let asks = "import sys, pypdf; file = pypdf.PdfReader(sys.argv[1], strict=True); \
                sys.stdout.buffer.write(file.attachments['factur-x.xml'][0] + file.trailer['/Root']['/Metadata'].get_data())";
    let asked = std::process::Command::new(named).args(["-c", asks]).arg(&path).output();
    let Ok(out) = asked.and_then(|out| if out.status.success() { Ok(out) } else { Err(std::io::Error::other("")) })
    else {
        return println!("skipped: no Python with pypdf (tests/einvoice/requirements.txt)");
    };
    let xml = cii(data.invoice.as_ref().unwrap());
    assert_eq!(&out.stdout[..xml.len()], xml);
    let metadata = String::from_utf8_lossy(&out.stdout[xml.len()..]).into_owned();
    assert!(metadata.starts_with("<?xpacket") && metadata.trim_end().ends_with("<?xpacket end=\"r\"?>"), "{metadata}");
    assert!(metadata.contains("<fx:DocumentFileName>factur-x.xml<"));
}
