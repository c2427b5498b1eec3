//! An invoice as UN/CEFACT Cross Industry Invoice, D16B and its later D22B (CEN/TS 16931-3-3).

use crate::ubl::GUIDELINE;
use crate::xml::{Xml, plain};
use crate::{Address, Category, Invoice, Line, Party, Payment, Tax, Totals};
use jiff::civil::Date;
use rust_decimal::Decimal;

const NAMESPACES: [(&str, &str); 4] = [
    ("xmlns:rsm", "urn:un:unece:uncefact:data:standard:CrossIndustryInvoice:100"),
    ("xmlns:ram", "urn:un:unece:uncefact:data:standard:ReusableAggregateBusinessInformationEntity:100"),
    ("xmlns:udt", "urn:un:unece:uncefact:data:standard:UnqualifiedDataType:100"),
    ("xmlns:qdt", "urn:un:unece:uncefact:data:standard:QualifiedDataType:100"),
];
/// Format `102` of UNTDID 2379: year, month, day without anything between.
const DAY_FORMAT: (&str, &str) = ("format", "102");

/// Writes CII. The same values give the same bytes; what [`crate::check()`] finds is written as it is.
#[must_use]
pub fn cii(invoice: &Invoice) -> Vec<u8> {
    let totals = Totals::of(invoice);
    let mut xml = Xml::new("rsm:CrossIndustryInvoice", &NAMESPACES);
    xml.group("rsm:ExchangedDocumentContext", |xml| {
        xml.group("ram:GuidelineSpecifiedDocumentContextParameter", |xml| xml.leaf("ram:ID", GUIDELINE));
    });
    xml.group("rsm:ExchangedDocument", |xml| {
        xml.leaf("ram:ID", &invoice.number);
        xml.leaf("ram:TypeCode", invoice.kind.code());
        day(xml, "ram:IssueDateTime", Some(invoice.issued));
        for note in &invoice.notes {
            xml.group("ram:IncludedNote", |xml| xml.leaf("ram:Content", note));
        }
    });
    xml.group("rsm:SupplyChainTradeTransaction", |xml| {
        for (index, one) in invoice.lines.iter().enumerate() {
            xml.group("ram:IncludedSupplyChainTradeLineItem", |xml| line(xml, index, one, invoice));
        }
        xml.group("ram:ApplicableHeaderTradeAgreement", |xml| agreement(xml, invoice));
        xml.group("ram:ApplicableHeaderTradeDelivery", |xml| delivery(xml, invoice));
        xml.group("ram:ApplicableHeaderTradeSettlement", |xml| settlement(xml, invoice, &totals));
    });
    xml.finish()
}

fn line(xml: &mut Xml, index: usize, line: &Line, invoice: &Invoice) {
    xml.group("ram:AssociatedDocumentLineDocument", |xml| {
        xml.leaf("ram:LineID", &(index + 1).to_string());
        if !line.note.is_empty() {
            xml.group("ram:IncludedNote", |xml| xml.leaf("ram:Content", &line.note));
        }
    });
    xml.group("ram:SpecifiedTradeProduct", |xml| {
        xml.leaf("ram:SellerAssignedID", &line.item);
        xml.leaf("ram:Name", &line.name);
        xml.leaf("ram:Description", &line.description);
    });
    xml.group("ram:SpecifiedLineTradeAgreement", |xml| {
        xml.group("ram:NetPriceProductTradePrice", |xml| {
            xml.leaf("ram:ChargeAmount", &plain(line.price));
            if line.price_quantity != Decimal::ONE {
                xml.leaf_with("ram:BasisQuantity", &[("unitCode", &line.unit)], &plain(line.price_quantity));
            }
        });
    });
    xml.group("ram:SpecifiedLineTradeDelivery", |xml| {
        xml.leaf_with("ram:BilledQuantity", &[("unitCode", &line.unit)], &plain(line.quantity));
    });
    xml.group("ram:SpecifiedLineTradeSettlement", |xml| {
        xml.group("ram:ApplicableTradeTax", |xml| tax(xml, line.tax));
        for one in &line.adjustments {
            xml.group("ram:SpecifiedTradeAllowanceCharge", |xml| {
                indicator(xml, one.charge);
                amount(xml, "ram:ActualAmount", one.amount, invoice);
                xml.leaf("ram:ReasonCode", &one.reason_code);
                xml.leaf("ram:Reason", &one.reason);
            });
        }
        xml.group("ram:SpecifiedTradeSettlementLineMonetarySummation", |xml| {
            amount(xml, "ram:LineTotalAmount", line.net(invoice.coin()), invoice);
        });
    });
}

fn agreement(xml: &mut Xml, invoice: &Invoice) {
    xml.leaf("ram:BuyerReference", &invoice.buyer_reference);
    xml.group("ram:SellerTradeParty", |xml| party(xml, &invoice.seller, true));
    xml.group("ram:BuyerTradeParty", |xml| party(xml, &invoice.buyer, false));
    if !invoice.order.is_empty() {
        xml.group("ram:BuyerOrderReferencedDocument", |xml| xml.leaf("ram:IssuerAssignedID", &invoice.order));
    }
}

fn party(xml: &mut Xml, party: &Party, seller: bool) {
    xml.leaf("ram:Name", &party.name);
    if seller {
        xml.leaf("ram:Description", &party.legal);
    }
    if !party.register.is_empty() || !party.trade_name.is_empty() {
        xml.group("ram:SpecifiedLegalOrganization", |xml| {
            xml.leaf("ram:ID", &party.register);
            xml.leaf("ram:TradingBusinessName", &party.trade_name);
        });
    }
    if [&party.contact, &party.phone, &party.email].iter().any(|text| !text.is_empty()) {
        xml.group("ram:DefinedTradeContact", |xml| {
            xml.leaf("ram:PersonName", &party.contact);
            if !party.phone.is_empty() {
                xml.group("ram:TelephoneUniversalCommunication", |xml| xml.leaf("ram:CompleteNumber", &party.phone));
            }
            if !party.email.is_empty() {
                xml.group("ram:EmailURIUniversalCommunication", |xml| xml.leaf("ram:URIID", &party.email));
            }
        });
    }
    xml.group("ram:PostalTradeAddress", |xml| address(xml, &party.address));
    if !party.endpoint.is_empty() {
        xml.group("ram:URIUniversalCommunication", |xml| {
            xml.leaf_with("ram:URIID", &[("schemeID", &party.endpoint_scheme)], &party.endpoint);
        });
    }
    registration(xml, &party.vat_id, "VA");
    if seller {
        registration(xml, &party.tax_number, "FC");
    }
}

fn registration(xml: &mut Xml, number: &str, scheme: &str) {
    if !number.is_empty() {
        xml.group("ram:SpecifiedTaxRegistration", |xml| xml.leaf_with("ram:ID", &[("schemeID", scheme)], number));
    }
}

fn address(xml: &mut Xml, address: &Address) {
    xml.leaf("ram:PostcodeCode", &address.postcode);
    xml.leaf("ram:LineOne", &address.street);
    xml.leaf("ram:LineTwo", &address.more);
    xml.leaf("ram:LineThree", &address.line);
    xml.leaf("ram:CityName", &address.city);
    xml.leaf("ram:CountryID", &address.country);
    xml.leaf("ram:CountrySubDivisionName", &address.region);
}

fn delivery(xml: &mut Xml, invoice: &Invoice) {
    if !invoice.deliver_to.is_empty() {
        xml.group("ram:ShipToTradeParty", |xml| {
            xml.group("ram:PostalTradeAddress", |xml| address(xml, &invoice.deliver_to));
        });
    }
    if invoice.delivered.is_some() {
        xml.group("ram:ActualDeliverySupplyChainEvent", |xml| day(xml, "ram:OccurrenceDateTime", invoice.delivered));
    }
}

fn settlement(xml: &mut Xml, invoice: &Invoice, totals: &Totals) {
    xml.leaf("ram:PaymentReference", invoice.payment.as_ref().map_or("", |payment| &payment.remittance));
    xml.leaf("ram:InvoiceCurrencyCode", &invoice.currency);
    if let Some(payment) = &invoice.payment {
        xml.group("ram:SpecifiedTradeSettlementPaymentMeans", |xml| means(xml, payment));
    }
    for one in &totals.by_rate {
        xml.group("ram:ApplicableTradeTax", |xml| {
            let why = invoice.exemption(one.tax.category);
            amount(xml, "ram:CalculatedAmount", one.amount, invoice);
            xml.leaf("ram:TypeCode", "VAT");
            xml.leaf("ram:ExemptionReason", why.map_or("", |why| &why.reason));
            amount(xml, "ram:BasisAmount", one.base, invoice);
            xml.leaf("ram:CategoryCode", one.tax.category.code());
            xml.leaf("ram:ExemptionReasonCode", why.map_or("", |why| &why.code));
            rate(xml, one.tax);
        });
    }
    if let Some((first, last)) = invoice.period {
        xml.group("ram:BillingSpecifiedPeriod", |xml| {
            day(xml, "ram:StartDateTime", Some(first));
            day(xml, "ram:EndDateTime", Some(last));
        });
    }
    adjustments(xml, invoice);
    if !invoice.terms.is_empty() || invoice.due.is_some() {
        xml.group("ram:SpecifiedTradePaymentTerms", |xml| {
            xml.leaf("ram:Description", &invoice.terms);
            day(xml, "ram:DueDateDateTime", invoice.due);
        });
    }
    xml.group("ram:SpecifiedTradeSettlementHeaderMonetarySummation", |xml| summation(xml, invoice, totals));
    for one in &invoice.preceding {
        xml.group("ram:InvoiceReferencedDocument", |xml| {
            xml.leaf("ram:IssuerAssignedID", &one.number);
            if let Some(issued) = one.issued {
                xml.group("ram:FormattedIssueDateTime", |xml| {
                    xml.leaf_with("qdt:DateTimeString", &[DAY_FORMAT], &digits(issued));
                });
            }
        });
    }
}

fn means(xml: &mut Xml, payment: &Payment) {
    xml.leaf("ram:TypeCode", &payment.means);
    xml.leaf("ram:Information", &payment.text);
    if payment.account.is_empty() {
        return;
    }
    xml.group("ram:PayeePartyCreditorFinancialAccount", |xml| {
        let iban = is_iban(&payment.account);
        xml.leaf("ram:IBANID", if iban { &payment.account } else { "" });
        xml.leaf("ram:AccountName", &payment.holder);
        xml.leaf("ram:ProprietaryID", if iban { "" } else { &payment.account });
    });
    if !payment.bank.is_empty() {
        xml.group("ram:PayeeSpecifiedCreditorFinancialInstitution", |xml| xml.leaf("ram:BICID", &payment.bank));
    }
}

/// Two letters and two digits, as ISO 13616 begins; the digits themselves are the bank's to check.
fn is_iban(account: &str) -> bool {
    let bytes = account.as_bytes();
    bytes.len() > 4 && bytes[..2].iter().all(u8::is_ascii_uppercase) && bytes[2..4].iter().all(u8::is_ascii_digit)
}

fn adjustments(xml: &mut Xml, invoice: &Invoice) {
    for one in &invoice.adjustments {
        xml.group("ram:SpecifiedTradeAllowanceCharge", |xml| {
            indicator(xml, one.charge);
            if let Some(percent) = one.percent {
                xml.leaf("ram:CalculationPercent", &plain(percent));
            }
            if let Some(base) = one.base {
                amount(xml, "ram:BasisAmount", base, invoice);
            }
            amount(xml, "ram:ActualAmount", one.amount, invoice);
            xml.leaf("ram:ReasonCode", &one.reason_code);
            xml.leaf("ram:Reason", &one.reason);
            xml.group("ram:CategoryTradeTax", |xml| tax(xml, one.tax));
        });
    }
}

fn summation(xml: &mut Xml, invoice: &Invoice, totals: &Totals) {
    let some = |value: Decimal| !value.is_zero();
    amount(xml, "ram:LineTotalAmount", totals.lines, invoice);
    if some(totals.charges) {
        amount(xml, "ram:ChargeTotalAmount", totals.charges, invoice);
    }
    if some(totals.allowances) {
        amount(xml, "ram:AllowanceTotalAmount", totals.allowances, invoice);
    }
    amount(xml, "ram:TaxBasisTotalAmount", totals.net, invoice);
    let tax = dentwright_price::round(totals.tax, invoice.coin()).to_string();
    xml.leaf_with("ram:TaxTotalAmount", &[("currencyID", &invoice.currency)], &tax);
    if some(invoice.rounding) {
        amount(xml, "ram:RoundingAmount", invoice.rounding, invoice);
    }
    amount(xml, "ram:GrandTotalAmount", totals.gross, invoice);
    if some(invoice.prepaid) {
        amount(xml, "ram:TotalPrepaidAmount", invoice.prepaid, invoice);
    }
    amount(xml, "ram:DuePayableAmount", totals.due, invoice);
}

fn tax(xml: &mut Xml, tax: Tax) {
    xml.leaf("ram:TypeCode", "VAT");
    xml.leaf("ram:CategoryCode", tax.category.code());
    rate(xml, tax);
}

fn rate(xml: &mut Xml, tax: Tax) {
    if tax.category != Category::OutOfScope {
        xml.leaf("ram:RateApplicablePercent", &plain(tax.rate));
    }
}

fn indicator(xml: &mut Xml, charge: bool) {
    xml.group("ram:ChargeIndicator", |xml| xml.leaf("udt:Indicator", if charge { "true" } else { "false" }));
}

fn amount(xml: &mut Xml, name: &'static str, value: Decimal, invoice: &Invoice) {
    xml.leaf(name, &dentwright_price::round(value, invoice.coin()).to_string());
}

fn day(xml: &mut Xml, name: &'static str, day: Option<Date>) {
    if let Some(day) = day {
        xml.group(name, |xml| xml.leaf_with("udt:DateTimeString", &[DAY_FORMAT], &digits(day)));
    }
}

fn digits(day: Date) -> String {
    day.to_string().replace('-', "")
}
