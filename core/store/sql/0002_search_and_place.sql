-- Version 2: search by words and by place.
--
-- Words: the indices hold no text of their own, they read it from the tables (and are told of every change by the
-- repositories); positions within a text are not kept, which halves them. People's names have an index with its own text,
-- so that it can be made again after an erasure without touching the large ones.
--
-- Places: a cell is a hundredth of a degree both ways, numbered by rows from the south-west corner of the world:
-- (row of latitude) * 65536 + (column of longitude). A box is a range of cells in each of its rows. Filling an R*Tree
-- row by row costs several times the rest of an import; this index is built by sorting. (The cell is a column of its own, not
-- a generated one: an index over a generated column never covers a query.)

ALTER TABLE tree ADD COLUMN note TEXT;
UPDATE tree SET note = content ->> '$.note';
ALTER TABLE tree ADD COLUMN cell INTEGER;
UPDATE tree SET cell = CAST((latitude + 90) * 100 AS INTEGER) * 65536 + CAST((longitude + 180) * 100 AS INTEGER);
ALTER TABLE site ADD COLUMN note TEXT;
UPDATE site SET note = content ->> '$.note';
ALTER TABLE visit ADD COLUMN note TEXT;
UPDATE visit SET note = content ->> '$.note';

CREATE INDEX tree_cell ON tree (cell, latitude, longitude) WHERE cell IS NOT NULL;

CREATE VIRTUAL TABLE tree_words USING fts5 (
    label, note, content = 'tree', content_rowid = 'id', detail = 'none', columnsize = 0,
    tokenize = 'unicode61 remove_diacritics 2');
CREATE VIRTUAL TABLE site_words USING fts5 (
    name, note, content = 'site', content_rowid = 'id', detail = 'none', columnsize = 0,
    tokenize = 'unicode61 remove_diacritics 2');
CREATE VIRTUAL TABLE visit_words USING fts5 (
    note, content = 'visit', content_rowid = 'id', detail = 'none', columnsize = 0,
    tokenize = 'unicode61 remove_diacritics 2');
CREATE VIRTUAL TABLE person_words USING fts5 (
    code, name, detail = 'none', columnsize = 0, tokenize = 'unicode61 remove_diacritics 2');

INSERT INTO tree_words (tree_words) VALUES ('rebuild');
INSERT INTO site_words (site_words) VALUES ('rebuild');
INSERT INTO visit_words (visit_words) VALUES ('rebuild');
INSERT INTO person_words (rowid, code, name)
    SELECT person.id, person.code, coalesce(personal.payload ->> '$.name', '')
    FROM person LEFT JOIN personal ON personal.commitment = person.commitment;

-- Accepted positives: what "nearest find" and "new ground" are measured against.
CREATE TABLE find (
    visit INTEGER PRIMARY KEY CONSTRAINT find_visit_exists REFERENCES visit (id),
    day INTEGER NOT NULL,
    latitude REAL NOT NULL CONSTRAINT find_latitude_range CHECK (latitude BETWEEN -90 AND 90),
    longitude REAL NOT NULL CONSTRAINT find_longitude_range CHECK (longitude BETWEEN -180 AND 180),
    cell INTEGER NOT NULL
) STRICT;
CREATE INDEX find_cell ON find (cell, latitude, longitude, day);
