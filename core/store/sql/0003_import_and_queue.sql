-- Version 3: the row from which an imported visit was first read, and the verifier's queue.

ALTER TABLE visit ADD COLUMN fingerprint BLOB CONSTRAINT visit_fingerprint_length CHECK (length(fingerprint) = 16);
CREATE INDEX visit_fingerprint ON visit (fingerprint) WHERE fingerprint IS NOT NULL;

ALTER TABLE visit ADD COLUMN queue_rank INTEGER NOT NULL DEFAULT 99;
ALTER TABLE visit ADD COLUMN queue_code TEXT NOT NULL DEFAULT '';
ALTER TABLE visit ADD COLUMN queued INTEGER GENERATED ALWAYS AS
    (struck = 0 AND (state = 'submitted' OR correction_waits = 1)) VIRTUAL;
CREATE INDEX visit_queue ON visit (queue_rank, day, id) WHERE queued = 1;
