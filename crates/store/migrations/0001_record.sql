-- The record. Ids and times are ours: ids are UUIDs (version 7, so that they sort by time) as TEXT,
-- times are milliseconds since 1970 (UTC) as BIGINT, days are ISO 8601 as TEXT, yes and no are 1 and 0.
-- Everything here means the same to SQLite and to PostgreSQL.

CREATE TABLE setting (
    name    TEXT PRIMARY KEY,
    value   TEXT NOT NULL, -- JSON
    changed BIGINT NOT NULL
);

CREATE TABLE job_count (
    year BIGINT PRIMARY KEY,
    last BIGINT NOT NULL
);

CREATE TABLE customer (
    id      TEXT PRIMARY KEY,
    name    TEXT NOT NULL,
    address TEXT NOT NULL,
    phone   TEXT NOT NULL,
    email   TEXT NOT NULL
);

CREATE TABLE car (
    id           TEXT PRIMARY KEY,
    vin          TEXT,
    plate        TEXT NOT NULL,
    make         TEXT NOT NULL,
    model        TEXT NOT NULL,
    year         BIGINT,
    colour       TEXT NOT NULL,
    paint        TEXT NOT NULL,
    odometer_km  BIGINT,
    high_voltage BIGINT, -- NULL where nobody has looked
    metals       TEXT NOT NULL -- JSON, panel to metal
);

CREATE TABLE job (
    id          TEXT PRIMARY KEY,
    number      TEXT NOT NULL UNIQUE,
    created     BIGINT NOT NULL,
    changed     BIGINT NOT NULL,
    stage       TEXT NOT NULL,
    customer_id TEXT NOT NULL REFERENCES customer (id),
    car_id      TEXT NOT NULL REFERENCES car (id),
    promised    TEXT,
    notes       TEXT NOT NULL
);

CREATE TABLE quote_input (
    job_id  TEXT PRIMARY KEY REFERENCES job (id) ON DELETE CASCADE,
    value   TEXT NOT NULL, -- JSON
    changed BIGINT NOT NULL
);

CREATE TABLE damage (
    id      TEXT PRIMARY KEY,
    job_id  TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    panel   TEXT NOT NULL,
    x       DOUBLE PRECISION NOT NULL,
    y       DOUBLE PRECISION NOT NULL,
    note    TEXT NOT NULL,
    created BIGINT NOT NULL
);
CREATE INDEX damage_of_job ON damage (job_id);

CREATE TABLE photo (
    id        TEXT PRIMARY KEY,
    damage_id TEXT NOT NULL REFERENCES damage (id) ON DELETE CASCADE,
    hash      TEXT NOT NULL,
    name      TEXT NOT NULL,
    bytes     BIGINT NOT NULL,
    created   BIGINT NOT NULL,
    UNIQUE (damage_id, hash)
);
CREATE INDEX photo_by_hash ON photo (hash);

CREATE TABLE capture (
    id        TEXT PRIMARY KEY,
    damage_id TEXT NOT NULL REFERENCES damage (id) ON DELETE CASCADE,
    created   BIGINT NOT NULL
);
CREATE INDEX capture_of_damage ON capture (damage_id);

CREATE TABLE capture_file (
    capture_id TEXT NOT NULL REFERENCES capture (id) ON DELETE CASCADE,
    name       TEXT NOT NULL,
    hash       TEXT NOT NULL,
    bytes      BIGINT NOT NULL,
    PRIMARY KEY (capture_id, name)
);
CREATE INDEX capture_file_by_hash ON capture_file (hash);

-- A reading is never changed: measuring again adds another.
CREATE TABLE reading (
    id         TEXT PRIMARY KEY,
    capture_id TEXT NOT NULL REFERENCES capture (id) ON DELETE CASCADE,
    created    BIGINT NOT NULL,
    version    TEXT NOT NULL,
    settings   TEXT NOT NULL, -- JSON
    facts      TEXT NOT NULL  -- JSON, the reading's own file
);
CREATE INDEX reading_of_capture ON reading (capture_id);

CREATE TABLE reading_file (
    reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
    name       TEXT NOT NULL,
    hash       TEXT NOT NULL,
    bytes      BIGINT NOT NULL,
    PRIMARY KEY (reading_id, name)
);
CREATE INDEX reading_file_by_hash ON reading_file (hash);

CREATE TABLE dent (
    id         TEXT PRIMARY KEY,
    damage_id  TEXT NOT NULL REFERENCES damage (id) ON DELETE CASCADE,
    kind       TEXT NOT NULL,
    length_mm  DOUBLE PRECISION NOT NULL,
    width_mm   DOUBLE PRECISION NOT NULL,
    depth_mm   DOUBLE PRECISION NOT NULL,
    metal      TEXT NOT NULL,
    access     TEXT NOT NULL,
    place      TEXT NOT NULL,
    sharpness  DOUBLE PRECISION,
    amount     BIGINT NOT NULL,
    reading_id TEXT REFERENCES reading (id) ON DELETE SET NULL, -- NULL: entered by hand
    spot       BIGINT,
    sigma_mm   DOUBLE PRECISION,
    UNIQUE (reading_id, spot) -- a spot becomes a dent once
);
CREATE INDEX dent_of_damage ON dent (damage_id);

CREATE TABLE task (
    id            TEXT PRIMARY KEY,
    capture_id    TEXT NOT NULL REFERENCES capture (id) ON DELETE CASCADE,
    state         TEXT NOT NULL, -- queued, running, done, failed, cancelled
    created       BIGINT NOT NULL,
    changed       BIGINT NOT NULL,
    error_code    TEXT,
    error_message TEXT,
    error_next    TEXT,
    reading_id    TEXT REFERENCES reading (id) ON DELETE SET NULL
);
CREATE INDEX task_by_state ON task (state);
CREATE INDEX task_of_capture ON task (capture_id);

-- Devices that were paired. Only a hash of what they hold, so that a copy of this file opens nothing.
CREATE TABLE device (
    token_hash TEXT PRIMARY KEY,
    created    BIGINT NOT NULL,
    until      BIGINT NOT NULL
);
