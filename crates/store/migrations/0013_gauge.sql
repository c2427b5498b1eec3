-- A reading that came of another one and a depth measured by hand.
ALTER TABLE reading ADD COLUMN gauged_of TEXT REFERENCES reading (id) ON DELETE CASCADE;
CREATE INDEX reading_gauged_of ON reading (gauged_of);

-- 1 where the depth is a lower bound: part of the spot was too steep to read.
ALTER TABLE dent ADD COLUMN at_least BIGINT NOT NULL DEFAULT 0;
