-- Version 3: the row from which an imported visit was first read, and the verifier's queue.

ALTER TABLE visit ADD COLUMN fingerprint BLOB CONSTRAINT visit_fingerprint_length CHECK (length(fingerprint) = 16);
CREATE INDEX visit_fingerprint ON visit (fingerprint) WHERE fingerprint IS NOT NULL;

ALTER TABLE visit ADD COLUMN queue_rank INTEGER NOT NULL DEFAULT 99;
ALTER TABLE visit ADD COLUMN queue_code TEXT NOT NULL DEFAULT '';
ALTER TABLE visit ADD COLUMN queued INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_queued_flag CHECK (queued IN (0, 1));
UPDATE visit SET queued = (struck = 0 AND (state = 'submitted' OR correction_waits = 1));
CREATE INDEX visit_queue ON visit (queued, queue_rank, day) WHERE queued = 1;
