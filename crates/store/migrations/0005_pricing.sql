-- Hail tables as they were imported. Never changed, so that a quote keeps what it was made with: importing
-- again adds another, and one that was removed is only no longer offered.
CREATE TABLE hail_table (
    id      TEXT PRIMARY KEY,
    name    TEXT NOT NULL,
    created BIGINT NOT NULL,
    removed BIGINT NOT NULL, -- 1 where it is no longer offered
    value   TEXT NOT NULL    -- JSON
);

-- Worked time of finished jobs with what was known of their dents: what the hours are learned from. It
-- outlives its job and names nobody: a number, sizes, hours.
CREATE TABLE finished (
    job_id TEXT PRIMARY KEY,
    since  BIGINT NOT NULL,
    value  TEXT NOT NULL -- JSON
);
