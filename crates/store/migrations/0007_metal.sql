-- What the metal of a reading holds; computing it again replaces it.
CREATE TABLE metal (
    reading_id TEXT PRIMARY KEY REFERENCES reading (id) ON DELETE CASCADE,
    created    BIGINT NOT NULL,
    facts      TEXT NOT NULL, -- JSON
    state      BLOB NOT NULL  -- the dent, for moves to be tried on
);

CREATE TABLE metal_map (
    reading_id TEXT NOT NULL REFERENCES metal (reading_id) ON DELETE CASCADE,
    name       TEXT NOT NULL,
    bytes      BLOB NOT NULL, -- NPY
    PRIMARY KEY (reading_id, name)
);
