-- Version 7: batches of "nothing seen" records and their blind audits.
--
-- What a batch is and what happened to it are only ever added to; `state` is that of the last step that closed it or opened it
-- again. `audit_member` says which visits a batch holds, for the queue; the content says it for good.

CREATE TABLE audit (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT audit_uid_unique UNIQUE CONSTRAINT audit_uid_length CHECK (length(uid) = 16),
    content TEXT NOT NULL,
    state TEXT NOT NULL DEFAULT 'open' CONSTRAINT audit_state_known CHECK (state IN ('open', 'passed', 'failed', 'given-up')),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT audit_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT audit_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE TRIGGER audit_append_only BEFORE UPDATE OF id, uid, content, line_chain, line_number ON audit
BEGIN SELECT RAISE(ABORT, 'audit_append_only'); END;
CREATE TRIGGER audit_kept BEFORE DELETE ON audit
BEGIN SELECT RAISE(ABORT, 'audit_kept'); END;

CREATE TABLE audit_member (
    visit INTEGER NOT NULL CONSTRAINT audit_member_visit_exists REFERENCES visit (id),
    audit INTEGER NOT NULL CONSTRAINT audit_member_audit_exists REFERENCES audit (id),
    revision BLOB NOT NULL CONSTRAINT audit_member_revision_length CHECK (length(revision) = 16),
    CONSTRAINT audit_member_key PRIMARY KEY (visit, audit)
) STRICT, WITHOUT ROWID;
CREATE INDEX audit_member_audit ON audit_member (audit);

CREATE TABLE audit_step (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT audit_step_uid_unique UNIQUE CONSTRAINT audit_step_uid_length CHECK (length(uid) = 16),
    audit INTEGER NOT NULL CONSTRAINT audit_step_audit_exists REFERENCES audit (id),
    event TEXT NOT NULL,
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT audit_step_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT audit_step_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX audit_step_audit ON audit_step (audit);
CREATE TRIGGER audit_step_append_only BEFORE UPDATE ON audit_step
BEGIN SELECT RAISE(ABORT, 'audit_step_append_only'); END;
CREATE TRIGGER audit_step_kept BEFORE DELETE ON audit_step
BEGIN SELECT RAISE(ABORT, 'audit_step_kept'); END;
