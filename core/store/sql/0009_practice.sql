-- Version 9: practice. Sessions, answers, cases made from photos with their keys, and what is told of a person's detection.
--
-- Who practised, and what is told of whom, is personal data: it lies in `personal`, and the column `person` beside it is emptied
-- with it. Nothing else here ever changes. `practice_item` holds the answers once more in columns, for counting.

CREATE TABLE practice_session (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT practice_session_uid_unique UNIQUE CONSTRAINT practice_session_uid_length CHECK (length(uid) = 16),
    person INTEGER CONSTRAINT practice_session_person_exists REFERENCES person (id),
    cohort TEXT NOT NULL,
    series INTEGER NOT NULL CONSTRAINT practice_session_series_flag CHECK (series IN (0, 1)),
    content TEXT NOT NULL,
    commitment BLOB CONSTRAINT practice_session_commitment_exists REFERENCES personal (commitment),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT practice_session_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT practice_session_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX practice_session_person ON practice_session (person);
CREATE INDEX practice_session_commitment ON practice_session (commitment) WHERE commitment IS NOT NULL;
CREATE INDEX practice_session_cohort ON practice_session (cohort, person);
CREATE TRIGGER practice_session_only_erased BEFORE UPDATE ON practice_session
WHEN new.person IS NOT NULL OR new.id <> old.id OR new.uid <> old.uid OR new.cohort <> old.cohort OR new.series <> old.series
    OR new.content <> old.content OR new.commitment IS NOT old.commitment OR new.line_chain <> old.line_chain OR new.line_number <> old.line_number
BEGIN SELECT RAISE(ABORT, 'practice_session_only_erased'); END;
CREATE TRIGGER practice_session_kept BEFORE DELETE ON practice_session
BEGIN SELECT RAISE(ABORT, 'practice_session_kept'); END;

CREATE TABLE practice_answer (
    id INTEGER PRIMARY KEY,
    session INTEGER NOT NULL CONSTRAINT practice_answer_session_exists REFERENCES practice_session (id),
    number INTEGER NOT NULL CONSTRAINT practice_answer_number_counts CHECK (number > 0),
    case_id TEXT NOT NULL,
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT practice_answer_session_unique UNIQUE (session, number),
    CONSTRAINT practice_answer_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT practice_answer_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE TRIGGER practice_answer_append_only BEFORE UPDATE ON practice_answer
BEGIN SELECT RAISE(ABORT, 'practice_answer_append_only'); END;
CREATE TRIGGER practice_answer_kept BEFORE DELETE ON practice_answer
BEGIN SELECT RAISE(ABORT, 'practice_answer_kept'); END;

CREATE TABLE practice_item (
    session INTEGER NOT NULL CONSTRAINT practice_item_session_exists REFERENCES practice_session (id),
    answer INTEGER NOT NULL CONSTRAINT practice_item_answer_exists REFERENCES practice_answer (id),
    item INTEGER NOT NULL,
    kind TEXT NOT NULL,
    subject TEXT NOT NULL,
    truth TEXT NOT NULL,
    given TEXT NOT NULL,
    sure INTEGER CONSTRAINT practice_item_sure_range CHECK (sure BETWEEN 0 AND 100),
    CONSTRAINT practice_item_key PRIMARY KEY (session, answer, item)
) STRICT, WITHOUT ROWID;
CREATE INDEX practice_item_count ON practice_item (session, kind, subject, truth, given);
CREATE INDEX practice_item_sure ON practice_item (session, sure, truth, given) WHERE sure IS NOT NULL;
CREATE TRIGGER practice_item_append_only BEFORE UPDATE ON practice_item
BEGIN SELECT RAISE(ABORT, 'practice_item_append_only'); END;
CREATE TRIGGER practice_item_kept BEFORE DELETE ON practice_item
BEGIN SELECT RAISE(ABORT, 'practice_item_kept'); END;

CREATE TABLE photo_case (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT photo_case_uid_unique UNIQUE CONSTRAINT photo_case_uid_length CHECK (length(uid) = 16),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT photo_case_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT photo_case_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE TRIGGER photo_case_append_only BEFORE UPDATE ON photo_case
BEGIN SELECT RAISE(ABORT, 'photo_case_append_only'); END;
CREATE TRIGGER photo_case_kept BEFORE DELETE ON photo_case
BEGIN SELECT RAISE(ABORT, 'photo_case_kept'); END;

CREATE TABLE photo_key (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT photo_key_uid_unique UNIQUE CONSTRAINT photo_key_uid_length CHECK (length(uid) = 16),
    photo_case INTEGER NOT NULL CONSTRAINT photo_key_case_exists REFERENCES photo_case (id),
    content TEXT NOT NULL,
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT photo_key_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT photo_key_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX photo_key_case ON photo_key (photo_case);
CREATE TRIGGER photo_key_append_only BEFORE UPDATE ON photo_key
BEGIN SELECT RAISE(ABORT, 'photo_key_append_only'); END;
CREATE TRIGGER photo_key_kept BEFORE DELETE ON photo_key
BEGIN SELECT RAISE(ABORT, 'photo_key_kept'); END;

CREATE TABLE skill (
    id INTEGER PRIMARY KEY,
    uid BLOB NOT NULL CONSTRAINT skill_uid_unique UNIQUE CONSTRAINT skill_uid_length CHECK (length(uid) = 16),
    person INTEGER CONSTRAINT skill_person_exists REFERENCES person (id),
    withdraws BLOB CONSTRAINT skill_withdraws_length CHECK (length(withdraws) = 16),
    content TEXT NOT NULL,
    commitment BLOB CONSTRAINT skill_commitment_exists REFERENCES personal (commitment),
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    CONSTRAINT skill_line_unique UNIQUE (line_chain, line_number),
    CONSTRAINT skill_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT;
CREATE INDEX skill_person ON skill (person);
CREATE INDEX skill_commitment ON skill (commitment) WHERE commitment IS NOT NULL;
CREATE INDEX skill_withdraws ON skill (withdraws) WHERE withdraws IS NOT NULL;
CREATE TRIGGER skill_only_erased BEFORE UPDATE ON skill
WHEN new.person IS NOT NULL OR new.id <> old.id OR new.uid <> old.uid OR new.withdraws IS NOT old.withdraws OR new.content <> old.content
    OR new.commitment IS NOT old.commitment OR new.line_chain <> old.line_chain OR new.line_number <> old.line_number
BEGIN SELECT RAISE(ABORT, 'skill_only_erased'); END;
CREATE TRIGGER skill_kept BEFORE DELETE ON skill
BEGIN SELECT RAISE(ABORT, 'skill_kept'); END;

-- Wherever personal data is erased, who it was goes with it.
CREATE TRIGGER practice_erased AFTER UPDATE OF salt ON personal WHEN new.salt IS NULL
BEGIN
    UPDATE practice_session SET person = NULL WHERE commitment = new.commitment AND person IS NOT NULL;
    UPDATE skill SET person = NULL WHERE commitment = new.commitment AND person IS NOT NULL;
END;
