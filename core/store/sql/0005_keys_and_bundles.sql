-- Version 5: what people have said about keys, and the bundles that were written here or taken in.
--
-- Which key holds is computed from all notes about it. `bundle_line` names the journal lines whose contents a bundle carries; an
-- acknowledged bundle's lines need not travel again.

CREATE TABLE key_note (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT key_note_uid_unique UNIQUE CONSTRAINT key_note_uid_length CHECK (length(uid) = 16),
    key TEXT NOT NULL CONSTRAINT key_note_key_form CHECK (length(key) = 64 AND key NOT GLOB '*[^0-9a-f]*'),
    person BLOB NOT NULL CONSTRAINT key_note_person_length CHECK (length(person) = 16),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT key_note_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT key_note_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX key_note_key ON key_note (key);
CREATE INDEX key_note_person ON key_note (person);
CREATE TRIGGER key_note_append_only BEFORE UPDATE ON key_note
BEGIN SELECT RAISE(ABORT, 'key_note_append_only'); END;
CREATE TRIGGER key_note_kept BEFORE DELETE ON key_note
BEGIN SELECT RAISE(ABORT, 'key_note_kept'); END;

CREATE TABLE bundle (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT bundle_uid_unique UNIQUE CONSTRAINT bundle_uid_length CHECK (length(uid) = 16),
    way TEXT NOT NULL CONSTRAINT bundle_way_known CHECK (way IN ('written', 'merged')),
    key TEXT NOT NULL CONSTRAINT bundle_key_form CHECK (length(key) = 64 AND key NOT GLOB '*[^0-9a-f]*'),
    number INTEGER NOT NULL CONSTRAINT bundle_number_counts CHECK (number > 0),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT bundle_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT bundle_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX bundle_key ON bundle (key, number);
CREATE TRIGGER bundle_append_only BEFORE UPDATE ON bundle
BEGIN SELECT RAISE(ABORT, 'bundle_append_only'); END;
CREATE TRIGGER bundle_kept BEFORE DELETE ON bundle
BEGIN SELECT RAISE(ABORT, 'bundle_kept'); END;

CREATE TABLE bundle_line (
    chain INTEGER NOT NULL,
    number INTEGER NOT NULL,
    bundle INTEGER NOT NULL CONSTRAINT bundle_line_bundle_exists REFERENCES bundle (id),
    CONSTRAINT bundle_line_key PRIMARY KEY (chain, number, bundle),
    CONSTRAINT bundle_line_journal_exists FOREIGN KEY (chain, number) REFERENCES journal (chain, number)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER bundle_line_append_only BEFORE UPDATE ON bundle_line
BEGIN SELECT RAISE(ABORT, 'bundle_line_append_only'); END;
CREATE TRIGGER bundle_line_kept BEFORE DELETE ON bundle_line
BEGIN SELECT RAISE(ABORT, 'bundle_line_kept'); END;

CREATE TABLE acknowledgement (
    id INTEGER PRIMARY KEY,
    bundle INTEGER NOT NULL CONSTRAINT acknowledgement_bundle_exists REFERENCES bundle (id)
        CONSTRAINT acknowledgement_once UNIQUE,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT acknowledgement_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE TRIGGER acknowledgement_append_only BEFORE UPDATE ON acknowledgement
BEGIN SELECT RAISE(ABORT, 'acknowledgement_append_only'); END;
CREATE TRIGGER acknowledgement_kept BEFORE DELETE ON acknowledgement
BEGIN SELECT RAISE(ABORT, 'acknowledgement_kept'); END;
