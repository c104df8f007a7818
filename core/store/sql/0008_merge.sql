-- Version 8: what came in from other stores.
--
-- A chain that came in has a row here. Its lines stand in pieces: a piece begins where the line before it was not known when it came
-- in, or has another follower already (a laptop was copied with its profile). `of` is the incarnation whose chain it is; a piece
-- beyond the first has an incarnation row of its own, whose id is made from the hash of its first line.

CREATE TABLE piece (
    chain INTEGER NOT NULL CONSTRAINT piece_key PRIMARY KEY CONSTRAINT piece_chain_exists REFERENCES incarnation (id),
    of BLOB NOT NULL CONSTRAINT piece_of_length CHECK (length(of) = 16),
    first INTEGER NOT NULL CONSTRAINT piece_first_counts CHECK (first > 0),
    before BLOB NOT NULL CONSTRAINT piece_before_length CHECK (length(before) = 32)
) STRICT;
CREATE INDEX piece_of ON piece (of);
CREATE TRIGGER piece_append_only BEFORE UPDATE ON piece
BEGIN SELECT RAISE(ABORT, 'piece_append_only'); END;
CREATE TRIGGER piece_kept BEFORE DELETE ON piece
BEGIN SELECT RAISE(ABORT, 'piece_kept'); END;

-- Nouns that several revisions end in: their rows hold what these come to together (core/store/merge_join.h).
CREATE TABLE joined (
    entity BLOB NOT NULL CONSTRAINT joined_key PRIMARY KEY CONSTRAINT joined_entity_length CHECK (length(entity) = 16),
    noun TEXT NOT NULL,
    conflicts INTEGER NOT NULL CONSTRAINT joined_conflicts_counts CHECK (conflicts >= 0)
) STRICT, WITHOUT ROWID;
CREATE INDEX joined_conflict ON joined (noun, entity) WHERE conflicts > 0;

-- What names something that has not arrived yet: nouns without their rows, and records that cannot stand anywhere before that.
CREATE TABLE waiting (
    entity BLOB NOT NULL CONSTRAINT waiting_key PRIMARY KEY CONSTRAINT waiting_entity_length CHECK (length(entity) = 16),
    noun TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE waiting_record (
    line_chain INTEGER NOT NULL,
    line_number INTEGER NOT NULL,
    type TEXT NOT NULL,
    entity BLOB NOT NULL CONSTRAINT waiting_record_entity_length CHECK (length(entity) = 16),
    content TEXT NOT NULL,
    CONSTRAINT waiting_record_key PRIMARY KEY (line_chain, line_number),
    CONSTRAINT waiting_record_line_exists FOREIGN KEY (line_chain, line_number) REFERENCES journal (chain, number)
) STRICT, WITHOUT ROWID;

-- Events that were written elsewhere are kept, but say nothing about how a visit stands here.
ALTER TABLE event ADD COLUMN merged INTEGER NOT NULL DEFAULT 0 CONSTRAINT event_merged_flag CHECK (merged IN (0, 1));
