-- Calibrated cameras, a row each time; the newest of a phone, zoom and shape of photos counts.
CREATE TABLE camera (
    id         TEXT PRIMARY KEY,
    phone      TEXT NOT NULL,
    focal_35mm BIGINT NOT NULL,
    width_px   BIGINT NOT NULL,
    height_px  BIGINT NOT NULL,
    created    BIGINT NOT NULL,
    value      TEXT NOT NULL -- JSON, the calibration
);
CREATE INDEX camera_of_phone ON camera (phone, focal_35mm);
