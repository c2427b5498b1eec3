-- The day: when and where, who worked how long, and whose data is to go.
ALTER TABLE job ADD COLUMN promised_time TEXT;              -- HH:MM:SS; NULL for some time of the promised day
ALTER TABLE job ADD COLUMN place TEXT NOT NULL DEFAULT '';  -- where the car stands
ALTER TABLE job ADD COLUMN finished BIGINT;                 -- when its work was done; NULL before
ALTER TABLE job ADD COLUMN erase_due BIGINT;                -- when its customer's data goes; NULL where it stays
ALTER TABLE job ADD COLUMN erased BIGINT;                   -- when it went
UPDATE job SET finished = changed WHERE stage IN ('finished', 'handed_over');

CREATE TABLE technician (
    id      TEXT PRIMARY KEY,
    name    TEXT NOT NULL,   -- empty for the one who works alone
    pay     TEXT NOT NULL,   -- JSON
    gone    BIGINT NOT NULL, -- 1 for one who no longer works here
    created BIGINT NOT NULL
);

-- Worked time, as the clock or a hand noted it. It outlives its job: hours that were worked were worked.
CREATE TABLE time_entry (
    id            TEXT PRIMARY KEY,
    job_id        TEXT REFERENCES job (id) ON DELETE SET NULL,
    technician_id TEXT NOT NULL REFERENCES technician (id),
    kind          TEXT NOT NULL,
    started       BIGINT NOT NULL,
    stopped       BIGINT,         -- NULL while it runs; before started where the device's clock was set back
    confirmed     BIGINT NOT NULL -- 1 where a person says that it is right as it stands
);
CREATE INDEX time_entry_of_job ON time_entry (job_id);
CREATE UNIQUE INDEX time_entry_running ON time_entry (job_id, technician_id) WHERE stopped IS NULL;
