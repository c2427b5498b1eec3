//! Settings: the shipped file, and what is refused.

use dentwright_price::{HOURS_TOML, HoursSettings, SettingsError};

#[test]
fn the_shipped_settings_are_read_and_good() {
    let settings = HoursSettings::from_toml(HOURS_TOML).unwrap();
    assert_eq!(settings, HoursSettings::default());
    assert_eq!(settings.count_power, 0.97);
}

/// Every coefficient says where it comes from.
#[test]
fn every_shipped_coefficient_has_a_comment() {
    for line in HOURS_TOML.lines().filter(|line| line.contains(" = ") && !line.starts_with('#')) {
        let comment = line.split_once('#').map_or("", |(_, comment)| comment.trim());
        assert!(comment.len() > 10, "no comment: {line}");
    }
}

#[test]
fn settings_survive_json() {
    let settings = HoursSettings::default();
    let json = serde_json::to_string(&settings).unwrap();
    assert_eq!(serde_json::from_str::<HoursSettings>(&json).unwrap(), settings);
}

#[test]
fn a_coefficient_that_is_no_number_zero_or_below_is_refused_by_name() {
    for bad in ["nan", "inf", "0.0", "-1.0"] {
        let text = HOURS_TOML.replace("braced = 1.4", &format!("braced = {bad}"));
        let error = HoursSettings::from_toml(&text).unwrap_err();
        assert!(matches!(error, SettingsError::Value { field: "access.braced", .. }), "{bad}: {error}");
    }
}

#[test]
fn sharpness_may_not_outgrow_area() {
    let text = HOURS_TOML.replace("sharpness_power = 0.4", "sharpness_power = 0.6");
    let error = HoursSettings::from_toml(&text).unwrap_err().to_string();
    assert_eq!(error, "the hours setting sharpness_power is 0.6, but must be 0 to area_power");
}

#[test]
fn a_name_that_is_unknown_or_missing_is_refused() {
    let unknown = HOURS_TOML.replace("braced = 1.4", "barced = 1.4");
    let error = HoursSettings::from_toml(&unknown).unwrap_err().to_string();
    assert!(error.contains("barced"), "{error}");
}
