-- Papers that were issued. None is ever changed: a wrong invoice is followed by a credit note. Numbers of a
-- series and year are unbroken: the next is taken in the transaction that keeps the paper.
CREATE TABLE paper_count (
    series TEXT NOT NULL,
    year   BIGINT NOT NULL,
    last   BIGINT NOT NULL,
    PRIMARY KEY (series, year)
);

CREATE TABLE paper (
    id       TEXT PRIMARY KEY,
    job_id   TEXT REFERENCES job (id) ON DELETE SET NULL, -- numbered papers outlive their job
    kind     TEXT NOT NULL,
    number   TEXT UNIQUE, -- NULL for papers without one
    language TEXT NOT NULL,
    created  BIGINT NOT NULL,
    follows  TEXT REFERENCES paper (id), -- the invoice of a credit note or receipt, the estimate of a supplement
    facts    TEXT NOT NULL -- JSON, what it was made from
);
CREATE INDEX paper_of_job ON paper (job_id);

CREATE TABLE paper_file (
    paper_id TEXT NOT NULL REFERENCES paper (id) ON DELETE CASCADE,
    name     TEXT NOT NULL,
    hash     TEXT NOT NULL,
    bytes    BIGINT NOT NULL,
    PRIMARY KEY (paper_id, name)
);
CREATE INDEX paper_file_by_hash ON paper_file (hash);
