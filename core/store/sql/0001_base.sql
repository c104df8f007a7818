-- Version 1: the nouns, their revisions, the journal.
--
-- Every noun keeps its canonical JSON in `content`; the columns beside it are what is looked up, sorted or joined by.
-- `line_chain`, `line_number` name the journal line of the last change; `head` the newest revision.
-- Names of constraints are part of what the program says: <table>_<what>.
-- Checks of rows that come by the million say OR: IN over three constants or more builds a table of its own at every insert.

CREATE TABLE store (
    id INTEGER PRIMARY KEY CONSTRAINT store_single CHECK (id = 1),
    uid BLOB NOT NULL CONSTRAINT store_uid_length CHECK (length(uid) = 16),
    name TEXT NOT NULL,
    zone TEXT NOT NULL CONSTRAINT store_zone_named CHECK (zone <> ''),
    region TEXT NOT NULL,
    kind TEXT NOT NULL CONSTRAINT store_kind_known CHECK (kind IN ('laptop', 'office', 'training')),
    notation TEXT NOT NULL,
    demonstration INTEGER NOT NULL CONSTRAINT store_demonstration_flag CHECK (demonstration IN (0, 1)),
    made_utc INTEGER NOT NULL,
    made_offset INTEGER
) STRICT;
CREATE TRIGGER store_identity_fixed BEFORE UPDATE OF id, uid, demonstration, made_utc, made_offset ON store
BEGIN SELECT RAISE(ABORT, 'store_identity_fixed'); END;
CREATE TRIGGER store_kept BEFORE DELETE ON store
BEGIN SELECT RAISE(ABORT, 'store_kept'); END;

-- ------------------------------------------------------------------ journal and revisions

CREATE TABLE incarnation (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT incarnation_uid_unique UNIQUE
        CONSTRAINT incarnation_uid_length CHECK (length(uid) = 16),
    device BLOB NOT NULL CONSTRAINT incarnation_device_length CHECK (length(device) = 16),
    begun_utc INTEGER NOT NULL,
    begun_offset INTEGER,
    why TEXT NOT NULL
        CONSTRAINT incarnation_why_known CHECK (why IN ('made', 'opened-here', 'shorter-than-seen', 'other-than-seen'))
) STRICT;
CREATE INDEX incarnation_device ON incarnation (device);
CREATE TRIGGER incarnation_append_only BEFORE UPDATE ON incarnation
BEGIN SELECT RAISE(ABORT, 'incarnation_append_only'); END;
CREATE TRIGGER incarnation_kept BEFORE DELETE ON incarnation
BEGIN SELECT RAISE(ABORT, 'incarnation_kept'); END;

CREATE TABLE journal (
    chain INTEGER NOT NULL CONSTRAINT journal_chain_exists REFERENCES incarnation (id),
    number INTEGER NOT NULL CONSTRAINT journal_number_counts CHECK (number > 0),
    at_utc INTEGER NOT NULL,
    at_offset INTEGER,
    author BLOB CONSTRAINT journal_author_length CHECK (length(author) = 16),
    kind TEXT NOT NULL,
    noun TEXT NOT NULL,
    entity BLOB CONSTRAINT journal_entity_length CHECK (length(entity) = 16),
    digest BLOB CONSTRAINT journal_digest_length CHECK (length(digest) = 32),
    commitment BLOB CONSTRAINT journal_commitment_length CHECK (length(commitment) = 32),
    hash BLOB NOT NULL CONSTRAINT journal_hash_length CHECK (length(hash) = 32),
    CONSTRAINT journal_line PRIMARY KEY (chain, number)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER journal_append_only BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'journal_append_only'); END;
CREATE TRIGGER journal_kept BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'journal_kept'); END;

CREATE TABLE revision (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT revision_uid_unique UNIQUE
        CONSTRAINT revision_uid_length CHECK (length(uid) = 16),
    noun TEXT NOT NULL,
    entity BLOB NOT NULL CONSTRAINT revision_entity_length CHECK (length(entity) = 16),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    content TEXT NOT NULL,
    commitment BLOB CONSTRAINT revision_commitment_length CHECK (length(commitment) = 32),
    CONSTRAINT revision_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT revision_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX revision_entity ON revision (entity);
CREATE TRIGGER revision_append_only BEFORE UPDATE ON revision
BEGIN SELECT RAISE(ABORT, 'revision_append_only'); END;
CREATE TRIGGER revision_kept BEFORE DELETE ON revision
BEGIN SELECT RAISE(ABORT, 'revision_kept'); END;

-- A parent may lie in another store, so only the child must exist.
CREATE TABLE revision_parent (
    child BLOB NOT NULL CONSTRAINT revision_parent_child_exists REFERENCES revision (uid),
    parent BLOB NOT NULL CONSTRAINT revision_parent_length CHECK (length(parent) = 16),
    CONSTRAINT revision_parent_key PRIMARY KEY (child, parent),
    CONSTRAINT revision_parent_other CHECK (child <> parent)
) STRICT, WITHOUT ROWID;
CREATE INDEX revision_parent_parent ON revision_parent (parent);
CREATE TRIGGER revision_parent_append_only BEFORE UPDATE ON revision_parent
BEGIN SELECT RAISE(ABORT, 'revision_parent_append_only'); END;
CREATE TRIGGER revision_parent_kept BEFORE DELETE ON revision_parent
BEGIN SELECT RAISE(ABORT, 'revision_parent_kept'); END;

-- Personal data apart from everything else. The journal holds commitment = SHA-256(salt, payload); a recorded erasure
-- empties salt and payload, and nothing else may ever change here.
CREATE TABLE personal (
    id INTEGER PRIMARY KEY,
    noun TEXT NOT NULL,
    entity BLOB NOT NULL CONSTRAINT personal_entity_length CHECK (length(entity) = 16),
    salt BLOB CONSTRAINT personal_salt_length CHECK (length(salt) = 32),
    payload TEXT,
    commitment BLOB NOT NULL CONSTRAINT personal_commitment_unique UNIQUE
        CONSTRAINT personal_commitment_length CHECK (length(commitment) = 32),
    CONSTRAINT personal_whole_or_erased CHECK ((salt IS NULL) = (payload IS NULL))
) STRICT;
CREATE INDEX personal_entity ON personal (entity);
CREATE TRIGGER personal_only_erased BEFORE UPDATE ON personal
WHEN new.salt IS NOT NULL OR new.id <> old.id OR new.noun <> old.noun OR new.entity <> old.entity
    OR new.commitment <> old.commitment
BEGIN SELECT RAISE(ABORT, 'personal_only_erased'); END;
CREATE TRIGGER personal_kept BEFORE DELETE ON personal
BEGIN SELECT RAISE(ABORT, 'personal_kept'); END;

CREATE TABLE erasure (
    id INTEGER PRIMARY KEY,
    entity BLOB NOT NULL CONSTRAINT erasure_entity_length CHECK (length(entity) = 16),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT erasure_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT erasure_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE TRIGGER erasure_append_only BEFORE UPDATE ON erasure
BEGIN SELECT RAISE(ABORT, 'erasure_append_only'); END;
CREATE TRIGGER erasure_kept BEFORE DELETE ON erasure
BEGIN SELECT RAISE(ABORT, 'erasure_kept'); END;

-- ------------------------------------------------------------------ nouns

CREATE TABLE person (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT person_uid_unique UNIQUE CONSTRAINT person_uid_length CHECK (length(uid) = 16),
    code TEXT NOT NULL,
    content TEXT NOT NULL,
    commitment BLOB CONSTRAINT person_commitment_exists REFERENCES personal (commitment),
    head BLOB NOT NULL CONSTRAINT person_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX person_code_unique ON person (code) WHERE code <> '';

CREATE TABLE site (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT site_uid_unique UNIQUE CONSTRAINT site_uid_length CHECK (length(uid) = 16),
    name TEXT NOT NULL,
    name_key TEXT NOT NULL,
    content TEXT NOT NULL,
    head BLOB NOT NULL CONSTRAINT site_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT;
CREATE INDEX site_name ON site (name_key);

CREATE TABLE tree (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT tree_uid_unique UNIQUE CONSTRAINT tree_uid_length CHECK (length(uid) = 16),
    site INTEGER CONSTRAINT tree_site_exists REFERENCES site (id),
    label TEXT NOT NULL,
    label_key TEXT NOT NULL,
    latitude REAL CONSTRAINT tree_latitude_range CHECK (latitude BETWEEN -90 AND 90),
    longitude REAL CONSTRAINT tree_longitude_range CHECK (longitude BETWEEN -180 AND 180),
    uncertainty REAL,
    content TEXT NOT NULL,
    head BLOB NOT NULL CONSTRAINT tree_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    host TEXT NOT NULL DEFAULT 'open' CONSTRAINT tree_host_known CHECK (host = 'host' OR host = 'not-host' OR host = 'open'),
    visits INTEGER NOT NULL DEFAULT 0 CONSTRAINT tree_visits_counts CHECK (visits >= 0),
    last_day INTEGER,
    positive_accepted INTEGER NOT NULL DEFAULT 0,
    positive_waiting INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT tree_place_whole CHECK ((latitude IS NULL) = (longitude IS NULL))
) STRICT;
CREATE INDEX tree_site_label ON tree (site, label_key);
CREATE INDEX tree_label ON tree (label_key);
CREATE INDEX tree_last_day ON tree (last_day);

CREATE TABLE visit (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT visit_uid_unique UNIQUE CONSTRAINT visit_uid_length CHECK (length(uid) = 16),
    tree INTEGER CONSTRAINT visit_tree_exists REFERENCES tree (id),
    observer INTEGER CONSTRAINT visit_observer_exists REFERENCES person (id),
    day INTEGER NOT NULL,
    second INTEGER CONSTRAINT visit_second_range CHECK (second BETWEEN 0 AND 86399),
    content TEXT NOT NULL,
    state TEXT NOT NULL
        CONSTRAINT visit_state_known CHECK (state = 'draft' OR state = 'submitted' OR state = 'accepted' OR state = 'rejected'
            OR state = 'returned'),
    correction_waits INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_correction_flag CHECK (correction_waits IN (0, 1)),
    one_of_two INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_one_of_two_flag CHECK (one_of_two IN (0, 1)),
    conflict INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_conflict_flag CHECK (conflict IN (0, 1)),
    struck INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_struck_flag CHECK (struck IN (0, 1)),
    imported INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_imported_flag CHECK (imported IN (0, 1)),
    dirty INTEGER NOT NULL DEFAULT 0 CONSTRAINT visit_dirty_flag CHECK (dirty IN (0, 1)),
    head BLOB CONSTRAINT visit_head_exists REFERENCES revision (uid),
    decided BLOB CONSTRAINT visit_decided_exists REFERENCES revision (uid),
    event INTEGER CONSTRAINT visit_event_exists REFERENCES event (id),
    line_chain INTEGER,
    line_number INTEGER,
    host TEXT NOT NULL CONSTRAINT visit_host_known CHECK (host = 'host' OR host = 'not-host' OR host = 'open'),
    positive INTEGER NOT NULL CONSTRAINT visit_positive_flag CHECK (positive IN (0, 1)),
    earlier INTEGER NOT NULL CONSTRAINT visit_earlier_flag CHECK (earlier IN (0, 1)),
    none_seen INTEGER NOT NULL CONSTRAINT visit_none_seen_flag CHECK (none_seen IN (0, 1)),
    worth TEXT NOT NULL CONSTRAINT visit_worth_known CHECK (worth = 'A' OR worth = 'B' OR worth = 'C' OR worth = '0'),
    summary TEXT NOT NULL,
    signs TEXT NOT NULL,
    stops INTEGER NOT NULL,
    asks INTEGER NOT NULL,
    CONSTRAINT visit_draft_or_revision CHECK ((state = 'draft') = (head IS NULL) OR (state = 'rejected' AND struck = 1)),
    CONSTRAINT visit_dirty_only_draft CHECK (dirty = 0 OR head IS NULL),
    CONSTRAINT visit_line_whole CHECK ((line_chain IS NULL) = (line_number IS NULL))
) STRICT;
CREATE INDEX visit_tree ON visit (tree, day, observer);
CREATE INDEX visit_day ON visit (day, observer);
CREATE INDEX visit_observer ON visit (observer, day);
CREATE INDEX visit_state ON visit (state, day) WHERE state <> 'draft';
CREATE TRIGGER visit_kept BEFORE DELETE ON visit
BEGIN SELECT RAISE(ABORT, 'visit_kept'); END;

CREATE TABLE event (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CONSTRAINT event_visit_exists REFERENCES visit (id),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT event_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT event_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX event_visit ON event (visit);
CREATE TRIGGER event_append_only BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'event_append_only'); END;
CREATE TRIGGER event_kept BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'event_kept'); END;

CREATE TABLE photo (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT photo_uid_unique UNIQUE CONSTRAINT photo_uid_length CHECK (length(uid) = 16),
    visit INTEGER CONSTRAINT photo_visit_exists REFERENCES visit (id),
    sha256 TEXT NOT NULL CONSTRAINT photo_sha256_form CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*'),
    content TEXT NOT NULL,
    head BLOB NOT NULL CONSTRAINT photo_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT;
CREATE INDEX photo_visit ON photo (visit);
CREATE INDEX photo_sha256 ON photo (sha256);

CREATE TABLE sample (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT sample_uid_unique UNIQUE CONSTRAINT sample_uid_length CHECK (length(uid) = 16),
    number_key TEXT NOT NULL CONSTRAINT sample_number_unique UNIQUE
        CONSTRAINT sample_number_given CHECK (number_key <> ''),
    visit INTEGER CONSTRAINT sample_visit_exists REFERENCES visit (id),
    content TEXT NOT NULL,
    head BLOB NOT NULL CONSTRAINT sample_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT;
CREATE INDEX sample_visit ON sample (visit);

CREATE TABLE custody (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT custody_uid_unique UNIQUE CONSTRAINT custody_uid_length CHECK (length(uid) = 16),
    sample INTEGER NOT NULL CONSTRAINT custody_sample_exists REFERENCES sample (id),
    number INTEGER NOT NULL CONSTRAINT custody_number_counts CHECK (number > 0),
    bag TEXT NOT NULL,
    seal TEXT NOT NULL,
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT custody_number_unique UNIQUE (sample, number),
    CONSTRAINT custody_line_unique UNIQUE (line_chain, line_number)
) STRICT;
CREATE TRIGGER custody_append_only BEFORE UPDATE ON custody
BEGIN SELECT RAISE(ABORT, 'custody_append_only'); END;
CREATE TRIGGER custody_kept BEFORE DELETE ON custody
BEGIN SELECT RAISE(ABORT, 'custody_kept'); END;

CREATE TABLE leave (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT leave_uid_unique UNIQUE CONSTRAINT leave_uid_length CHECK (length(uid) = 16),
    site INTEGER CONSTRAINT leave_site_exists REFERENCES site (id),
    first_day INTEGER NOT NULL,
    content TEXT NOT NULL,
    commitment BLOB CONSTRAINT leave_commitment_exists REFERENCES personal (commitment),
    head BLOB NOT NULL CONSTRAINT leave_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT;

CREATE TABLE regime (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT regime_uid_unique UNIQUE CONSTRAINT regime_uid_length CHECK (length(uid) = 16),
    site INTEGER CONSTRAINT regime_site_exists REFERENCES site (id),
    first_day INTEGER NOT NULL,
    content TEXT NOT NULL,
    head BLOB NOT NULL CONSTRAINT regime_head_exists REFERENCES revision (uid),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT;

CREATE TABLE decision (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT decision_uid_unique UNIQUE CONSTRAINT decision_uid_length CHECK (length(uid) = 16),
    visit INTEGER NOT NULL CONSTRAINT decision_visit_exists REFERENCES visit (id),
    revision BLOB CONSTRAINT decision_revision_exists REFERENCES revision (uid),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT decision_line_unique UNIQUE (line_chain, line_number)
) STRICT;
CREATE INDEX decision_visit ON decision (visit);
CREATE INDEX decision_revision ON decision (revision);
CREATE TRIGGER decision_append_only BEFORE UPDATE ON decision
BEGIN SELECT RAISE(ABORT, 'decision_append_only'); END;
CREATE TRIGGER decision_kept BEFORE DELETE ON decision
BEGIN SELECT RAISE(ABORT, 'decision_kept'); END;

CREATE TABLE told (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CONSTRAINT told_visit_exists REFERENCES visit (id),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT told_line_unique UNIQUE (line_chain, line_number)
) STRICT;
CREATE INDEX told_visit ON told (visit);
CREATE TRIGGER told_append_only BEFORE UPDATE ON told
BEGIN SELECT RAISE(ABORT, 'told_append_only'); END;
CREATE TRIGGER told_kept BEFORE DELETE ON told
BEGIN SELECT RAISE(ABORT, 'told_kept'); END;

-- ------------------------------------------------------------------ what is not a record

CREATE TABLE setting (
    key TEXT NOT NULL CONSTRAINT setting_key PRIMARY KEY CONSTRAINT setting_key_named CHECK (key <> ''),
    value TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE undo_step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    device BLOB NOT NULL,
    what TEXT NOT NULL,
    undone INTEGER NOT NULL DEFAULT 0 CONSTRAINT undo_step_undone_flag CHECK (undone IN (0, 1))
) STRICT;
CREATE INDEX undo_step_device ON undo_step (device, undone, id);

CREATE TABLE undo_part (
    step INTEGER NOT NULL CONSTRAINT undo_part_step_exists REFERENCES undo_step (id) ON DELETE CASCADE,
    part INTEGER NOT NULL,
    noun TEXT NOT NULL,
    entity BLOB NOT NULL,
    before TEXT NOT NULL,
    after TEXT NOT NULL,
    CONSTRAINT undo_part_key PRIMARY KEY (step, part)
) STRICT, WITHOUT ROWID;
CREATE INDEX undo_part_entity ON undo_part (entity);
