-- The plan of a reading; planning again replaces it.
CREATE TABLE plan (
    reading_id TEXT PRIMARY KEY REFERENCES reading (id) ON DELETE CASCADE,
    created    BIGINT NOT NULL,
    asked      TEXT NOT NULL, -- JSON
    file       TEXT NOT NULL, -- JSON
    came_of    TEXT,          -- JSON, what the moves before the reading came to; NULL where none were noted
    sheet      BLOB           -- the planner's sheet, for the next reading; NULL where nothing was to be planned
);

-- Moves as they were made after a reading, planned ones and others.
CREATE TABLE made_move (
    id         TEXT PRIMARY KEY,
    reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
    made       BIGINT NOT NULL,
    move       TEXT NOT NULL -- JSON
);
CREATE INDEX made_move_of_reading ON made_move (reading_id, made);

-- What is behind a damage, as it was drawn over a reading.
CREATE TABLE behind (
    damage_id  TEXT PRIMARY KEY REFERENCES damage (id) ON DELETE CASCADE,
    reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
    side       TEXT NOT NULL -- JSON
);

ALTER TABLE damage ADD COLUMN look_again TEXT; -- day on which it is to be read again, YYYY-MM-DD
