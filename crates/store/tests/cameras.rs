//! Calibrations of phones.

use dentwright_store::{NewCamera, Store, StoreError};
use jiff::{SignedDuration, Timestamp};

#[tokio::test]
async fn the_newest_of_a_phone_and_zoom_counts() {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(folder.path()).await.unwrap();
    let at = |day: i64| Timestamp::UNIX_EPOCH + SignedDuration::from_hours(24 * day);
    let new = |focal_35mm, focal_px: f64| NewCamera {
        phone: "Example Phone".into(),
        focal_35mm,
        size_px: (4032, 3024),
        value: serde_json::json!({ "focal_px": [focal_px, focal_px] }),
    };
    store.add_camera(&new(26, 2900.0), at(1)).await.unwrap();
    let second = store.add_camera(&new(26, 2912.0), at(2)).await.unwrap();
    store.add_camera(&new(52, 5800.0), at(3)).await.unwrap();
    let found = store.camera_of("Example Phone", 26).await.unwrap().unwrap();
    assert_eq!((found.id, found.created, found.camera), (second, at(2), new(26, 2912.0)));
    assert_eq!(store.camera_of("Other Phone", 26).await.unwrap(), None);
    assert_eq!(store.cameras().await.unwrap().len(), 3);
    store.remove_camera(second).await.unwrap();
    let before = store.camera_of("Example Phone", 26).await.unwrap().unwrap();
    assert_eq!(before.camera, new(26, 2900.0), "the one before counts again");
    assert!(matches!(store.remove_camera(second).await, Err(StoreError::Unknown { what: "camera", .. })));
}
