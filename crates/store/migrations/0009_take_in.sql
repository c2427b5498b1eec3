-- What devices sent, so that what is sent twice after a lost answer counts once.
CREATE TABLE seen (
    id TEXT PRIMARY KEY,
    at BIGINT NOT NULL
);

-- Damage that was there before and is not part of the work.
CREATE TABLE old_damage (
    id      TEXT PRIMARY KEY,
    job_id  TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    panel   TEXT NOT NULL,
    x       DOUBLE PRECISION NOT NULL,
    y       DOUBLE PRECISION NOT NULL,
    kind    TEXT NOT NULL,
    note    TEXT NOT NULL,
    created BIGINT NOT NULL
);
CREATE INDEX old_damage_of_job ON old_damage (job_id);

-- Thickness of the paint film, as the gauge showed it.
CREATE TABLE paint_reading (
    id      TEXT PRIMARY KEY,
    job_id  TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    panel   TEXT NOT NULL,
    um      DOUBLE PRECISION NOT NULL,
    created BIGINT NOT NULL
);
CREATE INDEX paint_reading_of_job ON paint_reading (job_id);

-- Photos of the car as it came, each for a place of the checklist.
CREATE TABLE job_photo (
    id      TEXT PRIMARY KEY,
    job_id  TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    shot    TEXT NOT NULL,
    hash    TEXT NOT NULL,
    name    TEXT NOT NULL,
    bytes   BIGINT NOT NULL,
    created BIGINT NOT NULL,
    UNIQUE (job_id, shot, hash)
);
CREATE INDEX job_photo_by_hash ON job_photo (hash);

-- What the customer signed at the car: the list of old damage and the words, as they stood then. Never
-- changed: signing again adds another.
CREATE TABLE signed (
    id      TEXT PRIMARY KEY,
    job_id  TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    created BIGINT NOT NULL,
    value   TEXT NOT NULL -- JSON
);
CREATE INDEX signed_of_job ON signed (job_id);
