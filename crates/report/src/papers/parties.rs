//! Addresses as people write them, as the parts that an invoice wants.

use dentwright_invoice::Address;

/// Splits an address of several lines: street first, postcode and town last, anything else between.
///
/// ```
/// use dentwright_report::address_of;
/// let one = address_of("Hafenzeile 4\nTor 2\n10999 Erfundenstadt", "DE");
/// assert_eq!((one.street.as_str(), one.more.as_str()), ("Hafenzeile 4", "Tor 2"));
/// assert_eq!((one.postcode.as_str(), one.city.as_str()), ("10999", "Erfundenstadt"));
/// assert_eq!(address_of("12 High Street\nInvented Town EX1 2MP", "GB").city, "Invented Town EX1 2MP");
/// ```
#[must_use]
pub fn address_of(text: &str, country: &str) -> Address {
    let lines: Vec<&str> = text.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
    let mut address = Address { country: country.to_owned(), ..Address::default() };
    let (town, rest) = match lines.split_last() {
        Some((town, rest)) if !rest.is_empty() => (*town, rest),
        _ => ("", lines.as_slice()),
    };
    address.street = rest.first().map(|line| (*line).to_owned()).unwrap_or_default();
    address.more = rest.iter().skip(1).copied().collect::<Vec<_>>().join(", ");
    match town.split_once(' ') {
        Some((code, city)) if is_postcode(code) => {
            address.postcode = code.to_owned();
            address.city = city.trim().to_owned();
        }
        _ => address.city = town.to_owned(),
    }
    address
}

/// A word that stands before a town: digits, with a hyphen or the country's letters.
fn is_postcode(word: &str) -> bool {
    let digits = word.chars().filter(char::is_ascii_digit).count();
    digits >= 3 && word.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '-')
}
