-- Version 6: what must not be counted or searched anew each time: how many records wait in the queue, by why they stand there, and
-- the squares of a twentieth of a degree in which there are accepted finds (five cells of version 2 both ways, numbered
-- (row of squares) * 8192 + (column of squares)), so that the nearest find far off is found without reading them all.

CREATE TABLE queue_count (
    code TEXT NOT NULL CONSTRAINT queue_count_key PRIMARY KEY,
    waiting INTEGER NOT NULL CONSTRAINT queue_count_counts CHECK (waiting >= 0)
) STRICT, WITHOUT ROWID;
INSERT INTO queue_count SELECT queue_code, count(*) FROM visit WHERE queued = 1 GROUP BY queue_code;
CREATE TRIGGER visit_queue_entered AFTER INSERT ON visit WHEN new.queued = 1
BEGIN
    INSERT INTO queue_count VALUES (new.queue_code, 1) ON CONFLICT (code) DO UPDATE SET waiting = waiting + 1;
END;
CREATE TRIGGER visit_queue_changed AFTER UPDATE OF queued, queue_code ON visit
WHEN new.queued <> old.queued OR (new.queued = 1 AND new.queue_code <> old.queue_code)
BEGIN
    UPDATE queue_count SET waiting = waiting - 1 WHERE old.queued = 1 AND code = old.queue_code;
    INSERT INTO queue_count SELECT new.queue_code, 1 WHERE new.queued = 1 ON CONFLICT (code) DO UPDATE SET waiting = waiting + 1;
END;

-- What was decided of an observer, all that a summary of their past reads.
CREATE INDEX visit_decided ON visit (observer, day, struck, state, none_seen, signs)
WHERE state = 'accepted' OR state = 'rejected' OR state = 'returned';

-- Waiting finds of a tree, so that a new accepted find moves only those near it.
CREATE INDEX visit_waiting_find ON visit (tree) WHERE queued = 1 AND positive = 1;
CREATE INDEX tree_unplaced ON tree (id) WHERE cell IS NULL;

CREATE TABLE find_square (
    square INTEGER PRIMARY KEY,
    finds INTEGER NOT NULL CONSTRAINT find_square_counts CHECK (finds >= 0)
) STRICT;
INSERT INTO find_square SELECT cell / 65536 / 5 * 8192 + cell % 65536 / 5, count(*) FROM find GROUP BY 1;
CREATE TRIGGER find_added AFTER INSERT ON find
BEGIN
    INSERT INTO find_square VALUES (new.cell / 65536 / 5 * 8192 + new.cell % 65536 / 5, 1)
    ON CONFLICT (square) DO UPDATE SET finds = finds + 1;
END;
CREATE TRIGGER find_removed AFTER DELETE ON find
BEGIN
    UPDATE find_square SET finds = finds - 1 WHERE square = old.cell / 65536 / 5 * 8192 + old.cell % 65536 / 5;
    DELETE FROM find_square WHERE finds = 0;
END;
CREATE TRIGGER find_replaced BEFORE UPDATE ON find
BEGIN SELECT RAISE(ABORT, 'find_replaced'); END;
