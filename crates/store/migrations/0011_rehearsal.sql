-- Rehearsals of learners: what was begun, done and reached. The moves and the seed make the same panel again.
CREATE TABLE rehearsal (
    id      TEXT PRIMARY KEY,
    learner TEXT NOT NULL,
    level   TEXT NOT NULL,
    seed    BIGINT NOT NULL,
    begun   BIGINT NOT NULL,
    ended   BIGINT,
    claims  TEXT NOT NULL, -- JSON, what was read off the lines
    made    TEXT NOT NULL, -- JSON, the moves
    score   TEXT           -- JSON
);
CREATE INDEX rehearsal_of_learner ON rehearsal (learner, begun);

-- How the panel stood after each move; step 0 is the beginning.
CREATE TABLE rehearsal_step (
    rehearsal_id TEXT NOT NULL REFERENCES rehearsal (id) ON DELETE CASCADE,
    step         BIGINT NOT NULL,
    deviation    BLOB NOT NULL, -- NPY
    PRIMARY KEY (rehearsal_id, step)
);
