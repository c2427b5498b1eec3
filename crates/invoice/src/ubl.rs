//! An invoice as UBL 2.1, `Invoice` or `CreditNote` (CEN/TS 16931-3-2).

use crate::xml::{Xml, plain};
use crate::{Address, Adjustment, Category, Invoice, Kind, Line, Party, Payment, Tax, Totals};
use jiff::civil::Date;
use rust_decimal::Decimal;

const AGGREGATES: &str = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2";
const BASICS: &str = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2";
/// BT-24: the standard without a national subset.
pub(crate) const GUIDELINE: &str = "urn:cen.eu:en16931:2017";

/// Names that differ between the two documents.
struct Names {
    root: &'static str,
    namespace: &'static str,
    type_code: &'static str,
    line: &'static str,
    quantity: &'static str,
}

const INVOICE: Names = Names {
    root: "Invoice",
    namespace: "urn:oasis:names:specification:ubl:schema:xsd:Invoice-2",
    type_code: "cbc:InvoiceTypeCode",
    line: "cac:InvoiceLine",
    quantity: "cbc:InvoicedQuantity",
};
const CREDIT_NOTE: Names = Names {
    root: "CreditNote",
    namespace: "urn:oasis:names:specification:ubl:schema:xsd:CreditNote-2",
    type_code: "cbc:CreditNoteTypeCode",
    line: "cac:CreditNoteLine",
    quantity: "cbc:CreditedQuantity",
};

/// Writes UBL 2.1. The same values give the same bytes; what [`crate::check()`] finds is written as it is.
#[must_use]
pub fn ubl(invoice: &Invoice) -> Vec<u8> {
    let names = match invoice.kind {
        Kind::Invoice => INVOICE,
        Kind::CreditNote => CREDIT_NOTE,
    };
    let totals = Totals::of(invoice);
    let mut xml = Xml::new(names.root, &[("xmlns", names.namespace), ("xmlns:cac", AGGREGATES), ("xmlns:cbc", BASICS)]);
    head(&mut xml, invoice, &names);
    xml.group("cac:AccountingSupplierParty", |xml| party(xml, &invoice.seller, true));
    xml.group("cac:AccountingCustomerParty", |xml| party(xml, &invoice.buyer, false));
    delivery(&mut xml, invoice);
    if let Some(payment) = &invoice.payment {
        means(&mut xml, payment, invoice);
    }
    if !invoice.terms.is_empty() {
        xml.group("cac:PaymentTerms", |xml| xml.leaf("cbc:Note", &invoice.terms));
    }
    for one in &invoice.adjustments {
        adjustment(&mut xml, one, invoice);
    }
    tax_total(&mut xml, invoice, &totals);
    monetary_total(&mut xml, invoice, &totals);
    for (index, one) in invoice.lines.iter().enumerate() {
        xml.group(names.line, |xml| line(xml, index, one, invoice, &names));
    }
    xml.finish()
}

fn head(xml: &mut Xml, invoice: &Invoice, names: &Names) {
    xml.leaf("cbc:CustomizationID", GUIDELINE);
    xml.leaf("cbc:ID", &invoice.number);
    xml.leaf("cbc:IssueDate", &invoice.issued.to_string());
    if invoice.kind == Kind::Invoice {
        day(xml, "cbc:DueDate", invoice.due);
    }
    xml.leaf(names.type_code, invoice.kind.code());
    for note in &invoice.notes {
        xml.leaf("cbc:Note", note);
    }
    xml.leaf("cbc:DocumentCurrencyCode", &invoice.currency);
    xml.leaf("cbc:BuyerReference", &invoice.buyer_reference);
    if let Some((first, last)) = invoice.period {
        xml.group("cac:InvoicePeriod", |xml| {
            day(xml, "cbc:StartDate", Some(first));
            day(xml, "cbc:EndDate", Some(last));
        });
    }
    if !invoice.order.is_empty() {
        xml.group("cac:OrderReference", |xml| xml.leaf("cbc:ID", &invoice.order));
    }
    for one in &invoice.preceding {
        xml.group("cac:BillingReference", |xml| {
            xml.group("cac:InvoiceDocumentReference", |xml| {
                xml.leaf("cbc:ID", &one.number);
                day(xml, "cbc:IssueDate", one.issued);
            });
        });
    }
}

fn party(xml: &mut Xml, party: &Party, seller: bool) {
    xml.group("cac:Party", |xml| {
        xml.leaf_with("cbc:EndpointID", &[("schemeID", &party.endpoint_scheme)], &party.endpoint);
        if !party.trade_name.is_empty() {
            xml.group("cac:PartyName", |xml| xml.leaf("cbc:Name", &party.trade_name));
        }
        xml.group("cac:PostalAddress", |xml| address(xml, &party.address));
        registration(xml, &party.vat_id, "VAT");
        if seller {
            // BT-32 is told from BT-31 by a scheme that is not VAT.
            registration(xml, &party.tax_number, "FC");
        }
        xml.group("cac:PartyLegalEntity", |xml| {
            xml.leaf("cbc:RegistrationName", &party.name);
            xml.leaf("cbc:CompanyID", &party.register);
            if seller {
                xml.leaf("cbc:CompanyLegalForm", &party.legal);
            }
        });
        if [&party.contact, &party.phone, &party.email].iter().any(|text| !text.is_empty()) {
            xml.group("cac:Contact", |xml| {
                xml.leaf("cbc:Name", &party.contact);
                xml.leaf("cbc:Telephone", &party.phone);
                xml.leaf("cbc:ElectronicMail", &party.email);
            });
        }
    });
}

fn registration(xml: &mut Xml, number: &str, scheme: &str) {
    if !number.is_empty() {
        xml.group("cac:PartyTaxScheme", |xml| {
            xml.leaf("cbc:CompanyID", number);
            xml.group("cac:TaxScheme", |xml| xml.leaf("cbc:ID", scheme));
        });
    }
}

fn address(xml: &mut Xml, address: &Address) {
    xml.leaf("cbc:StreetName", &address.street);
    xml.leaf("cbc:AdditionalStreetName", &address.more);
    xml.leaf("cbc:CityName", &address.city);
    xml.leaf("cbc:PostalZone", &address.postcode);
    xml.leaf("cbc:CountrySubentity", &address.region);
    if !address.line.is_empty() {
        xml.group("cac:AddressLine", |xml| xml.leaf("cbc:Line", &address.line));
    }
    xml.group("cac:Country", |xml| xml.leaf("cbc:IdentificationCode", &address.country));
}

fn delivery(xml: &mut Xml, invoice: &Invoice) {
    if invoice.delivered.is_none() && invoice.deliver_to.is_empty() {
        return;
    }
    xml.group("cac:Delivery", |xml| {
        day(xml, "cbc:ActualDeliveryDate", invoice.delivered);
        if !invoice.deliver_to.is_empty() {
            xml.group("cac:DeliveryLocation", |xml| xml.group("cac:Address", |xml| address(xml, &invoice.deliver_to)));
        }
    });
}

fn means(xml: &mut Xml, payment: &Payment, invoice: &Invoice) {
    xml.group("cac:PaymentMeans", |xml| {
        xml.leaf_with("cbc:PaymentMeansCode", &named(&payment.text), &payment.means);
        if invoice.kind == Kind::CreditNote {
            // A credit note has no due date of its own (CEN/TS 16931-3-2, BT-9).
            day(xml, "cbc:PaymentDueDate", invoice.due);
        }
        xml.leaf("cbc:PaymentID", &payment.remittance);
        if !payment.account.is_empty() {
            xml.group("cac:PayeeFinancialAccount", |xml| {
                xml.leaf("cbc:ID", &payment.account);
                xml.leaf("cbc:Name", &payment.holder);
                if !payment.bank.is_empty() {
                    xml.group("cac:FinancialInstitutionBranch", |xml| xml.leaf("cbc:ID", &payment.bank));
                }
            });
        }
    });
}

fn named(text: &str) -> Vec<(&str, &str)> {
    if text.is_empty() { vec![] } else { vec![("name", text)] }
}

fn adjustment(xml: &mut Xml, one: &Adjustment, invoice: &Invoice) {
    xml.group("cac:AllowanceCharge", |xml| {
        xml.leaf("cbc:ChargeIndicator", if one.charge { "true" } else { "false" });
        xml.leaf("cbc:AllowanceChargeReasonCode", &one.reason_code);
        xml.leaf("cbc:AllowanceChargeReason", &one.reason);
        if let Some(percent) = one.percent {
            xml.leaf("cbc:MultiplierFactorNumeric", &plain(percent));
        }
        amount(xml, "cbc:Amount", one.amount, invoice);
        if let Some(base) = one.base {
            amount(xml, "cbc:BaseAmount", base, invoice);
        }
        category(xml, "cac:TaxCategory", one.tax, |_| {});
    });
}

fn tax_total(xml: &mut Xml, invoice: &Invoice, totals: &Totals) {
    xml.group("cac:TaxTotal", |xml| {
        amount(xml, "cbc:TaxAmount", totals.tax, invoice);
        for one in &totals.by_rate {
            xml.group("cac:TaxSubtotal", |xml| {
                amount(xml, "cbc:TaxableAmount", one.base, invoice);
                amount(xml, "cbc:TaxAmount", one.amount, invoice);
                category(xml, "cac:TaxCategory", one.tax, |xml| {
                    if let Some(why) = invoice.exemption(one.tax.category) {
                        xml.leaf("cbc:TaxExemptionReasonCode", &why.code);
                        xml.leaf("cbc:TaxExemptionReason", &why.reason);
                    }
                });
            });
        }
    });
}

fn monetary_total(xml: &mut Xml, invoice: &Invoice, totals: &Totals) {
    xml.group("cac:LegalMonetaryTotal", |xml| {
        let mut put = |name, value| amount(xml, name, value, invoice);
        put("cbc:LineExtensionAmount", totals.lines);
        put("cbc:TaxExclusiveAmount", totals.net);
        put("cbc:TaxInclusiveAmount", totals.gross);
        let some = |value: Decimal| !value.is_zero();
        if some(totals.allowances) {
            put("cbc:AllowanceTotalAmount", totals.allowances);
        }
        if some(totals.charges) {
            put("cbc:ChargeTotalAmount", totals.charges);
        }
        if some(invoice.prepaid) {
            put("cbc:PrepaidAmount", invoice.prepaid);
        }
        if some(invoice.rounding) {
            put("cbc:PayableRoundingAmount", invoice.rounding);
        }
        put("cbc:PayableAmount", totals.due);
    });
}

fn line(xml: &mut Xml, index: usize, line: &Line, invoice: &Invoice, names: &Names) {
    xml.leaf("cbc:ID", &(index + 1).to_string());
    xml.leaf("cbc:Note", &line.note);
    xml.leaf_with(names.quantity, &[("unitCode", &line.unit)], &plain(line.quantity));
    amount(xml, "cbc:LineExtensionAmount", line.net(invoice.coin()), invoice);
    for one in &line.adjustments {
        xml.group("cac:AllowanceCharge", |xml| {
            xml.leaf("cbc:ChargeIndicator", if one.charge { "true" } else { "false" });
            xml.leaf("cbc:AllowanceChargeReasonCode", &one.reason_code);
            xml.leaf("cbc:AllowanceChargeReason", &one.reason);
            amount(xml, "cbc:Amount", one.amount, invoice);
        });
    }
    xml.group("cac:Item", |xml| {
        xml.leaf("cbc:Description", &line.description);
        xml.leaf("cbc:Name", &line.name);
        if !line.item.is_empty() {
            xml.group("cac:SellersItemIdentification", |xml| xml.leaf("cbc:ID", &line.item));
        }
        category(xml, "cac:ClassifiedTaxCategory", line.tax, |_| {});
    });
    xml.group("cac:Price", |xml| {
        xml.leaf_with("cbc:PriceAmount", &[("currencyID", &invoice.currency)], &plain(line.price));
        if line.price_quantity != Decimal::ONE {
            xml.leaf_with("cbc:BaseQuantity", &[("unitCode", &line.unit)], &plain(line.price_quantity));
        }
    });
}

fn category(xml: &mut Xml, name: &'static str, tax: Tax, reason: impl FnOnce(&mut Xml)) {
    xml.group(name, |xml| {
        xml.leaf("cbc:ID", tax.category.code());
        if tax.category != Category::OutOfScope {
            xml.leaf("cbc:Percent", &plain(tax.rate));
        }
        reason(xml);
        xml.group("cac:TaxScheme", |xml| xml.leaf("cbc:ID", "VAT"));
    });
}

fn amount(xml: &mut Xml, name: &'static str, value: Decimal, invoice: &Invoice) {
    let value = dentwright_price::round(value, invoice.coin()).to_string();
    xml.leaf_with(name, &[("currencyID", &invoice.currency)], &value);
}

fn day(xml: &mut Xml, name: &'static str, day: Option<Date>) {
    if let Some(day) = day {
        xml.leaf(name, &day.to_string());
    }
}
