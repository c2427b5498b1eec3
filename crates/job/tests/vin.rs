//! VIN check digits against published examples.

use dentwright_job::{ChassisNumber, CheckDigit, Vin, VinError, check_digit};
use proptest::prelude::*;

/// 49 CFR Part 565 and its published examples.
const PUBLISHED: [(&str, char); 3] =
    [("1M8GDM9A?KP042788", 'X'), ("1G4AH59H?5G118341", '4'), ("1J9RP1A3?A1644345", '6')];

#[test]
fn published_examples_have_their_check_digits() {
    for (pattern, digit) in PUBLISHED {
        assert_eq!(check_digit(&pattern.replace('?', "0")), Some(digit), "{pattern}");
        let vin = Vin::parse(&pattern.replace('?', &digit.to_string())).unwrap();
        assert_eq!(vin.check_digit(), CheckDigit::Fits, "{pattern}");
    }
}

#[test]
fn a_slip_of_the_pen_is_seen_where_the_digit_is_due() {
    let slipped = Vin::parse("1M8GDM9AXKP042789").unwrap();
    assert_eq!(slipped.check_digit(), CheckDigit::Differs { due: check_digit(slipped.as_str()).unwrap() });
    // The same characters after a European first one: no rule asks for a check digit there.
    let european = Vin::parse("WM8GDM9A1KP042788").unwrap();
    assert_eq!(european.check_digit(), CheckDigit::NotDue);
}

#[test]
fn what_is_no_vin_is_named() {
    assert_eq!(Vin::parse("1M8GDM9AXKP04278"), Err(VinError::Length(16)));
    assert_eq!(Vin::parse(""), Err(VinError::Length(0)));
    for (text, found, place) in [
        ("1M8GDM9AXKPO42788", 'O', 12),
        ("IM8GDM9AXKP042788", 'I', 1),
        ("1Q8GDM9AXKP042788", 'Q', 2),
        ("1M8GDM9AXKP04278é", 'é', 17),
        ("1M8GDM9AXKP04278\u{1F697}", '\u{1F697}', 17),
    ] {
        match Vin::parse(text) {
            Err(VinError::Character { found: f, place: p, .. }) => assert_eq!((f, p), (found, place), "{text}"),
            other => panic!("{text}: {other:?}"),
        }
    }
}

#[test]
fn spaces_hyphens_and_small_letters_are_forgiven() {
    assert_eq!(Vin::parse(" 1m8-gdm9ax kp042788 ").unwrap().as_str(), "1M8GDM9AXKP042788");
}

#[test]
fn older_numbers_are_kept_as_entered() {
    assert_eq!(ChassisNumber::of("   "), None);
    let old = ChassisNumber::of(" 105-4711 ").unwrap();
    assert_eq!(old.as_str(), "105-4711");
    assert_eq!(old.error(), Some(VinError::Length(7)));
    assert_eq!(old.check_digit(), None);
}

proptest! {
    /// Weights are not multiples of 11 and values of digits differ by less than 11, so one wrong digit shows.
    #[test]
    fn one_wrong_digit_is_always_seen(digits in "[0-9]{17}", at in 0usize..17, to in 0u8..10) {
        prop_assume!(at != 8);
        let mut changed = digits.clone().into_bytes();
        prop_assume!(changed[at] != b'0' + to);
        changed[at] = b'0' + to;
        let changed = String::from_utf8(changed).unwrap();
        prop_assert_ne!(check_digit(&digits), check_digit(&changed));
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,40}") {
        if let Ok(vin) = Vin::parse(&text) {
            prop_assert_eq!(vin.as_str().len(), 17);
            let _ = vin.check_digit();
        }
        let _ = check_digit(&text);
    }
}
